/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What courses a pass takes, where the reel goes on them, and two rigs from one boat. */
#include "test.h"

#include <gsl/gsl_math.h>

#include "pass-support.h"
#include "rigs.h"

static LbPass *left, *right;

static int
set_up (void **state)
{
  left = lb_pass_new ();
  right = lb_pass_new ();
  return left != NULL && right != NULL ? 0 : -1;
}

static int
tear_down (void **state)
{
  lb_pass_free (left);
  lb_pass_free (right);
  return 0;
}

static LbVec3
reel_of (LbPass *pass)
{
  return lb_pass_shape (pass)->nodes[0].position;
}

/* ---- What is refused ---- */

static void
assert_refused (const LbPassPlan *plan, const char *expected)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  const char *what = NULL;

  assert_int_equal (lb_pass_plan_check (plan, &what), LB_STATUS_BAD_SETUP);
  assert_string_equal (what, expected);
  assert_int_equal (lb_pass_start (left, &setup, plan, NULL), LB_STATUS_BAD_SETUP);
}

static void
test_refused_at_the_start (void **state)
{
  LbPassPlan plan = pass_ramp (0.4, 0.4, 0, 5);

  plan.course.points[0].heading = 0.1;
  assert_refused (&plan, "heading of the course at the start");
  /* Held before the first point. */
  plan.course.points[0].time = 2;
  assert_refused (&plan, "heading of the course at the start");
  /* Straight at time 0, but just coming out of a turn. */
  plan = pass_ramp (0.4, 0.4, -2, 5);
  plan.course.points[0].heading = 0.1;
  assert_refused (&plan, "heading of the course at the start");
  plan = pass_ramp (0.4, 0.4, -2, 5);
  plan.course.points[1].heading = 0.1;
  assert_refused (&plan, "heading of the course at the start");
  plan = pass_ramp (0.4, 0.4, 0, 5);
  plan.course.points[0].line_rate = 0.1;
  assert_refused (&plan, "line rate of the course at the start");
}

static void
test_refused_leaps (void **state)
{
  LbPassPlan plan = pass_ramp (0.4, 0.9, 1, 1.01);

  assert_refused (&plan, "change of boat speed of the course");
  plan = pass_ramp (0.4, 0.4, 1, 1.01);
  plan.course.points[1].heading = 0.1;
  assert_refused (&plan, "turn of the course");
  plan = pass_ramp (0.4, 0.4, 1, 1.01);
  plan.course.points[1].line_rate = 0.5;
  assert_refused (&plan, "change of line rate of the course");
  plan = pass_ramp (0.4, 0.4, 1, 1.01);
  plan.course.reel_across = NAN;
  assert_refused (&plan, "reel across the boat");
}

/* ---- Where the line ends ---- */

/* The line out at every 10 ms, taken in by up to 1 m/s from 2 s to 8 s and let out by as much from
 * 10 s on, with 3 m out at the start. */
#define LOOKS 1200
#define LOOK 0.01 /* s */

static void
look_at_line (const LbPassPlan *plan, double *line)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 3 };
  pass_run (left, &setup, plan, &(LbPassOptions){ .segments = 12 }, 0);
  for (int k = 0; k < LOOKS; k++)
    {
      assert_int_equal (lb_pass_advance (left, LOOK * k), LB_STATUS_OK);
      line[k] = lb_pass_shape (left)->line_out;
    }
}

/* The largest change of the rate between two looks, m/s. */
static double
largest_jump (const double *line)
{
  double largest = 0;

  for (int k = 2; k < LOOKS; k++)
    largest = fmax (largest, fabs (line[k] - 2 * line[k - 1] + line[k - 2]) / LOOK);
  return largest;
}

/* All of the line is taken in, and more than that is asked for: it stops without a jump, and comes
 * out again as soon as it is let out. */
