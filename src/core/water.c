/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "water.h"

#include <math.h>

#define KELVIN_AT_0_C 273.15

double
lb_water_density (double celsius)
{
  /* Kell 1975, kg/m3 and C. The denominator is 16.879850e-3; a mistyped 16.897850e-3 is common. */
  static const double c[] = { 999.83952,     16.945176,    -7.9870401e-3,
                              -46.170461e-6, 105.56302e-9, -280.54253e-12 };
  double above = 0;

  for (int i = 5; i >= 0; i--)
    above = above * celsius + c[i];
  return above / (1 + 16.879850e-3 * celsius);
}

double
lb_water_viscosity (double celsius)
{
  /* IAPWS SR6-08(2011), liquid at 0.1 MPa. */
  double x = (celsius + KELVIN_AT_0_C) / 300;

  return 1e-6
         * (280.68 * pow (x, -1.9) + 511.45 * pow (x, -7.7) + 61.131 * pow (x, -19.6)
            + 0.45903 * pow (x, -40));
}

LbWater
lb_water_at (double celsius, double pinned_density, double pinned_kinematic_viscosity)
{
  LbWater water = { pinned_density, pinned_kinematic_viscosity };

  if (isnan (water.density))
    water.density = lb_water_density (celsius);
  if (isnan (water.kinematic_viscosity))
    water.kinematic_viscosity = lb_water_viscosity (celsius) / water.density;
  return water;
}
