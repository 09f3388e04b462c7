/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "json_text.h"
#include "result.h"

/* What is told besides the readings, of an answer that has not failed. */
typedef struct
{
  double fish;   /* m: the loads with a fish of that length on; unset: none */
  gboolean snag; /* the pulls when something hangs up */
} LbRunExtras;

/* The answer as one JSON object, SI, heights above the bed under the body. A failed solve has
 * "converged": false and no positions. Extras are its members "fish" and "snag". Free with
 * g_free(). */
char *lb_run_json (const LbResult *result, const LbRunExtras *extras);

/* The same members, in an object that is open. */
void lb_run_json_add (LbJsonText *json, const LbResult *result);
