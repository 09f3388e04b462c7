/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "own_parts.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"

struct _LbOwnRow
{
  GtkWidget parent;
  LbCatalogueStore *store;
  guint uses; /* of lines */
  char *id;   /* of the part that is shown; NULL: none of the user's */
  LbTackle tackle;
  char *shown_name;
  LbTackle deleted; /* what "Put back" brings back */
  char *deleted_name;
  GtkWidget *tools; /* box: name, rename, delete */
  GtkWidget *name;
  GtkWidget *rename;
  GtkWidget *message;
  GtkWidget *put_back;
};

G_DEFINE_FINAL_TYPE (LbOwnRow, lb_own_row, GTK_TYPE_WIDGET)

static guint kept_signal;

/* NULL hides the message; "Put back" goes with a deletion only. */
static void
say (LbOwnRow *self, const char *text, gboolean deleted)
{
  gtk_label_set_text (GTK_LABEL (self->message), text ? text : "");
  gtk_widget_set_visible (self->message, text != NULL);
  gtk_widget_set_visible (self->put_back, deleted);
}

static void
typed_cb (LbOwnRow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->name));

  gtk_widget_set_sensitive (self->rename, g_strcmp0 (text, self->shown_name) != 0);
}

static void
rename_cb (LbOwnRow *self)
{
  g_autofree char *name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name)));
  g_autofree char *id = g_strdup (self->id);
  g_autoptr (GError) error = NULL;

  if (!id)
    return;
  if (lb_catalogue_store_rename (self->store, id, name, &error))
    g_signal_emit (self, kept_signal, 0, id);
  say (self, error ? error->message : NULL, FALSE);
}

static void
delete_cb (LbOwnRow *self)
{
  g_autofree char *id = g_strdup (self->id);
  g_autofree char *name = g_strdup (self->shown_name);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  LbTackle tackle = self->tackle;

  if (!id)
    return;
  if (!lb_catalogue_store_remove (self->store, id, &error))
    {
      say (self, error->message, FALSE);
      return;
    }
  self->deleted = tackle;
  g_free (self->deleted_name);
  self->deleted_name = g_steal_pointer (&name);
  /* Translators: a part of the user's own catalogue was deleted */
  text = g_strdup_printf (_ ("“%s” is deleted."), self->deleted_name);
  say (self, text, TRUE);
  gtk_widget_grab_focus (self->put_back);
}

static void
put_back_cb (LbOwnRow *self)
{
  g_autofree char *name = g_strdup (self->deleted_name);
  g_autofree char *id = NULL;
  g_autoptr (GError) error = NULL;

  if (!name)
    return;
  if (lb_catalogue_store_keep (self->store, &self->deleted, self->uses, name, &id, &error))
    g_signal_emit (self, kept_signal, 0, id);
  say (self, error ? error->message : NULL, FALSE);
}

static void
lb_own_row_dispose (GObject *object)
{
  LbOwnRow *self = LB_OWN_ROW (object);

  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->store);
  g_clear_pointer (&self->id, g_free);
  g_clear_pointer (&self->shown_name, g_free);
  g_clear_pointer (&self->deleted_name, g_free);
  G_OBJECT_CLASS (lb_own_row_parent_class)->dispose (object);
}

static void
lb_own_row_class_init (LbOwnRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_own_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  kept_signal = g_signal_new ("kept", LB_TYPE_OWN_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkWidget *
add_button (LbOwnRow *self, GtkWidget *box, const char *label, const char *tooltip, GCallback cb)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_tooltip_text (button, tooltip);
  g_signal_connect_swapped (button, "clicked", cb, self);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
lb_own_row_init (LbOwnRow *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *said = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->tools = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->name = gtk_entry_new ();
  gtk_entry_set_max_length (GTK_ENTRY (self->name), LB_NAME_LONGEST);
  lb_accessible_name (self->name, _ ("Name of this part of your own"));
  g_signal_connect_swapped (self->name, "changed", G_CALLBACK (typed_cb), self);
  g_signal_connect_swapped (self->name, "activate", G_CALLBACK (rename_cb), self);
  gtk_box_append (GTK_BOX (self->tools), self->name);
  self->rename = add_button (self, buttons, _ ("Rename"), _ ("Gives it the name in the entry"),
                             G_CALLBACK (rename_cb));
  add_button (self, buttons, _ ("Delete"), _ ("Takes it out of your catalogue; rigs keep it"),
              G_CALLBACK (delete_cb));
  gtk_box_set_homogeneous (GTK_BOX (buttons), TRUE);
  gtk_box_append (GTK_BOX (self->tools), buttons);
  gtk_widget_set_parent (self->tools, GTK_WIDGET (self));

  self->message = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->message), 0);
  gtk_label_set_wrap (GTK_LABEL (self->message), TRUE);
  gtk_widget_set_hexpand (self->message, TRUE);
  gtk_box_append (GTK_BOX (said), self->message);
  self->put_back = add_button (self, said, _ ("Put back"), _ ("Puts what was deleted back"),
                               G_CALLBACK (put_back_cb));
  gtk_widget_set_parent (said, GTK_WIDGET (self));
  say (self, NULL, FALSE);
}

GtkWidget *
lb_own_row_new (LbCatalogueStore *store, guint uses)
{
  LbOwnRow *self = g_object_new (LB_TYPE_OWN_ROW, NULL);

  self->store = g_object_ref (store);
  self->uses = uses;
  lb_own_row_show (self, NULL);
  return GTK_WIDGET (self);
}

void
lb_own_row_show (LbOwnRow *self, const LbCatalogueItem *item)
{
  gboolean own = item && item->is_own;

  g_return_if_fail (LB_IS_OWN_ROW (self));
  g_free (self->id);
  g_free (self->shown_name);
  self->id = own ? g_strdup (item->id) : NULL;
  self->shown_name = own ? g_strdup (item->name) : NULL;
  if (own)
    self->tackle = item->tackle;
  gtk_widget_set_visible (self->tools, own);
  gtk_editable_set_text (GTK_EDITABLE (self->name), own ? item->name : "");
  typed_cb (self);
}

void
lb_own_row_rename (LbOwnRow *self, const char *name)
{
  g_return_if_fail (LB_IS_OWN_ROW (self));
  gtk_editable_set_text (GTK_EDITABLE (self->name), name);
  rename_cb (self);
}

void
lb_own_row_delete (LbOwnRow *self)
{
  g_return_if_fail (LB_IS_OWN_ROW (self));
  delete_cb (self);
}

void
lb_own_row_put_back (LbOwnRow *self)
{
  g_return_if_fail (LB_IS_OWN_ROW (self));
  put_back_cb (self);
}
