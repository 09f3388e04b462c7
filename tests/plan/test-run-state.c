/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a rig runs, in one word; and where a margin is positive. */
#include "test.h"

#include "run_state.h"
#include "run_window.h"

static LbRunState
state_of (LbBandState first, LbBandState second, double angle, LbStatus status)
{
  LbReadings readings = { .n_leaders = 2, .wire_angle = angle };

  readings.lures[0].band = first;
  readings.lures[1].band = second;
  return lb_run_state (&readings, status);
}

static void
the_lures_decide (void **state)
{
  assert_int_equal (state_of (LB_BAND_INSIDE, LB_BAND_INSIDE, 0.5, LB_STATUS_OK), LB_RUN_IN_BAND);
  assert_int_equal (state_of (LB_BAND_INSIDE, LB_BAND_ABOVE, 0.5, LB_STATUS_OK), LB_RUN_ABOVE_BAND);
  assert_int_equal (state_of (LB_BAND_BELOW, LB_BAND_INSIDE, 0.5, LB_STATUS_OK), LB_RUN_BELOW_BAND);
  assert_int_equal (state_of (LB_BAND_ON_BED, LB_BAND_INSIDE, 0.5, LB_STATUS_OK),
                    LB_RUN_BELOW_BAND);
  assert_int_equal (state_of (LB_BAND_ON_BED, LB_BAND_ABOVE, 0.5, LB_STATUS_OK), LB_RUN_SPLIT);
}

static void
what_the_weight_cannot_do_comes_first (void **state)
{
  const LbBandState in = LB_BAND_INSIDE;

  assert_int_equal (state_of (in, in, 1.1, LB_STATUS_OK), LB_RUN_BLOWS_BACK);
  assert_int_equal (state_of (in, in, 1.1, LB_STATUS_LINE_AT_LONGEST), LB_RUN_TOO_LIGHT);
  assert_int_equal (state_of (in, in, 0.5, LB_STATUS_HEIGHT_LEAPS), LB_RUN_TOO_LIGHT);
  assert_int_equal (state_of (in, in, 0.5, LB_STATUS_LINE_AT_SHORTEST), LB_RUN_TOO_SHALLOW);
  assert_int_equal (state_of (in, in, 0.5, LB_STATUS_HELD_BY_FRICTION), LB_RUN_IN_BAND);
  assert_int_equal (state_of (in, in, 0.5, LB_STATUS_NO_CONVERGENCE), LB_RUN_NOT_SOLVED);
}

static void
a_rig_is_there_or_not (void **state)
{
  assert_true (lb_run_state_has_answer (LB_RUN_IN_BAND));
  assert_true (lb_run_state_has_answer (LB_RUN_BLOWS_BACK));
  assert_false (lb_run_state_has_answer (LB_RUN_TOO_LIGHT));
  assert_false (lb_run_state_has_answer (LB_RUN_TOO_SHALLOW));
  assert_false (lb_run_state_has_answer (LB_RUN_NOT_SOLVED));
}

/* ---- Windows of a margin that is known ---- */

/* In from 0.31 to 0.52 and, less widely, from 0.7 to 0.82. */
static double
two_hills (void *data, double x, LbRunState *state)
{
  double first = 0.105 - fabs (x - 0.415), second = 0.06 - fabs (x - 0.76);
  double margin = first > second ? first : second;

  *state = margin > 0 ? LB_RUN_IN_BAND : x < 0.6 ? LB_RUN_BELOW_BAND : LB_RUN_ABOVE_BAND;
  return margin;
}

static LbRunWindow
find (LbWindowMargin margin, double own)
{
  double values[11];

  for (int i = 0; i <= 10; i++)
    values[i] = i / 10.0;
  return lb_run_window_find (margin, NULL, NULL, values, 11, own);
}

static void
the_own_stretch_counts_or_else_the_widest (void **state)
{
  LbRunWindow widest = find (two_hills, 0.05), own = find (two_hills, 0.78);

  assert_near (widest.low, 0.31, LB_WINDOW_TOLERANCE);
  assert_near (widest.high, 0.52, LB_WINDOW_TOLERANCE);
  assert_int_equal (widest.below, LB_RUN_BELOW_BAND);
  assert_near (own.low, 0.7, LB_WINDOW_TOLERANCE);
  assert_near (own.high, 0.82, LB_WINDOW_TOLERANCE);
  assert_int_equal (own.above, LB_RUN_ABOVE_BAND);
}

/* From 0.4485 to 0.4615, between two values that are looked at. */
static double
narrow_hill (void *data, double x, LbRunState *state)
{
  double margin = 0.0065 - fabs (x - 0.455);

  *state = margin > 0 ? LB_RUN_IN_BAND : LB_RUN_ABOVE_BAND;
  return margin;
}

static double
nowhere (void *data, double x, LbRunState *state)
{
  *state = LB_RUN_NOT_SOLVED;
  return -1;
}

static double
everywhere (void *data, double x, LbRunState *state)
{
  *state = LB_RUN_IN_BAND;
  return 1;
}

static void
narrow_stretches_are_found_and_none_are_made_up (void **state)
{
  LbRunWindow narrow = find (narrow_hill, 0), none = find (nowhere, 0.5);
  LbRunWindow all = find (everywhere, 0.5);

  assert_near (narrow.low, 0.4485, LB_WINDOW_TOLERANCE);
  assert_near (narrow.high, 0.4615, LB_WINDOW_TOLERANCE);
  assert_false (lb_is_set (none.low) || lb_is_set (none.high));
  assert_true (all.low == 0 && all.high == 1);
  assert_int_equal (all.below, LB_RUN_IN_BAND);
  assert_int_equal (all.above, LB_RUN_IN_BAND);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (the_lures_decide),
    cmocka_unit_test (what_the_weight_cannot_do_comes_first),
    cmocka_unit_test (a_rig_is_there_or_not),
    cmocka_unit_test (the_own_stretch_counts_or_else_the_widest),
    cmocka_unit_test (narrow_stretches_are_found_and_none_are_made_up),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
