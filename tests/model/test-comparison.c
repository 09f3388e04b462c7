/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Variants solved beside one another: the differences in numbers against an independent solver, in
 * words, and what is said of a variant that has no answer. Off the main thread too. */
#include "model-support.h"

#include <string.h>

#include "answers.h"
#include "comparer.h"
#include "comparison_words.h"
#include "rigs.h"
#include "variants_weights.h"

static LbWording
us (void)
{
  return lb_wording_default (LB_UNITS_US);
}

static LbVariant *
add_variant (LbContents *contents, const char *name)
{
  LbVariant *added = &contents->variants.list[contents->variants.n];

  lb_variant_set_new_name (added, &contents->variants, name);
  contents->variants.n++;
  return added;
}

static void
set (LbVariant *variant, const char *path, double value)
{
  const LbField *field;
  size_t leader;

  assert_true (lb_override_find (path, &field, &leader));
  assert_true (lb_variant_set (variant, field, leader, value));
}

/* ---- The reference rig with two weights ---- */

static const LbComparisonRow *
row_of (const LbComparisonTable *table, const char *label)
{
  for (size_t i = 0; i < table->n_rows; i++)
    if (g_str_equal (table->rows[i].label, label))
      return &table->rows[i];
  fail_msg ("no row \"%s\"", label);
  return NULL;
}

/* The cases 1 and 3 of the file are the same rig in the same water, with 0.57 and 0.91 kg. */
static LbContents *
two_reference_weights (void)
{
  LbContents *contents = lb_contents_new ();

  contents->setup = rig_reference (0.57, 0.4, 0.9);
  contents->setup.rules = (LbRules){ LB_UNSET, LB_UNSET };
  set (add_variant (contents, "0.57 kg"), "weight.mass_kg", 0.57);
  set (add_variant (contents, "0.91 kg"), "weight.mass_kg", 0.91);
  return contents;
}

static double
answer (const Answers *answers, const char *column, const char *which)
{
  return answers_find (answers, "case", which, column);
}

/* Against answers/steady-cases.csv, computed by an independent solver; the tolerances are what 50
 * segments leave over. */
static void
differences_are_those_of_an_independent_solver (void **state)
{
  g_autoptr (LbContents) contents = two_reference_weights ();
  LbSteadyOptions fine = { .fine = true };
  g_autoptr (LbComparison) comparison = lb_comparison_solve (contents, &fine);
  LbWording wording = us ();
  g_autoptr (LbComparisonTable) table = lb_comparison_table_new (comparison, &wording);
  Answers *a = answers_read ("steady-cases.csv");
  const LbComparisonCell *angle = row_of (table, "Wire angle")->cells;
  const LbComparisonCell *line = row_of (table, "Line out")->cells;
  const LbComparisonCell *hand = row_of (table, "In the hand")->cells;
  const LbComparisonCell *lure = row_of (table, "Upper lure off the bed")->cells;

  assert_near ((angle[1].si - angle[0].si) * 180 / G_PI,
               answer (a, "angle_boat_deg", "3") - answer (a, "angle_boat_deg", "1"), 1e-4);
  assert_near (line[1].si - line[0].si, answer (a, "L_main_m", "3") - answer (a, "L_main_m", "1"),
               1e-5);
  assert_near (hand[1].si - hand[0].si, answer (a, "T_boat_N", "3") - answer (a, "T_boat_N", "1"),
               1e-4);
  assert_near (lure[1].si, answer (a, "zLure2", "3"), 1e-5);
  answers_free (a);
}

/* By the same file: the wire 40.44 and 27.89 degrees from vertical, 5.5468 and 5.1701 m out (1 ft
 * 2.8 in less), 8.3656 N (1.88 lbf), the lures at 0.19 and 0.33 m in a band of 0.1 to 0.45 m. */
static void
differences_are_told_in_words (void **state)
{
  g_autoptr (LbContents) contents = two_reference_weights ();
  g_autoptr (LbComparison) comparison = lb_comparison_solve (contents, NULL);
  LbWording wording = us (), metric = lb_wording_default (LB_UNITS_METRIC);
  g_autofree char *first = lb_comparison_dup_sentence (comparison, 0, &wording);
  g_autofree char *second = lb_comparison_dup_sentence (comparison, 1, &wording);
  g_autofree char *in_metric = lb_comparison_dup_sentence (comparison, 1, &metric);
  g_autofree char *changes = lb_comparison_dup_changes (comparison, 1, &metric);

  assert_string_equal (first, "wire 40° from vertical, 18 ft 2 in of line, 1.2 lbf in the hand, "
                              "both lures in the band");
  assert_string_equal (second, "wire 13° steeper, 1 ft 3 in less line, 1.9 lbf in the hand, "
                               "both lures in the band");
  assert_string_equal (in_metric, "wire 13° steeper, 0.38 m less line, 8.4 N in the hand, "
                                  "both lures in the band");
  assert_string_equal (changes, "Weight: 0.91 kg");
}

