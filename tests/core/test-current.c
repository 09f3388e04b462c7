/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Current profiles against exact integrals and published curves (answers/profile-*.csv), and every
 * slope against GSL's differences. */
#include "current.h"

#include <gsl/gsl_deriv.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_spline.h>
#include <string.h>

#include "answers.h"
#include "test.h"

/* The smooth floor of the power law, m, by which it differs from the pure law near the bed. */
#define FLOOR 0.01

static LbRiver
river_with (LbProfileLaw law)
{
  LbRiver river = lb_setup_default ().river;

  river.depth = 6;
  river.profile.law = law;
  river.profile.exponent = 6;
  river.profile.roughness = 0.1;
  river.profile.n_points = 6;
  for (int i = 0; i < 6; i++)
    {
      static const double height[] = { 0.03, 0.1, 0.25, 0.5, 0.8, 1 };
      static const double speed[] = { 0.3, 0.52, 0.71, 0.88, 1.03, 1 };
      river.profile.height_fraction[i] = height[i];
      river.profile.speed_fraction[i] = speed[i];
    }
  return river;
}

/* A bar and a pool behind it. */
static void
make_uneven (LbRiver *river)
{
  static const double x[] = { -30, -12, -4, 0, 5, 9, 20 };
  static const double depth[] = { 6, 5.2, 3.1, 3.0, 4.4, 7.5, 6.5 };

  river->n_bed_points = 7;
  memcpy (river->bed_x, x, sizeof x);
  memcpy (river->bed_depth, depth, sizeof depth);
}

static double
fraction_at_height (double height, void *data)
{
  const LbCurrent *current = data;

  return lb_profile_fraction (current, height, current->reference_depth, NULL);
}

static double
depth_mean (const LbCurrent *current)
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (1000);
  gsl_function function = { fraction_at_height, (void *) current };
  double whole, error;

  gsl_integration_qags (&function, 0, current->reference_depth, 0, 1e-9, 1000, space, &whole,
                        &error);
  gsl_integration_workspace_free (space);
  return whole / current->reference_depth;
}

/* In very deep water the floor of the power law is nothing, and the law is the pure one. */
static LbCurrent
pure_power_law (double exponent)
{
  LbRiver river = river_with (LB_PROFILE_POWER);
  LbCurrent current;

  river.depth = 6e5;
  river.profile.exponent = exponent;
  lb_current_init (&current, &river);
  return current;
}

static void
power_law_means (void **state)
{
  Answers *table = answers_read ("profile-power.csv");

  for (size_t i = 0; i < answers_rows (table); i++)
    {
      LbCurrent current = pure_power_law (answers_number (table, i, "m"));
      double h = current.reference_depth, mean = depth_mean (&current);
      double at_02 = lb_profile_fraction (&current, 0.8 * h, h, NULL);
      double at_06 = lb_profile_fraction (&current, 0.4 * h, h, NULL);
      double at_08 = lb_profile_fraction (&current, 0.2 * h, h, NULL);
      assert_near (mean, answers_number (table, i, "mean"), 1e-5);
      assert_near (at_06 / mean, answers_number (table, i, "at_06"), 1e-5);
      assert_near ((at_02 + at_08) / 2 / mean, answers_number (table, i, "at_28"), 1e-5);
    }
  answers_free (table);
}

/* The mean that the program tells, against GSL's quadrature, and of the power law m / (m + 1). */
static void
means_are_gsls (void **state)
{
  for (LbProfileLaw law = LB_PROFILE_POWER; law <= LB_PROFILE_POINTS; law++)
    {
      LbRiver river = river_with (law);
      LbCurrent current;

      lb_current_init (&current, &river);
      assert_near (lb_current_mean (&current, 0) / (river.surface_current * depth_mean (&current)),
                   1, 1e-4);
    }
  for (int m = 2; m <= 12; m++)
    {
      LbCurrent current = pure_power_law (m);

      assert_near (lb_current_mean (&current, 0) / current.plane_surface, m / (m + 1.0), 1e-4);
    }
}

