/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pass against answers that are known without it: closed forms of things that swing and sink,
 * the steady run's own reference answers, balances, and itself with finer steps and meshes. */
#include "test.h"

#include <string.h>

#include <gsl/gsl_math.h>

#include "answers.h"
#include "pass-support.h"
#include "rigs.h"
#include "steady.h"

static LbPass *pass, *other;
static LbSteady *steady;

static int
set_up (void **state)
{
  pass = lb_pass_new ();
  other = lb_pass_new ();
  steady = lb_steady_new ();
  return pass != NULL && other != NULL && steady != NULL ? 0 : -1;
}

static int
tear_down (void **state)
{
  lb_pass_free (pass);
  lb_pass_free (other);
  lb_steady_free (steady);
  return 0;
}

static LbVec3
weight_position (void)
{
  const LbShape *shape = lb_pass_shape (pass);

  return shape->nodes[shape->weight].position;
}

static LbVec3
weight_velocity (void)
{
  return lb_pass_velocity (pass, lb_pass_shape (pass)->weight);
}

/* ---- The steady run ---- */

/* Sped up and left alone, the rig ends in the steady run, in the plane and in space. */
static void
test_ends_steady (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = pass_ramp (0.4, 0.7, 0, 1);
  LbPassOptions options = { .step = 0.02 };

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.5 };

  for (int spatial = 0; spatial < 2; spatial++)
    {
      options.spatial = spatial == 1;
      pass_run (pass, &setup, &plan, &options, 90);
      const LbShape *end = lb_pass_shape (pass);
      LbSetup now = setup;
      now.boat.speed_over_ground = 0.7;
      now.boat.position = end->nodes[0].position.x;
      assert_int_equal (lb_steady_solve (steady, &now, NULL), LB_STATUS_OK);
      const LbShape *answer = lb_steady_shape (steady);
      for (size_t i = 0; i < end->n_nodes; i++)
        {
          LbVec3 apart = lb_vec3_sub (end->nodes[i].position, answer->nodes[i].position);
          assert_near (lb_vec3_norm (apart), 0, 1e-6);
          assert_near (end->nodes[i].tension, answer->nodes[i].tension, 1e-6);
          apart = lb_vec3_sub (end->nodes[i].pull_on_parent, answer->nodes[i].pull_on_parent);
          assert_near (lb_vec3_norm (apart), 0, 1e-6);
        }
    }
}

/* The weight and a lure that drag along the bed end there too. */
static void
test_ends_steady_on_bed (void **state)
{
  LbSetup setup = rig_reference (0.9, 0.8, 0.9);
  LbPassPlan plan = pass_ramp (0.8, 0.4, 0, 2);
  LbPassOptions options = { .step = 0.01 };

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.6 };

  pass_run (pass, &setup, &plan, &options, 90);
  const LbShape *end = lb_pass_shape (pass);
  LbSetup now = setup;
  now.boat.speed_over_ground = 0.4;
  now.boat.position = end->nodes[0].position.x;
  assert_int_equal (lb_steady_solve (steady, &now, NULL), LB_STATUS_OK);
  const LbShape *answer = lb_steady_shape (steady);
  assert_less (1, end->nodes[end->weight].bed_force);
  for (size_t i = 0; i < end->n_nodes; i++)
    {
      LbVec3 apart = lb_vec3_sub (end->nodes[i].position, answer->nodes[i].position);
      assert_near (lb_vec3_norm (apart), 0, 1e-5);
      assert_near (end->nodes[i].tension, answer->nodes[i].tension, 1e-4);
      assert_near (end->nodes[i].bed_force, answer->nodes[i].bed_force, 1e-3);
    }
}

