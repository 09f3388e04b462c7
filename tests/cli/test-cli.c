/* SPDX-License-Identifier: GPL-3.0-or-later */
/* layback-cli as a user calls it: what it prints, what it says when it refuses, how it exits. */
#include <string.h>
#include <sys/stat.h>
#include <glib/gstdio.h>

#include "cli-run.h"

/* ---- run ---- */

static void
the_table_says_it_all (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) us = run ("run", file, "--units", "us");
  g_auto (Run) metric = run ("run", "--units=metric", file);
  static const char *const parts[] = { "Brackle River, Stony Bend",
                                       "Both lures run in the band",
                                       "Line out",
                                       "Wire angle",
                                       "In the hand",
                                       "Lower lure: floating minnow, 7 cm, medium lip",
                                       "Upper lure",
                                       "Level difference",
                                       "Never wrap the wire",
                                       "life jacket",
                                       "Local rules" };

  assert_int_equal (us.status, 0);
  assert_string_equal (us.err, "");
  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    assert_contains (us.out, parts[i]);
  assert_contains (us.out, " ft");
  assert_contains (us.out, " lbf in the hand.");
  assert_int_equal (metric.status, 0);
  assert_null (strstr (metric.out, " lbf"));
  assert_contains (metric.out, " N in the hand.");
}

static void
us_units_are_the_default (void **state)
{
  g_autofree char *file = sample ("single-leader.rig");
  g_auto (Run) plain = run ("run", file);
  g_auto (Run) us = run ("run", file, "--units", "us");

  assert_int_equal (plain.status, 0);
  assert_string_equal (plain.out, us.out);
}

static void
json_has_the_agreed_keys (void **state)
{
  g_autofree char *file = sample ("three-leaders.rig");
  g_auto (Run) result = run ("run", file, "--json");
  g_autoptr (JsonNode) node = NULL;
  JsonObject *top, *weight, *lure;
  JsonArray *attachments, *lures;

  assert_int_equal (result.status, 0);
  assert_string_equal (result.err, "");
  node = parse (result.out);
  top = json_node_get_object (node);
  assert_true (json_object_get_boolean_member (top, "converged"));
  assert_true (number (top, "line_out_m") > 5);
  assert_true (number (top, "wire_angle_deg") > 5 && number (top, "wire_angle_deg") < 85);
  assert_true (number (top, "tension_at_reel_n") > 5);
  assert_true (number (top, "iterations") >= 1);
  assert_true (number (top, "segments") >= 20);
  weight = json_object_get_object_member (top, "weight");
  assert_true (number (weight, "layback_m") > 0);
  assert_near (number (weight, "height_m"), 0.1016, 1e-6);
  assert_false (json_object_get_boolean_member (weight, "on_bed"));
  attachments = json_object_get_array_member (top, "attachments");
  lures = json_object_get_array_member (top, "lures");
  assert_int_equal (json_array_get_length (attachments), 3);
  assert_int_equal (json_array_get_length (lures), 3);
  assert_true (number (json_array_get_object_element (attachments, 2), "height_m")
               > number (json_array_get_object_element (attachments, 0), "height_m"));
  lure = json_array_get_object_element (lures, 1);
  assert_true (number (lure, "layback_m") > number (weight, "layback_m"));
  assert_true (number (lure, "height_m") >= 0);
  assert_true (number (lure, "water_speed_m_s") > 0.4);
  assert_true (number (lure, "leader_tension_n") > 0);
  assert_false (json_object_get_boolean_member (lure, "on_bed"));
}

static void
the_fine_mesh_is_finer (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) plain = run ("run", file, "--json");
  g_auto (Run) fine = run ("run", file, "--json", "--mesh", "fine");
  g_autoptr (JsonNode) a = parse (plain.out);
  g_autoptr (JsonNode) b = parse (fine.out);

  assert_true (number (json_node_get_object (b), "segments")
               > 4 * number (json_node_get_object (a), "segments"));
  assert_near (number (json_node_get_object (b), "line_out_m"),
               number (json_node_get_object (a), "line_out_m"), 1e-3);
}

