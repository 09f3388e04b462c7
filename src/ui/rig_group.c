/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rig_group.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "field_row.h"

struct _LbRigGroup
{
  GtkWidget parent;
  LbSession *session;
  LbPickKind kind;
  int index;
  GtkWidget *expander;       /* NULL: none */
  const char *const *seldom; /* paths of what is in it */
  gsize leader;              /* of the same */
};

G_DEFINE_FINAL_TYPE (LbRigGroup, lb_rig_group, GTK_TYPE_WIDGET)

static void
selected_cb (LbRigGroup *self)
{
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  if (kind != LB_PICK_NOTHING && lb_rig_group_is_of (self, kind, index))
    gtk_widget_add_css_class (GTK_WIDGET (self), "selected");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "selected");
}

static void
focused_cb (LbRigGroup *self)
{
  if (self->session && self->kind != LB_PICK_NOTHING)
    lb_session_select (self->session, self->kind, self->index);
}

static void
lb_rig_group_dispose (GObject *object)
{
  LbRigGroup *self = LB_RIG_GROUP (object);

  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  if (self->expander)
    g_signal_handlers_disconnect_by_data (self->expander, self);
  self->expander = NULL;
  g_clear_object (&self->session);
  lb_dispose_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (lb_rig_group_parent_class)->dispose (object);
}

static void
lb_rig_group_class_init (LbRigGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_rig_group_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbriggroup");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_rig_group_init (LbRigGroup *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  g_signal_connect_swapped (focus, "enter", G_CALLBACK (focused_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

GtkWidget *
lb_rig_group_new (LbSession *session, LbPickKind kind, int index)
{
  LbRigGroup *self = g_object_new (LB_TYPE_RIG_GROUP, NULL);

  self->session = g_object_ref (session);
  self->kind = kind;
  self->index = index;
  g_signal_connect_swapped (session, "selected", G_CALLBACK (selected_cb), self);
  selected_cb (self);
  return GTK_WIDGET (self);
}

void
lb_rig_group_append (LbRigGroup *self, GtkWidget *child)
{
  g_return_if_fail (LB_IS_RIG_GROUP (self));
  gtk_widget_set_parent (child, GTK_WIDGET (self));
}

GtkWidget *
lb_rig_group_append_field (LbRigGroup *self, const char *path, gsize leader, const char *label)
{
  GtkWidget *row;

  g_return_val_if_fail (LB_IS_RIG_GROUP (self), NULL);
  row = lb_field_row_new (self->session, lb_field (path), leader, label);
  gtk_widget_set_parent (row, GTK_WIDGET (self));
  return row;
}

static void
expanded_cb (LbRigGroup *self)
{
  GtkExpander *expander = GTK_EXPANDER (self->expander);
  GtkWidget *rows;

  if (gtk_expander_get_child (expander))
    return;
  rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  for (gsize i = 0; self->seldom[i]; i++)
    gtk_box_append (GTK_BOX (rows), lb_field_row_new (self->session, lb_field (self->seldom[i]),
                                                      self->leader, NULL));
  gtk_expander_set_child (expander, rows);
}

void
lb_rig_group_append_seldom (
    LbRigGroup *self, const char *title, const char *name, const char *const *paths, gsize leader)
{
  g_return_if_fail (LB_IS_RIG_GROUP (self) && !self->expander);
  self->expander = gtk_expander_new (title);
  lb_accessible_name (self->expander, name);
  self->seldom = paths;
  self->leader = leader;
  g_signal_connect_swapped (self->expander, "notify::expanded", G_CALLBACK (expanded_cb), self);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
}

void
lb_rig_group_open_seldom (LbRigGroup *self, const char *path)
{
  GtkWidget *row;

  g_return_if_fail (LB_IS_RIG_GROUP (self) && self->expander);
  gtk_expander_set_expanded (GTK_EXPANDER (self->expander), TRUE);
  row = gtk_widget_get_first_child (gtk_expander_get_child (GTK_EXPANDER (self->expander)));
  for (; row; row = gtk_widget_get_next_sibling (row))
    if (g_str_equal (lb_field_row_get_field (LB_FIELD_ROW (row))->path, path))
      gtk_widget_grab_focus (row);
}

gboolean
lb_rig_group_is_of (LbRigGroup *self, LbPickKind kind, int index)
{
  g_return_val_if_fail (LB_IS_RIG_GROUP (self), FALSE);
  return self->kind == kind && self->index == index;
}
