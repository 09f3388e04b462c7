/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli pass" and "draw --time": what they print and write, and what they refuse. */
#include "cli-run.h"

#include <signal.h>
#include <string.h>

/* ---- The summary ---- */

static void
a_summary_is_printed (void **state)
{
  g_autofree char *file = sample ("two-humps.rig");
  g_auto (Run) us = run ("pass", file, "--units=us");
  g_auto (Run) metric = run ("pass", file, "--units=metric");
  static const char *const parts[] = { "over two humps",
                                       "Of the time in the band: lower lure ",
                                       "The weight touches",
                                       " lbf in the hand",
                                       "\nLower lure: floating minnow",
                                       "In the band ",
                                       "On the bed ",
                                       "Contact 1 ",
                                       "Lines come within ",
                                       "Within 2 in ",
                                       "Never wrap the wire" };

  assert_int_equal (us.status, 0);
  assert_string_equal (us.err, "");
  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    assert_contains (us.out, parts[i]);
  assert_int_equal (metric.status, 0);
  assert_contains (metric.out, "Within 5.1 cm ");
  assert_null (strstr (metric.out, " lbf"));
}

/* Over a plane bed with a steady boat nothing happens, and nothing is said to have happened. */
static void
nothing_happens_over_a_plane_bed (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) plain = run ("pass", file, "--set", "pass.duration_s=10");

  assert_int_equal (plain.status, 0);
  assert_contains (plain.out, " never");
  assert_contains (plain.out, "Most in the hand     1.2 lbf\n");
  assert_null (strstr (plain.out, "Contact"));
  assert_null (strstr (plain.out, "tangle"));
}

static void
a_remark_of_the_start_is_printed (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) high = run ("pass", file, "--set", "pass.duration_s=2", "--set",
                           "mainline.line_out.weight_above_bed_m=50");

  assert_int_equal (high.status, 0);
  assert_contains (high.out, "At the start: The weight cannot be held as high as");
}

/* ---- Numbers ---- */

static double
field (const char *line, int column)
{
  g_auto (GStrv) fields = g_strsplit (line, ",", -1);

  assert_true (column < (int) g_strv_length (fields));
  return g_ascii_strtod (fields[column], NULL);
}

static int
column_of (const char *heading, const char *name)
{
  g_auto (GStrv) fields = g_strsplit (heading, ",", -1);

  for (int i = 0; fields[i]; i++)
    if (g_str_equal (fields[i], name))
      return i;
  fail_msg ("no column %s", name);
  return -1;
}

/* 12 m at 0.4 m/s, 30 s, from x = 12: the boat is where it must be, the steady run stays, and a
 * comma is never a decimal sign. */
static void
a_table_of_numbers_is_printed (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  const char *arguments[] = { "pass",
                              file,
                              "--csv",
                              "--every=2.5",
                              "--set=boat.speed_over_ground_m_s=0.4",
                              "--set=pass.course=[{\"distance_m\": 12}]",
                              "--set=pass.start_m=12",
                              NULL };
  g_auto (Run) here = run_in (NULL, arguments);
  g_auto (Run) there = run_in ("de_DE.UTF-8", arguments);
  g_auto (GStrv) lines = g_strsplit (here.out, "\n", -1);
  int time = column_of (lines[0], "time_s"), x = column_of (lines[0], "reel_x_m");
  int weight = column_of (lines[0], "weight_x_m");

  assert_int_equal (here.status, 0);
  assert_string_equal (here.out, there.out);
  assert_int_equal (g_strv_length (lines), 1 + 13 + 1);
  column_of (lines[0], "lure_2_tension_n");
  for (int i = 0; i < 13; i++)
    {
      assert_near (field (lines[1 + i], time), 2.5 * i, 1e-6);
      assert_near (field (lines[1 + i], x), 12 - 0.4 * 2.5 * i, 2e-6);
      assert_near (field (lines[1 + i], weight) - field (lines[1 + i], x),
                   field (lines[1], weight) - field (lines[1], x), 1e-5);
    }
}

