/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Logs as they come off the water: receivers that lose their fix or their mind, two of them at
 * once, boats that lie still or turn back, files that were cut off. The tracks run north along a
 * meridian from the equator, or along the equator, where a degree is pi/180 times 6378137 m: what
 * must come out is worked out by hand. */
#include "model-support.h"

#include <math.h>
#include <string.h>

#include "file_error.h"
#include "import.h"
#include "log-support.h"

static LbImport *
parse_well (const GString *log)
{
  g_autoptr (GError) error = NULL;
  LbImport *import = lb_import_parse (log->str, log->len, NULL, NULL, NULL, NULL, &error);

  if (!import)
    fail_msg ("refused: %s", error->message);
  return import;
}

static const LbSounding *
sounding (const LbImport *import, guint i)
{
  assert_true (i < import->soundings->len);
  return &g_array_index (import->soundings, LbSounding, i);
}

static void
add_rmc (GString *log, const char *clock, double metres, const char *date, const char *end)
{
  char body[120];

  g_snprintf (body, sizeof body, "GPRMC,%s,A,00%08.5f,N,01000.0000,E,0.8,0.0,%s,,%s", clock,
              metres / 110574.3 * 60, date, end);
  log_add_sentence (log, body);
}

static gboolean
warns (const LbImport *import, const char *words)
{
  for (guint i = 0; i < import->warnings->len; i++)
    if (strstr (g_ptr_array_index (import->warnings, i), words))
      return TRUE;
  return FALSE;
}

/* ---- Times ---- */

/* The second log of the day before goes on from the first: its fixes are older, and count. */
static void
an_older_log_behind_is_read_too (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  for (int k = 0; k <= 10; k++)
    {
      log_add_fix (log, 5 * k, 5 * k);
      log_add_depth (log, 4);
    }
  for (int k = 0; k <= 10; k++)
    {
      log_add_fix (log, 50 + 5 * k, 5 * k - 7200);
      log_add_depth (log, 6);
    }
  import = parse_well (log);
  assert_int_equal (import->fixes, 22);
  assert_int_equal (import->gaps, 1);
  assert_near (import->length, 100, 0.1);
  assert_near (import->duration, 100, 1e-9);
}

/* Two days' logs in one file, the second begun earlier in the day than the first ended, and a GGA
 * without a date before the first RMC with one: 600 s, a night of 85800 s and 10 s. */
static void
dates_carry_over_days (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  log_add_sentence (log, "GPGGA,095959,0000.00000,N,01000.0000,E,1,08,0.9,1,M,0,M,,");
  log_add_depth (log, 4);
  add_rmc (log, "100000", 4, "230326", "");
  log_add_depth (log, 4);
  add_rmc (log, "100959", 8, "230326", "");
  add_rmc (log, "095959", 12, "240326", "");
  log_add_depth (log, 4);
  add_rmc (log, "100009", 16, "240326", "");
  import = parse_well (log);
  assert_int_equal (import->fixes, 5);
  assert_near (import->duration, 600 + 85800 + 10, 1e-6);
  /* None is placed in the ten minutes without a fix. */
  assert_int_equal (import->soundings->len, 2);
  assert_int_equal (import->unplaced, 1);
}

/* A sentence from before midnight that comes after one from behind it is late, and no new day. */
static void
midnight_with_a_late_sentence (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  add_rmc (log, "235958", 0, "", "");
  log_add_depth (log, 4);
  add_rmc (log, "000000", 4, "", "");
  log_add_sentence (log, "GPGGA,235959,0000.00108,N,01000.0000,E,1,08,0.9,1,M,0,M,,");
  log_add_depth (log, 4);
  add_rmc (log, "000002", 8, "", "");
  import = parse_well (log);
  assert_int_equal (import->fixes, 3);
  assert_near (import->duration, 4, 1e-9);
  assert_int_equal (import->gaps, 0);
}

/* ---- Receivers and sounders ---- */

