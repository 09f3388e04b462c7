/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river's current against height and along the reach. */
#pragma once

#include "bed.h"

/* A current profile over a bed, made ready for fast evaluation. Plain values; copy with "=". */
typedef struct
{
  LbBed bed;
  LbProfile profile;
  double points_slope[LB_MAX_PROFILE_POINTS]; /* of the points law: d speed / d height fraction */
  LbAlong along;
  double reference_depth;   /* m */
  double reference_surface; /* m/s */
  double power;             /* of the power law: 1 / exponent */
  double plane_surface;     /* m/s, surface speed over a plane bed */
  double per_plane_depth;   /* 1/m */
} LbCurrent;

typedef struct
{
  double speed; /* m/s over the ground, downstream */
  double d_dx;  /* 1/s */
  double d_dz;  /* 1/s */
} LbCurrentPoint;

/* Roughness height ks, m, of a bed material: an engineering estimate (see DEVELOPERS.md,
 * "Numerics"). 0 for LB_BED_MATERIAL_NONE. */
double lb_bed_material_roughness (LbBedMaterial material);

void lb_current_init (LbCurrent *current, const LbRiver *river);

/* The current at `x` downstream and `z` above the water surface (z <= 0 in the water). Above the
 * surface the surface speed is returned, with no slope in z. Below the bed the power law goes on
 * smoothly towards 0 (floor of 0.01 m); the log law is 0, and rounded off within 0.01 m above the
 * bed so that its slope does not jump there; measured points are held at the lowest. Never
 * negative, never NAN. */
LbCurrentPoint lb_current_at (const LbCurrent *current, double x, double z);

/* Speed / surface speed of a profile at height `above_bed` (m) in water `depth` (m) deep, and its
 * slope against the height (1/m); `slope` may be NULL. */
double
lb_profile_fraction (const LbCurrent *current, double above_bed, double depth, double *slope);

/* The current at `x` averaged over the depth, m/s. To 1e-4 of itself. */
double lb_current_mean (const LbCurrent *current, double x);