/* The first moment is the steady run that "run" has there. */
static void
json_starts_with_the_steady_run (void **state)
{
  g_autofree char *file = sample ("two-humps.rig");
  g_auto (Run) pass = run ("pass", file, "--json", "--every", "10", "--set", "pass.duration_s=25");
  g_auto (Run) steady = run ("run", file, "--json");
  g_autoptr (JsonNode) pass_node = parse (pass.out);
  g_autoptr (JsonNode) steady_node = parse (steady.out);
  JsonObject *top = json_node_get_object (pass_node);
  JsonArray *samples = json_object_get_array_member (top, "samples");
  JsonObject *first = json_array_get_object_element (samples, 0);
  JsonObject *last = json_array_get_object_element (samples, 3);
  JsonObject *weight = json_object_get_object_member (top, "weight");

  assert_int_equal (pass.status, 0);
  assert_int_equal (json_array_get_length (samples), 4);
  assert_near (number (last, "time_s"), 25, 1e-9);
  assert_near (number (first, "line_out_m"),
               number (json_node_get_object (steady_node), "line_out_m"), 1e-6);
  assert_near (number (first, "wire_angle_deg"),
               number (json_node_get_object (steady_node), "wire_angle_deg"), 1e-5);
  assert_near (number (weight, "in_band_s") + number (weight, "above_band_s")
                   + number (weight, "below_band_s") + number (weight, "on_bed_s"),
               number (top, "duration_s"), 1e-5);
}

/* A second rig, a pound heavier, 2 m to the left: both are told, and as far apart as their reels.
 */
static void
two_rigs_are_told (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  const char *arguments[] = { "pass",
                              file,
                              "--units=us",
                              "--set=pass.duration_s=3",
                              "--set=pass.second_weight_kg=0.907",
                              "--set=pass.reels_apart_m=2",
                              NULL,
                              NULL };
  static const char *const parts[] = { " on the right\n",
                                       "\n  Second rig  ",
                                       "\nFirst rig: Line\n",
                                       "\nFirst rig: Weight: 1¼ lb\n",
                                       "\nSecond rig: Line\n",
                                       "\nSecond rig: Weight: 2 lb\n",
                                       "\nSecond rig: Upper lure: floating minnow",
                                       "First rig's lines come within ",
                                       "Second rig's lines come within ",
                                       "Two rigs come within " };
  g_auto (Run) words = run_in (NULL, arguments);
  arguments[6] = "--csv";
  g_auto (Run) csv = run_in (NULL, arguments);
  arguments[6] = "--json";
  g_auto (Run) json = run_in (NULL, arguments);
  g_auto (GStrv) lines = g_strsplit (csv.out, "\n", -1);
  g_autoptr (JsonNode) node = parse (json.out);
  JsonObject *second = json_object_get_object_member (json_node_get_object (node), "second");
  static const char *const own[] = { "weight_kg",
                                     "highest_tension_at_reel_n",
                                     "highest_tension_at_s",
                                     "least_wire_angle_deg",
                                     "most_wire_angle_deg",
                                     "closest_lines_m",
                                     "closest_lines_at_s" };

  assert_int_equal (words.status, 0);
  assert_contains (words.out, "First rig: Of the time in the band: lower lure ");
  assert_contains (words.out, " Second rig:");
  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    assert_contains (words.out, parts[i]);
  assert_near (field (lines[1], column_of (lines[0], "reel_y_m")), 1, 1e-6);
  assert_near (field (lines[1], column_of (lines[0], "second_weight_y_m")), -1, 1e-6);
  assert_near (field (lines[60], column_of (lines[0], "between_rigs_m")), 2, 0.01);
  assert_near (number (second, "weight_kg"), 0.907, 1e-9);
  /* Heavier, it hangs steeper; each has the readings of the other. */
  assert_true (number (second, "most_wire_angle_deg")
               < number (json_node_get_object (node), "least_wire_angle_deg"));
  for (size_t i = 0; i < G_N_ELEMENTS (own); i++)
    {
      number (json_node_get_object (node), own[i]);
      number (second, own[i]);
    }
  assert_true (json_object_has_member (json_node_get_object (node), "between_rigs_m"));
  column_of (lines[0], "closest_lines_m");
  column_of (lines[0], "second_closest_lines_m");
}

