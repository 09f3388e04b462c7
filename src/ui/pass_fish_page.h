/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the hand holds with a hooked fish on a lure, with the document's rig as it runs: a choice of
 * the lure, the fish's length and a reduced speed, and the loads with its mouth closed and open. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_FISH_PAGE (lb_pass_fish_page_get_type ())
G_DECLARE_FINAL_TYPE (LbPassFishPage, lb_pass_fish_page, LB, PASS_FISH_PAGE, GtkBox)

/* The loads are found on a thread of their own. */
GtkWidget *lb_pass_fish_page_new (LbSession *session);

/* Whether what it says is that of the session's answer and the choices. */
gboolean lb_pass_fish_page_get_settled (LbPassFishPage *self);

/* Parts of it. (transfer none) */
GtkWidget *lb_pass_fish_page_get_lure (LbPassFishPage *self);   /* GtkDropDown: none, then lures */
GtkWidget *lb_pass_fish_page_get_length (LbPassFishPage *self); /* LbQuantityEntry */
GtkWidget *lb_pass_fish_page_get_speed (LbPassFishPage *self);  /* LbQuantityEntry */

/* What it says; free with g_free(). */
char *lb_pass_fish_page_dup_text (LbPassFishPage *self);

G_END_DECLS
