/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The variants of a rig file, and one as it is written on a command line. */
#pragma once

#include <json-glib/json-glib.h>

#include "file_error.h"
#include "variants.h"

/* Reads the list at the key "variants". */
gboolean lb_read_variants (JsonNode *node, LbVariants *variants, GError **error);

/* One more variant behind those of `variants`, of which there must be less than LB_MAX_VARIANTS;
 * messages call it `path`. */
gboolean lb_read_variant (JsonNode *node, const char *path, LbVariants *variants, GError **error);

/* Reads "heavy: weight.mass_kg=1.1, weight.shape=disc" into one more variant behind those of
 * `variants`, as above. A value is JSON, or a bare word for a text; a leader may be written
 * "leaders.1." too. Nothing behind the name, or no colon, makes the rig as it is. On a fault
 * returns FALSE with an LB_FILE_ERROR and leaves `variants` as it was. */
gboolean lb_read_variant_text (const char *text,
                               LbVariants *variants,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
