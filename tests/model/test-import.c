/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Logs of sounders and receivers: published sentences, published geodesics, profiles worked out by
 * hand, and everything that goes wrong on the water. */
#include "model-support.h"

#include <stdio.h>
#include <string.h>

#include "answers.h"
#include "file_error.h"
#include "import.h"
#include "log-support.h"

static LbImport *
parse (const char *text, GError **error)
{
  return lb_import_parse (text, strlen (text), NULL, NULL, NULL, NULL, error);
}

static LbImport *
parse_well (const char *text)
{
  g_autoptr (GError) error = NULL;
  LbImport *import = parse (text, &error);

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

/* ---- NMEA 0183 ---- */

/* The well-known example sentences of receivers' manuals, checksums *47 and *6A, and the layouts of
 * DPT and DBT (parser documentation after the open reference; checksums worked out with the same
 * rule): 4807.038 N is 48.117300 degrees, 01131.000 E is 11.516667 degrees. */
static void
published_sentences_are_read (void **state)
{
  g_autoptr (GString) log =
      g_string_new ("$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47\r\n"
                    "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\r\n"
                    "$SDDPT,4.27,0.30,50.0*62\r\n"
                    "$GPVTG,84.4,T,87.5,M,1.94,N,3.59,K,A*22\r\n"
                    "$VWVHW,84.4,T,87.5,M,2.92,N,5.41,K*5F\r\n");
  g_autoptr (LbImport) import = NULL;

  log_add_sentence (log, "GPRMC,123521.00,A,4807.0390,N,01131.0000,E,1.94,084.4,230326,003.1,W,A");
  import = parse_well (log->str);
  assert_int_equal (import->format, LB_IMPORT_NMEA);
  assert_int_equal (import->lines, 6);
  assert_int_equal (import->fixes, 2);
  assert_int_equal (import->ignored, 2);
  assert_int_equal (import->soundings->len, 1);
  /* Depth and the transducer's own depth: 4.27 + 0.30. */
  assert_near (sounding (import, 0)->depth, 4.57, 1e-12);
  assert_int_equal (sounding (import, 0)->datum, LB_DEPTH_OF_SURFACE);
  assert_near (sounding (import, 0)->longitude, 11.516666667, 1e-9);
  assert_near (sounding (import, 0)->latitude, 48.1173, 2e-5);
  assert_near (import->duration, 2, 1e-9);
}

/* Both stand in public documentation with checksums that do not fit: *30 and *78 would. */
static void
wrong_checksums_are_counted (void **state)
{
  g_autoptr (LbImport) import =
      parse_well ("$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47\n"
                  "$SDDBT,12.3,f,3.7,M,2.0,F*35\n"
                  "$SDDPT,4.2,0.5,*4F\n"
                  "$SDDBT,12.3,f,3.7,M,2.0,F*30\n"
                  "$SDDPT,4.2\n"
                  "$GPGGA,123520,4807.039,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*4C\n");

  assert_int_equal (import->bad[LB_BAD_LINE_CHECKSUM], 3);
  assert_int_equal (import->first_bad->len, 3);
  assert_int_equal (g_array_index (import->first_bad, LbBadLine, 0).line, 2);
  assert_int_equal (g_array_index (import->first_bad, LbBadLine, 2).line, 5);
  assert_string_equal (g_array_index (import->first_bad, LbBadLine, 1).reason,
                       "line 3: wrong checksum, should be 78");
  assert_int_equal (import->soundings->len, 1);
  assert_near (sounding (import, 0)->depth, 3.7, 1e-12);
}

static void
a_flipped_character_is_found (void **state)
{
  const char *good = "$SDDPT,4.27,0.30,50.0*62";

  for (gsize i = 1; i < strlen (good); i++)
    {
      g_autofree char *flipped = g_strdup (good);
      g_autofree char *log = NULL;
      g_autoptr (LbImport) import = NULL;
      g_autoptr (GError) error = NULL;

      flipped[i] ^= 1;
      log = g_strdup_printf ("$GPGLL,4807.038,N,01131.000,E,123519,A,A*5A\n%s\n"
                             "$GPGLL,4807.039,N,01131.000,E,123520,A,A*51\n",
                             flipped);
      import = parse (log, &error);
      assert_null (import);
      assert_int_equal (error->domain, LB_FILE_ERROR);
    }
}

/* Depth in feet alone, lower-case checksum, no position in a void RMC, no fix in a GGA of quality
 * 0, and a sounder that has lost the bottom. */
static void
what_is_not_known_is_not_zero (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  log_add_sentence (log, "GPRMC,115958,V,0000.0000,N,01000.0000,E,,,230326,,");
  log_add_sentence (log, "GPGGA,115959,0000.0000,N,01000.0000,E,0,00,,,M,,M,,");
  log_add_fix (log, 0, 0);
  log_add_sentence (log, "SDDBT,10.0,f,,M,,F");
  log_add_sentence (log, "SDDPT,,");
  log_add_sentence (log, "SDDPT,0.0,0.0");
  log_add_fix (log, 10, 10);
  g_string_append (log, "$SDDBT,20.0,f,,M,,F*28\n");
  import = parse_well (log->str);
  assert_int_equal (import->fixes, 2);
  assert_int_equal (import->soundings->len, 1);
  assert_near (sounding (import, 0)->depth, 3.048, 1e-12);
  assert_near (sounding (import, 0)->along, 5, 0.01);
  assert_true (import->has_transducer_depths);
}

/* GGA and RMC of one moment are one fix, and DBT beside DPT is one depth; any talkers. */
static void
twice_told_counts_once (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  for (int k = 0; k < 4; k++)
    {
      char body[120];

      log_add_fix (log, 10 * k, 10 * k);
      g_snprintf (body, sizeof body, "GNGGA,1200%02d,0000.%05.0f,N,01000.0000,E,1,08,0.9,1,M,0,M,,",
                  10 * k, 10 * k / 110574.3 * 60 * 1e5);
      log_add_sentence (log, body);
      g_snprintf (body, sizeof body, "IIDPT,%.1f,0.2", 3.0 + k);
      log_add_sentence (log, body);
      g_snprintf (body, sizeof body, "SDDBT,,f,%.1f,M,,F", 3.0 + k);
      log_add_sentence (log, body);
    }
  import = parse_well (log->str);
  assert_int_equal (import->fixes, 4);
  assert_int_equal (import->unused_depths, 4);
  assert_int_equal (import->soundings->len, 3);
  assert_int_equal (import->unplaced, 1); /* after the last fix */
  assert_near (sounding (import, 2)->depth, 5.2, 1e-12);
  assert_near (import->length, 30, 0.01);
}

/* A log over midnight goes on; a hole of a minute is a gap, in which nothing is placed. */
static void
midnight_and_gaps (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;

  log_add_fix (log, 0, 43190);
  log_add_depth (log, 4);
  log_add_fix (log, 8, 43200);
  log_add_depth (log, 5);
  log_add_fix (log, 16, 43210);
  log_add_depth (log, 9);
  log_add_fix (log, 60, 43270);
  log_add_depth (log, 6);
  log_add_fix (log, 68, 43280);
  import = parse_well (log->str);
  assert_int_equal (import->fixes, 5);
  assert_near (import->duration, 90, 1e-9);
  assert_int_equal (import->gaps, 1);
  assert_int_equal (import->unplaced, 1);
  assert_int_equal (import->soundings->len, 3);
  assert_near (sounding (import, 2)->along, 64, 0.02);
  assert_near (sounding (import, 2)->depth, 6, 1e-12);
}

/* A receiver's jitter adds no way to a boat at anchor. */
static void
a_boat_that_lies_still_goes_nowhere (void **state)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (LbImport) import = NULL;
  TestRandom random = { 7 };

  for (int k = 0; k < 600; k++)
    {
      log_add_fix (log, 5 + test_random (&random, -1, 1), k);
      log_add_depth (log, 4);
    }
  import = parse_well (log->str);
  assert_less (import->length, 2.5);
}

