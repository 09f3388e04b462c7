/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All that the catalogue says of one piece: a drawing, its numbers with their ranges, and where
 * they come from. */
#pragma once

#include <gtk/gtk.h>

#include "catalogue_item.h"

G_BEGIN_DECLS

#define LB_TYPE_CATALOGUE_DETAILS (lb_catalogue_details_get_type ())
G_DECLARE_FINAL_TYPE (LbCatalogueDetails, lb_catalogue_details, LB, CATALOGUE_DETAILS, GtkWidget)

GtkWidget *lb_catalogue_details_new (LbSession *session);

/* Shows `item` (copied; its strings need only live until this returns), or nothing for NULL. */
void lb_catalogue_details_show (LbCatalogueDetails *self, const LbCatalogueItem *item);

/* All texts, line by line, for tests. Free with g_free(). */
char *lb_catalogue_details_dup_text (LbCatalogueDetails *self);

G_END_DECLS