static void
the_table_tells_the_same (void **state)
{
  g_autoptr (LbContents) contents = two_reference_weights ();
  g_autoptr (LbComparison) comparison = lb_comparison_solve (contents, NULL);
  LbWording wording = us ();
  g_autoptr (LbComparisonTable) table = lb_comparison_table_new (comparison, &wording);
  const LbComparisonRow *line = row_of (table, "Line out");
  const LbComparisonRow *lure = row_of (table, "Lower lure off the bed");

  assert_int_equal (table->n, 2);
  assert_string_equal (table->names[1], "0.91 kg");
  assert_null (table->remarks[0]);
  assert_string_equal (line->cells[0].value, "18 ft 2 in");
  assert_null (line->cells[0].difference);
  assert_string_equal (line->cells[1].difference, "1 ft 3 in less");
  assert_string_equal (lure->cells[1].note, "in the band");
  /* The lures' heights differ by 1.6 mm, which nobody sees. */
  assert_null (lure->cells[1].difference);
  row_of (table, "Spacing of the lures");
}

/* ---- What is compared ---- */

static void
the_document_stands_beside_a_single_variant (void **state)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  LbVariants none = lb_comparison_list (&contents->variants), one, same;
  g_autoptr (LbComparison) comparison = NULL;

  assert_int_equal (none.n, 1);
  assert_string_equal (none.list[0].name, "As it is");
  set (add_variant (contents, "As it is"), "weight.mass_kg", 1);
  one = lb_comparison_list (&contents->variants);
  assert_int_equal (one.n, 2);
  assert_string_equal (one.list[0].name, "As it is (2)");
  comparison = lb_comparison_solve (contents, NULL);
  assert_int_equal (lb_comparison_get_place (comparison, 0), -1);
  assert_int_equal (lb_comparison_get_place (comparison, 1), 0);
  contents->variants.list[0].n_overrides = 0;
  same = lb_comparison_list (&contents->variants);
  assert_int_equal (same.n, 1);
}

/* ---- No answer, or one with a remark ---- */

static void
what_has_no_answer_says_why (void **state)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autoptr (LbComparison) comparison = NULL;
  LbWording wording = us ();
  g_autoptr (LbComparisonTable) table = NULL;

  add_variant (contents, "fine");
  set (add_variant (contents, "no such leader"), "leaders[6].length_m", 2);
  set (add_variant (contents, "too high"), "mainline.line_out.weight_above_bed_m", 50);
  comparison = lb_comparison_solve (contents, NULL);
  table = lb_comparison_table_new (comparison, &wording);
  assert_null (lb_comparison_get_result (comparison, 1));
  assert_null (lb_comparison_get_readings (comparison, 1));
  assert_string_equal (table->sentences[1], "The rig has no leader 7, which this variant changes.");
  assert_string_equal (table->remarks[1], table->sentences[1]);
  for (size_t i = 0; i < table->n_rows; i++)
    {
      assert_string_equal (table->rows[i].cells[1].value, "-");
      assert_false (lb_is_set (table->rows[i].cells[1].si));
      assert_null (table->rows[i].cells[1].note);
      assert_null (table->rows[i].cells[1].difference);
    }
  assert_non_null (table->remarks[2]);
  assert_true (g_str_has_prefix (table->remarks[2], "The weight cannot be held as high as asked"));
  assert_non_null (strstr (table->sentences[2], table->remarks[2]));
}

/* Differences need something to tell them from. */
static void
a_first_without_an_answer_leaves_plain_readings (void **state)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autoptr (LbComparison) comparison = NULL;
  LbWording wording = us ();
  g_autofree char *sentence = NULL;

  set (add_variant (contents, "none"), "leaders[6].length_m", 2);
  add_variant (contents, "fine");
  comparison = lb_comparison_solve (contents, NULL);
  sentence = lb_comparison_dup_sentence (comparison, 1, &wording);
  assert_non_null (strstr (sentence, "from vertical"));
  assert_non_null (strstr (sentence, " of line, "));
}

/* ---- Off the main thread ---- */

typedef struct
{
  int n;
  GThread *thread;
} Seen;

