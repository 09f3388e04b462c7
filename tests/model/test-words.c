/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the readings mean, in words: the sentence, the table and the cautions, on made-up readings
 * where the words depend on them and on solved rigs where they must fit the numbers. */
#include "model-support.h"

#include <locale.h>
#include <string.h>

#include "catalogue.h"
#include "fish_words.h"
#include "readings_table.h"
#include "sentence.h"
#include "snag_words.h"
#include "words.h"

static void
assert_contains (const char *text, const char *part)
{
  if (!strstr (text, part))
    fail_msg ("\"%s\" is not in \"%s\"", part, text);
}

static void
assert_lacks (const char *text, const char *part)
{
  if (strstr (text, part))
    fail_msg ("\"%s\" is in \"%s\"", part, text);
}

/* Valid until the next call. */
static const LbWording *
wording (LbUnits units)
{
  static LbWording words;

  words = lb_wording_default (units);
  return &words;
}

static LbResult *
solve (const LbSetup *setup)
{
  LbResult *result = lb_result_solve (NULL, setup, NULL);

  assert_false (lb_result_get_failed (result));
  return result;
}

static char *
sentence_of (const LbSetup *setup, LbUnits units)
{
  g_autoptr (LbResult) result = solve (setup);
  return lb_sentence_of_result (result, wording (units));
}

/* ---- Leaders ---- */

static void
leaders_are_named_by_their_place (void **state)
{
  static const char *const names[][4] = {
    { "leader" },
    { "upper leader", "lower leader" },
    { "middle leader", "lower leader", "upper leader" },
    { "leader 1", "leader 2", "leader 3", "leader 4" },
  };
  static const double heights[][4] = { { 0.5 }, { 0.6, 0.2 }, { 0.4, 0.1, 0.8 }, { 0, 0, 0, 0 } };

  for (size_t n = 1; n <= G_N_ELEMENTS (names); n++)
    {
      LbSetup setup = lb_setup_default ();

      setup.rig.n_leaders = n;
      for (size_t i = 0; i < n; i++)
        setup.rig.leaders[i].attach_above_weight = heights[n - 1][i];
      for (size_t i = 0; i < n; i++)
        {
          g_autofree char *name = lb_words_leader (&setup, i);
          g_autofree char *lure = lb_words_lure (&setup, i);

          assert_string_equal (name, names[n - 1][i]);
          assert_true (g_str_has_prefix (lure, n == 1 ? "lure" : "") && strstr (lure, "lure"));
        }
    }
}

/* Two at the same height: still one lower and one upper. */
static void
leaders_at_one_height_are_told_apart (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  setup.rig.leaders[0].attach_above_weight = setup.rig.leaders[1].attach_above_weight = 0.5;
  first = lb_words_leader (&setup, 0);
  second = lb_words_leader (&setup, 1);
  assert_string_equal (first, "lower leader");
  assert_string_equal (second, "upper leader");
}

/* ---- The sentence ---- */

static void
the_sentence_fits_the_readings (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (LbResult) result = solve (&contents->setup);
  const LbReadings *readings = lb_result_get_readings (result);
  g_autofree char *text = lb_sentence_of_result (result, wording (LB_UNITS_US));
  g_autofree char *hand =
      lb_words_quantity (LB_QUANTITY_FORCE, LB_UNITS_US, readings->hand_tension, -1);
  g_autofree char *spacing =
      lb_words_quantity (LB_QUANTITY_LENGTH, LB_UNITS_US, readings->spacing, -1);
  g_autofree char *level = lb_words_height (LB_UNITS_US, readings->level_difference, -1);
  g_autofree char *expected =
      g_strdup_printf ("Both lures run in the band, level within %s, the upper lure %s behind the "
                       "lower lure. %s in the hand.",
                       level, spacing, hand);

  assert_int_equal (readings->lures[0].band, LB_BAND_INSIDE);
  assert_string_equal (text, expected);
}

static void
the_sentence_takes_the_units (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autofree char *us = sentence_of (&setup, LB_UNITS_US);
  g_autofree char *metric = sentence_of (&setup, LB_UNITS_METRIC);

  assert_contains (us, " lbf in the hand.");
  assert_contains (metric, " N in the hand.");
  assert_contains (metric, " m behind");
}

