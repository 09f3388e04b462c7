/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pass in a rig file: the value of the optional key "pass". Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

#include "json_text.h"
#include "pass_script.h"

#define LB_PASS_KEY "pass"

/* Reads `node` over `script`, which holds what counts for keys that are left out. FALSE with an
 * LB_FILE_ERROR that names the path; `script` is then of no use. */
gboolean lb_pass_read (JsonNode *node, LbPassScript *script, GError **error);

/* Writes the object with all its keys. */
void lb_pass_write (LbJsonText *json, const LbPassScript *script);