/* ---- GPX ---- */

static void
gpx_depths_are_read (void **state)
{
  g_autoptr (LbImport) import = parse_well (
      "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"by hand\" "
      "xmlns=\"http://www.topografix.com/GPX/1/1\" xmlns:d=\"urn:depth\"><trk><trkseg>\n"
      "<trkpt lat=\"0.0000\" lon=\"10.0\"><ele>545.4</ele><time>2026-03-23T12:35:19Z</time>"
      "<extensions><d:depth>4.5</d:depth></extensions></trkpt>\n"
      "<trkpt lat=\"0.0000\" lon=\"10.0001\"><time>2026-03-23T12:35:29Z</time></trkpt>\n"
      "<trkpt lat=\"95\" lon=\"10.0002\"><extensions><d:depth>4</d:depth></extensions></trkpt>\n"
      "<trkpt lat=\"0.0000\" lon=\"10.0002\"><time>2026-03-23T12:35:39.5Z</time>"
      "<extensions><d:depth>5.5</d:depth></extensions></trkpt>\n</trkseg></trk></gpx>\n");

  assert_int_equal (import->format, LB_IMPORT_GPX);
  assert_int_equal (import->lines, 4);
  assert_int_equal (import->fixes, 3);
  assert_int_equal (import->bad[LB_BAD_LINE_RANGE], 1);
  assert_int_equal (import->soundings->len, 2);
  assert_near (import->duration, 20.5, 1e-6);
  /* Along the equator: pi/180 times 6378137 m times 0.0002 degrees. */
  assert_near (sounding (import, 1)->along, 22.2638981587, 1e-6);
  assert_near (sounding (import, 1)->depth, 5.5, 1e-12);
}