static void
a_fish_is_felt (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) done = run ("run", file, "--fish", "30 in");
  g_auto (Run) metric = run ("run", file, "--units", "metric", "--fish", "0.8 m");
  g_auto (Run) weak = run ("run", file, "--fish", "30 in", "--set", "leaders[1].breaking_load_n=1");

  assert_int_equal (done.status, 0);
  assert_contains (done.out, "with a fish of 2 ft 6 in on");
  assert_contains (done.out, "upper lure, mouth open");
  assert_contains (done.out, "lower lure, mouth closed");
  assert_null (strstr (strstr (done.out, "with a fish"), "-  "));
  assert_contains (metric.out, "with a fish of 0.8");
  assert_contains (weak.out, "  ! The upper leader is pulled harder than it can bear");
  assert_null (strstr (strstr (done.out, "with a fish"), "harder than it can bear"));
}

/* In JSON the same in SI: a load for each mouth and speed of the boat. The drag of a closed mouth
 * is that of the wetted area of 0.4 length^2 with a coefficient of 0.015 (Webb 1975, from memory),
 * in water of 1000 kg/m3. */
static void
a_fish_is_told_in_json (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) done = run ("run", file, "--json", "--fish", "30 in", "--set",
                           "boat.speed_over_ground_m_s=0.4", "--set", "river.density_kg_m3=1000");
  g_autoptr (JsonNode) node = parse (done.out);
  JsonObject *top = json_node_get_object (node), *fish, *lure;
  JsonArray *lures, *closed, *open;

  assert_int_equal (done.status, 0);
  assert_true (json_object_get_boolean_member (top, "converged"));
  fish = json_object_get_object_member (top, "fish");
  assert_near (number (fish, "length_m"), 0.762, 1e-12);
  lures = json_object_get_array_member (fish, "lures");
  assert_int_equal (json_array_get_length (lures), 2);
  for (guint i = 0; i < 2; i++)
    {
      lure = json_array_get_object_element (lures, i);
      closed = json_object_get_array_member (lure, "mouth_closed");
      open = json_object_get_array_member (lure, "mouth_open");
      assert_int_equal (json_array_get_length (closed), 3);
      assert_int_equal (json_array_get_length (open), 3);
      for (guint k = 0; k < 3; k++)
        {
          JsonObject *shut = json_array_get_object_element (closed, k);
          double speed = number (shut, "water_speed_m_s");

          assert_near (number (shut, "speed_over_ground_m_s"), 0.4 - 0.2 * k, 1e-12);
          assert_near (number (shut, "fish_drag_n"),
                       0.5 * 1000 * 0.015 * 0.4 * 0.762 * 0.762 * speed * speed, 1e-9);
          assert_true (number (shut, "tension_at_reel_n") > number (shut, "leader_tension_n"));
          assert_true (number (json_array_get_object_element (open, k), "leader_tension_n")
                       > 2 * number (shut, "leader_tension_n"));
        }
    }
}

/* "0.762" is in feet or metres, as the units say; a rig that has no answer has no fish. */
static void
a_fish_without_a_unit_is_in_the_users (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) metric = run ("run", file, "--json", "--fish=0.762", "--units=metric");
  g_auto (Run) us = run ("run", file, "--json", "--fish=2.5", "--units=us");
  g_auto (Run) none = run ("run", file, "--json");

  assert_string_equal (metric.out, us.out);
  assert_contains (us.out, "\"fish\"");
  assert_null (strstr (none.out, "fish"));
}

/* s until a straight line from the reel to the weight, that stretches by its stiffness, pulls with
 * `pull`: Pythagoras and Hooke. What it sags is left out, so it comes taut a little late. */
static double
straight_until (JsonObject *top, double speed, double pull)
{
  JsonObject *weight = json_object_get_object_member (top, "weight");
  double length = number (top, "line_out_m") * (1 + pull / 71510) + 0.9144 * (1 + pull / 770);
  double deep = 6.096 + 0.4572 - number (weight, "height_m");
  double ahead = number (weight, "layback_m"), reach = sqrt (length * length - deep * deep);

  return speed > 0 ? (reach - ahead) / speed : (reach + ahead) / -speed;
}

