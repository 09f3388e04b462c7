/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The variants of a rig file. Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

#include "file_error.h"
#include "variants.h"

/* Reads the list at the key "variants". */
gboolean lb_read_variants (JsonNode *node, LbVariants *variants, GError **error);