static void
broken_gpx_is_refused (void **state)
{
  const char *const broken[] = {
    "<gpx><trk><trkseg><trkpt lat=\"1\" lon=\"1\"><extensions><depth>4</depth>",
    "<html><body>no track</body></html>",
    "<gpx><trk></gpx></trk>",
    "<gpx><trk><trkseg><trkpt lat=\"1\" lon=\"1\"></trkpt></trkseg></trk></gpx>",
    "<",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (broken); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (LbImport) import = parse (broken[i], &error);

      assert_null (import);
      assert_int_equal (error->domain, LB_FILE_ERROR);
      assert_null (strchr (error->message, '\n'));
    }
}

/* A track of two points is as long as the geodesic between them. */
static void
lengths_are_the_published_ones (void **state)
{
  Answers *answers = answers_read ("geodesics.csv");

  for (size_t i = 0; i < answers_rows (answers); i++)
    {
      double expected = answers_number (answers, i, "length");
      char text[400], a[4][G_ASCII_DTOSTR_BUF_SIZE];
      g_autoptr (LbImport) import = NULL;

      g_ascii_dtostr (a[0], sizeof a[0], answers_number (answers, i, "latitude_1"));
      g_ascii_dtostr (a[1], sizeof a[1], answers_number (answers, i, "longitude_1"));
      g_ascii_dtostr (a[2], sizeof a[2], answers_number (answers, i, "latitude_2"));
      g_ascii_dtostr (a[3], sizeof a[3], answers_number (answers, i, "longitude_2"));
      g_snprintf (text, sizeof text, "latitude;longitude;depth\n%s;%s;4\n%s;%s;5\n", a[0], a[1],
                  a[2], a[3]);
      import = parse_well (text);
      assert_near (import->length, expected, answers_number (answers, i, "known_to"));
    }
  answers_free (answers);
}

/* ---- Tables ---- */

typedef struct
{
  const char *text;
  double along, depth; /* of the second sounding */
} TableCase;

