/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Records passes on a thread of its own. A request takes the place of the one before, whose
 * computation is called off.
 *
 * Signals, on the main context of the thread that made it:
 *  "progressed": more of the pass is recorded, or its state has changed. The first time when a
 *   second of it is there, then some times a second. */
#pragma once

#include <glib-object.h>

#include "pass_record.h"
#include "result.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_RUNNER (lb_pass_runner_get_type ())
G_DECLARE_FINAL_TYPE (LbPassRunner, lb_pass_runner, LB, PASS_RUNNER, GObject)

typedef enum
{
  LB_PASS_RUN_NOTHING,   /* nothing was asked for yet */
  LB_PASS_RUN_GOING,     /* being recorded */
  LB_PASS_RUN_WHOLE,     /* recorded to its end */
  LB_PASS_RUN_CANCELLED, /* called off; what is recorded stands */
  LB_PASS_RUN_FAILED,    /* it could not be solved on; what is recorded stands */
  LB_PASS_RUN_REFUSED,   /* there can be no such pass: lb_pass_runner_get_fault() */
} LbPassRunState;

/* (transfer full). Dropping the last reference calls off and waits for the thread. */
LbPassRunner *lb_pass_runner_new (void);

/* Asks for the pass of `script` with `setup`; both are copied. */
void lb_pass_runner_request (LbPassRunner *self, const LbSetup *setup, const LbPassScript *script);

/* Calls the computation off. */
void lb_pass_runner_cancel (LbPassRunner *self);

/* Goes on from where it was called off: what is recorded stays. Does nothing to a pass that was
 * not.
 */
void lb_pass_runner_go_on (LbPassRunner *self);

LbPassRunState lb_pass_runner_get_state (LbPassRunner *self);

/* The pass that was asked for last, which grows while it is being recorded; valid until the next
 * request. NULL: none, or refused. (transfer none) (nullable) */
LbPassRecord *lb_pass_runner_get_record (LbPassRunner *self);

/* How the computation ended, or a remark on its start. */
LbStatus lb_pass_runner_get_status (LbPassRunner *self);

/* The steady run that the pass starts from, once it is recorded, when there may be something to say
 * of it (lb_sentence_of_remark()); else NULL. (transfer none) (nullable) */
LbResult *lb_pass_runner_get_start (LbPassRunner *self);

/* Why it was refused, as lb_pass_record_new() says it; else NULL. */
const char *lb_pass_runner_get_fault (LbPassRunner *self);

/* How much of it is recorded, 0 to 1. */
double lb_pass_runner_get_done (LbPassRunner *self);

G_END_DECLS
