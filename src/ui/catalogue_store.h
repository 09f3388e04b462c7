/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The catalogue as the pages of a window show it: the built-in one with the user's own behind it.
 *
 * Signal "changed": the catalogue was read anew; what was taken from it before is gone. */
#pragma once

#include <glib-object.h>

#include "catalogue.h"
#include "part_drawing.h"

G_BEGIN_DECLS

#define LB_TYPE_CATALOGUE_STORE (lb_catalogue_store_get_type ())
G_DECLARE_FINAL_TYPE (LbCatalogueStore, lb_catalogue_store, LB, CATALOGUE_STORE, GObject)

LbCatalogueStore *lb_catalogue_store_new (void);

/* The catalogue; an empty one when it could not be read. Valid until "changed". (transfer none) */
const LbCatalogue *lb_catalogue_store_get (LbCatalogueStore *self);

/* Why the catalogue, or the user's own part of it, could not be read; NULL when it could. */
const char *lb_catalogue_store_get_fault (LbCatalogueStore *self);

/* Reads it anew: another window or program may have changed the user's own. */
void lb_catalogue_store_reload (LbCatalogueStore *self);

/* Keep, rename and take away parts of the user's own; on success the catalogue is read anew. On a
 * fault they return FALSE and `error` says why. See own_catalogue.h. */
gboolean lb_catalogue_store_keep (LbCatalogueStore *self,
                                  const LbTackle *tackle,
                                  guint uses,
                                  const char *name,
                                  char **id,
                                  GError **error);
gboolean lb_catalogue_store_rename (LbCatalogueStore *self,
                                    const char *id,
                                    const char *name,
                                    GError **error);
gboolean lb_catalogue_store_remove (LbCatalogueStore *self, const char *id, GError **error);

G_END_DECLS
