/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What happens if the weight or a lure hangs up now, with the document's rig as it runs: a choice
 * of what hangs up and what the boat does, a chart of the pull, numbers, and what to do. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_SNAG_PAGE (lb_pass_snag_page_get_type ())
G_DECLARE_FINAL_TYPE (LbPassSnagPage, lb_pass_snag_page, LB, PASS_SNAG_PAGE, GtkBox)

GtkWidget *lb_pass_snag_page_new (LbSession *session);

/* Parts of it. (transfer none) */
GtkWidget *lb_pass_snag_page_get_held (LbPassSnagPage *self); /* GtkDropDown: weight, then lures */
GtkWidget *lb_pass_snag_page_get_boat (LbPassSnagPage *self); /* GtkDropDown: goes on, drifts */

/* What it says, chart included; free with g_free(). */
char *lb_pass_snag_page_dup_text (LbPassSnagPage *self);

G_END_DECLS