/* Case 10 of answers/steady-cases.csv (an independent solver), reached from another speed. */
static void
test_reference_case (void **state)
{
  Answers *answers = answers_read ("steady-cases.csv");
  LbSetup setup = rig_reference (0.79, 0.2, 1.2);
  LbPassPlan plan = pass_ramp (0.2, 0.4, 0, 1);
  LbPassOptions options = { .step = 0.02 };
  size_t row = 0;

  while (answers_number (answers, row, "case") != 10)
    row++;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, answers_number (answers, row, "L_main_m") };
  pass_run (pass, &setup, &plan, &options, 90);
  LbReadings readings;
  lb_pass_readings (pass, &readings);
  double bed = -setup.river.depth;
  assert_near (readings.weight.layback, answers_number (answers, row, "xW"), 1e-3);
  assert_near (readings.weight.height, answers_number (answers, row, "zW"), 1e-3);
  assert_near (readings.lures[0].at.layback, answers_number (answers, row, "xLure1"), 1e-3);
  assert_near (readings.lures[0].at.position.z - bed, answers_number (answers, row, "zLure1"),
               1e-3);
  assert_near (readings.lures[1].at.layback, answers_number (answers, row, "xLure2"), 1e-3);
  assert_near (readings.lures[1].at.height, answers_number (answers, row, "zLure2"), 1e-3);
  assert_relative (readings.hand_tension, answers_number (answers, row, "T_boat_N"), 5e-3);
  answers_free (answers);
}

/* ---- Closed forms ---- */

/* Makes the only line of a setup as good as nothing: hair-thin, without drag. */
static void
thin_line (LbSetup *setup)
{
  setup->rig.mainline.diameter = 5e-5;
  setup->rig.mainline.normal_drag = 0;
}

/* Starts from the steady run of `before`, then `after` holds at once. */
static void
release (const LbSetup *before, const LbSetup *after, const LbPassOptions *options)
{
  assert_int_equal (lb_steady_solve (steady, before, NULL), LB_STATUS_OK);
  assert_int_equal (lb_pass_start_from (pass, lb_steady_shape (steady), after, NULL, options),
                    LB_STATUS_OK);
}

/* A lead ball on 1 m of line, let go 1 degree off: period 2 pi sqrt (L (rho_s + rho/2) / (g (rho_s
 * - rho))) by potential flow (Lamb, Hydrodynamics, art. 92, from memory), and no drag: it loses no
 * energy. */
static void
test_pendulum (void **state)
{
  LbSetup before = rig_cable (1, 8, 8 * tan (M_PI / 180), 1), after;
  double period = 2 * M_PI * sqrt ((11340 + 500) / (9.80665 * (11340 - 1000)));
  double last_x, crossed[3], largest = 0, first;
  size_t crossings = 0;

  thin_line (&before);
  after = before;
  after.river.surface_current = 0;
  after.rig.weight.drag_coefficient = 0;
  release (&before, &after, NULL);
  first = last_x = weight_position ().x;
  for (int k = 1; crossings < 3; k++)
    {
      double time = 0.005 * k, x;
      assert_int_equal (lb_pass_advance (pass, time), LB_STATUS_OK);
      x = weight_position ().x;
      if (x < 0 && last_x >= 0)
        crossed[crossings++] = time - 0.005 * x / (x - last_x);
      if (crossings == 2)
        largest = fmax (largest, x);
      last_x = x;
    }
  assert_relative (crossed[0], period / 4, 1e-3);
  assert_relative (crossed[2] - crossed[1], period, 3e-4);
  /* Height goes with the square of the swing. */
  assert_relative (largest, first, 1e-3);
}

/* A 2 lb ball let go in still water: vt tanh (t / tau), vt tau ln cosh (t / tau) with the added
 * mass of a ball (values computed from the closed form by hand, with rho 1000 and Cd 0.5). */
static void
test_sinking (void **state)
{
  static const double answer[][2] = {
    { 0.25, 0.254579 }, { 0.5, 0.899795 }, { 1, 2.650646 }, { 2, 6.434359 }
  };
  LbSetup before = rig_cable (1, 8.1121, 0, 0), after;
  double vt = 3.802060, tau = 0.443945;

  thin_line (&before);
  before.rig.weight = (LbWeight){ 0.90718474, 11340, LB_WEIGHT_BALL, 0.5 };
  after = before;
  /* Slack enough that its lowest segment alone is longer than the ball sinks. */
  after.rig.line_out.value = 350;
  release (&before, &after, NULL);
  double from = weight_position ().z;
  for (size_t i = 0; i < 4; i++)
    {
      assert_int_equal (lb_pass_advance (pass, answer[i][0]), LB_STATUS_OK);
      assert_relative (from - weight_position ().z, answer[i][1], 2e-3);
      assert_relative (-weight_velocity ().z, vt * tanh (answer[i][0] / tau), 2e-3);
    }
}

