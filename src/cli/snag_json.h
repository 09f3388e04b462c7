/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "json_text.h"
#include "result.h"

/* Adds the member "snag": for the weight and each lure, hung up while the motor goes on and after
 * it is stopped, the pull in the hand over time, SI. `result` must not have failed. */
void lb_snag_json_add (LbJsonText *json, const LbResult *result);
