/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How much line must be out, and at what angle the wire then leans, by weight, depth and current:
 * what is read off a card when the river is not as it was at the kitchen table. */
#pragma once

#include "plan_task.h"
#include "run_window.h"

#define LB_LINE_TABLE_MOST_VALUES 24 /* currents */

typedef struct
{
  const double *weights; /* kg; shape and density are those of the setup's weight */
  size_t n_weights;
  const double *depths; /* m, of an even bed; rising */
  size_t n_depths;
  const double *currents; /* m/s at the surface, over the ground; rising */
  size_t n_currents;
  LbLineOut hold; /* how the weight is held: above the bed or touching */
} LbLineTableAxes;

typedef struct
{
  LbRunState state;
  LbStatus status;
  double line_out;     /* m; unset where there is no rig (lb_run_state_has_answer()) */
  double wire_angle;   /* rad from vertical; unset the same */
  double hand_tension; /* N; unset the same */
} LbLineCell;

/* How a setup's weight is held in a table: as the setup says; where line out is given, at the
 * height that the weight has in `readings`, or touching when it is on the bed. */
LbLineOut lb_line_table_hold (const LbSetup *setup, const LbReadings *readings);

/* Fills `cells`, which has room for one of every weight, depth and current: that of weight w, depth
 * d and current c is cells[(w * n_depths + d) * n_currents + c]. `limits` has room for one of every
 * weight and depth: between which currents the lures stay in the band, looked for from still water
 * to half as fast again as the fastest current of the table. Every river is even and `setup`'s
 * otherwise. `task` may be NULL.
 *
 * Returns LB_STATUS_OK, LB_STATUS_CANCELLED, LB_STATUS_OUT_OF_MEMORY, or LB_STATUS_BAD_SETUP when
 * there are more currents than LB_LINE_TABLE_MOST_VALUES; on a failure nothing that was filled in
 * may be used. A cell that cannot be solved says so and is no failure. */
LbStatus lb_line_table_compute (const LbSetup *setup,
                                const LbLineTableAxes *axes,
                                const LbPlanTask *task,
                                LbLineCell *cells,
                                LbRunWindow *limits);
