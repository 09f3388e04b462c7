/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What restoring needs of the recovery. Internal to model. */
#pragma once

#include "recovery.h"

gboolean lb_recovery_is_own_folder (LbRecovery *self, const char *path);

/* Where a copy of this program may be put. Free with g_free(); NULL with an error. */
char *lb_recovery_new_path (LbRecovery *self, GError **error);

/* Watches `document`, whose copy is at `path` already. */
void lb_recovery_adopt (LbRecovery *self, LbDocument *document, const char *path);
