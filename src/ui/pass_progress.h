/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How far the computation of a pass is, once it takes long enough to be spoken of, with a button
 * that calls it off; or why it ended before its time. Not to be seen while there is nothing to say.
 */
#pragma once

#include <gtk/gtk.h>

#include "pass_playback.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_PROGRESS (lb_pass_progress_get_type ())
G_DECLARE_FINAL_TYPE (LbPassProgress, lb_pass_progress, LB, PASS_PROGRESS, GtkBox)

GtkWidget *lb_pass_progress_new (LbSession *session, LbPassPlayback *playback);

/* NULL when nothing is said. */
const char *lb_pass_progress_get_said (LbPassProgress *self);

G_END_DECLS
