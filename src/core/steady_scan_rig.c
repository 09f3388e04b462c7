/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_scan.h"

#include <string.h>

#define FOLLOW_ITERATIONS 20
#define LYING 1e-5 /* N, that the bed carries at least of a node that lies on it */
#define CLOSING_TRIALS 60
#define CLOSED 1e-10       /* of the line out: where closing in ends */
#define STEEPEST 10.0      /* m of height per m of line, that a kink may lead to */
#define REACH 10           /* times what the slope foresees: no farther is a rig at its end */
#define PAST_THE_LEAP 1e-3 /* of the way */

void
lb_scan_set_line_out (LbScan *scan, double line_out, double graded_for)
{
  LbTree *tree = &scan->steady->tree;
  bool kept;

  scan->given.rig.line_out.value = line_out;
  scan->plan.graded_for = graded_for;
  lb_mesh_build (tree, &scan->given, &scan->plan, &kept); /* the same nodes: needs no memory */
  tree->holding = false;
  tree->line_out = line_out;
}

static LbScanTrial
read_trial (const LbSteady *steady)
{
  const LbTree *tree = &steady->tree;
  const LbShapeNode *nodes = steady->shape.nodes;
  size_t end_of_line = nodes[tree->shank_top].parent;

  return (LbScanTrial){
    .line_out = tree->line_out,
    .error = lb_tree_weight_height (tree) - tree->hold_height,
    .rate = lb_tree_height_rate (tree),
    .solved = true,
    .lies = nodes[tree->weight].bed_force > LYING && nodes[end_of_line].bed_force > LYING,
  };
}

bool
lb_scan_follow_to (LbScan *scan, double line_out, LbScanTrial *trial)
{
  lb_tree_restore (&scan->steady->tree, LB_TREE_MEMORY_SCAN);
  lb_scan_set_line_out (scan, line_out, line_out);
  if (!lb_steady_newton (scan->steady, FOLLOW_ITERATIONS))
    return false;
  *trial = read_trial (scan->steady);
  return true;
}

bool
lb_scan_start_at (LbScan *scan, double line_out, bool every_way, LbScanTrial *trial)
{
  lb_scan_set_line_out (scan, line_out, line_out);
  lb_steady_start_cold (&scan->steady->tree);
  if (!lb_steady_newton (scan->steady, LB_STEADY_DIRECT_ITERATIONS)
      && !(every_way && lb_steady_solve_given (scan->steady, false)))
    return false;
  *trial = read_trial (scan->steady);
  return true;
}

void
lb_scan_move_on (LbScan *scan, LbScanTrial trial)
{
  lb_tree_keep (&scan->steady->tree, LB_TREE_MEMORY_SCAN);
  scan->at = trial;
}

void
lb_scan_set_remark (LbScan *scan, LbStatus remark)
{
  LbTree *tree = &scan->steady->tree;

  if (scan->remark == LB_STATUS_HEIGHT_LEAPS)
    return;
  scan->remark = remark;
  scan->remark_line = scan->remark_graded_for = scan->at.line_out;
  memcpy (tree->memory[LB_TREE_MEMORY_REMARK], tree->memory[LB_TREE_MEMORY_SCAN],
          tree->n_nodes * sizeof (LbTreeState));
}

/* ---- Closing in ---- */

/* Where the rig is tried next between the last one and `far`. */
static double
closer (LbScanTrial near, LbScanTrial far, int k)
{
  double run = far.line_out - near.line_out;
  double share = k % 3 == 0   ? -near.error / (near.rate * run)
                 : k % 3 == 1 ? near.error / (near.error - far.error)
                              : 0.5;

  if (!(share > 0 && share < 1))
    share = 0.5;
  return near.line_out + fmin (fmax (share, 1e-3), 1 - 1e-3) * run;
}

/* Whether the height may still be passed on the way to `far`. That of a fold goes with the root of
 * the distance, twice as far as its slope tells; and a kink may lie between. */
static bool
within_reach (LbScanTrial near, LbScanTrial far)
{
  double run = far.line_out - near.line_out, distance = fabs (near.error);
  double foreseen = -copysign (1, near.error) * near.rate * run;

  if (fabs (run) <= CLOSED * near.line_out)
    return false;
  return far.solved ? fmax (4 * fabs (foreseen), STEEPEST * fabs (run)) > distance
                    : REACH * foreseen > distance;
}

/* Follows the last rig towards `far`, which is on the other side of the height or not to be had,
 * until the weight is held on the way or cannot be any more. `*far` is then where the rig has not
 * got. */
static void
close_in (LbScan *scan, LbScanTrial *far)
{
  for (int k = 0; k < CLOSING_TRIALS && !lb_scan_ended (scan) && within_reach (scan->at, *far); k++)
    {
      LbScanTrial near = scan->at, trial;
      double line_out = closer (near, *far, k);

      if (!lb_scan_follow_to (scan, line_out, &trial))
        *far = (LbScanTrial){ .line_out = line_out, .error = -near.error };
      else if (fabs (trial.error) <= LB_STEADY_HEIGHT_TOLERANCE)
        scan->held = true;
      else if (lb_scan_opposite (trial, near))
        *far = trial;
      else
        lb_scan_move_on (scan, trial);
    }
}

bool
lb_scan_get_past (LbScan *scan)
{
  double step = PAST_THE_LEAP * (scan->next.line_out - scan->at.line_out);
  LbScanTrial trial;

  close_in (scan, &scan->next);
  if (lb_scan_ended (scan) || !scan->next.solved
      || !lb_scan_follow_to (scan, scan->next.line_out + step, &trial)
      || lb_scan_opposite (trial, scan->at))
    return false;
  lb_scan_move_on (scan, trial);
  return true;
}
