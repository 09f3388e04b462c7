/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lures and hooks are counted, and said, against the limits that the user entered. */
#include "model-support.h"

#include <string.h>

#include "reader.h"
#include "readings_table.h"
#include "rules.h"

static LbSetup
with (size_t n_leaders, double lure_limit, double hook_limit)
{
  LbSetup setup = lb_setup_default ();

  setup.rig.n_leaders = n_leaders;
  for (size_t i = 0; i < n_leaders; i++)
    setup.rig.leaders[i].lure.hooks = i == 0 ? 3 : 2;
  setup.rules = (LbRules){ lure_limit, hook_limit };
  return setup;
}

static void
assert_excess (LbSetup setup, const char *expected)
{
  g_autofree char *excess = lb_rules_dup_excess (&setup);

  assert_true (g_strcmp0 (excess, expected) == 0);
}

static void
what_passes_a_limit_is_said (void **state)
{
  assert_excess (with (3, LB_UNSET, LB_UNSET), NULL);
  assert_excess (with (3, 3, 7), NULL);
  assert_excess (with (3, 2, LB_UNSET), "3 lures on the line; your limit is 2.");
  assert_excess (with (3, 3, 6), "7 hooks on the line; your limit is 6.");
  assert_excess (with (3, 1, 1),
                 "3 lures on the line; your limit is 1. 7 hooks on the line; your limit is 1.");
  assert_excess (with (1, LB_UNSET, 2), "3 hooks on the line; your limit is 2.");
  assert_excess (with (0, 1, 1), NULL);
}

static void
what_is_on_the_line_is_counted (void **state)
{
  LbSetup one = with (1, LB_UNSET, LB_UNSET), none = with (0, 1, 1);
  g_autofree char *of_one = lb_rules_dup_count (&one);
  g_autofree char *of_none = lb_rules_dup_count (&none);

  assert_string_equal (of_one, "1 lure and 3 hooks on the line.");
  assert_string_equal (of_none, "0 lures and 0 hooks on the line.");
}

/* How often a caution of the list speaks of a limit. */
static int
cautions_about_limits (LbSetup setup)
{
  LbWording wording = lb_wording_default (LB_UNITS_US);
  g_autoptr (GPtrArray) list = lb_cautions_new (&setup, NULL, &wording);
  int n = 0;

  for (guint i = 0; i < list->len; i++)
    {
      const LbCaution *caution = g_ptr_array_index (list, i);

      if (!strstr (caution->text, "your limit"))
        continue;
      n++;
      assert_int_equal (caution->kind, LB_CAUTION_NOW);
      assert_non_null (strstr (caution->text, "Local rules decide"));
    }
  return n;
}

static void
the_cautions_say_it_and_defer_to_the_rules (void **state)
{
  assert_int_equal (cautions_about_limits (with (3, 2, LB_UNSET)), 1);
  assert_int_equal (cautions_about_limits (with (2, 2, LB_UNSET)), 0);
}

/* A file from before there were rules means what it meant. */
static void
a_file_without_them_has_no_limits (void **state)
{
  g_autofree char *path = source_path ("good/least-keys.rig");
  g_autofree char *text = read_whole (path, NULL);
  g_autofree char *eight_path = source_path ("good/eight-leaders.rig");
  g_autofree char *eight = read_whole (eight_path, NULL);
  g_autoptr (LbContents) contents = lb_contents_new ();

  assert_null (strstr (text, "rules"));
  assert_null (strstr (eight, "hooks"));
  contents->setup.rules = (LbRules){ 1, 1 };
  assert_true (lb_reader_parse (text, -1, contents, NULL));
  assert_false (lb_is_set (contents->setup.rules.lures_per_line));
  assert_false (lb_is_set (contents->setup.rules.hooks_per_line));
  assert_true (lb_reader_parse (eight, -1, contents, NULL));
  assert_int_equal (contents->setup.rig.n_leaders, 8);
  for (size_t i = 0; i < 8; i++)
    assert_true (contents->setup.rig.leaders[i].lure.hooks == 2);
}

static void
limits_are_set_from_the_command_line (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");

  assert_true (lb_reader_set (contents, "rules.lures_per_line", "1", NULL));
  assert_true (lb_reader_set (contents, "leaders[0].lure.hooks", "4", NULL));
  assert_false (lb_reader_set (contents, "rules.hooks_per_line", "2.5", NULL));
  assert_true (lb_rules_count (&contents->setup).too_many_lures);
  assert_int_equal (lb_rules_count (&contents->setup).hooks, 6);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (what_passes_a_limit_is_said),
    cmocka_unit_test (what_is_on_the_line_is_counted),
    cmocka_unit_test (the_cautions_say_it_and_defer_to_the_rules),
    cmocka_unit_test (a_file_without_them_has_no_limits),
    cmocka_unit_test (limits_are_set_from_the_command_line),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