static void
what_is_on_the_bed_is_said (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autofree char *dragging = NULL;
  g_autofree char *lying = NULL;
  g_autofree char *touching = NULL;

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 14 };
  dragging = sentence_of (&setup, LB_UNITS_US);
  setup.boat.speed_over_ground = 0;
  lying = sentence_of (&setup, LB_UNITS_US);
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_TOUCHING, 0 };
  setup.boat.speed_over_ground = 0.4;
  touching = sentence_of (&setup, LB_UNITS_US);
  assert_contains (dragging, "The weight drags on the bed.");
  assert_contains (
      lying, "The weight lies on the bed, the boat at rest over the ground: friction is left out.");
  assert_lacks (touching, "The weight drags");
}

/* The words must fit what the bed carries: held at height 0 the weight touches, with a shank longer
 * than the water is deep it does not, and at rest nothing drags. */
static void
dragging_touching_and_lying_differ (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autofree char *held_at_bed = NULL;
  g_autofree char *too_shallow = NULL;
  g_autofree char *at_rest = NULL;

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, 0 };
  held_at_bed = sentence_of (&setup, LB_UNITS_US);
  assert_contains (held_at_bed, "The weight just touches the bed.");

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_TOUCHING, 0 };
  setup.river.depth = 0.5;
  too_shallow = sentence_of (&setup, LB_UNITS_US);
  assert_contains (too_shallow, "with the line all in it is still on the bed.");
  assert_contains (too_shallow, "The weight drags on the bed.");

  setup = lb_setup_default ();
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 14 };
  setup.boat.speed_over_ground = 0;
  setup.rig.leaders[0].lure.buoyancy = setup.rig.leaders[1].lure.buoyancy = -1;
  at_rest = sentence_of (&setup, LB_UNITS_US);
  assert_contains (at_rest, "Both lures lie on the bed, ");
  assert_lacks (at_rest, "drag");
}

static void
lures_that_differ_are_told_apart (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autofree char *text = NULL;

  setup.rig.leaders[0].attach_above_weight = 0.05;
  setup.rig.leaders[1].attach_above_weight = setup.rig.shank_length;
  setup.rig.leaders[1].lure.down_force_ratio = 0;
  text = sentence_of (&setup, LB_UNITS_US);
  assert_contains (text, "The lower lure drags on the bed.");
  assert_contains (text, "The upper lure runs above the band, ");
  assert_contains (text, "apart in height");
  assert_lacks (text, "Both");
}

static void
one_lure_or_none_is_said (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autofree char *one = NULL;
  g_autofree char *none = NULL;

  setup.rig.n_leaders = 1;
  one = sentence_of (&setup, LB_UNITS_US);
  setup.rig.n_leaders = 0;
  none = sentence_of (&setup, LB_UNITS_US);
  assert_contains (one, "The lure ");
  assert_lacks (one, "behind");
  assert_contains (none, "No leader is attached.");
}

/* A failure never reads like an answer: no number at all. */
static void
a_failure_is_said_and_shows_no_number (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autoptr (LbResult) result = NULL;
  g_autoptr (LbReadingsTable) table = NULL;
  g_autofree char *text = NULL;

  setup.river.depth = -1;
  result = lb_result_solve (NULL, &setup, NULL);
  text = lb_sentence_of_result (result, wording (LB_UNITS_US));
  assert_contains (text, "cannot be computed");
  assert_null (strpbrk (text, "0123456789"));
  table = lb_readings_table_new (result, NULL, wording (LB_UNITS_US));
  for (size_t i = 0; i < table->n_sections; i++)
    for (size_t j = 0; j < table->sections[i].n_rows; j++)
      {
        assert_string_equal (table->sections[i].rows[j].value, "-");
        assert_null (table->sections[i].rows[j].note);
      }
}

/* ---- The table ---- */

static const LbReadingsRow *
row_of (const LbReadingsTable *table, const char *section, const char *label)
{
  for (size_t i = 0; i < table->n_sections; i++)
    for (size_t j = 0; j < table->sections[i].n_rows; j++)
      if (g_str_has_prefix (table->sections[i].title, section)
          && g_str_equal (table->sections[i].rows[j].label, label))
        return &table->sections[i].rows[j];
  fail_msg ("no row \"%s\" in \"%s\"", label, section);
  return NULL;
}