static void
power_law_rows (void **state)
{
  Answers *table = answers_read ("profile-measured.csv");

  for (int m = 6; m <= 7; m++)
    {
      LbCurrent current = pure_power_law (m);
      double h = current.reference_depth, mean = m / (m + 1.0);
      for (size_t i = 0; i < answers_rows (table); i++)
        {
          double height = (1 - answers_number (table, i, "y")) * h;
          /* The figures are printed to four places. */
          assert_near (lb_profile_fraction (&current, height, h, NULL) / mean,
                       answers_number (table, i, m == 6 ? "sixth" : "seventh"), 6e-5);
        }
    }
  answers_free (table);
}

static void
power_law_is_like_measured_rivers (void **state)
{
  Answers *table = answers_read ("profile-measured.csv");
  LbRiver river = river_with (LB_PROFILE_POWER);
  LbCurrent current;

  lb_current_init (&current, &river);
  double mean = depth_mean (&current);
  for (size_t i = 0; i < answers_rows (table); i++)
    {
      double y = answers_number (table, i, "y");
      double fraction = lb_profile_fraction (&current, (1 - y) * river.depth, river.depth, NULL);
      assert_relative (fraction / mean, answers_number (table, i, "measured"),
                       y <= 0.81 ? 0.04 : 0.10);
    }
  answers_free (table);
}

static void
floor_of_the_power_law (void **state)
{
  LbRiver river = river_with (LB_PROFILE_POWER);
  LbCurrent current;

  river.profile.exponent = 5;
  lb_current_init (&current, &river);
  for (double height = -0.5; height <= 6; height += 0.0625)
    {
      double floored = (height + sqrt (height * height + FLOOR * FLOOR)) / 2;
      assert_relative (lb_profile_fraction (&current, height, 6, NULL), pow (floored / 6, 1.0 / 5),
                       1e-9);
    }
}

static void
log_law_values (void **state)
{
  Answers *table = answers_read ("profile-log.csv");

  for (size_t i = 0; i < answers_rows (table); i++)
    {
      double ratio = answers_number (table, i, "h_over_ks");
      LbRiver river = river_with (LB_PROFILE_LOG);
      LbCurrent current;
      river.profile.roughness = river.depth / ratio;
      lb_current_init (&current, &river);

      double z0 = river.profile.roughness / 30, h = river.depth;
      double surface = answers_number (table, i, "surface");
      /* The table's law is 0 at z0 above the bed, the project's at the bed: its whole is
       * ln (1 + h / z0), and one point of it lies z0 lower. */
      assert_relative (2.5 * log (h / z0), surface, 1e-5);
      double share = log (h / z0) / log (h / z0 + 1);
      for (double height = 0.05 * h; height < h; height += 0.05 * h)
        {
          double table_law = 2.5 * log (height / z0) / surface;
          assert_near (lb_profile_fraction (&current, height - z0, h, NULL), table_law * share,
                       1e-5);
        }
      assert_near (lb_profile_fraction (&current, h, h, NULL), 1, 1e-15);
      /* Moved by z0 the mean differs by about z0 / h. */
      assert_near (depth_mean (&current), answers_number (table, i, "ratio"), 2 * z0 / h);
    }
  answers_free (table);
}

static void
log_law_ends_at_the_bed (void **state)
{
  LbRiver river = river_with (LB_PROFILE_LOG);
  LbCurrent current;
  double slope;

  river.profile.roughness = 0.001;
  lb_current_init (&current, &river);
  for (double height = 0; height > -2; height -= 0.1)
    {
      assert_near (lb_profile_fraction (&current, height, 6, &slope), 0, 0);
      assert_near (slope, 0, 0);
    }
  /* Nothing jumps: neither at the bed nor where the rounding off ends, 1 mm up. */
  assert_near (lb_profile_fraction (&current, 1e-12, 6, &slope), 0, 1e-15);
  assert_near (slope, 0, 1e-4);
  double above = lb_profile_fraction (&current, 0.001 + 1e-9, 6, NULL);
  assert_near (lb_profile_fraction (&current, 0.001 - 1e-9, 6, NULL), above, 1e-6);
}

