/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What commands of a pass share. */
#pragma once

#include "contents.h"
#include "pass_record.h"

/* Reads a time ("12.5", "2 s") from `least` to as long as a pass can be, s. FALSE after a message
 * that names `option`. */
gboolean lb_pass_take_time (const char *option, const char *text, double least, double *time);

/* The pass of `contents`, if `time` is one of it (INFINITY: any), with `whole` TRUE. One that
 * breaks off, or is interrupted by a signal, comes as far as it got, with `whole` FALSE, after a
 * message that says when and why. NULL after a message: nothing of it, or not as much as `time`,
 * could be computed. Free with lb_pass_record_free(). */
LbPassRecord *lb_pass_take_record (const LbContents *contents, double time, gboolean *whole);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbPassRecord, lb_pass_record_free)
