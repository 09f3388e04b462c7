/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Speed of the pass, one thread: simulated seconds per second at 50 to 400 segments in steps of 5
 * ms, in the plane and in space, and the same rig by CVODE of SUNDIALS in the same run (the oracle
 * of the tests, at two tolerances, the closer of which it is held to there). The boat goes up and
 * down in speed all the time. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "pass-oracle.h"
#include "rigs.h"

/* Processor time, s, so that whatever else runs does not count. */
static double
now (void)
{
  struct timespec t;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &t);
  return (double) t.tv_sec + 1e-9 * (double) t.tv_nsec;
}

static LbPassPlan
up_and_down (void)
{
  LbPassPlan plan = { .course.n_points = 60 };

  for (size_t i = 0; i < plan.course.n_points; i++)
    plan.course.points[i] = (LbCoursePoint){ .time = (double) i, .speed = i % 2 == 0 ? 0.4 : 0.7 };
  return plan;
}

static void
fail (const char *what)
{
  fprintf (stderr, "%s failed\n", what);
  exit (1);
}

/* Simulated seconds per second. */
static double
speed_of_pass (size_t segments, bool spatial, double end, LbPassStatistics *statistics)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = up_and_down ();
  LbPassOptions options = { .segments = segments, .spatial = spatial };
  LbPass *pass = lb_pass_new ();

  if (lb_status_is_failure (lb_pass_start (pass, &setup, &plan, &options)))
    fail ("the start");
  double before = now ();
  if (lb_status_is_failure (lb_pass_advance (pass, end)))
    fail ("the pass");
  double speed = end / (now () - before);
  *statistics = lb_pass_statistics (pass);
  lb_pass_free (pass);
  return speed;
}

static double
speed_of_cvode (size_t segments, double tolerance, double end)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassPlan plan = up_and_down ();
  LbPassOptions options = { .segments = segments };
  LbPass *pass = lb_pass_new ();

  if (lb_status_is_failure (lb_pass_start (pass, &setup, &plan, &options)))
    fail ("the start");
  PassOracle *oracle = pass_oracle_new (lb_pass_shape (pass), &setup, &plan, tolerance);
  double before = now ();
  if (!pass_oracle_advance (oracle, end))
    fail ("CVODE");
  double speed = end / (now () - before);
  pass_oracle_free (oracle);
  lb_pass_free (pass);
  return speed;
}

int
main (void)
{
  static const size_t segments[] = { 50, 100, 200, 400 };
  static const double goal[] = { 600, 300, 0, 0 };

  printf ("simulated seconds per second of processor time, steps of 5 ms\n");
  printf ("segments  in the plane  in space   goal  iterations/step  CVODE at 1e-5, 1e-7\n");
  for (size_t i = 0; i < sizeof segments / sizeof segments[0]; i++)
    {
      LbPassStatistics statistics;
      double flat = speed_of_pass (segments[i], false, 50, &statistics);
      double space = speed_of_pass (segments[i], true, 50, &statistics);
      double loose = speed_of_cvode (segments[i], 1e-5, 2);
      double tight = speed_of_cvode (segments[i], 1e-7, 2);
      printf ("%8zu  %12.0f  %8.0f  ", statistics.segments, flat, space);
      if (goal[i] > 0)
        printf (" >= %3.0f", goal[i]);
      else
        printf ("       ");
      printf ("  %15.2f  %13.2f %5.2f\n",
              (double) statistics.iterations / (double) statistics.steps, loose, tight);
    }
  return 0;
}
