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
  } cases[] = { { 0, "0 %" },      { 0.004, "< 1 %" },   { 0.0051, "1 %" }, { 0.5, "50 %" },
                { 0.994, "99 %" }, { 0.9951, "> 99 %" }, { 1, "100 %" } };

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

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (shares_never_hide_what_there_was),
    cmocka_unit_test (a_steady_pass_is_told),
    cmocka_unit_test (a_dragging_pass_is_told),
    cmocka_unit_test (faults_are_told),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