/* A lead ball on a bed that falls by 1 in 2, without drag: it slides down with what is left of its
 * weight in water, less friction, for its own mass and the water's that goes with it (textbook, an
 * inclined plane). In the direction it slides nothing else acts. */
static void
test_sliding (void **state)
{
  LbSetup before = rig_cable (1, 8, 0, 0), after;
  double slope = 0.5, along = sqrt (1 + slope * slope), friction = 0.3, speed[2];
  double fall = 9.80665 * (11340 - 1000) / (11340 + 500);

  thin_line (&before);
  before.rig.weight.drag_coefficient = 0;
  before.river.bed_friction = friction;
  before.river.n_bed_points = 7;
  for (int i = 0; i < 7; i++)
    {
      before.river.bed_x[i] = 3 * i - 15.5;
      before.river.bed_depth[i] = 8 + slope * before.river.bed_x[i];
    }
  /* The reel hangs 1.001 m over the bed. */
  before.boat.position = (1.001 - 8) / slope;
  after = before;
  after.rig.line_out.value = 350;
  release (&before, &after, NULL);
  for (int k = 0; k < 2; k++)
    {
      assert_int_equal (lb_pass_advance (pass, 0.4 + 0.5 * k), LB_STATUS_OK);
      LbVec3 v = weight_velocity ();
      speed[k] = v.x * along;
      assert_near (v.z, -slope * v.x, 1e-3);
      assert_less (1, lb_pass_bed_force_on (pass, lb_pass_shape (pass)->weight));
    }
  assert_relative ((speed[1] - speed[0]) / 0.5, fall * (slope - friction) / along, 2e-3);
}

/* A taut line in water swings at (n / 2 L) sqrt (T / (m + m_a)): textbook, a stretched string, with
 * the water that goes with a cylinder, as much as it displaces. Nearly half of what swings here is
 * water. The weight is heavy enough to stand still, and the line soft enough that swinging does not
 * tighten it; the start is the bow in a stream. */
static void
test_taut_wire (void **state)
{
  LbSetup before = rig_cable (10, 8, 0, 0.05), after;
  double last_x = 0, crossed[3], area = M_PI / 4 * 0.0005 * 0.0005;
  size_t crossings = 0;

  before.rig.mainline.density = 1200;
  before.rig.mainline.axial_stiffness = 2e4;
  before.rig.weight.mass *= 4000;
  after = before;
  after.river.gravity = before.river.gravity / 4000;
  before.river.gravity = after.river.gravity;
  after.river.surface_current = 0;
  after.rig.mainline.normal_drag = 0;
  release (&before, &after, &(LbPassOptions){ .step = 0.001 });
  for (int k = 1; crossings < 3; k++)
    {
      double time = 0.002 * k;
      assert_less (time, 1);
      assert_int_equal (lb_pass_advance (pass, time), LB_STATUS_OK);
      const LbShape *shape = lb_pass_shape (pass);
      double x = 0, length = 0;
      /* The first way of swinging: the shape times the sine. */
      for (size_t i = 1; i < shape->n_nodes; i++)
        {
          double rest = shape->nodes[i].rest_length;
          length += 0.5 * rest;
          x += rest * sin (M_PI * length / 10) * shape->nodes[i].position.x;
          length += 0.5 * rest;
        }
      x -= 20 / M_PI * weight_position ().x / 2;
      if (k > 1 && (x < 0) != (last_x < 0))
        crossed[crossings++] = time - 0.002 * x / (x - last_x);
      last_x = x;
    }
  assert_relative (1 / (crossed[2] - crossed[0]), sqrt (8 / ((1200 + 1000) * area)) / 20, 2e-3);
}

/* ---- Balances ---- */

/* Of a ball on a cable with constant coefficients in a uniform stream, worked out here: momentum
 * with the added mass, and all forces but the hand's. */