/* The wire of the sample breaks at 792 N. */
static void
check_hang_up (JsonObject *top, JsonObject *held, double speed)
{
  JsonArray *pulls = json_object_get_array_member (held, "pulls");
  guint n = json_array_get_length (pulls);
  JsonObject *last = json_array_get_object_element (pulls, n - 1);

  assert_near (number (held, "speed_over_ground_m_s"), speed, 1e-6);
  assert_near (number (held, "until_hand_limit_s"), straight_until (top, speed, 196), 0.06);
  assert_near (number (held, "until_breaks_s"), straight_until (top, speed, 792), 0.03);
  assert_string_equal (json_object_get_string_member (held, "breaks"), "mainline");
  assert_near (number (json_array_get_object_element (pulls, 0), "tension_at_reel_n"),
               number (top, "tension_at_reel_n"), 1e-9);
  assert_near (number (last, "time_s"), number (held, "until_breaks_s"), 1e-9);
  /* It breaks where it pulls hardest: what the water adds along it is less than 4 N. */
  assert_near (number (last, "tension_at_reel_n"), 792, 4);
  for (guint i = 1; i < n; i++)
    assert_near (number (json_array_get_object_element (pulls, i), "time_s")
                     - number (json_array_get_object_element (pulls, i - 1), "time_s"),
                 number (last, "time_s") / (n - 1), 1e-9);
}

static void
a_snag_is_told_over_time (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) done = run ("run", file, "--snag", "--json");
  g_autoptr (JsonNode) node = parse (done.out);
  JsonObject *top = json_node_get_object (node);
  JsonObject *snag = json_object_get_object_member (top, "snag"), *weight, *lure;
  JsonArray *lures = json_object_get_array_member (snag, "lures");

  assert_int_equal (done.status, 0);
  assert_near (number (snag, "hand_limit_n"), 196, 0);
  weight = json_object_get_object_member (snag, "weight");
  check_hang_up (top, json_object_get_object_member (weight, "going_on"), 0.402336);
  check_hang_up (top, json_object_get_object_member (weight, "motor_stopped"), -1.207008);
  assert_int_equal (json_array_get_length (lures), 2);
  for (guint i = 0; i < 2; i++)
    {
      lure = json_object_get_object_member (json_array_get_object_element (lures, i), "going_on");
      assert_string_equal (json_object_get_string_member (lure, "breaks"), "leader");
    }
}

/* In words, in the user's units; a boat at rest pulls no harder as time goes on. */
static void
a_snag_is_told_in_words (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) us = run ("run", file, "--snag", "--units=us");
  g_auto (Run) metric = run ("run", file, "--snag", "--units=metric");
  g_auto (Run) rests = run ("run", file, "--snag", "--set", "boat.speed_over_ground_m_s=0");
  g_auto (Run) plain = run ("run", file);
  static const char *const parts[] = { "With the boat going on at 0.9 mph\n",
                                       "With the motor stopped, drifting at 2.7 mph\n",
                                       "weight          lower lure      upper lure\n",
                                       "now                   1.2 lbf         1.2 lbf ",
                                       "parted          parted          8.5 lbf\n",
                                       "more than 44 lbf      after 2.1 s     parts before ",
                                       "mainline        lower leader    upper leader\n" };

  assert_int_equal (us.status, 0);
  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    assert_contains (us.out, parts[i]);
  assert_contains (metric.out, "more than 196 N       after 2.1 s ");
  assert_contains (rests.out, "It does not move, and the pull stays as it is.\n");
  assert_null (strstr (plain.out, "hung up on the bed now"));
}

static double
line_out (const char *const *arguments)
{
  g_auto (Run) result = run_in (NULL, arguments);
  g_autoptr (JsonNode) node = NULL;

  if (result.status != 0)
    fail_msg ("%s", result.err);
  node = parse (result.out);
  return number (json_node_get_object (node), "line_out_m");
}

static void
values_can_be_set (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  const char *plain[] = { "run", file, "--json", NULL };
  const char *heavier[] = { "run", file, "--json", "--set", "weight.mass_kg=0.907", NULL };
  const char *given[] = { "run",   "--json",     "--set=mainline.line_out.given_m=5.5",
                          "--set", "leaders=[]", file,
                          NULL };

  assert_true (g_file_get_contents (file, &before, NULL, NULL));
  assert_less (line_out (heavier), line_out (plain) - 0.3);
  assert_near (line_out (given), 5.5, 1e-12);
  assert_true (g_file_get_contents (file, &after, NULL, NULL));
  assert_string_equal (after, before);
}

