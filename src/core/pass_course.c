/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_private.h"

#define PI 3.14159265358979323846

/* The farthest, s, that one quadrature goes. */
#define LONGEST_PIECE 0.05

/* The course at a time, `speed` where it has no points. */
static LbCoursePoint
course_at (const LbCourse *course, double speed, double time)
{
  const LbCoursePoint *points = course->points;
  size_t after = 0;

  if (course->n_points == 0)
    return (LbCoursePoint){ .time = time, .speed = speed };
  while (after < course->n_points && points[after].time <= time)
    after++;
  if (after == 0)
    return points[0];
  if (after == course->n_points)
    return points[after - 1];
  const LbCoursePoint *from = &points[after - 1], *to = &points[after];
  double share = 0.5 - 0.5 * cos (PI * (time - from->time) / (to->time - from->time));
  return (LbCoursePoint){
    .time = time,
    .speed = from->speed + share * (to->speed - from->speed),
    .heading = from->heading + share * (to->heading - from->heading),
    .line_rate = from->line_rate + share * (to->line_rate - from->line_rate),
  };
}

/* ---- What is refused ---- */

static const char *
point_fault (const LbCoursePoint *point)
{
  if (!isfinite (point->speed))
    return "boat speed of the course";
  if (!isfinite (point->heading))
    return "heading of the course";
  return isfinite (point->line_rate) ? NULL : "line rate of the course";
}

/* Half a cosine is steepest in its middle, by pi / 2 of the mean. */
static const char *
leg_fault (const LbCoursePoint *from, const LbCoursePoint *to)
{
  double per_time = 0.5 * PI / (to->time - from->time);

  if (!(to->time > from->time))
    return "times of the course";
  if (!(per_time * fabs (to->speed - from->speed) <= LB_HARDEST_COURSE))
    return "change of boat speed of the course";
  if (!(per_time * fabs (to->heading - from->heading) <= LB_SHARPEST_TURN))
    return "turn of the course";
  if (!(per_time * fabs (to->line_rate - from->line_rate) <= LB_HARDEST_COURSE))
    return "change of line rate of the course";
  return NULL;
}

static const char *
start_fault (const LbCourse *course)
{
  LbCoursePoint start = course_at (course, 0, 0);

  for (size_t i = 0; i < course->n_points && course->points[i].time < 0; i++)
    if (course->points[i].heading != 0)
      return "heading of the course at the start";
  if (start.heading != 0)
    return "heading of the course at the start";
  return start.line_rate != 0 ? "line rate of the course at the start" : NULL;
}

static const char *
course_fault (const LbCourse *course)
{
  const char *fault = NULL;

  if (course->n_points > LB_MAX_COURSE_POINTS)
    return "number of course points";
  if (!isfinite (course->reel_across))
    return "reel across the boat";
  for (size_t i = 0; i < course->n_points && fault == NULL; i++)
    {
      const LbCoursePoint *point = &course->points[i];
      fault = isfinite (point->time) ? point_fault (point) : "times of the course";
      if (fault == NULL && i > 0)
        fault = leg_fault (point - 1, point);
    }
  return fault != NULL ? fault : start_fault (course);
}

static const char *
hand_fault (const LbHand *hand)
{
  switch (hand->motion)
    {
    case LB_HAND_HOLD:
      return NULL;
    case LB_HAND_LIFT_AND_DROP:
    case LB_HAND_FOLLOW_BED:
      if (!(isfinite (hand->stroke) && hand->stroke > 0))
        return "stroke of the hand";
      return isfinite (hand->period) && hand->period > 0 ? NULL : "period of the hand";
    }
  return "motion of the hand";
}

LbStatus
lb_pass_plan_check (const LbPassPlan *plan, const char **what)
{
  const char *fault = course_fault (&plan->course);

  if (fault == NULL)
    fault = hand_fault (&plan->hand);
  if (fault == NULL)
    return LB_STATUS_OK;
  if (what != NULL)
    *what = fault;
  return LB_STATUS_BAD_SETUP;
}

/* ---- On the way ---- */

LbCoursePoint
lb_pass_course_at (const LbPass *pass, double time)
{
  return course_at (&pass->plan.course, pass->setup.boat.speed_over_ground, time);
}

/* By three points of Gauss, over a piece without a course point inside. */
static void
go_smoothly (const LbPass *pass, double from, double to, double *reel, double *line)
{
  static const double at[3] = { -0.774596669241483377, 0, 0.774596669241483377 };
  static const double weight[3] = { 5.0 / 18, 8.0 / 18, 5.0 / 18 };

  for (int k = 0; k < 3; k++)
    {
      LbCoursePoint now = lb_pass_course_at (pass, 0.5 * (from + to) + 0.5 * (to - from) * at[k]);
      double part = weight[k] * (to - from);
      reel[LB_ALONG] -= part * now.speed * cos (now.heading);
      reel[LB_ACROSS] += part * now.speed * sin (now.heading);
      *line += part * now.line_rate;
    }
}

/* Where a turn between two headings takes the reel beside the boat's middle. */
static void
swing (const LbCourse *course, double from, double to, double *reel)
{
  reel[LB_ALONG] += course->reel_across * (sin (to) - sin (from));
  reel[LB_ACROSS] += course->reel_across * (cos (to) - cos (from));
}

void
lb_pass_course_go (const LbPass *pass, double from, double to, double *reel, double *line)
{
  const LbCourse *course = &pass->plan.course;
  size_t next = 0;

  if (course->reel_across != 0)
    swing (course, lb_pass_course_at (pass, from).heading, lb_pass_course_at (pass, to).heading,
           reel);

  while (from < to)
    {
      while (next < course->n_points && course->points[next].time <= from)
        next++;
      double end = fmin (to, from + LONGEST_PIECE);
      if (next < course->n_points)
        end = fmin (end, course->points[next].time);
      go_smoothly (pass, from, end, reel, line);
      from = end;
    }
}
