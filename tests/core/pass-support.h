/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of the pass share. */
#pragma once

#include "pass.h"

/* The boat goes over from one speed to another between two times, straight upstream. */
LbPassPlan pass_ramp (double from, double to, double start, double end);

/* What two passes differ by. */
typedef struct
{
  double move; /* m, of any node */
  double pull; /* N, of any tension */
} PassDifference;

PassDifference pass_difference (LbPass *a, LbPass *b);

/* The largest difference between a pass with the usual step and one with a `times` shorter one, at
 * every 5 ms until `end`; and, unless NULL, how deep, m, a node of the first was under the bed. */
PassDifference pass_against_finer (
    const LbSetup *setup, const LbPassPlan *plan, double end, int times, double *depth);

/* How far, m, the deepest node is below the bed; below 0: above it. */
double pass_depth (LbPass *pass, const LbSetup *setup);

/* Starts and goes on to a time, and fails the test unless both succeed. */
void pass_run (LbPass *pass,
               const LbSetup *setup,
               const LbPassPlan *plan,
               const LbPassOptions *options,
               double time);
