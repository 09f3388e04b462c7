/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drag curves against the published formulas (answers/drag-curves.csv names them) and their slopes
 * against GSL's differences. */
#include "drag.h"

#include <gsl/gsl_deriv.h>
#include <gsl/gsl_roots.h>

#include "answers.h"
#include "test.h"

#define PI 3.14159265358979323846
#define GRAVITY 9.80665
#define DENSITY_10_C 999.6996
#define VISCOSITY_10_C (1.305902e-3 / DENSITY_10_C)
#define LEAD 11340

typedef LbDragPoint (*DragCurve) (double reynolds);

/* Compares `curve` with a column of the table wherever that has a value. */
static int
compare_with_column (DragCurve curve, const char *column, double tolerance)
{
  Answers *table = answers_read ("drag-curves.csv");
  int compared = 0;

  for (size_t i = 0; i < answers_rows (table); i++)
    if (answers_has (table, i, column))
      {
        assert_relative (curve (answers_number (table, i, "re")).value,
                         answers_number (table, i, column), tolerance);
        compared++;
      }
  answers_free (table);
  return compared;
}

static void
sphere_is_clift_and_gauvin (void **state)
{
  /* The figures are printed to four places. */
  assert_int_equal (compare_with_column (lb_drag_sphere, "cg", 2e-4), 11);
}

static void
other_sphere_formulas_agree (void **state)
{
  assert_int_equal (compare_with_column (lb_drag_sphere, "bl", 0.08), 11);
  assert_int_equal (compare_with_column (lb_drag_sphere, "cgw", 0.20), 11);
  assert_int_equal (compare_with_column (lb_drag_sphere, "mo", 0.20), 11);
}

static void
cylinder_is_sucker_and_brauer (void **state)
{
  assert_int_equal (compare_with_column (lb_drag_cylinder, "sb", 1e-4), 14);
}

static void
other_cylinder_values_agree (void **state)
{
  assert_int_equal (compare_with_column (lb_drag_cylinder, "white", 0.20), 14);
  assert_int_equal (compare_with_column (lb_drag_cylinder, "read", 0.08), 7);
}

static void
drag_of_a_thin_wire (void **state)
{
  Answers *wire = answers_read ("wire-drag.csv");
  double d = 0.000508;

  for (size_t i = 0; i < answers_rows (wire); i++)
    {
      double u = answers_number (wire, i, "speed");
      double re = u * d / VISCOSITY_10_C;
      double cd = lb_drag_cylinder (re).value;
      assert_near (re, answers_number (wire, i, "re"), 0.6);
      assert_relative (cd, answers_number (wire, i, "cd"), 1e-4);
      assert_relative (DENSITY_10_C * cd * d * u * u / 2, answers_number (wire, i, "drag"), 1e-4);
    }
  answers_free (wire);
}

static double
curve_value (double log_re, void *data)
{
  return (*(DragCurve *) data) (exp (log_re)).value;
}

/* In the logarithm, so that one step suits every size. */
static void
compare_slopes (DragCurve curve, double low, double high)
{
  gsl_function function = { curve_value, &curve };
  TestRandom random = { 7 };

  for (size_t i = 0; i < test_count (2000); i++)
    {
      double re = test_random_log (&random, low, high);
      LbDragPoint at = curve (re);
      double slope, error;
      gsl_deriv_central (&function, log (re), 1e-4, &slope, &error);
      assert_near (at.slope * re, slope, 1e-8 * at.value + 3 * error);
    }
}

static void
slopes_are_exact (void **state)
{
  compare_slopes (lb_drag_sphere, 1.1e-3, 1.9e5);
  compare_slopes (lb_drag_cylinder, 1.1e-4, 1.9e5);
}

static void
compare_ends (DragCurve curve, double low, double high)
{
  const double below[] = { 0, low * 1e-6, low * 0.999 };
  const double above[] = { high * 1.001, high * 10, 1e300 };

  for (int i = 0; i < 3; i++)
    {
      assert_near (curve (below[i]).value, curve (low).value, 0);
      assert_near (curve (below[i]).slope, 0, 0);
      assert_near (curve (above[i]).value, curve (high).value, 0);
      assert_near (curve (above[i]).slope, 0, 0);
    }
  /* No jump at the joints. */
  assert_relative (curve (low * (1 + 1e-9)).value, curve (low).value, 1e-8);
  assert_relative (curve (high * (1 - 1e-9)).value, curve (high).value, 1e-8);
}