static void
the_table_shows_the_readings (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("three-leaders.rig");
  g_autoptr (LbResult) result = solve (&contents->setup);
  const LbReadings *readings = lb_result_get_readings (result);
  g_autoptr (LbReadingsTable) table =
      lb_readings_table_new (result, contents, wording (LB_UNITS_METRIC));
  const struct
  {
    const char *section, *label;
    LbQuantity quantity;
    double value;
  } rows[] = {
    { "Line", "Line out", LB_QUANTITY_LENGTH, readings->line_out },
    { "Line", "Wire angle", LB_QUANTITY_ANGLE, readings->wire_angle },
    { "Line", "In the hand", LB_QUANTITY_FORCE, readings->hand_tension },
    { "Weight", "Layback", LB_QUANTITY_LENGTH, readings->weight.layback },
    { "Middle lure: floating minnow, 7 cm, medium lip", "Height off the bed", LB_QUANTITY_HEIGHT,
      readings->lures[1].at.height },
    { "Upper lure", "Pull at the lure", LB_QUANTITY_SMALL_FORCE,
      readings->lures[2].leader_tension },
    { "Lures together", "Spacing", LB_QUANTITY_LENGTH, readings->spacing },
  };

  assert_int_equal (table->n_sections, 6);
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *value =
          lb_words_quantity (rows[i].quantity, LB_UNITS_METRIC, rows[i].value, -1);
      assert_string_equal (row_of (table, rows[i].section, rows[i].label)->value, value);
    }
  assert_contains (row_of (table, "Line", "Largest pull")->note, "breaks at ");
  assert_string_equal (row_of (table, "Lower lure", "Height off the bed")->note, "in the band");
}

/* A window keeps its labels: the form depends on the number of leaders alone. */
static void
the_form_stays_the_same (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (LbResult) first = solve (&contents->setup);
  g_autoptr (LbReadingsTable) a = lb_readings_table_new (first, contents, wording (LB_UNITS_US));
  g_autoptr (LbReadingsTable) b = NULL;
  g_autoptr (LbResult) second = NULL;

  contents->setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 14 };
  contents->setup.rig.mainline.breaking_load = LB_UNSET;
  second = solve (&contents->setup);
  b = lb_readings_table_new (second, contents, wording (LB_UNITS_METRIC));
  assert_int_equal (a->n_sections, b->n_sections);
  for (size_t i = 0; i < a->n_sections; i++)
    {
      assert_int_equal (a->sections[i].n_rows, b->sections[i].n_rows);
      assert_string_equal (a->sections[i].title, b->sections[i].title);
      for (size_t j = 0; j < a->sections[i].n_rows; j++)
        assert_string_equal (a->sections[i].rows[j].label, b->sections[i].rows[j].label);
    }
}

static void
heights_grow_into_lengths (void **state)
{
  g_autofree char *low = lb_words_height (LB_UNITS_US, 0.254, -1);
  g_autofree char *high = lb_words_height (LB_UNITS_US, 3.048, -1);

  assert_string_equal (low, "10 in");
  assert_string_equal (high, "10 ft");
}

static void
decimals_never_hide_the_number (void **state)
{
  static const struct
  {
    LbQuantity quantity;
    LbUnits units;
    double value;
    int decimals;
    const char *words;
  } cases[] = {
    { LB_QUANTITY_ANGLE, LB_UNITS_US, 31.43 * G_PI / 180, 0, "31\302\260" },
    { LB_QUANTITY_MASS, LB_UNITS_METRIC, 0.9, 0, "0.9 kg" },
    { LB_QUANTITY_MASS, LB_UNITS_METRIC, 0.9, 3, "0.900 kg" },
    { LB_QUANTITY_MASS, LB_UNITS_METRIC, 19.2, 0, "19 kg" },
    { LB_QUANTITY_DIAMETER, LB_UNITS_US, 0.0007, 1, "0.0276 in" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 6.2611, 1, "20 ft 6.5 in" },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, 0, 2, "0.00 m/s" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, NAN, 2, "-" },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words =
          lb_words_quantity (cases[i].quantity, cases[i].units, cases[i].value, cases[i].decimals);
      assert_string_equal (words, cases[i].words);
    }
}