/* What a receiver estimates (E), plays back (S) or has lost (N, quality 0, V) is no position. */
static void
estimated_positions_are_not_used (void **state)
{
  g_autofree char *summary = NULL;
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  add_rmc (log, "120000", 0, "230326", ",A");
  log_add_depth (log, 4);
  add_rmc (log, "120001", 40, "230326", ",E");
  add_rmc (log, "120002", 40, "230326", ",S");
  add_rmc (log, "120003", 40, "230326", ",N");
  log_add_sentence (log, "GPRMC,120004,V,,,,,,,230326,,,N");
  log_add_sentence (log, "GPGGA,120005,,,,,0,00,,,M,,M,,");
  log_add_sentence (log, "GPGLL,0000.0200,N,01000.0000,E,120006,V,N");
  log_add_sentence (log, "SDDPT,,0.3");
  log_add_sentence (log, "SDDBT,,f,,M,,F");
  add_rmc (log, "120010", 10, "230326", ",D");
  import = parse_well (log);
  assert_int_equal (import->fixes, 2);
  assert_int_equal (import->no_fix, 6);
  assert_int_equal (import->no_bottom, 2);
  assert_int_equal (import->bad[LB_BAD_LINE_FORM], 0);
  assert_near (import->length, 10, 0.01);
  summary = lb_import_dup_summary (import);
  assert_non_null (strstr (summary, "2 times the sounder found no bottom"));
}

/* Two receivers a second apart and two metres aside, and two sounders that differ in what they know
 * of the transducer: one of each is used. */
static void
two_of_each_make_no_zigzag (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  for (int k = 0; k <= 60; k++)
    {
      char body[120];

      log_add_fix (log, k, k);
      g_snprintf (body, sizeof body, "GNGGA,1200%02d,0000.%05.0f,N,00959.9989,E,1,08,0.9,1,M,0,M,,",
                  k > 0 ? k - 1 : 0, k / 110574.3 * 60 * 1e5);
      log_add_sentence (log, body);
      log_add_sentence (log, "SDDPT,4.00,0.30");
      log_add_sentence (log, k % 2 ? "IIDPT,4.30,0.00" : "IIDPT,4.20,0.10");
      log_add_sentence (log, "SDDPT,4.00,0.30");
    }
  import = parse_well (log);
  assert_near (import->length, 60, 0.1);
  assert_int_equal (import->unused_depths, 61);
  assert_int_equal (import->soundings->len, 120);
  for (guint i = 0; i < 120; i++)
    assert_near (sounding (import, i)->depth, 4.3, 1e-12);
  assert_false (import->has_transducer_depths);
}

static void
a_position_far_off_is_left_out (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  /* A receiver that starts at zero, and one that jumps 3 km for three seconds. */
  log_add_sentence (log, "GPRMC,115959,A,0000.0000,N,00000.0000,E,0,0,230326,,");
  for (int k = 0; k <= 60; k++)
    {
      log_add_fix (log, k >= 30 && k < 33 ? 3000 + k : k, k);
      log_add_depth (log, 4);
    }
  import = parse_well (log);
  assert_int_equal (import->odd_fixes, 4);
  assert_near (import->length, 60, 0.1);
  assert_int_equal (import->gaps, 0);
  assert_true (warns (import, "4 positions were left out"));
}

/* ---- Lines ---- */

/* A sentence that breaks off runs into the next, which is whole. */
static void
a_cut_sentence_does_not_take_the_next (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  log_add_fix (log, 0, 0);
  g_string_append (log, "$SDDPT,4.");
  log_add_sentence (log, "SDDPT,4.27,0.30,50.0");
  g_string_append (log, "\\s:sounder,c:1774269319*2B\\");
  log_add_sentence (log, "SDDPT,4.27,0.30,50.0");
  g_string_append (log, "12:00:05.125 > ");
  log_add_sentence (log, "SDDPT,4.27,0.30,50.0");
  g_string_append (log, "\r\n\n\r$SDDPT,4.2");
  g_string_append_c (log, '\0');
  g_string_append (log, "\r");
  log_add_fix (log, 10, 10);
  import = parse_well (log);
  assert_int_equal (import->soundings->len, 3);
  assert_int_equal (import->bad[LB_BAD_LINE_FORM], 1);
  assert_int_equal (import->bad[LB_BAD_LINE_CHECKSUM], 1);
  assert_int_equal (import->fixes, 2);
}

/* ---- The boat ---- */

/* At anchor for ten minutes, swinging ten metres to and fro every forty seconds, between two
 * stretches of 60 m: some 150 m of swinging that are no way. */
