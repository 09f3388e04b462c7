/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "controls.h"

#include <glib/gi18n.h>

#include "dispose.h"

struct _LbControls
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *current;
  GtkWidget *boat_speed;
  GtkWidget *weight;
  GtkWidget *line_control;
  gboolean narrow;
};

G_DEFINE_FINAL_TYPE (LbControls, lb_controls, GTK_TYPE_WIDGET)

static void
weights_changed_cb (LbControls *self)
{
  gsize n;
  const double *kg = lb_preferences_get_weights (lb_session_get_preferences (self->session), &n);

  lb_slider_set_marks (LB_SLIDER (self->weight), kg, n);
}

static void
lb_controls_dispose (GObject *object)
{
  LbControls *self = LB_CONTROLS (object);

  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_controls_parent_class)->dispose (object);
}

static void
lb_controls_class_init (LbControlsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_controls_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_GRID_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbcontrols");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_controls_init (LbControls *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_grid_layout_set_column_homogeneous (GTK_GRID_LAYOUT (layout), TRUE);
  gtk_grid_layout_set_column_spacing (GTK_GRID_LAYOUT (layout), 20);
  gtk_grid_layout_set_row_spacing (GTK_GRID_LAYOUT (layout), 6);
}

static void
place (LbControls *self, GtkWidget *child, int column, int row)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkLayoutChild *place_of;

  if (!gtk_widget_get_parent (child))
    gtk_widget_set_parent (child, GTK_WIDGET (self));
  place_of = gtk_layout_manager_get_layout_child (layout, child);
  gtk_grid_layout_child_set_column (GTK_GRID_LAYOUT_CHILD (place_of), column);
  gtk_grid_layout_child_set_row (GTK_GRID_LAYOUT_CHILD (place_of), row);
}

static void
place_all (LbControls *self)
{
  place (self, self->current, 0, 0);
  place (self, self->boat_speed, 0, 1);
  place (self, self->weight, !self->narrow, self->narrow ? 2 : 0);
  place (self, self->line_control, !self->narrow, self->narrow ? 3 : 1);
}

/* The names before the sliders of a column take the same width, so that the sliders line up. */
static void
align (GtkWidget *above, GtkWidget *below)
{
  GtkSizeGroup *group = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  gtk_size_group_add_widget (group, above);
  gtk_size_group_add_widget (group, below);
  g_object_unref (group);
}

GtkWidget *
lb_controls_new (LbSession *session)
{
  LbControls *self = g_object_new (LB_TYPE_CONTROLS, NULL);

  self->session = g_object_ref (session);
  self->current = lb_slider_new (session, _ ("_Current"));
  lb_slider_set_field (LB_SLIDER (self->current), lb_field ("river.surface_current_m_s"),
                       _ ("Speed of the water at the surface, over the ground. Alt+C goes here, "
                          "the arrow keys change it."));
  self->boat_speed = lb_slider_new (session, _ ("_Boat speed"));
  lb_slider_set_field (LB_SLIDER (self->boat_speed), lb_field ("boat.speed_over_ground_m_s"),
                       _ ("Over the ground, against the current. Alt+B goes here, the arrow keys "
                          "change it."));
  self->weight = lb_slider_new (session, _ ("_Weight"));
  lb_slider_set_field (LB_SLIDER (self->weight), lb_field ("weight.mass_kg"),
                       _ ("The ticks are the weights you own: a drag stops at them, Page Up and "
                          "Page Down go from one to the next. Alt+W goes here, the arrow keys "
                          "change it."));
  self->line_control = lb_line_control_new (session);

  place_all (self);
  align (lb_slider_get_label (LB_SLIDER (self->current)),
         lb_slider_get_label (LB_SLIDER (self->boat_speed)));
  align (lb_slider_get_label (LB_SLIDER (self->weight)),
         lb_line_control_get_choice (LB_LINE_CONTROL (self->line_control)));

  weights_changed_cb (self);
  g_signal_connect_object (lb_session_get_preferences (session), "weights-changed",
                           G_CALLBACK (weights_changed_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

LbSlider *
lb_controls_get_current (LbControls *self)
{
  g_return_val_if_fail (LB_IS_CONTROLS (self), NULL);
  return LB_SLIDER (self->current);
}

LbSlider *
lb_controls_get_boat_speed (LbControls *self)
{
  g_return_val_if_fail (LB_IS_CONTROLS (self), NULL);
  return LB_SLIDER (self->boat_speed);
}

LbSlider *
lb_controls_get_weight (LbControls *self)
{
  g_return_val_if_fail (LB_IS_CONTROLS (self), NULL);
  return LB_SLIDER (self->weight);
}

LbLineControl *
lb_controls_get_line_control (LbControls *self)
{
  g_return_val_if_fail (LB_IS_CONTROLS (self), NULL);
  return LB_LINE_CONTROL (self->line_control);
}

void
lb_controls_set_narrow (LbControls *self, gboolean narrow)
{
  g_return_if_fail (LB_IS_CONTROLS (self));
  if (narrow == self->narrow)
    return;
  self->narrow = narrow;
  place_all (self);
}
