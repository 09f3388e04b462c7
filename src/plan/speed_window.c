/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "speed_window.h"

#include "plan_run.h"

/* Speeds lie close together around the setup's own, m/s. */
#define FIRST_STEP 0.02
#define STEP_GROWTH 1.15
#define BEYOND_OWN 1.5
#define FASTEST_BOAT 5.0 /* m/s; no boat that the program takes is faster */

/* A weight nearer to the bed than this is meant to touch it, m. */
#define CLEAR 0.01

typedef struct
{
  LbPlanRun *run;
  const LbSetup *own;
  LbSetup setup;
  bool clear; /* the weight hangs clear of the bed, and should */
  double n_solves;
} Finder;

/* About as many solves as one window takes. */
#define USUAL_SOLVES 100

static double
margin_cb (void *data, double speed, LbRunState *state)
{
  Finder *finder = data;
  LbPlanAnswer answer;

  finder->run->done = fmin (finder->n_solves++ / USUAL_SOLVES, 1);
  finder->setup.boat.speed_over_ground = speed;
  lb_plan_run_solve (finder->run, &finder->setup, &answer);
  *state = answer.state;
  if (finder->clear && lb_run_state_has_answer (answer.state) && answer.readings.weight.on_bed)
    {
      *state = LB_RUN_DRAGS;
      return -CLEAR;
    }
  return lb_plan_margin (&finder->setup, &answer);
}

static void
home_cb (void *data)
{
  Finder *finder = data;
  LbPlanAnswer answer;

  finder->run->done = fmin (finder->n_solves++ / USUAL_SOLVES, 1);
  lb_plan_run_solve (finder->run, finder->own, &answer);
  finder->clear = lb_run_state_has_answer (answer.state) && !answer.readings.weight.on_bed
                  && answer.readings.weight.height > CLEAR;
}

/* Rising speeds from rest to `fastest`, `own` among them; returns how many. */
static size_t
spread_speeds (double own, double fastest, double *speeds)
{
  size_t n = 0, n_slower = 0;
  double step = FIRST_STEP;

  /* Slower and slower, and then the other way round. */
  for (double speed = own; n < LB_WINDOW_MOST_VALUES / 2; speed -= step, step *= STEP_GROWTH)
    {
      speeds[n++] = fmax (speed, 0);
      if (!(speed > 0))
        break;
    }
  n_slower = n;
  for (size_t i = 0; i < n_slower / 2; i++)
    {
      double speed = speeds[i];

      speeds[i] = speeds[n_slower - 1 - i];
      speeds[n_slower - 1 - i] = speed;
    }
  step = FIRST_STEP;
  for (double speed = own + step; n < LB_WINDOW_MOST_VALUES && speeds[n - 1] < fastest;
       step *= STEP_GROWTH, speed += step)
    speeds[n++] = fmin (speed, fastest);
  return n;
}

LbStatus
lb_speed_window_compute (const LbSetup *setup,
                         double line_out,
                         const LbPlanTask *task,
                         LbRunWindow *window)
{
  double own = setup->boat.speed_over_ground, speeds[LB_WINDOW_MOST_VALUES];
  double fastest = fmin (fmax (LB_SPEED_WINDOW_FASTEST, BEYOND_OWN * own), FASTEST_BOAT);
  LbPlanRun run;
  Finder finder = { .run = &run, .own = setup, .setup = *setup };
  size_t n = spread_speeds (own, fastest, speeds);

  if (lb_plan_run_start (&run, task) != LB_STATUS_OK)
    return LB_STATUS_OUT_OF_MEMORY;
  finder.setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
  *window = lb_run_window_find (margin_cb, home_cb, &finder, speeds, n, own);
  lb_plan_run_end (&run);
  return run.fault;
}
