/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "angle_scale.h"

#include <gsl/gsl_interp.h>

#include "plan_run.h"

#define N_LOOKS 25           /* speeds that are looked at first */
#define FASTEST 5.0          /* m/s */
#define SPEED_TOLERANCE 1e-5 /* m/s */
#define LEAST_POINTS 4

/* The boat at one speed. */
typedef struct
{
  double speed, angle, height;
  bool solved, on_bed;
} Look;

typedef struct
{
  LbPlanRun *run;
  LbSetup setup;
  double highest;
  double n_solves;
} Maker;

/* About as many solves as one scale takes. */
#define USUAL_SOLVES (N_LOOKS + LB_ANGLE_SCALE_POINTS + 36)

static Look
look_at (Maker *maker, double speed)
{
  LbPlanAnswer answer;
  Look look = { .speed = speed };

  maker->run->done = fmin (maker->n_solves++ / USUAL_SOLVES, 1);
  maker->setup.boat.speed_over_ground = speed;
  lb_plan_run_solve (maker->run, &maker->setup, &answer);
  look.solved = !lb_status_is_failure (answer.status);
  if (look.solved)
    {
      look.angle = answer.readings.wire_angle;
      look.height = answer.readings.weight.height;
      look.on_bed = answer.readings.weight.on_bed;
    }
  return look;
}

/* ---- Where the scale begins and ends ---- */

static bool
is_off_bed (const Maker *maker, const Look *look)
{
  return look->solved && !look->on_bed;
}

static bool
is_high_enough (const Maker *maker, const Look *look)
{
  return look->solved && !look->on_bed && look->height >= maker->highest;
}

/* Between a look that passes and one that does not, halves the way; returns the one that passes. */
static Look
find_turn (Maker *maker, bool (*passes) (const Maker *, const Look *), Look fails, Look yes)
{
  while (fabs (yes.speed - fails.speed) > SPEED_TOLERANCE)
    {
      Look look = look_at (maker, 0.5 * (yes.speed + fails.speed));

      if (passes (maker, &look))
        yes = look;
      else
        fails = look;
    }
  return yes;
}

/* Looks at faster and faster speeds, closer together while they are slow, until the weight is high
 * enough. Returns how many there are. */
static size_t
look_around (Maker *maker, Look *looks)
{
  for (size_t i = 0; i < N_LOOKS; i++)
    {
      double share = (double) i / (N_LOOKS - 1);

      looks[i] = look_at (maker, FASTEST * share * share);
      if (is_high_enough (maker, &looks[i]))
        return i + 1;
    }
  return N_LOOKS;
}

/* The slowest and the fastest speed of the scale; false when there is none. */
static bool
find_ends (Maker *maker, LbAngleScale *scale, Look *first, Look *last)
{
  Look looks[N_LOOKS];
  size_t start = 0, end, n = look_around (maker, looks);

  while (start < n && !is_off_bed (maker, &looks[start]))
    start++;
  if (start == n || (start == 0 && is_high_enough (maker, &looks[0])))
    return false;
  end = start;
  while (end + 1 < n && is_off_bed (maker, &looks[end + 1]))
    end++;
  *first = looks[start];
  *last = looks[end];
  if (start > 0)
    {
      scale->touches_below = looks[start - 1].solved;
      *first = find_turn (maker, is_off_bed, looks[start - 1], looks[start]);
    }
  if (is_high_enough (maker, last))
    {
      scale->goes_on = true;
      *last = find_turn (maker, is_high_enough, end > start ? looks[end - 1] : *first, *last);
    }
  return last->speed > first->speed;
}

/* ---- The points ---- */

/* Adds a look, unless the scale ends before it as the two do not rise together. */
static bool
add_point (LbAngleScale *scale, const Look *look)
{
  size_t n = scale->n;

  if (!look->solved
      || (n > 0 && !(look->angle > scale->angle[n - 1] && look->height > scale->height[n - 1])))
    return false;
  scale->angle[n] = look->angle;
  scale->height[n] = look->height;
  scale->speed[n] = look->speed;
  scale->n++;
  return true;
}

static void
add_points (Maker *maker, LbAngleScale *scale, Look first, Look last)
{
  double step = (last.speed - first.speed) / (LB_ANGLE_SCALE_POINTS - 1);
  bool whole = add_point (scale, &first);

  for (int i = 1; i < LB_ANGLE_SCALE_POINTS - 1 && whole; i++)
    {
      Look look = look_at (maker, first.speed + i * step);

      whole = add_point (scale, &look);
    }
  whole = whole && add_point (scale, &last);
  scale->goes_on = scale->goes_on && whole;
  if (scale->n < LEAST_POINTS)
    scale->n = 0;
}

LbStatus
lb_angle_scale_compute (const LbSetup *setup,
                        double line_out,
                        double highest,
                        const LbPlanTask *task,
                        LbAngleScale *scale)
{
  LbPlanRun run;
  Maker maker = { .run = &run, .setup = *setup, .highest = highest };
  Look first, last;

  *scale = (LbAngleScale){ 0 };
  if (lb_plan_run_start (&run, task) != LB_STATUS_OK)
    return LB_STATUS_OUT_OF_MEMORY;
  maker.setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
  if (find_ends (&maker, scale, &first, &last))
    add_points (&maker, scale, first, last);
  lb_plan_run_end (&run);
  if (run.fault != LB_STATUS_OK)
    scale->n = 0;
  return run.fault;
}

/* ---- Reading it ---- */

static double
interpolate (const double *x, const double *y, size_t n, double value)
{
  gsl_interp *interp;
  double result = LB_UNSET;

  if (n < LEAST_POINTS || !(value >= x[0] && value <= x[n - 1]))
    return LB_UNSET;
  interp = gsl_interp_alloc (gsl_interp_steffen, n);
  if (interp == NULL)
    return LB_UNSET;
  if (gsl_interp_init (interp, x, y, n) == 0)
    result = gsl_interp_eval (interp, x, y, value, NULL);
  gsl_interp_free (interp);
  return result;
}

double
lb_angle_scale_height (const LbAngleScale *scale, double angle)
{
  return interpolate (scale->angle, scale->height, scale->n, angle);
}

double
lb_angle_scale_angle (const LbAngleScale *scale, double height)
{
  return interpolate (scale->height, scale->angle, scale->n, height);
}
