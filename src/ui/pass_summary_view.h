/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the pass came to, in words and as a table, when it is computed. */
#pragma once

#include <gtk/gtk.h>

#include "pass_playback.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_SUMMARY_VIEW (lb_pass_summary_view_get_type ())
G_DECLARE_FINAL_TYPE (LbPassSummaryView, lb_pass_summary_view, LB, PASS_SUMMARY_VIEW, GtkBox)

GtkWidget *lb_pass_summary_view_new (LbSession *session, LbPassPlayback *playback);

/* The sentences, what is to be said of the start, and the cautions of the pass: for another place
 * than the table's. (transfer none) */
GtkWidget *lb_pass_summary_view_get_said (LbPassSummaryView *self);

/* The sentences that are shown; "" while there are none. */
const char *lb_pass_summary_view_get_sentence (LbPassSummaryView *self);

/* All of it as text, a row a line. (transfer full) */
char *lb_pass_summary_view_dup_text (LbPassSummaryView *self);

G_END_DECLS