static void
a_boat_at_anchor_makes_no_way (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;
  int second = 0;

  for (int k = 0; k < 60; k++, second++)
    {
      log_add_fix (log, k, second);
      log_add_depth (log, 4);
    }
  for (int k = 0; k < 600; k++, second++)
    {
      log_add_fix (log, 60 + 5 * sin (k * 2 * G_PI / 40), second);
      log_add_depth (log, 5);
    }
  for (int k = 0; k <= 60; k++, second++)
    {
      log_add_fix (log, 60 + k, second);
      log_add_depth (log, 6);
    }
  import = parse_well (log);
  assert_int_equal (import->passes, 1);
  assert_near (import->length, 120, 12);
  assert_near (import->duration, 720, 1e-9);
}

/* North 100 m, back 80, and north again 150: three passes, of which the last is the longest. */
static void
the_longest_pass_is_used (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;
  g_autofree char *summary = NULL;

  for (int k = 0; k <= 330; k++)
    {
      log_add_fix (log, k <= 100 ? k : k <= 180 ? 200 - k : k - 160, k);
      log_add_depth (log, k < 180 ? 4 : 6);
    }
  import = parse_well (log);
  assert_int_equal (import->passes, 3);
  assert_near (import->length, 150, 3);
  /* A leg that spans a turn cuts it short by up to twice its length. */
  assert_near (import->track_length, 330, 2 * 2 * LB_IMPORT_LEG);
  assert_near (sounding (import, 0)->along, 0.5, 2);
  for (guint i = 3; i < import->soundings->len; i++)
    assert_near (sounding (import, i)->depth, 6, 1e-12);
  assert_int_equal (import->soundings->len + import->other_passes + import->unplaced, 331);
  summary = lb_import_dup_summary (import);
  assert_non_null (strstr (summary, "The boat turned back 2 times"));
}

/* Along the equator and back with a turn of 15 m radius, as a boat turns: there 200 m, the half
 * circle is 47 m. And a river bend of 80 m radius through 170 degrees is no turn. */
static void
a_turn_is_told_from_a_bend (void **state)
{
  const double radii[] = { 15, 80 };

  for (gsize r = 0; r < 2; r++)
    {
      g_autoptr (GString) log = g_string_new ("lat,lon,depth\n");
      g_autoptr (LbImport) import = NULL;
      double half = G_PI * radii[r], angle = 0, degree = G_PI / 180 * 6378137;

      for (double way = 0; way < 400 + half; way += 2)
        {
          double x = way, y = 0;
          char a[G_ASCII_DTOSTR_BUF_SIZE], b[G_ASCII_DTOSTR_BUF_SIZE];

          angle = CLAMP ((way - 200) / radii[r], 0, G_PI);
          if (way > 200)
            {
              x = 200 + radii[r] * sin (angle) - fmax (way - 200 - half, 0);
              y = radii[r] * (1 - cos (angle));
            }
          g_string_append_printf (log, "%s,%s,4\n", g_ascii_dtostr (a, sizeof a, y / degree),
                                  g_ascii_dtostr (b, sizeof b, x / degree));
        }
      import = parse_well (log);
      assert_int_equal (import->passes, r == 0 ? 2 : 1);
      assert_near (import->length, r == 0 ? 200 + half / 2 : 400 + half, 4);
    }
}

/* ---- Tables and tracks ---- */

static void
tables_of_other_programs_are_read (void **state)
{
  static const char *const texts[] = {
    /* words before the heading, and a column with times */
    ("Logger 2, Brackle River\nday,23 March\n\nTime,Lat (deg),Lon (deg),Water depth (ft)\n"
     "12:00,0,10.0000,13\n12:01,0,10.0001,14\n"),
    /* letters for the sides, units in the cells */
    "N 0.0;E 10.0000;3.9624 m\nN 0.0;E 10.0001;14 ft\n",
    "0.0 S\t10.0000 W\t13ft\n0.0 S\t9.9999 W\t14ft\n",
    /* times, but no heading */
    "12:00:01 0.0 10.0000 3.9624\n12:00:02 0.0 10.0001 4.2672\n",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GString) text = g_string_new (texts[i]);
      g_autoptr (LbImport) import = parse_well (text);

      assert_int_equal (import->soundings->len, 2);
      assert_near (sounding (import, 1)->along, 11.1319490793, 1e-6);
      assert_near (sounding (import, 0)->depth, 3.9624, 1e-9);
      assert_near (sounding (import, 1)->depth, 4.2672, 1e-9);
    }
}

