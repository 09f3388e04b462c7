/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sliders under the drawings: current, boat speed, weight, and line out. */
#pragma once

#include <gtk/gtk.h>

#include "line_control.h"
#include "slider.h"

G_BEGIN_DECLS

#define LB_TYPE_CONTROLS (lb_controls_get_type ())
G_DECLARE_FINAL_TYPE (LbControls, lb_controls, LB, CONTROLS, GtkWidget)

GtkWidget *lb_controls_new (LbSession *session);

LbSlider *lb_controls_get_current (LbControls *self);           /* (transfer none) */
LbSlider *lb_controls_get_boat_speed (LbControls *self);        /* (transfer none) */
LbSlider *lb_controls_get_weight (LbControls *self);            /* (transfer none) */
LbLineControl *lb_controls_get_line_control (LbControls *self); /* (transfer none) */

/* Whether the sliders stand one below another rather than in two columns. */
void lb_controls_set_narrow (LbControls *self, gboolean narrow);

G_END_DECLS
