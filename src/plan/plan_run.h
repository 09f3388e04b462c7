/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Many solves with one warm solver. Internal to plan. */
#pragma once

#include "plan_task.h"
#include "run_state.h"
#include "steady.h"

typedef struct
{
  LbSteady *steady;
  const LbPlanTask *task; /* or NULL */
  double done;            /* 0 to 1, kept by whoever knows */
  LbStatus fault;         /* LB_STATUS_CANCELLED, LB_STATUS_OUT_OF_MEMORY, or LB_STATUS_OK */
} LbPlanRun;

/* One solved setup. */
typedef struct
{
  LbStatus status;
  LbRunState state;
  LbReadings readings; /* of no use when status is a failure */
} LbPlanAnswer;

/* LB_STATUS_OK, or LB_STATUS_OUT_OF_MEMORY with nothing to end. */
LbStatus lb_plan_run_start (LbPlanRun *run, const LbPlanTask *task);
void lb_plan_run_end (LbPlanRun *run);

/* Solves, unless a fault came before; tells the task. After a fault the state is
 * LB_RUN_NOT_SOLVED. */
void lb_plan_run_solve (LbPlanRun *run, const LbSetup *setup, LbPlanAnswer *answer);

/* By how much a rig stays in the band, m: positive just when its state is LB_RUN_IN_BAND. The least
 * distance of a lure from the nearer edge of the band, and what the wire could still lean back, a
 * radian for a metre. Finite. */
double lb_plan_margin (const LbSetup *setup, const LbPlanAnswer *answer);
