/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether some line out holds the weight after all, before a remark says that none does: all of
 * them are gone through, let out from the shortest and taken in from the longest, each rig followed
 * from the one before. Height against line out has kinks, leaps and more than one branch.
 *
 * Every rig is cut up as the rig with that line out given is, for what that does is the question:
 * the mesh of a line that is to be found is graded for a common length, and too coarse at the ends
 * of one of a hundred metres. */
#include "steady_solver.h"

/* Steps are of the logarithm of the line out. */
#define STEP 0.15
#define RARE_STEP 0.3 /* where the weight is too low with the line all in: more rarely lifts it */
#define SHORTER 0.3   /* a step that fails is tried again, this much shorter, */
#define SMALLEST_STEP 0.05 /* down to this: then the rig has come to its end */
#define SMALLEST_STEP_BACK 0.01
#define MOST_TRIALS 1000 /* in one pass */
#define MOST_BACK 20     /* trials, looking back from a leap */
#define MOST_FULL_STARTS 3
#define MOST_BRACKETS 8 /* on the way to one rig on the other side */
#define CLOSING_TRIALS 60
#define CLOSED 1e-9      /* of the line out: where closing in ends */
#define FIRST_PROBE 1e-6 /* of the line out, past there */
#define PROBE_GROWTH 6

/* A rig on the way. */
typedef struct
{
  double line_out; /* m */
  double error;    /* m, how far the weight is above where it should be */
} Trial;

typedef struct
{
  LbSteady *steady;
  LbSetup given; /* the setup with the line out of the trial */
  LbMeshPlan plan;
  Trial at; /* the last rig, in LB_TREE_MEMORY_SCAN */
  bool held;
  double full_step; /* of a pass */
  int full_starts;  /* left in this pass */
  LbStatus remark;  /* if the weight is held nowhere; its rig is in LB_TREE_MEMORY_REMARK */
  double remark_line, remark_graded_for;
} Scan;

static bool
opposite (Trial a, Trial b)
{
  return (a.error > 0) != (b.error > 0);
}

/* Cuts the rig up for a line out. */
static void
set_line_out (Scan *scan, double line_out, double graded_for)
{
  LbTree *tree = &scan->steady->tree;
  bool kept;

  scan->given.rig.line_out.value = line_out;
  scan->plan.graded_for = graded_for;
  lb_mesh_build (tree, &scan->given, &scan->plan, &kept); /* the same nodes: needs no memory */
  tree->holding = false;
  tree->line_out = line_out;
}

static Trial
read_trial (const LbTree *tree)
{
  return (Trial){ tree->line_out, lb_tree_weight_height (tree) - tree->hold_height };
}

/* Newton from the last rig to another line out. */
static bool
follow_to (Scan *scan, double line_out, Trial *trial)
{
  LbTree *tree = &scan->steady->tree;

  lb_tree_restore (tree, LB_TREE_MEMORY_SCAN);
  set_line_out (scan, line_out, line_out);
  if (!lb_steady_newton (scan->steady, LB_STEADY_DIRECT_ITERATIONS))
    return false;
  *trial = read_trial (tree);
  return true;
}

/* Solves for a line out from nothing, in every way there is or by Newton alone. */
static bool
start_at (Scan *scan, double line_out, bool every_way, Trial *trial)
{
  LbTree *tree = &scan->steady->tree;

  set_line_out (scan, line_out, line_out);
  lb_steady_start_cold (tree);
  if (!lb_steady_newton (scan->steady, LB_STEADY_DIRECT_ITERATIONS)
      && !(every_way && lb_steady_solve_given (scan->steady, false)))
    return false;
  *trial = read_trial (tree);
  return true;
}

static void
move_on (Scan *scan, Trial trial)
{
  lb_tree_keep (&scan->steady->tree, LB_TREE_MEMORY_SCAN);
  scan->at = trial;
}

/* Takes the last rig for what is shown if the weight is held nowhere. A leap stays. */
static void
set_remark (Scan *scan, LbStatus remark)
{
  LbTree *tree = &scan->steady->tree;

  if (scan->remark == LB_STATUS_HEIGHT_LEAPS)
    return;
  scan->remark = remark;
  scan->remark_line = scan->remark_graded_for = scan->at.line_out;
  lb_tree_restore (tree, LB_TREE_MEMORY_SCAN);
  lb_tree_keep (tree, LB_TREE_MEMORY_REMARK);
}