typedef struct
{
  double momentum[2], force[2]; /* along, up */
} Balance;

static Balance
find_balance (const LbSetup *setup)
{
  const LbShape *shape = lb_pass_shape (pass);
  const LbLine *line = &setup->rig.mainline;
  double g = setup->river.gravity, area = M_PI / 4 * line->diameter * line->diameter;
  double volume = setup->rig.weight.mass / setup->rig.weight.density;
  LbVec3 v = lb_pass_velocity (pass, shape->weight);
  double w[2] = { setup->river.surface_current - v.x, -v.z }, speed = hypot (w[0], w[1]);
  double k = 500 * setup->rig.weight.drag_coefficient * lb_weight_frontal_area (&setup->rig.weight);
  double mass = setup->rig.weight.mass + 0.5 * 1000 * volume;
  Balance b = { { mass * v.x, mass * v.z },
                { k * speed * w[0],
                  k * speed * w[1] - lb_weight_in_water (&setup->rig.weight, 1000, g) } };

  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      const LbShapeNode *node = &shape->nodes[i], *parent = &shape->nodes[node->parent];
      LbVec3 d = lb_vec3_sub (parent->position, node->position);
      double length = lb_vec3_norm (d), ux = d.x / length, uz = d.z / length;
      LbVec3 mean = lb_vec3_scale (
          lb_vec3_add (lb_pass_velocity (pass, i), lb_pass_velocity (pass, node->parent)), 0.5);
      double fx = setup->river.surface_current - mean.x, fz = -mean.z;
      double along = fx * ux + fz * uz, nx = fx - along * ux, nz = fz - along * uz;
      double drag = 500 * line->diameter * line->normal_drag * hypot (nx, nz) * length;
      double dry = node->rest_length * area * line->density;
      double wet = node->rest_length * area * 1000, back = mean.x * ux + mean.z * uz;
      b.momentum[0] += dry * mean.x + wet * (mean.x - back * ux);
      b.momentum[1] += dry * mean.z + wet * (mean.z - back * uz);
      b.force[0] += drag * nx;
      b.force[1] += drag * nz - (dry - wet) * g;
    }
  LbVec3 hand = shape->nodes[1].pull_on_parent;
  b.force[0] -= hand.x;
  b.force[1] -= hand.z;
  return b;
}

/* While the boat speeds up, all forces over time are what the rig gains in momentum. */
static void
test_impulse (void **state)
{
  LbSetup setup = rig_cable (6, 8, 1, 1.2);
  LbPassPlan plan = pass_ramp (0, 0.8, 0.1, 0.6);
  double impulse[2] = { 0 }, step = 0.0025;

  setup.rig.mainline.density = 7900;
  pass_run (pass, &setup, &plan, &(LbPassOptions){ .step = step }, 0);
  Balance first = find_balance (&setup), last = first;
  for (int k = 1; k <= 800; k++)
    {
      assert_int_equal (lb_pass_advance (pass, k * step), LB_STATUS_OK);
      Balance now = find_balance (&setup);
      for (int i = 0; i < 2; i++)
        impulse[i] += 0.5 * step * (last.force[i] + now.force[i]);
      last = now;
    }
  assert_less (0.3, fabs (last.momentum[0] - first.momentum[0]));
  for (int i = 0; i < 2; i++)
    assert_near (impulse[i], last.momentum[i] - first.momentum[i], 5e-4);
}

/* ---- Steps and meshes ---- */

static LbVec3
ramp_end (double step, size_t segments, bool lure)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = pass_ramp (0.4, 0.9, 0.1, 0.6);
  LbPassOptions options = { .step = step, .segments = segments };

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.5 };
  pass_run (pass, &setup, &plan, &options, 0.8);
  const LbShape *shape = lb_pass_shape (pass);
  return shape->nodes[lure ? shape->lure[1] : shape->weight].position;
}

static void
assert_order (const LbVec3 *at, double least)
{
  double first = lb_vec3_norm (lb_vec3_sub (at[0], at[1]));
  double second = lb_vec3_norm (lb_vec3_sub (at[1], at[2]));

  assert_less (1e-9, second);
  assert_less (least, log2 (first / second));
}

