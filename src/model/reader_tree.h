/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a JSON tree to the contents of a rig. Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

#include "contents.h"
#include "fields.h"

/* As lb_reader_parse() for a tree of lb_strict_json_parse(). */
gboolean lb_reader_read_tree (JsonNode *tree, LbContents *contents, GError **error);

/* FALSE with an error when `object` holds a key that has no place there: the object of the fields
 * whose path starts with `prefix`, under the law of the setup as it was read so far. */
#define LB_READER_TOP "" /* the prefix of the top object */
gboolean lb_reader_check_keys (JsonObject *object,
                               const char *prefix,
                               const char *shown_prefix,
                               const LbSetup *setup,
                               GError **error);

/* The key of `field` in the object of `prefix`, or NULL when it does not stand there. */
const char *lb_reader_key_of (const LbField *field, const char *prefix);
