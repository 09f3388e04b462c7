/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fish.h"

#include "water.h"

#define PI 3.14159265358979323846

/* See the header. */
#define WETTED_AREA 0.4 /* of the length squared */
#define SKIN_DRAG 0.015
#define MOUTH_WIDTH 0.1 /* of the length */
#define CUP_DRAG 1.4

double
lb_fish_drag_area (const LbFish *fish)
{
  double mouth = MOUTH_WIDTH * fish->length;
  double area = SKIN_DRAG * WETTED_AREA * fish->length * fish->length;

  return fish->mouth_open ? area + CUP_DRAG * PI / 4 * mouth * mouth : area;
}

LbSetup
lb_fish_hook (const LbSetup *setup, size_t leader, const LbFish *fish)
{
  LbSetup hooked = *setup;
  LbLure *lure = &hooked.rig.leaders[leader].lure;
  double area = lure->drag_area + lb_fish_drag_area (fish);

  lure->down_force_ratio *= lure->drag_area / area;
  lure->drag_area = area;
  return hooked;
}

/* kg/m3 */
static double
density_of (const LbRiver *river)
{
  return lb_is_set (river->density) ? river->density : lb_water_density (river->temperature);
}

LbStatus
lb_fish_hold (LbSteady *steady,
              const LbSetup *setup,
              size_t leader,
              const LbFish *fish,
              double line_out,
              double speed,
              LbFishLoad *load)
{
  LbReadings readings;

  if (leader >= setup->rig.n_leaders || !(fish->length > 0) || !isfinite (fish->length))
    return LB_STATUS_BAD_SETUP;
  LbSetup hooked = lb_fish_hook (setup, leader, fish);
  hooked.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
  hooked.boat.speed_over_ground = speed;
  LbStatus status = lb_steady_solve (steady, &hooked, NULL);
  if (lb_status_is_failure (status))
    return status;
  lb_readings_compute (&readings, &hooked, lb_steady_shape (steady));
  const LbLureReading *at = &readings.lures[leader];
  double past = at->at.water_speed;
  *load = (LbFishLoad){
    .in_hand = readings.hand_tension,
    .drag = 0.5 * density_of (&hooked.river) * lb_fish_drag_area (fish) * past * past,
    .leader_pull = at->largest_tension,
    .leader_spare = at->leader_spare,
    .mainline_spare = readings.mainline_spare,
    .shank_spare = readings.shank_spare,
    .weakest = lb_readings_weakest (&readings),
    .water_speed = past,
  };
  return status;
}