static void
points_law_is_steffens (void **state)
{
  LbRiver river = river_with (LB_PROFILE_POINTS);
  const LbProfile *p = &river.profile;
  gsl_spline *spline = gsl_spline_alloc (gsl_interp_steffen, p->n_points);
  LbCurrent current;

  gsl_spline_init (spline, p->height_fraction, p->speed_fraction, p->n_points);
  lb_current_init (&current, &river);
  for (double q = 0.031; q < 1; q += 0.007)
    {
      double slope, fraction = lb_profile_fraction (&current, q * 6, 6, &slope);
      assert_near (fraction, gsl_spline_eval (spline, q, NULL), 1e-14);
      assert_near (slope * 6, gsl_spline_eval_deriv (spline, q, NULL), 1e-12);
    }
  gsl_spline_free (spline);
  assert_near (lb_profile_fraction (&current, 0.02 * 6, 6, NULL), 0.3, 0);
  assert_near (lb_profile_fraction (&current, -1, 6, NULL), 0.3, 0);
  assert_near (lb_profile_fraction (&current, 9, 6, NULL), 1, 0);
}

static void
a_single_profile_point (void **state)
{
  LbRiver river = river_with (LB_PROFILE_POINTS);
  LbCurrent current;

  river.profile.n_points = 1;
  lb_current_init (&current, &river);
  assert_near (lb_profile_fraction (&current, 0, 6, NULL), 0.3, 0);
  assert_near (lb_profile_fraction (&current, 6, 6, NULL), 0.3, 0);
}

static void
uniform_is_the_same_everywhere (void **state)
{
  LbRiver river = river_with (LB_PROFILE_UNIFORM);
  LbCurrent current;

  lb_current_init (&current, &river);
  for (double z = -7; z < 1; z += 0.25)
    {
      LbCurrentPoint at = lb_current_at (&current, 3, z);
      assert_near (at.speed, river.surface_current, 0);
      assert_near (at.d_dz, 0, 0);
    }
}

/* ---- Slopes ---- */

typedef struct
{
  const LbCurrent *current;
  double x, z;
} Place;

static double
speed_along_x (double x, void *data)
{
  const Place *place = data;

  return lb_current_at (place->current, x, place->z).speed;
}

static double
speed_along_z (double z, void *data)
{
  const Place *place = data;

  return lb_current_at (place->current, place->x, z).speed;
}

/* Whether a difference over +-step would straddle a point where the slope itself jumps (the ends of
 * measured points) or bends too sharply to be seen by a difference. */
static bool
is_at_a_joint (const LbCurrent *current, double x, double z)
{
  const LbProfile *p = &current->profile;
  LbBedPoint bed = lb_bed_at (&current->bed, x);
  double height = z + bed.depth;

  for (size_t i = 0; i < current->bed.n; i++)
    if (fabs (x - current->bed.x[i]) < 2e-3 && current->bed.n > 1)
      return true;
  for (size_t i = 0; i < p->n_points; i++)
    if (p->law == LB_PROFILE_POINTS && fabs (height - p->height_fraction[i] * bed.depth) < 2e-2)
      return true;
  if (p->law == LB_PROFILE_LOG && (fabs (height) < 1e-4 || fabs (height - 1e-3) < 1e-4))
    return true;
  return fabs (z) < 1e-3;
}

