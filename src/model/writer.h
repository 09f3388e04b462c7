/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writes rig files: keys in a fixed order, numbers in their shortest form that reads back equal,
 * the same bytes in every locale. */
#pragma once

#include <gio/gio.h>

#include "contents.h"
#include "file_error.h"
#include "json_text.h"

/* The text of the file, ending with a newline. Free with g_free(). */
char *lb_writer_to_text (const LbContents *contents, gsize *length);

/* The same with the keys that are left out while they hold what their absence means. */
char *lb_writer_to_full_text (const LbContents *contents, gsize *length);

/* What a variant replaces, as the object that stands at its key "set". */
void lb_writer_add_variant_set (LbJsonText *json, const LbVariant *variant);

/* Writes it to `file` as lb_save_file() does (save_file.h). */
gboolean
lb_writer_save (const LbContents *contents, GFile *file, GError **error) G_GNUC_WARN_UNUSED_RESULT;
