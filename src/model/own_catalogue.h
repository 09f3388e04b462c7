/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The user's own part of the catalogue, in one file of the same form as the built-in one. Every
 * function that changes it reads the file anew, and replaces it in one go or not at all; a file
 * that is damaged is never written over.
 *
 * All that fail return FALSE and set `error` (LB_FILE_ERROR). */
#pragma once

#include "catalogue.h"

/* Where it is: layback/catalogue.json in the user's data folder. Free with g_free(). */
char *lb_own_catalogue_dup_path (void);

/* The built-in catalogue with the user's own behind it. When the own one is damaged it is left out
 * and `own_fault` (may be NULL; free with g_free()) says why; else that is NULL. NULL with an error
 * when the built-in one is damaged. */
LbCatalogue *lb_catalogue_load_with_own (char **own_fault,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Adds a part under `name`, or gives the own part of that kind and name these values. The name is
 * made one line and cut to LB_NAME_LONGEST characters; one of blanks alone is refused, and so are
 * values out of range. `id` (may be NULL; free with g_free()) gets the part's. `uses` (LbLineUse):
 * where the line will do, beside where it did before. */
gboolean
lb_own_catalogue_add_weight (const char *name, const LbWeight *weight, char **id, GError **error);
gboolean lb_own_catalogue_add_line (
    const char *name, guint uses, const LbLine *line, char **id, GError **error);
gboolean
lb_own_catalogue_add_lure (const char *name, const LbLure *lure, char **id, GError **error);

/* Renames or takes away the own part of that id; an unknown one is LB_FILE_ERROR_MISSING_KEY. */
gboolean lb_own_catalogue_rename (const char *id, const char *name, GError **error);
gboolean lb_own_catalogue_remove (const char *id, GError **error);
