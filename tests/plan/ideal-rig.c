/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ideal-rig.h"

#include "rigs.h"

LbSetup
ideal_rig (size_t n_leaders, double height)
{
  LbSetup setup = rig_cable (5, IDEAL_DOWN, 0, 1);
  LbRiver *river = &setup.river;

  river->depth = IDEAL_DEPTH;
  river->bed_friction = 0.5;
  river->surface_current = 1;
  setup.boat.reel_height = 0.4;
  setup.rig.mainline = rig_ideal_line (river);
  setup.rig.mainline.diameter = 1e-6; /* so that it weighs nothing in the air either */
  setup.rig.weight.drag_coefficient = IDEAL_DRAG_AREA / lb_weight_frontal_area (&setup.rig.weight);
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, height };
  setup.rig.n_leaders = n_leaders;
  setup.rig.leaders[0] = (LbLeader){
    .length = 3,
    .line = rig_ideal_line (river),
    .lure = { .drag_area = IDEAL_LURE_AREA, .length = 0.05 },
  };
  setup.band = (LbBand){ 0.1, 0.5 };
  return setup;
}

double
ideal_drag (const LbSetup *setup, double speed)
{
  double area = IDEAL_DRAG_AREA + (setup->rig.n_leaders > 0 ? IDEAL_LURE_AREA : 0);

  return 0.5 * setup->river.density * area * speed * speed;
}

double
ideal_angle (const LbSetup *setup, double speed)
{
  return atan2 (ideal_drag (setup, speed), IDEAL_DOWN);
}

double
ideal_speed (const LbSetup *setup, double angle)
{
  return sqrt (IDEAL_DOWN * tan (angle) / ideal_drag (setup, 1));
}

double
ideal_height (const LbSetup *setup, double line_out, double angle)
{
  return setup->river.depth + setup->boat.reel_height - line_out * cos (angle);
}

double
ideal_angle_at (const LbSetup *setup, double line_out, double height)
{
  return acos ((setup->river.depth + setup->boat.reel_height - height) / line_out);
}