static void
test_order_in_time (void **state)
{
  for (int lure = 0; lure < 2; lure++)
    {
      LbVec3 at[3];
      for (int k = 0; k < 3; k++)
        at[k] = ramp_end (0.0025 / (1 << k), 50, lure == 1);
      assert_order (at, 1.8);
    }
}

static void
test_order_in_space (void **state)
{
  for (int lure = 0; lure < 2; lure++)
    {
      LbVec3 at[3];
      for (int k = 0; k < 3; k++)
        at[k] = ramp_end (0.0025, 100 << k, lure == 1);
      assert_order (at, 1.8);
    }
}

/* The goals of the program for its usual step. */
static void
test_ramp (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = pass_ramp (0.4, 0.9, 0.2, 0.7);
  PassDifference d = pass_against_finer (&setup, &plan, 1.5, 50, NULL);

  assert_less (d.move, 2e-5);
  assert_less (d.pull, 2e-3);
}

static void
test_landing (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.9, 1.2);
  LbPassPlan plan = pass_ramp (0.9, 0.3, 0, 1);
  double depth = -1;
  PassDifference d = pass_against_finer (&setup, &plan, 2, 50, &depth);

  assert_less (d.move, 2e-5);
  assert_less (d.pull, 0.03);
  assert_less (4e-4, depth);
  assert_less (depth, 1e-3);
}

/* ---- Space ---- */

static LbPassPlan
turn (double angle)
{
  LbPassPlan plan = pass_ramp (0.4, 0.6, 0.2, 3);

  plan.course.points[1].heading = angle;
  plan.course.points[1].line_rate = 0.1;
  return plan;
}

/* A turn the other way is the mirror image. */
static void
test_mirror (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan left = turn (0.6), right = turn (-0.6);

  pass_run (pass, &setup, &left, NULL, 4);
  pass_run (other, &setup, &right, NULL, 4);
  const LbShape *a = lb_pass_shape (pass), *b = lb_pass_shape (other);
  assert_less (0.1, fabs (a->nodes[a->weight].position.y));
  for (size_t i = 0; i < a->n_nodes; i++)
    {
      assert_near (a->nodes[i].position.x, b->nodes[i].position.x, 1e-12);
      assert_near (a->nodes[i].position.y, -b->nodes[i].position.y, 1e-12);
      assert_near (a->nodes[i].position.z, b->nodes[i].position.z, 1e-12);
      assert_near (a->nodes[i].tension, b->nodes[i].tension, 1e-9);
    }
}

/* Straight ahead the same comes out in the plane and in space. */
static void
test_plane (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = pass_ramp (0.4, 0.9, 0.2, 0.7);

  pass_run (pass, &setup, &plan, NULL, 2);
  pass_run (other, &setup, &plan, &(LbPassOptions){ .spatial = true }, 2);
  PassDifference d = pass_difference (pass, other);
  assert_less (d.move, 1e-7);
  assert_less (d.pull, 1e-5);
}

/* In a uniform stream nothing tells upstream from any other way when the boat alone moves. */
static void
test_still_water_turn (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.9, 0);
  LbPassPlan plan = pass_ramp (0.9, 0.9, 0.2, 6);

  plan.course.points[1].heading = M_PI / 2;
  pass_run (pass, &setup, &plan, &(LbPassOptions){ .step = 0.02 }, 90);
  const LbShape *shape = lb_pass_shape (pass);
  LbVec3 d = lb_vec3_sub (shape->nodes[shape->weight].position, shape->nodes[0].position);
  assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_OK);
  const LbShape *answer = lb_steady_shape (steady);
  LbVec3 e = lb_vec3_sub (answer->nodes[answer->weight].position, answer->nodes[0].position);
  assert_near (d.x, 0, 1e-5);
  assert_near (-d.y, e.x, 1e-5);
  assert_near (d.z, e.z, 1e-5);
}

/* ---- The hand ---- */

