/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the functions that make changes do it. Internal to model. */
#pragma once

#include "change.h"

/* Replaces `size` bytes at `offset` of the setup by those at `bytes`; changes of the same place may
 * merge. Takes `label` over. */
LbChange *
lb_change_new_patch (size_t offset, size_t size, const void *bytes, char *label /* full */);

/* A patch of one member of LbSetup by `*value`. */
#define LB_CHANGE_NEW_MEMBER(member, value, label)                                                 \
  lb_change_new_patch (offsetof (LbSetup, member), sizeof ((LbSetup *) 0)->member, (value), (label))

/* Lets a patch set the name of a leader's lure too. */
void lb_change_add_lure_name (LbChange *change, size_t leader, const char *name);

/* `text` as it may stand in a document: UTF-8, of at most `longest` characters. Free with
 * g_free(). */
char *lb_change_mend_text (const char *text, gboolean one_line, glong longest);

/* Copies for lb_change_new_setup(). */
LbSetup *lb_change_dup_setup (const LbSetup *setup);
char **lb_change_dup_names (const char *const *names);
