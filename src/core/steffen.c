/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steffen.h"

#include <math.h>

static double
sign (double value)
{
  return value > 0 ? 1 : value < 0 ? -1 : 0;
}

void
lb_steffen_slopes (size_t n, const double *x, const double *y, double *slope)
{
  if (n < 2)
    {
      if (n == 1)
        slope[0] = 0;
      return;
    }

  double step = x[1] - x[0];
  double rise = (y[1] - y[0]) / step;
  slope[0] = rise;
  for (size_t i = 1; i + 1 < n; i++)
    {
      double next_step = x[i + 1] - x[i];
      double next_rise = (y[i + 1] - y[i]) / next_step;
      double parabola = (rise * next_step + next_rise * step) / (step + next_step);

      slope[i] = (sign (rise) + sign (next_rise))
                 * fmin (fmin (fabs (rise), fabs (next_rise)), 0.5 * fabs (parabola));
      step = next_step;
      rise = next_rise;
    }
  slope[n - 1] = rise;
}

LbSteffenPoint
lb_steffen_at (size_t n, const double *x, const double *y, const double *slope, double at)
{
  if (!(at > x[0]))
    return (LbSteffenPoint){ y[0], 0, 0 };
  if (at >= x[n - 1])
    return (LbSteffenPoint){ y[n - 1], 0, 0 };

  size_t low = 0, high = n - 1;
  while (high - low > 1)
    {
      size_t middle = (low + high) / 2;
      if (x[middle] <= at)
        low = middle;
      else
        high = middle;
    }

  double step = x[high] - x[low];
  double rise = (y[high] - y[low]) / step;
  double cube = (slope[low] + slope[high] - 2 * rise) / (step * step);
  double square = (3 * rise - 2 * slope[low] - slope[high]) / step;
  double t = at - x[low];
  return (LbSteffenPoint){
    .value = y[low] + t * (slope[low] + t * (square + t * cube)),
    .slope = slope[low] + t * (2 * square + 3 * t * cube),
    .bend = 2 * square + 6 * t * cube,
  };
}