/* A comma is for people; JSON has a point whatever the locale. */
static void
the_locale_shows_in_the_table_alone (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  const char *json[] = { "run", file, "--json", "--set", "river.depth_m=5.5", NULL };
  const char *table[] = { "run", file, "--units", "metric", NULL };
  g_auto (Run) here = run_in (NULL, json);
  g_auto (Run) there = run_in ("de_DE.UTF-8", json);
  g_auto (Run) shown = run_in ("de_DE.UTF-8", table);

  assert_int_equal (there.status, 0);
  assert_string_equal (there.out, here.out);
  if (!g_file_test (getenv ("LOCPATH"), G_FILE_TEST_IS_DIR))
    skip ();
  assert_true (g_regex_match_simple ("[0-9],[0-9]", shown.out, 0, 0));
  assert_false (g_regex_match_simple ("[0-9]\\.[0-9]", shown.out, 0, 0));
}

static void
no_leaders_is_a_rig_too (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) table = run ("run", file, "--set", "leaders=[]");

  assert_int_equal (table.status, 0);
  assert_contains (table.out, "No leader is attached.");
}

/* Where the line cannot do what is asked the nearest thing is shown, and said to be that. */
static void
the_ends_of_the_line_are_said (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) longest = run ("run", file, "--set", "weight.mass_kg=0.02", "--set",
                              "river.depth_m=100", "--set", "river.surface_current_m_s=6");
  g_auto (Run) shortest = run ("run", file, "--set", "river.depth_m=3", "--set",
                               "mainline.line_out.weight_above_bed_m=4");

  assert_int_equal (longest.status, 0);
  assert_contains (longest.out, "The weight cannot get down to where it should be");
  assert_int_equal (shortest.status, 0);
  assert_contains (shortest.out, "The weight cannot be held as high as asked");
}

/* ---- Refusals ---- */

static void
bad_files_are_refused (void **state)
{
  g_autofree char *missing = output ("no-such.rig");
  g_autofree char *bad =
      g_build_filename (getenv ("LB_TEST_SOURCE_DIR"), "bad", "depth-negative.rig", NULL);
  g_autofree char *message =
      g_strconcat (bad, ": river.depth_m: found -3, expected a number from 0.1 to 100", NULL);
  g_auto (Run) refused = run ("run", bad);
  g_auto (Run) refused_json = run ("run", bad, "--json");
  g_auto (Run) absent = run ("run", missing);

  assert_refused (&refused, 1, message);
  assert_refused (&refused_json, 1, message);
  assert_int_equal (absent.status, 1);
  assert_contains (absent.err, "no-such.rig");
  assert_string_equal (absent.out, "");
}

static void
every_bad_file_ends_with_one_line (void **state)
{
  g_autofree char *folder = g_build_filename (getenv ("LB_TEST_SOURCE_DIR"), "bad", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  size_t n = 0;

  while ((name = g_dir_read_name (dir)))
    if (g_str_has_suffix (name, ".rig") && n++ % 8 == 0)
      {
        g_autofree char *file = g_build_filename (folder, name, NULL);
        g_auto (Run) refused = run ("run", file, "--json");

        assert_int_equal (refused.status, 1);
        assert_string_equal (refused.out, "");
        assert_true (g_str_has_prefix (refused.err, "layback-cli: "));
        assert_ptr_equal (strchr (refused.err, '\n'), refused.err + strlen (refused.err) - 1);
      }
  assert_true (n > 100);
}

static void
bad_values_are_refused (void **state)
{
  static const char *const cases[][2] = {
    { "river.depth_m=-3", "--set: river.depth_m: found -3, expected a number from 0.1 to 100" },
    { "river.depth_m=abc",
      "--set: river.depth_m: found the text \"abc\", expected a number from 0.1 to 100" },
    { "river.depth_m=6,5",
      "--set: river.depth_m: found the text \"6,5\", expected a number from 0.1 to 100" },
    { "river.deep=1",
      "--set: river.deep: unknown key, expected one of bed, profile, depth_m, bed_friction, "
      "surface_current_m_s, along, temperature_c, density_kg_m3, kinematic_viscosity_m2_s, "
      "gravity_m_s2" },
    { "leaders[4].length_m=1", "--set: leaders[4].length_m: there is no such key in this rig" },
    { "leaders[0].length_m=nan",
      "--set: leaders[0].length_m: found the text \"nan\", expected a number from 0.05 to 60" },
    { "weight.mass_kg=1e999",
      "--set: weight.mass_kg: found the text \"1e999\", expected a number from 0.01 to 20" },
    { "band.low_m=3", "--set: band.low_m: found 3, expected less than 0.4572, the high side of the "
                      "band" },
  };
  g_autofree char *file = sample ("spring-run.rig");

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Run) refused = run ("run", file, "--set", cases[i][0]);
      assert_refused (&refused, 1, cases[i][1]);
    }
}