/* Follows the last rig towards `far`, where the weight is on the other side of its height, until
 * it is held on the way, or until the rig comes to its end or leaps. */
static void
close_in (Scan *scan, Trial far)
{
  for (int k = 0; k < CLOSING_TRIALS && !scan->steady->cancelled; k++)
    {
      Trial near = scan->at, trial;
      double run = far.line_out - near.line_out;
      double share = k % 3 == 2 ? 0.5 : near.error / (near.error - far.error);
      double line_out = near.line_out + fmin (fmax (share, 1e-3), 1 - 1e-3) * run;

      if (fabs (run) <= CLOSED * near.line_out)
        return;
      if (!follow_to (scan, line_out, &trial))
        far = (Trial){ line_out, -near.error };
      else if (fabs (trial.error) <= LB_STEADY_HEIGHT_TOLERANCE)
        {
          scan->held = true;
          return;
        }
      else if (opposite (trial, near))
        far = trial;
      else
        move_on (scan, trial);
    }
}

/* Where closing in has ended, between the last rig and another branch: follows the last rig past
 * that, as far as `far` at most, and leaves in `far` where it has not got. False when it has come
 * to its end. */
static bool
probe (Scan *scan, Trial *far)
{
  double start = scan->at.line_out, run = far->line_out - start;
  double step = copysign (FIRST_PROBE * start, run);
  bool moved = false;

  for (; !scan->steady->cancelled; step *= PROBE_GROWTH)
    {
      bool last = fabs (step) >= fabs (run);
      double line_out = last ? far->line_out : start + step;
      Trial trial;

      if (!follow_to (scan, line_out, &trial))
        trial = (Trial){ line_out, -scan->at.error };
      if (opposite (scan->at, trial))
        {
          *far = trial;
          return moved;
        }
      move_on (scan, trial);
      moved = true;
      if (last)
        break;
    }
  return moved;
}

/* From the last rig towards `far`, on the other side of its height: until the weight is held, or as
 * far as the rig can be followed. True when that is all the way. */
static bool
close_in_on (Scan *scan, Trial far)
{
  Trial bracket = far;

  for (int k = 0; k < MOST_BRACKETS; k++)
    {
      close_in (scan, bracket);
      bracket = far;
      if (scan->held || !probe (scan, &bracket))
        return false;
      if (scan->at.line_out == far.line_out)
        return true;
    }
  return false;
}

/* From the last rig to `far`, on the other side of its height: closes in from both, which may be on
 * branches of their own. True when it has got there, or the weight is held on the way. */
static bool
close_in_from_both (Scan *scan, Trial far)
{
  LbTree *tree = &scan->steady->tree;
  Trial near = scan->at;

  if (close_in_on (scan, far) || scan->held)
    return true;
  set_remark (scan, LB_STATUS_HEIGHT_LEAPS);
  if (!follow_to (scan, far.line_out, &far) && !start_at (scan, far.line_out, true, &far))
    return false;
  move_on (scan, far);
  if (!opposite (near, far))
    return true;
  lb_tree_keep (tree, LB_TREE_MEMORY_FAR);
  close_in_on (scan, near);
  if (scan->held)
    return true;
  lb_tree_restore (tree, LB_TREE_MEMORY_FAR);
  move_on (scan, far);
  return true;
}

/* After a leap: follows the rig that was leapt to back the other way, which it may go on beyond
 * the leap. Returns to where it was, unless the weight is held on the way. */
static void
look_back (Scan *scan, double towards)
{
  LbTree *tree = &scan->steady->tree;
  Trial turn = scan->at, trial;
  double step = copysign (STEP, towards - turn.line_out);

  lb_tree_keep (tree, LB_TREE_MEMORY_TURN);
  for (int k = 0; k < MOST_BACK && fabs (step) > SMALLEST_STEP_BACK && !scan->held; k++)
    {
      double line_out = scan->at.line_out * exp (step);
      if (!(line_out > LB_STEADY_SHORTEST_LINE && line_out < LB_STEADY_LONGEST_LINE))
        break;
      if (!follow_to (scan, line_out, &trial))
        step *= SHORTER;
      else if (!opposite (scan->at, trial))
        move_on (scan, trial);
      else
        {
          close_in_from_both (scan, trial);
          break;
        }
    }
  if (scan->held)
    return;
  lb_tree_restore (tree, LB_TREE_MEMORY_TURN);
  move_on (scan, turn);
}