/* ---- Broken off ---- */

/* An hour takes seconds to compute: a signal ends it with what is there. */
static void
what_was_computed_is_printed (void **state)
{
  g_autofree char *file = sample ("two-humps.rig");
  const char *arguments[] = { "pass", file, "--set=pass.duration_s=3600", NULL, NULL };
  g_auto (Run) words = run_interrupted (SIGINT, arguments);
  arguments[3] = "--json";
  g_auto (Run) json = run_interrupted (SIGTERM, arguments);
  g_autoptr (JsonNode) node = parse (json.out);
  JsonObject *top = json_node_get_object (node);
  JsonArray *samples = json_object_get_array_member (top, "samples");
  guint n = json_array_get_length (samples);

  assert_int_equal (words.status, 1);
  assert_contains (words.err, " of 3600 s: it was interrupted\n");
  assert_contains (words.out, "The pass breaks off: what follows is of its first ");
  assert_contains (words.out, " of 3600 s\n");
  assert_contains (words.out, "Of the time in the band: lower lure ");
  assert_int_equal (json.status, 1);
  assert_false (json_object_get_boolean_member (top, "complete"));
  assert_in_range (n, 1, 19999);
  assert_near (number (json_array_get_object_element (samples, n - 1), "time_s"),
               number (top, "duration_s"), 1e-6);
}

static void
a_moment_after_the_break_is_not_drawn (void **state)
{
  g_autofree char *file = sample ("two-humps.rig");
  g_autofree char *path = output ("never.png");
  g_autofree char *early_path = output ("early.png");
  const char *arguments[] = { "draw", file, "--set=pass.duration_s=3600", "--time=3599", "-o",
                              path,   NULL };
  g_auto (Run) late = run_interrupted (SIGINT, arguments);

  assert_int_equal (late.status, 1);
  assert_contains (late.err, "layback-cli: pass: it breaks off at ");
  assert_contains (late.err, ", before 3599 s: it was interrupted\n");
  assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  arguments[3] = "--time=0";
  arguments[5] = early_path;
  g_auto (Run) early = run_interrupted (SIGINT, arguments);
  assert_int_equal (early.status, 1);
  assert_contains (early.err, " of 3600 s: it was interrupted\n");
  assert_true (g_file_test (early_path, G_FILE_TEST_EXISTS));
}

/* ---- A drawing ---- */

static void
a_moment_is_drawn (void **state)
{
  g_autofree char *file = sample ("two-humps.rig");
  static const char *const names[] = { "moment.png", "moment.svg", "moment.pdf" };

  for (size_t i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = output (names[i]);
      g_autofree char *above_name = g_strconcat ("above-", names[i], NULL);
      g_autofree char *path_above = output (above_name);
      g_autofree char *bytes = NULL;
      g_autofree char *bytes_above = NULL;
      g_auto (Run) drawn = run ("draw", file, "--time=60", "-o", path, "--units=us");
      g_auto (Run) above = run ("draw", file, "--time=160", "--above", "-o", path_above, "--dark");
      gsize length, length_above;

      assert_int_equal (drawn.status, 0);
      assert_int_equal (above.status, 0);
      assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      assert_true (g_file_get_contents (path_above, &bytes_above, &length_above, NULL));
      assert_true (length > 5000);
      assert_true (length_above > 5000);
      assert_true (length != length_above || memcmp (bytes, bytes_above, length) != 0);
    }
}

/* How many letters a drawing of two rigs shows, in still water, where a rig hangs straight down
 * whatever it weighs. */
