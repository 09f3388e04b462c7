/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a JSON tree to the contents of a rig. Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

#include "contents.h"

/* As lb_reader_parse() for a tree of lb_strict_json_parse(). */
gboolean lb_reader_read_tree (JsonNode *tree, LbContents *contents, GError **error);
