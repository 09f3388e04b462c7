/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_details.h"

#include <glib/gi18n.h>

#include "dispose.h"
#include "page_parts.h"
#include "tackle_image.h"

struct _LbCatalogueDetails
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *image;
  GtkWidget *name;
  GtkWidget *values; /* grid */
  GtkWidget *source;
  int n_rows;
};

G_DEFINE_FINAL_TYPE (LbCatalogueDetails, lb_catalogue_details, GTK_TYPE_WIDGET)

/* A row of the table: what, how much, and how little or much it may be; `range` may be NULL. */
static void
add_row (LbCatalogueDetails *self, const char *name, const char *value, const char *range)
{
  GtkWidget *what = lb_page_label (name, "quiet");
  GtkWidget *much = lb_page_label (value, "numeric");

  gtk_widget_set_valign (what, GTK_ALIGN_START);
  gtk_label_set_xalign (GTK_LABEL (much), 1);
  gtk_widget_set_hexpand (much, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (much), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (GTK_GRID (self->values), what, 0, self->n_rows, 1, 1);
  gtk_grid_attach (GTK_GRID (self->values), much, 1, self->n_rows++, 1, 1);
  if (!range)
    return;
  much = lb_page_label (range, "row-note");
  gtk_label_set_xalign (GTK_LABEL (much), 1);
  gtk_grid_attach (GTK_GRID (self->values), much, 0, self->n_rows++, 2, 1);
}

static void
add_value (LbCatalogueDetails *self, const char *name, LbQuantity quantity, double value)
{
  g_autofree char *words = lb_session_dup_words (self->session, quantity, value);

  add_row (self, name, words, NULL);
}

static void
add_range (LbCatalogueDetails *self,
           const char *name,
           LbQuantity quantity,
           double value,
           double low_value,
           double high_value)
{
  g_autofree char *words = lb_session_dup_words (self->session, quantity, value);
  g_autofree char *low = lb_session_dup_words (self->session, quantity, low_value);
  g_autofree char *high = lb_session_dup_words (self->session, quantity, high_value);
  g_autofree char *range = NULL;

  if (lb_is_set (high_value) && high_value > low_value)
    /* Translators: the range of an estimate: "0.3 to 0.6" */
    range = g_strdup_printf (_ ("may be %s to %s"), low, high);
  add_row (self, name, words, range);
}

static void
add_weight (LbCatalogueDetails *self, const LbWeight *weight)
{
  const LbFieldChoice *shape = lb_field_choice (lb_field ("weight.shape"), weight->shape);

  add_value (self, _ ("Weight in air"), LB_QUANTITY_MASS, weight->mass);
  add_row (self, _ ("Shape"), _ (shape->label), NULL);
  add_value (self, _ ("Density"), LB_QUANTITY_DENSITY, weight->density);
  if (lb_is_set (weight->drag_coefficient))
    add_value (self, _ ("Drag coefficient"), LB_QUANTITY_NUMBER, weight->drag_coefficient);
  else
    add_row (self, _ ("Drag coefficient"), _ ("from its shape"), NULL);
}

static void
add_line (LbCatalogueDetails *self, const LbCatalogueLine *part)
{
  add_value (self, _ ("Diameter"), LB_QUANTITY_DIAMETER, part->line.diameter);
  if (lb_is_set (part->line.breaking_load))
    add_range (self, _ ("Breaking load"), LB_QUANTITY_FORCE, part->line.breaking_load,
               part->line.breaking_load, part->breaking_load_high);
  else
    add_row (self, _ ("Breaking load"), _ ("unknown"), NULL);
  add_value (self, _ ("Density"), LB_QUANTITY_DENSITY, part->line.density);
  add_value (self, _ ("Stretch resistance"), LB_QUANTITY_STIFFNESS, part->line.axial_stiffness);
}

static void
add_lure (LbCatalogueDetails *self, const LbCatalogueLure *part)
{
  const LbLure *lure = &part->lure;

  add_value (self, _ ("Length"), LB_QUANTITY_HEIGHT, lure->length);
  add_range (self, _ ("Mass"), LB_QUANTITY_SMALL_MASS, lure->mass, part->mass.low, part->mass.high);
  add_range (self, _ ("Buoyancy"), LB_QUANTITY_SMALL_FORCE, lure->buoyancy, part->buoyancy.low,
             part->buoyancy.high);
  add_range (self, _ ("Drag area"), LB_QUANTITY_AREA, lure->drag_area, part->drag_area.low,
             part->drag_area.high);
  add_range (self, _ ("Dive: down-force by drag"), LB_QUANTITY_NUMBER, lure->down_force_ratio,
             part->down_force_ratio.low, part->down_force_ratio.high);
}

static void
lb_catalogue_details_dispose (GObject *object)
{
  LbCatalogueDetails *self = LB_CATALOGUE_DETAILS (object);

  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_catalogue_details_parent_class)->dispose (object);
}