static void
test_line_runs_out (void **state)
{
  LbPassPlan plan = pass_ramp (0.4, 0.4, 0, 1);
  static const double at[] = { 2, 3, 7, 8, 10, 11 }, rate[] = { 0, -1, -1, 0, 0, 1 };
  static double line[LOOKS];

  for (int i = 0; i < 6; i++)
    plan.course.points[plan.course.n_points++] =
        (LbCoursePoint){ .time = at[i], .speed = 0.4, .line_rate = rate[i] };
  look_at_line (&plan, line);
  assert_near (line[200], 3, 1e-9);
  assert_near (line[400], 3 - 0.5 - 1, 1e-6); /* as asked for, up to here */
  assert_in_range (1e4 * line[900], 500, 540);
  assert_less (largest_jump (line), 0.04);
  /* The ramp up to 1 m/s within a second lets out half a metre. */
  assert_near (line[1100], line[900] + 0.5, 1e-6);
}

/* A hand that would lift by more line than there is lifts by less, and lets out what it lifted. */
static void
test_line_is_shorter_than_the_stroke (void **state)
{
  LbPassPlan plan = { .hand = { LB_HAND_LIFT_AND_DROP, 5, 4 } };
  static double line[LOOKS];
  double least = INFINITY;

  look_at_line (&plan, line);
  for (int k = 0; k < LOOKS; k++)
    least = fmin (least, line[k]);
  assert_in_range (1e3 * least, 50, 400);
  assert_near (line[400], 3, 1e-6);
  assert_near (line[800], 3, 1e-6);
  assert_less (largest_jump (line), 0.25);
}

/* ---- Two rigs ---- */

#define APART 2.4 /* m between the reels */

/* Both sides on a course that turns by `angle`. */
static void
start_both (const LbSetup *port, const LbSetup *starboard, double angle)
{
  LbPassPlan plan = pass_ramp (0.5, 0.5, 0.5, 6);

  plan.course.points[1].heading = angle;
  plan.course.reel_across = -APART / 2;
  pass_run (left, port, &plan, NULL, 0);
  plan.course.reel_across = APART / 2;
  pass_run (right, starboard, &plan, NULL, 0);
}

static void
advance_both (double time)
{
  assert_int_equal (lb_pass_advance (left, time), LB_STATUS_OK);
  assert_int_equal (lb_pass_advance (right, time), LB_STATUS_OK);
}

/* Equal rigs side by side stay as far apart as their reels. */
static void
test_side_by_side (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.5, 1.2);

  start_both (&setup, &setup, 0);
  for (int k = 0; k < 3; k++)
    {
      advance_both (0.5 * k);
      LbApproach near = lb_approach_between (lb_pass_shape (left), lb_pass_shape (right));
      assert_near (near.distance, APART, 1e-12);
      assert_near (near.at.y, 0, 1e-12);
    }
}

/* In a turn the line from reel to reel turns with the boat, and what is inside slows and sinks
 * while what is outside speeds up and lifts. */
static void
test_turn (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.5, 1.2);
  LbReadings inside, outside;

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.5 };
  start_both (&setup, &setup, 1.2);
  for (int k = 1; k <= 12; k++)
    {
      advance_both (0.5 * k);
      double heading = lb_pass_heading (left);
      LbVec3 across = lb_vec3_sub (reel_of (right), reel_of (left));
      assert_near (across.x, APART * sin (heading), 1e-12);
      assert_near (across.y, APART * cos (heading), 1e-12);
      if (k != 8)
        continue;
      lb_pass_readings (right, &inside);
      lb_pass_readings (left, &outside);
      assert_less (inside.weight.height + 0.03, outside.weight.height);
      assert_less (inside.lures[0].at.water_speed + 0.03, outside.lures[0].at.water_speed);
    }
}

