/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A fish on a lure: the rig that can be worked out by hand, and what must hold of any. */
#include "test.h"

#include <gsl/gsl_math.h>

#include "fish.h"
#include "ideal-rig.h"
#include "readings.h"

static LbSteady *steady;

static int
set_up (void **state)
{
  steady = lb_steady_new ();
  return steady != NULL ? 0 : -1;
}

static int
tear_down (void **state)
{
  lb_steady_free (steady);
  return 0;
}

static LbFishLoad
hold (const LbSetup *setup, size_t leader, LbFish fish, double line_out, double speed)
{
  LbFishLoad load;
  LbStatus status = lb_fish_hold (steady, setup, leader, &fish, line_out, speed, &load);

  assert_false (lb_status_is_failure (status));
  return load;
}

/* 0.9 m: 0.015 * 0.4 * 0.81 and 1.4 * pi / 4 * 0.09^2 by hand. */
static void
test_drag_area (void **state)
{
  assert_near (lb_fish_drag_area (&(LbFish){ 0.9, false }), 0.00486, 1e-9);
  assert_near (lb_fish_drag_area (&(LbFish){ 0.9, true }), 0.00486 + 0.0089064, 1e-6);
}

/* Lines without weight or drag: the wire carries the weight down, and all drag along. */
static void
test_balance (void **state)
{
  LbSetup setup = ideal_rig (1, 1);
  double rho = setup.river.density;

  for (double speed = 0; speed <= 0.6; speed += 0.2)
    for (int open = 0; open < 2; open++)
      {
        LbFish fish = { 0.7, open == 1 };
        LbFishLoad load = hold (&setup, 0, fish, 4, speed);
        double past = setup.river.surface_current + speed;
        double drag = 0.5 * rho * lb_fish_drag_area (&fish) * past * past;
        assert_near (load.water_speed, past, 1e-9);
        assert_near (load.drag, drag, 1e-9);
        assert_relative (load.in_hand, hypot (IDEAL_DOWN, ideal_drag (&setup, past) + drag), 1e-6);
        assert_relative (load.leader_pull, drag + 0.5 * rho * IDEAL_LURE_AREA * past * past, 1e-6);
      }
}

/* A longer fish, an open mouth, more speed: each more to hold, on either lure. */
static void
test_more_is_more (void **state)
{
  LbSetup setup = lb_setup_default ();
  double line = 7;

  for (size_t leader = 0; leader < setup.rig.n_leaders; leader++)
    {
      LbFishLoad last = { 0 };
      for (double length = 0.3; length < 1.3; length += 0.2)
        {
          LbFishLoad shut = hold (&setup, leader, (LbFish){ length, false }, line, 0.4);
          LbFishLoad open = hold (&setup, leader, (LbFish){ length, true }, line, 0.4);
          LbFishLoad slow = hold (&setup, leader, (LbFish){ length, true }, line, 0);
          assert_less (last.in_hand, shut.in_hand);
          assert_less (shut.in_hand, open.in_hand);
          assert_less (slow.in_hand, open.in_hand);
          assert_less (shut.drag, shut.leader_pull);
          assert_less (open.drag, open.leader_pull);
          last = shut;
        }
    }
}

/* The lure drags and presses down as before, the fish only drags, and the other lure is let be. */
static void
test_lure_as_before (void **state)
{
  LbSetup setup = lb_setup_default (), hooked;
  LbFish fish = { 0.8, true };
  const LbLure *before = &setup.rig.leaders[1].lure, *after;

  hooked = lb_fish_hook (&setup, 1, &fish);
  after = &hooked.rig.leaders[1].lure;
  assert_near (after->drag_area, before->drag_area + lb_fish_drag_area (&fish), 1e-15);
  assert_near (after->drag_area * after->down_force_ratio,
               before->drag_area * before->down_force_ratio, 1e-15);
  assert_near (hooked.rig.leaders[0].lure.drag_area, setup.rig.leaders[0].lure.drag_area, 0);
}

static void
test_refused (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbFishLoad load;

  assert_int_equal (lb_fish_hold (steady, &setup, 2, &(LbFish){ 0.5, false }, 7, 0.4, &load),
                    LB_STATUS_BAD_SETUP);
  assert_int_equal (lb_fish_hold (steady, &setup, 0, &(LbFish){ 0, false }, 7, 0.4, &load),
                    LB_STATUS_BAD_SETUP);
  assert_int_equal (lb_fish_hold (steady, &setup, 0, &(LbFish){ NAN, false }, 7, 0.4, &load),
                    LB_STATUS_BAD_SETUP);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_drag_area),    cmocka_unit_test (test_balance),
    cmocka_unit_test (test_more_is_more), cmocka_unit_test (test_lure_as_before),
    cmocka_unit_test (test_refused),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
