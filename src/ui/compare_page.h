/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The main page that compares variants of the document: they are drawn over one another, with the
 * table of differences below, and made and changed in the column beside. */
#pragma once

#include <gtk/gtk.h>

#include "compare_drawings.h"
#include "compare_table.h"
#include "variant_card.h"

G_BEGIN_DECLS

#define LB_MAIN_PAGE_COMPARE "compare"

#define LB_TYPE_COMPARE_PAGE (lb_compare_page_get_type ())
G_DECLARE_FINAL_TYPE (LbComparePage, lb_compare_page, LB, COMPARE_PAGE, GtkWidget)

GtkWidget *lb_compare_page_new (LbSession *session);

/* Parts of it. (transfer none) */
LbCompareDrawings *lb_compare_page_get_drawings (LbComparePage *self);
LbCompareTable *lb_compare_page_get_table (LbComparePage *self);
LbVariantCard *lb_compare_page_get_card (LbComparePage *self, gsize variant);
GtkWidget *lb_compare_page_get_add_button (LbComparePage *self);
GtkWidget *lb_compare_page_get_weights_button (LbComparePage *self);

/* Whether what is shown is not yet what the document has. */
gboolean lb_compare_page_get_busy (LbComparePage *self);

G_END_DECLS
