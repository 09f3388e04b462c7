/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How slow and how fast the boat may go for the lures to stay in the band, with the line left as it
 * is. */
#pragma once

#include "plan_task.h"
#include "run_window.h"

#define LB_SPEED_WINDOW_FASTEST 2.5 /* m/s over the ground; twice a usual trolling speed */

/* Goes out from the rig as `setup` has it (see run_window.h): slower, until a weight that hangs
 * clear comes down on the bed (LB_RUN_DRAGS) or a lure leaves the band, and faster. A weight that
 * touches or drags already may go on doing so.
 *
 * Looks from rest over the ground up to LB_SPEED_WINDOW_FASTEST, or to half as fast again as the
 * setup's own speed if that is more (5 m/s at most), with `line_out` m of line. `window` gets the
 * answer; `task` may be NULL. Returns LB_STATUS_OK, LB_STATUS_CANCELLED or
 * LB_STATUS_OUT_OF_MEMORY. */
LbStatus lb_speed_window_compute (const LbSetup *setup,
                                  double line_out,
                                  const LbPlanTask *task,
                                  LbRunWindow *window);