static void
tables_of_any_kind_are_read (void **state)
{
  const TableCase cases[] = {
    { "0,4.0\n10,5.5\n", 10, 5.5 },
    { "0;4,0\n10;5,5\n", 10, 5.5 },
    { "0\t4.0\n10\t5.5\n", 10, 5.5 },
    { "0 4.0\n10   5.5\n", 10, 5.5 },
    { "0|4.0\r\n10|5.5\r\n", 10, 5.5 },
    { "\xef\xbb\xbf"
      "distance,depth\n0,4.0\n10,5.5\n",
      10, 5.5 },
    { "# surveyed by line\n\nDepth (ft); Distance (ft)\n10;0\n20;100\n", 30.48, 6.096 },
    { "\"along\",\"note\",\"depth\"\n\"0\",\"a, b\",\"4.0\"\n\"10\",\"c\",\"5.5\"\n", 10, 5.5 },
    { "0,-4.0\n10,-5.5\n", 10, 5.5 },
    /* A foot is 0.3048 m, a fathom 6 ft, a mile 5280 ft (NIST SP 811, from memory). */
    { "distance (m),depth (ft)\n0,10\n20,20\n", 20, 6.096 },
    { "distance in miles,depth in ft\n0,10\n1,20\n", 1609.344, 6.096 },
    { "Dist_km;WaterDepthFathoms\n0;1\n0,1;2\n", 100, 3.6576 },
    { "distance;depth [cm]\n0;400\n10;550\n", 10, 5.5 },
    { "distance;depth in inches\n0;100\n10;200\n", 3.048, 5.08 },
    { "distance,depth\n0,4 m\n1 km,550 cm\n", 1000, 5.5 },
    { "time,lat,lon,depth_m\n1,0,10.0000,4\n2,0,10.0001,5.5\n", 11.1319490793, 5.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (LbImport) import = parse_well (cases[i].text);

      assert_int_equal (import->format, LB_IMPORT_CSV);
      assert_int_equal (import->soundings->len, 2);
      assert_near (sounding (import, 1)->along, cases[i].along, 1e-6);
      assert_near (sounding (import, 1)->depth, cases[i].depth, 1e-9);
    }
}

/* UTF-16 and UTF-32 by GLib's converter, with the marks of the Unicode standard (chapter 23.8, from
 * memory); the last byte of the first is cut off, as by a full card. */
static void
other_encodings_are_told_by_their_mark (void **state)
{
  static const struct
  {
    const char *encoding, *mark;
    gsize mark_length, cut;
  } cases[] = { { "UTF-16LE", "\xff\xfe", 2, 1 },
                { "UTF-16BE", "\xfe\xff", 2, 0 },
                { "UTF-32LE", "\xff\xfe\0\0", 4, 0 },
                { "UTF-32BE", "\0\0\xfe\xff", 4, 0 } };
  const char *text = "Länge;depth\n0;4,0\n10;5,5\n";

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GByteArray) bytes = g_byte_array_new ();
      g_autoptr (LbImport) import = NULL;
      LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
      gsize n;
      g_autofree char *wide = g_convert (text, -1, cases[i].encoding, "UTF-8", NULL, &n, NULL);

      options.column[LB_CSV_DISTANCE] = 0;
      g_byte_array_append (bytes, (const guint8 *) cases[i].mark, (guint) cases[i].mark_length);
      g_byte_array_append (bytes, (const guint8 *) wide, (guint) (n - cases[i].cut));
      import = lb_import_parse ((const char *) bytes->data, bytes->len, &options, NULL, NULL, NULL,
                                NULL);
      assert_non_null (import);
      assert_int_equal (import->soundings->len, 2);
      assert_near (sounding (import, 1)->along, 10, 1e-12);
      assert_near (sounding (import, 1)->depth, 5.5, 1e-12);
    }
}

