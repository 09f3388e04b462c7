/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weight held at a height: the line out is an unknown. */
#include "steady_solver.h"

#define SEARCH_TRIALS 80 /* of the line out */
#define SEARCH_GROWTH 1.5
#define MOST_WAYS_BACK 8

/* Of the line out: where closing in on a leap ends; sooner when a scan follows, which looks closer.
 */
#define CLOSED 1e-12
#define CLOSED_BEFORE_SCAN 1e-5

/* Whether the line out stayed clear of what the solver will let out. */
static bool
within_limits (const LbTree *tree)
{
  return !tree->holding
         || (tree->line_out < LB_STEADY_LONGEST_LINE && tree->line_out > LB_STEADY_SHORTEST_LINE);
}

/* How far the weight is above where it should be with `line_out`; true when that was found. */
static bool
height_error (LbSteady *steady, double line_out, double *error)
{
  steady->tree.holding = false;
  steady->tree.line_out = line_out;
  if (!lb_steady_solve_given (steady, true))
    return false;
  *error = lb_tree_weight_height (&steady->tree) - steady->tree.hold_height;
  return true;
}

/* The same, but where nothing is found the trial goes half the way back to `sound`, a line out that
 * was solved, a few times over. */
static bool
height_error_towards (LbSteady *steady, double sound, double *trial, double *error)
{
  for (int k = 0; k < MOST_WAYS_BACK; k++)
    {
      if (height_error (steady, *trial, error))
        return true;
      *trial = 0.5 * (sound + *trial);
    }
  return false;
}

/* From the rig with the line out that the rough shape came to: a sound start for Newton. Leaves
 * that rig and its `*error` when Newton fails; true when that much was found. */
static bool
solve_guess (LbSteady *steady, double *error)
{
  LbTree *tree = &steady->tree;

  tree->holding = true;
  lb_steady_start_cold (tree);
  return height_error (steady, fmin (tree->line_out, LB_STEADY_LONGEST_LINE), error);
}

/* Newton on the line out from the present trial, if it stays between the two ends. */
static bool
hold_between (LbSteady *steady, double low, double high)
{
  LbTree *tree = &steady->tree;
  double trial = tree->line_out;

  tree->holding = true;
  lb_tree_keep (tree, LB_TREE_MEMORY_TRIAL);
  if (lb_steady_newton (steady, LB_STEADY_DIRECT_ITERATIONS) && tree->line_out >= low
      && tree->line_out <= high)
    return true;
  lb_tree_restore (tree, LB_TREE_MEMORY_TRIAL);
  tree->holding = false;
  tree->line_out = trial;
  return false;
}

/* Between a line that is too short and one that is long enough, closes in on the one that is right:
 * by Newton, and while that fails by false position that halves the weight of an end that stays
 * (Illinois). */
static LbStatus
close_in (LbSteady *steady, double low, double low_error, double high, double high_error)
{
  double closed = steady->scans ? CLOSED_BEFORE_SCAN : CLOSED;

  for (int k = 0; k < SEARCH_TRIALS && high - low > closed * high; k++)
    {
      double error, trial = low + (high - low) * low_error / (low_error - high_error);
      if (k % 2 == 0 && hold_between (steady, low, high))
        return LB_STATUS_OK;
      if (!(trial > low && trial < high))
        trial = 0.5 * (low + high);
      if (!height_error_towards (steady, low, &trial, &error))
        return LB_STATUS_NO_CONVERGENCE;
      if (fabs (error) <= LB_STEADY_HEIGHT_TOLERANCE)
        return LB_STATUS_OK;
      if (error > 0)
        {
          low = trial;
          low_error = error;
          high_error *= 0.5;
        }
      else
        {
          high = trial;
          high_error = error;
          low_error *= 0.5;
        }
    }
  /* The height leaps here: with a hair more line the weight is lower than asked. */
  return LB_STATUS_HEIGHT_LEAPS;
}

/* Finds a line out that holds the weight at its height by trial: from the guess at hand longer and
 * longer until it is low enough, or shorter until it is high enough, then closing in. */
static LbStatus
hold_by_search (LbSteady *steady, double error)
{
  double guess = steady->tree.line_out, trial = guess, last, last_error;
  bool longer = error > 0;

  do
    {
      if (longer && trial >= LB_STEADY_LONGEST_LINE)
        return LB_STATUS_LINE_AT_LONGEST;
      if (!longer && trial <= LB_STEADY_SHORTEST_LINE)
        return LB_STATUS_LINE_AT_SHORTEST;
      last = trial;
      last_error = error;
      trial = longer ? fmin (SEARCH_GROWTH * trial + 0.2, LB_STEADY_LONGEST_LINE)
                     : fmax (trial / SEARCH_GROWTH - 0.2, LB_STEADY_SHORTEST_LINE);
      if (!height_error_towards (steady, last, &trial, &error))
        return LB_STATUS_NO_CONVERGENCE;
    }
  while ((error > 0) == longer);
  return longer ? close_in (steady, last, last_error, trial, error)
                : close_in (steady, trial, error, last, last_error);
}

/* Newton from the last answer, moved on along its way where that can be foreseen. */
static bool
solve_warm (LbSteady *steady, const LbSetup *setup)
{
  LbTree *tree = &steady->tree;
  double line_out = tree->line_out;
  bool foreseen = lb_steady_foresee (steady, setup);

  steady->statistics.warm = true;
  if (lb_steady_newton (steady, LB_STEADY_DIRECT_ITERATIONS) && within_limits (tree))
    return true;
  if (!foreseen)
    return false;
  lb_tree_restore (tree, LB_TREE_MEMORY_ANSWER);
  tree->line_out = line_out;
  return lb_steady_newton (steady, LB_STEADY_DIRECT_ITERATIONS) && within_limits (tree);
}

static LbStatus
solve_held (LbSteady *steady, double first_guess)
{
  LbTree *tree = &steady->tree;
  double error;

  tree->line_out = first_guess;
  lb_steady_start_cold (tree);
  if (lb_steady_newton (steady, LB_STEADY_DIRECT_ITERATIONS) && within_limits (tree))
    return LB_STATUS_OK;
  tree->line_out = first_guess;
  if (!solve_guess (steady, &error))
    return LB_STATUS_NO_CONVERGENCE;
  if (hold_between (steady, LB_STEADY_SHORTEST_LINE, LB_STEADY_LONGEST_LINE))
    return LB_STATUS_OK;
  return hold_by_search (steady, error);
}

LbStatus
lb_steady_solve_mesh (LbSteady *steady, const LbSetup *setup, bool warm)
{
  LbTree *tree = &steady->tree;
  const LbLineOut *line_out = &setup->rig.line_out;
  double straight_down = setup->river.depth + setup->boat.reel_height - setup->rig.shank_length;

  tree->holding = line_out->mode != LB_LINE_OUT_GIVEN;
  tree->hold_height = line_out->mode == LB_LINE_OUT_WEIGHT_ABOVE_BED ? line_out->value : 0;
  if (!tree->holding)
    tree->line_out = line_out->value;
  if (warm && solve_warm (steady, setup))
    return LB_STATUS_OK;
  steady->statistics.warm = false;
  if (steady->warm_only)
    return LB_STATUS_NO_CONVERGENCE;
  if (tree->holding)
    return solve_held (steady, fmax (straight_down - tree->hold_height, LB_STEADY_SHORTEST_LINE));
  return lb_steady_solve_given (steady, false) ? LB_STATUS_OK : LB_STATUS_NO_CONVERGENCE;
}