static void
wrong_uses_exit_with_two (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  const struct
  {
    const char *arguments[6];
    const char *message;
  } cases[] = {
    { { NULL }, "no command given" },
    { { "solve", file, NULL }, "unknown command \"solve\"" },
    { { "run", NULL }, "run: no FILE given" },
    { { "run", file, "another.rig", NULL }, "run: more than one FILE given: \"another.rig\"" },
    { { "run", file, "--jsn", NULL }, "Unknown option --jsn" },
    { { "run", file, "--mesh", "coarse", NULL },
      "--mesh: found \"coarse\", expected \"default\" or \"fine\"" },
    { { "run", file, "--fish", "3 lb", NULL },
      "--fish: found \"3 lb\", expected a length from 2 in to 10 ft, such as \"30 in\"" },
    { { "run", file, "--fish", "40 ft", "--json", NULL },
      "--fish: found \"40 ft\", expected a length from 2 in to 10 ft, such as \"30 in\"" },
    { { "run", file, "--fish=4 m", "--units=metric", NULL },
      "--fish: found \"4 m\", expected a length from 5 cm to 3 m, such as \"80 cm\"" },
    { { "run", file, "--units", "imperial", NULL },
      "--units: found \"imperial\", expected \"us\" or \"metric\"" },
    { { "run", file, "--set", "river.depth_m", NULL },
      "--set: found \"river.depth_m\", expected KEY=VALUE" },
    { { "run", file, "--set", "=3", NULL }, "--set: found \"=3\", expected KEY=VALUE" },
    { { "run", file, "--set", NULL }, "Missing argument for --set" },
    { { "draw", file, NULL }, "draw: no output file given (-o OUT.png)" },
    { { "draw", file, "-o", "x.png", "--size=big", NULL },
      "--size: found \"big\", expected WIDTHxHEIGHT, each from 120 to 16384" },
    { { "draw", file, "-o", "x.png", "--size=20000x800", NULL },
      "--size: found \"20000x800\", expected WIDTHxHEIGHT, each from 120 to 16384" },
    { { "draw", file, "-o", "x.png", "--size=1280x800x2", NULL },
      "--size: found \"1280x800x2\", expected WIDTHxHEIGHT, each from 120 to 16384" },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Run) refused = run_in (NULL, cases[i].arguments);
      assert_refused (&refused, 2, cases[i].message);
    }
}

/* A message is one line even when a name is not. */
static void
odd_names_stay_on_one_line (void **state)
{
  g_auto (Run) refused = run ("run", "no\nsuch\nfile.rig");

  assert_int_equal (refused.status, 1);
  assert_ptr_equal (strchr (refused.err, '\n'), refused.err + strlen (refused.err) - 1);
}

static void
check_full_disk (const char *arguments)
{
  g_autofree char *command =
      g_strdup_printf ("'%s' %s >/dev/full 2>/dev/null", getenv ("LB_TEST_CLI"), arguments);

  assert_int_equal (WEXITSTATUS (system (command)), 1);
}

static void
a_full_disk_is_no_answer (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *run_table = g_strdup_printf ("run '%s'", file);
  g_autofree char *run_json = g_strdup_printf ("run '%s' --json", file);

  if (!g_file_test ("/dev/full", G_FILE_TEST_EXISTS))
    skip ();
  check_full_disk (run_table);
  check_full_disk (run_json);
  check_full_disk ("--help");
  check_full_disk ("draw --help");
  check_full_disk ("--version");
}

static void
help_and_version_are_there (void **state)
{
  g_auto (Run) help = run ("--help");
  g_auto (Run) run_help = run ("run", "--help");
  g_auto (Run) draw_help = run ("draw", "-h");
  g_auto (Run) version = run ("--version");

  assert_int_equal (help.status, 0);
  assert_contains (help.out, "draw");
  assert_int_equal (run_help.status, 0);
  assert_contains (run_help.out, "--json");
  assert_contains (run_help.out, "--set=KEY=VALUE");
  assert_int_equal (draw_help.status, 0);
  assert_contains (draw_help.out, "--dark");
  assert_int_equal (version.status, 0);
  assert_true (
      g_regex_match_simple ("^layback-cli [0-9]+\\.[0-9]+\\.[0-9]+\n$", version.out, 0, 0));
}