static void
lb_catalogue_details_class_init (LbCatalogueDetailsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_catalogue_details_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbcataloguedetails");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_catalogue_details_init (LbCatalogueDetails *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 8);
}

GtkWidget *
lb_catalogue_details_new (LbSession *session)
{
  LbCatalogueDetails *self = g_object_new (LB_TYPE_CATALOGUE_DETAILS, NULL);

  self->session = g_object_ref (session);
  self->image = lb_tackle_image_new (session);
  lb_tackle_image_set_size (LB_TACKLE_IMAGE (self->image), 2.4);
  gtk_widget_set_halign (self->image, GTK_ALIGN_CENTER);
  self->name = lb_page_label (NULL, "heading");
  self->values = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->values), 12);
  gtk_grid_set_row_spacing (GTK_GRID (self->values), 2);
  self->source = lb_page_label (NULL, "row-note");
  gtk_widget_set_parent (self->image, GTK_WIDGET (self));
  gtk_widget_set_parent (self->name, GTK_WIDGET (self));
  gtk_widget_set_parent (self->values, GTK_WIDGET (self));
  gtk_widget_set_parent (self->source, GTK_WIDGET (self));
  lb_catalogue_details_show (self, NULL);
  return GTK_WIDGET (self);
}

void
lb_catalogue_details_show (LbCatalogueDetails *self, const LbCatalogueItem *item)
{
  GtkWidget *child;

  g_return_if_fail (LB_IS_CATALOGUE_DETAILS (self));
  while ((child = gtk_widget_get_first_child (self->values)))
    gtk_grid_remove (GTK_GRID (self->values), child);
  self->n_rows = 0;
  gtk_widget_set_visible (self->image, item != NULL);
  gtk_label_set_text (GTK_LABEL (self->name),
                      item ? item->name : _ ("Nothing in the catalogue is like that."));
  gtk_label_set_text (GTK_LABEL (self->source), item ? item->source : "");
  if (!item)
    return;
  lb_tackle_image_show (LB_TACKLE_IMAGE (self->image), &item->tackle, 0);
  if (item->line)
    add_line (self, item->line);
  else if (item->lure)
    add_lure (self, item->lure);
  else
    add_weight (self, &item->tackle.weight);
}

char *
lb_catalogue_details_dup_text (LbCatalogueDetails *self)
{
  GString *text;

  g_return_val_if_fail (LB_IS_CATALOGUE_DETAILS (self), NULL);
  text = g_string_new (gtk_label_get_text (GTK_LABEL (self->name)));
  for (GtkWidget *child = gtk_widget_get_first_child (self->values); child;
       child = gtk_widget_get_next_sibling (child))
    g_string_append_printf (text, "\n%s", gtk_label_get_text (GTK_LABEL (child)));
  g_string_append_printf (text, "\n%s", gtk_label_get_text (GTK_LABEL (self->source)));
  return g_string_free (text, FALSE);
}
