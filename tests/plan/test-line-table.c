/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of line out and wire angle: by hand where that can be done, and against the oracle,
 * which solves every cell by another method with another library. */
#include "test.h"

#include "ideal-rig.h"
#include "line_table.h"
#include "oracle.h"
#include "rigs.h"

#define DEGREE (3.14159265358979323846 / 180)
#define MOST_CELLS 128

static LbLineCell cells[MOST_CELLS];
static LbRunWindow limits[MOST_CELLS];

static LbLineTableAxes
axes_of (const LbSetup *setup,
         const double *weights,
         size_t n_weights,
         const double *depths,
         size_t n_depths,
         const double *currents,
         size_t n_currents)
{
  return (LbLineTableAxes){ weights,    n_weights,          depths, n_depths, currents,
                            n_currents, setup->rig.line_out };
}

static void
compute (const LbSetup *setup, const LbLineTableAxes *axes)
{
  assert_true (axes->n_weights * axes->n_depths * axes->n_currents <= MOST_CELLS);
  assert_int_equal (lb_line_table_compute (setup, axes, NULL, cells, limits), LB_STATUS_OK);
}

/* ---- By hand ---- */

/* The wire hangs straight down, so the weight is as deep as the line is long. What the lines
 * stretch is less than 1.5 mm: 9 N on 71.5 kN is 1.3e-4 of 6 m, and on the shank's 770 N 1.2 %. */
static void
in_still_water_the_wire_hangs_straight (void **state)
{
  const double weights[] = { 0.5, 1.0 }, depths[] = { 3, 6 }, currents[] = { 0 };
  LbSetup setup = lb_setup_default ();
  LbLineTableAxes axes;

  setup.boat = (LbBoat){ 0, 0.5, 0 };
  setup.rig.shank_length = 1;
  setup.rig.shank.axial_stiffness = 1e6;
  setup.rig.line_out.value = 0.1;
  axes = axes_of (&setup, weights, 2, depths, 2, currents, 1);
  compute (&setup, &axes);
  for (size_t i = 0; i < 4; i++)
    {
      assert_near (cells[i].line_out, depths[i % 2] + 0.5 - 1.0 - 0.1, 0.0015);
      assert_near (cells[i].wire_angle, 0, 0.1 * DEGREE);
    }
}

/* line out = (depth + reel - height) / cos (angle), tan (angle) = drag / weight in water. */
static void
a_straight_wire_is_as_long_as_its_angle_makes_it (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  const double depths[] = { 2, 4, 8 }, currents[] = { 0.4, 0.8, 1.2, 1.6 };
  LbLineTableAxes axes = axes_of (&setup, &setup.rig.weight.mass, 1, depths, 3, currents, 4);

  setup.boat.speed_over_ground = 0.25;
  compute (&setup, &axes);
  for (size_t i = 0; i < 12; i++)
    {
      double angle = ideal_angle (&setup, currents[i % 4] + 0.25);

      assert_near (cells[i].wire_angle, angle, 1e-6);
      assert_relative (cells[i].line_out, (depths[i / 4] + 0.4 - 0.3) / cos (angle), 1e-6);
      assert_relative (cells[i].hand_tension, IDEAL_DOWN / cos (angle), 1e-6);
      assert_int_equal (cells[i].state, LB_RUN_IN_BAND);
    }
}

/* Without lures a rig runs until it is blown back, at 60 degrees whatever the depth. */
static void
the_limit_is_where_the_wire_leans_too_far (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);
  const double depths[] = { 2, 8 }, currents[] = { 0.5, 1, 1.5, 3 };
  LbLineTableAxes axes = axes_of (&setup, &setup.rig.weight.mass, 1, depths, 2, currents, 4);

  setup.boat.speed_over_ground = 0.25;
  compute (&setup, &axes);
  for (size_t d = 0; d < 2; d++)
    {
      assert_near (limits[d].high, ideal_speed (&setup, 60 * DEGREE) - 0.25,
                   LB_WINDOW_TOLERANCE + 1e-6);
      assert_int_equal (limits[d].above, LB_RUN_BLOWS_BACK);
      assert_true (limits[d].low == 0);
      assert_int_equal (limits[d].below, LB_RUN_IN_BAND);
      assert_int_equal (cells[4 * d + 3].state, LB_RUN_BLOWS_BACK);
      assert_true (lb_is_set (cells[4 * d + 3].line_out));
    }
}

/* The lure runs as high as the weight, so at the wrong height it is never in the band. */
static void
a_band_that_is_missed_has_no_limits (void **state)
{
  LbSetup low = ideal_rig (1, 0.05), high = ideal_rig (1, 0.7);
  const double depths[] = { 4 }, currents[] = { 0.5, 1 };
  LbLineTableAxes axes = axes_of (&low, &low.rig.weight.mass, 1, depths, 1, currents, 2);

  compute (&low, &axes);
  assert_false (lb_is_set (limits[0].low) || lb_is_set (limits[0].high));
  assert_int_equal (cells[0].state, LB_RUN_BELOW_BAND);
  axes.hold = high.rig.line_out;
  compute (&high, &axes);
  assert_false (lb_is_set (limits[0].low) || lb_is_set (limits[0].high));
  assert_int_equal (cells[1].state, LB_RUN_ABOVE_BAND);
}

