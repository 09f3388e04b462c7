/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How much line is out: given, or following from where the weight is held. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"
#include "slider.h"

G_BEGIN_DECLS

#define LB_TYPE_LINE_CONTROL (lb_line_control_get_type ())
G_DECLARE_FINAL_TYPE (LbLineControl, lb_line_control, LB, LINE_CONTROL, GtkWidget)

GtkWidget *lb_line_control_new (LbSession *session);

/* The choice of the way, and the slider that goes with it. (transfer none) */
GtkWidget *lb_line_control_get_choice (LbLineControl *self);
LbSlider *lb_line_control_get_slider (LbLineControl *self);

G_END_DECLS
