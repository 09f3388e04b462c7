/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is said of a pass, of passes whose outcome is known by hand. */
#include "model-support.h"

#include <string.h>

#include "pass_words.h"

static LbWording wording = { LB_UNITS_US, -1, LB_LEVEL_WITHIN };

static LbReadingsRow *
find_row (LbReadingsTable *table, const char *title, const char *label)
{
  for (size_t i = 0; i < table->n_sections; i++)
    for (size_t j = 0; j < table->sections[i].n_rows; j++)
      if (g_str_has_prefix (table->sections[i].title, title)
          && g_str_equal (table->sections[i].rows[j].label, label))
        return &table->sections[i].rows[j];
  fail_msg ("no row %s of %s", label, title);
  return NULL;
}

static LbPassRecord *
record_of (const LbContents *contents, LbPassSummary *summary)
{
  LbPassRecord *record;

  *summary = (LbPassSummary){ 0 };
  assert_int_equal (lb_pass_record_new (&record, &contents->setup, &contents->pass, NULL, NULL),
                    LB_STATUS_OK);
  assert_int_equal (lb_pass_record_run (record, INFINITY, NULL), LB_STATUS_OK);
  lb_pass_summary_continue (summary, record);
  return record;
}

static void
shares_never_hide_what_there_was (void **state)
{
  static const struct
  {
    double share;
    const char *words;
  } cases[] = { { 0, "0 %" },      { 0.004, "< 1 %" },   { 0.0051, "1 %" },      { 0.5, "50 %" },
                { 0.994, "99 %" }, { 0.9951, "> 99 %" }, { 1 - 1e-12, "100 %" }, { 1, "100 %" } };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = lb_pass_words_share (cases[i].share);
      assert_string_equal (words, cases[i].words);
    }
}

/* The rig stays as it is: 100 s at 0.9 mph, which is 1.32 ft/s, are 132 ft. */
static void
a_steady_pass_is_told (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  LbPassSummary summary;
  LbReadingsTable *table;
  LbPassRecord *record;
  g_autofree char *sentence = NULL;

  contents->pass.duration = 100;
  record = record_of (contents, &summary);
  sentence = lb_pass_words_sentence (record, &summary, &wording);
  table = lb_pass_words_table (record, &summary, contents, &wording);
  assert_non_null (strstr (sentence, "in the band: lower lure 100 %, upper lure 100 %."));
  assert_non_null (strstr (sentence, "The weight never touches the bed."));
  assert_null (strstr (sentence, "tangle"));
  assert_string_equal (find_row (table, "Pass", "Time")->value, "100 s");
  assert_string_equal (find_row (table, "Pass", "Way over the ground")->value, "132 ft");
  assert_null (find_row (table, "Line", "Most in the hand")->note);
  assert_string_equal (find_row (table, "Upper lure: floating", "In the band")->value, "100 %");
  assert_string_equal (find_row (table, "Weight: 1¼ lb", "Highest off the bed")->value,
                       find_row (table, "Weight", "Lowest off the bed")->value);
  assert_string_equal (find_row (table, "Lines together", "Within 2 in")->value, "0 %");
  lb_readings_table_free (table);
  lb_pass_record_free (record);
}

/* A weight that drags all the time, and a warning that every rig with two leaders falls below. */
static void
a_dragging_pass_is_told (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  LbPassSummary summary;
  LbReadingsTable *table;
  LbPassRecord *record;
  g_autofree char *sentence = NULL;

  contents->setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 9 };
  contents->pass.duration = 5;
  contents->pass.tangle_distance = 1;
  record = record_of (contents, &summary);
  sentence = lb_pass_words_sentence (record, &summary, &wording);
  table = lb_pass_words_table (record, &summary, contents, &wording);
  assert_non_null (strstr (sentence, "touches the bed once, at 0.0 s, and lies on it for 100 %"));
  assert_non_null (strstr (sentence, "Lines may tangle: lower leader and upper leader come"));
  assert_string_equal (find_row (table, "Weight", "On the bed")->value, "100 %");
  assert_string_equal (find_row (table, "The weight on the bed", "Contacts")->value, "1");
  assert_string_equal (find_row (table, "The weight on the bed", "Contact 1")->note,
                       "down from the start, at 0.0 s for 5.0 s");
  assert_string_equal (find_row (table, "Lines together", "Within 39.4 in")->value, "100 %");
  lb_readings_table_free (table);
  lb_pass_record_free (record);
}

static void
faults_are_told (void **state)
{
  assert_string_equal (lb_pass_words_fault (LB_PASS_TOO_LONG), "The pass takes more than an hour.");
  assert_string_equal (lb_pass_words_fault ("turn of the course"),
                       "The boat would turn too quickly: a leg is too short for it.");
  assert_string_equal (lb_pass_words_fault ("something new"), "something new");
}

/* ---- Cautions ---- */

/* The text of the caution with `part` in it; NULL: none. Free with g_free(). */
static char *
caution_with (GPtrArray *list, const char *part)
{
  for (guint i = 0; i < list->len; i++)
    {
      const LbCaution *caution = g_ptr_array_index (list, i);
      if (strstr (caution->text, part))
        return g_strdup (caution->text);
    }
  return NULL;
}

static GPtrArray *
cautions_of (const LbContents *contents)
{
  LbPassSummary summary;
  LbPassRecord *record = record_of (contents, &summary);
  GPtrArray *list = lb_pass_words_cautions (record, &wording);

  lb_pass_record_free (record);
  return list;
}

