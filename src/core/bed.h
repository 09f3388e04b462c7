/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river bed along the reach: plane, or a smooth monotone curve through surveyed points. */
#pragma once

#include "setup.h"

/* The bed of a river, made ready for fast evaluation. Plain values; copy it with "=". */
typedef struct
{
  size_t n;                        /* points; 1 for a plane bed */
  double x[LB_MAX_BED_POINTS];     /* m, rising */
  double depth[LB_MAX_BED_POINTS]; /* m */
  double slope[LB_MAX_BED_POINTS]; /* d depth / d x at each point */
} LbBed;

typedef struct
{
  double depth; /* m below the water surface */
  double slope; /* d depth / d x */
  double bend;  /* d2 depth / d x2; jumps at the points */
} LbBedPoint;

/* Prepares the bed of `river`. The curve through the points is Steffen's (1990, Astron. Astrophys.
 * 239, 443): once differentiable, and between two points never outside their depths. Beyond the
 * first and the last point the bed levels out over a metre and is then held. */
void lb_bed_init (LbBed *bed, const LbRiver *river);

/* The bed under `x` (m, downstream, on the axis of the surveyed points). */
LbBedPoint lb_bed_at (const LbBed *bed, double x);

/* The least depth, m, anywhere along the bed. */
double lb_bed_shallowest (const LbBed *bed);
