/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "json_text.h"
#include "result.h"

/* The answer as one JSON object, SI, heights above the bed under the body. A failed solve has
 * "converged": false and no positions. Free with g_free(). */
char *lb_run_json (const LbResult *result);

/* The same members, in an object that is open. */
void lb_run_json_add (LbJsonText *json, const LbResult *result);
