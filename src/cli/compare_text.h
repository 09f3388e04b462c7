/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A comparison as it is printed. Free with g_free(). */
#pragma once

#include "comparison.h"

/* A table to read in a terminal, with a line for each variant above and the cautions below. */
char *lb_compare_text (const LbComparison *comparison, const char *title, LbUnits units);

/* One JSON object, SI: for each variant what lb_run_json() says, with its name, what it replaces,
 * what there is to remark (or null) and how it differs from the first. */
char *lb_compare_json (const LbComparison *comparison, LbUnits units);
