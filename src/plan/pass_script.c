/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_script.h"

#include <string.h>

#include "leg_times.h"

/* How a boat gets to another speed, m/s2, and a hand to another rate of line, m/s2; and the least
 * time, s, that either takes: estimates of an unhurried crew. */
#define BOAT_PUSH 0.25
#define LINE_PUSH 0.5
#define SHORTEST_RAMP 1.0

/* A pass over the whole bed takes no less than this, s. */
#define SHORTEST_PASS 10.0

#define PI 3.14159265358979323846
#define DEGREE (PI / 180)

#define USUAL_STROKE 0.3048 /* m: a foot */
#define USUAL_PERIOD 10.0   /* s */
#define USUAL_LEG 30.0      /* s */
#define USUAL_APART 1.5     /* m, an estimate: the beam of a small boat */
#define USUAL_TANGLE 0.0508 /* m: 2 in; leaders of a usual rig start 6 in apart */

LbPassScript
lb_pass_script_default (void)
{
  return (LbPassScript){
    .hand = { LB_HAND_HOLD, USUAL_STROKE, USUAL_PERIOD },
    .duration = LB_UNSET,
    .start = LB_UNSET,
    .tangle_distance = USUAL_TANGLE,
    .second_weight = LB_UNSET,
    .reels_apart = USUAL_APART,
  };
}

LbCourseLeg
lb_course_leg_default (void)
{
  return (LbCourseLeg){
    .duration = USUAL_LEG,
    .speed = LB_UNSET,
    .turn_rate = LB_UNSET,
  };
}

const char *
lb_hand_motion_name (LbHandMotion motion)
{
  static const char *const names[] = { "hold", "lift-and-drop", "follow-bed" };

  return names[motion];
}

/* ---- Equality ---- */

/* Bit for bit, as a file keeps them; any unset value equals any other. */
static bool
same (double a, double b)
{
  return memcmp (&a, &b, sizeof a) == 0 || (!lb_is_set (a) && !lb_is_set (b));
}

/* Only one of the two ways of saying how long, and how far round, counts. */
static bool
same_leg (const LbCourseLeg *a, const LbCourseLeg *b)
{
  return same (a->duration, b->duration) && same (a->turn_rate, b->turn_rate)
         && (lb_is_set (a->duration) || same (a->distance, b->distance))
         && (lb_is_set (a->turn_rate) || same (a->turn, b->turn)) && same (a->speed, b->speed)
         && same (a->line_rate, b->line_rate);
}

bool
lb_pass_script_equal (const LbPassScript *a, const LbPassScript *b)
{
  if (a->n_legs != b->n_legs || a->hand.motion != b->hand.motion
      || !same (a->hand.stroke, b->hand.stroke) || !same (a->hand.period, b->hand.period)
      || !same (a->duration, b->duration) || !same (a->start, b->start)
      || !same (a->tangle_distance, b->tangle_distance)
      || !same (a->second_weight, b->second_weight) || !same (a->reels_apart, b->reels_apart))
    return false;
  for (size_t i = 0; i < a->n_legs; i++)
    if (!same_leg (&a->legs[i], &b->legs[i]))
      return false;
  return true;
}

/* ---- Mending ---- */

/* NAN becomes `low`. */
static double
within (double value, double low, double high)
{
  return value >= low ? fmin (value, high) : low;
}

/* NAN stays. */
static double
within_or_unset (double value, double low, double high)
{
  return lb_is_set (value) ? within (value, low, high) : value;
}

static void
mend_leg (LbCourseLeg *leg)
{
  leg->duration = within_or_unset (leg->duration, LB_PASS_SHORTEST, LB_PASS_LONGEST);
  if (lb_is_set (leg->duration))
    leg->distance = 0;
  else
    leg->distance = within (leg->distance, LB_LEG_LEAST_DISTANCE, LB_LEG_MOST_DISTANCE);
  leg->speed = within_or_unset (leg->speed, 0, LB_LEG_MOST_SPEED);
  leg->turn_rate = within_or_unset (leg->turn_rate, -LB_LEG_MOST_TURN_RATE, LB_LEG_MOST_TURN_RATE);
  leg->turn = lb_is_set (leg->turn_rate) || !lb_is_set (leg->turn)
                  ? 0
                  : within (leg->turn, -LB_LEG_MOST_TURN, LB_LEG_MOST_TURN);
  leg->line_rate = !lb_is_set (leg->line_rate)
                       ? 0
                       : within (leg->line_rate, -LB_LEG_MOST_LINE_RATE, LB_LEG_MOST_LINE_RATE);
}