/* ---- Entries ---- */

static void
entries_are_read_or_explained (void **state)
{
  double value = -7;
  g_autofree char *message = NULL;

  assert_true (lb_words_parse (LB_QUANTITY_LENGTH, LB_UNITS_US, "20 ft 6 in", &value, &message));
  assert_null (message);
  assert_near (value, 6.2484, 1e-12);
  assert_false (lb_words_parse (LB_QUANTITY_LENGTH, LB_UNITS_US, "3 lb", &value, &message));
  assert_string_equal (message,
                       "“3 lb”: this unit measures something else; write it like “20 ft 6 in”.");
  assert_near (value, 6.2484, 1e-12);
  assert_false (lb_words_parse (LB_QUANTITY_LENGTH, LB_UNITS_US, "deep", &value, NULL));
}

static void
assert_explained (LbQuantity quantity, LbUnits units, const char *text, const char *message)
{
  double value;
  g_autofree char *told = NULL;

  assert_false (lb_words_parse (quantity, units, text, &value, &told));
  assert_string_equal (told, message);
}

static void
a_fault_gives_the_text_and_an_example (void **state)
{
  assert_explained (LB_QUANTITY_LENGTH, LB_UNITS_US, " deep ",
                    "“deep” is no number; write it like “20 ft 6 in”.");
  assert_explained (LB_QUANTITY_SPEED, LB_UNITS_METRIC, "2 knotts",
                    "“2 knotts”: this unit is not known; write it like “1.2 m/s”.");
  assert_explained (LB_QUANTITY_NUMBER, LB_UNITS_US, "0.5 in",
                    "“0.5 in”: this is a plain number with no unit, like “0.5”.");
  assert_explained (LB_QUANTITY_MASS, LB_UNITS_US, "",
                    "Nothing is entered here; write it like “1¾ lb”.");
  assert_explained (LB_QUANTITY_MASS, LB_UNITS_US, "as much as there is in the boat",
                    "“as much as there is in t…” is no number; write it like “1¾ lb”.");
  assert_explained (LB_QUANTITY_MASS, LB_UNITS_US, "1e999", "“1e999” is too large a number.");
}

/* Every example is read back as what it stands for, in the unit it is shown in. */
static void
examples_can_be_entered (void **state)
{
  for (int q = 0; q < LB_N_QUANTITIES; q++)
    for (int units = LB_UNITS_US; units <= LB_UNITS_METRIC; units++)
      {
        g_autofree char *example = lb_words_example ((LbQuantity) q, (LbUnits) units);
        g_autofree char *again = NULL;
        double value;

        if (!lb_words_parse ((LbQuantity) q, (LbUnits) units, example, &value, NULL))
          fail_msg ("“%s” is not read", example);
        again = lb_words_quantity ((LbQuantity) q, (LbUnits) units, value, -1);
        assert_string_equal (again, example);
        assert_true (strlen (example) < 16);
      }
}

/* ---- Cautions ---- */

static bool
cautioned (const LbSetup *setup, LbCautionKind kind, const char *part)
{
  g_autoptr (LbResult) result = solve (setup);
  g_autoptr (GPtrArray) list = lb_cautions_new (setup, result, wording (LB_UNITS_US));

  for (guint i = 0; i < list->len; i++)
    {
      const LbCaution *caution = g_ptr_array_index (list, i);
      if (caution->kind == kind && strstr (caution->text, part))
        return true;
    }
  return false;
}

static void
the_usual_cautions_are_always_there (void **state)
{
  static const char *const parts[] = { "Never wrap", "gloves",      "let go, or cut", "life jacket",
                                       "hooks",      "Local rules", "licensed guide" };
  LbSetup setup = lb_setup_default ();

  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    if (!cautioned (&setup, LB_CAUTION_ADVICE, parts[i]))
      fail_msg ("no caution says \"%s\"", parts[i]);
}

/* Limits: 107 N sustained and 196 N initial pull with two hands (an ergonomics training page that
 * quotes car-industry limits); 15 C for cold water (common practice, no source); 30 N on bare wire
 * and a spare of 2 (estimates). */
