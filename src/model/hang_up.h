/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weight, or a lure, hung up on the bed at a steady run: how hard the line pulls as time goes
 * on, and until when it can be held. Plain values. */
#pragma once

#include "result.h"
#include "snag.h"

/* N; what most people can pull with two hands for a moment: 44 lbf, the initial limit of the car
 * industry's ergonomics, as a training page quotes it that points to the tables of Snook & Ciriello
 * 1991, Ergonomics 34(9), 1197 (those not read). */
#define LB_HAND_LIMIT 196.0

/* m/s; a boat that is slower pulls no harder as time goes on. */
#define LB_HANG_UP_AT_REST 1e-6

/* s; further ahead a pull is not told. */
#define LB_HANG_UP_LONGEST 60.0

/* s; what comes later than this is not told to come. */
#define LB_HANG_UP_FAR_OFF 600.0

typedef struct
{
  LbSnag snag;
  double speed;      /* m/s, of the boat over the ground; below 0 it drifts downstream */
  LbSnagTimes times; /* until LB_HAND_LIMIT, and until a line breaks */
  double end;        /* s, until when its pull is worth telling: something breaks, or else some time
                        after the hand's limit; 0 while the boat rests */
} LbHangUp;

/* What hangs up is the weight, or lure `lure` - 1; `lure` 0 is the weight. `result` must not have
 * failed. The boat goes on as it does, or the motor is stopped and the current at the reel takes
 * the boat along at once. */
LbHangUp lb_hang_up (const LbResult *result, size_t lure, bool motor_stopped);

/* The same at a moment of a pass, whose shape this is. The boat heads upstream with the setup's
 * speed. */
LbHangUp
lb_hang_up_at (const LbSetup *setup, const LbShape *shape, size_t lure, bool motor_stopped);

/* Whether one of the times comes at all, before it is far off. */
bool lb_hang_up_comes (double time);

/* Seconds until something gives in, the hand or a line; unset: never. */
double lb_hang_up_until (const LbHangUp *self);

/* N in the hand at `time` s, 0 to its end. At 0 that of the steady run; a line that is slack while
 * the boat drifts over what is held pulls less than that. */
double lb_hang_up_pull (const LbHangUp *self, double time);
