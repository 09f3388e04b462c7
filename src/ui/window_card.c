/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The card's ways out of the window, from whatever page is shown. */
#include "window_private.h"

#include "card_pane.h"

/* Brings the card to the front, which is what is going to leave. */
static LbCardPane *
card_page (LbWindow *self)
{
  lb_window_take_typed (self);
  lb_window_show_main_page (self, LB_MAIN_PAGE_CARD);
  return LB_CARD_PANE (lb_window_get_main_page_widget (self, LB_MAIN_PAGE_CARD));
}

void
lb_window_print_card (LbWindow *self)
{
  lb_card_pane_print (card_page (self));
}

void
lb_window_save_card (LbWindow *self)
{
  lb_card_pane_save (card_page (self));
}

void
lb_window_copy_card (LbWindow *self)
{
  lb_card_pane_copy (card_page (self));
}
