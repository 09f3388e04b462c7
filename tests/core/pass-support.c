/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test.h"

#include "bed.h"
#include "pass-support.h"

#define LOOK 0.005 /* s */

LbPassPlan
pass_ramp (double from, double to, double start, double end)
{
  LbPassPlan plan = { 0 };

  plan.course.n_points = 2;
  plan.course.points[0] = (LbCoursePoint){ .time = start, .speed = from };
  plan.course.points[1] = (LbCoursePoint){ .time = end, .speed = to };
  return plan;
}

PassDifference
pass_difference (LbPass *a, LbPass *b)
{
  const LbShape *one = lb_pass_shape (a), *other = lb_pass_shape (b);
  PassDifference d = { 0 };

  assert_int_equal (one->n_nodes, other->n_nodes);
  for (size_t i = 0; i < one->n_nodes; i++)
    {
      LbVec3 apart = lb_vec3_sub (one->nodes[i].position, other->nodes[i].position);
      d.move = fmax (d.move, lb_vec3_norm (apart));
      d.pull = fmax (d.pull, fabs (one->nodes[i].tension - other->nodes[i].tension));
    }
  return d;
}

double
pass_depth (LbPass *pass, const LbSetup *setup)
{
  const LbShape *shape = lb_pass_shape (pass);
  double deepest = -INFINITY;
  LbBed bed;

  lb_bed_init (&bed, &setup->river);
  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      LbVec3 p = shape->nodes[i].position;
      deepest = fmax (deepest, -p.z - lb_bed_at (&bed, p.x).depth);
    }
  return deepest;
}

PassDifference
pass_against_finer (
    const LbSetup *setup, const LbPassPlan *plan, double end, int times, double *depth)
{
  LbPass *pass = lb_pass_new (), *fine = lb_pass_new ();
  LbPassOptions options = { .step = LB_PASS_DEFAULT_STEP / times };
  PassDifference worst = { 0 };

  pass_run (pass, setup, plan, NULL, 0);
  pass_run (fine, setup, plan, &options, 0);
  for (int k = 1; k * LOOK <= end; k++)
    {
      assert_int_equal (lb_pass_advance (pass, k * LOOK), LB_STATUS_OK);
      assert_int_equal (lb_pass_advance (fine, k * LOOK), LB_STATUS_OK);
      PassDifference now = pass_difference (pass, fine);
      worst.move = fmax (worst.move, now.move);
      worst.pull = fmax (worst.pull, now.pull);
      if (depth != NULL)
        *depth = fmax (*depth, pass_depth (pass, setup));
    }
  lb_pass_free (pass);
  lb_pass_free (fine);
  return worst;
}

void
pass_run (LbPass *pass,
          const LbSetup *setup,
          const LbPassPlan *plan,
          const LbPassOptions *options,
          double time)
{
  assert_int_equal (lb_pass_start (pass, setup, plan, options), LB_STATUS_OK);
  assert_int_equal (lb_pass_advance (pass, time), LB_STATUS_OK);
}
