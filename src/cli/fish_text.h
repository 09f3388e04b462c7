/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "result.h"
#include "units.h"

/* What the hand holds with a fish of `length` m on each lure in turn, mouth closed and open, as the
 * boat goes, at half that and held on the spot. Free with g_free(). */
char *lb_fish_text (const LbResult *result, double length, LbUnits units);
