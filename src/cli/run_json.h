/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fish_loads.h"
#include "json_text.h"

/* The answer as one JSON object, SI, heights above the bed under the body. A failed solve has
 * "converged": false and no positions. The loads of `fish` (NULL: none) are its member "fish". Free
 * with g_free(). */
char *lb_run_json (const LbResult *result, const LbFishLoads *fish);

/* The same members, in an object that is open. */
void lb_run_json_add (LbJsonText *json, const LbResult *result);
