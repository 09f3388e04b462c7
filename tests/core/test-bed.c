/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The bed's curve against GSL's Steffen spline (gsl_interp_steffen). */
#include "bed.h"

#include <gsl/gsl_spline.h>

#include "test.h"

static LbRiver
random_river (TestRandom *random, size_t n)
{
  LbRiver river = lb_setup_default ().river;
  double x = test_random (random, -100, 100);

  river.n_bed_points = n;
  for (size_t i = 0; i < n; i++)
    {
      river.bed_x[i] = x;
      x += test_random_log (random, 0.05, 20);
      river.bed_depth[i] = test_random (random, 1, 8);
      /* Steps and flats, too. */
      if (i > 0 && test_random (random, 0, 1) < 0.2)
        river.bed_depth[i] = river.bed_depth[i - 1];
    }
  return river;
}

static void
plane_bed_is_level (void **state)
{
  LbRiver river = lb_setup_default ().river;
  LbBed bed;

  lb_bed_init (&bed, &river);
  for (double x = -1000; x <= 1000; x += 100)
    {
      LbBedPoint at = lb_bed_at (&bed, x);
      assert_near (at.depth, river.depth, 0);
      assert_near (at.slope, 0, 0);
      assert_near (at.bend, 0, 0);
    }
}

static void
one_point_is_a_level_bed (void **state)
{
  LbRiver river = lb_setup_default ().river;
  LbBed bed;

  river.n_bed_points = 1;
  river.bed_x[0] = 12;
  river.bed_depth[0] = 3.5;
  lb_bed_init (&bed, &river);
  assert_near (lb_bed_at (&bed, 0).depth, 3.5, 0);
  assert_near (lb_bed_at (&bed, 12).depth, 3.5, 0);
  assert_near (lb_bed_at (&bed, 50).slope, 0, 0);
}

static void
two_points_are_joined_straight (void **state)
{
  LbRiver river = lb_setup_default ().river;
  LbBed bed;

  river.n_bed_points = 2;
  river.bed_x[0] = -10;
  river.bed_x[1] = 10;
  river.bed_depth[0] = 4;
  river.bed_depth[1] = 6;
  lb_bed_init (&bed, &river);
  for (double x = -9.5; x < 10; x += 0.5)
    {
      assert_near (lb_bed_at (&bed, x).depth, 5 + 0.1 * x, 1e-14);
      assert_near (lb_bed_at (&bed, x).slope, 0.1, 1e-14);
      assert_near (lb_bed_at (&bed, x).bend, 0, 1e-14);
    }
}

static void
compare_with_gsl (const LbRiver *river, TestRandom *random)
{
  size_t n = river->n_bed_points;
  gsl_spline *spline = gsl_spline_alloc (gsl_interp_steffen, n);
  LbBed bed;

  gsl_spline_init (spline, river->bed_x, river->bed_depth, n);
  lb_bed_init (&bed, river);
  for (int i = 0; i < 200; i++)
    {
      double x = test_random (random, river->bed_x[0], river->bed_x[n - 1]);
      LbBedPoint at = lb_bed_at (&bed, x);
      double slope = gsl_spline_eval_deriv (spline, x, NULL);
      double bend = gsl_spline_eval_deriv2 (spline, x, NULL);
      assert_near (at.depth, gsl_spline_eval (spline, x, NULL), 1e-12);
      assert_near (at.slope, slope, 1e-11 * (1 + fabs (slope)));
      assert_near (at.bend, bend, 1e-10 * (1 + fabs (bend)));
    }
  gsl_spline_free (spline);
}

static void
curve_is_steffens (void **state)
{
  TestRandom random = { 11 };

  for (size_t i = 0; i < test_count (100); i++)
    {
      LbRiver river = random_river (&random, 3 + i % 60);
      compare_with_gsl (&river, &random);
    }
}

static void
most_points_are_taken (void **state)
{
  TestRandom random = { 5 };
  LbRiver river = random_river (&random, LB_MAX_BED_POINTS);

  compare_with_gsl (&river, &random);
}

static void
meets_the_points_and_stays_between (void **state)
{
  TestRandom random = { 3 };

  for (size_t k = 0; k < test_count (50); k++)
    {
      LbRiver river = random_river (&random, 20);
      LbBed bed;
      lb_bed_init (&bed, &river);
      for (size_t i = 0; i + 1 < 20; i++)
        {
          double a = river.bed_depth[i], b = river.bed_depth[i + 1];
          assert_near (lb_bed_at (&bed, river.bed_x[i]).depth, a, 1e-14);
          for (int j = 1; j < 20; j++)
            {
              double x = river.bed_x[i] + (river.bed_x[i + 1] - river.bed_x[i]) * j / 20;
              double depth = lb_bed_at (&bed, x).depth;
              assert_less (fmin (a, b) - 1e-12, depth);
              assert_less (depth, fmax (a, b) + 1e-12);
            }
        }
    }
}

