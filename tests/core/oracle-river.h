/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river and the loads in it, written a second time for the oracle: own water, profile and drag
 * formulas, GSL's Steffen spline for the curves. Nothing here calls the core's physics, apart from
 * the estimated area and drag of the weights that are not balls, which have no published curve.
 *
 * Everything lies in the plane of the flow: p[0] is x downstream, p[1] is z up, 0 at the surface.
 */
#pragma once

#include <gsl/gsl_spline.h>

#include "setup.h"

typedef struct
{
  const LbSetup *setup; /* borrowed */
  double density;       /* kg/m3 */
  double viscosity;     /* kinematic, m2/s */
  gsl_spline *bed;      /* depth against x; NULL for a plane bed */
  gsl_spline *profile;  /* speed fraction against height fraction; NULL for the other laws */
  gsl_interp_accel *bed_accel;
  gsl_interp_accel *profile_accel;
} OracleRiver;

/* `setup` must outlive the river. Free with oracle_river_clear(). */
void oracle_river_init (OracleRiver *river, const LbSetup *setup);
void oracle_river_clear (OracleRiver *river);

/* Depth, m, at x; and how it changes with x. */
double oracle_bed_depth (const OracleRiver *river, double x);
double oracle_bed_slope (const OracleRiver *river, double x);

/* Speed, m/s, of the water past the rig, downstream: the current and the boat's own way. */
double oracle_water_speed (const OracleRiver *river, double x, double z);

/* Load per unstretched length, N/m, on a line of unit direction `t` stretched by the factor
 * `stretch`: drag in the water, and weight less buoyancy. */
void oracle_line_load (const OracleRiver *river,
                       const LbLine *line,
                       const double p[2],
                       const double t[2],
                       double stretch,
                       bool in_air,
                       double load[2]);

/* Force, N, on the weight, and on a lure, fully in the water at `p`. */
void oracle_weight_force (const OracleRiver *river, const double p[2], double force[2]);
void oracle_lure_force (const OracleRiver *river,
                        const LbLure *lure,
                        const double p[2],
                        double force[2]);