/* Without a mark, too: every second byte is zero, which is in no other text. */
static void
unmarked_utf16_is_told_by_its_zeros (void **state)
{
  static const char *const encodings[] = { "UTF-16LE", "UTF-16BE" };
  const char *text = "Länge;depth\n0;4,0\n10;5,5\n";

  for (gsize i = 0; i < G_N_ELEMENTS (encodings); i++)
    for (gsize cut = 0; cut < 2; cut++)
      {
        g_autoptr (LbImport) import = NULL;
        LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
        gsize n;
        g_autofree char *wide = g_convert (text, -1, encodings[i], "UTF-8", NULL, &n, NULL);

        options.column[LB_CSV_DISTANCE] = 0;
        import = lb_import_parse (wide, n - cut, &options, NULL, NULL, NULL, NULL);
        assert_non_null (import);
        assert_int_equal (import->soundings->len, 2);
        assert_near (sounding (import, 1)->depth, 5.5, 1e-12);
      }
}

/* 20 in and 1 in, 50 cm and 3 cm. */
static void
limits_are_round_in_the_users_units (void **state)
{
  LbImportOptions us = lb_import_options_default (LB_UNITS_US);
  LbImportOptions metric = lb_import_options_default (LB_UNITS_METRIC);

  assert_near (us.spike_limit, 20 * 0.0254, 1e-12);
  assert_near (us.tolerance, 0.0254, 1e-12);
  assert_near (metric.spike_limit, 0.5, 1e-12);
  assert_near (metric.tolerance, 0.03, 1e-12);
}

static void
what_is_no_text_is_refused (void **state)
{
  static const struct
  {
    const char *bytes;
    gsize length;
    const char *part;
  } cases[] = { { "PK\3\4\24\0\0\0", 8, "this is no text; " },
                { "\x7f\x01\x02\x03\x04$GPRMC,1,2,3", 17, "this is no text; " },
                { "\xff\xfe\x00\xd8\x31\x00", 6, "this is a damaged text in UTF-16LE" } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_null (
          lb_import_parse (cases[i].bytes, cases[i].length, NULL, NULL, NULL, NULL, &error));
      assert_true (g_error_matches (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX));
      assert_true (g_str_has_prefix (error->message, cases[i].part));
    }
}

static void
columns_can_be_told (void **state)
{
  LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
  const char *text = "a,b,c,d\n9,4.0,x,0\n9,5.5,x,20\n9,?,x,30\n";
  g_autoptr (LbImport) import = NULL;
  g_autoptr (GError) error = NULL;

  assert_null (parse (text, &error));
  assert_string_equal (error->message,
                       "no columns of distance and depth, or of latitude, longitude "
                       "and depth, were found; it begins with “a,b,c,d”");
  options.column[LB_CSV_DISTANCE] = 3;
  options.column[LB_CSV_DEPTH] = 1;
  options.unit = LB_CSV_UNIT_FEET;
  import = lb_import_parse (text, strlen (text), &options, NULL, NULL, NULL, NULL);
  assert_non_null (import);
  assert_int_equal (import->soundings->len, 2);
  assert_int_equal (import->bad[LB_BAD_LINE_FORM], 1);
  assert_near (sounding (import, 1)->along, 6.096, 1e-12);
  assert_near (sounding (import, 1)->depth, 1.6764, 1e-12);
}

static void
rubbish_is_refused (void **state)
{
  const char *const texts[] = {
    "", "\n\n", "hello", "$", "$GPRMC,", "1\n2\n3\n", "#\n", "depth\n"
  };
  TestRandom random = { 99 };

  {
    g_autoptr (GError) error = NULL;

    assert_null (parse ("\xef\xbb\xbf \n", &error));
    assert_string_equal (error->message, "this file is empty");
  }
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_null (parse (texts[i], &error));
      assert_int_equal (error->domain, LB_FILE_ERROR);
    }
  for (size_t i = 0; i < test_count (2000); i++)
    {
      char bytes[500];
      g_autoptr (LbImport) import = NULL;

      for (gsize k = 0; k < sizeof bytes; k++)
        bytes[k] = (char) (int) test_random (&random, 0, 256);
      import = lb_import_parse (bytes, sizeof bytes, NULL, NULL, NULL, NULL, NULL);
      assert_true (!import || import->soundings->len > 0);
    }
}