/* Nothing happens: the cautions are those of the steady run, and it begins so. */
static void
a_steady_pass_has_the_cautions_of_its_run (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (LbResult) result = lb_result_solve (NULL, &contents->setup, NULL);
  g_autoptr (GPtrArray) steady = lb_cautions_new (&contents->setup, result, &wording);
  g_autoptr (GPtrArray) pass = NULL;

  contents->pass.duration = 10;
  pass = cautions_of (contents);
  assert_int_equal (pass->len, steady->len);
  for (guint i = 0; i < pass->len; i++)
    {
      const LbCaution *a = g_ptr_array_index (pass, i), *b = g_ptr_array_index (steady, i);
      g_autoptr (GString) text = g_string_new (b->text);

      g_string_replace (text, "hung up now", "hung up at the start", 0);
      assert_string_equal (a->text, text->str);
      assert_int_equal (a->kind, b->kind);
    }
}

/* The boat speeds up after a while: the snag is told of then. Without a current all directions are
 * one, so that a turn before that changes its time and nothing else. */
static void
the_worst_snag_is_told_in_any_direction (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (GPtrArray) straight = NULL;
  g_autoptr (GPtrArray) turned = NULL;
  g_autofree char *ahead = NULL;
  g_autofree char *aside = NULL;
  LbCourseLeg *legs = contents->pass.legs;

  contents->setup.river.surface_current = 0;
  contents->setup.boat.speed_over_ground = 0.3;
  contents->pass.n_legs = 3;
  for (size_t i = 0; i < 3; i++)
    legs[i] = lb_course_leg_default ();
  legs[2].speed = 1.2;
  straight = cautions_of (contents);
  legs[1].turn = 90;
  turned = cautions_of (contents);
  ahead = caution_with (straight, "hung up at ");
  aside = caution_with (turned, "hung up at ");
  assert_non_null (ahead);
  assert_non_null (aside);
  assert_null (strstr (ahead, "at the start"));
  assert_null (strstr (aside, "at the start"));
  /* "If the weight hung up at 64 s, ..." */
  assert_true (atof (ahead + strlen ("If the weight hung up at ")) > 60);
  assert_true (atof (aside + strlen ("If the weight hung up at ")) > 60);
  assert_string_equal (strchr (ahead, ','), strchr (aside, ','));
}

/* The boat stays on the spot all the time: only its motor is between it and the current. */
static void
a_snag_on_the_spot_is_told (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (GPtrArray) list = NULL;
  g_autofree char *text = NULL;

  contents->setup.boat.speed_over_ground = 0;
  contents->pass.duration = 2;
  list = cautions_of (contents);
  text = caution_with (list, "hung up at the start and the motor stopped, ");
  assert_non_null (text);
}

/* The hand lifts by 16 ft twice a second, and a second rig has the most that the first one has in
 * two: each is told with its time and its rig. */
static void
the_hardest_pull_is_told (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (GPtrArray) wild = NULL;
  g_autoptr (GPtrArray) heavy = NULL;
  g_autofree char *pull = NULL;
  g_autofree char *parts = NULL;
  g_autofree char *second = NULL;

  contents->pass.duration = 3;
  contents->pass.second_weight = 4; /* about 36 N in water */
  heavy = cautions_of (contents);
  second = caution_with (heavy, "Thin bare wire can cut at ");
  assert_non_null (second);
  assert_non_null (strstr (second, " with the second rig): wear gloves"));
  contents->pass.second_weight = LB_UNSET;
  contents->pass.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 5, 0.5 };
  wild = cautions_of (contents);
  pull = caution_with (wild, "even for a moment");
  parts = caution_with (wild, "harder than it can bear");
  assert_non_null (pull);
  assert_non_null (strstr (pull, " lbf (reached at 0."));
  assert_non_null (parts);
  assert_non_null (strstr (parts, " It comes to that at 0."));
}

/* A shank that bears less than the weight pulls, at rest and for a pass. */
static void
a_weak_shank_is_told (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (GPtrArray) strong = NULL;
  g_autoptr (GPtrArray) weak = NULL;
  g_autofree char *none = NULL;
  g_autofree char *parts = NULL;

  contents->pass.duration = 2;
  strong = cautions_of (contents);
  contents->setup.rig.shank.breaking_load = 3;
  weak = cautions_of (contents);
  none = caution_with (strong, "harder than it can bear");
  parts = caution_with (weak, "The shank is pulled harder than it can bear");
  assert_null (none);
  assert_non_null (parts);
}

/* Line is let out until the weight touches: the first touch is told, none before. */
static void
the_first_touch_is_told (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (GPtrArray) clear = NULL;
  g_autoptr (GPtrArray) touching = NULL;
  g_autofree char *none = NULL;
  g_autofree char *first = NULL;

  contents->pass.duration = 20;
  clear = cautions_of (contents);
  contents->pass.hand = (LbHand){ LB_HAND_FOLLOW_BED, 0.1, 5 };
  touching = cautions_of (contents);
  none = caution_with (clear, "touches the bed");
  first = caution_with (touching, "Part of the rig touches the bed, first at ");
  assert_null (none);
  assert_non_null (first);
  assert_null (strstr (first, "at the start"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (shares_never_hide_what_there_was),
    cmocka_unit_test (a_steady_pass_is_told),
    cmocka_unit_test (a_dragging_pass_is_told),
    cmocka_unit_test (faults_are_told),
    cmocka_unit_test (a_steady_pass_has_the_cautions_of_its_run),
    cmocka_unit_test (the_worst_snag_is_told_in_any_direction),
    cmocka_unit_test (a_snag_on_the_spot_is_told),
    cmocka_unit_test (the_hardest_pull_is_told),
    cmocka_unit_test (a_weak_shank_is_told),
    cmocka_unit_test (the_first_touch_is_told),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
