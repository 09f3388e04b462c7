/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How fast the steady run is: warm and cold, how it grows, a map in two threads, and the same
 * problem by two other ways in the same run. Prints; asserts nothing about time.
 *
 *     meson test -C build --benchmark steady
 *
 * Build with -Dbuildtype=release for figures to keep. One-thread times are CPU time of the thread,
 * so that other work on the machine disturbs little; the map is wall time. */
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "oracle.h"
#include "steady.h"
#include "yardstick.h"

#define SLIDER_STEPS 160
#define ROUNDS 8
#define MAP_SIZE 200
#define N_SIZES 5

static const size_t sizes[N_SIZES] = { 50, 100, 200, 400, 1600 };

static double
seconds (clockid_t clock)
{
  struct timespec t;

  clock_gettime (clock, &t);
  return (double) t.tv_sec + 1e-9 * (double) t.tv_nsec;
}

static int
compare_times (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
median (double *times, size_t n)
{
  qsort (times, n, sizeof *times, compare_times);
  return times[n / 2];
}

static void
give_up (const char *what)
{
  fprintf (stderr, "bench-steady: %s\n", what);
  exit (1);
}

/* The k-th setting of a slider that moves the current from end to end in steps of 1 cm/s. */
static LbSetup
slider_setup (size_t k, bool held)
{
  LbSetup setup = lb_setup_default ();

  setup.river.surface_current = 0.3 + 0.01 * (double) k;
  if (!held)
    setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5 };
  return setup;
}

/* ---- The solver itself ---- */

typedef struct
{
  double median;     /* s */
  double iterations; /* mean */
  size_t segments;
} Timing;

static Timing
time_slider (size_t segments, bool held, bool cold)
{
  static double times[SLIDER_STEPS * ROUNDS];
  LbSteady *steady = lb_steady_new ();
  LbSteadyOptions options = { .segments = segments, .cold = cold };
  Timing timing = { 0 };
  size_t n = 0;

  for (size_t round = 0; round < ROUNDS; round++)
    for (size_t k = 0; k < SLIDER_STEPS; k++)
      {
        LbSetup setup = slider_setup (round % 2 == 0 ? k : SLIDER_STEPS - 1 - k, held);
        double start = seconds (CLOCK_THREAD_CPUTIME_ID);
        if (lb_status_is_failure (lb_steady_solve (steady, &setup, &options)))
          give_up ("a solve failed");
        times[n++] = seconds (CLOCK_THREAD_CPUTIME_ID) - start;
        timing.iterations += (double) lb_steady_statistics (steady).iterations;
      }
  timing.segments = lb_steady_statistics (steady).segments;
  timing.iterations /= (double) n;
  timing.median = median (times, n);
  lb_steady_free (steady);
  return timing;
}

static void
print_sizes (bool held)
{
  double first = 0;

  printf ("\n%s\n%9s %9s %12s %12s %12s %12s %14s\n",
          held ? "Weight held 0.1 m above the bed" : "Line out given", "asked", "segments",
          "warm us", "iterations", "cold us", "iterations", "warm/segment");
  for (size_t i = 0; i < N_SIZES; i++)
    {
      Timing warm = time_slider (sizes[i], held, false);
      Timing cold = time_slider (sizes[i], held, true);
      double each = warm.median / (double) warm.segments;
      if (i == 0)
        first = each;
      printf ("%9zu %9zu %12.1f %12.2f %12.1f %12.2f %9.3f us (%.2f)\n", sizes[i], warm.segments,
              1e6 * warm.median, warm.iterations, 1e6 * cold.median, cold.iterations, 1e6 * each,
              each / first);
    }
}

static void
print_fine (void)
{
  LbSteady *steady = lb_steady_new ();
  double times[SLIDER_STEPS];

  for (size_t k = 0; k < SLIDER_STEPS; k++)
    {
      LbSetup setup = slider_setup (k, true);
      double start = seconds (CLOCK_THREAD_CPUTIME_ID);
      if (lb_status_is_failure (
              lb_steady_solve (steady, &setup, &(LbSteadyOptions){ .fine = true })))
        give_up ("a fine solve failed");
      times[k] = seconds (CLOCK_THREAD_CPUTIME_ID) - start;
    }
  printf ("\nFine mesh, extrapolated: %.2f ms\n", 1e3 * median (times, SLIDER_STEPS));
  lb_steady_free (steady);
}

/* ---- A map ---- */

typedef struct
{
  size_t first, step;
  size_t solved;
} MapShare;

/* Every `step`-th row of a map of weight against current, each row from end to end. */
static void *
map_rows (void *data)
{
  MapShare *share = data;
  LbSteady *steady = lb_steady_new ();

  for (size_t row = share->first; row < MAP_SIZE; row += share->step)
    for (size_t k = 0; k < MAP_SIZE; k++)
      {
        size_t column = row / share->step % 2 == 0 ? k : MAP_SIZE - 1 - k;
        LbSetup setup = lb_setup_default ();
        setup.rig.weight.mass = 0.3 + 1.7 * (double) row / (MAP_SIZE - 1);
        setup.river.surface_current = 0.2 + 1.8 * (double) column / (MAP_SIZE - 1);
        share->solved += !lb_status_is_failure (lb_steady_solve (steady, &setup, NULL));
      }
  lb_steady_free (steady);
  return NULL;
}

