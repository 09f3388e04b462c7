/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plain values and keys of a JSON tree, of no field of a setup, each refused with one line: the
 * path, what was found, what was expected. Internal to model. All return FALSE with an
 * LB_FILE_ERROR on a fault and then leave what they should set alone. */
#pragma once

#include <stdbool.h>
#include <json-glib/json-glib.h>

#include "file_error.h"

/* Whether no key of `object` is missing from `known`, which ends with NULL. `prefix` is the path of
 * the object with a dot after it, "" at the top. */
gboolean lb_read_check_keys (JsonObject *object,
                             const char *const *known,
                             const char *prefix,
                             GError **error);

/* A text of at most `longest` characters, of one line if asked. Replaces `*text`. */
gboolean lb_read_text (JsonNode *node,
                       const char *path,
                       gboolean one_line,
                       glong longest,
                       char **text,
                       GError **error);

gboolean lb_read_boolean (JsonNode *node, const char *path, bool *value, GError **error);

gboolean lb_read_number (JsonNode *node,
                         const char *path,
                         double minimum,
                         double maximum,
                         double *value,
                         GError **error);

gboolean lb_read_whole (
    JsonNode *node, const char *path, int minimum, int maximum, int *value, GError **error);

/* One of `n` words, the names of the numbers from 0 up. */
gboolean lb_read_choice (JsonNode *node,
                         const char *path,
                         const char *(*name) (int value),
                         int n,
                         int *value,
                         GError **error);

/* NULL after a fault. */
JsonObject *lb_read_object (JsonNode *node, const char *path, GError **error);
