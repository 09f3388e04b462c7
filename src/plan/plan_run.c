/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan_run.h"

/* The margin of what has no answer, m, and the most of what is in no band. */
#define NO_MARGIN -1.0
#define OUT_BY_A_HAIR -1e-12

LbStatus
lb_plan_run_start (LbPlanRun *run, const LbPlanTask *task)
{
  *run = (LbPlanRun){ .steady = lb_steady_new (), .task = task };
  return run->steady ? LB_STATUS_OK : LB_STATUS_OUT_OF_MEMORY;
}

void
lb_plan_run_end (LbPlanRun *run)
{
  lb_steady_free (run->steady);
  run->steady = NULL;
}

/* Whether the caller wants it no more. */
static bool
give_up (LbPlanRun *run)
{
  const LbPlanTask *task = run->task;

  if (task && task->progress && task->progress (task->data, run->done))
    run->fault = LB_STATUS_CANCELLED;
  return run->fault != LB_STATUS_OK;
}

#define STEPS_BETWEEN_LOOKS 64

static bool
cancel_cb (void *data, size_t iterations)
{
  return iterations % STEPS_BETWEEN_LOOKS == 0 && give_up (data);
}

void
lb_plan_run_solve (LbPlanRun *run, const LbSetup *setup, LbPlanAnswer *answer)
{
  const LbSteadyOptions options = { .cancel = cancel_cb, .cancel_data = run };

  *answer = (LbPlanAnswer){ .status = LB_STATUS_CANCELLED, .state = LB_RUN_NOT_SOLVED };
  if (run->fault != LB_STATUS_OK)
    return;
  answer->status = lb_steady_solve (run->steady, setup, &options);
  if (!lb_status_is_failure (answer->status))
    lb_readings_compute (&answer->readings, setup, lb_steady_shape (run->steady));
  answer->state = lb_run_state (&answer->readings, answer->status);
  if (answer->status == LB_STATUS_OUT_OF_MEMORY)
    run->fault = LB_STATUS_OUT_OF_MEMORY;
  give_up (run);
}

double
lb_plan_margin (const LbSetup *setup, const LbPlanAnswer *answer)
{
  const LbReadings *readings = &answer->readings;
  double margin;

  if (!lb_run_state_has_answer (answer->state))
    return NO_MARGIN;
  margin = LB_RUN_STEEPEST - readings->wire_angle;
  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      double height = readings->lures[i].at.height;

      margin = fmin (margin, fmin (height - setup->band.low, setup->band.high - height));
    }
  /* Where rounding and the bed leave a doubt the state decides. */
  if (answer->state == LB_RUN_IN_BAND)
    return fmax (margin, -OUT_BY_A_HAIR);
  return fmin (margin, OUT_BY_A_HAIR);
}
