/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fault_bubble.h"

#define BUBBLE_KEY "layback-fault-bubble"
#define WIDEST 36 /* characters */

static GtkWidget *
bubble_of (LbFieldEntry *entry)
{
  return g_object_get_data (G_OBJECT (entry), BUBBLE_KEY);
}

static GtkWidget *
ensure_bubble (LbFieldEntry *entry)
{
  GtkWidget *bubble = bubble_of (entry);
  GtkWidget *label;

  if (bubble)
    return bubble;
  label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WIDEST);
  gtk_widget_add_css_class (label, "row-fault");
  bubble = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (bubble), label);
  gtk_popover_set_position (GTK_POPOVER (bubble), GTK_POS_TOP);
  /* It must not take the focus from the entry. */
  gtk_popover_set_autohide (GTK_POPOVER (bubble), FALSE);
  gtk_widget_set_can_focus (bubble, FALSE);
  gtk_widget_set_can_target (bubble, FALSE);
  gtk_widget_set_parent (bubble, GTK_WIDGET (entry));
  g_object_set_data (G_OBJECT (entry), BUBBLE_KEY, bubble);
  return bubble;
}

static void
fault_cb (LbFieldEntry *entry)
{
  const char *fault = lb_field_entry_get_fault (entry);
  GtkWidget *bubble = bubble_of (entry);

  if (!fault || !gtk_widget_get_mapped (GTK_WIDGET (entry)))
    {
      if (bubble)
        gtk_popover_popdown (GTK_POPOVER (bubble));
      return;
    }
  bubble = ensure_bubble (entry);
  gtk_label_set_text (GTK_LABEL (gtk_popover_get_child (GTK_POPOVER (bubble))), fault);
  gtk_popover_popup (GTK_POPOVER (bubble));
}

static void
drop_cb (LbFieldEntry *entry)
{
  GtkWidget *bubble = bubble_of (entry);

  g_object_set_data (G_OBJECT (entry), BUBBLE_KEY, NULL);
  if (bubble)
    gtk_widget_unparent (bubble);
}

void
lb_fault_bubble_attach (LbFieldEntry *entry)
{
  g_return_if_fail (LB_IS_FIELD_ENTRY (entry));
  g_signal_connect (entry, "notify::fault", G_CALLBACK (fault_cb), NULL);
  g_signal_connect (entry, "unmap", G_CALLBACK (drop_cb), NULL);
  g_signal_connect (entry, "destroy", G_CALLBACK (drop_cb), NULL);
}

const char *
lb_fault_bubble_get_text (LbFieldEntry *entry)
{
  GtkWidget *bubble;

  g_return_val_if_fail (LB_IS_FIELD_ENTRY (entry), NULL);
  bubble = bubble_of (entry);
  if (!bubble || !gtk_widget_get_visible (bubble))
    return NULL;
  return gtk_label_get_text (GTK_LABEL (gtk_popover_get_child (GTK_POPOVER (bubble))));
}
