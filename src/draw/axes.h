/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Round steps for scales, in the user's units. Pure arithmetic. */
#pragma once

#include "units.h"

/* A scale's steps in SI. `minor` divides `major` evenly; equal to it when there is room for
 * nothing finer. */
typedef struct
{
  double major;
  double minor;
} LbTicks;

/* Steps for a scale of lengths (feet, or metres) or of heights (inches, or centimetres) on which a
 * metre takes `per_metre` drawing units, so that numbers stand at least `least_major` apart and
 * fine ticks at least `least_minor`. */
LbTicks lb_ticks_choose (
    LbQuantity quantity, LbUnits units, double per_metre, double least_major, double least_minor);

/* Decimals that a multiple of `step` (SI) needs when shown in the main unit. */
int lb_ticks_decimals (LbQuantity quantity, LbUnits units, double step);
