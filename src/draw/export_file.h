/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a surface to a file; for the files of this folder only. */
#pragma once

#include <cairo.h>
#include <glib.h>

/* For the stream functions of cairo; `closure` is a GByteArray. */
cairo_status_t lb_export_append_cb (void *closure, const unsigned char *data, unsigned int length);

/* Writes through a temporary file beside `path`, synced and renamed, so that a failure leaves what
 * was there before. FALSE with an LB_EXPORT_ERROR_WRITE. */
gboolean lb_export_write_bytes (const char *path, const GByteArray *bytes, GError **error);
