/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

#include <stdlib.h>

/* The answer is accepted when no force above this, N, and no misfit of length above that, m, is
 * left anywhere. */
#define FORCE_TOLERANCE 1e-8
#define LENGTH_TOLERANCE 1e-10
#define HEIGHT_TOLERANCE 1e-8

/* A Newton step this small, m and N, leaves an error far below the tolerances: it is squared by
 * each step. */
#define LAST_MOVE 2e-5
#define LAST_PULL 2e-4

#define LARGEST_MOVE 1.5     /* m, in one Newton step */
#define DIRECT_ITERATIONS 14 /* before Newton from the present state is given up */
#define SWEEPS 8
#define FIRST_PSEUDO_TIME 0.02 /* s */
#define PSEUDO_MOVE 0.25       /* m, aimed at in one pseudo-time step */

LbSteady *
lb_steady_new (void)
{
  LbSteady *steady = calloc (1, sizeof *steady);

  if (steady != NULL)
    lb_shape_init (&steady->shape);
  return steady;
}

void
lb_steady_free (LbSteady *steady)
{
  if (steady == NULL)
    return;
  lb_tree_clear (&steady->tree);
  lb_shape_clear (&steady->shape);
  free (steady);
}

const LbShape *
lb_steady_shape (const LbSteady *steady)
{
  return &steady->shape;
}

LbSteadyStatistics
lb_steady_statistics (const LbSteady *steady)
{
  return steady->statistics;
}

/* Evaluates the forces once: fills the shape and tells whether it is the answer. */
static bool
balanced (LbSteady *steady)
{
  LbTree *tree = &steady->tree;
  double gap;

  steady->statistics.residual = lb_tree_forces (tree, &steady->shape, &gap);
  return steady->statistics.residual <= FORCE_TOLERANCE && gap <= LENGTH_TOLERANCE
         && (!tree->holding
             || fabs (lb_tree_weight_height (tree) - tree->hold_height) <= HEIGHT_TOLERANCE);
}

/* Newton from the present state; true when it has arrived. */
static bool
newton (LbSteady *steady, size_t iterations)
{
  LbTree *tree = &steady->tree;

  for (size_t k = 0; k < iterations && steady->iterations < steady->limit; k++)
    {
      LbTreeStep step = lb_tree_step (tree, INFINITY);
      steady->iterations++;
      if (!step.finite)
        return false;
      double largest = fmax (step.move, fabs (step.line));
      lb_tree_take (tree, largest > LARGEST_MOVE ? LARGEST_MOVE / largest : 1);
      if (tree->holding && tree->line_out < LB_STEADY_SHORTEST_LINE)
        tree->line_out = LB_STEADY_SHORTEST_LINE;
      if (largest <= LAST_MOVE && step.pull <= LAST_PULL && balanced (steady))
        return true;
    }
  return false;
}

/* Straight down from the reel, leaders straight downstream: the start of a cold solve. */
static void
hang_straight (LbTree *tree)
{
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      bool leader = node->part >= LB_PART_LEADER_0;

      node->move[0] = leader ? 1 : 0;
      node->move[1] = 0;
      node->move[2] = leader ? 0 : -1;
      node->position = tree->nodes[node->parent].position;
      node->position.x += leader ? lb_tree_rest (tree, i) : 0;
      node->position.z -= leader ? 0 : lb_tree_rest (tree, i);
      double bed = -lb_bed_at (&tree->current.bed, node->position.x).depth;
      node->position.z = fmax (node->position.z, bed);
      node->tension = 0;
    }
}

/* Rough shape from nothing: loads give directions, directions give places, a few times over. */
static void
start_cold (LbTree *tree)
{
  hang_straight (tree);
  for (size_t k = 0; k < SWEEPS; k++)
    lb_tree_sweep (tree, k == 0 ? 1 : 0.7);
}

/* Lets the rig settle in pseudo-time, ever faster, until Newton takes over. Finds a stable shape
 * from anywhere. */
static bool
settle (LbSteady *steady)
{
  LbTree *tree = &steady->tree;
  double pseudo_time = FIRST_PSEUDO_TIME;

  while (steady->iterations < steady->limit)
    {
      LbTreeStep step = lb_tree_step (tree, pseudo_time);
      steady->iterations++;
      if (!step.finite)
        return false;
      double largest = fmax (step.move, fabs (step.line));
      lb_tree_take (tree, largest > LARGEST_MOVE ? LARGEST_MOVE / largest : 1);
      if (largest < 1e-3 && pseudo_time > 1e3 && newton (steady, DIRECT_ITERATIONS))
        return true;
      pseudo_time *= fmin (fmax (PSEUDO_MOVE / (largest + 1e-12), 0.3), 3);
      pseudo_time = fmin (fmax (pseudo_time, 1e-5), 1e8);
    }
  return false;
}

