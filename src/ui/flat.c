/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flat.h"

struct _LbFlat
{
  GtkWidget parent;
};

G_DEFINE_FINAL_TYPE (LbFlat, lb_flat, GTK_TYPE_WIDGET)

void
lb_flat_snapshot_children (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GtkSnapshot *own = gtk_snapshot_new ();
  graphene_rect_t bounds, all;
  GskRenderNode *node;
  cairo_t *cr;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    gtk_widget_snapshot_child (widget, child, own);
  node = gtk_snapshot_free_to_node (own);
  if (!node)
    return;
  /* Shadows reach beyond the widget. */
  gsk_render_node_get_bounds (node, &bounds);
  graphene_rect_union (&GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                            (float) gtk_widget_get_height (widget)),
                       &bounds, &all);
  cr = gtk_snapshot_append_cairo (snapshot, &all);
  gsk_render_node_draw (node, cr);
  cairo_destroy (cr);
  gsk_render_node_unref (node);
}

static void
lb_flat_dispose (GObject *object)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (object));

  g_clear_pointer (&child, gtk_widget_unparent);
  G_OBJECT_CLASS (lb_flat_parent_class)->dispose (object);
}

static void
lb_flat_class_init (LbFlatClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_flat_dispose;
  widget_class->snapshot = lb_flat_snapshot_children;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_flat_init (LbFlat *self)
{
}

GtkWidget *
lb_flat_new (GtkWidget *child)
{
  GtkWidget *self = g_object_new (LB_TYPE_FLAT, NULL);

  gtk_widget_set_parent (child, self);
  return self;
}
