/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bed.h"

#include <string.h>

#include "steffen.h"

/* Beyond its first and last point the bed levels out over this length, m: a corner there would be a
 * place where a weight that slides down to it finds no rest. */
#define LEVELLING 1.0

void
lb_bed_init (LbBed *bed, const LbRiver *river)
{
  size_t n = river->n_bed_points;

  if (n == 0)
    {
      bed->n = 1;
      bed->x[0] = 0;
      bed->depth[0] = river->depth;
      bed->slope[0] = 0;
      return;
    }
  bed->n = n;
  memcpy (bed->x, river->bed_x, n * sizeof *bed->x);
  memcpy (bed->depth, river->bed_depth, n * sizeof *bed->depth);
  lb_steffen_slopes (n, bed->x, bed->depth, bed->slope);
}

/* The bed at `distance` beyond a last point, outwards, where it is `depth` deep and goes on with
 * `slope`. It never rises to more than half that depth. */
static LbBedPoint
level_out (double depth, double slope, double distance)
{
  double reach = fabs (slope) * LEVELLING > depth ? depth / fabs (slope) : LEVELLING;

  if (distance >= reach)
    return (LbBedPoint){ depth + 0.5 * slope * reach, 0, 0 };
  double left = 1 - distance / reach;
  return (LbBedPoint){ depth + 0.5 * slope * distance * (1 + left), slope * left, -slope / reach };
}

LbBedPoint
lb_bed_at (const LbBed *bed, double x)
{
  size_t last = bed->n - 1;

  if (last == 0)
    return (LbBedPoint){ bed->depth[0], 0, 0 };
  if (x >= bed->x[last])
    return level_out (bed->depth[last], bed->slope[last], x - bed->x[last]);
  if (x <= bed->x[0])
    {
      LbBedPoint at = level_out (bed->depth[0], -bed->slope[0], bed->x[0] - x);
      at.slope = -at.slope;
      return at;
    }

  LbSteffenPoint at = lb_steffen_at (bed->n, bed->x, bed->depth, bed->slope, x);
  return (LbBedPoint){ at.value, at.slope, at.bend };
}

double
lb_bed_shallowest (const LbBed *bed)
{
  size_t last = bed->n - 1;
  double before = lb_bed_at (bed, bed->x[0] - LEVELLING).depth;
  double after = lb_bed_at (bed, bed->x[last] + LEVELLING).depth;
  double least = before < after ? before : after;

  for (size_t i = 0; i < bed->n; i++)
    least = bed->depth[i] < least ? bed->depth[i] : least;
  return least;
}
