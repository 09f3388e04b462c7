/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fish_loads.h"

static const double shares[LB_FISH_N_SPEEDS] = { 1, 0.5, 0 }; /* of the boat's speed */

static const LbFishLoad no_load = {
  .in_hand = LB_UNSET,
  .drag = LB_UNSET,
  .leader_pull = LB_UNSET,
  .leader_spare = LB_UNSET,
  .mainline_spare = LB_UNSET,
  .shank_spare = LB_UNSET,
  .weakest = { LB_UNSET, LB_PART_MAINLINE },
  .water_speed = LB_UNSET,
};

/* On lure `lure` at each of the `n` speeds, into `loads`. */
static void
hold (LbSteady *steady,
      const LbResult *result,
      size_t lure,
      LbFish fish,
      const double *speeds,
      size_t n,
      LbFishLoad *loads)
{
  for (size_t k = 0; k < n; k++)
    {
      loads[k] = no_load;
      if (steady)
        lb_fish_hold (steady, lb_result_get_setup (result), lure, &fish,
                      lb_result_get_shape (result)->line_out, speeds[k], &loads[k]);
    }
}

LbFishLoads
lb_fish_loads (const LbResult *result, double length)
{
  const LbSetup *setup = lb_result_get_setup (result);
  LbFishLoads loads = { .length = length, .n_lures = setup->rig.n_leaders };
  LbSteady *steady = lb_steady_new ();

  for (size_t k = 0; k < LB_FISH_N_SPEEDS; k++)
    loads.speeds[k] = shares[k] * setup->boat.speed_over_ground;
  for (size_t i = 0; i < loads.n_lures; i++)
    for (int open = 0; open < LB_FISH_N_MOUTHS; open++)
      hold (steady, result, i, (LbFish){ length, open }, loads.speeds, LB_FISH_N_SPEEDS,
            loads.loads[i][open]);
  lb_steady_free (steady);
  return loads;
}

LbFishOn
lb_fish_on (const LbResult *result, size_t lure, double length, double reduced)
{
  LbFishOn on = { .lure = lure,
                  .length = length,
                  .speeds = { lb_result_get_setup (result)->boat.speed_over_ground, reduced } };
  LbSteady *steady = lb_steady_new ();

  for (int open = 0; open < LB_FISH_N_MOUTHS; open++)
    hold (steady, result, lure, (LbFish){ length, open }, on.speeds, LB_FISH_ON_N_SPEEDS,
          on.loads[open]);
  lb_steady_free (steady);
  return on;
}
