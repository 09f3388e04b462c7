/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "contents.h"
#include "result.h"
#include "units.h"

/* The readings as a table to read in a terminal, with the sentence above and the cautions below.
 * Free with g_free(). */
char *lb_run_table (const LbResult *result, const LbContents *contents, LbUnits units);
