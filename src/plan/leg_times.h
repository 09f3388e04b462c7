/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the legs of a course come to. */
#pragma once

#include "pass_script.h"

/* Of a leg, its change of speed at the beginning included. Zeros: it never ends. */
typedef struct
{
  double time;    /* s */
  double way;     /* m over the ground */
  double turning; /* s, what is left of the time for the turn */
} LbLegTimes;

/* Those of all legs of `script` for `setup`, up to the first that never ends; the others' are zero.
 */
void lb_leg_times_find (const LbPassScript *script,
                        const LbSetup *setup,
                        LbLegTimes times[LB_MAX_COURSE_LEGS]);
