/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands under the preview of a card: which sheet it is, how large it is shown, and where it
 * can go to. Its buttons are actions of the window. */
#pragma once

#include <gtk/gtk.h>

#include "card_drawing.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_CARD_PANE_BAR (lb_card_pane_bar_get_type ())
G_DECLARE_FINAL_TYPE (LbCardPaneBar, lb_card_pane_bar, LB, CARD_PANE_BAR, GtkWidget)

GtkWidget *lb_card_pane_bar_new (void);

/* "Page 1 of 2", and how large that sheet is, in the session's units: "4 in by 6 in". */
void lb_card_pane_bar_show (LbCardPaneBar *self,
                            LbSession *session,
                            const LbCardDrawing *drawing,
                            gsize sheet);

/* What is to be said of the card; NULL: nothing. `busy`: it is not done. */
void lb_card_pane_bar_say (LbCardPaneBar *self, const char *text, gboolean busy);

/* What is shown of it; for tests. */
const char *lb_card_pane_bar_get_page (LbCardPaneBar *self);
const char *lb_card_pane_bar_get_text (LbCardPaneBar *self);

G_END_DECLS