void
lb_pass_script_mend (LbPassScript *script)
{
  LbHand *hand = &script->hand;

  if (script->n_legs > LB_MAX_COURSE_LEGS)
    script->n_legs = LB_MAX_COURSE_LEGS;
  for (size_t i = 0; i < script->n_legs; i++)
    mend_leg (&script->legs[i]);
  if ((size_t) hand->motion >= LB_N_HAND_MOTIONS)
    hand->motion = LB_HAND_HOLD;
  hand->stroke = within (hand->stroke, LB_HAND_LEAST_STROKE, LB_HAND_MOST_STROKE);
  hand->period = within (hand->period, LB_HAND_LEAST_PERIOD, LB_HAND_MOST_PERIOD);
  script->duration = within_or_unset (script->duration, LB_PASS_SHORTEST, LB_PASS_LONGEST);
  script->start = within_or_unset (script->start, -LB_PASS_FARTHEST_START, LB_PASS_FARTHEST_START);
  script->tangle_distance = within (script->tangle_distance, 0, LB_PASS_MOST_TANGLE);
  script->second_weight =
      within_or_unset (script->second_weight, LB_SECOND_LEAST_WEIGHT, LB_SECOND_MOST_WEIGHT);
  script->reels_apart = within (script->reels_apart, LB_REELS_LEAST_APART, LB_REELS_MOST_APART);
}

/* ---- The course ---- */

static void
add_point (LbCourse *course, LbCoursePoint point)
{
  course->points[course->n_points++] = point;
}

/* How long it takes, s, to get from what `now` is at to the leg's speed and line rate. */
static double
ramp_time (const LbCoursePoint *now, double speed, double line_rate)
{
  double change =
      fmax (fabs (speed - now->speed) / BOAT_PUSH, fabs (line_rate - now->line_rate) / LINE_PUSH);

  return change > 0 ? fmax (change, SHORTEST_RAMP) : 0;
}

/* How long a leg takes that begins with a ramp of `*ramp`, which is cut to it. On the ramp the
 * mean speed is half way between both. INFINITY when it never gets there. */
static double
leg_time (const LbCourseLeg *leg, double before, double speed, double *ramp)
{
  double time = leg->duration, ramp_way = 0.5 * (before + speed) * *ramp;

  if (!lb_is_set (time) && leg->distance >= ramp_way)
    time = leg->distance > ramp_way ? *ramp + (leg->distance - ramp_way) / speed : *ramp;
  else if (!lb_is_set (time))
    time = 2 * leg->distance / (before + speed);
  *ramp = fmin (*ramp, time);
  return time;
}

/* Adds a leg to the course; returns LB_STATUS_BAD_SETUP when it never ends. */
static LbStatus
add_leg (LbCourse *course, const LbCourseLeg *leg, double own_speed, LbLegTimes *times)
{
  LbCoursePoint now = course->points[course->n_points - 1];
  double speed = lb_is_set (leg->speed) ? leg->speed : own_speed;
  double ramp = ramp_time (&now, speed, leg->line_rate);
  double time = leg_time (leg, now.speed, speed, &ramp);
  double end = now.time + time;

  if (!isfinite (end) || !(time > 0))
    return LB_STATUS_BAD_SETUP;
  times->time = time;
  times->way = 0.5 * (now.speed + speed) * ramp + speed * (time - ramp);
  now.speed = speed;
  now.line_rate = leg->line_rate;
  /* A scrap of a leg behind the ramp would turn the boat at once. */
  if (ramp > 0 && ramp < 0.9 * time)
    {
      now.time += ramp;
      add_point (course, now);
    }
  times->turning = end - now.time;
  now.heading +=
      DEGREE * (lb_is_set (leg->turn_rate) ? leg->turn_rate * times->turning : leg->turn);
  now.time = end;
  add_point (course, now);
  return LB_STATUS_OK;
}

