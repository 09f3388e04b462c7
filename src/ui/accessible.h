/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a screen reader is told of widgets that GTK leaves unnamed: without a name they go by the
 * names of their classes. A widget that only holds others takes the role GTK_ACCESSIBLE_ROLE_GROUP
 * in its class. */
#pragma once

#include <gtk/gtk.h>

/* Names `widget`. */
void lb_accessible_name (GtkWidget *widget, const char *name);

/* Names a drop-down, and the button inside it, which takes the focus, with what is chosen:
 * "Shape: Ball". The items must be GtkStringObject. */
void lb_accessible_name_choice (GtkDropDown *choice, const char *name);

/* A button with a mnemonic ("_Save"), which GTK's own would read out with its underline and twice.
 */
GtkWidget *lb_accessible_button_new (const char *mnemonic);

/* Names the closing button of an info bar. */
void lb_accessible_name_close (GtkInfoBar *bar);

/* Names a scrolled window; its bars are passed over, the keyboard scrolls it. */
void lb_accessible_name_scroller (GtkScrolledWindow *scroller, const char *name);

/* For the grab_focus of a widget that hands the focus to a part of itself. GTK calls it also when
 * Tab is on its way out of the widget: then it lets go. */
gboolean lb_accessible_pass_focus (GtkWidget *widget, GtkWidget *part);
