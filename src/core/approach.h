/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How near lines come to one another. */
#pragma once

#include "shape.h"

typedef struct
{
  double distance; /* m; unset when there are not two lines to compare */
  int part_a;      /* LbPart */
  int part_b;
  LbVec3 at; /* half way between the two nearest points */
} LbApproach;

/* The nearest that a leader comes to any other line of its own rig, each beyond its joint: within a
 * quarter of a leader's length, or half a metre if that is less, of its attachment they are always
 * close. */
LbApproach lb_approach_within (const LbSetup *setup, const LbShape *shape);

/* The nearest that any line of one rig comes to any line of another; part_a is one's, part_b the
 * other's. */
LbApproach lb_approach_between (const LbShape *one, const LbShape *other);
