/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads rig files. All or nothing: `contents` is touched only when the whole file was accepted. */
#pragma once

#include <gio/gio.h>

#include "contents.h"
#include "file_error.h"

#define LB_READER_LARGEST_FILE (4 * 1024 * 1024) /* bytes */
#define LB_READER_DEEPEST 16                     /* objects and arrays within one another */

/* Reads `text`, `length` bytes (-1: up to the zero). `contents` must be initialised. On a fault
 * returns FALSE with an LB_FILE_ERROR and leaves `contents` as it was. */
gboolean lb_reader_parse (const char *text, gssize length, LbContents *contents, GError **error)
    G_GNUC_WARN_UNUSED_RESULT;

/* The same for a file. The message starts with the file's name. */
gboolean
lb_reader_load (GFile *file, LbContents *contents, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The bytes of a file, no more than a rig file may have. NULL with an error when it cannot be read
 * or is no plain file; the message starts with its name. (transfer full) */
GBytes *lb_reader_read_bytes (GFile *file, GError **error);

/* As lb_reader_load() for the bytes of `file`. */
gboolean lb_reader_parse_bytes (GFile *file, GBytes *bytes, LbContents *contents, GError **error);

/* Changes one value by its key path, as "river.surface_current_m_s" and "1.5". `value` is JSON, or
 * a bare word for a string. Takes every key of a rig file, and checks as the reader does. On a
 * fault returns FALSE with an LB_FILE_ERROR and leaves `contents` as it was. */
gboolean lb_reader_set (LbContents *contents, const char *path, const char *value, GError **error)
    G_GNUC_WARN_UNUSED_RESULT;

/* The same for several changes "path=value" (a NULL-terminated list, which may be NULL), made
 * together: only the outcome of all is checked. */
gboolean lb_reader_set_all (LbContents *contents,
                            const char *const *changes,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
