/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "material_row.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"

/* Densities as the hint of the field gives them. Lead and steel: handbook values; tungsten is an
 * alloy of 17000 to 18500, stone what granite has: estimates. */
static const struct
{
  const char *name;
  double density; /* kg/m3 */
} materials[] = {
  { N_ ("Lead"), 11340 },
  { N_ ("Tungsten alloy"), 17500 },
  { N_ ("Steel"), 7850 },
  { N_ ("Stone"), 2600 },
};
#define OTHER G_N_ELEMENTS (materials)

struct _LbMaterialRow
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *choice;
  double other; /* the density for which "other" was asked for; unset: for none */
  gboolean following;
};

G_DEFINE_FINAL_TYPE (LbMaterialRow, lb_material_row, GTK_TYPE_WIDGET)

static guint other_chosen_signal;

static guint
material_of (LbMaterialRow *self, double density)
{
  if (density == self->other)
    return OTHER;
  for (guint i = 0; i < OTHER; i++)
    if (fabs (materials[i].density - density) < 0.5)
      return i;
  return OTHER;
}

static void
follow (LbMaterialRow *self)
{
  double density = lb_session_get_value (self->session, lb_field ("weight.density_kg_m3"), 0);

  if (density != self->other)
    self->other = LB_UNSET;
  self->following = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choice), material_of (self, density));
  self->following = FALSE;
}

static void
chosen_cb (LbMaterialRow *self)
{
  const LbField *field = lb_field ("weight.density_kg_m3");
  guint material = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice));

  if (self->following || material > OTHER)
    return;
  if (material == OTHER)
    {
      self->other = lb_session_get_value (self->session, field, 0);
      g_signal_emit (self, other_chosen_signal, 0);
      return;
    }
  self->other = LB_UNSET;
  lb_session_set_value (self->session, field, 0, materials[material].density, 0);
}

static gboolean
lb_material_row_grab_focus (GtkWidget *widget)
{
  return lb_accessible_pass_focus (widget, LB_MATERIAL_ROW (widget)->choice);
}

static void
lb_material_row_dispose (GObject *object)
{
  LbMaterialRow *self = LB_MATERIAL_ROW (object);

  lb_dispose_session (&self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (lb_material_row_parent_class)->dispose (object);
}

static void
lb_material_row_class_init (LbMaterialRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_material_row_dispose;
  widget_class->grab_focus = lb_material_row_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  /* Looks like the rows of fields beside it. */
  gtk_widget_class_set_css_name (widget_class, "lbfieldrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  other_chosen_signal = g_signal_new ("other-chosen", LB_TYPE_MATERIAL_ROW, G_SIGNAL_RUN_LAST, 0,
                                      NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_material_row_init (LbMaterialRow *self)
{
  GtkStringList *names = gtk_string_list_new (NULL);
  GtkWidget *label = gtk_label_new (_ ("Material"));

  for (guint i = 0; i < OTHER; i++)
    gtk_string_list_append (names, _ (materials[i].name));
  gtk_string_list_append (names, _ ("Other density"));
  self->other = LB_UNSET;
  self->choice = gtk_drop_down_new (G_LIST_MODEL (names), NULL);
  gtk_widget_set_tooltip_text (self->choice,
                               _ ("Sets the density; tungsten and stone are estimates"));
  lb_accessible_name_choice (GTK_DROP_DOWN (self->choice), _ ("Material of the weight"));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_parent (label, GTK_WIDGET (self));
  gtk_widget_set_parent (self->choice, GTK_WIDGET (self));
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))),
                              8);
}

GtkWidget *
lb_material_row_new (LbSession *session)
{
  LbMaterialRow *self = g_object_new (LB_TYPE_MATERIAL_ROW, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  follow (self);
  return GTK_WIDGET (self);
}

GtkDropDown *
lb_material_row_get_choice (LbMaterialRow *self)
{
  g_return_val_if_fail (LB_IS_MATERIAL_ROW (self), NULL);
  return GTK_DROP_DOWN (self->choice);
}
