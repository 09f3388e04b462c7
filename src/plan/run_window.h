/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Between which values of one slider a rig stays in the band. */
#pragma once

#include "run_state.h"

/* Solves at `value` and returns by how much the rig stays in the band (finite, positive when it
 * does); `state` gets how it runs. */
typedef double (*LbWindowMargin) (void *data, double value, LbRunState *state);

typedef struct
{
  double low, high; /* in the slider's unit; both unset: nowhere */
  LbRunState below; /* how the rig runs just under `low`; LB_RUN_IN_BAND: that was not tried */
  LbRunState above; /* and just over `high`, the same */
} LbRunWindow;

#define LB_WINDOW_TOLERANCE 2e-4 /* m/s: how near to the truth the ends are */
#define LB_WINDOW_MOST_VALUES 64

/* A rig can run in two ways in the same water: a weight that drags stays on the bed by its friction
 * at a speed that would hold it clear of it. So what is asked for goes out from the rig as it runs
 * now: `home` solves that, so that the next answer starts from it. NULL: each answer is the only
 * one. */
typedef void (*LbWindowHome) (void *data);

/* Goes through the `n` rising `values` (2 to LB_WINDOW_MOST_VALUES), from `own` up and then from it
 * down, or from the first to the last where there is no `home`, and then finds the ends of the
 * stretch that holds `own`, or else of the widest. A stretch that goes on to the first
 * or the last value ends there. When no value is in the band, one between them is looked for where
 * the margin has a peak; a second narrow stretch beside one that was found is not. */
LbRunWindow lb_run_window_find (LbWindowMargin margin,
                                LbWindowHome home,
                                void *data,
                                const double *values,
                                size_t n,
                                double own);
