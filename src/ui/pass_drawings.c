/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_drawings.h"

#include <glib/gi18n.h>
#include <math.h>

#include "accessible.h"

#define CHART_PART 0.42
#define CHART_LEAST 170
#define VIEW_LEAST 150
#define WIDTH_LEAST 420
#define N_KINDS (LB_PASS_CANVAS_CHART + 1)

struct _LbPassDrawings
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *canvases[N_KINDS];
};

G_DEFINE_FINAL_TYPE (LbPassDrawings, lb_pass_drawings, GTK_TYPE_WIDGET)

static void
lb_pass_drawings_measure (GtkWidget *widget,
                          GtkOrientation orientation,
                          int for_size,
                          int *minimum,
                          int *natural,
                          int *minimum_baseline,
                          int *natural_baseline)
{
  *minimum = *natural =
      orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_LEAST : VIEW_LEAST + CHART_LEAST;
}

static void
lb_pass_drawings_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbPassDrawings *self = LB_PASS_DRAWINGS (widget);
  int chart = MAX (CHART_LEAST, (int) floor (CHART_PART * height)), view = height - chart;
  double scale = lb_style_scale_for (width, height)
                 * lb_appearance_get_text_scale (lb_session_get_appearance (self->session));

  for (int i = 0; i < N_KINDS; i++)
    {
      gboolean is_chart = i == LB_PASS_CANVAS_CHART;

      lb_pass_canvas_set_scale (LB_PASS_CANVAS (self->canvases[i]), scale);
      if (gtk_widget_should_layout (self->canvases[i]))
        gtk_widget_size_allocate (
            self->canvases[i],
            &(GtkAllocation){ 0, is_chart ? view : 0, width, is_chart ? chart : view }, -1);
    }
}

static void
lb_pass_drawings_dispose (GObject *object)
{
  LbPassDrawings *self = LB_PASS_DRAWINGS (object);

  for (int i = 0; i < N_KINDS; i++)
    g_clear_pointer (&self->canvases[i], gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_pass_drawings_parent_class)->dispose (object);
}

static void
lb_pass_drawings_class_init (LbPassDrawingsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pass_drawings_dispose;
  widget_class->measure = lb_pass_drawings_measure;
  widget_class->size_allocate = lb_pass_drawings_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "lbpassdrawings");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_pass_drawings_init (LbPassDrawings *self)
{
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
}

GtkWidget *
lb_pass_drawings_new (LbSession *session, LbPassPlayback *playback)
{
  LbPassDrawings *self = g_object_new (LB_TYPE_PASS_DRAWINGS, NULL);

  self->session = g_object_ref (session);
  for (int i = 0; i < N_KINDS; i++)
    {
      self->canvases[i] = lb_pass_canvas_new ((LbPassCanvasKind) i, session, playback);
      gtk_widget_set_parent (self->canvases[i], GTK_WIDGET (self));
    }
  lb_accessible_name (GTK_WIDGET (self), _ ("Drawings of the pass"));
  lb_pass_drawings_set_above (self, FALSE);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::text-scale",
                           G_CALLBACK (gtk_widget_queue_allocate), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

gboolean
lb_pass_drawings_get_above (LbPassDrawings *self)
{
  g_return_val_if_fail (LB_IS_PASS_DRAWINGS (self), FALSE);
  return gtk_widget_get_visible (self->canvases[LB_PASS_CANVAS_ABOVE]);
}

void
lb_pass_drawings_set_above (LbPassDrawings *self, gboolean above)
{
  GtkWidget *shown, *hidden;
  gboolean had_focus;

  g_return_if_fail (LB_IS_PASS_DRAWINGS (self));
  shown = self->canvases[above ? LB_PASS_CANVAS_ABOVE : LB_PASS_CANVAS_SIDE];
  hidden = self->canvases[above ? LB_PASS_CANVAS_SIDE : LB_PASS_CANVAS_ABOVE];
  had_focus = gtk_widget_is_focus (hidden);
  gtk_widget_set_visible (shown, TRUE);
  /* The keys for playing go on working. */
  if (had_focus)
    gtk_widget_grab_focus (shown);
  gtk_widget_set_visible (hidden, FALSE);
}

LbPassCanvas *
lb_pass_drawings_get_canvas (LbPassDrawings *self, LbPassCanvasKind kind)
{
  g_return_val_if_fail (LB_IS_PASS_DRAWINGS (self), NULL);
  return LB_PASS_CANVAS (self->canvases[kind]);
}

LbPassCanvas *
lb_pass_drawings_get_view (LbPassDrawings *self)
{
  return lb_pass_drawings_get_canvas (
      self, lb_pass_drawings_get_above (self) ? LB_PASS_CANVAS_ABOVE : LB_PASS_CANVAS_SIDE);
}

gboolean
lb_pass_drawings_get_follows (LbPassDrawings *self)
{
  return lb_pass_canvas_get_camera (lb_pass_drawings_get_view (self))->follows;
}

void
lb_pass_drawings_set_follows (LbPassDrawings *self, gboolean follows)
{
  g_return_if_fail (LB_IS_PASS_DRAWINGS (self));
  lb_pass_canvas_set_follows (LB_PASS_CANVAS (self->canvases[LB_PASS_CANVAS_SIDE]), follows);
  lb_pass_canvas_set_follows (LB_PASS_CANVAS (self->canvases[LB_PASS_CANVAS_ABOVE]), follows);
}
