/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the wire's angle at the reel tells of the weight's height off the bed: with so much line in
 * so much water, the harder the water pulls the further the wire leans back and the higher the
 * weight hangs. The pull is varied by way of the boat's speed. */
#pragma once

#include "plan_task.h"
#include "setup.h"

#define LB_ANGLE_SCALE_POINTS 33

typedef struct
{
  size_t n;                             /* 0: there is no scale, see lb_angle_scale_compute() */
  double angle[LB_ANGLE_SCALE_POINTS];  /* rad from vertical, rising */
  double height[LB_ANGLE_SCALE_POINTS]; /* m of the weight off the bed, rising */
  double speed[LB_ANGLE_SCALE_POINTS];  /* m/s of the boat over the ground, rising */
  bool touches_below; /* at angles below the first the weight is on the bed; else that is where the
                         boat is at rest */
  bool goes_on;       /* above the last the weight goes on rising; else the boat is as fast there as
                         was tried, or the two cease to rise together */
} LbAngleScale;

/* Makes the scale, going out from the rig as `setup` has it, for `line_out` m of line, from the
 * weight just off the bed (or the boat at rest) up to `highest` m above the bed. None is made when
 * the weight stays on the bed at every speed, is higher than that at rest, or was not solved.
 * `task` may be NULL. Returns LB_STATUS_OK, LB_STATUS_CANCELLED or LB_STATUS_OUT_OF_MEMORY. */
LbStatus lb_angle_scale_compute (const LbSetup *setup,
                                 double line_out,
                                 double highest,
                                 const LbPlanTask *task,
                                 LbAngleScale *scale);

/* The height that an angle tells, and the angle at a height, by a monotone curve through the
 * points; unset outside of the scale. */
double lb_angle_scale_height (const LbAngleScale *scale, double angle);
double lb_angle_scale_angle (const LbAngleScale *scale, double height);
