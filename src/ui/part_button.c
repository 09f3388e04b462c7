/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "part_button.h"

#include <glib/gi18n.h>

#include "catalogue_window.h"
#include "tackle_image.h"

struct _LbPartButton
{
  GtkButton parent;
  LbSession *session;
  LbCatalogueStore *store;
  LbRigPlace place;
  GtkWidget *image;
  GtkWidget *name;
  GtkWidget *note;
};

G_DEFINE_FINAL_TYPE (LbPartButton, lb_part_button, GTK_TYPE_BUTTON)

static void
tell_name (LbPartButton *self, const char *name)
{
  g_autofree char *place = lb_rig_place_dup_name (self->place);
  /* Translators: "Leader 2: lure: floating minnow, 7 cm. Choose another from the catalogue" */
  g_autofree char *text =
      g_strdup_printf (_ ("%s: %s. Choose another from the catalogue"), place, name);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

/* What a lure of the catalogue does in the water is estimated, and said to be. */
static const char *
note_for (LbPartButton *self, gboolean known)
{
  if (!known)
    return _ ("Own values · choose…");
  return self->place.kind == LB_PLACE_LURE ? _ ("Estimates · choose…") : _ ("Choose another…");
}

static void
follow (LbPartButton *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  const LbCatalogue *catalogue = lb_catalogue_store_get (self->store);
  const char *known;
  g_autofree char *words = NULL;
  LbTackle tackle;

  if (!lb_rig_place_exists (self->place, setup))
    return;
  tackle = lb_rig_place_get (self->place, setup);
  known = lb_rig_place_catalogue_name (self->place, catalogue, setup,
                                       lb_session_get_units (self->session));
  words = lb_tackle_dup_words (&tackle, self->session);
  lb_tackle_image_show (LB_TACKLE_IMAGE (self->image), &tackle, 0);
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (self->name)), known ? known : words) == 0)
    return;
  gtk_label_set_text (GTK_LABEL (self->name), known ? known : words);
  gtk_label_set_text (GTK_LABEL (self->note), note_for (self, known != NULL));
  tell_name (self, known ? known : words);
}

static void
clicked_cb (LbPartButton *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *window = lb_catalogue_window_new (self->session, self->store, self->place);

  if (GTK_IS_WINDOW (root))
    gtk_window_set_transient_for (GTK_WINDOW (window), GTK_WINDOW (root));
  gtk_window_present (GTK_WINDOW (window));
}

static void
lb_part_button_dispose (GObject *object)
{
  LbPartButton *self = LB_PART_BUTTON (object);

  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  if (self->store)
    g_signal_handlers_disconnect_by_data (self->store, self);
  g_clear_object (&self->session);
  g_clear_object (&self->store);
  G_OBJECT_CLASS (lb_part_button_parent_class)->dispose (object);
}

static void
lb_part_button_class_init (LbPartButtonClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_part_button_dispose;
}

static GtkWidget *
make_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
lb_part_button_init (LbPartButton *self)
{
  gtk_widget_add_css_class (GTK_WIDGET (self), "part-button");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _ ("Choose another from the catalogue"));
  g_signal_connect (self, "clicked", G_CALLBACK (clicked_cb), NULL);
}

static void
fill (LbPartButton *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->image = lb_tackle_image_new (self->session);
  self->name = make_label ("part-name");
  self->note = make_label ("row-note");
  gtk_box_append (GTK_BOX (words), self->name);
  gtk_box_append (GTK_BOX (words), self->note);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (line), self->image);
  gtk_box_append (GTK_BOX (line), words);
  gtk_button_set_child (GTK_BUTTON (self), line);
}

GtkWidget *
lb_part_button_new (LbSession *session, LbCatalogueStore *store, LbRigPlace place)
{
  LbPartButton *self = g_object_new (LB_TYPE_PART_BUTTON, NULL);

  self->session = g_object_ref (session);
  self->store = g_object_ref (store);
  self->place = place;
  fill (self);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (follow), self);
  g_signal_connect_swapped (store, "changed", G_CALLBACK (follow), self);
  follow (self);
  return GTK_WIDGET (self);
}

const char *
lb_part_button_get_name (LbPartButton *self)
{
  g_return_val_if_fail (LB_IS_PART_BUTTON (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->name));
}
