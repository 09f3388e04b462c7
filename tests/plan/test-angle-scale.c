/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scale of wire angle and weight height: by hand, against the oracle, and its limits. */
#include "test.h"

#include "angle_scale.h"
#include "ideal-rig.h"
#include "oracle.h"
#include "readings.h"
#include "rigs.h"
#include "steady.h"

#define DEGREE (3.14159265358979323846 / 180)

static LbAngleScale
scale_of (const LbSetup *setup, double line_out, double highest)
{
  LbAngleScale scale;

  assert_int_equal (lb_angle_scale_compute (setup, line_out, highest, NULL, &scale), LB_STATUS_OK);
  return scale;
}

static void
assert_rising (const LbAngleScale *scale)
{
  assert_true (scale->n >= 4);
  for (size_t i = 1; i < scale->n; i++)
    assert_true (scale->angle[i] > scale->angle[i - 1] && scale->height[i] > scale->height[i - 1]
                 && scale->speed[i] > scale->speed[i - 1]);
}

/* height = depth + reel - line cos (angle), at the points and between them. */
static void
a_straight_wire_tells_the_height_by_its_cosine (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  double line = 6.1 / cos (ideal_angle (&setup, 1.5));
  LbAngleScale scale = scale_of (&setup, line, 0.9);

  assert_rising (&scale);
  assert_true (scale.touches_below && scale.goes_on);
  assert_near (scale.angle[0], acos (6.4 / line), 0.02 * DEGREE);
  assert_near (scale.height[0], 0, 0.002);
  assert_near (scale.height[scale.n - 1], 0.9, 1e-4);
  for (double height = 0.01; height < 0.9; height += 0.037)
    {
      double angle = ideal_angle_at (&setup, line, height);

      assert_near (lb_angle_scale_angle (&scale, height), angle, 0.01 * DEGREE);
      assert_near (lb_angle_scale_height (&scale, angle), height, 0.0005);
    }
}

/* With less line than there is water the weight hangs clear with the boat at rest: 1.4 m up when
 * the stream leans the wire by its angle, and more from there. */
static void
a_short_line_starts_with_the_boat_at_rest (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);
  LbAngleScale scale = scale_of (&setup, 5, 2.5), none = scale_of (&setup, 5, 1);

  assert_rising (&scale);
  assert_false (scale.touches_below);
  assert_true (scale.speed[0] == 0);
  assert_near (scale.angle[0], ideal_angle (&setup, 1), 1e-6);
  assert_near (scale.height[0], ideal_height (&setup, 5, ideal_angle (&setup, 1)), 1e-5);
  assert_int_equal (none.n, 0);
  assert_false (lb_is_set (lb_angle_scale_height (&none, 0.3)));
}

/* At 5 m/s a wire of 60 m leans to where its weight is still on the bed: cos (angle) > 6.4 / 60. */
static void
a_weight_that_stays_on_the_bed_has_no_scale (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);

  setup.rig.weight.drag_coefficient *= 0.1;
  assert_true (ideal_height (&setup, 60, atan2 (0.1 * ideal_drag (&setup, 6), IDEAL_DOWN)) < 0);
  assert_int_equal (scale_of (&setup, 60, 1).n, 0);
}

/* A boat at 5 m/s in a stream of 1 m/s is as fast as was tried. */
static void
the_fastest_boat_ends_the_scale (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);
  LbAngleScale scale;

  scale = scale_of (&setup, 6.2, 6.2);
  assert_rising (&scale);
  assert_false (scale.goes_on);
  assert_near (scale.speed[scale.n - 1], 5, 1e-9);
  assert_near (scale.angle[scale.n - 1], ideal_angle (&setup, 6), 1e-6);
}

static void
outside_of_its_ends_a_scale_says_nothing (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  LbAngleScale scale = scale_of (&setup, 7, 0.9);

  assert_false (lb_is_set (lb_angle_scale_height (&scale, scale.angle[0] - 1e-9)));
  assert_false (lb_is_set (lb_angle_scale_height (&scale, scale.angle[scale.n - 1] + 1e-9)));
  assert_false (lb_is_set (lb_angle_scale_angle (&scale, 1)));
  assert_false (lb_is_set (lb_angle_scale_angle (&scale, NAN)));
}

/* The rig of the reference answers: the oracle, given the line and the boat's speed, has the same
 * angle and height as the scale, at its points and half way between them. */
static void
the_oracle_reads_the_same_scale (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  OracleAnswer own, answer;
  LbAngleScale scale;
  size_t n = 0;

  setup.rig.leaders[0].attach_above_weight =
      0.55; /* no line touches the bed, where the oracle is lost */
  setup.rig.leaders[1].attach_above_weight = 0.75;
  assert_true (oracle_solve (&setup, NULL, &own));
  scale = scale_of (&setup, own.line_out, 0.6);
  assert_rising (&scale);
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, own.line_out };
  for (size_t i = 2; i + 1 < scale.n; i += 3)
    {
      double angle, height;

      setup.boat.speed_over_ground = 0.5 * (scale.speed[i] + scale.speed[i + 1]);
      assert_true (oracle_solve (&setup, &own, &answer));
      if (answer.lowest < 0.02)
        continue;
      angle = atan2 (answer.reel_pull[0], -answer.reel_pull[1]);
      height = setup.river.depth + answer.weight[1];
      assert_near (lb_angle_scale_height (&scale, angle), height, 0.005);
      assert_near (lb_angle_scale_angle (&scale, height), angle, 0.1 * DEGREE);
      n++;
    }
  assert_true (n >= 6);
}

static bool
stop_cb (void *data, double done)
{
  return true;
}

static void
it_can_be_given_up (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  const LbPlanTask task = { stop_cb, NULL };
  LbAngleScale scale;

  assert_int_equal (lb_angle_scale_compute (&setup, 6, 0.5, &task, &scale), LB_STATUS_CANCELLED);
  assert_int_equal (scale.n, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_straight_wire_tells_the_height_by_its_cosine),
    cmocka_unit_test (a_short_line_starts_with_the_boat_at_rest),
    cmocka_unit_test (a_weight_that_stays_on_the_bed_has_no_scale),
    cmocka_unit_test (the_fastest_boat_ends_the_scale),
    cmocka_unit_test (outside_of_its_ends_a_scale_says_nothing),
    cmocka_unit_test (the_oracle_reads_the_same_scale),
    cmocka_unit_test (it_can_be_given_up),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