static LbStatus
plan_course (const LbPassScript *script,
             const LbSetup *setup,
             LbPassJob *job,
             LbLegTimes times[LB_MAX_COURSE_LEGS],
             const char **what)
{
  LbCourse *course = &job->plan.course;
  const LbCourseLeg *first = &script->legs[0];
  double own_speed = setup->boat.speed_over_ground;
  double speed = script->n_legs > 0 && lb_is_set (first->speed) ? first->speed : own_speed;

  add_point (course, (LbCoursePoint){ .speed = speed });
  job->setup.boat.speed_over_ground = speed;
  for (size_t i = 0; i < script->n_legs; i++)
    if (add_leg (course, &script->legs[i], own_speed, &times[i]) != LB_STATUS_OK)
      {
        *what = LB_PASS_ENDLESS_LEG;
        return LB_STATUS_BAD_SETUP;
      }
  return LB_STATUS_OK;
}

/* ---- The whole ---- */

/* Over an uneven bed from one end to the other. */
static void
cross_the_bed (const LbPassScript *script, LbPassJob *job)
{
  LbRiver *river = &job->setup.river;
  double speed = job->setup.boat.speed_over_ground;

  job->duration = LB_PASS_USUAL;
  if (river->n_bed_points < 2)
    return;
  if (!lb_is_set (script->start))
    job->setup.boat.position = river->bed_x[river->n_bed_points - 1];
  double way = job->setup.boat.position - river->bed_x[0];
  if (speed > 0 && way > 0)
    job->duration = fmin (fmax (way / speed, SHORTEST_PASS), LB_PASS_LONGEST);
}

static const char *
find_fault (const LbPassScript *script, const LbPassJob *job)
{
  const char *what = NULL;

  if (script->n_legs > LB_MAX_COURSE_LEGS)
    return "number of legs";
  if (!(job->duration > 0))
    return "duration of the pass";
  if (job->duration > LB_PASS_LONGEST)
    return LB_PASS_TOO_LONG;
  return lb_pass_plan_check (&job->plan, &what) == LB_STATUS_OK ? NULL : what;
}

LbStatus
lb_pass_script_plan (const LbPassScript *script,
                     const LbSetup *setup,
                     LbPassJob *job,
                     const char **what)
{
  LbLegTimes times[LB_MAX_COURSE_LEGS];
  const char *unsaid;

  if (what == NULL)
    what = &unsaid;
  *job = (LbPassJob){ .setup = *setup, .plan.hand = script->hand };
  if (lb_is_set (script->second_weight))
    job->plan.course.reel_across = 0.5 * script->reels_apart;
  if (lb_is_set (script->start))
    job->setup.boat.position = script->start;
  if (script->n_legs > LB_MAX_COURSE_LEGS)
    *what = "number of legs";
  else if (plan_course (script, setup, job, times, what) == LB_STATUS_OK)
    {
      if (script->n_legs == 0)
        cross_the_bed (script, job);
      else
        job->duration = job->plan.course.points[job->plan.course.n_points - 1].time;
      if (lb_is_set (script->duration))
        job->duration = script->duration;
      *what = find_fault (script, job);
      if (*what == NULL)
        return LB_STATUS_OK;
    }
  return LB_STATUS_BAD_SETUP;
}

void
lb_leg_times_find (const LbPassScript *script,
                   const LbSetup *setup,
                   LbLegTimes times[LB_MAX_COURSE_LEGS])
{
  LbPassJob job = { .setup = *setup };
  const char *what;

  memset (times, 0, LB_MAX_COURSE_LEGS * sizeof *times);
  if (script->n_legs <= LB_MAX_COURSE_LEGS)
    plan_course (script, setup, &job, times, &what);
}