/* 1.2 m of shank reach deeper than 0.7 m of water and 0.4 m of air. */
static void
a_shank_too_long_for_the_water_says_so (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);
  const double depths[] = { 0.7, 4 }, currents[] = { 0.2 };
  LbLineTableAxes axes = axes_of (&setup, &setup.rig.weight.mass, 1, depths, 2, currents, 1);

  setup.rig.shank_length = 1.2;
  compute (&setup, &axes);
  assert_int_equal (cells[0].state, LB_RUN_TOO_SHALLOW);
  assert_false (lb_is_set (cells[0].line_out) || lb_is_set (cells[0].wire_angle));
  assert_int_equal (cells[1].state, LB_RUN_IN_BAND);
}

/* ---- Against the oracle ---- */

static void
check_cell (const LbSetup *setup, const LbLineCell *cell, size_t *n)
{
  OracleAnswer answer;
  double angle;

  assert_true (oracle_solve (setup, NULL, &answer));
  angle = atan2 (answer.reel_pull[0], -answer.reel_pull[1]);
  /* The window's mesh is second order and coarse; it is within a few millimetres. */
  assert_near (cell->line_out, answer.line_out, 0.005);
  assert_near (cell->wire_angle, angle, 0.1 * DEGREE);
  (*n)++;
}

static void
every_cell_is_what_the_oracle_finds (void **state)
{
  const double weights[] = { 0.6, 0.9 }, depths[] = { 4, 6 }, currents[] = { 0.9, 1.3 };
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbLineTableAxes axes = axes_of (&setup, weights, 2, depths, 2, currents, 2);
  size_t n = 0;

  setup.rig.line_out.value = 0.25;
  axes.hold = setup.rig.line_out;
  compute (&setup, &axes);
  for (size_t i = 0; i < 8; i++)
    {
      LbSetup one = setup;

      one.rig.weight.mass = weights[i / 4];
      one.river.depth = depths[i / 2 % 2];
      one.river.surface_current = currents[i % 2];
      check_cell (&one, &cells[i], &n);
    }
  assert_int_equal (n, 8);
}

/* ---- What is asked for ---- */

static void
a_given_line_is_held_where_its_weight_is (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbReadings readings = { .weight = { .height = 0.21 } };

  assert_int_equal (lb_line_table_hold (&setup, &readings).mode, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  assert_true (lb_line_table_hold (&setup, &readings).value == setup.rig.line_out.value);
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 7 };
  assert_true (lb_line_table_hold (&setup, &readings).value == 0.21);
  readings.weight.on_bed = true;
  assert_int_equal (lb_line_table_hold (&setup, &readings).mode, LB_LINE_OUT_TOUCHING);
}

typedef struct
{
  double done;
  size_t n_calls, most_calls;
} Watch;

static bool
watch_cb (void *data, double done)
{
  Watch *watch = data;

  assert_true (done >= watch->done && done <= 1);
  watch->done = done;
  return ++watch->n_calls >= watch->most_calls;
}

static void
progress_rises_and_a_table_can_be_given_up (void **state)
{
  const double weights[] = { 0.6, 0.9 }, depths[] = { 4, 6 }, currents[] = { 0.9, 1.3 };
  LbSetup setup = lb_setup_default ();
  LbLineTableAxes axes = axes_of (&setup, weights, 2, depths, 2, currents, 2);
  Watch all = { .most_calls = SIZE_MAX }, few = { .most_calls = 10 };
  const LbPlanTask whole = { watch_cb, &all }, broken_off = { watch_cb, &few };

  assert_int_equal (lb_line_table_compute (&setup, &axes, &whole, cells, limits), LB_STATUS_OK);
  assert_true (all.n_calls > 40 && all.done >= 0.7);
  assert_int_equal (lb_line_table_compute (&setup, &axes, &broken_off, cells, limits),
                    LB_STATUS_CANCELLED);
  /* Not one solve more after that; each asks twice at most while it is short. */
  assert_true (few.n_calls <= 11);
}

static void
too_many_currents_are_refused (void **state)
{
  static double currents[LB_LINE_TABLE_MOST_VALUES + 1];
  LbSetup setup = lb_setup_default ();
  LbLineTableAxes axes = axes_of (&setup, &setup.rig.weight.mass, 1, &setup.river.depth, 1,
                                  currents, LB_LINE_TABLE_MOST_VALUES + 1);

  assert_int_equal (lb_line_table_compute (&setup, &axes, NULL, cells, limits),
                    LB_STATUS_BAD_SETUP);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (in_still_water_the_wire_hangs_straight),
    cmocka_unit_test (a_straight_wire_is_as_long_as_its_angle_makes_it),
    cmocka_unit_test (the_limit_is_where_the_wire_leans_too_far),
    cmocka_unit_test (a_band_that_is_missed_has_no_limits),
    cmocka_unit_test (a_shank_too_long_for_the_water_says_so),
    cmocka_unit_test (every_cell_is_what_the_oracle_finds),
    cmocka_unit_test (a_given_line_is_held_where_its_weight_is),
    cmocka_unit_test (progress_rises_and_a_table_can_be_given_up),
    cmocka_unit_test (too_many_currents_are_refused),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