/* ---- draw ---- */

static void
check_drawn (const char *name, const char *start, const char *option)
{
  g_autofree char *file = sample ("deep-pool.rig");
  g_autofree char *path = output (name);
  g_autofree char *text = NULL;
  gsize length;

  g_unlink (path);
  g_auto (Run) drawn = run ("draw", file, "-o", path, option);
  if (drawn.status != 0)
    fail_msg ("%s", drawn.err);
  assert_string_equal (drawn.out, "");
  assert_true (g_file_get_contents (path, &text, &length, NULL));
  assert_true (length > 2000);
  assert_memory_equal (text, start, strlen (start));
  g_unlink (path);
}

static void
drawings_of_all_kinds_are_written (void **state)
{
  check_drawn ("cli.png", "\x89PNG\r\n\x1a\n", "--size=640x400");
  check_drawn ("cli-dark.png", "\x89PNG\r\n\x1a\n", "--dark");
  check_drawn ("cli.svg", "<?xml", "--units=metric");
  check_drawn ("cli.pdf", "%PDF-", "--set=river.depth_m=7");
}

static void
png_has_the_asked_size (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *path = output ("cli-size.png");
  g_auto (Run) drawn = run ("draw", file, "-o", path, "--size", "700x450");
  g_autofree char *text = NULL;
  const guint8 *bytes;

  assert_int_equal (drawn.status, 0);
  assert_true (g_file_get_contents (path, &text, NULL, NULL));
  /* PNG (ISO/IEC 15948): width and height stand at bytes 16 and 20, most significant first. */
  bytes = (const guint8 *) text;
  assert_int_equal (bytes[18] * 256 + bytes[19], 700);
  assert_int_equal (bytes[22] * 256 + bytes[23], 450);
  g_unlink (path);
}

static void
drawings_that_cannot_be_made_are_refused (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) folder = run ("draw", file, "-o", "/proc/none/x.png");
  g_auto (Run) kind = run ("draw", file, "-o", "x.bmp");
  g_auto (Run) value = run ("draw", file, "-o", "/proc/none/x.png", "--set", "river.depth_m=0");

  assert_int_equal (folder.status, 1);
  assert_true (g_str_has_prefix (folder.err, "layback-cli: "));
  assert_int_equal (kind.status, 2);
  assert_true (g_str_has_prefix (kind.err, "layback-cli: "));
  assert_refused (&value, 1, "--set: river.depth_m: found 0, expected a number from 0.1 to 100");
}

/* 100 ft are 30.48 m (NIST SP 811, from memory). */
static void
a_table_can_be_explained (void **state)
{
  g_autofree char *folder = g_dir_make_tmp (NULL, NULL);
  g_autofree char *log = g_build_filename (folder, "tabelle.csv", NULL);
  const char *const plain[] = { "import", log, NULL };
  const char *const told[] = { "import", log,      "--columns", "3,1",  "--table-units",  "feet",
                               "--to",   "200 ft", "--spike",   "2 ft", "--units=metric", NULL };
  const char *const wrong[] = { "import", log, "--columns", "3", NULL };
  const char *const zero[] = { "import", log, "--columns", "0,1", NULL };
  const char *const spike[] = { "import", log, "--columns", "3,1", "--spike", "some", NULL };
  const char *const stretch[] = { "import", log,    "--columns", "3,1", "--from",
                                  "50 ft",  "--to", "10 m",      NULL };

  assert_true (g_file_set_contents (
      log, "Tiefe;Art;Weg\n10,0;a;0\n12,0;b;100\n10,0;c;200\n11,0;d;300\n", -1, NULL));
  {
    g_auto (Run) unknown = run_in (NULL, plain);
    g_auto (Run) done = run_in (NULL, told);
    g_auto (Run) one = run_in (NULL, wrong);
    g_auto (Run) none = run_in (NULL, zero);
    g_auto (Run) no_number = run_in (NULL, spike);
    g_auto (Run) no_stretch = run_in (NULL, stretch);

    assert_int_equal (unknown.status, 1);
    assert_non_null (strstr (unknown.err, "Tiefe;Art;Weg"));
    assert_int_equal (done.status, 0);
    assert_non_null (strstr (done.out, "distance in column 3, depth in column 1, in feet"));
    assert_non_null (strstr (done.out, "Bed of 3 points over 60.96 m"));
    assert_int_equal (one.status, 1);
    assert_true (g_str_has_prefix (one.err, "layback-cli: --columns: "));
    assert_int_equal (none.status, 1);
    assert_int_equal (no_number.status, 1);
    assert_true (g_str_has_prefix (no_number.err, "layback-cli: --spike: "));
    assert_int_equal (no_stretch.status, 1);
    assert_non_null (strstr (no_stretch.err, "--from needs a --to"));
  }
  g_unlink (log);
  g_rmdir (folder);
}

