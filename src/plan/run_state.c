/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run_state.h"

static LbRunState
state_of_lures (const LbReadings *readings)
{
  bool above = false, below = false;

  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      LbBandState band = readings->lures[i].band;

      above = above || band == LB_BAND_ABOVE;
      below = below || band == LB_BAND_BELOW || band == LB_BAND_ON_BED;
    }
  if (above)
    return below ? LB_RUN_SPLIT : LB_RUN_ABOVE_BAND;
  return below ? LB_RUN_BELOW_BAND : LB_RUN_IN_BAND;
}

LbRunState
lb_run_state (const LbReadings *readings, LbStatus status)
{
  if (lb_status_is_failure (status))
    return LB_RUN_NOT_SOLVED;
  if (status == LB_STATUS_LINE_AT_LONGEST || status == LB_STATUS_HEIGHT_LEAPS)
    return LB_RUN_TOO_LIGHT;
  if (status == LB_STATUS_LINE_AT_SHORTEST)
    return LB_RUN_TOO_SHALLOW;
  if (readings->wire_angle > LB_RUN_STEEPEST)
    return LB_RUN_BLOWS_BACK;
  return state_of_lures (readings);
}

bool
lb_run_state_has_answer (LbRunState state)
{
  return state != LB_RUN_TOO_LIGHT && state != LB_RUN_TOO_SHALLOW && state != LB_RUN_NOT_SOLVED;
}
