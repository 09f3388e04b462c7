/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "current.h"

#include "steffen.h"

/* The power law's smooth floor, m: it never quite reaches 0 at the bed, where its slope has no
 * bound. */
#define POWER_FLOOR 0.01

/* The log law is rounded off within this height, m, above the bed: without it the slope would jump
 * at the bed from 0 to 1 / z0, thousands per metre over sand. */
#define LOG_FLOOR 0.01

/* Keeps the log law finite when nobody has given a roughness, m. */
#define SMOOTHEST_Z0 1e-9

/* Speed over surface speed and its slopes against height above the bed and against depth. */
typedef struct
{
  double value;
  double d_height; /* 1/m */
  double d_depth;  /* 1/m */
} Fraction;

double
lb_bed_material_roughness (LbBedMaterial material)
{
  /* Estimates, m: plane sand; 16 mm gravel; the rougher end of cobble; riprap and boulders. */
  switch (material)
    {
    case LB_BED_MATERIAL_SAND:
      return 0.002;
    case LB_BED_MATERIAL_GRAVEL:
      return 0.016;
    case LB_BED_MATERIAL_COBBLE:
      return 0.1;
    case LB_BED_MATERIAL_BOULDER:
      return 0.3;
    case LB_BED_MATERIAL_NONE:
      break;
    }
  return 0;
}

void
lb_current_init (LbCurrent *current, const LbRiver *river)
{
  lb_bed_init (&current->bed, river);
  current->profile = river->profile;
  if (river->profile.law == LB_PROFILE_POINTS)
    lb_steffen_slopes (river->profile.n_points, river->profile.height_fraction,
                       river->profile.speed_fraction, current->points_slope);
  current->along = river->along;
  current->reference_depth = river->depth;
  current->reference_surface = river->surface_current;
  current->power = 1 / river->profile.exponent;
  current->per_plane_depth = 1 / current->bed.depth[0];
  current->plane_surface = river->surface_current;
  if (river->along == LB_ALONG_SAME_DISCHARGE)
    current->plane_surface *= river->depth / current->bed.depth[0];
}

static inline Fraction
power_fraction (double power, double height, double per_depth)
{
  double root = sqrt (height * height + POWER_FLOOR * POWER_FLOOR);
  /* Below the bed the sum would cancel, so it is turned over. */
  double floored =
      height >= 0 ? 0.5 * (height + root) : 0.5 * (POWER_FLOOR * POWER_FLOOR) / (root - height);
  double value = exp (power * log (floored * per_depth));
  double steep = value * power;

  /* d floored / d height = floored / root. */
  return (Fraction){ value, steep / root, -steep * per_depth };
}

static inline Fraction
log_fraction (double roughness, double height, double depth)
{
  double z0 = roughness / 30;
  double floored = height;
  double d_floored = 1;

  if (!(z0 > SMOOTHEST_Z0))
    z0 = SMOOTHEST_Z0;
  if (!(height > 0))
    return (Fraction){ 0, 0, 0 };
  if (height < LOG_FLOOR)
    {
      /* A cubic with no value and no slope at the bed that joins the straight line smoothly. */
      double t = height / LOG_FLOOR;
      floored = height * t * (2 - t);
      d_floored = t * (4 - 3 * t);
    }
  double per_whole = 1 / log1p (depth / z0);
  double value = log1p (floored / z0) * per_whole;
  return (Fraction){ value, d_floored * per_whole / (floored + z0),
                     -value * per_whole / (depth + z0) };
}

static inline Fraction
points_fraction (const LbCurrent *current, double height, double depth)
{
  const LbProfile *profile = &current->profile;

  if (profile->n_points == 0)
    return (Fraction){ 1, 0, 0 };
  double ratio = height / depth;
  LbSteffenPoint at = lb_steffen_at (profile->n_points, profile->height_fraction,
                                     profile->speed_fraction, current->points_slope, ratio);
  return (Fraction){ at.value, at.slope / depth, -at.slope * ratio / depth };
}

static inline Fraction
fraction_at (const LbCurrent *current, double height, double depth, double per_depth)
{
  switch (current->profile.law)
    {
    case LB_PROFILE_POWER:
      return power_fraction (current->power, height, per_depth);
    case LB_PROFILE_LOG:
      return log_fraction (current->profile.roughness, height, depth);
    case LB_PROFILE_POINTS:
      return points_fraction (current, height, depth);
    case LB_PROFILE_UNIFORM:
      break;
    }
  return (Fraction){ 1, 0, 0 };
}

double
lb_profile_fraction (const LbCurrent *current, double above_bed, double depth, double *slope)
{
  bool in_water = !(above_bed > depth);
  Fraction fraction = fraction_at (current, in_water ? above_bed : depth, depth, 1 / depth);

  if (slope != NULL)
    *slope = in_water ? fraction.d_height : 0;
  return fraction.value;
}

LbCurrentPoint
lb_current_at (const LbCurrent *current, double x, double z)
{
  double in_water = z > 0 ? 0 : 1;

  z *= in_water;
  if (current->bed.n == 1)
    {
      double depth = current->bed.depth[0];
      double surface = current->plane_surface;
      Fraction fraction = fraction_at (current, z + depth, depth, current->per_plane_depth);

      return (LbCurrentPoint){ surface * fraction.value, 0,
                               in_water * surface * fraction.d_height };
    }

  LbBedPoint bed = lb_bed_at (&current->bed, x);
  Fraction fraction = fraction_at (current, z + bed.depth, bed.depth, 1 / bed.depth);
  double surface = current->reference_surface;
  double by_depth = fraction.d_height + fraction.d_depth;
  if (current->along == LB_ALONG_SAME_DISCHARGE)
    {
      surface *= current->reference_depth / bed.depth;
      by_depth -= fraction.value / bed.depth;
    }
  return (LbCurrentPoint){ surface * fraction.value, surface * by_depth * bed.slope,
                           in_water * surface * fraction.d_height };
}

double
lb_current_mean (const LbCurrent *current, double x)
{
  enum
  {
    PIECES = 400
  };
  double depth = lb_bed_at (&current->bed, x).depth, sum = 0;

  /* Equal pieces of t with the height as t^3 are finest at the bed, where the current changes most.
   * Midpoints. */
  for (int i = 0; i < PIECES; i++)
    {
      double t = (i + 0.5) / PIECES;

      sum += 3 * t * t * lb_current_at (current, x, depth * (t * t * t - 1)).speed;
    }
  return sum / PIECES;
}
