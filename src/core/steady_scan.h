/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a scan of all lines out is made of: single rigs, and closing in between two of them.
 * Internal to the steady solver. */
#pragma once

#include "steady_solver.h"

/* A rig on the way. */
typedef struct
{
  double line_out; /* m */
  double error;    /* m, how far the weight is above where it should be */
  double rate;     /* of the error, per m of line out */
  bool solved;     /* else there is no such rig to be had from the last one */
  bool lies;       /* the line lies on the bed with the weight: more of it lifts nothing */
} LbScanTrial;

typedef struct
{
  LbSteady *steady;
  LbSetup given; /* the setup with the line out of the trial */
  LbMeshPlan plan;
  LbScanTrial at;   /* the last rig, in LB_TREE_MEMORY_SCAN */
  LbScanTrial next; /* where it has come to its end */
  bool held;
  size_t limit, most; /* of Newton steps: now, and once a leap was seen */
  int full_starts;    /* left */
  LbStatus remark;    /* if the weight is held nowhere; its rig is in LB_TREE_MEMORY_REMARK */
  double remark_line, remark_graded_for;
  double high, low; /* m above the bed, the weight on the two sides of the leap remarked */
} LbScan;

/* Whether one is above the height and the other below. */
static inline bool
lb_scan_opposite (LbScanTrial a, LbScanTrial b)
{
  return (a.error > 0) != (b.error > 0);
}

/* Whether the weight is held, or there are to be no more Newton steps. */
static inline bool
lb_scan_ended (const LbScan *scan)
{
  return scan->held || scan->steady->cancelled || scan->steady->iterations >= scan->limit;
}

/* Cuts the rig up for a line out, graded for another. */
void lb_scan_set_line_out (LbScan *scan, double line_out, double graded_for);

/* Newton from the last rig to another line out. False, and `*trial` stays as it is, when that does
 * not get there. */
bool lb_scan_follow_to (LbScan *scan, double line_out, LbScanTrial *trial);

/* Solves for a line out from nothing, in every way there is or by Newton alone. The same. */
bool lb_scan_start_at (LbScan *scan, double line_out, bool every_way, LbScanTrial *trial);

/* Makes the solved `trial` the last rig. */
void lb_scan_move_on (LbScan *scan, LbScanTrial trial);

/* Takes the last rig for what is shown if the weight is held nowhere. A leap stays. */
void lb_scan_set_remark (LbScan *scan, LbStatus remark);

/* Closes in on scan->next, which is on the other side of the height or not to be had. True when the
 * rig goes on past the place where it seemed to leap: a large step may have led to another branch.
 * Else the weight is held, or the last rig is where it ends and scan->next where it has not got. */
bool lb_scan_get_past (LbScan *scan);
