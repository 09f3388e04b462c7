/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Switches between the main pages of a window by its action "win.main-page": a row of buttons where
 * there is room for it, else a button with a menu. Not to be seen until there are two pages. */
#pragma once

#include <gtk/gtk.h>

#include "main_page.h"

G_BEGIN_DECLS

#define LB_TYPE_PAGE_SWITCH (lb_page_switch_get_type ())
G_DECLARE_FINAL_TYPE (LbPageSwitch, lb_page_switch, LB, PAGE_SWITCH, GtkWidget)

/* Adds a button and a menu entry for `kind`. */
void lb_page_switch_add (LbPageSwitch *self, const LbMainPageKind *kind);

/* Tells which page is shown: the button with the menu bears its title. */
void lb_page_switch_set_shown (LbPageSwitch *self, const char *title);

/* Whether there is room for the row of buttons. */
gboolean lb_page_switch_is_row (LbPageSwitch *self);

G_END_DECLS
