/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A line of text with the time of the last solve, drawing and frame. Measures only while shown. */
#pragma once

#include <gtk/gtk.h>

#include "drawings.h"

G_BEGIN_DECLS

#define LB_TYPE_TIMINGS (lb_timings_get_type ())
G_DECLARE_FINAL_TYPE (LbTimings, lb_timings, LB, TIMINGS, GtkWidget)

GtkWidget *lb_timings_new (LbSession *session, LbDrawings *drawings);

const char *lb_timings_get_text (LbTimings *self);

G_END_DECLS