static bool
solve_tree (LbSteady *steady, bool warm)
{
  steady->statistics.warm = warm && newton (steady, DIRECT_ITERATIONS);
  if (steady->statistics.warm)
    return true;
  start_cold (&steady->tree);
  if (newton (steady, DIRECT_ITERATIONS))
    return true;
  start_cold (&steady->tree);
  return settle (steady);
}

/* ---- Holding the weight when Newton on the line out fails ---- */

static bool
height_at (LbSteady *steady, double line_out, double *height)
{
  steady->tree.holding = false;
  steady->tree.line_out = line_out;
  steady->iterations = 0;
  if (!solve_tree (steady, true))
    return false;
  *height = lb_tree_weight_height (&steady->tree);
  return true;
}

/* Finds the shortest line out that gets the weight down to its height, by trying: longer and longer
 * until it is low enough, then halving. */
static LbStatus
hold_by_search (LbSteady *steady)
{
  double target = steady->tree.hold_height;
  double low = LB_STEADY_SHORTEST_LINE, high = low, height;

  if (!height_at (steady, low, &height))
    return LB_STATUS_NO_CONVERGENCE;
  if (height <= target)
    return LB_STATUS_LINE_AT_SHORTEST;
  do
    {
      low = high;
      if (high >= LB_STEADY_LONGEST_LINE)
        return LB_STATUS_LINE_AT_LONGEST;
      high = fmin (1.3 * high + 0.2, LB_STEADY_LONGEST_LINE);
      if (!height_at (steady, high, &height))
        return LB_STATUS_NO_CONVERGENCE;
    }
  while (height > target);
  for (int k = 0; k < 60 && high - low > 1e-11 * high; k++)
    {
      double middle = 0.5 * (low + high);
      if (!height_at (steady, middle, &height))
        return LB_STATUS_NO_CONVERGENCE;
      if (height > target)
        low = middle;
      else
        high = middle;
    }
  return LB_STATUS_OK;
}

LbStatus
lb_steady_solve_mesh (LbSteady *steady, const LbSetup *setup, bool warm)
{
  LbTree *tree = &steady->tree;
  const LbLineOut *line_out = &setup->rig.line_out;
  bool holding = line_out->mode != LB_LINE_OUT_GIVEN;

  tree->holding = holding;
  tree->hold_height = line_out->mode == LB_LINE_OUT_WEIGHT_ABOVE_BED ? line_out->value : 0;
  if (!holding)
    tree->line_out = line_out->value;
  else if (!warm)
    tree->line_out = fmax (setup->river.depth + setup->boat.reel_height - setup->rig.shank_length
                               - tree->hold_height,
                           LB_STEADY_SHORTEST_LINE);
  if (solve_tree (steady, warm) && (!holding || tree->line_out < LB_STEADY_LONGEST_LINE)
      && (!holding || tree->line_out > LB_STEADY_SHORTEST_LINE))
    return LB_STATUS_OK;
  return holding ? hold_by_search (steady) : LB_STATUS_NO_CONVERGENCE;
}

LbStatus
lb_steady_solve_plan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, bool warm)
{
  bool kept;
  LbStatus status = lb_mesh_build (&steady->tree, setup, plan, &kept);

  if (status == LB_STATUS_OK)
    status = lb_shape_resize (&steady->shape, steady->tree.n_nodes);
  if (status == LB_STATUS_OK)
    status = lb_steady_solve_mesh (steady, setup, kept && steady->solved && warm);
  steady->solved = !lb_status_is_failure (status);
  return status;
}

LbStatus
lb_steady_solve (LbSteady *steady, const LbSetup *setup, const LbSteadyOptions *options)
{
  static const LbSteadyOptions defaults = { 0 };
  LbMeshPlan plan = { LB_STEADY_DEFAULT_SEGMENTS, 1, LB_UNSET };
  LbStatus status = lb_setup_check (setup, NULL);

  if (options == NULL)
    options = &defaults;
  if (status != LB_STATUS_OK)
    return status;
  if (options->segments > 0)
    plan.segments = options->segments;
  steady->limit =
      options->max_iterations > 0 ? options->max_iterations : LB_STEADY_DEFAULT_ITERATIONS;
  steady->iterations = 0;
  status = options->fine ? lb_steady_solve_fine (steady, setup, &plan)
                         : lb_steady_solve_plan (steady, setup, &plan, !options->cold);
  steady->statistics.segments = steady->tree.n_nodes - 1;
  steady->statistics.iterations = steady->iterations;
  return status;
}
