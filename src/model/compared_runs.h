/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The runs of a comparison as plain values, for drawings: no objects, nothing to ask. */
#pragma once

#include "readings.h"
#include "setup.h"
#include "shape.h"
#include "status.h"

#define LB_COMPARED_RUNS_MOST 4

typedef struct
{
  const char *name;           /* UTF-8, one line */
  const char *words;          /* how it runs, or why there is no answer */
  const LbSetup *setup;       /* what was solved; the document's where the variant makes no rig */
  const LbShape *shape;       /* NULL: no answer */
  const LbReadings *readings; /* NULL: no answer */
  LbStatus status;
} LbComparedRun;

typedef struct
{
  size_t n;
  LbComparedRun runs[LB_COMPARED_RUNS_MOST];
  const LbSetup
      *ground;        /* the river to draw: of the first run with an answer, else the document's */
  const char *remark; /* what must be said of runs before they are believed; NULL: nothing */
} LbComparedRuns;

/* Frees runs of lb_compared_runs_new() (comparison_words.h); NULL is fine. */
void lb_compared_runs_free (LbComparedRuns *runs);