/* ---- The profile ---- */

/* By hand: 41 soundings every metre over a bed that falls from 4 m by 1 m in 20 and rises again,
 * with two spikes. Three points tell all of it. */
static void
a_profile_is_the_one_worked_out_by_hand (void **state)
{
  g_autoptr (GString) text = g_string_new ("distance,depth\n");
  g_autoptr (LbImport) import = NULL;
  LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
  LbBedProfile profile;

  for (int k = 0; k <= 40; k++)
    {
      double depth = 4 + (k <= 20 ? k : 40 - k) / 20.0;
      char number[G_ASCII_DTOSTR_BUF_SIZE];

      if (k == 7 || k == 30)
        depth = 1.2;
      g_string_append_printf (text, "%d,%s\n", k, g_ascii_dtostr (number, sizeof number, depth));
    }
  import = parse_well (text->str);
  options.boat_went_upstream = FALSE;
  options.transducer_depth = 0.25;
  assert_true (lb_import_profile (import, &options, &profile, NULL));
  assert_int_equal (profile.spikes, 2);
  assert_int_equal (profile.used, 39);
  assert_int_equal (profile.n, 3);
  assert_near (profile.x[0], 0, 1e-9);
  assert_near (profile.x[1], 20, 1e-9);
  assert_near (profile.x[2], 40, 1e-9);
  assert_near (profile.depth[0], 4.25, 1e-9);
  assert_near (profile.depth[1], 5.25, 1e-9);
  assert_near (profile.depth[2], 4.25, 1e-9);
  assert_less (profile.off, 1e-9);

  /* Without the filter the spikes are in it, and depths no bed has are left out and counted. */
  options.spike_limit = 0;
  options.transducer_depth = -1.15;
  assert_true (lb_import_profile (import, &options, &profile, NULL));
  assert_int_equal (profile.spikes, 0);
  assert_int_equal (profile.out_of_range, 2);
}

/* The boat goes upstream: what it passed first lies furthest downstream. */
static void
upstream_turns_it_round (void **state)
{
  g_autoptr (LbImport) import = parse_well ("0,4\n10,5\n30,7\n");
  LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
  LbBedProfile profile;

  options.tolerance = 0;
  assert_true (lb_import_profile (import, &options, &profile, NULL));
  assert_int_equal (profile.n, 2); /* 4, 5 and 7 lie on one line */
  assert_near (profile.depth[0], 7, 1e-12);
  assert_near (profile.x[1], 30, 1e-12);
  assert_near (profile.depth[1], 4, 1e-12);
}

/* However long the log, the points are few, rising, and within what they claim to be off. */
static void
a_profile_keeps_its_promises (void **state)
{
  TestRandom random = { 5 };

  for (size_t trial = 0; trial < test_count (60); trial++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (LbImport) import = NULL;
      LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
      LbBedProfile profile;
      double x = 0, depth = 5;

      for (int k = 0; k < 800; k++)
        {
          g_string_append_printf (text, "%d.%03d\t%d.%03d\n", (int) x, (int) (fmod (x, 1) * 1000),
                                  (int) depth, (int) (fmod (depth, 1) * 1000));
          x += test_random (&random, 0, 1.5);
          depth = fmin (fmax (depth + test_random (&random, -0.2, 0.2), 1), 20);
        }
      import = parse_well (text->str);
      options.most_points = (gsize) test_random (&random, 2, 513);
      options.tolerance = test_random (&random, 0, 0.3);
      assert_true (lb_import_profile (import, &options, &profile, NULL));
      assert_in_range (profile.n, 2, options.most_points);
      assert_true (profile.off <= options.tolerance || profile.n == options.most_points);
      for (gsize i = 1; i < profile.n; i++)
        assert_less (profile.x[i - 1] + 0.0999, profile.x[i]);
    }
}

