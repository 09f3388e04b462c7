/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fish_loads.h"
#include "units.h"

/* The loads in the hand as a table with a heading; "-" where no answer was found. `result` is what
 * they were found from. Free with g_free(). */
char *lb_fish_text (const LbFishLoads *loads, const LbResult *result, LbUnits units);
