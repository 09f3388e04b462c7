/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The catalogue's window: choose a piece of tackle for one place of the rig, and keep pieces of
 * one's own. */
#pragma once

#include <gtk/gtk.h>

#include "catalogue_store.h"
#include "own_parts.h"
#include "rig_place.h"

G_BEGIN_DECLS

#define LB_TYPE_CATALOGUE_WINDOW (lb_catalogue_window_get_type ())
G_DECLARE_FINAL_TYPE (LbCatalogueWindow, lb_catalogue_window, LB, CATALOGUE_WINDOW, GtkWindow)

/* Reads the catalogue anew and lists what there is for `place`, what stands there now selected.
 * Using a piece is one undoable change and closes the window. */
GtkWidget *lb_catalogue_window_new (LbSession *session, LbCatalogueStore *store, LbRigPlace place);

/* How many pieces are listed for the text searched for. */
guint lb_catalogue_window_get_n_listed (LbCatalogueWindow *self);

/* What a user does, for tests: searches, selects the piece of that name (whether there is one),
 * uses the one selected, and reads what the details say of it (free with g_free()). */
void lb_catalogue_window_search (LbCatalogueWindow *self, const char *text);
gboolean lb_catalogue_window_select (LbCatalogueWindow *self, const char *name);
void lb_catalogue_window_use (LbCatalogueWindow *self);
char *lb_catalogue_window_dup_details (LbCatalogueWindow *self);
LbKeepRow *lb_catalogue_window_get_keep_row (LbCatalogueWindow *self); /* (transfer none) */
LbOwnRow *lb_catalogue_window_get_own_row (LbCatalogueWindow *self);   /* (transfer none) */

G_END_DECLS
