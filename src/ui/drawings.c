/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawings.h"

#include <math.h>

/* The strip's part of the height, and how low it may get. */
#define STRIP_PART 0.30
#define STRIP_LEAST 110
#define SIDE_VIEW_LEAST 150
#define WIDTH_LEAST 420

struct _LbDrawings
{
  GtkWidget parent;
  LbViewport *viewport;
  GtkWidget *side_view;
  GtkWidget *bed_strip;
};

G_DEFINE_FINAL_TYPE (LbDrawings, lb_drawings, GTK_TYPE_WIDGET)

static void
lb_drawings_measure (GtkWidget *widget,
                     GtkOrientation orientation,
                     int for_size,
                     int *minimum,
                     int *natural,
                     int *minimum_baseline,
                     int *natural_baseline)
{
  *minimum =
      orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_LEAST : SIDE_VIEW_LEAST + STRIP_LEAST;
  *natural = *minimum;
}

static void
lb_drawings_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbDrawings *self = LB_DRAWINGS (widget);
  int strip = MAX (STRIP_LEAST, (int) floor (STRIP_PART * height));
  int side = height - strip;

  lb_viewport_set_size (self->viewport, width, side, strip);
  gtk_widget_size_allocate (self->side_view, &(GtkAllocation){ 0, 0, width, side }, -1);
  gtk_widget_size_allocate (self->bed_strip, &(GtkAllocation){ 0, side, width, strip }, -1);
}

static void
lb_drawings_dispose (GObject *object)
{
  LbDrawings *self = LB_DRAWINGS (object);

  g_clear_pointer (&self->side_view, gtk_widget_unparent);
  g_clear_pointer (&self->bed_strip, gtk_widget_unparent);
  g_clear_object (&self->viewport);
  G_OBJECT_CLASS (lb_drawings_parent_class)->dispose (object);
}

static void
lb_drawings_class_init (LbDrawingsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_drawings_dispose;
  widget_class->measure = lb_drawings_measure;
  widget_class->size_allocate = lb_drawings_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "lbdrawings");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_drawings_init (LbDrawings *self)
{
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
}

GtkWidget *
lb_drawings_new (LbSession *session)
{
  LbDrawings *self = g_object_new (LB_TYPE_DRAWINGS, NULL);

  self->viewport = lb_viewport_new (session);
  self->side_view = lb_canvas_new (LB_CANVAS_SIDE_VIEW, session, self->viewport);
  self->bed_strip = lb_canvas_new (LB_CANVAS_BED_STRIP, session, self->viewport);
  gtk_widget_set_parent (self->side_view, GTK_WIDGET (self));
  gtk_widget_set_parent (self->bed_strip, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}

LbCanvas *
lb_drawings_get_side_view (LbDrawings *self)
{
  g_return_val_if_fail (LB_IS_DRAWINGS (self), NULL);
  return LB_CANVAS (self->side_view);
}

LbCanvas *
lb_drawings_get_bed_strip (LbDrawings *self)
{
  g_return_val_if_fail (LB_IS_DRAWINGS (self), NULL);
  return LB_CANVAS (self->bed_strip);
}

LbViewport *
lb_drawings_get_viewport (LbDrawings *self)
{
  g_return_val_if_fail (LB_IS_DRAWINGS (self), NULL);
  return self->viewport;
}

void
lb_drawings_make_way (LbDrawings *self)
{
  g_return_if_fail (LB_IS_DRAWINGS (self));
  /* The readings may still follow while the window is taken apart. */
  if (!self->side_view || !self->bed_strip)
    return;
  lb_canvas_make_way (LB_CANVAS (self->side_view));
  lb_canvas_make_way (LB_CANVAS (self->bed_strip));
}

void
lb_drawings_zoom (LbDrawings *self, double factor)
{
  g_return_if_fail (LB_IS_DRAWINGS (self));
  lb_viewport_zoom_selected (self->viewport, factor);
}
