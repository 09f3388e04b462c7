/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "yardstick.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_multiroots.h>

#include "oracle-river.h"

#define TOLERANCE 1e-8
#define MOST_ITERATIONS 200

typedef struct
{
  OracleRiver river;
  LbShape *shape;
} Problem;

/* Three unknowns for every node but the reel: x, z and the tension above it. */
static double
unknown (const gsl_vector *u, size_t node, int which)
{
  return gsl_vector_get (u, 3 * (node - 1) + (size_t) which);
}

static void
add (gsl_vector *f, size_t node, int which, double value)
{
  if (node > 0)
    *gsl_vector_ptr (f, 3 * (node - 1) + (size_t) which) += value;
}

static const LbLine *
line_of (const LbRig *rig, int part)
{
  return part == LB_PART_MAINLINE ? &rig->mainline
         : part == LB_PART_SHANK  ? &rig->shank
                                  : &rig->leaders[part - LB_PART_LEADER_0].line;
}

static void
add_segment (const Problem *problem, const gsl_vector *u, size_t i, gsl_vector *f)
{
  const LbShapeNode *node = &problem->shape->nodes[i];
  const LbLine *line = line_of (&problem->river.setup->rig, node->part);
  size_t parent = node->parent;
  const LbVec3 reel = problem->shape->nodes[0].position;
  double a[2] = { unknown (u, i, 0), unknown (u, i, 1) };
  double b[2] = { parent > 0 ? unknown (u, parent, 0) : reel.x,
                  parent > 0 ? unknown (u, parent, 1) : reel.z };
  double tension = unknown (u, i, 2);
  double length = hypot (b[0] - a[0], b[1] - a[1]);
  double t[2] = { (b[0] - a[0]) / length, (b[1] - a[1]) / length };
  double middle[2] = { (a[0] + b[0]) / 2, (a[1] + b[1]) / 2 }, load[2];

  oracle_line_load (&problem->river, line, middle, t, length / node->rest_length, false, load);
  for (int c = 0; c < 2; c++)
    {
      double half = 0.5 * node->rest_length * load[c];
      add (f, i, c, half + tension * t[c]);
      add (f, parent, c, half - tension * t[c]);
    }
  add (f, i, 2, length - node->rest_length * (1 + tension / line->axial_stiffness));
}

static void
add_body (gsl_vector *f, size_t node, const double force[2])
{
  add (f, node, 0, force[0]);
  add (f, node, 1, force[1]);
}

static int
residual (const gsl_vector *u, void *data, gsl_vector *f)
{
  const Problem *problem = data;
  const LbShape *shape = problem->shape;
  double p[2], force[2];

  gsl_vector_set_zero (f);
  for (size_t i = 1; i < shape->n_nodes; i++)
    add_segment (problem, u, i, f);
  p[0] = unknown (u, shape->weight, 0);
  p[1] = unknown (u, shape->weight, 1);
  oracle_weight_force (&problem->river, p, force);
  add_body (f, shape->weight, force);
  for (size_t k = 0; k < shape->n_leaders; k++)
    {
      p[0] = unknown (u, shape->lure[k], 0);
      p[1] = unknown (u, shape->lure[k], 1);
      oracle_lure_force (&problem->river, &problem->river.setup->rig.leaders[k].lure, p, force);
      add_body (f, shape->lure[k], force);
    }
  return GSL_SUCCESS;
}

static gsl_vector *
start (const LbShape *shape)
{
  gsl_vector *u = gsl_vector_alloc (3 * (shape->n_nodes - 1));

  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      gsl_vector_set (u, 3 * (i - 1), shape->nodes[i].position.x);
      gsl_vector_set (u, 3 * (i - 1) + 1, shape->nodes[i].position.z);
      gsl_vector_set (u, 3 * (i - 1) + 2, shape->nodes[i].tension);
    }
  return u;
}

static void
keep (LbShape *shape, const gsl_vector *u)
{
  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      shape->nodes[i].position = lb_vec3 (unknown (u, i, 0), 0, unknown (u, i, 1));
      shape->nodes[i].tension = unknown (u, i, 2);
    }
}

size_t
yardstick_solve (const LbSetup *setup, LbShape *shape)
{
  Problem problem = { .shape = shape };
  gsl_vector *u = start (shape);
  gsl_multiroot_function function = { residual, u->size, &problem };
  gsl_multiroot_fsolver *solver =
      gsl_multiroot_fsolver_alloc (gsl_multiroot_fsolver_hybrids, u->size);
  gsl_error_handler_t *handler = gsl_set_error_handler_off ();
  size_t iterations = 0;
  int status = GSL_CONTINUE;

  oracle_river_init (&problem.river, setup);
  gsl_multiroot_fsolver_set (solver, &function, u);
  while (status == GSL_CONTINUE && iterations < MOST_ITERATIONS)
    {
      iterations++;
      if (gsl_multiroot_fsolver_iterate (solver) != GSL_SUCCESS)
        break;
      status = gsl_multiroot_test_residual (solver->f, TOLERANCE);
    }
  if (status == GSL_SUCCESS)
    keep (shape, solver->x);
  oracle_river_clear (&problem.river);
  gsl_set_error_handler (handler);
  gsl_vector_free (u);
  gsl_multiroot_fsolver_free (solver);
  return status == GSL_SUCCESS ? iterations : 0;
}
