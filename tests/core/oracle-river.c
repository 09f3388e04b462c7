/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "oracle-river.h"

#include <gsl/gsl_math.h>
#include <gsl/gsl_poly.h>

#include "drag.h"

/* Kell 1975, J. Chem. Eng. Data 20(1), 97-105; coefficients as quoted in the CRC Handbook. */
static double
kell_density (double t)
{
  static const double a[] = { 999.83952,     16.945176,    -7.9870401e-3,
                              -46.170461e-6, 105.56302e-9, -280.54253e-12 };

  return gsl_poly_eval (a, 6, t) / (1 + 16.879850e-3 * t);
}

/* IAPWS SR6-08(2011), liquid at 0.1 MPa, coefficients from memory; Pa s. */
static double
iapws_viscosity (double t)
{
  double x = (t + 273.15) / 300;

  return 1e-6
         * (280.68 * pow (x, -1.9) + 511.45 * pow (x, -7.7) + 61.131 * pow (x, -19.6)
            + 0.45903 * pow (x, -40));
}

/* Sucker and Brauer 1975, from memory; 1e-4 < Re < 2e5, held outside. */
static double
cylinder_drag (double re)
{
  re = GSL_MAX_DBL (1e-4, GSL_MIN_DBL (re, 2e5));
  return 1.18 + 6.8 / pow (re, 0.89) + 1.96 / sqrt (re) - 0.0004 * re / (1 + 3.64e-7 * re * re);
}

/* Clift and Gauvin 1971; held above 2e5 and below 1e-3. */
static double
sphere_drag (double re)
{
  re = GSL_MAX_DBL (1e-3, GSL_MIN_DBL (re, 2e5));
  return 24 / re * (1 + 0.15 * pow (re, 0.687)) + 0.42 / (1 + 4.25e4 * pow (re, -1.16));
}

static gsl_spline *
steffen (const double *x, const double *y, size_t n)
{
  gsl_spline *spline = gsl_spline_alloc (gsl_interp_steffen, n);

  gsl_spline_init (spline, x, y, n);
  return spline;
}

void
oracle_river_init (OracleRiver *river, const LbSetup *setup)
{
  const LbRiver *r = &setup->river;
  const LbProfile *p = &r->profile;

  *river = (OracleRiver){ .setup = setup };
  river->density = lb_is_set (r->density) ? r->density : kell_density (r->temperature);
  river->viscosity = lb_is_set (r->kinematic_viscosity)
                         ? r->kinematic_viscosity
                         : iapws_viscosity (r->temperature) / river->density;
  river->bed_accel = gsl_interp_accel_alloc ();
  river->profile_accel = gsl_interp_accel_alloc ();
  if (r->n_bed_points > 2)
    river->bed = steffen (r->bed_x, r->bed_depth, r->n_bed_points);
  if (p->law == LB_PROFILE_POINTS && p->n_points > 2)
    river->profile = steffen (p->height_fraction, p->speed_fraction, p->n_points);
}

void
oracle_river_clear (OracleRiver *river)
{
  if (river->bed != NULL)
    gsl_spline_free (river->bed);
  if (river->profile != NULL)
    gsl_spline_free (river->profile);
  gsl_interp_accel_free (river->bed_accel);
  gsl_interp_accel_free (river->profile_accel);
}

/* Held at its end values outside the points. */
static double
held_spline (const gsl_spline *spline, gsl_interp_accel *accel, double x)
{
  double low = spline->x[0];
  double high = spline->x[spline->size - 1];

  return gsl_spline_eval (spline, GSL_MAX_DBL (low, GSL_MIN_DBL (x, high)), accel);
}

/* Two points or fewer: nothing to be smooth about. */
static double
held_straight (const double *x, const double *y, size_t n, double at)
{
  if (n == 1 || at <= x[0])
    return y[0];
  if (at >= x[n - 1])
    return y[n - 1];
  return y[0] + (y[1] - y[0]) * (at - x[0]) / (x[1] - x[0]);
}

/* How the bed goes on outwards beyond its last point: its slope falls to 0 over a metre, or sooner
 * where it would rise to more than half the depth. Integral and value of that slope. */
static double
levelled (double depth, double slope, double distance, bool value)
{
  double reach = slope == 0 ? 1 : GSL_MIN_DBL (1, depth / fabs (slope));
  double d = GSL_MIN_DBL (distance, reach);

  return value ? slope * (1 - d / reach) : depth + slope * (d - d * d / (2 * reach));
}

static double
end_slope (const LbRiver *r, size_t a, size_t b)
{
  /* Steffen's curve starts with the slope of its first chord. */
  return (r->bed_depth[b] - r->bed_depth[a]) / (r->bed_x[b] - r->bed_x[a]);
}

double
oracle_bed_depth (const OracleRiver *river, double x)
{
  const LbRiver *r = &river->setup->river;
  size_t n = r->n_bed_points;

  if (n == 0)
    return r->depth;
  if (n == 1)
    return r->bed_depth[0];
  if (x < r->bed_x[0])
    return levelled (r->bed_depth[0], -end_slope (r, 0, 1), r->bed_x[0] - x, false);
  if (x > r->bed_x[n - 1])
    return levelled (r->bed_depth[n - 1], end_slope (r, n - 2, n - 1), x - r->bed_x[n - 1], false);
  if (river->bed != NULL)
    return gsl_spline_eval (river->bed, x, river->bed_accel);
  return held_straight (r->bed_x, r->bed_depth, n, x);
}