static void
compare_slopes (const LbCurrent *current, TestRandom *random, bool near_bed)
{
  Place place = { current, test_random (random, -35, 25), 0 };
  LbBedPoint bed = lb_bed_at (&current->bed, place.x);
  double step = near_bed ? 2e-5 : 5e-4;
  gsl_function along_x = { speed_along_x, &place }, along_z = { speed_along_z, &place };
  double d_dx, d_dz, error_x, error_z;

  place.z = near_bed ? -bed.depth + test_random (random, -0.02, 0.05)
                     : test_random (random, -bed.depth - 0.3, 0.5);
  if (is_at_a_joint (current, place.x, place.z))
    return;
  LbCurrentPoint at = lb_current_at (current, place.x, place.z);
  gsl_deriv_central (&along_x, place.x, step, &d_dx, &error_x);
  gsl_deriv_central (&along_z, place.z, step, &d_dz, &error_z);
  assert_true (at.speed >= 0);
  assert_near (at.d_dx, d_dx, 1e-7 + 2 * error_x);
  assert_near (at.d_dz, d_dz, 1e-7 + 2 * error_z);
  /* Which must itself be a sharp test. */
  assert_less (error_x, 1e-3 * (0.01 + fabs (d_dx)));
  assert_less (error_z, 1e-3 * (0.01 + fabs (d_dz)));
}

static void
slopes_are_exact (void **state)
{
  TestRandom random = { 4 };

  for (int kind = 0; kind < 16; kind++)
    {
      LbRiver river = river_with ((LbProfileLaw) (kind % 4));
      LbCurrent current;
      if (kind & 4)
        make_uneven (&river);
      river.along = kind & 8 ? LB_ALONG_SAME_DISCHARGE : LB_ALONG_SAME_SURFACE_SPEED;
      river.profile.exponent = kind & 8 ? 6 : 7.5;
      lb_current_init (&current, &river);
      for (size_t i = 0; i < test_count (1000); i++)
        compare_slopes (&current, &random, i % 2 == 0);
    }
}

static void
no_jump_across_the_joints (void **state)
{
  for (int law = 0; law < 4; law++)
    {
      LbRiver river = river_with ((LbProfileLaw) law);
      LbCurrent current;
      make_uneven (&river);
      lb_current_init (&current, &river);
      for (size_t i = 0; i < river.n_bed_points; i++)
        for (double z = -7.6; z < 0.5; z += 0.05)
          {
            LbCurrentPoint before = lb_current_at (&current, river.bed_x[i] - 1e-11, z);
            LbCurrentPoint after = lb_current_at (&current, river.bed_x[i] + 1e-11, z);
            assert_near (before.speed, after.speed, 1e-6);
            if (i > 0 && i + 1 < river.n_bed_points)
              assert_near (before.d_dx, after.d_dx, 1e-5 * (1 + fabs (after.d_dx)));
            assert_near (before.d_dz, after.d_dz, 1e-5 * (1 + fabs (after.d_dz)));
          }
    }
}

/* ---- Along the river ---- */

static void
same_discharge_keeps_the_discharge (void **state)
{
  LbRiver river = river_with (LB_PROFILE_POWER);
  LbCurrent current;

  make_uneven (&river);
  lb_current_init (&current, &river);
  for (double x = -40; x < 30; x += 0.5)
    {
      double depth = lb_bed_at (&current.bed, x).depth;
      double whole = lb_current_at (&current, x, 0).speed * depth;
      /* The floor of the power law adds 1e-7 at the surface. */
      assert_relative (whole, river.surface_current * river.depth, 1e-6);
    }
}

static void
same_surface_speed_keeps_it (void **state)
{
  LbRiver river = river_with (LB_PROFILE_LOG);
  LbCurrent current;

  make_uneven (&river);
  river.along = LB_ALONG_SAME_SURFACE_SPEED;
  lb_current_init (&current, &river);
  for (double x = -40; x < 30; x += 0.5)
    assert_relative (lb_current_at (&current, x, 0).speed, river.surface_current, 1e-12);
}