static void
a_heading_that_is_not_understood_is_left_to_the_user (void **state)
{
  g_autoptr (GError) error = NULL;

  assert_null (lb_import_parse ("x,y,z\n1,2,3\n2,3,4\n", 18, NULL, NULL, NULL, NULL, &error));
  assert_non_null (error);
}

/* The logger lost its power: what it wrote before counts. */
static void
a_track_that_is_cut_off_is_used (void **state)
{
  g_autoptr (GString) text = g_string_new (
      "<gpx version=\"1.0\"><trk><trkseg>"
      "<trkpt lat=\"0\" lon=\"10\"><extensions><WaterDepth>4</WaterDepth></extensions></trkpt>"
      "<trkpt lat=\"0\" lon=\"10.0001\"><extensions><x:depth>5</x:depth></extensions></trkpt>"
      "<trkpt lat=\"0\" lon=\"10.0002\"><extensions><dep");
  g_autoptr (LbImport) import = parse_well (text);

  assert_int_equal (import->soundings->len, 2);
  assert_near (import->length, 11.1319490793, 1e-6);
  assert_true (warns (import, "cut off"));
}

static void
what_is_no_plain_file_is_refused (void **state)
{
  static const char *const paths[] = { "/dev/zero", "/" };

  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (paths[i]);
      g_autoptr (GError) error = NULL;

      assert_null (lb_import_read (file, NULL, NULL, NULL, NULL, &error));
      assert_non_null (strstr (error->message, "no plain file"));
    }
}

/* Twelve kilometres along the equator: more than a bed may have, until a stretch of it is chosen.
 */
static void
a_stretch_can_be_chosen (void **state)
{
  g_autoptr (GString) text = g_string_new ("distance,depth\n");
  g_autoptr (LbImport) import = NULL;
  g_autoptr (GError) error = NULL;
  LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
  LbBedProfile profile;

  for (int k = 0; k <= 1200; k++)
    if (k < 604 || k > 606)
      g_string_append_printf (text, "%d,%d\n", 10 * k, k < 600 ? 4 : 6);
  import = parse_well (text);
  assert_false (lb_import_profile (import, &options, &profile, &error));
  assert_int_equal (error->code, LB_FILE_ERROR_RANGE);
  assert_non_null (strstr (error->message, "12 km of river"));
  options.from = 5950;
  options.to = 6100;
  options.boat_went_upstream = FALSE;
  assert_true (lb_import_profile (import, &options, &profile, NULL));
  assert_int_equal (profile.used, 16 - 3);
  assert_near (profile.widest_gap, 40, 1e-9);
  assert_near (profile.x[profile.n - 1], 150, 1e-9);
  assert_int_equal (profile.n, 4); /* the step from 5990 to 6000 and the two ends */
  assert_near (profile.x[1], 40, 1e-9);
  assert_near (profile.depth[2], 6, 1e-12);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (an_older_log_behind_is_read_too),
    cmocka_unit_test (dates_carry_over_days),
    cmocka_unit_test (midnight_with_a_late_sentence),
    cmocka_unit_test (estimated_positions_are_not_used),
    cmocka_unit_test (two_of_each_make_no_zigzag),
    cmocka_unit_test (a_position_far_off_is_left_out),
    cmocka_unit_test (a_cut_sentence_does_not_take_the_next),
    cmocka_unit_test (a_boat_at_anchor_makes_no_way),
    cmocka_unit_test (the_longest_pass_is_used),
    cmocka_unit_test (a_turn_is_told_from_a_bend),
    cmocka_unit_test (tables_of_other_programs_are_read),
    cmocka_unit_test (a_heading_that_is_not_understood_is_left_to_the_user),
    cmocka_unit_test (a_track_that_is_cut_off_is_used),
    cmocka_unit_test (what_is_no_plain_file_is_refused),
    cmocka_unit_test (a_stretch_can_be_chosen),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
