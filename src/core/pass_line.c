/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How much line is out: what course and hand ask for, eased where it runs out at either end. */
#include "pass_private.h"

/* With less line left than this, m, it goes ever more slowly: an estimate of a careful hand. */
#define EASE 0.5

/* What is had of `room` m when `wanted` m are asked for: all of it while there is room, and the
 * last of the room more and more slowly. */
static double
had (double room, double wanted)
{
  double freely = fmax (room - EASE, 0);

  if (wanted <= freely)
    return wanted;
  return room - fmin (room, EASE) * exp (-(wanted - freely) / EASE);
}

/* Line out but for what a hand that lifts and drops has taken in. */
static double
base_line (const LbPass *pass, double course_line)
{
  bool follows = pass->plan.hand.motion == LB_HAND_FOLLOW_BED;

  return pass->first_line + course_line + (follows ? pass->following.line : 0);
}

double
lb_pass_line_course (const LbPass *pass, double wanted)
{
  double change = wanted - pass->course_line, before = base_line (pass, pass->course_line);
  double room = change < 0 ? before - LB_STEADY_SHORTEST_LINE : LB_STEADY_LONGEST_LINE - before;

  return pass->course_line + copysign (had (fmax (room, 0), fabs (change)), change);
}

/* What a hand that would take in `stroke` m of `room` m takes in: from half of it on less. */
static double
taken_in (double stroke, double room)
{
  double half = 0.5 * room;

  if (stroke <= half)
    return stroke;
  return half > 0 ? room - half * exp (1 - stroke / half) : 0;
}

double
lb_pass_line_at (const LbPass *pass, double course_line, double time)
{
  double line = pass->first_line + course_line, hand = lb_pass_hand_line (pass, time);

  if (pass->plan.hand.motion == LB_HAND_LIFT_AND_DROP)
    line -= taken_in (-hand, fmax (line - LB_STEADY_SHORTEST_LINE, 0));
  else
    line += hand;
  return fmin (fmax (line, LB_STEADY_SHORTEST_LINE), LB_STEADY_LONGEST_LINE);
}
