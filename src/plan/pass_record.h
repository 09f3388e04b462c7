/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A pass recorded: the rig at even intervals of time, to be played back, drawn and summed up.
 *
 * One thread computes (lb_pass_record_run()) while others already look at what is there: samples
 * are never moved or changed once lb_pass_record_count() counts them. Only the making and the
 * freeing must be by themselves. */
#pragma once

#include "pass_script.h"
#include "plan_task.h"

#define LB_PASS_RECORD_INTERVAL 0.05 /* s, usually */
#define LB_PASS_RECORD_MOST 20000    /* samples; longer passes are recorded less often */

/* The things that run near the bed: the weight, and lure i as LB_PASS_LURE_0 + i. */
#define LB_PASS_WEIGHT 0
#define LB_PASS_LURE_0 1
#define LB_PASS_MOST_BODIES (LB_PASS_LURE_0 + LB_MAX_LEADERS)

/* One moment of the pass. Positions are over the ground, in the frame of LbShapeNode. */
typedef struct
{
  double time;                          /* s since the start */
  LbVec3 boat;                          /* m, the reel */
  double speed;                         /* m/s, of the boat over the ground */
  double heading;                       /* rad; 0 upstream, rising to the right (+y) */
  double line_rate;                     /* m/s, line let out */
  LbVec3 velocity[LB_PASS_MOST_BODIES]; /* m/s over the ground, by body */
  double most_tension;                  /* N, the most in the hand since the sample before */
  bool touched[LB_PASS_MOST_BODIES];    /* the bed, at any step since the sample before */
  LbApproach between;  /* of a line of this rig and one of the second; the distance is
                          unset when there is only one */
  LbReadings readings; /* all the rest: line out, wire angle, hand tension, weight, lures, the
                          closest approach. The water's speed is that past the moving part; layback
                          is counted downstream, whichever way the boat goes */
} LbPassSample;

typedef struct LbPassRecord LbPassRecord;

/* Nothing is computed yet. Returns LB_STATUS_OK with `*record` to be freed by
 * lb_pass_record_free(); LB_STATUS_BAD_SETUP with `what` (unless NULL) as lb_pass_script_plan()
 * and lb_setup_check() say it; or LB_STATUS_OUT_OF_MEMORY. All is copied. `options` may be NULL;
 * its cancel is not asked. */
LbStatus lb_pass_record_new (LbPassRecord **record,
                             const LbSetup *setup,
                             const LbPassScript *script,
                             const LbPassOptions *options,
                             const char **what);
void lb_pass_record_free (LbPassRecord *record); /* NULL is fine */

/* Computes on until `time` (s; INFINITY: to the end) is recorded. `task`, which may be NULL, is
 * told after every step how much of the whole pass is done. May be called again to go on, also
 * after LB_STATUS_CANCELLED. Returns the status of the steady run that the pass starts from (a
 * remark belongs to the start), or a failure, after which what was recorded before still stands. */
LbStatus lb_pass_record_run (LbPassRecord *record, double time, const LbPlanTask *task);

/* ---- What is asked for ---- */

/* The setup with the boat where the pass starts. */
const LbSetup *lb_pass_record_setup (const LbPassRecord *record);
const LbPassScript *lb_pass_record_script (const LbPassRecord *record);
const LbPassPlan *lb_pass_record_plan (const LbPassRecord *record);
double lb_pass_record_duration (const LbPassRecord *record); /* s, of the whole pass */
double lb_pass_record_interval (const LbPassRecord *record); /* s */
size_t lb_pass_record_n_bodies (const LbPassRecord *record); /* 1 + number of leaders */

/* The record of the second rig, on the left of the boat: its setup has its own weight. It holds
 * what this one holds, sample by sample, and is neither run nor freed by itself. NULL: there is
 * none. */
const LbPassRecord *lb_pass_record_second (const LbPassRecord *record);

/* ---- What is there ---- */

/* How many samples can be read. Those of an earlier count stay good. */
size_t lb_pass_record_count (const LbPassRecord *record);

/* Whether the whole pass is recorded. */
bool lb_pass_record_is_complete (const LbPassRecord *record);

/* The last time recorded, s; 0 before the first. */
double lb_pass_record_end (const LbPassRecord *record);

/* Sample `i` below the count; at i times the interval, but the last, which is at the end. */
const LbPassSample *lb_pass_record_sample (const LbPassRecord *record, size_t i);

/* The moment at `time`, in between on straight lines; before the first and after the last recorded
 * the nearest of them. FALSE when nothing is recorded. */
bool lb_pass_record_at (const LbPassRecord *record, double time, LbPassSample *sample);

/* The rig's shape at `time`, in `shape` (lb_shape_init() before), for drawings: what its segments
 * pull with is told from their tension. LB_STATUS_OK, LB_STATUS_OUT_OF_MEMORY, or
 * LB_STATUS_BAD_SETUP when nothing is recorded. */
LbStatus lb_pass_record_shape_at (const LbPassRecord *record, double time, LbShape *shape);

/* The setup as it is at `time`: the boat where it is then, with its speed upstream then and the
 * line out given. What a drawing of that moment belongs to. */
LbSetup lb_pass_record_setup_at (const LbPassRecord *record, double time);

/* The reading of one body. */
const LbPointReading *lb_pass_sample_body (const LbPassSample *sample, size_t body);