/* From the last rig to `trial`, which was solved; closes in on the height between them. */
static void
advance (Scan *scan, Trial trial)
{
  Trial last = scan->at;

  if (!opposite (last, trial))
    move_on (scan, trial);
  else if (close_in_from_both (scan, trial) && !scan->held && opposite (last, scan->at))
    look_back (scan, last.line_out);
}

/* The next line out of a pass, `step` on. */
static double
next_line (const Scan *scan, double step, double to)
{
  double at = scan->at.line_out;

  return to > at ? fmin (at * exp (step), to) : fmax (at * exp (-step), to);
}

/* Where the last rig has come to its end: starts anew from the next line out that is solved. */
static void
start_anew (Scan *scan, double step, double to)
{
  Trial last = scan->at, trial;

  while (scan->at.line_out != to && !scan->steady->cancelled)
    {
      double line_out = next_line (scan, step, to);
      if (start_at (scan, line_out, scan->full_starts-- > 0, &trial))
        {
          scan->at = last;
          advance (scan, trial);
          return;
        }
      scan->at.line_out = line_out;
      step = scan->full_step;
    }
}

/* Lets the line out, or takes it in, from one length to another, until the weight is held. */
static void
pass_over (Scan *scan, double from, double to, LbStatus remark)
{
  double step = scan->full_step;
  Trial trial;

  scan->full_starts = MOST_FULL_STARTS;
  if (!start_at (scan, from, true, &trial))
    return;
  move_on (scan, trial);
  if ((trial.error > 0) == (remark == LB_STATUS_LINE_AT_LONGEST))
    set_remark (scan, remark);
  for (int k = 0; k < MOST_TRIALS && !scan->held; k++)
    {
      if (scan->at.line_out == to || scan->steady->cancelled)
        return;
      bool followed = follow_to (scan, next_line (scan, step, to), &trial);
      if (step > SMALLEST_STEP && !followed)
        {
          step *= SHORTER;
          continue;
        }
      if (followed)
        advance (scan, trial);
      else
        start_anew (scan, step, to);
      step = followed ? fmin (2 * step, scan->full_step) : scan->full_step;
    }
}

/* A line out with which the weight certainly hangs too high: it does not reach down to its height
 * over the bed at its highest, though all were stretched to twice its length. */
static double
shortest_reach (const LbTree *tree, const LbRig *rig)
{
  double drop = tree->nodes[0].position.z - tree->highest_bed - tree->hold_height;

  return fmax (0.5 * drop - rig->shank_length, LB_STEADY_SHORTEST_LINE);
}

LbStatus
lb_steady_scan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, LbStatus remark)
{
  LbTree *tree = &steady->tree;
  Scan scan = { steady, *setup, *plan };
  double gap, shortest = shortest_reach (tree, &setup->rig);

  scan.at.line_out = tree->line_out;
  lb_tree_keep (tree, LB_TREE_MEMORY_SCAN);
  scan.remark = LB_STATUS_OK;
  set_remark (&scan, remark);
  scan.remark_graded_for = plan->graded_for;
  if (remark == LB_STATUS_HEIGHT_LEAPS)
    scan.remark = LB_STATUS_OK; /* it has to be found again */
  scan.given.rig.line_out.mode = LB_LINE_OUT_GIVEN;
  scan.full_step = remark == LB_STATUS_LINE_AT_SHORTEST ? RARE_STEP : STEP;

  pass_over (&scan, shortest, LB_STEADY_LONGEST_LINE, LB_STATUS_LINE_AT_SHORTEST);
  if (!scan.held && scan.remark != LB_STATUS_LINE_AT_SHORTEST)
    pass_over (&scan, LB_STEADY_LONGEST_LINE, shortest, LB_STATUS_LINE_AT_LONGEST);
  if (scan.held)
    return LB_STATUS_OK;
  if (steady->cancelled || steady->iterations >= steady->limit)
    return LB_STATUS_NO_CONVERGENCE;
  if (!lb_is_set (scan.remark_graded_for))
    scan.given = *setup; /* the rig is that of the search, on its mesh */
  lb_tree_restore (tree, LB_TREE_MEMORY_REMARK);
  set_line_out (&scan, scan.remark_line, scan.remark_graded_for);
  steady->statistics.residual = lb_tree_forces (tree, &steady->shape, &gap);
  return scan.remark != LB_STATUS_OK ? scan.remark : remark;
}
