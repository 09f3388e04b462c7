/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The inside of the pass. Internal to core. */
#pragma once

#include "pass.h"
#include "steady_solver.h"

/* What moving water adds to a line across it, per mass of water displaced (circular cylinder,
 * potential flow: textbook). */
#define LB_PASS_LINE_ADDED_MASS 1.0

/* A tension below this, N, may be that of a line that goes slack or comes taut. */
#define LB_PASS_NEARLY_SLACK 1e-4

/* One node with the segment to its parent. Components in the order of LB_ALONG and so on. */
typedef struct
{
  int parent, part, body;
  double rest;              /* m, of the segment, now */
  double at_zero, per_line; /* m: rest = at_zero + per_line * line out */

  double r[3], tension;                   /* m, N */
  double v[3], a[3];                      /* over the ground */
  double v_const[3], a_const[3];          /* v = beta r + v_const, a = beta v + a_const */
  double r1[3], r2[3], v1[3], tension1;   /* one step ago, two */
  double r_old[3], v_old[3], tension_old; /* at the start of this step */
  double guess[3], tension_guess;         /* what was foreseen */
  double mass;                            /* kg, that goes with the node, about */

  double b[3]; /* minus the residual */
  double move[3], pull;

  /* Kept from the last factoring: */
  double x0_by_b[9], x0_by_gap[3];  /* the move by the forces and by the misfit of length */
  double pull_by_b[3], pull_by_gap; /* the same for the tension */
  double move_by_parent[9], pull_by_parent[3];
  double parent_by_b[9], parent_by_gap[3]; /* what is carried on to the parent */
  double compliance;                       /* m/N */
  double held_by;  /* N/m, how hard all the rest holds the segment's length */
  double bed_rate; /* N/m, d bed force / d sunk */
  double bed_hold; /* N/m, how hard all but the bed holds the node against sinking in */
  double bed_push[3], bed_slope; /* what the bed pushes along, per newton, friction included */
  double matrix[9];              /* d residual / d position, while factoring */
} LbPassNode;

/* A body's masses, kg. */
typedef struct
{
  double dry, added;
} LbPassBody;

/* What the hand that follows the bed is about. */
typedef enum
{
  LB_PASS_LOWERING,
  LB_PASS_LIFTING,
  LB_PASS_HOLDING,
} LbPassPhase;

/* The line out as the hand has it, and how it goes on within a step. */
typedef struct
{
  LbPassPhase phase;
  double since;              /* s, when the phase began */
  double taken_in;           /* m, since the lifting began */
  double line, rate, change; /* m, m/s, m/s2 by which the hand lets out, now */
} LbPassFollowing;

struct LbPass
{
  LbSteady *steady; /* its tree holds mesh, lines, bodies, current and bed */
  LbSetup setup;
  LbPassPlan plan;
  LbPassOptions options;
  LbShape shape;
  size_t n_nodes, capacity;
  LbPassNode *nodes;
  LbPassBody bodies[LB_MAX_LEADERS + 1];
  double dry[LB_MAX_LEADERS + 2];   /* kg per unstretched m, by part */
  double added[LB_MAX_LEADERS + 2]; /* kg/m, across */

  double time;                   /* s */
  double step;                   /* s, the next to be tried */
  double last_step, before_last; /* s, that were taken; 0: none yet */
  double short_steps;            /* how many short ones lately */
  double reel[3];                /* m, at time */
  double line_out;               /* m, at time; of the step being tried while one is */
  double course_line;            /* m, let out by the course */
  double first_line;             /* m, at the start */
  LbPassFollowing following;
  size_t held; /* node that is held on the bed; 0: none */
  double hold_at[3];

  double beta;         /* 1/s, of the step being tried */
  double factored_for; /* 1/s, beta of the kept factors; 0: none */
  bool flat;           /* all lies in the plane y = 0 and stays there */
  double slowness;     /* error left after an iteration, as a share of the iteration's change */
  size_t kept_for;     /* steps, that the factors have served */
  bool touches, slack; /* some node was in the bed's reach, some segment nearly slack, when last
                          taken */
  LbPassStatistics statistics;
};

/* How large one iteration was. */
typedef struct
{
  double move, pull; /* m, N */
  bool finite;
} LbPassChange;

/* ---- pass_course.c ---- */

/* The course at a time: where nothing moves at once. */
LbCoursePoint lb_pass_course_at (const LbPass *pass, double time);

/* Where the reel and the course's line get to from `from` to `to`, added to `reel` and `line`. */
void lb_pass_course_go (const LbPass *pass, double from, double to, double *reel, double *line);

/* ---- pass_hand.c ---- */

/* Line, m, that the hand has let out (below 0: taken in) at a time within the step being tried. */
double lb_pass_hand_line (const LbPass *pass, double time);

/* Decides at the end of a step what the hand does next. */
void lb_pass_hand_decide (LbPass *pass);

/* ---- pass_line.c ---- */

/* What the course has let out, m, when it would have let out `wanted` m: the line's two ends stop
 * it smoothly, and what was asked for beyond them is forgotten. */
double lb_pass_line_course (const LbPass *pass, double wanted);

/* Line out, m, at a time within the step being tried, with the hand's share. */
double lb_pass_line_at (const LbPass *pass, double course_line, double time);

/* ---- pass_step.c ---- */

/* One iteration of Newton for the step being tried, with new factors if told. */
LbPassChange lb_pass_iterate (LbPass *pass, bool factor);

/* Fills what every segment of a shape pulls its ends with. */
void lb_pass_fill_pulls (const LbPass *pass, LbShape *shape);

/* v and a of all nodes from their positions. */
void lb_pass_rates (LbPass *pass);

/* ---- pass_take.c ---- */

/* Takes the computed moves and changes of tension: what the bed carries, or a line that goes slack,
 * ends where its own law and all the rest of the rig agree. */
void lb_pass_take (LbPass *pass);

/* ---- pass_loads.c ---- */

/* Force with which the bed carries a node, N, that has sunk in by `sunk` m and sinks at `sinking`
 * m/s, and how it changes with both. */
typedef struct
{
  double force, by_sunk, by_sinking;
} LbPassBedForce;

LbPassBedForce lb_pass_bed_force (const LbTree *tree, double sunk, double sinking);

/* Adds what body and bed exert on a node, and its own inertia, to `force` and, unless NULL, to
 * `matrix`. */
void lb_pass_load_node (const LbPass *pass, LbPassNode *node, double *force, double *matrix);
