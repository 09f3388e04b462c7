/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "timings.h"

#include <glib/gi18n.h>

/* The text changes no more often than this: it is to be read, and must not cost what it measures.
 */
#define INTERVAL_US 250000

struct _LbTimings
{
  GtkWidget parent;
  LbSession *session;
  LbDrawings *drawings;
  GtkWidget *text;
  GdkFrameClock *clock; /* while measuring */
  gint64 frame_start, shown_at;
  double frame_time; /* us */
};

G_DEFINE_FINAL_TYPE (LbTimings, lb_timings, GTK_TYPE_WIDGET)

static void
before_paint_cb (LbTimings *self)
{
  self->frame_start = g_get_monotonic_time ();
}

static void
show (LbTimings *self)
{
  LbResult *result = lb_session_get_result (self->session);
  double solve = result ? lb_result_get_solve_time (result) : 0;
  double scenes = lb_canvas_get_scene_time (lb_drawings_get_side_view (self->drawings))
                  + lb_canvas_get_scene_time (lb_drawings_get_bed_strip (self->drawings));
  /* Translators: three durations in milliseconds. "Drawing" is the laying out of the drawings,
   * "frame" everything that happens for one picture on the screen. */
  g_autofree char *text = g_strdup_printf (_ ("Solve %.2f ms · drawing %.1f ms · frame %.1f ms"),
                                           solve / 1000, scenes / 1000, self->frame_time / 1000);

  gtk_inscription_set_text (GTK_INSCRIPTION (self->text), text);
}

static void
after_paint_cb (LbTimings *self)
{
  gint64 now = g_get_monotonic_time ();

  if (!self->frame_start)
    return;
  /* A frame in which only this text changed says nothing. */
  if (now - self->shown_at < INTERVAL_US)
    return;
  self->frame_time = (double) (now - self->frame_start);
  self->shown_at = now;
  show (self);
}

static void
lb_timings_map (GtkWidget *widget)
{
  LbTimings *self = LB_TIMINGS (widget);

  GTK_WIDGET_CLASS (lb_timings_parent_class)->map (widget);
  self->clock = g_object_ref (gtk_widget_get_frame_clock (widget));
  g_signal_connect_swapped (self->clock, "before-paint", G_CALLBACK (before_paint_cb), self);
  g_signal_connect_swapped (self->clock, "after-paint", G_CALLBACK (after_paint_cb), self);
}

static void
stop (LbTimings *self)
{
  if (self->clock)
    g_signal_handlers_disconnect_by_data (self->clock, self);
  g_clear_object (&self->clock);
  self->frame_start = 0;
}

static void
lb_timings_unmap (GtkWidget *widget)
{
  stop (LB_TIMINGS (widget));
  GTK_WIDGET_CLASS (lb_timings_parent_class)->unmap (widget);
}

static void
lb_timings_dispose (GObject *object)
{
  LbTimings *self = LB_TIMINGS (object);

  stop (self);
  g_clear_pointer (&self->text, gtk_widget_unparent);
  g_clear_object (&self->session);
  g_clear_object (&self->drawings);
  G_OBJECT_CLASS (lb_timings_parent_class)->dispose (object);
}

static void
lb_timings_class_init (LbTimingsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_timings_dispose;
  widget_class->map = lb_timings_map;
  widget_class->unmap = lb_timings_unmap;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbtimings");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_timings_init (LbTimings *self)
{
  self->text = gtk_inscription_new (NULL);
  gtk_widget_add_css_class (self->text, "numeric");
  gtk_widget_add_css_class (self->text, "quiet");
  gtk_widget_set_parent (self->text, GTK_WIDGET (self));
}

GtkWidget *
lb_timings_new (LbSession *session, LbDrawings *drawings)
{
  LbTimings *self = g_object_new (LB_TYPE_TIMINGS, NULL);

  self->session = g_object_ref (session);
  self->drawings = g_object_ref (drawings);
  return GTK_WIDGET (self);
}

const char *
lb_timings_get_text (LbTimings *self)
{
  g_return_val_if_fail (LB_IS_TIMINGS (self), NULL);
  return gtk_inscription_get_text (GTK_INSCRIPTION (self->text));
}