static void
compared_cb (LbComparer *comparer, LbComparison *comparison, Seen *seen)
{
  seen->n++;
  seen->thread = g_thread_self ();
  assert_ptr_equal (lb_comparer_get_comparison (comparer), comparison);
}

static void
wait_until_done (LbComparer *comparer)
{
  gint64 end = g_get_monotonic_time () + 60 * G_TIME_SPAN_SECOND;

  while (lb_comparer_get_busy (comparer))
    {
      if (g_get_monotonic_time () > end)
        fail_msg ("the comparison does not come");
      g_main_context_iteration (NULL, FALSE);
    }
}

static void
the_comparer_says_what_solving_here_says (void **state)
{
  g_autoptr (LbContents) contents = two_reference_weights ();
  g_autoptr (LbComparison) here = NULL;
  g_autoptr (LbComparer) comparer = lb_comparer_new ();
  Seen seen = { 0 };

  set (add_variant (contents, "none"), "leaders[6].length_m", 2);
  add_variant (contents, "same as the first");
  here = lb_comparison_solve (contents, NULL);
  g_signal_connect (comparer, "compared", G_CALLBACK (compared_cb), &seen);
  assert_null (lb_comparer_get_comparison (comparer));
  lb_comparer_request (comparer, contents);
  assert_true (lb_comparer_get_busy (comparer));
  wait_until_done (comparer);
  assert_int_equal (seen.n, 1);
  assert_ptr_equal (seen.thread, g_thread_self ());
  for (size_t i = 0; i < 4; i++)
    {
      LbComparison *there = lb_comparer_get_comparison (comparer);
      const LbReadings *a = lb_comparison_get_readings (here, i);
      const LbReadings *b = lb_comparison_get_readings (there, i);

      assert_int_equal (a == NULL, b == NULL);
      if (a)
        assert_near (b->line_out, a->line_out, 1e-7);
    }
}

static void
only_what_changed_is_solved_again (void **state)
{
  g_autoptr (LbContents) contents = two_reference_weights ();
  g_autoptr (LbComparer) comparer = lb_comparer_new ();
  g_autoptr (LbResult) first = NULL;

  lb_comparer_request (comparer, contents);
  wait_until_done (comparer);
  first = g_object_ref (lb_comparison_get_result (lb_comparer_get_comparison (comparer), 0));
  set (&contents->variants.list[1], "weight.mass_kg", 1.1);
  lb_comparer_request (comparer, contents);
  wait_until_done (comparer);
  assert_ptr_equal (lb_comparison_get_result (lb_comparer_get_comparison (comparer), 0), first);
  /* Another order takes no solving at all. */
  contents->variants.n = 1;
  lb_comparer_request (comparer, contents);
  assert_false (lb_comparer_get_busy (comparer));
}

/* Requests faster than answers: the last one is answered, as it was asked. */
static void
the_latest_request_is_answered (void **state)
{
  g_autoptr (LbContents) contents = two_reference_weights ();
  g_autoptr (LbComparer) comparer = lb_comparer_new ();
  Seen seen = { 0 };

  g_signal_connect (comparer, "compared", G_CALLBACK (compared_cb), &seen);
  for (int i = 0; i < 300; i++)
    {
      set (&contents->variants.list[0], "weight.mass_kg", 0.5 + 0.001 * i);
      lb_comparer_request (comparer, contents);
      if (i % 7 == 0)
        g_main_context_iteration (NULL, FALSE);
    }
  wait_until_done (comparer);
  assert_true (seen.n >= 1 && seen.n <= 300);
  assert_true (
      lb_result_get_setup (lb_comparison_get_result (lb_comparer_get_comparison (comparer), 0))
          ->rig.weight.mass
      == 0.5 + 0.001 * 299);
}

static void
it_may_go_while_it_solves (void **state)
{
  g_autoptr (LbContents) contents = two_reference_weights ();

  for (int i = 0; i < 5; i++)
    {
      LbComparer *comparer = lb_comparer_new ();

      lb_comparer_request (comparer, contents);
      g_object_unref (comparer);
    }
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (differences_are_those_of_an_independent_solver),
    cmocka_unit_test (differences_are_told_in_words),
    cmocka_unit_test (the_table_tells_the_same),
    cmocka_unit_test (the_document_stands_beside_a_single_variant),
    cmocka_unit_test (what_has_no_answer_says_why),
    cmocka_unit_test (a_first_without_an_answer_leaves_plain_readings),
    cmocka_unit_test (the_comparer_says_what_solving_here_says),
    cmocka_unit_test (only_what_changed_is_solved_again),
    cmocka_unit_test (the_latest_request_is_answered),
    cmocka_unit_test (it_may_go_while_it_solves),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