static int
letters_with_second (const char *weight)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *path = output ("two-rigs.svg");
  g_autofree char *second = g_strconcat ("pass.second_weight_kg=", weight, NULL);
  g_autofree char *text = NULL;
  int n = 0;
  g_auto (Run) drawn = run ("draw", file, "--time=0", "-o", path, "--units=us", "--set", second,
                            "--set=pass.duration_s=2", "--set=boat.speed_over_ground_m_s=0",
                            "--set=river.surface_current_m_s=0");

  assert_string_equal (drawn.err, "");
  assert_true (g_file_get_contents (path, &text, NULL, NULL));
  for (const char *at = text; (at = strstr (at, "xlink:href=\"#glyph")); at++)
    n++;
  return n;
}

/* 4 lb and 4 1/4 lb, which is a letter longer. */
static void
the_second_weight_is_named (void **state)
{
  assert_int_equal (letters_with_second ("1.927767"), letters_with_second ("1.814369") + 1);
}

/* It takes 193.6 s or so, told as 194 s. */
static void
the_end_that_is_told_is_drawn (void **state)
{
  g_autofree char *file = sample ("two-humps.rig");
  g_autofree char *path = output ("end.png");
  g_auto (Run) drawn = run ("draw", file, "--time=194 s", "-o", path);

  assert_string_equal (drawn.err, "");
  assert_int_equal (drawn.status, 0);
}

/* ---- What is refused ---- */

static void
wrong_uses_are_explained (void **state)
{
  g_autofree char *file = sample ("two-humps.rig");
  const struct
  {
    int status;
    const char *arguments[6], *message;
  } cases[] = {
    { 2, { "pass" }, "pass: no FILE given" },
    { 2, { "pass", file, "--csv", "--json" }, "pass: --csv and --json exclude one another" },
    { 2, { "pass", file, "--every=1" }, "pass: --every goes with --csv or --json" },
    { 2,
      { "pass", file, "--csv", "--every=0.001" },
      "--every: found \"0.001\", expected seconds from 0.01 to 3600" },
    { 2,
      { "pass", file, "--csv", "--every=often" },
      "--every: found \"often\", expected seconds from 0.01 to 3600" },
    { 2, { "draw", file, "--above", "-o", "x.png" }, "draw: --above goes with --time" },
    { 2,
      { "draw", file, "--time=-1", "-o", "x.png" },
      "--time: found \"-1\", expected seconds from 0 to 3600" },
    { 2,
      { "draw", file, "--time=1e300", "-o", "x.png" },
      "--time: found \"1e300\", expected seconds from 0 to 3600" },
    { 1,
      { "draw", file, "--time=500 s", "-o", "x.png" },
      "--time: found 500 s, but the pass takes 194 s" },
    { 1,
      { "pass", file, "--set=pass.course[0].speed_over_ground_m_s=0" },
      "pass: A leg of the course is never over, as the boat does not move." },
    { 1,
      { "pass", file, "--set=pass.course[0].distance_m=3000" },
      "pass: The pass takes more than an hour." },
    { 1,
      { "pass", file, "--set=pass.course[1].turn_deg=700", "--set=pass.course[1].duration_s=2" },
      "pass: The boat would turn too quickly: a leg is too short for it." },
    { 1,
      { "pass", file, "--set=pass.hand.motion=jig" },
      "--set: pass.hand.motion: found the text \"jig\", expected \"hold\", \"lift-and-drop\" or "
      "\"follow-bed\"" },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Run) wrong = run_in (NULL, cases[i].arguments);

      assert_refused (&wrong, cases[i].status, cases[i].message);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_summary_is_printed),
    cmocka_unit_test (nothing_happens_over_a_plane_bed),
    cmocka_unit_test (a_remark_of_the_start_is_printed),
    cmocka_unit_test (a_table_of_numbers_is_printed),
    cmocka_unit_test (json_starts_with_the_steady_run),
    cmocka_unit_test (two_rigs_are_told),
    cmocka_unit_test (what_was_computed_is_printed),
    cmocka_unit_test (a_moment_after_the_break_is_not_drawn),
    cmocka_unit_test (a_moment_is_drawn),
    cmocka_unit_test (the_second_weight_is_named),
    cmocka_unit_test (the_end_that_is_told_is_drawn),
    cmocka_unit_test (wrong_uses_are_explained),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
