/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "main_page.h"

#include <glib/gi18n.h>

#include "card_pane.h"
#include "compare_page.h"
#include "pass_page.h"

G_DEFINE_INTERFACE (LbMainPage, lb_main_page, GTK_TYPE_WIDGET)

const LbMainPageKind lb_main_page_kinds[] = {
  { LB_MAIN_PAGE_SIDE_VIEW, N_ ("Side view"), "F3", NULL },
  { LB_MAIN_PAGE_COMPARE, N_ ("Compare"), "F4", lb_compare_page_new },
  { LB_MAIN_PAGE_CARD, N_ ("Card"), "F5", lb_card_pane_new },
  { LB_MAIN_PAGE_PASS, N_ ("Pass"), "F7", lb_pass_page_new },
};
const gsize lb_main_page_n_kinds = G_N_ELEMENTS (lb_main_page_kinds);

static guint changed_signal;

static void
lb_main_page_default_init (LbMainPageInterface *iface)
{
  changed_signal = g_signal_new ("abilities-changed", LB_TYPE_MAIN_PAGE, G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

void
lb_main_page_abilities_changed (LbMainPage *self)
{
  g_return_if_fail (LB_IS_MAIN_PAGE (self));
  g_signal_emit (self, changed_signal, 0);
}

gboolean
lb_main_page_can_move (LbMainPage *self, int direction)
{
  LbMainPageInterface *iface;

  g_return_val_if_fail (LB_IS_MAIN_PAGE (self), FALSE);
  iface = LB_MAIN_PAGE_GET_IFACE (self);
  return iface->move_page && (!iface->can_move_page || iface->can_move_page (self, direction));
}