static void
above_the_surface (void **state)
{
  for (int law = 0; law < 4; law++)
    {
      LbRiver river = river_with ((LbProfileLaw) law);
      LbCurrent current;
      make_uneven (&river);
      lb_current_init (&current, &river);
      LbCurrentPoint surface = lb_current_at (&current, 7, 0);
      for (double z = 1e-6; z < 100; z *= 7)
        {
          LbCurrentPoint at = lb_current_at (&current, 7, z);
          assert_near (at.speed, surface.speed, 0);
          assert_near (at.d_dx, surface.d_dx, 0);
          assert_near (at.d_dz, 0, 0);
        }
    }
}

static void
never_negative_never_nan (void **state)
{
  static const double exponents[] = { 0.5, 1, 6, 12, 100 };

  for (int law = 0; law < 4; law++)
    for (int k = 0; k < 5; k++)
      {
        LbRiver river = river_with ((LbProfileLaw) law);
        LbCurrent current;
        river.profile.exponent = exponents[k];
        river.profile.roughness = k == 0 ? 0 : 0.001 * exponents[k];
        make_uneven (&river);
        lb_current_init (&current, &river);
        for (double z = -1e6; z < 1e6; z = z < -1e-6 ? z / 3 : z < 0 ? 1e-6 : z * 3)
          for (double x = -40; x < 30; x += 7)
            {
              LbCurrentPoint at = lb_current_at (&current, x, z);
              assert_true (isfinite (at.speed) && at.speed >= 0);
              assert_true (isfinite (at.d_dx) && isfinite (at.d_dz));
            }
      }
}

static void
bed_materials_are_in_their_class (void **state)
{
  static const struct
  {
    LbBedMaterial material;
    const char *name;
  } materials[] = { { LB_BED_MATERIAL_SAND, "sand" },
                    { LB_BED_MATERIAL_GRAVEL, "gravel" },
                    { LB_BED_MATERIAL_COBBLE, "cobble" },
                    { LB_BED_MATERIAL_BOULDER, "boulder" } };
  Answers *table = answers_read ("bed-materials.csv");

  for (int i = 0; i < 4; i++)
    {
      double ks = lb_bed_material_roughness (materials[i].material);
      double strickler = pow (ks, 1.0 / 6) / 21.1;
      assert_true (ks >= answers_find (table, "material", materials[i].name, "least"));
      assert_true (ks <= answers_find (table, "material", materials[i].name, "most"));
      assert_less (answers_find (table, "material", materials[i].name, "n_least") - 1e-5,
                   strickler);
      assert_less (strickler, answers_find (table, "material", materials[i].name, "n_most") + 1e-5);
    }
  answers_free (table);
  assert_near (lb_bed_material_roughness (LB_BED_MATERIAL_NONE), 0, 0);
}

/* A setup is checked for the law it uses: what the other laws hold may be anything. */
static void
points_of_a_law_not_used_are_left_alone (void **state)
{
  LbRiver river = lb_setup_default ().river;
  LbCurrent current;

  river.profile.n_points = 100000000;
  lb_current_init (&current, &river);
  assert_near (lb_current_at (&current, 0, 0).speed, river.surface_current, 1e-5);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (power_law_means),
    cmocka_unit_test (means_are_gsls),
    cmocka_unit_test (power_law_rows),
    cmocka_unit_test (power_law_is_like_measured_rivers),
    cmocka_unit_test (floor_of_the_power_law),
    cmocka_unit_test (points_of_a_law_not_used_are_left_alone),
    cmocka_unit_test (log_law_values),
    cmocka_unit_test (log_law_ends_at_the_bed),
    cmocka_unit_test (points_law_is_steffens),
    cmocka_unit_test (a_single_profile_point),
    cmocka_unit_test (uniform_is_the_same_everywhere),
    cmocka_unit_test (slopes_are_exact),
    cmocka_unit_test (no_jump_across_the_joints),
    cmocka_unit_test (same_discharge_keeps_the_discharge),
    cmocka_unit_test (same_surface_speed_keeps_it),
    cmocka_unit_test (above_the_surface),
    cmocka_unit_test (never_negative_never_nan),
    cmocka_unit_test (bed_materials_are_in_their_class),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
