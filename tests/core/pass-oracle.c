/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass-oracle-private.h"

#include <string.h>

#include <gsl/gsl_math.h>

#define LURE_ADDED 0.6
#define BALL_ADDED 0.5
#define LEAST_GRIP 10 /* N, of the bed */

/* Solves the symmetric m a = f by Cramer's rule. */
static void
solve (const double *m, const double *f, double *a)
{
  double c0 = m[4] * m[8] - m[5] * m[7], c1 = m[5] * m[6] - m[3] * m[8];
  double c2 = m[3] * m[7] - m[4] * m[6], det = m[0] * c0 + m[1] * c1 + m[2] * c2;
  double i11 = m[0] * m[8] - m[2] * m[6], i22 = m[0] * m[4] - m[1] * m[3];
  double i12 = m[2] * m[3] - m[0] * m[5];

  a[0] = (c0 * f[0] + c1 * f[1] + c2 * f[2]) / det;
  a[1] = (c1 * f[0] + i11 * f[1] + i12 * f[2]) / det;
  a[2] = (c2 * f[0] + i12 * f[1] + i22 * f[2]) / det;
}

static int
rates (realtype time, N_Vector state, N_Vector rate, void *data)
{
  PassOracle *o = data;
  const double *y = N_VGetArrayPointer (state);
  double *dy = N_VGetArrayPointer (rate);
  LbVec3 boat = pass_oracle_boat_velocity (o, time);

  pass_oracle_load (o, y, time);
  dy[0] = boat.x;
  dy[1] = boat.y;
  for (size_t i = 1; i < o->n; i++)
    {
      size_t k = 2 + 6 * o->nodes[i].place;
      memcpy (dy + k, y + k + 3, 3 * sizeof (double));
      solve (o->mass + 9 * i, o->force + 3 * i, dy + k + 3);
    }
  return 0;
}

/* ---- Setting up ---- */

static const LbLine *
line_of (const LbRig *rig, int part)
{
  if (part == LB_PART_MAINLINE)
    return &rig->mainline;
  return part == LB_PART_SHANK ? &rig->shank : &rig->leaders[part - LB_PART_LEADER_0].line;
}

static void
set_bodies (PassOracle *o, const LbShape *start)
{
  const LbRig *rig = &o->setup.rig;
  double rho = o->setup.river.density, g = o->setup.river.gravity;
  PassOracleNode *weight = &o->nodes[start->weight];
  double displaced = rig->weight.mass / rig->weight.density * rho;

  weight->dry = rig->weight.mass;
  weight->added = BALL_ADDED * displaced;
  weight->area_drag =
      0.5 * rho * lb_weight_frontal_area (&rig->weight) * rig->weight.drag_coefficient;
  weight->net_up = (displaced - rig->weight.mass) * g;
  for (size_t k = 0; k < start->n_leaders; k++)
    {
      const LbLure *lure = &rig->leaders[k].lure;
      PassOracleNode *node = &o->nodes[start->lure[k]];
      node->dry = lure->mass;
      node->added = LURE_ADDED * fmax (lure->mass + lure->buoyancy / g, 0);
      node->area_drag = 0.5 * rho * lure->drag_area;
      node->lip = lure->down_force_ratio;
      node->net_up = lure->buoyancy;
    }
}

/* Nodes equally many segments away from the reel stand next to each other, which makes the band
 * narrow. Returns its half width. */
static size_t
set_places (PassOracle *o)
{
  size_t place = 0, widest = 1;
  size_t *depth = calloc (o->n, sizeof *depth);

  for (size_t i = 1; i < o->n; i++)
    depth[i] = depth[o->nodes[i].parent] + 1;
  for (size_t level = 1; level < o->n; level++)
    for (size_t i = 1; i < o->n; i++)
      if (depth[i] == level)
        o->nodes[i].place = place++;
  for (size_t i = 1; i < o->n; i++)
    if (o->nodes[i].parent != 0)
      widest = GSL_MAX (widest, o->nodes[i].place - o->nodes[o->nodes[i].parent].place);
  free (depth);
  return GSL_MIN (6 * widest + 5, 6 * o->n - 4);
}

