/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Density and viscosity against the published formulas (answers/water*.csv name them). */
#include "water.h"

#include <gsl/gsl_min.h>

#include "answers.h"
#include "test.h"

static void
density_is_kells (void **state)
{
  Answers *water = answers_read ("water.csv");

  for (size_t i = 0; i < answers_rows (water); i++)
    {
      double density = lb_water_density (answers_number (water, i, "t"));
      assert_near (density, answers_number (water, i, "kell"), 1e-4);
      assert_near (density, answers_number (water, i, "tanaka"), 0.01);
    }
  answers_free (water);
}

static void
density_is_not_the_misprint (void **state)
{
  Answers *wrong = answers_read ("water-misprint.csv");

  for (size_t i = 0; i < answers_rows (wrong); i++)
    {
      double density = lb_water_density (answers_number (wrong, i, "t"));
      assert_less (answers_number (wrong, i, "density") + 0.05, density);
    }
  answers_free (wrong);
}

static void
viscosity_is_iapws (void **state)
{
  Answers *water = answers_read ("water.csv");

  for (size_t i = 0; i < answers_rows (water); i++)
    {
      double viscosity = 1e6 * lb_water_viscosity (answers_number (water, i, "t"));
      assert_relative (viscosity, answers_number (water, i, "sr6"), 1e-5);
      assert_relative (viscosity, answers_number (water, i, "r12"), 1e-4);
      assert_relative (viscosity, answers_number (water, i, "kestin"), 1e-3);
    }
  answers_free (water);
}

static void
a_coarse_table_agrees (void **state)
{
  Answers *water = answers_read ("water.csv");
  int compared = 0;

  for (size_t i = 0; i < answers_rows (water); i++)
    if (answers_has (water, i, "coarse_density"))
      {
        double t = answers_number (water, i, "t");
        assert_near (lb_water_density (t), answers_number (water, i, "coarse_density"), 0.06);
        /* 0.1 %: at 10 C the table rounds the older value (Kestin), 0.08 % higher. */
        assert_relative (1e6 * lb_water_viscosity (t),
                         answers_number (water, i, "coarse_viscosity"), 1e-3);
        compared++;
      }
  assert_int_equal (compared, 4);
  answers_free (water);
}

static double
minus_density (double celsius, void *data)
{
  return -lb_water_density (celsius);
}

static void
densest_near_four_degrees (void **state)
{
  gsl_function function = { minus_density, NULL };
  gsl_min_fminimizer *minimizer = gsl_min_fminimizer_alloc (gsl_min_fminimizer_brent);

  gsl_min_fminimizer_set (minimizer, &function, 4.5, 0, 10);
  for (int i = 0; i < 60; i++)
    gsl_min_fminimizer_iterate (minimizer);
  assert_near (gsl_min_fminimizer_x_minimum (minimizer), 4, 0.1);
  gsl_min_fminimizer_free (minimizer);
}

static void
viscosity_falls_everywhere (void **state)
{
  for (double t = 0; t < 40; t += 0.05)
    assert_less (lb_water_viscosity (t + 0.05), lb_water_viscosity (t));
}

static void
both_at_once_agree (void **state)
{
  Answers *water = answers_read ("water.csv");

  for (size_t i = 0; i < answers_rows (water); i++)
    {
      LbWater both = lb_water_at (answers_number (water, i, "t"), NAN, NAN);
      assert_near (both.density, answers_number (water, i, "kell"), 1e-4);
      assert_relative (1e6 * both.kinematic_viscosity, answers_number (water, i, "nu"), 1e-5);
    }
  answers_free (water);

  Answers *ittc = answers_read ("water-ittc.csv");
  for (size_t i = 0; i < answers_rows (ittc); i++)
    {
      LbWater both = lb_water_at (answers_number (ittc, i, "t"), NAN, NAN);
      assert_near (both.density, answers_number (ittc, i, "density"), 0.01);
      assert_relative (both.kinematic_viscosity, answers_number (ittc, i, "nu"), 1e-4);
    }
  answers_free (ittc);
}

static void
pinned_values_stand (void **state)
{
  LbWater computed = lb_water_at (10, NAN, NAN);
  LbWater dense = lb_water_at (10, 1025, NAN);
  LbWater thick = lb_water_at (10, NAN, 2e-6);
  LbWater both = lb_water_at (10, 1000, 1e-6);

  assert_near (dense.density, 1025, 0);
  assert_relative (dense.kinematic_viscosity * 1025, lb_water_viscosity (10), 1e-15);
  assert_near (thick.density, computed.density, 0);
  assert_near (thick.kinematic_viscosity, 2e-6, 0);
  assert_near (both.density, 1000, 0);
  assert_near (both.kinematic_viscosity, 1e-6, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (density_is_kells),          cmocka_unit_test (density_is_not_the_misprint),
    cmocka_unit_test (viscosity_is_iapws),        cmocka_unit_test (a_coarse_table_agrees),
    cmocka_unit_test (densest_near_four_degrees), cmocka_unit_test (viscosity_falls_everywhere),
    cmocka_unit_test (both_at_once_agree),        cmocka_unit_test (pinned_values_stand),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
