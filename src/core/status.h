/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a computation reports. Zero: done. Above zero: done, with a remark the user should read.
 * Below zero: not done, and nothing that was returned may be shown as an answer. */
#pragma once

#include <stdbool.h>

typedef enum
{
  LB_STATUS_NO_CONVERGENCE = -1, /* the iteration stopped short of the tolerance */
  LB_STATUS_BAD_SETUP = -2,      /* a value that no rig or river can have */
  LB_STATUS_OUT_OF_MEMORY = -3,

  LB_STATUS_CANCELLED = -4, /* the caller's callback said stop */

  LB_STATUS_OK = 0,

  /* These three: no line out within the solver's limits was found to hold the weight at the asked
   * height, though the rig was followed from the shortest to the longest and (unless it is too low
   * even with the line all in) back. Missed would be a rig on a branch that neither leads to, and
   * one behind so much else that the scan was cut short. */
  LB_STATUS_LINE_AT_LONGEST = 1,  /* the weight cannot get down to the asked height; the answer is
                                     the rig with the longest line the solver will let out */
  LB_STATUS_LINE_AT_SHORTEST = 2, /* the weight cannot get up to the asked height (the shank alone
                                     reaches deeper); the answer is the rig with the line all in */
  LB_STATUS_HEIGHT_LEAPS = 3,     /* no line out was found that gives just the asked height: over an
                                     uneven bed, or as a line leaves the bed, the weight leaps past
                                     it; the answer is the rig at a leap */
  LB_STATUS_HELD_BY_FRICTION = 4, /* the boat is at rest over the ground and the rig would slide
                                     about on the bed without friction, which is indeterminate then;
                                     the answer is the rig as friction would hold it */
} LbStatus;

static inline bool
lb_status_is_failure (LbStatus status)
{
  return status < 0;
}

/* A fixed English name for logs and tests ("ok", "no convergence", ...). Never NULL. */
const char *lb_status_name (LbStatus status);
