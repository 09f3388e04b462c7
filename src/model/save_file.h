/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writes a file so that it is whole at every moment. Internal to model. */
#pragma once

#include <gio/gio.h>

#include "file_error.h"

/* Writes to a temporary file beside `file`, syncs it, and renames it over: whatever goes wrong, the
 * old file is still there. Follows symbolic links and keeps the permissions; a file that may not be
 * written is left alone. Returns FALSE with an LB_FILE_ERROR_WRITE, one line, on a fault. */
gboolean lb_save_file (GFile *file, const char *text, gsize length, GError **error)
    G_GNUC_WARN_UNUSED_RESULT;
