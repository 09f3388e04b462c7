/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One variant of the document on the Compare page: its name, what it replaces, and what can be done
 * with it. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_VARIANT_CARD (lb_variant_card_get_type ())
G_DECLARE_FINAL_TYPE (LbVariantCard, lb_variant_card, LB, VARIANT_CARD, GtkWidget)

/* The card of the document's variant `variant`; hidden while there is no such one. */
GtkWidget *lb_variant_card_new (LbSession *session, gsize variant);

/* The entry of its name. (transfer none) */
GtkWidget *lb_variant_card_get_name (LbVariantCard *self);

/* The drop-down that adds a value to what it replaces. (transfer none) */
GtkWidget *lb_variant_card_get_adder (LbVariantCard *self);

/* The entry or drop-down of a value that it replaces; NULL when it does not. (transfer none) */
GtkWidget *lb_variant_card_get_value (LbVariantCard *self, const LbField *field, gsize leader);

/* Which line the variant is drawn with, which is not its number when the document itself is drawn
 * first. */
void lb_variant_card_set_run (LbVariantCard *self, gsize run);

G_END_DECLS
