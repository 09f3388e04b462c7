/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

/* The answer is accepted when no force above the first of these, N, is left anywhere; or, when a
 * step can do no better, above the second per N of the largest tension, which is rounding. */
#define FORCE_TOLERANCE 2e-10
#define FORCE_ROUNDING 1e-9
#define SMALLEST_MOVE 1e-9 /* m, and per m of line out if that is more */

/* And no misfit of a segment's length above this, m. */
#define LENGTH_TOLERANCE 1e-10

/* A Newton step this small, m and N, leaves an error far below the tolerances: it is squared by
 * each step. */
#define LAST_MOVE 2e-5
#define LAST_PULL 2e-4

#define LARGEST_MOVE 1.0   /* m, in one Newton step, */
#define MOVE_PER_LINE 0.06 /* and per m of line out */
#define LARGEST_TURN 0.7   /* of any segment in one step, as a share of its length */

bool
lb_steady_may_go_on (LbSteady *steady)
{
  if (steady->iterations >= steady->limit || steady->cancelled)
    return false;
  steady->iterations++;
  if (steady->cancel != NULL && steady->cancel (steady->cancel_data, steady->iterations))
    steady->cancelled = true;
  return !steady->cancelled;
}

/* The force, N, that may be left over after a step of `move`. */
static double
force_limit (const LbTree *tree, double move)
{
  double largest = 1;

  if (move > SMALLEST_MOVE * fmax (1, tree->line_out))
    return FORCE_TOLERANCE;
  for (size_t i = 1; i < tree->n_nodes; i++)
    largest = fmax (largest, tree->nodes[i].tension);
  return FORCE_ROUNDING * largest;
}

/* Evaluates the forces once: fills the shape and tells whether it is the answer, after a step of
 * `move`. */
static bool
balanced (LbSteady *steady, double move)
{
  LbTree *tree = &steady->tree;
  double gap, residual = lb_tree_forces (tree, &steady->shape, &gap);

  steady->statistics.residual = residual;
  return residual <= force_limit (tree, move) && gap <= LENGTH_TOLERANCE
         && (!tree->holding
             || fabs (lb_tree_weight_height (tree) - tree->hold_height)
                    <= LB_STEADY_HEIGHT_TOLERANCE);
}

double
lb_steady_largest_move (const LbTree *tree)
{
  return LARGEST_MOVE + MOVE_PER_LINE * tree->line_out;
}

double
lb_steady_take_factor (const LbTree *tree, const LbTreeStep *step)
{
  double largest = fmax (step->move, fabs (step->line));
  double limit = lb_steady_largest_move (tree);
  double by_move = largest > limit ? limit / largest : 1;

  return step->turn > LARGEST_TURN ? fmin (by_move, LARGEST_TURN / step->turn) : by_move;
}

bool
lb_steady_newton (LbSteady *steady, size_t iterations)
{
  LbTree *tree = &steady->tree;
  double last_move = INFINITY;

  for (size_t k = 0; k < iterations && lb_steady_may_go_on (steady); k++)
    {
      LbTreeStep step = lb_tree_step (tree, INFINITY);
      if (!step.finite)
        return false;
      double largest = fmax (step.move, fabs (step.line));
      double factor = lb_steady_take_factor (tree, &step);
      /* Steps that do not get smaller go to and fro across a kink. */
      if (k > 4 && step.move > 0.8 * last_move)
        factor *= 0.5;
      last_move = step.move;
      lb_tree_take (tree, factor);
      if (tree->holding)
        tree->line_out =
            fmin (fmax (tree->line_out, LB_STEADY_SHORTEST_LINE), LB_STEADY_LONGEST_LINE);
      if (largest <= LAST_MOVE && step.pull <= LAST_PULL && balanced (steady, largest))
        return true;
    }
  return false;
}
