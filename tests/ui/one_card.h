/* SPDX-License-Identifier: GPL-3.0-or-later */
/* For test programs whose cases each have one window that shows its card. Include it once, in the
 * program's only file. */
#pragma once

#include "one_window.h"

#include "card_pane.h"
#include "card_pane_bar.h"

G_GNUC_UNUSED static LbCardPane *
pane (void)
{
  return LB_CARD_PANE (lb_window_get_main_page_widget (window, LB_MAIN_PAGE_CARD));
}

G_GNUC_UNUSED static LbCardMaker *
maker (void)
{
  return lb_card_pane_get_maker (pane ());
}

G_GNUC_UNUSED static LbCardPreview *
preview (void)
{
  return lb_card_pane_get_preview (pane ());
}

G_GNUC_UNUSED static const LbCardDrawing *
drawing (void)
{
  return lb_made_card_get_drawing (lb_card_maker_get_card (maker ()));
}

G_GNUC_UNUSED static const LbCard *
card (void)
{
  return lb_document_get_card (lb_session_get_document (session ()));
}

G_GNUC_UNUSED static gboolean
is_current (gpointer data)
{
  return lb_card_maker_is_current (maker ());
}

G_GNUC_UNUSED static void
wait_for_card (void)
{
  harness_wait (is_current, NULL, "the card");
}

/* With few weights in the box, so that its table is soon computed. */
G_GNUC_UNUSED static void
show_card (int width, int height)
{
  const double weights[] = { 0.6804, 0.9072 };

  window = harness_window (width, height);
  lb_preferences_set_weights (lb_application_get_preferences (harness_application ()), weights,
                              G_N_ELEMENTS (weights));
  lb_window_show_main_page (window, LB_MAIN_PAGE_CARD);
  wait_for_card ();
}

G_GNUC_UNUSED static int
set_up_card (void **state)
{
  show_card (1280, 800);
  return 0;
}

typedef gboolean (*Matches) (GtkWidget *widget, gconstpointer data);

/* The first widget in `from`, or below it, that matches. */
G_GNUC_UNUSED static GtkWidget *
find (GtkWidget *from, Matches matches, gconstpointer data)
{
  GtkWidget *found = matches (from, data) ? from : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (from); child && !found;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, matches, data);
  return found;
}

G_GNUC_UNUSED static gboolean
is_of_type (GtkWidget *widget, gconstpointer type)
{
  return g_type_is_a (G_OBJECT_TYPE (widget), *(const GType *) type);
}

G_GNUC_UNUSED static gboolean
is_named (GtkWidget *widget, gconstpointer name)
{
  g_autofree char *other = NULL;

  if (!gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    return FALSE;
  other = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget),
                                              GTK_ACCESSIBLE_PROPERTY_LABEL, name);
  return !other;
}

/* The control that a screen reader calls by that name. */
G_GNUC_UNUSED static GtkWidget *
named (const char *name)
{
  GtkWidget *widget = find (GTK_WIDGET (pane ()), is_named, name);

  if (!widget)
    fail_msg ("nothing is called “%s”", name);
  return widget;
}

G_GNUC_UNUSED static LbCardPaneBar *
bar (void)
{
  GType type = LB_TYPE_CARD_PANE_BAR;

  return LB_CARD_PANE_BAR (find (GTK_WIDGET (pane ()), is_of_type, &type));
}

G_GNUC_UNUSED static void
activate (const char *action)
{
  gtk_widget_activate_action (GTK_WIDGET (window), action, NULL);
}

G_GNUC_UNUSED static void
enter (const char *name, const char *text)
{
  GtkWidget *entry = named (name);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

G_GNUC_UNUSED static void
press (GtkWidget *button)
{
  assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
}