static void
cautions_follow_the_values (void **state)
{
  LbSetup setup = lb_setup_default ();

  assert_true (cautioned (&setup, LB_CAUTION_NOW, "cold"));
  setup.river.temperature = 16;
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "cold"));
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "bare wire"));
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "on the bed"));
  setup.rig.weight.mass = 4; /* about 36 N in water */
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "bare wire"));
  setup.rig.weight.mass = 13; /* about 116 N */
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "hold for long"));
  setup.rig.mainline.breaking_load = 150;
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "more than half"));
  setup.rig.mainline.breaking_load = 100;
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "harder than it can bear"));
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "more than half"));
  setup.rig.mainline.breaking_load = LB_UNSET;
  setup.rig.shank.breaking_load = 100;
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "The shank is pulled harder than it can bear"));
  setup.rig.shank.breaking_load = 150;
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "The shank carries more than half"));
  setup.rig.weight.mass = 20; /* about 179 N, and the drag of fast water */
  setup.boat.speed_over_ground = 3;
  setup.river.surface_current = 6;
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "even for a moment"));
  setup = lb_setup_default ();
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 14 };
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "on the bed"));
}

/* What a snag does comes with its times: sooner at more speed, not at all at rest; a line that
 * breaks before the hand gives in is said first. */
static void
a_snag_is_foretold (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.rig.mainline.breaking_load = 767;
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "most people can hold (44 lbf) within about"));
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "The mainline would part within about"));
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "With the motor stopped"));
  setup.rig.shank.breaking_load = 100;
  assert_true (
      cautioned (&setup, LB_CAUTION_NOW, "hung up now, the shank would part within about"));
  setup.boat.speed_over_ground = 0.05;
  assert_true (cautioned (&setup, LB_CAUTION_ADVICE, "hung up now"));
  setup.boat.speed_over_ground = 0;
  assert_false (cautioned (&setup, LB_CAUTION_ADVICE, "hung up now,"));
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "hung up now,"));
}

/* Held on the spot against the current the boat waits for its motor to fail: that alone is told,
 * and nothing where there is no current either. */
static void
a_snag_on_the_spot_is_foretold (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.boat.speed_over_ground = 0;
  setup.rig.mainline.breaking_load = LB_UNSET;
  assert_true (cautioned (&setup, LB_CAUTION_NOW,
                          "hung up now and the motor stopped, the line would pull harder than"));
  setup.rig.shank.breaking_load = 100;
  assert_true (cautioned (&setup, LB_CAUTION_NOW,
                          "hung up now and the motor stopped, the shank would part within"));
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "With the motor stopped"));
  setup.river.surface_current = 0;
  assert_false (cautioned (&setup, LB_CAUTION_ADVICE, "hung up now"));
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "hung up now"));
}

/* The table says what the core says of the same snag: the times, and what breaks. */
static void
a_snag_is_told_in_numbers (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbWording wording = lb_wording_default (LB_UNITS_US);

  setup.rig.leaders[0].line.breaking_load = 60;
  for (size_t lure = 0; lure < 2; lure++)
    for (int stopped = 0; stopped < 2; stopped++)
      {
        g_autoptr (LbResult) result = lb_result_solve (NULL, &setup, NULL);
        LbHangUp held = lb_hang_up (result, lure, stopped);
        g_autoptr (LbReadingsTable) table = lb_snag_words_table (result, &held, &wording);
        g_autofree char *sentence = lb_snag_words_sentence (result, &held, &wording);
        g_autofree char *breaks = g_strdup_printf ("after %.1f s", held.times.until_breaks);
        const LbReadingsRow *rows = table->sections[0].rows;

        assert_int_equal (table->sections[0].n_rows, 4);
        assert_non_null (strstr (rows[0].value, stopped ? " down the river" : " up the river"));
        assert_string_equal (rows[2].label, "Hand limit, 44 lbf");
        assert_string_equal (rows[3].label, lure ? "The lower leader parts" : "The mainline parts");
        assert_string_equal (rows[3].value, breaks);
        assert_non_null (strstr (sentence, breaks));
        assert_true ((strstr (sentence, "44 lbf") != NULL) == (lure == 0));
      }
}