static void
test_lift_and_drop (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = { .hand = { LB_HAND_LIFT_AND_DROP, 0.4, 2 } };
  double shortest = 100, longest = 0, highest = 0;

  pass_run (pass, &setup, &plan, NULL, 0);
  double line = lb_pass_shape (pass)->line_out;
  for (int k = 1; k < 1200; k++)
    {
      LbReadings readings;
      assert_int_equal (lb_pass_advance (pass, 0.005 * k), LB_STATUS_OK);
      lb_pass_readings (pass, &readings);
      shortest = fmin (shortest, readings.line_out);
      longest = fmax (longest, readings.line_out);
      highest = fmax (highest, readings.weight.height);
    }
  assert_near (longest, line, 1e-9);
  assert_near (shortest, line - 0.4, 1e-5);
  assert_less (0.3, highest);
}

/* Over a step in the bed the hand finds the bed again, time after time. */
static void
test_follow_bed (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = { .hand = { LB_HAND_FOLLOW_BED, 0.3, 1 } };
  size_t touches = 0;
  bool on_bed = false;

  setup.river.n_bed_points = 4;
  memcpy (setup.river.bed_x, (double[]){ -20, -6, -2, 20 }, 4 * sizeof (double));
  memcpy (setup.river.bed_depth, (double[]){ 6.8, 6.8, 6, 6 }, 4 * sizeof (double));
  pass_run (pass, &setup, &plan, NULL, 0);
  double first = lb_pass_shape (pass)->line_out;
  for (int k = 1; k <= 4000; k++)
    {
      LbReadings readings;
      assert_int_equal (lb_pass_advance (pass, 0.005 * k), LB_STATUS_OK);
      lb_pass_readings (pass, &readings);
      assert_less (pass_depth (pass, &setup), 1e-3);
      assert_less (readings.weight.height, 0.8);
      touches += readings.weight.on_bed && !on_bed;
      on_bed = readings.weight.on_bed;
    }
  assert_in_range (touches, 4, 20);
  assert_less (first + 0.25, lb_pass_shape (pass)->line_out);
}

/* Over a plane bed: line goes out until the weight touches, comes in by the stroke, rests for the
 * period, and so on. A hand rests when it moves by less than 2 mm/s. */
static void
test_follow_bed_strokes (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = { .hand = { LB_HAND_FOLLOW_BED, 0.3, 1 } };
  double step = 0.005, longest = 0, rested = 0, last;
  size_t rests = 0;

  pass_run (pass, &setup, &plan, NULL, 0);
  last = lb_pass_shape (pass)->line_out;
  for (int k = 1; k <= 4000; k++)
    {
      assert_int_equal (lb_pass_advance (pass, k * step), LB_STATUS_OK);
      double line = lb_pass_shape (pass)->line_out, rate = (line - last) / step;
      longest = fmax (longest, line);
      if (rate > 2e-3 && rested > 0.1)
        {
          assert_near (longest - last, 0.3, 2e-3);
          assert_near (rested, 1, 0.05);
          rests++;
          longest = rested = 0;
        }
      rested = fabs (rate) < 2e-3 ? rested + step : 0;
      last = line;
    }
  assert_in_range (rests, 4, 8);
}

/* A stroke longer than the line: the hand takes in what there is, rests, and lets out again. */
static void
test_follow_bed_runs_out (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = { .hand = { LB_HAND_FOLLOW_BED, 7, 1 } };
  double shortest = INFINITY;

  pass_run (pass, &setup, &plan, NULL, 0);
  for (int k = 1; k <= 200; k++)
    {
      assert_int_equal (lb_pass_advance (pass, 0.1 * k), LB_STATUS_OK);
      shortest = fmin (shortest, lb_pass_shape (pass)->line_out);
    }
  /* It is not the end of the line that stops the hand. */
  assert_less (LB_STEADY_SHORTEST_LINE, shortest);
  assert_near (shortest, LB_STEADY_SHORTEST_LINE, 0.01);
  assert_less (0.5, lb_pass_shape (pass)->line_out);
}