double
oracle_bed_slope (const OracleRiver *river, double x)
{
  const LbRiver *r = &river->setup->river;
  size_t n = r->n_bed_points;

  if (n < 2)
    return 0;
  if (x < r->bed_x[0])
    return -levelled (r->bed_depth[0], -end_slope (r, 0, 1), r->bed_x[0] - x, true);
  if (x > r->bed_x[n - 1])
    return levelled (r->bed_depth[n - 1], end_slope (r, n - 2, n - 1), x - r->bed_x[n - 1], true);
  if (river->bed != NULL)
    return gsl_spline_eval_deriv (river->bed, x, river->bed_accel);
  return end_slope (r, 0, 1);
}

/* The model rounds the log law off within 1 cm of the bed: a cubic that is flat at the bed. */
static double
log_height (double height)
{
  double t = height / 0.01;

  if (height <= 0)
    return 0;
  return t < 1 ? height * t * (2 - t) : height;
}

static double
profile_fraction (const OracleRiver *river, double height, double depth)
{
  const LbProfile *p = &river->setup->river.profile;
  double z0;

  switch (p->law)
    {
    case LB_PROFILE_POWER:
      height = (height + sqrt (height * height + 0.01 * 0.01)) / 2;
      return pow (height / depth, 1 / p->exponent);
    case LB_PROFILE_LOG:
      z0 = p->roughness / 30;
      return log ((log_height (height) + z0) / z0) / log ((depth + z0) / z0);
    case LB_PROFILE_POINTS:
      if (river->profile != NULL)
        return held_spline (river->profile, river->profile_accel, height / depth);
      return held_straight (p->height_fraction, p->speed_fraction, p->n_points, height / depth);
    case LB_PROFILE_UNIFORM:
    default:
      return 1;
    }
}

/* The model never lets the water stand quite still: below 2 cm/s past the rig a trickle of at most
 * 5 mm/s, fading out, lays slack lines downstream. */
static double
with_trickle (double speed)
{
  double still = 1 - fabs (speed) / 0.02;

  return still > 0 ? speed + 0.005 * still * still : speed;
}

double
oracle_water_speed (const OracleRiver *river, double x, double z)
{
  const LbRiver *r = &river->setup->river;
  double depth = oracle_bed_depth (river, x);
  double surface = r->surface_current;

  if (r->along == LB_ALONG_SAME_DISCHARGE)
    surface *= r->depth / depth;
  return with_trickle (surface * profile_fraction (river, GSL_MIN_DBL (z, 0) + depth, depth)
                       + river->setup->boat.speed_over_ground);
}

void
oracle_line_load (const OracleRiver *river,
                  const LbLine *line,
                  const double p[2],
                  const double t[2],
                  double stretch,
                  bool in_air,
                  double load[2])
{
  double g = river->setup->river.gravity;
  double d = line->diameter;
  double area = M_PI * d * d / 4;
  double v, vt, vn[2], n, cn, normal, tangential;

  load[0] = 0;
  load[1] = -(line->density - (in_air ? 0 : river->density)) * g * area;
  if (in_air)
    return;
  v = oracle_water_speed (river, p[0], p[1]);
  vt = v * t[0];
  vn[0] = v - vt * t[0];
  vn[1] = -vt * t[1];
  n = hypot (vn[0], vn[1]);
  cn = lb_is_set (line->normal_drag) ? line->normal_drag : cylinder_drag (n * d / river->viscosity);
  normal = 0.5 * river->density * d * line->strum * cn * n;
  tangential = 0.5 * river->density * d * M_PI * line->tangential_drag * fabs (vt) * vt;
  for (int i = 0; i < 2; i++)
    load[i] += stretch * (normal * vn[i] + tangential * t[i]);
}

void
oracle_weight_force (const OracleRiver *river, const double p[2], double force[2])
{
  const LbWeight *w = &river->setup->rig.weight;
  double v = oracle_water_speed (river, p[0], p[1]);
  double volume = w->mass / w->density;
  double area, cd;

  if (w->shape == LB_WEIGHT_BALL)
    {
      double radius = cbrt (3 * volume / (4 * M_PI));
      area = M_PI * radius * radius;
      cd = sphere_drag (fabs (v) * 2 * radius / river->viscosity);
    }
  else
    {
      area = lb_weight_frontal_area (w);
      cd = lb_drag_weight (w->shape, 1e5).value;
    }
  if (lb_is_set (w->drag_coefficient))
    cd = w->drag_coefficient;
  force[0] = 0.5 * river->density * area * cd * fabs (v) * v;
  force[1] = -(w->mass - river->density * volume) * river->setup->river.gravity;
}

void
oracle_lure_force (const OracleRiver *river, const LbLure *lure, const double p[2], double force[2])
{
  double v = oracle_water_speed (river, p[0], p[1]);
  double drag = 0.5 * river->density * lure->drag_area * v * v;

  force[0] = copysign (drag, v);
  force[1] = lure->buoyancy - lure->down_force_ratio * drag;
}
