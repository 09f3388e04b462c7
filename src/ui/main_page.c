/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "main_page.h"

#include <glib/gi18n.h>

#include "compare_page.h"

G_DEFINE_INTERFACE (LbMainPage, lb_main_page, GTK_TYPE_WIDGET)

const LbMainPageKind lb_main_page_kinds[] = {
  { LB_MAIN_PAGE_SIDE_VIEW, N_ ("Side view"), "F3", NULL },
  { LB_MAIN_PAGE_COMPARE, N_ ("Compare"), "F4", lb_compare_page_new },
};
const gsize lb_main_page_n_kinds = G_N_ELEMENTS (lb_main_page_kinds);

static void
lb_main_page_default_init (LbMainPageInterface *iface)
{
}
