/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rigs.h"

#include <gsl/gsl_math.h>

#define RIGID 1e9 /* N: the axial stiffness of a line that does not stretch to speak of */

LbSetup
rig_reference (double weight_mass, double boat_speed, double surface_current)
{
  LbSetup setup = { 0 };
  double wire_area = M_PI * 0.0007 * 0.0007 / 4;
  double leader_area = M_PI * 0.00035 * 0.00035 / 4;
  LbLine wire = { 0.0007, 7850, 150e9 * wire_area, LB_UNSET, 1.2, 0.02, 1 };
  LbLine shank = { 0.0007, 1140, 2e9 * wire_area, LB_UNSET, 1.2, 0.02, 1 };
  LbLine leader = { 0.00035, 1140, 2e9 * leader_area, LB_UNSET, 1.2, 0.02, 1 };

  setup.river = (LbRiver){ .depth = 6,
                           .bed_friction = 0.5,
                           .surface_current = surface_current,
                           .profile = { .law = LB_PROFILE_POWER, .exponent = 6 },
                           .temperature = 4,
                           .density = 1000,
                           .kinematic_viscosity = LB_UNSET,
                           .gravity = 9.81 };
  setup.boat.speed_over_ground = boat_speed;
  setup.rig.mainline = wire;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.1 };
  setup.rig.shank_length = 1;
  setup.rig.shank = shank;
  setup.rig.weight = (LbWeight){ weight_mass, 11340, LB_WEIGHT_BALL, 0.5 };
  setup.rig.n_leaders = 2;
  for (int i = 0; i < 2; i++)
    setup.rig.leaders[i] =
        (LbLeader){ 0.45 * (i + 1), 3 * (i + 1), leader, { 3e-4, 0.4, 0.02943, 0.006, 0.07 } };
  setup.band = (LbBand){ 0.1, 0.45 };
  return setup;
}

LbLine
rig_ideal_line (const LbRiver *river)
{
  return (LbLine){ 0.0005, river->density, RIGID, LB_UNSET, 0, 0, 1 };
}

void
rig_set_weight (LbSetup *setup, double down, double back, double speed)
{
  LbWeight *w = &setup->rig.weight;
  double rho = setup->river.density;

  w->density = 11340;
  w->shape = LB_WEIGHT_BALL;
  w->mass = down / (setup->river.gravity * (1 - rho / w->density));
  w->drag_coefficient =
      speed > 0 ? back / (0.5 * rho * lb_weight_frontal_area (w) * speed * speed) : 0;
}

double
rig_line_density (const LbSetup *setup, double diameter, double per_length)
{
  return setup->river.density
         + per_length / (setup->river.gravity * M_PI * diameter * diameter / 4);
}

LbSetup
rig_cable (double length, double down, double back, double speed)
{
  LbSetup setup = { 0 };

  setup.river = (LbRiver){ .depth = 100,
                           .surface_current = speed,
                           .profile = { .law = LB_PROFILE_UNIFORM, .exponent = 6 },
                           .temperature = 10,
                           .density = 1000,
                           .kinematic_viscosity = LB_UNSET,
                           .gravity = 9.80665 };
  setup.rig.mainline = (LbLine){ 0.0005, 1000, RIGID, LB_UNSET, 1.2, 0, 1 };
  setup.rig.shank = rig_ideal_line (&setup.river);
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, length };
  setup.band = (LbBand){ 0.1, 0.45 };
  rig_set_weight (&setup, down, back, speed);
  return setup;
}