static void
print_map (void)
{
  MapShare shares[2] = { { 0, 2, 0 }, { 1, 2, 0 } };
  pthread_t thread;
  double start = seconds (CLOCK_MONOTONIC), taken;

  if (pthread_create (&thread, NULL, map_rows, &shares[1]) != 0)
    give_up ("no second thread");
  map_rows (&shares[0]);
  pthread_join (thread, NULL);
  taken = seconds (CLOCK_MONOTONIC) - start;
  printf ("\nMap of %d x %d, weight 0.3 to 2 kg against current 0.2 to 2 m/s, two threads:\n"
          "%.2f s wall, %.1f us each per thread, %zu of %d solved\n",
          MAP_SIZE, MAP_SIZE, taken, 2e6 * taken / (MAP_SIZE * MAP_SIZE),
          shares[0].solved + shares[1].solved, MAP_SIZE * MAP_SIZE);
}

/* ---- Other ways, on the same slider with the line out given ---- */

static void
print_dense (size_t segments, size_t steps)
{
  double times[SLIDER_STEPS], own[SLIDER_STEPS], worst = 0;
  LbSteady *steady = lb_steady_new ();
  LbSteadyOptions options = { .segments = segments };
  LbShape shape;

  lb_shape_init (&shape);
  for (size_t k = 0; k <= steps; k++)
    {
      LbSetup setup = slider_setup (60 + k, false);
      double start = seconds (CLOCK_THREAD_CPUTIME_ID);
      if (lb_status_is_failure (lb_steady_solve (steady, &setup, &options)))
        give_up ("a solve failed");
      double taken = seconds (CLOCK_THREAD_CPUTIME_ID) - start;
      const LbShape *answer = lb_steady_shape (steady);
      if (k == 0)
        {
          if (lb_shape_copy (&shape, answer) != LB_STATUS_OK)
            give_up ("no memory");
          continue;
        }
      own[k - 1] = taken;
      start = seconds (CLOCK_THREAD_CPUTIME_ID);
      if (yardstick_solve (&setup, &shape) == 0)
        give_up ("the dense solver found no answer");
      times[k - 1] = seconds (CLOCK_THREAD_CPUTIME_ID) - start;
      for (size_t i = 0; i < shape.n_nodes; i++)
        worst = fmax (
            worst, lb_vec3_norm (lb_vec3_sub (shape.nodes[i].position, answer->nodes[i].position)));
    }
  double slow = median (times, steps), fast = median (own, steps);
  printf ("%3zu segments by GSL's hybrid solver, dense: %10.1f us, %7.1f times the tree's %.1f us "
          "(apart by %.1e m)\n",
          shape.n_nodes - 1, 1e6 * slow, slow / fast, 1e6 * fast, worst);
  lb_shape_clear (&shape);
  lb_steady_free (steady);
}

static void
print_shooting (void)
{
  double times[SLIDER_STEPS], own[SLIDER_STEPS], worst = 0;
  LbSteady *steady = lb_steady_new ();
  OracleAnswer last, answer;
  size_t n = 0;

  for (size_t k = 0; k < SLIDER_STEPS; k++)
    {
      LbSetup setup = slider_setup (k, false);
      double start = seconds (CLOCK_THREAD_CPUTIME_ID);
      if (lb_status_is_failure (lb_steady_solve (steady, &setup, NULL)))
        give_up ("a solve failed");
      own[k] = seconds (CLOCK_THREAD_CPUTIME_ID) - start;
      start = seconds (CLOCK_THREAD_CPUTIME_ID);
      bool found = oracle_solve (&setup, n == 0 ? NULL : &last, &answer);
      times[n] = seconds (CLOCK_THREAD_CPUTIME_ID) - start;
      if (!found || answer.lowest <= 0)
        continue;
      n++;
      last = answer;
      const LbShape *shape = lb_steady_shape (steady);
      LbVec3 p = shape->nodes[shape->weight].position;
      worst = fmax (worst, hypot (p.x - answer.weight[0], p.z - answer.weight[1]));
    }
  if (n == 0)
    give_up ("shooting found no answer");
  double slow = median (times, n), fast = median (own, SLIDER_STEPS);
  printf (
      "by GSL shooting (to 1e-13, so 1e7 times finer):   %10.1f us, %7.1f times the tree's %.1f "
      "us (weight apart by %.1e m, the mesh's error; %zu of %d settings, clear of the bed)\n",
      1e6 * slow, slow / fast, 1e6 * fast, worst, n, SLIDER_STEPS);
  lb_steady_free (steady);
}

int
main (void)
{
  printf ("The usual rig, current from 0.3 to 1.9 m/s in steps of 1 cm/s; medians.\n");
  print_sizes (true);
  print_sizes (false);
  print_fine ();
  print_map ();
  printf ("\nThe same problem by other ways, line out given, each from its neighbour's answer:\n");
  print_dense (20, 20);
  print_dense (50, 20);
  print_dense (100, 6);
  print_shooting ();
  return 0;
}
