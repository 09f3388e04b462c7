/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the hand holds with a fish on each lure in turn, mouth closed and open: as the boat goes, at
 * half that and held on the spot. */
#pragma once

#include "fish.h"
#include "result.h"

/* What a fish is believed to be, m. */
#define LB_FISH_SHORTEST 0.05
#define LB_FISH_LONGEST 3.048 /* 10 ft */

#define LB_FISH_N_SPEEDS 3
#define LB_FISH_N_MOUTHS 2 /* closed, open */

typedef struct
{
  double length; /* m */
  size_t n_lures;
  double speeds[LB_FISH_N_SPEEDS]; /* m/s, of the boat over the ground */
  /* All unset where no steady run was found. */
  LbFishLoad loads[LB_MAX_LEADERS][LB_FISH_N_MOUTHS][LB_FISH_N_SPEEDS];
} LbFishLoads;

/* With a fish of `length` m, on as much line as `result` has, which must not have failed. */
LbFishLoads lb_fish_loads (const LbResult *result, double length);

#define LB_FISH_ON_N_SPEEDS 2 /* as the boat goes, reduced */

/* A fish on one lure, as the boat goes and at another speed. Plain values. */
typedef struct
{
  size_t lure;
  double length;                                           /* m */
  double speeds[LB_FISH_ON_N_SPEEDS];                      /* m/s, of the boat over the ground */
  LbFishLoad loads[LB_FISH_N_MOUTHS][LB_FISH_ON_N_SPEEDS]; /* unset where no run was found */
} LbFishOn;

/* The same with a fish on lure `lure` alone, and with the boat at `reduced` m/s. */
LbFishOn lb_fish_on (const LbResult *result, size_t lure, double length, double reduced);
