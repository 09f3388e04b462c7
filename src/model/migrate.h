/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Brings files of older versions up to the present one, a version at a time. */
#pragma once

#include <json-glib/json-glib.h>

#include "file_error.h"

#define LB_RIG_FORMAT "layback-rig"
#define LB_RIG_VERSION 1

/* Checks "format" and "version" of the top object and changes it in place to LB_RIG_VERSION.
 * Returns FALSE with LB_FILE_ERROR_VERSION (or _TYPE, _MISSING_KEY) when that cannot be done. */
gboolean lb_migrate (JsonObject *top, GError **error) G_GNUC_WARN_UNUSED_RESULT;
