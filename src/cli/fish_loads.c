/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fish_loads.h"

static const double shares[LB_FISH_N_SPEEDS] = { 1, 0.5, 0 }; /* of the boat's speed */

static const LbFishLoad no_load = { LB_UNSET, LB_UNSET, LB_UNSET, LB_UNSET, LB_UNSET, LB_UNSET };

/* On lure `lure`, at each speed. */
static void
hold (LbSteady *steady, const LbResult *result, size_t lure, bool open, LbFishLoads *loads)
{
  const LbFish fish = { loads->length, open };

  for (size_t k = 0; k < LB_FISH_N_SPEEDS; k++)
    {
      LbFishLoad *load = &loads->loads[lure][open][k];

      *load = no_load;
      if (steady)
        lb_fish_hold (steady, lb_result_get_setup (result), lure, &fish,
                      lb_result_get_shape (result)->line_out, loads->speeds[k], load);
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
    {
      hold (steady, result, i, false, &loads);
      hold (steady, result, i, true, &loads);
    }
  lb_steady_free (steady);
  return loads;
}
