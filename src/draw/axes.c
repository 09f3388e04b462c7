/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "axes.h"

#include <math.h>

/* Steps in the main unit, rising; a zero ends the list. */
static const double feet[] = { 0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 0 };
static const double metres[] = { 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 0 };
static const double inches[] = { 1, 3, 6, 12, 36, 72, 0 };
static const double centimetres[] = { 1, 2, 10, 20, 50, 100, 200, 0 };

static const double *
steps_of (LbQuantity quantity, LbUnits units)
{
  if (quantity == LB_QUANTITY_HEIGHT)
    return units == LB_UNITS_US ? inches : centimetres;
  return units == LB_UNITS_US ? feet : metres;
}

static int
divides (double fine, double coarse)
{
  double times = coarse / fine;

  return fabs (times - round (times)) < 1e-9;
}

LbTicks
lb_ticks_choose (
    LbQuantity quantity, LbUnits units, double per_metre, double least_major, double least_minor)
{
  const double *step = steps_of (quantity, units);
  double unit = lb_units_size (quantity, units);
  const double *major = step;
  LbTicks ticks;

  while (major[1] > 0 && *major * unit * per_metre < least_major)
    major++;
  ticks.major = ticks.minor = *major * unit;
  for (const double *minor = major; minor >= step; minor--)
    if (*minor * unit * per_metre >= least_minor && divides (*minor, *major))
      ticks.minor = *minor * unit;
  return ticks;
}

int
lb_ticks_decimals (LbQuantity quantity, LbUnits units, double step)
{
  double value = step / lb_units_size (quantity, units);

  for (int decimals = 0; decimals < 4; decimals++, value *= 10)
    if (fabs (value - round (value)) < 1e-6)
      return decimals;
  return 4;
}