static void
held_outside_the_range (void **state)
{
  compare_ends (lb_drag_sphere, 1e-3, 2e5);
  compare_ends (lb_drag_cylinder, 1e-4, 2e5);
}

static void
slow_flow_is_stokes (void **state)
{
  /* Stokes 1851: 24 / Re for a creeping sphere. */
  assert_relative (lb_drag_sphere (0.01).value, 2400, 0.01);
}

typedef struct
{
  double d, weight;
} Ball;

static double
drag_less_weight (double speed, void *data)
{
  const Ball *ball = data;
  double cd = lb_drag_weight (LB_WEIGHT_BALL, speed * ball->d / VISCOSITY_10_C).value;

  return cd * DENSITY_10_C * PI / 8 * ball->d * ball->d * speed * speed - ball->weight;
}

static double
terminal_speed (Ball ball)
{
  gsl_function function = { drag_less_weight, &ball };
  gsl_root_fsolver *solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);

  gsl_root_fsolver_set (solver, &function, 0.01, 20);
  for (int i = 0; i < 80; i++)
    gsl_root_fsolver_iterate (solver);
  double speed = gsl_root_fsolver_root (solver);
  gsl_root_fsolver_free (solver);
  return speed;
}

static void
balls_sink_as_computed (void **state)
{
  Answers *balls = answers_read ("sinking-balls.csv");

  for (size_t i = 0; i < answers_rows (balls); i++)
    {
      Ball ball = { .d = answers_number (balls, i, "d") };
      ball.weight = PI / 6 * pow (ball.d, 3) * (LEAD - DENSITY_10_C) * GRAVITY;
      double speed = terminal_speed (ball);
      assert_relative (speed, answers_number (balls, i, "cg"), 1e-5);
      assert_relative (speed, answers_number (balls, i, "bl"), 0.04);
    }
  answers_free (balls);
}

static void
other_shapes_are_estimates (void **state)
{
  static const struct
  {
    LbWeightShape shape;
    const char *name;
  } shapes[] = { { LB_WEIGHT_PEAR, "pear" },
                 { LB_WEIGHT_TORPEDO, "torpedo" },
                 { LB_WEIGHT_DISC, "disc" } };
  Answers *range = answers_read ("weight-shapes.csv");

  for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++)
    {
      LbDragPoint slow = lb_drag_weight (shapes[i].shape, 1e3);
      LbDragPoint fast = lb_drag_weight (shapes[i].shape, 1e5);
      assert_less (answers_find (range, "shape", shapes[i].name, "least"), slow.value);
      assert_less (slow.value, answers_find (range, "shape", shapes[i].name, "most"));
      assert_near (fast.value, slow.value, 0);
      assert_near (slow.slope, 0, 0);
    }
  answers_free (range);

  LbDragPoint ball = lb_drag_weight (LB_WEIGHT_BALL, 4e4);
  assert_near (ball.value, lb_drag_sphere (4e4).value, 0);
  assert_near (ball.slope, lb_drag_sphere (4e4).slope, 0);
}

static void
strumming (void **state)
{
  /* Strouhal number 0.2: 0.5 mm at 1.5 m/s sheds at 600 Hz (textbook, from memory). */
  assert_relative (lb_strum_frequency (0.0005, 1.5), 600, 1e-12);
  assert_relative (lb_strum_frequency (0.0005, -1.5), 600, 1e-12);
  assert_near (lb_strum_frequency (0.0005, 0), 0, 0);
  assert_near (lb_strum_frequency (0, 1), 0, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (sphere_is_clift_and_gauvin),
    cmocka_unit_test (other_sphere_formulas_agree),
    cmocka_unit_test (cylinder_is_sucker_and_brauer),
    cmocka_unit_test (other_cylinder_values_agree),
    cmocka_unit_test (drag_of_a_thin_wire),
    cmocka_unit_test (slopes_are_exact),
    cmocka_unit_test (held_outside_the_range),
    cmocka_unit_test (slow_flow_is_stokes),
    cmocka_unit_test (balls_sink_as_computed),
    cmocka_unit_test (other_shapes_are_estimates),
    cmocka_unit_test (strumming),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
