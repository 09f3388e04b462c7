/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether some line out holds the weight after all, before a remark says that none does: all of
 * them are gone through, let out from the shortest and taken in from the longest, each rig followed
 * from the one before. Height against line out has kinks, leaps and more than one branch.
 *
 * Every rig is cut up as the rig with that line out given is, for what that does is the question:
 * the mesh of a line that is to be found is graded for a common length, and too coarse at the ends
 * of one of a hundred metres. */
#include "steady_scan.h"

/* Steps are of the logarithm of the line out. */
#define FIRST_STEP 0.1
#define LARGEST_STEP 0.4
#define SMALLEST_STEP 0.01 /* below it the rig has come to its end, or leaps */
#define SHORTER 0.3        /* a step that fails is tried again, this much shorter */
#define EASY_ITERATIONS 6  /* of Newton; the next step may be larger */
#define FORESEEN 0.5   /* of the way to the height: farther off what was foreseen is a failure */
#define MOST_STEPS 400 /* in one pass */
#define MOST_BACK 40   /* looking back from a leap */
#define MOST_FULL_STARTS 3

/* Newton steps, then what was seen has to do; the second while a weight that is too low with the
 * line all in has not been lifted above its height. Of 541 such remarks on random settings nine had
 * an answer, none after more than 320. */
#define MOST_ITERATIONS 3000
#define MOST_ITERATIONS_LOW 400

static double
further (double line_out, double step, double to)
{
  return to > line_out ? fmin (line_out * exp (step), to) : fmax (line_out * exp (-step), to);
}

/* Whether nothing can have happened between two rigs that their slopes do not tell. */
static bool
foreseen (LbScanTrial a, LbScanTrial b)
{
  double run = b.line_out - a.line_out, rise = b.error - a.error;
  double most = FORESEEN * fmax (fabs (a.error), fabs (b.error));

  return fabs (rise - a.rate * run) <= most && fabs (rise - b.rate * run) <= most;
}

/* Follows the last rig a step on, or makes the step smaller. False when the rig ends there, leaps
 * past the height or holds the weight; scan->next is then where it has not got. */
static bool
walk (LbScan *scan, double *step, double to)
{
  size_t before = scan->steady->iterations;
  LbScanTrial *next = &scan->next;

  *next =
      (LbScanTrial){ .line_out = further (scan->at.line_out, *step, to), .error = -scan->at.error };
  lb_scan_follow_to (scan, next->line_out, next);
  if (next->solved && !lb_scan_opposite (scan->at, *next)
      && (*step <= SMALLEST_STEP || foreseen (scan->at, *next)))
    {
      lb_scan_move_on (scan, *next);
      if (scan->steady->iterations - before <= EASY_ITERATIONS)
        *step = fmin (2 * *step, LARGEST_STEP);
      return true;
    }
  if (next->solved ? lb_scan_opposite (scan->at, *next) : *step <= SMALLEST_STEP)
    return lb_scan_get_past (scan);
  *step = fmax (SHORTER * *step, SMALLEST_STEP);
  return true;
}

/* After a leap: follows the rig that was leapt to back the other way, which it may go on beyond
 * the leap. Returns to where it was, unless the weight is held on the way. */
static void
look_back (LbScan *scan, double to)
{
  LbTree *tree = &scan->steady->tree;
  LbScanTrial turn = scan->at;
  double step = FIRST_STEP;

  lb_tree_keep (tree, LB_TREE_MEMORY_TURN);
  for (int k = 0; k < MOST_BACK && scan->at.line_out != to; k++)
    if (!walk (scan, &step, to) || lb_scan_ended (scan))
      break;
  if (scan->held)
    return;
  lb_tree_restore (tree, LB_TREE_MEMORY_TURN);
  lb_scan_move_on (scan, turn);
}

/* Goes on from where the last rig has come to its end, with the rig that it leaps to or one that is
 * found from nothing. False when there is none. */
static bool
leap (LbScan *scan, double to, double back)
{
  LbScanTrial from = scan->at, next = scan->next;

  if (!next.solved || !lb_scan_follow_to (scan, next.line_out, &next))
    while (!lb_scan_start_at (scan, next.line_out, scan->full_starts-- > 0, &next))
      {
        if (lb_scan_ended (scan) || next.line_out == to)
          return false;
        next.line_out = further (next.line_out, FIRST_STEP, to);
      }
  if (!lb_scan_opposite (from, next))
    {
      lb_scan_move_on (scan, next);
      return true;
    }
  if (scan->remark != LB_STATUS_HEIGHT_LEAPS)
    {
      double asked = scan->steady->tree.hold_height;
      scan->high = asked + fmax (from.error, next.error);
      scan->low = asked + fmin (from.error, next.error);
    }
  lb_scan_set_remark (scan, LB_STATUS_HEIGHT_LEAPS);
  scan->limit = scan->most;
  lb_scan_move_on (scan, next);
  look_back (scan, back);
  return true;
}

