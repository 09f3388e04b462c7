/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The main page that plays a pass: the rig in time, from the side or from above, over a chart of
 * what it did; what boat and hand do, what came of it, and what may happen besides, in the column.
 */
#pragma once

#include <gtk/gtk.h>

#include "pass_bar.h"
#include "pass_drawings.h"
#include "pass_fish_page.h"
#include "pass_snag_page.h"
#include "pass_summary_view.h"

G_BEGIN_DECLS

#define LB_MAIN_PAGE_PASS "pass"

#define LB_TYPE_PASS_PAGE (lb_pass_page_get_type ())
G_DECLARE_FINAL_TYPE (LbPassPage, lb_pass_page, LB, PASS_PAGE, GtkBox)

/* It begins to play when it is shown for the first time, unless animations are turned off. */
GtkWidget *lb_pass_page_new (LbSession *session);

/* Parts of it. (transfer none) */
LbPassPlayback *lb_pass_page_get_playback (LbPassPage *self);
LbPassDrawings *lb_pass_page_get_drawings (LbPassPage *self);
LbPassBar *lb_pass_page_get_bar (LbPassPage *self);
LbPassSummaryView *lb_pass_page_get_summary (LbPassPage *self);
LbPassSnagPage *lb_pass_page_get_snag (LbPassPage *self);
LbPassFishPage *lb_pass_page_get_fish (LbPassPage *self);

G_END_DECLS