static void
a_snag_at_rest_is_told_as_such (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbWording wording = lb_wording_default (LB_UNITS_METRIC);

  setup.boat.speed_over_ground = 0;
  g_autoptr (LbResult) result = lb_result_solve (NULL, &setup, NULL);
  LbHangUp held = lb_hang_up (result, 0, false);
  g_autoptr (LbReadingsTable) table = lb_snag_words_table (result, &held, &wording);
  g_autofree char *sentence = lb_snag_words_sentence (result, &held, &wording);

  assert_string_equal (table->sections[0].rows[0].value, "on the spot");
  assert_string_equal (table->sections[0].rows[2].label, "Hand limit, 196 N");
  assert_string_equal (table->sections[0].rows[2].value, "not reached");
  assert_string_equal (table->sections[0].rows[3].value, "not reached");
  assert_non_null (strstr (sentence, "no tauter"));
}

/* So slow that the hand's limit is over ten minutes off: that is not to stay where one is. */
static void
a_snag_far_off_is_told_as_such (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbWording wording = lb_wording_default (LB_UNITS_METRIC);

  setup.boat.speed_over_ground = 0.001;
  g_autoptr (LbResult) result = lb_result_solve (NULL, &setup, NULL);
  LbHangUp held = lb_hang_up (result, 0, false);
  g_autofree char *sentence = lb_snag_words_sentence (result, &held, &wording);

  assert_true (held.times.until_hand > 600);
  assert_null (strstr (sentence, "stays where it is"));
  assert_contains (sentence, "(196 N) within the next ten minutes");
}

/* The words are the numbers of the loads; a leader too weak is said. */
static void
a_fish_on_is_told (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbWording wording = lb_wording_default (LB_UNITS_METRIC);

  setup.rig.leaders[1].line.breaking_load = 1;
  g_autoptr (LbResult) result = lb_result_solve (NULL, &setup, NULL);
  LbFishOn on = lb_fish_on (result, 1, 0.8, 0.1);
  g_autoptr (LbReadingsTable) table = lb_fish_words_table (&setup, &on, &wording);
  g_autofree char *sentence = lb_fish_words_sentence (&setup, &on, &wording);

  assert_int_equal (table->n_sections, 3);
  for (int open = 0; open < 2; open++)
    {
      const LbReadingsRow *rows = table->sections[open].rows;
      g_autofree char *slow =
          lb_words_quantity (LB_QUANTITY_FORCE, LB_UNITS_METRIC, on.loads[open][1].in_hand, -1);

      assert_string_equal (rows[2].label, "Hand at 0.1 m/s");
      assert_string_equal (rows[2].value, slow);
      assert_true (on.loads[open][1].in_hand < on.loads[open][0].in_hand);
    }
  assert_true (on.loads[1][0].drag > on.loads[0][0].drag);
  assert_contains (sentence, "on the upper lure");
  assert_contains (sentence, "The upper leader is pulled harder than it can bear");
  on.loads[0][0].in_hand = LB_UNSET;
  g_autofree char *nothing = lb_fish_words_sentence (&setup, &on, &wording);
  assert_contains (nothing, "no answer");
}

static bool
fish_cautioned (const LbSetup *setup, const char *part)
{
  g_autoptr (LbResult) result = lb_result_solve (NULL, setup, NULL);
  LbFishLoads loads = lb_fish_loads (result, 0.8);
  g_autoptr (GPtrArray) list = lb_fish_words_cautions (
      setup, loads.loads[0][0], loads.n_lures * LB_FISH_N_MOUTHS * LB_FISH_N_SPEEDS,
      wording (LB_UNITS_US));

  for (guint i = 0; i < list->len; i++)
    if (strstr (((const LbCaution *) g_ptr_array_index (list, i))->text, part))
      return true;
  return false;
}

/* Every line is judged, not the leader alone, and so is the hand: from bare wire on (estimate) up
 * to 107 N and 196 N (an ergonomics training page, see above). */
