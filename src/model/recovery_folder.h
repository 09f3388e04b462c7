/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The folders of copies: one for each running program, held by a lock. Internal to model. */
#pragma once

#include <glib.h>

/* $XDG_STATE_HOME/layback/recovery. Free with g_free(). */
char *lb_recovery_root (void);

/* A folder that this program holds until lb_recovery_folder_free(). */
typedef struct
{
  char *path;
  int lock; /* file descriptor */
} LbRecoveryFolder;

/* A new one. NULL with an error of the domain G_FILE_ERROR. (transfer full) */
LbRecoveryFolder *lb_recovery_folder_new (GError **error);

/* Takes hold of one that is there. NULL when a running program has it. (transfer full) */
LbRecoveryFolder *lb_recovery_folder_claim (const char *path);

/* The names of the copies in it, without their folder; free with g_strfreev(). */
char **lb_recovery_folder_list (const LbRecoveryFolder *folder);

/* Lets go of it, and removes it when no copy is in it. */
void lb_recovery_folder_free (LbRecoveryFolder *folder);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbRecoveryFolder, lb_recovery_folder_free)
