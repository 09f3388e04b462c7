/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Boat speeds that keep the lures in the band: by hand, and against single solves. */
#include "test.h"

#include "ideal-rig.h"
#include "rigs.h"
#include "speed_window.h"
#include "steady.h"

#define NEAR (LB_WINDOW_TOLERANCE + 1e-6)

static LbRunWindow
window_of (const LbSetup *setup, double line_out)
{
  LbRunWindow window;

  assert_int_equal (lb_speed_window_compute (setup, line_out, NULL, &window), LB_STATUS_OK);
  return window;
}

/* The lure runs as high as the weight: from 0.1 to 0.5 m with the wire at the two angles whose
 * cosines are (6.4 - height) / line, in water of the speed that leans it so far. */
static void
a_straight_wire_lifts_its_lure_through_the_band (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  double line = 6.1 / cos (ideal_angle (&setup, 1.5));
  LbRunWindow window = window_of (&setup, line);

  assert_near (window.low, ideal_speed (&setup, ideal_angle_at (&setup, line, 0.1)) - 1, NEAR);
  assert_near (window.high, ideal_speed (&setup, ideal_angle_at (&setup, line, 0.5)) - 1, NEAR);
  assert_int_equal (window.below, LB_RUN_BELOW_BAND);
  assert_int_equal (window.above, LB_RUN_ABOVE_BAND);
}

/* A band of 4 mm, passed between two of the speeds that are looked at, is found all the same: the
 * margin has a peak there. The setup's own speed is in no band. */
static void
a_narrow_band_is_found (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  double line = 6.1 / cos (ideal_angle (&setup, 1.5));
  LbRunWindow window;

  setup.band = (LbBand){ 0.301, 0.305 };
  window = window_of (&setup, line);
  assert_near (window.low, ideal_speed (&setup, ideal_angle_at (&setup, line, 0.301)) - 1, NEAR);
  assert_near (window.high, ideal_speed (&setup, ideal_angle_at (&setup, line, 0.305)) - 1, NEAR);
}

/* With 5 m of line the weight hangs 1.4 m off the bed or higher. */
static void
a_line_too_short_has_no_speed (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  LbRunWindow window = window_of (&setup, 5);

  assert_false (lb_is_set (window.low) || lb_is_set (window.high));
}

/* At the ends of the window a lure is at the edge of the band, by solves that start cold. */
static void
single_solves_agree (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  const LbSteadyOptions cold = { .cold = true };
  LbSteady *steady = lb_steady_new ();
  LbReadings readings;
  LbRunWindow window;
  size_t n_ends = 0;

  setup.rig.leaders[0].attach_above_weight = 0.55; /* in the band at its own speed */
  setup.rig.leaders[1].attach_above_weight = 0.75;
  assert_int_equal (lb_steady_solve (steady, &setup, &cold), LB_STATUS_OK);
  lb_readings_compute (&readings, &setup, lb_steady_shape (steady));
  assert_int_equal (lb_run_state (&readings, LB_STATUS_OK), LB_RUN_IN_BAND);
  window = window_of (&setup, readings.line_out);
  assert_true (window.low < 0.4 && window.high > 0.4);
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, readings.line_out };
  for (int end = 0; end < 2; end++)
    for (int side = -1; side <= 1; side += 2)
      {
        double speed = (end == 0 ? window.low : window.high) + side * 0.002;
        LbStatus status;

        if ((end == 0 ? window.below : window.above) == LB_RUN_IN_BAND || speed < 0)
          continue;
        setup.boat.speed_over_ground = speed;
        status = lb_steady_solve (steady, &setup, &cold);
        lb_readings_compute (&readings, &setup, lb_steady_shape (steady));
        assert_true ((lb_run_state (&readings, status) == LB_RUN_IN_BAND)
                     == ((end == 0) == (side > 0)));
        n_ends++;
      }
  assert_true (n_ends >= 2);
  lb_steady_free (steady);
}

/* Over a rough bed this rig can hang clear or drag at 0.4 m/s, as friction holds down what is down:
 * asked about the rig that hangs clear, the window holds its speed, and down to the window's end
 * its weight hangs clear. */
static void
a_weight_that_hangs_clear_is_followed_down (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbSteady *steady = lb_steady_new ();
  LbReadings readings;
  LbRunWindow window;

  setup.river.surface_current = 1.2;
  setup.boat = (LbBoat){ .speed_over_ground = 0.4 };
  setup.rig.weight.mass = 0.567;
  setup.rig.line_out.value = 0.1;
  for (int i = 0; i < 2; i++)
    setup.rig.leaders[i].lure = (LbLure){ 3e-4, 0.4, 0.03, 0.006, 0.07, 2 };
  setup.rig.leaders[0].attach_above_weight = 0.45;
  setup.rig.leaders[1].attach_above_weight = 0.6;
  setup.river.profile = (LbProfile){ .law = LB_PROFILE_LOG, .roughness = 0.1 };
  assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_OK);
  lb_readings_compute (&readings, &setup, lb_steady_shape (steady));
  assert_true (lb_run_state (&readings, LB_STATUS_OK) == LB_RUN_IN_BAND);
  window = window_of (&setup, readings.line_out);
  assert_true (window.low <= 0.4 && window.low > 0.35 && window.high > 0.4);
  assert_int_equal (window.below, LB_RUN_DRAGS);
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, readings.line_out };
  for (int i = 0; i <= 4; i++)
    {
      setup.boat.speed_over_ground = 0.4 + (window.low - 0.4) * i / 4;
      assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_OK);
      lb_readings_compute (&readings, &setup, lb_steady_shape (steady));
      assert_false (readings.weight.on_bed);
    }
  lb_steady_free (steady);
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
  LbRunWindow window;

  assert_int_equal (lb_speed_window_compute (&setup, 6, &task, &window), LB_STATUS_CANCELLED);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_straight_wire_lifts_its_lure_through_the_band),
    cmocka_unit_test (a_narrow_band_is_found),
    cmocka_unit_test (a_line_too_short_has_no_speed),
    cmocka_unit_test (single_solves_agree),
    cmocka_unit_test (a_weight_that_hangs_clear_is_followed_down),
    cmocka_unit_test (it_can_be_given_up),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
