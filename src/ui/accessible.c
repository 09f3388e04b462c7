/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "accessible.h"

#include <glib/gi18n.h>

#define NAME_KEY "layback-accessible-name"

void
lb_accessible_name (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
tell_chosen_cb (GtkDropDown *choice)
{
  const char *name = g_object_get_data (G_OBJECT (choice), NAME_KEY);
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (choice));
  GtkStringObject *item = gtk_drop_down_get_selected_item (choice);
  /* Translators: the name of a list, and what is chosen in it, as in "Shape: Ball". */
  g_autofree char *text =
      item ? g_strdup_printf (_ ("%s: %s"), name, gtk_string_object_get_string (item))
           : g_strdup (name);

  if (button)
    lb_accessible_name (button, text);
}

void
lb_accessible_name_choice (GtkDropDown *choice, const char *name)
{
  g_autoptr (GList) labels = NULL;
  gboolean known = g_object_get_data (G_OBJECT (choice), NAME_KEY) != NULL;

  g_object_set_data_full (G_OBJECT (choice), NAME_KEY, g_strdup (name), g_free);
  /* A label with a mnemonic names it already; twice would be read twice. */
  labels = gtk_widget_list_mnemonic_labels (GTK_WIDGET (choice));
  if (!labels)
    lb_accessible_name (GTK_WIDGET (choice), name);
  tell_chosen_cb (choice);
  if (!known)
    g_signal_connect (choice, "notify::selected-item", G_CALLBACK (tell_chosen_cb), NULL);
}

void
lb_accessible_name_scroller (GtkScrolledWindow *scroller, const char *name)
{
  lb_accessible_name (GTK_WIDGET (scroller), name);
  g_object_set (gtk_scrolled_window_get_hscrollbar (scroller), "accessible-role",
                GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
  g_object_set (gtk_scrolled_window_get_vscrollbar (scroller), "accessible-role",
                GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
}

GtkWidget *
lb_accessible_button_new (const char *mnemonic)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *label = gtk_label_new_with_mnemonic (mnemonic);

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), button);
  gtk_button_set_child (GTK_BUTTON (button), label);
  gtk_widget_add_css_class (button, "text-button");
  return button;
}

/* The last button without a label below `widget`, or NULL. */
static GtkWidget *
find_bare_button (GtkWidget *widget)
{
  GtkWidget *found = NULL;

  if (GTK_IS_BUTTON (widget) && !gtk_button_get_label (GTK_BUTTON (widget)))
    return widget;
  for (GtkWidget *child = gtk_widget_get_last_child (widget); child && !found;
       child = gtk_widget_get_prev_sibling (child))
    found = find_bare_button (child);
  return found;
}

void
lb_accessible_name_close (GtkInfoBar *bar)
{
  GtkWidget *button = find_bare_button (GTK_WIDGET (bar));

  if (button)
    lb_accessible_name (button, _ ("Close this message"));
}

gboolean
lb_accessible_pass_focus (GtkWidget *widget, GtkWidget *part)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root ? gtk_root_get_focus (root) : NULL;

  return !(focus && gtk_widget_is_ancestor (focus, widget)) && gtk_widget_grab_focus (part);
}
