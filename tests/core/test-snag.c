/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A line that hangs up: closed forms of taut lines, and the pass with what is held. */
#include "test.h"

#include <string.h>

#include <gsl/gsl_math.h>

#include "pass-support.h"
#include "rigs.h"
#include "snag.h"

#define NODES 101

static LbShape shape;
static LbPass *pass;

static int
set_up (void **state)
{
  lb_shape_init (&shape);
  pass = lb_pass_new ();
  return pass != NULL && lb_shape_resize (&shape, NODES) == LB_STATUS_OK ? 0 : -1;
}

static int
tear_down (void **state)
{
  lb_shape_clear (&shape);
  lb_pass_free (pass);
  return 0;
}

/* A line through points that are given from the reel down, with what each segment pulls with. */
typedef struct
{
  LbVec3 at;
  double tension, rest;
} Point;

static void
lay_out (const Point *points, size_t n)
{
  assert_int_equal (lb_shape_resize (&shape, n), LB_STATUS_OK);
  for (size_t i = 0; i < n; i++)
    {
      shape.nodes[i] = (LbShapeNode){ .parent = i > 0 ? i - 1 : 0,
                                      .part = LB_PART_MAINLINE,
                                      .position = points[i].at,
                                      .tension = points[i].tension,
                                      .rest_length = points[i].rest };
      LbVec3 up = lb_vec3_sub (points[i > 0 ? i - 1 : 0].at, points[i].at);
      double k = i > 0 ? points[i].tension / lb_vec3_norm (up) : 0;
      shape.nodes[i].pull_on_node = lb_vec3_scale (up, k);
      shape.nodes[i].pull_on_parent = lb_vec3_scale (up, -k);
    }
  shape.shank_top = shape.weight = n - 1;
  shape.n_leaders = 0;
}

static LbSetup
setup_of (double stiffness)
{
  LbSetup setup = rig_cable (10, 8, 1, 1);

  setup.rig.mainline.axial_stiffness = stiffness;
  return setup;
}

/* ---- A straight line that carries nothing ---- */

/* Pulled along itself at v: the pull rises by EA / L * v, from what it was. */
static void
test_pulled_along (void **state)
{
  double stiffness = 2e4, length = 25, now = 12, v = 0.35;
  double stretched = length * (1 + now / stiffness);
  Point points[] = { { { 0, 0, -3 }, 0, 0 }, { { stretched, 0, -3 }, now, length } };
  LbSetup setup = setup_of (stiffness);

  lay_out (points, 2);
  LbSnag snag = lb_snag_hold (&setup, &shape, 1);
  assert_near (lb_snag_pull (&snag, v, 0), now, 1e-6);
  for (double time = 0.1; time < 2; time += 0.3)
    assert_near (lb_snag_pull (&snag, v, time), now + stiffness / length * v * time, 1e-6);
  LbSnagTimes times = lb_snag_times (&snag, &setup.rig, v, 150);
  assert_near (times.until_hand, (150 - now) * length / (stiffness * v), 1e-9);
  assert_false (lb_is_set (times.until_breaks));
}

/* Two lines in a row give one after the other; the weaker one breaks. */
static void
test_two_parts (void **state)
{
  double v = 0.5, now = 10;
  LbSetup setup = setup_of (5e4);
  Point points[] = { { { 0, 0, -3 }, 0, 0 },
                     { { 8 * (1 + now / 5e4), 0, -3 }, now, 8 },
                     { { 8 * (1 + now / 5e4) + 1 + now / 800, 0, -3 }, now, 1 } };

  setup.rig.shank = setup.rig.mainline;
  setup.rig.shank.axial_stiffness = 800;
  setup.rig.mainline.breaking_load = 700;
  setup.rig.shank.breaking_load = 300;
  lay_out (points, 3);
  shape.nodes[2].part = LB_PART_SHANK;
  LbSnag snag = lb_snag_hold (&setup, &shape, 2);
  double rate = v / (8 / 5e4 + 1.0 / 800);
  assert_near (lb_snag_pull (&snag, v, 0.3), now + rate * 0.3, 1e-6);
  LbSnagTimes times = lb_snag_times (&snag, &setup.rig, v, 100);
  assert_near (times.until_hand, 90 / rate, 1e-9);
  assert_near (times.until_breaks, 290 / rate, 1e-9);
  assert_int_equal (times.breaks, LB_PART_SHANK);
}

/* From above: the boat's way is the side of a triangle, and the same way back on the other side. */
static void
test_triangle (void **state)
{
  double stiffness = 3e4, length = 10, now = 9;
  double chord = length * (1 + now / stiffness);
  Point points[] = { { { 0, 0, 0 }, 0, 0 }, { { 0.6 * chord, 0, -0.8 * chord }, now, length } };
  LbSetup setup = setup_of (stiffness);
  double at_limit = length * (1 + 120 / stiffness), depth = 0.8 * chord;
  double ahead = sqrt (at_limit * at_limit - depth * depth);

  lay_out (points, 2);
  LbSnag snag = lb_snag_hold (&setup, &shape, 1);
  assert_near (lb_snag_times (&snag, &setup.rig, 0.4, 120).until_hand, (ahead - 0.6 * chord) / 0.4,
               1e-9);
  assert_near (lb_snag_times (&snag, &setup.rig, -1.1, 120).until_hand, (ahead + 0.6 * chord) / 1.1,
               1e-9);
  assert_near (lb_snag_pull (&snag, -1.1, (ahead + 0.6 * chord) / 1.1), 120, 1e-6);
}

/* ---- A line that bows out ---- */

