/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a card's settings table, speed window and wire-angle scale take. Prints; asserts nothing
 * about time.
 *
 *     meson test -C build --benchmark plan
 */
#include <stdio.h>
#include <time.h>

#include "angle_scale.h"
#include "line_table.h"
#include "speed_window.h"
#include "steady.h"

#define ROUNDS 10

typedef struct
{
  LbSetup setup;
  double line_out;
  size_t n_solves;
} Bench;

static bool
count_cb (void *data, double done)
{
  ((Bench *) data)->n_solves++;
  return false;
}

static LbStatus
table (Bench *bench, const LbPlanTask *task)
{
  static const double weights[] = { 0.567, 0.7938, 0.9072 };
  static const double depths[] = { 4.8768, 5.4864, 6.096, 6.7056, 7.3152 };
  static const double currents[] = { 0.67056, 0.89408, 1.1176, 1.34112, 1.56464 };
  const LbLineTableAxes axes = { weights, 3, depths, 5, currents, 5, bench->setup.rig.line_out };
  static LbLineCell cells[75];
  static LbRunWindow limits[15];

  return lb_line_table_compute (&bench->setup, &axes, task, cells, limits);
}

static LbStatus
window (Bench *bench, const LbPlanTask *task)
{
  LbRunWindow answer;

  return lb_speed_window_compute (&bench->setup, bench->line_out, task, &answer);
}

static LbStatus
scale (Bench *bench, const LbPlanTask *task)
{
  LbAngleScale answer;

  return lb_angle_scale_compute (&bench->setup, bench->line_out, 0.9, task, &answer);
}

static double
now (void)
{
  struct timespec t;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &t);
  return (double) t.tv_sec + 1e-9 * (double) t.tv_nsec;
}

static void
report (Bench *bench, const char *name, LbStatus (*run) (Bench *, const LbPlanTask *))
{
  const LbPlanTask task = { count_cb, bench };
  double best = INFINITY;

  for (int i = 0; i < ROUNDS; i++)
    {
      double start = now ();

      bench->n_solves = 0;
      if (run (bench, &task) != LB_STATUS_OK)
        printf ("%s: failed\n", name);
      best = fmin (best, now () - start);
    }
  printf ("%-34s %6.1f ms  %5zu solves\n", name, 1e3 * best, bench->n_solves);
}

int
main (void)
{
  Bench bench = { .setup = lb_setup_default () };
  LbSteady *steady = lb_steady_new ();

  if (steady == NULL || lb_steady_solve (steady, &bench.setup, NULL) != LB_STATUS_OK)
    return 1;
  bench.line_out = lb_steady_shape (steady)->line_out;
  lb_steady_free (steady);
  report (&bench, "table, 3 weights x 5 x 5, limits", table);
  report (&bench, "speed window", window);
  report (&bench, "wire-angle scale", scale);
  return 0;
}
