/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fold.h"

#define GAP_X 10
#define GAP_Y 6

struct _LbFold
{
  GtkWidget parent;
  GtkWidget *first;
  GtkWidget *second;
};

G_DEFINE_FINAL_TYPE (LbFold, lb_fold, GTK_TYPE_WIDGET)

static int
least_width (GtkWidget *widget)
{
  int minimum;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  return minimum;
}

static int
height_of (GtkWidget *widget, int width)
{
  int height;

  gtk_widget_measure (widget, GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  return height;
}

/* Whether both have room beside one another; for any width when it is -1. */
static gboolean
is_row (LbFold *self, int width)
{
  return width < 0 || least_width (self->first) + GAP_X + least_width (self->second) <= width;
}

static GtkSizeRequestMode
lb_fold_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
lb_fold_measure (GtkWidget *widget,
                 GtkOrientation orientation,
                 int for_size,
                 int *minimum,
                 int *natural,
                 int *minimum_baseline,
                 int *natural_baseline)
{
  LbFold *self = LB_FOLD (widget);
  int first = least_width (self->first);
  int second = least_width (self->second);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (first, second);
      *natural = first + GAP_X + second;
      return;
    }
  first = height_of (self->first, -1);
  second = height_of (self->second, -1);
  *minimum = *natural = is_row (self, for_size) ? MAX (first, second) : first + GAP_Y + second;
}

static void
lb_fold_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbFold *self = LB_FOLD (widget);
  int right = least_width (self->second);
  int top = height_of (self->first, width);
  gboolean rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkAllocation first = { 0, 0, width, top };
  GtkAllocation second = { 0, top + GAP_Y, width, height - top - GAP_Y };

  if (is_row (self, width))
    {
      first = (GtkAllocation){ rtl ? right + GAP_X : 0, 0, width - right - GAP_X, height };
      second = (GtkAllocation){ rtl ? 0 : width - right, 0, right, height };
    }
  gtk_widget_size_allocate (self->first, &first, -1);
  gtk_widget_size_allocate (self->second, &second, -1);
}

static void
lb_fold_dispose (GObject *object)
{
  LbFold *self = LB_FOLD (object);

  g_clear_pointer (&self->first, gtk_widget_unparent);
  g_clear_pointer (&self->second, gtk_widget_unparent);
  G_OBJECT_CLASS (lb_fold_parent_class)->dispose (object);
}

static void
lb_fold_class_init (LbFoldClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_fold_dispose;
  widget_class->get_request_mode = lb_fold_get_request_mode;
  widget_class->measure = lb_fold_measure;
  widget_class->size_allocate = lb_fold_size_allocate;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_fold_init (LbFold *self)
{
}

GtkWidget *
lb_fold_new (GtkWidget *first, GtkWidget *second)
{
  LbFold *self = g_object_new (LB_TYPE_FOLD, NULL);

  self->first = first;
  self->second = second;
  gtk_widget_set_parent (first, GTK_WIDGET (self));
  gtk_widget_set_parent (second, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}