/* A load P in the middle of a line that does not stretch: it bends there by P / 2 T to either side.
 * The chord is L cos (asin (P / 2 T)); ours leaves out the fourth power of that angle. */
static void
test_middle_load (void **state)
{
  double load = 6, length = 10, now = 12, v = 0.1;
  double down = load / (2 * now), along = sqrt (1 - down * down), half = length / 2;
  Point points[] = { { { 0, 0, 0 }, 0, 0 },
                     { { half * along, 0, -half * down }, now, half },
                     { { length * along, 0, 0 }, now, half } };
  LbSetup setup = setup_of (1e12);

  lay_out (points, 3);
  LbSnag snag = lb_snag_hold (&setup, &shape, 2);
  for (double limit = 20; limit < 200; limit *= 1.7)
    {
      double angle = asin (load / (2 * limit)), chord = length * cos (angle);
      double way = chord - length * along;
      double off = length * pow (angle, 4);
      assert_near (v * lb_snag_times (&snag, &setup.rig, v, limit).until_hand, way, off);
    }
}

/* A line under its own weight between two ends on a level: the catenary. The pull is at the ends.
 */
static void
test_catenary (void **state)
{
  double w = 0.6, length = 12, level = 20, v = 0.1;
  Point points[NODES] = { 0 };
  LbSetup setup = setup_of (1e12);
  double a = level / w;

  for (size_t i = 0; i < NODES; i++)
    {
      double s = length * ((double) i / (NODES - 1) - 0.5);
      points[i].at = lb_vec3 (a * asinh (s / a), 0, a * (sqrt (1 + s * s / (a * a)) - 1));
      double middle = s - 0.5 * length / (NODES - 1);
      points[i].tension = hypot (level, w * middle);
      points[i].rest = i > 0 ? length / (NODES - 1) : 0;
    }
  lay_out (points, NODES);
  double chord = points[NODES - 1].at.x - points[0].at.x;
  LbSnag snag = lb_snag_hold (&setup, &shape, NODES - 1);
  for (double next = 30; next < 300; next *= 2)
    {
      double b = next / w, ends = hypot (next, w * length / 2);
      double way = 2 * b * asinh (length / (2 * b)) - chord;
      double found = v * lb_snag_times (&snag, &setup.rig, v, ends).until_hand;
      assert_relative (found, way, 0.02);
    }
}

/* ---- Limits ---- */

static void
test_never (void **state)
{
  Point points[] = { { { 0, 0, 0 }, 0, 0 }, { { 6, 0, -8 }, 10, 10 } };
  LbSetup setup = setup_of (3e4);

  lay_out (points, 2);
  LbSnag snag = lb_snag_hold (&setup, &shape, 1);
  LbSnagTimes times = lb_snag_times (&snag, &setup.rig, 0, 100);
  assert_false (lb_is_set (times.until_hand));
  assert_false (lb_is_set (times.until_breaks));
  assert_near (lb_snag_times (&snag, &setup.rig, 0.4, 5).until_hand, 0, 0);
}

/* ---- Against the pass ---- */

typedef struct
{
  const char *name;
  size_t leader;  /* its lure hangs up; LB_MAX_LEADERS: the weight does */
  double drift;   /* m/s, downstream; 0: the boat goes on */
  double allowed; /* s */
} Hang;

/* When the hand's pull first gets to `limit`, s. */
static double
pass_time_to (const LbSetup *setup, const Hang *hang, double limit, LbSnag *snag)
{
  LbPassPlan plan = { 0 };
  double speed = setup->boat.speed_over_ground;

  if (hang->drift > 0)
    plan = pass_ramp (speed, -hang->drift, 0, 0.3);
  pass_run (pass, setup, &plan, NULL, 0);
  const LbShape *now = lb_pass_shape (pass);
  size_t node = hang->leader < LB_MAX_LEADERS ? now->lure[hang->leader] : now->weight;
  *snag = lb_snag_hold (setup, now, node);
  lb_pass_hold (pass, node);
  for (int k = 1; k < 8000; k++)
    {
      assert_int_equal (lb_pass_advance (pass, 0.005 * k), LB_STATUS_OK);
      now = lb_pass_shape (pass);
      LbVec3 pull = now->nodes[1].pull_on_parent;
      if (lb_vec3_norm (pull) >= limit)
        return 0.005 * k;
    }
  return INFINITY;
}

/* The pass has the blow, the moving water and a hold that yields. A boat that drifts takes 0.3 s to
 * turn round there. */
static void
test_against_pass (void **state)
{
  static const Hang hangs[] = {
    { "weight", LB_MAX_LEADERS, 0, 0.03 },
    { "lower lure", 0, 0, 0.1 },
    { "weight, the boat drifts", LB_MAX_LEADERS, 1.2, 0.25 },
  };
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);

  for (size_t i = 0; i < sizeof hangs / sizeof hangs[0]; i++)
    {
      LbSnag snag;
      for (double limit = 60; limit < 250; limit *= 2)
        {
          double found = pass_time_to (&setup, &hangs[i], limit, &snag);
          double speed = hangs[i].drift > 0 ? -hangs[i].drift : setup.boat.speed_over_ground;
          double told = lb_snag_times (&snag, &setup.rig, speed, limit).until_hand;
          assert_near (told, found, hangs[i].allowed);
          assert_relative (lb_snag_pull (&snag, speed, told), limit, 1e-6);
        }
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_pulled_along), cmocka_unit_test (test_two_parts),
    cmocka_unit_test (test_triangle),     cmocka_unit_test (test_middle_load),
    cmocka_unit_test (test_catenary),     cmocka_unit_test (test_never),
    cmocka_unit_test (test_against_pass),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