static void
slope_goes_on_across_the_points (void **state)
{
  TestRandom random = { 9 };
  LbRiver river = random_river (&random, 40);
  LbBed bed;

  lb_bed_init (&bed, &river);
  for (size_t i = 1; i + 1 < 40; i++)
    {
      LbBedPoint before = lb_bed_at (&bed, river.bed_x[i] - 1e-9);
      LbBedPoint after = lb_bed_at (&bed, river.bed_x[i] + 1e-9);
      double bend = fabs (before.bend) + fabs (after.bend);
      assert_near (before.depth, after.depth, 1e-8 * (1 + fabs (before.slope)));
      assert_near (before.slope, after.slope, 2e-9 * bend + 1e-12);
    }
}

/* Beyond the ends the slope falls evenly to 0 within a metre, and the depth with it; from there on
 * both are held. */
static void
levels_out_beyond_the_ends (void **state)
{
  LbRiver river = lb_setup_default ().river;
  double beyond[] = { 1, 2, 1e9, INFINITY };
  LbBed bed;

  river.n_bed_points = 2;
  river.bed_x[0] = -10;
  river.bed_x[1] = 10;
  river.bed_depth[0] = 4;
  river.bed_depth[1] = 6;
  lb_bed_init (&bed, &river);
  assert_near (lb_bed_at (&bed, -10).slope, 0.1, 1e-14);
  assert_near (lb_bed_at (&bed, 10).slope, 0.1, 1e-14);
  assert_near (lb_bed_at (&bed, -10.5).depth, 4 - 0.1 * (0.5 - 0.125), 1e-14);
  assert_near (lb_bed_at (&bed, -10.5).slope, 0.05, 1e-14);
  assert_near (lb_bed_at (&bed, -10.5).bend, 0.1, 1e-14);
  assert_near (lb_bed_at (&bed, 10.5).depth, 6 + 0.1 * (0.5 - 0.125), 1e-14);
  assert_near (lb_bed_at (&bed, 10.5).slope, 0.05, 1e-14);
  assert_near (lb_bed_at (&bed, 10.5).bend, -0.1, 1e-14);
  for (int i = 0; i < 4; i++)
    {
      assert_near (lb_bed_at (&bed, -10 - beyond[i]).depth, 3.95, 1e-14);
      assert_near (lb_bed_at (&bed, -10 - beyond[i]).slope, 0, 0);
      assert_near (lb_bed_at (&bed, 10 + beyond[i]).depth, 6.05, 1e-14);
      assert_near (lb_bed_at (&bed, 10 + beyond[i]).slope, 0, 0);
    }
}

/* However steeply the last points rise, there is water beyond them. */
static void
stays_under_water_beyond_the_ends (void **state)
{
  LbRiver river = lb_setup_default ().river;
  LbBed bed;

  river.n_bed_points = 2;
  river.bed_x[0] = 0;
  river.bed_x[1] = 1;
  river.bed_depth[0] = 8;
  river.bed_depth[1] = 0.5;
  lb_bed_init (&bed, &river);
  for (double x = 1; x < 4; x += 0.01)
    assert_less (0.25 - 1e-12, lb_bed_at (&bed, x).depth);
  assert_near (lb_bed_at (&bed, 4).depth, 0.25, 1e-14);
}

static void
nothing_is_shallower_than_the_shallowest (void **state)
{
  TestRandom random = { 11 };

  for (int trial = 0; trial < 200; trial++)
    {
      size_t n = 1 + (size_t) test_random (&random, 0, 30);
      LbRiver river = random_river (&random, n);
      double first = river.bed_x[0] - 3, whole = river.bed_x[n - 1] + 3 - first, least = INFINITY;
      LbBed bed;

      lb_bed_init (&bed, &river);
      for (int k = 0; k <= 20000; k++)
        least = fmin (least, lb_bed_at (&bed, first + whole * k / 20000).depth);
      assert_true (least >= lb_bed_shallowest (&bed) - 1e-12);
      assert_near (least, lb_bed_shallowest (&bed), 0.01);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (plane_bed_is_level),
    cmocka_unit_test (one_point_is_a_level_bed),
    cmocka_unit_test (two_points_are_joined_straight),
    cmocka_unit_test (curve_is_steffens),
    cmocka_unit_test (most_points_are_taken),
    cmocka_unit_test (meets_the_points_and_stays_between),
    cmocka_unit_test (slope_goes_on_across_the_points),
    cmocka_unit_test (levels_out_beyond_the_ends),
    cmocka_unit_test (stays_under_water_beyond_the_ends),
    cmocka_unit_test (nothing_is_shallower_than_the_shallowest),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
