/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The value of one field from JSON. Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

#include "fields.h"
#include "file_error.h"

/* Sets "PATH: found ..., expected EXPECTED", and returns FALSE. */
gboolean lb_read_fail (
    GError **error, LbFileError code, const char *path, JsonNode *node, const char *expected);

/* A number, null where it may be, or the word of a choice. FALSE with LB_FILE_ERROR_TYPE or _RANGE
 * that names `path`. */
gboolean lb_read_value (
    const LbField *field, JsonNode *node, const char *path, double *value, GError **error);
