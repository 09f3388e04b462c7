/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A recorded pass as numbers, for other programs: SI units, a decimal point in every locale. */
#pragma once

#include "contents.h"
#include "pass_summary.h"

/* A table with a line for every `step` s, or for every sample when that is 0. Numbers are rounded
 * to a millionth; a field is empty where there is no value. Free with g_free(). */
char *lb_pass_csv (const LbPassRecord *record, double step);

/* One object: what the pass comes to, and the same numbers as a list of samples. Free with
 * g_free(). */
char *lb_pass_json (const LbPassRecord *record, const LbPassSummary *summary, double step);

/* How many moments there are, and their times. */
size_t lb_pass_n_moments (const LbPassRecord *record, double step);
double lb_pass_moment (const LbPassRecord *record, double step, size_t i);
