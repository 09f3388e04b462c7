/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How large the letters beside the drawings are, and where the sliders go when there is little room
 * for them. */
#include "window_private.h"

/* Scales of the drawings from which on the letters beside them are larger, too. */
#define LARGE_SCALE 1.3
#define HUGE_SCALE 1.75
/* A window of less width, for letters of the normal size, has its sliders one below another. */
#define NARROW 820

/* A window that is narrow for the size of its letters. */
void
lb_window_fit_width (LbWindow *self, int width)
{
  gboolean narrow = width / lb_preferences_get_text_scale (self->preferences) < NARROW;

  lb_controls_set_narrow (LB_CONTROLS (self->controls), narrow);
  if (narrow)
    gtk_widget_add_css_class (GTK_WIDGET (self), "narrow");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "narrow");
}

static void
text_size_cb (LbWindow *self)
{
  lb_window_fit_width (self, gtk_widget_get_width (GTK_WIDGET (self)));
}

/* The words beside the drawings grow with them, so that a window that fills a large screen is as
 * readable from afar as its drawings are. */
static gboolean
fit_letters_cb (gpointer user_data)
{
  LbWindow *self = user_data;
  GtkWidget *widget = user_data;
  double scale = lb_style_scale_for (gtk_widget_get_width (widget), gtk_widget_get_height (widget));

  self->letters_id = 0;
  lb_window_fit_width (self, gtk_widget_get_width (widget));
  if (scale >= HUGE_SCALE)
    gtk_widget_add_css_class (widget, "huge");
  else
    gtk_widget_remove_css_class (widget, "huge");
  if (scale >= LARGE_SCALE && scale < HUGE_SCALE)
    gtk_widget_add_css_class (widget, "large");
  else
    gtk_widget_remove_css_class (widget, "large");
  return G_SOURCE_REMOVE;
}

void
lb_window_fit_letters (LbWindow *self)
{
  /* Not from within the layout, which it changes. */
  if (!self->letters_id)
    self->letters_id = g_idle_add_full (GTK_PRIORITY_RESIZE, fit_letters_cb, self, NULL);
}

void
lb_window_letters_start (LbWindow *self)
{
  g_signal_connect_object (self->preferences, "notify::text-size", G_CALLBACK (text_size_cb), self,
                           G_CONNECT_SWAPPED);
}

void
lb_window_letters_dispose (LbWindow *self)
{
  g_clear_handle_id (&self->letters_id, g_source_remove);
}
