/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "entry_parts.h"

#include <glib/gi18n.h>

#define PAGE_STEPS 10

void
lb_entry_watch (GtkEntry *entry,
                GCallback key_pressed_cb,
                GCallback leave_cb,
                GCallback activate_cb)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_widget_add_css_class (GTK_WIDGET (entry), "numeric");
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 1);
  /* Before the text inside, which would take Up and Down for itself. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", key_pressed_cb, entry);
  gtk_widget_add_controller (GTK_WIDGET (entry), keys);
  g_signal_connect_swapped (focus, "leave", leave_cb, entry);
  gtk_widget_add_controller (GTK_WIDGET (entry), focus);
  g_signal_connect (entry, "activate", activate_cb, NULL);
}

double
lb_entry_steps_of_key (guint key, GdkModifierType state)
{
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK))
    return 0;
  switch (key)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return 1;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return -1;
    case GDK_KEY_Page_Up:
      return PAGE_STEPS;
    case GDK_KEY_Page_Down:
      return -PAGE_STEPS;
    default:
      return 0;
    }
}

void
lb_entry_show_invalid (GtkEntry *entry, gboolean invalid)
{
  if (invalid)
    gtk_widget_add_css_class (GTK_WIDGET (entry), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               invalid ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
}

char *
lb_entry_range_fault (
    LbSession *session, LbQuantity quantity, double minimum, double maximum, gboolean whole)
{
  g_autofree char *low = lb_session_dup_words (session, quantity, minimum);
  g_autofree char *high = lb_session_dup_words (session, quantity, maximum);

  return g_strdup_printf (whole ? _ ("Give a whole number from %s to %s.")
                                : _ ("Give a value from %s to %s."),
                          low, high);
}
