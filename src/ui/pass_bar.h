/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a pass is played with: buttons, the slider of time, the speed, the view, and how far its
 * computation is. The buttons call the page's actions ("pass.play" and so on). */
#pragma once

#include <gtk/gtk.h>

#include "pass_playback.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_BAR (lb_pass_bar_get_type ())
G_DECLARE_FINAL_TYPE (LbPassBar, lb_pass_bar, LB, PASS_BAR, GtkWidget)

/* Signals: "view" (gboolean above): the other view was chosen; "follow" (gboolean): to go with the
 * boat or not. */
GtkWidget *lb_pass_bar_new (LbSession *session, LbPassPlayback *playback);

/* Shows which view there is; emits nothing. */
void lb_pass_bar_set_above (LbPassBar *self, gboolean above);

/* Shows whether the view goes with the boat; emits nothing. */
void lb_pass_bar_set_follows (LbPassBar *self, gboolean follows);

/* Changes the speed to the next slower (-1) or faster (1) one. */
void lb_pass_bar_change_speed (LbPassBar *self, int direction);

/* Parts of it. (transfer none) */
GtkWidget *lb_pass_bar_get_play_button (LbPassBar *self);
GtkWidget *lb_pass_bar_get_slider (LbPassBar *self); /* GtkScale */
GtkWidget *lb_pass_bar_get_speed (LbPassBar *self);  /* GtkDropDown */

/* "12.3 s of 60 s", and what is said about the computation; NULL when nothing is. */
const char *lb_pass_bar_get_time (LbPassBar *self);
const char *lb_pass_bar_get_said (LbPassBar *self);

G_END_DECLS