/* Lets the line out, or takes it in, from one length to another, until the weight is held or the
 * line lies on the bed. Returns how far it got, m. */
static double
pass_over (LbScan *scan, double from, double to)
{
  bool out = to > from;
  double step = FIRST_STEP;
  bool may_end;
  LbScanTrial trial;

  scan->full_starts = MOST_FULL_STARTS;
  if (!lb_scan_start_at (scan, from, true, &trial))
    return to;
  lb_scan_move_on (scan, trial);
  may_end = out && (trial.error < 0 || scan->steady->tree.current.bed.n == 1);
  if (out && trial.error < 0)
    lb_scan_set_remark (scan, LB_STATUS_LINE_AT_SHORTEST);
  else if (from == LB_STEADY_LONGEST_LINE && trial.error > 0)
    lb_scan_set_remark (scan, LB_STATUS_LINE_AT_LONGEST);
  for (int k = 0; k < MOST_STEPS && scan->at.line_out != to && !lb_scan_ended (scan); k++)
    {
      if (scan->at.lies && may_end)
        break;
      if (walk (scan, &step, to) || lb_scan_ended (scan))
        continue;
      if (!leap (scan, to, from))
        break;
      step = FIRST_STEP;
    }
  return scan->at.line_out;
}

/* A line out with which the weight certainly hangs too high: it does not reach down to its height
 * over the bed at its highest, though all were stretched to twice its length. */
static double
shortest_reach (const LbTree *tree, const LbRig *rig)
{
  double drop = tree->nodes[0].position.z - tree->highest_bed - tree->hold_height;

  return fmax (0.5 * drop - rig->shank_length, LB_STEADY_SHORTEST_LINE);
}

/* The rig of the remark, with all that is told of it. */
static LbStatus
take_remark (LbScan *scan, const LbSetup *setup, LbStatus remark)
{
  LbSteady *steady = scan->steady;
  double gap;

  if (!lb_is_set (scan->remark_graded_for))
    scan->given = *setup; /* the rig is that of the search, on its mesh */
  lb_tree_restore (&steady->tree, LB_TREE_MEMORY_REMARK);
  lb_scan_set_line_out (scan, scan->remark_line, scan->remark_graded_for);
  steady->statistics.residual = lb_tree_forces (&steady->tree, &steady->shape, &gap);
  steady->statistics.leap_high = scan->high;
  steady->statistics.leap_low = scan->low;
  return scan->remark != LB_STATUS_OK ? scan->remark : remark;
}

LbStatus
lb_steady_scan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, LbStatus remark)
{
  LbTree *tree = &steady->tree;
  LbScan scan = { steady, *setup, *plan, .high = LB_UNSET, .low = LB_UNSET };
  double shortest = shortest_reach (tree, &setup->rig);
  size_t left = steady->limit - steady->iterations;
  size_t most = remark == LB_STATUS_LINE_AT_SHORTEST ? MOST_ITERATIONS_LOW : MOST_ITERATIONS;

  scan.at.line_out = tree->line_out;
  scan.most = steady->iterations + (left < MOST_ITERATIONS ? left : MOST_ITERATIONS);
  scan.limit = steady->iterations + (left < most ? left : most);
  lb_tree_keep (tree, LB_TREE_MEMORY_SCAN);
  lb_scan_set_remark (&scan, remark);
  scan.remark_graded_for = plan->graded_for;
  if (remark == LB_STATUS_HEIGHT_LEAPS)
    scan.remark = LB_STATUS_OK; /* it has to be found again */
  scan.given.rig.line_out.mode = LB_LINE_OUT_GIVEN;

  double longest = pass_over (&scan, shortest, LB_STEADY_LONGEST_LINE);
  if (!lb_scan_ended (&scan)
      && (scan.remark != LB_STATUS_LINE_AT_SHORTEST || remark == LB_STATUS_HEIGHT_LEAPS))
    pass_over (&scan, longest, shortest);
  if (scan.held)
    {
      steady->graded_for = tree->line_out;
      return LB_STATUS_OK;
    }
  if (steady->cancelled || steady->iterations >= steady->limit)
    return LB_STATUS_NO_CONVERGENCE;
  return take_remark (&scan, setup, remark);
}
