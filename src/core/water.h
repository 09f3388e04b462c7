/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Fresh, air-free water at one atmosphere: density and viscosity against temperature. */
#pragma once

typedef struct
{
  double density;             /* kg/m3 */
  double kinematic_viscosity; /* m2/s */
} LbWater;

/* Density, kg/m3, at `celsius` (0 to 30 here; the formula holds to 150).
 * Source: Kell 1975, J. Chem. Eng. Data 20(1), 97-105. */
double lb_water_density (double celsius);

/* Dynamic viscosity, Pa s, at `celsius` (-20 to 110).
 * Source: IAPWS SR6-08(2011), liquid at 0.1 MPa. */
double lb_water_viscosity (double celsius);

/* Both properties at once. A pinned value that is set (not NAN) stands in for the computed one;
 * the pinned viscosity is the kinematic one. */
LbWater lb_water_at (double celsius, double pinned_density, double pinned_kinematic_viscosity);
