/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists of points in a rig file. Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

#include "file_error.h"

/* Reads [[a, b], ...] of `least` to `most` points. Ranges and order are left to
 * lb_setup_validate(). */
gboolean lb_read_points (JsonNode *node,
                         const char *path,
                         gsize least,
                         gsize most,
                         double *a,
                         double *b,
                         gsize *n,
                         GError **error);