/* A turn the other way swaps the sides. */
static void
test_turn_mirrored (void **state)
{
  LbSetup light = rig_reference (0.57, 0.5, 1.2), heavy = rig_reference (1.2, 0.5, 1.2);
  LbApproach near[2];

  light.rig.line_out = heavy.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.2 };
  for (int k = 0; k < 2; k++)
    {
      start_both (k == 0 ? &light : &heavy, k == 0 ? &heavy : &light, k == 0 ? 1.2 : -1.2);
      advance_both (5);
      near[k] = lb_approach_between (lb_pass_shape (left), lb_pass_shape (right));
    }
  assert_less (near[0].distance, APART);
  assert_near (near[0].distance, near[1].distance, 1e-9);
  assert_near (near[0].at.y, -near[1].at.y, 1e-9);
  assert_int_equal (near[0].part_a, near[1].part_b);
}

/* ---- How near ---- */

static void
fill_two_nodes (LbShape *shape, LbVec3 from, LbVec3 to)
{
  assert_int_equal (lb_shape_resize (shape, 2), LB_STATUS_OK);
  shape->nodes[0] = (LbShapeNode){ .position = from };
  shape->nodes[1] = (LbShapeNode){ .position = to };
}

static LbVec3
random_point (TestRandom *random)
{
  return lb_vec3 (test_random (random, -1, 1), test_random (random, -1, 1),
                  test_random (random, -1, 1));
}

/* Against all points of a fine grid on both: never farther than the nearest of those, and no nearer
 * than the grid's width allows. */
static void
test_against_grid (void **state)
{
  enum
  {
    GRID = 60
  };
  TestRandom random = { 7 };
  LbShape one, other;

  lb_shape_init (&one);
  lb_shape_init (&other);
  for (int run = 0; run < 300; run++)
    {
      LbVec3 p0 = random_point (&random), p1 = random_point (&random);
      LbVec3 q0 = random_point (&random), q1 = random_point (&random);
      double least = INFINITY;
      if (run % 5 == 0) /* side by side */
        q1 = lb_vec3_add_scaled (q0, test_random (&random, -2, 2), lb_vec3_sub (p1, p0));
      double width =
          (lb_vec3_norm (lb_vec3_sub (p1, p0)) + lb_vec3_norm (lb_vec3_sub (q1, q0))) / (2 * GRID);
      for (int i = 0; i <= GRID; i++)
        for (int j = 0; j <= GRID; j++)
          {
            LbVec3 p = lb_vec3_lerp (p0, p1, (double) i / GRID);
            LbVec3 q = lb_vec3_lerp (q0, q1, (double) j / GRID);
            least = fmin (least, lb_vec3_norm (lb_vec3_sub (p, q)));
          }
      fill_two_nodes (&one, p0, p1);
      fill_two_nodes (&other, q0, q1);
      double found = lb_approach_between (&one, &other).distance;
      assert_less (found, least + 1e-12);
      assert_less (least - width, found);
    }
  lb_shape_clear (&one);
  lb_shape_clear (&other);
}

/* Across still water the speed past a part is the boat's, though nothing flows along. */
static void
test_water_speed_across (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.9, 0);
  LbPassPlan plan = pass_ramp (0.9, 0.9, 0.2, 6);
  LbReadings readings;

  plan.course.points[1].heading = M_PI / 2;
  pass_run (left, &setup, &plan, &(LbPassOptions){ .step = 0.02 }, 60);
  lb_pass_readings (left, &readings);
  assert_near (readings.weight.water_speed, 0.9, 1e-4);
  assert_near (readings.lures[1].at.water_speed, 0.9, 1e-4);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_refused_at_the_start),
    cmocka_unit_test (test_refused_leaps),
    cmocka_unit_test (test_side_by_side),
    cmocka_unit_test (test_turn),
    cmocka_unit_test (test_turn_mirrored),
    cmocka_unit_test (test_against_grid),
    cmocka_unit_test (test_water_speed_across),
    cmocka_unit_test (test_line_runs_out),
    cmocka_unit_test (test_line_is_shorter_than_the_stroke),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
