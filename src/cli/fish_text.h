/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "result.h"
#include "units.h"

/* What the hand holds with a fish of `length` m on (lb_fish_loads()), as a table with a heading;
 * "-" where no answer was found. `result` must not have failed. Free with g_free(). */
char *lb_fish_text (const LbResult *result, double length, LbUnits units);
