/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What commands of a pass share. */
#pragma once

#include "contents.h"
#include "pass_record.h"

/* Reads a time ("12.5", "2 s") from 0 on, s. FALSE after a message that names `option`. */
gboolean lb_pass_take_time (const char *option, const char *text, double *time);

/* The whole pass of `contents`, if `time` is one of it (INFINITY: any). NULL after a message. Free
 * with lb_pass_record_free(). */
LbPassRecord *lb_pass_take_record (const LbContents *contents, double time);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbPassRecord, lb_pass_record_free)
