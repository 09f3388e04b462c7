/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads JSON as RFC 8259 has it and nothing more. Internal to model.
 *
 * json-glib's own parser takes comments, repeated keys, trailing commas and any depth of nesting
 * (until the stack ends); a file from anywhere must not get that far. The tree is json-glib's. */
#pragma once

#include <json-glib/json-glib.h>

#include "file_error.h"

/* Reads `length` bytes. Every number of the tree is a double. NULL with LB_FILE_ERROR_SYNTAX (or
 * _RANGE for a number too large for a double); the message says the line, the column and the key
 * path. (transfer full): free with json_node_unref(). */
JsonNode *lb_strict_json_parse (const char *text, gsize length, guint deepest, GError **error)
    G_GNUC_WARN_UNUSED_RESULT;
