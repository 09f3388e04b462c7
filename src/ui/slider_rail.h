/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A GtkScale that moves its knob itself.
 *
 * GTK's own knob asks for a new layout of the window each time it moves, and on X11 GTK puts seven
 * questions to the display server before a layout and waits for each answer: about an eighth of a
 * frame. This one stays a GtkScale to the keyboard and to a screen reader, but hides GTK's trough
 * and puts one of its own in place, which it lays out alone. Lying flat only. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define LB_TYPE_SLIDER_RAIL (lb_slider_rail_get_type ())
G_DECLARE_FINAL_TYPE (LbSliderRail, lb_slider_rail, LB, SLIDER_RAIL, GtkScale)

/* The fill level is shown if gtk_range_set_show_fill_level() says so. */
GtkWidget *lb_slider_rail_new (GtkAdjustment *adjustment);

/* Ticks under the rail, in place of gtk_scale_add_mark()'s. */
void lb_slider_rail_set_marks (LbSliderRail *self, const double *values, gsize n);

G_END_DECLS