void
pass_oracle_set_state (PassOracle *o, const LbShape *start)
{
  double *y = N_VGetArrayPointer (o->y);
  LbVec3 v = pass_oracle_boat_velocity (o, 0);

  y[0] = start->nodes[0].position.x;
  y[1] = start->nodes[0].position.y;
  for (size_t i = 1; i < o->n; i++)
    {
      LbVec3 p = start->nodes[i].position;
      double state[6] = { p.x, p.y, p.z, v.x, v.y, v.z };
      memcpy (y + 2 + 6 * o->nodes[i].place, state, sizeof state);
    }
}

PassOracle *
pass_oracle_new (const LbShape *start,
                 const LbSetup *setup,
                 const LbPassPlan *plan,
                 double tolerance)
{
  PassOracle *o = calloc (1, sizeof *o);
  size_t n = start->n_nodes, size = 2 + 6 * (n - 1);

  o->setup = *setup;
  o->plan = *plan;
  o->n = n;
  o->nodes = calloc (n, sizeof *o->nodes);
  o->force = calloc (3 * n, sizeof (double));
  o->mass = calloc (9 * n, sizeof (double));
  o->first_line = start->line_out;
  o->grip = fmax (LEAST_GRIP, setup->rig.weight.mass * setup->river.gravity);
  for (size_t i = 1; i < n; i++)
    {
      const LbShapeNode *node = &start->nodes[i];
      bool main = node->part == LB_PART_MAINLINE;
      o->nodes[i] = (PassOracleNode){ .parent = node->parent,
                                      .line = line_of (&o->setup.rig, node->part),
                                      .rest = main ? 0 : node->rest_length,
                                      .per_line = main ? node->rest_length / start->line_out : 0 };
    }
  set_bodies (o, start);
  size_t band = set_places (o);
  SUNContext_Create (NULL, &o->context);
  o->y = N_VNew_Serial ((sunindextype) size, o->context);
  pass_oracle_set_state (o, start);
  o->cvode = CVodeCreate (CV_BDF, o->context);
  CVodeInit (o->cvode, rates, 0, o->y);
  CVodeSStolerances (o->cvode, tolerance, tolerance);
  o->matrix =
      SUNBandMatrix ((sunindextype) size, (sunindextype) band, (sunindextype) band, o->context);
  o->linear = SUNLinSol_Band (o->y, o->matrix, o->context);
  CVodeSetLinearSolver (o->cvode, o->linear, o->matrix);
  CVodeSetUserData (o->cvode, o);
  /* The wire rings along itself, undamped: of these formulas the first two alone stay stable then
   * without following every swing. */
  CVodeSetMaxOrd (o->cvode, 2);
  CVodeSetMaxNumSteps (o->cvode, 10000000);
  return o;
}

void
pass_oracle_free (PassOracle *o)
{
  CVodeFree (&o->cvode);
  SUNLinSolFree (o->linear);
  SUNMatDestroy (o->matrix);
  N_VDestroy (o->y);
  SUNContext_Free (&o->context);
  free (o->nodes);
  free (o->force);
  free (o->mass);
  free (o);
}

bool
pass_oracle_advance (PassOracle *o, double time)
{
  realtype reached;

  CVodeSetStopTime (o->cvode, time);
  if (CVode (o->cvode, time, o->y, &reached, CV_NORMAL) < 0)
    return false;
  o->time = reached;
  return true;
}

/* ---- What came out ---- */

LbVec3
pass_oracle_position (const PassOracle *o, size_t node)
{
  return pass_oracle_place (o, N_VGetArrayPointer (o->y), node);
}

double
pass_oracle_tension (const PassOracle *o, size_t i)
{
  const double *y = N_VGetArrayPointer (o->y);
  LbVec3 span =
      lb_vec3_sub (pass_oracle_place (o, y, o->nodes[i].parent), pass_oracle_place (o, y, i));

  return pass_oracle_pull (&o->nodes[i], lb_vec3_norm (span), pass_oracle_line_out (o, o->time));
}

long
pass_oracle_steps (const PassOracle *o)
{
  long steps = 0;

  CVodeGetNumSteps (o->cvode, &steps);
  return steps;
}
