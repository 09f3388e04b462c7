/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steady run: the shape a rig settles into while the boat holds its speed.
 *
 * Over an uneven bed this is the rig held still against the bed as it is under it now. */
#pragma once

#include "shape.h"

/* Opaque solver: keeps its memory and its last answer, from which the next solve starts. One
 * solver belongs to one thread at a time. */
typedef struct LbSteady LbSteady;

/* Asked after every Newton step, with how many there have been in this solve: true to give up. */
typedef bool (*LbSteadyCancel) (void *data, size_t iterations);

typedef struct
{
  size_t segments;       /* of the whole rig, about; 0: LB_STEADY_DEFAULT_SEGMENTS */
  bool fine;             /* refine and extrapolate: about 1e-6 m, a hundred times slower; starts
                            cold */
  bool cold;             /* do not start from the last answer */
  size_t max_iterations; /* Newton steps in all; 0: LB_STEADY_DEFAULT_ITERATIONS */
  LbSteadyCancel cancel; /* or NULL */
  void *cancel_data;
} LbSteadyOptions;

#define LB_STEADY_DEFAULT_SEGMENTS 50
#define LB_STEADY_DEFAULT_ITERATIONS 200000
#define LB_STEADY_LONGEST_LINE 400.0 /* m; the solver lets out no more */
#define LB_STEADY_SHORTEST_LINE 0.05 /* m */

typedef struct
{
  size_t segments;   /* of the mesh that was used; of the finest when fine */
  size_t iterations; /* Newton steps of the last solve */
  bool warm;         /* the answer came straight from the last one */
  double residual;   /* N, largest force left over at any node */

  /* m above the bed: the weight on the two sides of the leap that LB_STATUS_HEIGHT_LEAPS is about;
   * unset with any other status, and when they were not found */
  double leap_high, leap_low;
} LbSteadyStatistics;

/* A new solver, or NULL when memory is out. Free it with lb_steady_free(). */
LbSteady *lb_steady_new (void);

void lb_steady_free (LbSteady *steady); /* NULL is fine */

/* Solves the steady run of `setup`. `options` may be NULL for the defaults. On a failure (a status
 * below zero) lb_steady_shape() must not be used. */
LbStatus lb_steady_solve (LbSteady *steady, const LbSetup *setup, const LbSteadyOptions *options);

/* The answer of the last solve, unless that failed: then it is of no use, and that of the solve
 * before is gone too. Owned by the solver, valid until its next call. */
const LbShape *lb_steady_shape (const LbSteady *steady);

LbSteadyStatistics lb_steady_statistics (const LbSteady *steady);
