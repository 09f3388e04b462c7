/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The copy of an unsaved document as a file: one line of JSON that says what it is a copy of, then
 * the text of the rig file. Internal to model. */
#pragma once

#include "document.h"

#define LB_RECOVERY_ENDING ".unsaved"

/* The bytes of the file. (transfer full) */
GBytes *lb_recovery_copy_of (LbDocument *document);

typedef struct
{
  LbContents *contents;
  GFile *file; /* NULL: it had none */
  char *mark;  /* of what its file held (file_watch.h); NULL without a file */
  GDateTime *time;
} LbRecoveryCopy;

/* Reads such a file. NULL with an LB_FILE_ERROR when it is damaged. (transfer full) */
LbRecoveryCopy *lb_recovery_copy_read (const char *path, GError **error);
void lb_recovery_copy_free (LbRecoveryCopy *copy);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbRecoveryCopy, lb_recovery_copy_free)
