/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What boat and hand are to do on a pass, the way a person says it: leg by leg. Plain values
 * without pointers, copied with "=". The core's plan (pass.h) is made from it. */
#pragma once

#include "pass.h"

#define LB_MAX_COURSE_LEGS 20
#define LB_PASS_LONGEST 3600.0 /* s, of a whole pass */
#define LB_PASS_USUAL 120.0    /* s, when nothing tells how long */

/* The limits of what a file may say. */
#define LB_PASS_SHORTEST 1.0        /* s, of a pass and of a leg */
#define LB_LEG_LEAST_DISTANCE 0.1   /* m */
#define LB_LEG_MOST_DISTANCE 1e4    /* m */
#define LB_LEG_MOST_SPEED 5.0       /* m/s */
#define LB_LEG_MOST_TURN 720.0      /* degrees, either way */
#define LB_LEG_MOST_TURN_RATE 45.0  /* degrees/s, either way */
#define LB_LEG_MOST_LINE_RATE 2.0   /* m/s, out and in */
#define LB_HAND_LEAST_STROKE 0.01   /* m */
#define LB_HAND_MOST_STROKE 5.0     /* m */
#define LB_HAND_LEAST_PERIOD 0.5    /* s */
#define LB_HAND_MOST_PERIOD 600.0   /* s */
#define LB_SECOND_LEAST_WEIGHT 0.01 /* kg */
#define LB_SECOND_MOST_WEIGHT 20.0  /* kg */
#define LB_REELS_LEAST_APART 0.1    /* m */
#define LB_REELS_MOST_APART 10.0    /* m */
#define LB_PASS_MOST_TANGLE 10.0    /* m */
#define LB_PASS_FARTHEST_START 1e4  /* m, either way */

/* One stretch of the course. At its beginning the boat goes over from the speed before to that of
 * the leg; the rest of it goes to the turn. */
typedef struct
{
  double duration;  /* s; unset: distance tells */
  double distance;  /* m over the ground along the course; no meaning when duration is set */
  double speed;     /* m/s over the ground, >= 0; unset: the setup's boat speed */
  double turn;      /* degrees, by which the heading changes, to the right (+y) */
  double turn_rate; /* degrees/s, mean over the turn, to the right; unset: turn tells */
  double line_rate; /* m/s, line let out; below zero taken in */
} LbCourseLeg;

typedef struct
{
  size_t n_legs; /* 0: straight upstream, see lb_pass_script_plan() */
  LbCourseLeg legs[LB_MAX_COURSE_LEGS];
  LbHand hand;     /* stroke and period have a value even while it holds */
  double duration; /* s; unset: as long as the course. The last leg's speed is held after it */
  double start;    /* m, where the reel is along the bed at time 0; unset: see
                      lb_pass_script_plan() */
  double tangle_distance; /* m; two lines nearer than this may tangle */
  double second_weight;   /* kg; a second rig like the first, but with this weight, hangs on the
                             left of the boat (-y), the first on the right; unset: there is none */
  double reels_apart;     /* m, across the boat, of the reels of two rigs */
} LbPassScript;

/* Straight upstream, the line held; two lines within 2 in of each other may tangle (estimate). */
LbPassScript lb_pass_script_default (void);

/* A leg that says nothing: straight on for 30 s with the setup's boat speed. */
LbCourseLeg lb_course_leg_default (void);

/* Whether both say the same, numbers bit for bit. */
bool lb_pass_script_equal (const LbPassScript *a, const LbPassScript *b);

/* Moves every number into its limits, so that a file can hold the script. */
void lb_pass_script_mend (LbPassScript *script);

/* How the file calls it: "hold", "lift-and-drop", "follow-bed". */
#define LB_N_HAND_MOTIONS (LB_HAND_FOLLOW_BED + 1)
const char *lb_hand_motion_name (LbHandMotion motion);

/* What is to be computed for a script: the first rig, if there are two. */
typedef struct
{
  LbSetup setup; /* with the boat where, and as fast as, the pass starts */
  LbPassPlan plan;
  double duration; /* s */
} LbPassJob;

/* Phrases of lb_pass_script_plan() for what the limits of single values cannot keep out. */
#define LB_PASS_ENDLESS_LEG "a leg of the course that is never over, as the boat does not move"
#define LB_PASS_TOO_LONG "a pass of more than an hour"

/* Makes a plan of `script` for `setup`. A course without legs goes straight upstream with the
 * setup's boat speed: over an uneven bed from its lower end (unless the script has a start) to its
 * upper end, else from where the boat is for LB_PASS_USUAL. A script with legs and no start starts
 * where the boat is.
 *
 * LB_STATUS_OK, or LB_STATUS_BAD_SETUP with `what` (unless NULL) pointing to a static English
 * phrase that names what cannot be done. */
LbStatus lb_pass_script_plan (const LbPassScript *script,
                              const LbSetup *setup,
                              LbPassJob *job,
                              const char **what);
