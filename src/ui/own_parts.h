/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the catalogue's window has for parts of the user's own: a row to keep what stands in the rig
 * now, and a row to rename or delete the own part that is selected. */
#pragma once

#include <gtk/gtk.h>

#include "catalogue_item.h"

G_BEGIN_DECLS

/* ---- Keeping ---- */

#define LB_TYPE_KEEP_ROW (lb_keep_row_get_type ())
G_DECLARE_FINAL_TYPE (LbKeepRow, lb_keep_row, LB, KEEP_ROW, GtkWidget)

/* Signal "kept" (string): the id of the new part, once the catalogue is read anew. */
GtkWidget *lb_keep_row_new (LbSession *session, LbCatalogueStore *store, LbRigPlace place);

/* What its button does with `name` in its entry; for tests. */
void lb_keep_row_keep (LbKeepRow *self, const char *name);

/* Why it could not be kept; NULL when it could. */
const char *lb_keep_row_get_fault (LbKeepRow *self);

/* ---- Changing ---- */

#define LB_TYPE_OWN_ROW (lb_own_row_get_type ())
G_DECLARE_FINAL_TYPE (LbOwnRow, lb_own_row, LB, OWN_ROW, GtkWidget)

/* Signal "kept" (string), as above, after a part that was deleted is put back. */
GtkWidget *lb_own_row_new (LbCatalogueStore *store, guint uses);

/* The part it is for; hides what cannot be done for one that is not the user's, or for NULL. */
void lb_own_row_show (LbOwnRow *self, const LbCatalogueItem *item);

/* What its buttons do; for tests. */
void lb_own_row_rename (LbOwnRow *self, const char *name);
void lb_own_row_delete (LbOwnRow *self);
void lb_own_row_put_back (LbOwnRow *self);

G_END_DECLS