/* A bed of 4, 5 and 4 m over 40 m, worked out by hand. */
static void
a_log_becomes_a_bed (void **state)
{
  g_autofree char *folder = g_dir_make_tmp (NULL, NULL);
  g_autofree char *log = g_build_filename (folder, "pass.csv", NULL);
  g_autofree char *rig = g_build_filename (folder, "pass.rig", NULL);
  const char *const import[] = { "import", log, "-o", rig, "--downstream", "--units=metric", NULL };
  const char *const run_it[] = { "run", rig, "--json", NULL };
  const char *const both[] = { "import", log, "--upstream", "--downstream", NULL };
  const char *const missing[] = { "import", "/no/such.log", NULL };
  const char *const no_log[] = { "import", rig, NULL };
  g_autofree char *text = NULL;

  assert_true (g_file_set_contents (log, "distance;depth\n0;4,0\n20;5,0\n40;4,0\nx;y\n", -1, NULL));
  {
    g_auto (Run) done = run_in (NULL, import);

    assert_int_equal (done.status, 0);
    assert_non_null (strstr (done.out, "Bed of 3 points over 40"));
    assert_non_null (strstr (done.out, "line 5: a number is missing"));
  }
  assert_true (g_file_get_contents (rig, &text, NULL, NULL));
  assert_non_null (strstr (text, "\"bed\""));
  /* Two triangles of 20 m between 4 and 5 m: the current is that over 4.5 m. */
  assert_non_null (strstr (text, "\"depth_m\": 4.5,"));
  {
    g_auto (Run) solved = run_in (NULL, run_it);
    g_auto (Run) wrong = run_in (NULL, both);
    g_auto (Run) gone = run_in (NULL, missing);
    g_auto (Run) refused = run_in (NULL, no_log);

    assert_int_equal (solved.status, 0);
    assert_int_equal (wrong.status, 2);
    assert_int_equal (gone.status, 1);
    assert_non_null (strstr (gone.err, "/no/such.log"));
    assert_int_equal (refused.status, 1);
  }
  g_unlink (log);
  g_unlink (rig);
  g_rmdir (folder);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (the_table_says_it_all),
    cmocka_unit_test (us_units_are_the_default),
    cmocka_unit_test (json_has_the_agreed_keys),
    cmocka_unit_test (the_fine_mesh_is_finer),
    cmocka_unit_test (a_fish_is_felt),
    cmocka_unit_test (a_fish_is_told_in_json),
    cmocka_unit_test (a_fish_without_a_unit_is_in_the_users),
    cmocka_unit_test (a_snag_is_told_over_time),
    cmocka_unit_test (a_snag_is_told_in_words),
    cmocka_unit_test (values_can_be_set),
    cmocka_unit_test (the_locale_shows_in_the_table_alone),
    cmocka_unit_test (no_leaders_is_a_rig_too),
    cmocka_unit_test (the_ends_of_the_line_are_said),
    cmocka_unit_test (bad_files_are_refused),
    cmocka_unit_test (every_bad_file_ends_with_one_line),
    cmocka_unit_test (bad_values_are_refused),
    cmocka_unit_test (wrong_uses_exit_with_two),
    cmocka_unit_test (odd_names_stay_on_one_line),
    cmocka_unit_test (a_full_disk_is_no_answer),
    cmocka_unit_test (help_and_version_are_there),
    cmocka_unit_test (drawings_of_all_kinds_are_written),
    cmocka_unit_test (png_has_the_asked_size),
    cmocka_unit_test (drawings_that_cannot_be_made_are_refused),
    cmocka_unit_test (a_log_becomes_a_bed),
    cmocka_unit_test (a_table_can_be_explained),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
