/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "angle_scale.h"

#include <gsl/gsl_interp.h>

#include "plan_run.h"

#define LOOK_STEP 0.05 /* m/s at first, growing by a fifth each time */
#define LOOK_GROWTH 1.2
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
  const LbSetup *own;
  LbSetup setup;
  double highest;
  double n_solves;
} Maker;

/* About as many solves as one scale takes. */
#define USUAL_SOLVES (LB_ANGLE_SCALE_POINTS + 90)

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

/* Back to the rig as it runs now: a weight that hangs clear stays so as the boat slows down, while
 * one that drags is held down by its friction. */
static void
go_home (Maker *maker)
{
  LbPlanAnswer answer;

  maker->run->done = fmin (maker->n_solves++ / USUAL_SOLVES, 1);
  lb_plan_run_solve (maker->run, maker->own, &answer);
}

/* ---- Where the scale begins and ends ---- */

static bool
is_off_bed (const Look *look)
{
  return look->solved && !look->on_bed;
}

static bool
is_high_enough (const Maker *maker, const Look *look)
{
  return look->solved && !look->on_bed && look->height >= maker->highest;
}

/* Between a look that is off the bed and one that is on it or not solved, halves the way. */
static Look
find_touch (Maker *maker, Look on_bed, Look clear)
{
  go_home (maker);
  look_at (maker, clear.speed);
  while (fabs (clear.speed - on_bed.speed) > SPEED_TOLERANCE)
    {
      Look look = look_at (maker, 0.5 * (clear.speed + on_bed.speed));

      if (is_off_bed (&look))
        clear = look;
      else
        {
          on_bed = look;
          go_home (maker);
          look_at (maker, clear.speed);
        }
    }
  return clear;
}

/* Between a look that is too low and one that is high enough. */
static Look
find_top (Maker *maker, Look low, Look high)
{
  while (fabs (high.speed - low.speed) > SPEED_TOLERANCE)
    {
      Look look = look_at (maker, 0.5 * (high.speed + low.speed));

      if (is_high_enough (maker, &look))
        high = look;
      else
        low = look;
    }
  return high;
}

/* Faster and faster from `now`, until the weight is high enough or no longer solved; a weight on
 * the bed comes off it first. `lowest` gets the first look that is off the bed, with the look
 * before it in `before`; the last one is returned. */
static Look
look_faster (Maker *maker, Look now, Look *before, Look *lowest)
{
  Look last = now, previous = now;
  double step = LOOK_STEP;

  *lowest = *before = now;
  while (!is_high_enough (maker, &last) && last.speed < FASTEST)
    {
      Look next = look_at (maker, fmin (last.speed + step, FASTEST));

      step *= LOOK_GROWTH;
      if (!next.solved || (is_off_bed (&last) && !is_off_bed (&next)))
        break;
      previous = last;
      last = next;
      if (!is_off_bed (lowest) && is_off_bed (&last))
        {
          *before = previous;
          *lowest = last;
        }
    }
  return is_high_enough (maker, &last) && last.speed > previous.speed
             ? find_top (maker, previous, last)
             : last;
}

/* Slower and slower until the weight is on the bed, or the boat at rest. */
static Look
look_slower (Maker *maker, Look now, LbAngleScale *scale)
{
  double step = LOOK_STEP;

  while (now.speed > 0)
    {
      Look next = look_at (maker, fmax (now.speed - step, 0));

      step *= LOOK_GROWTH;
      if (!is_off_bed (&next))
        {
          scale->touches_below = next.solved;
          return find_touch (maker, next, now);
        }
      now = next;
    }
  return now;
}

/* The slowest and the fastest speed of the scale; false when there is none. */
static bool
find_ends (Maker *maker, LbAngleScale *scale, Look *first, Look *last)
{
  Look now, before, lowest;

  go_home (maker);
  now = look_at (maker, maker->own->boat.speed_over_ground);
  if (!now.solved)
    return false;
  *last = look_faster (maker, now, &before, &lowest);
  if (!is_off_bed (&lowest))
    return false;
  scale->goes_on = is_high_enough (maker, last);
  if (lowest.speed > now.speed)
    {
      scale->touches_below = true;
      *first = find_touch (maker, before, lowest);
    }
  else
    {
      go_home (maker);
      *first = look_slower (maker, look_at (maker, now.speed), scale);
    }
  return last->speed > first->speed && !is_high_enough (maker, first);
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

/* Even steps of speed, each half from the rig as it runs now outward. */
static void
add_points (Maker *maker, LbAngleScale *scale, Look first, Look last)
{
  double step = (last.speed - first.speed) / (LB_ANGLE_SCALE_POINTS - 1);
  double own = maker->own->boat.speed_over_ground;
  Look looks[LB_ANGLE_SCALE_POINTS];
  int start = 1;
  bool whole = true;

  looks[0] = first;
  looks[LB_ANGLE_SCALE_POINTS - 1] = last;
  while (start < LB_ANGLE_SCALE_POINTS - 1 && first.speed + start * step < own)
    start++;
  go_home (maker);
  for (int i = start; i < LB_ANGLE_SCALE_POINTS - 1; i++)
    looks[i] = look_at (maker, first.speed + i * step);
  go_home (maker);
  for (int i = start - 1; i > 0; i--)
    looks[i] = look_at (maker, first.speed + i * step);
  for (int i = 0; i < LB_ANGLE_SCALE_POINTS && whole; i++)
    whole = add_point (scale, &looks[i]);
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
  Maker maker = { .run = &run, .own = setup, .setup = *setup, .highest = highest };
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