/* A moment that is no more than a scrap of a step away is reached too. */
static void
test_scraps_of_time (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);

  pass_run (pass, &setup, NULL, NULL, 0.5);
  for (double scrap = 1e-9; scrap > 2e-12; scrap *= 0.5)
    {
      double time = lb_pass_time (pass) + scrap;
      assert_int_equal (lb_pass_advance (pass, time), LB_STATUS_OK);
      assert_near (lb_pass_time (pass), time, 0);
      assert_int_equal (lb_pass_advance (pass, time + 0.05), LB_STATUS_OK);
    }
}

/* ---- What is refused ---- */

static bool
stop_at_once (void *data, double time)
{
  assert_near (time, 0, 0);
  return ++*(int *) data >= 2;
}

/* The steady run that a pass starts from is given up like the rest, and can be started anew. */
static void
test_cancel_at_the_start (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  int asked = 0;
  LbPassOptions options = { .cancel = stop_at_once, .cancel_data = &asked };

  assert_int_equal (lb_pass_start (pass, &setup, NULL, &options), LB_STATUS_CANCELLED);
  assert_int_equal (asked, 2);
  assert_int_equal (lb_pass_start (pass, &setup, NULL, NULL), LB_STATUS_OK);
}

static bool
stop_at_half (void *data, double time)
{
  return time >= 0.5;
}

static void
test_cancel (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassOptions options = { .cancel = stop_at_half };

  assert_int_equal (lb_pass_start (pass, &setup, NULL, &options), LB_STATUS_OK);
  assert_int_equal (lb_pass_advance (pass, 2), LB_STATUS_CANCELLED);
  assert_near (lb_pass_time (pass), 0.5, 0.006);
}

static void
test_bad_plans (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2), broken = setup;
  LbPassPlan plan = pass_ramp (0.4, 0.5, 1, 1);
  const char *what = NULL;

  assert_int_equal (lb_pass_plan_check (&plan, &what), LB_STATUS_BAD_SETUP);
  assert_string_equal (what, "times of the course");
  assert_int_equal (lb_pass_start (pass, &setup, &plan, NULL), LB_STATUS_BAD_SETUP);
  plan = pass_ramp (0.4, NAN, 1, 2);
  assert_int_equal (lb_pass_plan_check (&plan, &what), LB_STATUS_BAD_SETUP);
  assert_string_equal (what, "boat speed of the course");
  plan = (LbPassPlan){ .hand = { LB_HAND_LIFT_AND_DROP, 0.3, 0 } };
  assert_int_equal (lb_pass_plan_check (&plan, &what), LB_STATUS_BAD_SETUP);
  assert_string_equal (what, "period of the hand");
  broken.river.depth = -1;
  assert_int_equal (lb_pass_start (pass, &broken, NULL, NULL), LB_STATUS_BAD_SETUP);
  assert_int_equal (lb_pass_advance (pass, 1), LB_STATUS_BAD_SETUP);
  /* A shape of another rig. */
  assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_OK);
  setup.rig.n_leaders = 0;
  assert_int_equal (lb_pass_start_from (pass, lb_steady_shape (steady), &setup, NULL, NULL),
                    LB_STATUS_BAD_SETUP);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_ends_steady),
    cmocka_unit_test (test_ends_steady_on_bed),
    cmocka_unit_test (test_reference_case),
    cmocka_unit_test (test_pendulum),
    cmocka_unit_test (test_sinking),
    cmocka_unit_test (test_sliding),
    cmocka_unit_test (test_taut_wire),
    cmocka_unit_test (test_impulse),
    cmocka_unit_test (test_order_in_time),
    cmocka_unit_test (test_order_in_space),
    cmocka_unit_test (test_ramp),
    cmocka_unit_test (test_landing),
    cmocka_unit_test (test_mirror),
    cmocka_unit_test (test_plane),
    cmocka_unit_test (test_still_water_turn),
    cmocka_unit_test (test_lift_and_drop),
    cmocka_unit_test (test_follow_bed),
    cmocka_unit_test (test_follow_bed_strokes),
    cmocka_unit_test (test_follow_bed_runs_out),
    cmocka_unit_test (test_cancel),
    cmocka_unit_test (test_bad_plans),
    cmocka_unit_test (test_scraps_of_time),
    cmocka_unit_test (test_cancel_at_the_start),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
