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
LbVariants *lb_change_dup_variants (const LbVariants *variants);

/* Replaces the variants. `label` is copied. */
LbChange *lb_change_new_variants (const LbVariants *variants, const char *label);

/* Lets a change of the whole setup replace the variants, too (NULL does nothing). */
void lb_change_add_variants (LbChange *change, const LbVariants *variants);
