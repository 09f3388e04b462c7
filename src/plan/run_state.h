/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a rig runs, in one word. */
#pragma once

#include "readings.h"

typedef enum
{
  LB_RUN_IN_BAND,     /* every lure runs in the band */
  LB_RUN_ABOVE_BAND,  /* at least one lure runs above the band, none below */
  LB_RUN_BELOW_BAND,  /* at least one lure runs below the band or lies on the bed, none above */
  LB_RUN_SPLIT,       /* one lure runs above the band, another below */
  LB_RUN_BLOWS_BACK,  /* the wire leans back further than LB_RUN_STEEPEST, whatever the lures do */
  LB_RUN_TOO_LIGHT,   /* no line out holds the weight at its height */
  LB_RUN_TOO_SHALLOW, /* the shank alone reaches deeper than the weight should hang */
  LB_RUN_NOT_SOLVED,  /* no answer was found */
  LB_RUN_DRAGS,       /* the weight lies on the bed; only where that is asked for, never from
                         lb_run_state() */
} LbRunState;

/* Wire angle from vertical at the reel from which a rig counts as blown back, rad: 60 degrees,
 * where twice the depth is out. An estimate. */
#define LB_RUN_STEEPEST 1.0471975511965976

/* The state of a solved rig; `readings` is not looked at when `status` is a failure. A rig without
 * leaders counts as in the band while its weight holds. */
LbRunState lb_run_state (const LbReadings *readings, LbStatus status);

/* Whether there is a rig at all: line out and wire angle can be told. */
bool lb_run_state_has_answer (LbRunState state);
