/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The main page with the card of the document: how it will be printed, and beside it what can be
 * chosen. */
#pragma once

#include <gtk/gtk.h>

#include "card_maker.h"
#include "card_output.h"
#include "card_preview.h"

G_BEGIN_DECLS

#define LB_TYPE_CARD_PANE (lb_card_pane_get_type ())
G_DECLARE_FINAL_TYPE (LbCardPane, lb_card_pane, LB, CARD_PANE, GtkBox)

GtkWidget *lb_card_pane_new (LbSession *session);

/* Each waits until the card is that of the document as it is now. */
void lb_card_pane_print (LbCardPane *self);
void lb_card_pane_save (LbCardPane *self);
void lb_card_pane_copy (LbCardPane *self);

/* The sheet that is shown, from 0. */
gsize lb_card_pane_get_sheet (LbCardPane *self);

LbCardMaker *lb_card_pane_get_maker (LbCardPane *self);     /* (transfer none) */
LbCardPreview *lb_card_pane_get_preview (LbCardPane *self); /* (transfer none) */
LbCardOutput *lb_card_pane_get_output (LbCardPane *self);   /* (transfer none) */

G_END_DECLS
