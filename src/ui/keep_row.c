/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "own_parts.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"

struct _LbKeepRow
{
  GtkWidget parent;
  LbSession *session;
  LbCatalogueStore *store;
  LbRigPlace place;
  GtkWidget *name;
  GtkWidget *button;
  GtkWidget *fault;
  char *asked; /* the name of a part that the next press replaces, or NULL */
};

G_DEFINE_FINAL_TYPE (LbKeepRow, lb_keep_row, GTK_TYPE_WIDGET)

static guint kept_signal;

static gboolean
is_own_named (LbKeepRow *self, const char *name)
{
  const LbCatalogue *catalogue = lb_catalogue_store_get (self->store);

  switch (lb_rig_place_tackle_kind (self->place))
    {
    case LB_TACKLE_WEIGHT:
      for (guint i = 0; i < catalogue->weights->len; i++)
        {
          const LbCatalogueWeight *part = g_ptr_array_index (catalogue->weights, i);

          if (part->is_own && g_str_equal (part->name, name))
            return TRUE;
        }
      return FALSE;
    case LB_TACKLE_LINE:
      for (guint i = 0; i < catalogue->lines->len; i++)
        {
          const LbCatalogueLine *part = g_ptr_array_index (catalogue->lines, i);

          if (part->is_own && g_str_equal (part->name, name))
            return TRUE;
        }
      return FALSE;
    default:
      for (guint i = 0; i < catalogue->lures->len; i++)
        {
          const LbCatalogueLure *part = g_ptr_array_index (catalogue->lures, i);

          if (part->is_own && g_str_equal (part->name, name))
            return TRUE;
        }
      return FALSE;
    }
}

static void
say (LbKeepRow *self, const char *text)
{
  gtk_label_set_text (GTK_LABEL (self->fault), text ? text : "");
  gtk_widget_set_visible (self->fault, text != NULL);
}

/* A press more would replace the part of that name; NULL: it would keep another. */
static void
ask (LbKeepRow *self, const char *name)
{
  /* Translators: %s is the name of a part of the user's own */
  g_autofree char *text =
      name ? g_strdup_printf (_ ("You have “%s” already. Replace its values by these?"), name)
           : NULL;

  g_free (self->asked);
  self->asked = g_strdup (name);
  gtk_button_set_label (GTK_BUTTON (self->button), name ? _ ("Replace") : _ ("Keep as my own"));
  say (self, text);
}

static void
typed_cb (LbKeepRow *self)
{
  if (self->asked)
    ask (self, NULL);
}

static void
keep_cb (LbKeepRow *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  LbTackle tackle = lb_rig_place_get (self->place, setup);
  g_autofree char *name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name)));
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;

  g_strstrip (name);
  if (is_own_named (self, name) && g_strcmp0 (name, self->asked) != 0)
    {
      ask (self, name);
      return;
    }
  lb_catalogue_store_keep (self->store, &tackle, lb_rig_place_uses (self->place), name, &id,
                           &error);
  say (self, error ? error->message : NULL);
  if (error)
    return;
  gtk_editable_set_text (GTK_EDITABLE (self->name), "");
  g_signal_emit (self, kept_signal, 0, id);
}

static void
lb_keep_row_dispose (GObject *object)
{
  LbKeepRow *self = LB_KEEP_ROW (object);

  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  g_clear_object (&self->store);
  g_clear_pointer (&self->asked, g_free);
  G_OBJECT_CLASS (lb_keep_row_parent_class)->dispose (object);
}

static void
lb_keep_row_class_init (LbKeepRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_keep_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  kept_signal = g_signal_new ("kept", LB_TYPE_KEEP_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkWidget *
make_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
lb_keep_row_init (LbKeepRow *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->button = gtk_button_new_with_label (_ ("Keep as my own"));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 4);
  self->name = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->name), _ ("A name for it"));
  gtk_entry_set_max_length (GTK_ENTRY (self->name), LB_NAME_LONGEST);
  lb_accessible_name (self->name, _ ("Name for what the rig has now"));
  gtk_widget_set_hexpand (self->name, TRUE);
  gtk_widget_set_tooltip_text (self->button, _ ("Puts the values that the rig has now into your "
                                                "catalogue, under this name"));
  g_signal_connect_swapped (self->name, "activate", G_CALLBACK (keep_cb), self);
  g_signal_connect_swapped (self->name, "changed", G_CALLBACK (typed_cb), self);
  g_signal_connect_swapped (self->button, "clicked", G_CALLBACK (keep_cb), self);
  gtk_box_append (GTK_BOX (line), self->name);
  gtk_box_append (GTK_BOX (line), self->button);
  self->fault = make_label (NULL, "row-fault");
  gtk_widget_set_visible (self->fault, FALSE);
}

static void
fill (LbKeepRow *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  LbTackle tackle = lb_rig_place_get (self->place, setup);
  g_autofree char *words = lb_tackle_dup_words (&tackle, self->session);
  /* Translators: above an entry for a name; what is in the rig is put behind: "0.7 mm wire" */
  g_autofree char *text = g_strdup_printf (_ ("In the rig now: %s. Keep its values:"), words);

  gtk_widget_set_parent (make_label (text, "row-note"), GTK_WIDGET (self));
}

GtkWidget *
lb_keep_row_new (LbSession *session, LbCatalogueStore *store, LbRigPlace place)
{
  LbKeepRow *self = g_object_new (LB_TYPE_KEEP_ROW, NULL);

  self->session = g_object_ref (session);
  self->store = g_object_ref (store);
  self->place = place;
  fill (self);
  gtk_widget_set_parent (gtk_widget_get_parent (self->name), GTK_WIDGET (self));
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}

void
lb_keep_row_keep (LbKeepRow *self, const char *name)
{
  g_return_if_fail (LB_IS_KEEP_ROW (self));
  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->name)), name) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->name), name);
  keep_cb (self);
}

const char *
lb_keep_row_get_fault (LbKeepRow *self)
{
  g_return_val_if_fail (LB_IS_KEEP_ROW (self), NULL);
  if (!gtk_widget_get_visible (self->fault))
    return NULL;
  return gtk_label_get_text (GTK_LABEL (self->fault));
}
