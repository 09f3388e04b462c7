/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "result.h"

/* The answer as one JSON object, SI, heights above the bed under the body. A failed solve has
 * "converged": false and no positions. Free with g_free(). */
char *lb_run_json (const LbResult *result);
