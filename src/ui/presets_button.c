/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "presets_button.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "page_parts.h"
#include "river_presets.h"

#define LIST_KEY "layback-presets"
#define WIDTH_CHARS 44

/* "20 ft deep, 4 mph, cobble, 39 °F" */
static char *
numbers_of (LbSession *session, const LbRiverPreset *preset)
{
  const LbField *material = lb_field ("river.profile.bed_material");
  g_autofree char *depth = lb_session_dup_words (session, LB_QUANTITY_LENGTH, preset->depth);
  g_autofree char *current =
      lb_session_dup_words (session, LB_QUANTITY_SPEED, preset->surface_current);
  g_autofree char *temperature =
      lb_session_dup_words (session, LB_QUANTITY_TEMPERATURE, preset->temperature);
  const LbFieldChoice *choice = lb_field_choice (material, preset->material);

  /* Translators: depth, current, bed material, water temperature of a kind of river. */
  return g_strdup_printf (_ ("%s deep · %s · %s · %s"), depth, current, _ (choice->label),
                          temperature);
}

static GtkWidget *
make_text (const char *text, const char *css_class)
{
  GtkWidget *label = lb_page_label (text, css_class);

  gtk_label_set_width_chars (GTK_LABEL (label), WIDTH_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WIDTH_CHARS);
  return label;
}

static GtkWidget *
make_row (LbSession *session, const LbRiverPreset *preset)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1);
  g_autofree char *numbers = numbers_of (session, preset);
  g_autofree char *name = g_strdup_printf ("%s: %s", _ (preset->name), _ (preset->sentence));

  gtk_box_append (GTK_BOX (box), make_text (_ (preset->name), "part-name"));
  gtk_box_append (GTK_BOX (box), make_text (_ (preset->sentence), NULL));
  gtk_box_append (GTK_BOX (box), make_text (numbers, "row-note"));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  lb_accessible_name (row, name);
  return row;
}

/* Made each time it opens: the units may be others. */
static void
fill_cb (GtkMenuButton *button, gpointer user_data)
{
  LbSession *session = g_object_get_data (G_OBJECT (button), "layback-session");
  GtkListBox *list = lb_presets_button_get_list (GTK_WIDGET (button));
  GtkListBoxRow *row;
  gsize n;
  const LbRiverPreset *presets = lb_river_presets (&n);

  while ((row = gtk_list_box_get_row_at_index (list, 0)))
    gtk_list_box_remove (list, GTK_WIDGET (row));
  for (gsize i = 0; i < n; i++)
    gtk_list_box_append (list, make_row (session, &presets[i]));
}

static void
chosen_cb (GtkWidget *button, GtkListBoxRow *row)
{
  LbSession *session = g_object_get_data (G_OBJECT (button), "layback-session");
  const LbRiverPreset *preset = &lb_river_presets (NULL)[gtk_list_box_row_get_index (row)];
  LbRiver river = lb_document_get_setup (lb_session_get_document (session))->river;
  /* Translators: what is undone: %s is a kind of river, "Spring flood". */
  g_autofree char *label = g_strdup_printf (_ ("Start from the river “%s”"), _ (preset->name));

  lb_river_preset_apply (preset, &river);
  lb_session_do (session, lb_change_new_river (&river, label));
  gtk_menu_button_popdown (GTK_MENU_BUTTON (button));
}

GtkWidget *
lb_presets_button_new (LbSession *session)
{
  GtkWidget *button = gtk_menu_button_new ();
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *list = gtk_list_box_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  g_object_set_data_full (G_OBJECT (button), "layback-session", g_object_ref (session),
                          g_object_unref);
  g_object_set_data (G_OBJECT (button), LIST_KEY, list);
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Start from a kind of river"));
  lb_accessible_name (button, _ ("Start from a kind of river"));
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), fill_cb, NULL, NULL);
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  lb_accessible_name (list, _ ("Kinds of river"));
  g_signal_connect_object (list, "row-activated", G_CALLBACK (chosen_cb), button,
                           G_CONNECT_SWAPPED);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 420);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), list);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), _ ("Kinds of river"));
  gtk_box_append (GTK_BOX (box), scroller);
  gtk_box_append (GTK_BOX (box), make_text (lb_river_presets_note (), "row-note"));
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  lb_accessible_name (popover, _ ("Kinds of river"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), popover);
  return button;
}

GtkListBox *
lb_presets_button_get_list (GtkWidget *button)
{
  return g_object_get_data (G_OBJECT (button), LIST_KEY);
}
