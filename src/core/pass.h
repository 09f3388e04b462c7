/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pass: the rig in time, while the boat changes its speed and its heading and the hand lets
 * line out, over whatever bed comes along.
 *
 * The same rig, loads, mesh and bed as in the steady run (steady.h), with mass and added mass:
 * while the boat holds its course over a plane bed the pass ends in the steady run. */
#pragma once

#include "approach.h"
#include "readings.h"
#include "shape.h"

/* To record a run, at as many moments as wanted:
 *
 *     status = lb_pass_start (pass, &setup, &plan, &options);
 *     for (k = 0; !lb_status_is_failure (status); k++)
 *       {
 *         lb_pass_readings (pass, &readings);      heights, angles, tensions, what touches the bed
 *         shape = lb_pass_shape (pass);            for trails and drawings; copy what is kept
 *         ... boat: shape->nodes[0].position, lb_pass_boat_velocity (), lb_pass_heading () ...
 *         if (k == n)
 *           break;
 *         status = lb_pass_advance (pass, (k + 1) * interval);
 *       }
 *
 * Both calls together cost about as much as five steps in time, so an interval of 0.05 s costs
 * little. What was recorded before a failure stays good. Two rigs from one boat are two passes with
 * the same course but for its `reel_across`, advanced to the same times;
 * lb_approach_between (lb_pass_shape (a), lb_pass_shape (b)) is how near they come. */

/* ---- What happens ---- */

#define LB_MAX_COURSE_POINTS 64

/* The hardest that a course may change its speed or its line rate, m/s2, and its heading, rad/s:
 * what comes quicker is a blow rather than a course. */
#define LB_HARDEST_COURSE 20.0
#define LB_SHARPEST_TURN 3.0

/* What the boat and the hand do at one time. From one point to the next every value goes over along
 * half a cosine wave, so that nothing jumps; before the first and after the last it is held. */
typedef struct
{
  double time;      /* s */
  double speed;     /* m/s over the ground, ahead */
  double heading;   /* rad; 0 upstream, rising towards +y */
  double line_rate; /* m/s, line let out; it eases off where the line ends, with 5 cm out or 400 m,
                       and what it asks for beyond is forgotten */
} LbCoursePoint;

typedef struct
{
  size_t n_points; /* 0: the setup's boat speed, straight upstream, line held */
  LbCoursePoint points[LB_MAX_COURSE_POINTS]; /* times rising */
  double reel_across; /* m, of the reel from the boat's middle towards +y while it heads upstream;
                         in a turn it swings with the boat, which alone keeps the course's speed */
} LbCourse;

typedef enum
{
  LB_HAND_HOLD,          /* nothing but the course's line_rate */
  LB_HAND_LIFT_AND_DROP, /* the line is taken in by `stroke` and let out again in every `period` */
  LB_HAND_FOLLOW_BED,    /* line is let out until the weight touches, taken in by `stroke` and held
                            for `period`, over and over */
} LbHandMotion;

/* What the hand does on top of the course. */
typedef struct
{
  LbHandMotion motion;
  double stroke; /* m, > 0 unless it holds */
  double period; /* s, > 0 unless it holds */
} LbHand;

typedef struct
{
  LbCourse course;
  LbHand hand;
} LbPassPlan;

/* LB_STATUS_OK, or LB_STATUS_BAD_SETUP with `what` (unless NULL) pointing to a static English
 * phrase that names the value at fault. A pass starts from a steady run, straight upstream with the
 * line held: a course that has another heading before or at time 0, or lets line out then, is
 * refused ("heading of the course at the start", "line rate of the course at the start"). */
LbStatus lb_pass_plan_check (const LbPassPlan *plan, const char **what);

/* ---- Solving ---- */

/* Opaque; keeps its memory from one pass to the next. Belongs to one thread at a time. */
typedef struct LbPass LbPass;

/* Asked after every step in time, and at time 0 while the steady run that the pass starts from is
 * being solved: true to give up. */
typedef bool (*LbPassCancel) (void *data, double time);

typedef struct
{
  size_t segments;     /* of the whole rig, about; 0: as many as the steady run */
  double step;         /* s, the longest; 0: LB_PASS_DEFAULT_STEP. Shorter ones are taken by itself
                          where things happen quickly */
  bool spatial;        /* solve in space even while everything lies in one plane */
  LbPassCancel cancel; /* or NULL */
  void *cancel_data;
} LbPassOptions;

#define LB_PASS_DEFAULT_STEP 0.005 /* s */

typedef struct
{
  size_t segments;
  size_t steps;      /* taken since the start */
  size_t refused;    /* steps tried again shorter */
  size_t iterations; /* of Newton */
  size_t factors;    /* of Newton's matrix */
} LbPassStatistics;

/* NULL when memory is out. Free it with lb_pass_free(). */
LbPass *lb_pass_new (void);
void lb_pass_free (LbPass *pass); /* NULL is fine */

/* Starts at time 0 from the steady run of `setup` with the boat's speed as the plan has it at time
 * 0. Returns what the steady run does, or LB_STATUS_BAD_SETUP for a bad plan. `plan` and `options`
 * may be NULL. All is copied. */
LbStatus lb_pass_start (LbPass *pass,
                        const LbSetup *setup,
                        const LbPassPlan *plan,
                        const LbPassOptions *options);

/* Starts from any shape instead, everything moving as the boat does: what was different when the
 * shape was solved changes at once. `shape` must come from a steady run on as many segments, of a
 * rig with the same parts; else LB_STATUS_BAD_SETUP. The line out is the setup's if it is given
 * there, else the shape's; the other lengths are the shape's. */
LbStatus lb_pass_start_from (LbPass *pass,
                             const LbShape *shape,
                             const LbSetup *setup,
                             const LbPassPlan *plan,
                             const LbPassOptions *options);

/* Goes on to `time` exactly (s; nothing happens unless it is later than now). After a failure the
 * pass stays at the last step that was solved. */
LbStatus lb_pass_advance (LbPass *pass, double time);

/* From now on holds a node (the shape's weight or a lure, say) where it is, as if it had hung up on
 * the bed, until the next start; 0 lets go. It yields 1 mm to 100 N. */
void lb_pass_hold (LbPass *pass, size_t node);

/* ---- What came out, now ---- */

double lb_pass_time (const LbPass *pass);

/* Owned by the pass, filled anew by every call. What the segments pull with includes what it takes
 * to move them. y counts from the boat's middle at the start. */
const LbShape *lb_pass_shape (LbPass *pass);

/* m/s over the ground. */
LbVec3 lb_pass_velocity (const LbPass *pass, size_t node);

/* m/s over the ground, of the boat's middle as the course has it. */
LbVec3 lb_pass_boat_velocity (const LbPass *pass);

/* Cheap enough for every step, so that nothing short is missed between two looks at the shape: N at
 * the middle of the segment next to the reel, and N with which the bed carries a node. */
double lb_pass_top_tension (const LbPass *pass);
double lb_pass_bed_force_on (const LbPass *pass, size_t node);

/* rad, as in LbCoursePoint. */
double lb_pass_heading (const LbPass *pass);

/* As of a steady run, but the water speeds are those past the parts as they move. */
void lb_pass_readings (LbPass *pass, LbReadings *readings);

LbPassStatistics lb_pass_statistics (const LbPass *pass);
