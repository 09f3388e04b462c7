/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bed.h"

#include <string.h>

#include "steffen.h"

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

LbBedPoint
lb_bed_at (const LbBed *bed, double x)
{
  if (bed->n == 1)
    return (LbBedPoint){ bed->depth[0], 0, 0 };

  LbSteffenPoint at = lb_steffen_at (bed->n, bed->x, bed->depth, bed->slope, x);
  return (LbBedPoint){ at.value, at.slope, at.bend };
}