/* ---- Long logs ---- */

typedef struct
{
  double last;
  guint calls;
  GCancellable *cancellable; /* cancelled at the third call */
} Watch;

static void
progress_cb (double share, gpointer data)
{
  Watch *watch = data;

  assert_true (share >= watch->last && share <= 1);
  watch->last = share;
  if (++watch->calls == 3 && watch->cancellable)
    g_cancellable_cancel (watch->cancellable);
}

static char *
write_long_log (void)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autofree char *folder = g_dir_make_tmp (NULL, NULL);
  char *path = g_build_filename (folder, "pass.log", NULL);

  for (int k = 0; k < 20000; k++)
    {
      log_add_fix (log, 0.5 * k, k);
      log_add_depth (log, 5 + sin (k / 50.0));
    }
  assert_true (g_file_set_contents (path, log->str, (gssize) log->len, NULL));
  return path;
}

static void
finished_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  *(GAsyncResult **) data = g_object_ref (result);
}

static void
a_long_log_tells_how_far_it_is_and_can_be_stopped (void **state)
{
  g_autofree char *path = write_long_log ();
  g_autofree char *folder = NULL;
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GAsyncResult) result = NULL;
  g_autoptr (LbImport) import = NULL;
  g_autoptr (GError) error = NULL;
  Watch watch = { 0 };

  lb_import_read_async (file, NULL, progress_cb, &watch, NULL, finished_cb, &result);
  while (!result)
    g_main_context_iteration (NULL, TRUE);
  import = lb_import_read_finish (result, &error);
  assert_non_null (import);
  assert_int_equal (import->soundings->len, 19999);
  assert_true (watch.calls > 5);
  assert_near (watch.last, 1, 0);

  watch = (Watch){ .cancellable = cancellable };
  assert_null (lb_import_read (file, NULL, progress_cb, &watch, cancellable, &error));
  assert_true (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  remove (path);
  folder = g_path_get_dirname (path);
  remove (folder);
}

static void
a_missing_file_is_named (void **state)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/no/such/track.log");
  g_autoptr (GError) error = NULL;

  assert_null (lb_import_read (file, NULL, NULL, NULL, NULL, &error));
  assert_int_equal (error->domain, LB_FILE_ERROR);
  assert_non_null (strstr (error->message, "/no/such/track.log"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (published_sentences_are_read),
    cmocka_unit_test (wrong_checksums_are_counted),
    cmocka_unit_test (a_flipped_character_is_found),
    cmocka_unit_test (what_is_not_known_is_not_zero),
    cmocka_unit_test (twice_told_counts_once),
    cmocka_unit_test (midnight_and_gaps),
    cmocka_unit_test (a_boat_that_lies_still_goes_nowhere),
    cmocka_unit_test (gpx_depths_are_read),
    cmocka_unit_test (broken_gpx_is_refused),
    cmocka_unit_test (lengths_are_the_published_ones),
    cmocka_unit_test (tables_of_any_kind_are_read),
    cmocka_unit_test (other_encodings_are_told_by_their_mark),
    cmocka_unit_test (unmarked_utf16_is_told_by_its_zeros),
    cmocka_unit_test (limits_are_round_in_the_users_units),
    cmocka_unit_test (what_is_no_text_is_refused),
    cmocka_unit_test (columns_can_be_told),
    cmocka_unit_test (rubbish_is_refused),
    cmocka_unit_test (a_profile_is_the_one_worked_out_by_hand),
    cmocka_unit_test (upstream_turns_it_round),
    cmocka_unit_test (a_profile_keeps_its_promises),
    cmocka_unit_test (a_long_log_tells_how_far_it_is_and_can_be_stopped),
    cmocka_unit_test (a_missing_file_is_named),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
