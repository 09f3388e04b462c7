/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drag.h"

#define CYLINDER_LOWEST 1e-4
#define CYLINDER_HIGHEST 2e5
#define SPHERE_LOWEST 1e-3
#define SPHERE_HIGHEST 2e5
#define STROUHAL 0.2

/* Engineering estimates, on the areas that lb_weight_frontal_area() describes.
 * Pear: a half ball (sphere 0.47) under a cone across the flow (short cylinder about 0.6).
 * Torpedo: a round-nosed, blunt-tailed rod end on, 0.2, and something for its eye and fins.
 * Disc: a disc face on, 1.17 (Hoerner, Fluid-Dynamic Drag, ch. 3, from memory). */
#define PEAR_DRAG 0.5
#define TORPEDO_DRAG 0.25
#define DISC_DRAG 1.17

static inline double
clamp (double value, double low, double high)
{
  return value < low ? low : value > high ? high : value;
}

LbDragPoint
lb_drag_cylinder (double reynolds)
{
  double re = clamp (reynolds, CYLINDER_LOWEST, CYLINDER_HIGHEST);
  double per_re = 1 / re;
  double first = 6.8 * exp (-0.89 * log (re)); /* Quicker than pow(), and as good. */
  double second = 1.96 * sqrt (per_re);
  double square = 3.64e-7 * re * re;
  double per_dip = 1 / (1 + square);
  double third = 0.0004 * per_dip;
  LbDragPoint cd = { 1.18 + first + second - third * re, 0 };

  if (re == reynolds)
    cd.slope = -(0.89 * first + 0.5 * second) * per_re - third * (1 - square) * per_dip;
  return cd;
}

LbDragPoint
lb_drag_sphere (double reynolds)
{
  double re = clamp (reynolds, SPHERE_LOWEST, SPHERE_HIGHEST);
  double log_re = log (re);
  double stokes = 24 / re;
  double inertia = 0.15 * exp (0.687 * log_re);
  double falling = 4.25e4 * exp (-1.16 * log_re);
  double high = 0.42 / (1 + falling);
  LbDragPoint cd = { stokes * (1 + inertia) + high, 0 };

  if (re == reynolds)
    cd.slope = (stokes * (-1 + (0.687 - 1) * inertia) + high * 1.16 * falling / (1 + falling)) / re;
  return cd;
}

LbDragPoint
lb_drag_weight (LbWeightShape shape, double reynolds)
{
  switch (shape)
    {
    case LB_WEIGHT_PEAR:
      return (LbDragPoint){ PEAR_DRAG, 0 };
    case LB_WEIGHT_TORPEDO:
      return (LbDragPoint){ TORPEDO_DRAG, 0 };
    case LB_WEIGHT_DISC:
      return (LbDragPoint){ DISC_DRAG, 0 };
    case LB_WEIGHT_BALL:
      break;
    }
  return lb_drag_sphere (reynolds);
}

double
lb_strum_frequency (double diameter, double speed)
{
  return diameter > 0 ? STROUHAL * fabs (speed) / diameter : 0;
}
