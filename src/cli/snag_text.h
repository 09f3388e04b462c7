/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "result.h"
#include "units.h"

/* How the pull in the hand grows once the weight or a lure hangs up, with the motor going on and
 * stopped, as tables with a heading. `result` must not have failed. Free with g_free(). */
char *lb_snag_text (const LbResult *result, LbUnits units);
