/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "speed_window.h"

#include "plan_run.h"

#define N_SPEEDS 24
#define BEYOND_OWN 1.5
#define FASTEST_BOAT 5.0 /* m/s; no boat that the program takes is faster */

typedef struct
{
  LbPlanRun *run;
  LbSetup setup;
  double n_solves;
} Finder;

/* About as many solves as one window takes. */
#define USUAL_SOLVES (N_SPEEDS + 20)

static double
margin_cb (void *data, double speed, LbRunState *state)
{
  Finder *finder = data;
  LbPlanAnswer answer;

  finder->run->done = fmin (finder->n_solves++ / USUAL_SOLVES, 1);
  finder->setup.boat.speed_over_ground = speed;
  lb_plan_run_solve (finder->run, &finder->setup, &answer);
  *state = answer.state;
  return lb_plan_margin (&finder->setup, &answer);
}

LbStatus
lb_speed_window_compute (const LbSetup *setup,
                         double line_out,
                         const LbPlanTask *task,
                         LbRunWindow *window)
{
  double own = setup->boat.speed_over_ground, speeds[N_SPEEDS + 1];
  double fastest = fmin (fmax (LB_SPEED_WINDOW_FASTEST, BEYOND_OWN * own), FASTEST_BOAT);
  LbPlanRun run;
  Finder finder = { .run = &run, .setup = *setup };
  size_t n = 0;

  if (lb_plan_run_start (&run, task) != LB_STATUS_OK)
    return LB_STATUS_OUT_OF_MEMORY;
  finder.setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
  for (int i = 0; i < N_SPEEDS; i++)
    {
      double speed = fastest * i / (N_SPEEDS - 1);

      /* The setup's own speed, so that its stretch is found however narrow. */
      if (own < speed && (n == 0 || speeds[n - 1] < own))
        speeds[n++] = own;
      speeds[n++] = speed;
    }
  *window = lb_run_window_find (margin_cb, &finder, speeds, n, own);
  lb_plan_run_end (&run);
  return run.fault;
}