static void
a_fish_on_is_warned_of (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.rig.mainline.breaking_load = setup.rig.shank.breaking_load = LB_UNSET;
  for (size_t i = 0; i < setup.rig.n_leaders; i++)
    setup.rig.leaders[i].line.breaking_load = LB_UNSET;
  assert_false (fish_cautioned (&setup, "bare wire"));
  assert_false (fish_cautioned (&setup, "parts under load"));
  setup.rig.shank.breaking_load = 5;
  assert_true (fish_cautioned (&setup, "The shank is pulled harder than it can bear"));
  setup.rig.mainline.breaking_load = 4;
  assert_true (fish_cautioned (&setup, "The mainline is pulled harder than it can bear"));
  setup.rig.weight.mass = 4; /* about 36 N in water */
  assert_true (fish_cautioned (&setup, "bare wire"));
  setup.rig.weight.mass = 13; /* about 116 N */
  assert_true (fish_cautioned (&setup, "hold for long"));
  setup.rig.weight.mass = 20; /* about 179 N, and the drag of fast water */
  setup.boat.speed_over_ground = 3;
  setup.river.surface_current = 6;
  assert_true (fish_cautioned (&setup, "even for a moment"));
}

/* Every end of the catalogue's ranges is fine; three times beyond is not. */
static void
odd_lures_are_noticed (void **state)
{
  g_autoptr (LbCatalogue) catalogue = lb_catalogue_load (NULL);
  LbSetup setup = lb_setup_default ();
  LbLure *lure = &setup.rig.leaders[1].lure;

  assert_non_null (catalogue);
  assert_false (cautioned (&setup, LB_CAUTION_NOW, "far from what"));
  for (guint i = 0; i < catalogue->lures->len; i++)
    {
      const LbCatalogueLure *part = g_ptr_array_index (catalogue->lures, i);

      *lure = part->lure;
      lure->drag_area = part->drag_area.low;
      lure->buoyancy = part->buoyancy.high;
      assert_false (cautioned (&setup, LB_CAUTION_NOW, "far from what"));
      lure->drag_area = part->drag_area.high;
      lure->buoyancy = part->buoyancy.low;
      assert_false (cautioned (&setup, LB_CAUTION_NOW, "far from what"));
      lure->drag_area = 3 * part->drag_area.high;
      assert_true (cautioned (&setup, LB_CAUTION_NOW, "The values of the upper lure"));
    }
  *lure = lb_setup_default ().rig.leaders[1].lure;
  lure->down_force_ratio = 1.5;
  assert_true (cautioned (&setup, LB_CAUTION_NOW, "far from what"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (leaders_are_named_by_their_place),
    cmocka_unit_test (leaders_at_one_height_are_told_apart),
    cmocka_unit_test (the_sentence_fits_the_readings),
    cmocka_unit_test (the_sentence_takes_the_units),
    cmocka_unit_test (what_is_on_the_bed_is_said),
    cmocka_unit_test (dragging_touching_and_lying_differ),
    cmocka_unit_test (lures_that_differ_are_told_apart),
    cmocka_unit_test (one_lure_or_none_is_said),
    cmocka_unit_test (a_failure_is_said_and_shows_no_number),
    cmocka_unit_test (the_table_shows_the_readings),
    cmocka_unit_test (the_form_stays_the_same),
    cmocka_unit_test (heights_grow_into_lengths),
    cmocka_unit_test (decimals_never_hide_the_number),
    cmocka_unit_test (entries_are_read_or_explained),
    cmocka_unit_test (a_fault_gives_the_text_and_an_example),
    cmocka_unit_test (examples_can_be_entered),
    cmocka_unit_test (the_usual_cautions_are_always_there),
    cmocka_unit_test (cautions_follow_the_values),
    cmocka_unit_test (a_snag_is_foretold),
    cmocka_unit_test (a_snag_on_the_spot_is_foretold),
    cmocka_unit_test (a_snag_is_told_in_numbers),
    cmocka_unit_test (a_snag_at_rest_is_told_as_such),
    cmocka_unit_test (a_snag_far_off_is_told_as_such),
    cmocka_unit_test (a_fish_on_is_told),
    cmocka_unit_test (a_fish_on_is_warned_of),
    cmocka_unit_test (odd_lures_are_noticed),
  };

  setlocale (LC_ALL, "");
  return cmocka_run_group_tests (tests, NULL, NULL);
}
