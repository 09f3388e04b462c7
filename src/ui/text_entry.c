/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text_entry.h"

#include <glib/gi18n.h>

#include "dispose.h"

#define TITLE (-1)

struct _LbTextEntry
{
  GtkEntry parent;
  LbSession *session;
  int leader;  /* whose lure's name; TITLE: the rig's title */
  char *shown; /* the text that the document has */
};

G_DEFINE_FINAL_TYPE (LbTextEntry, lb_text_entry, GTK_TYPE_ENTRY)

static const char *
text_of (LbTextEntry *self)
{
  LbDocument *document = lb_session_get_document (self->session);

  return self->leader == TITLE ? lb_document_get_title (document)
                               : lb_document_get_lure_name (document, (gsize) self->leader);
}

static void
show (LbTextEntry *self)
{
  g_free (self->shown);
  self->shown = g_strdup (text_of (self));
  gtk_editable_set_text (GTK_EDITABLE (self), self->shown);
}

/* Follows the document, but leaves a text alone that is being typed. */
static void
edited_cb (LbTextEntry *self)
{
  if (g_strcmp0 (text_of (self), self->shown) != 0)
    show (self);
}

static void
commit (LbTextEntry *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self));

  if (!self->session || g_strcmp0 (text, self->shown) == 0)
    return;
  lb_session_do (self->session, self->leader == TITLE
                                    ? lb_change_new_title (text)
                                    : lb_change_new_lure_name ((gsize) self->leader, text));
  show (self);
}

static gboolean
key_pressed_cb (LbTextEntry *self, guint key)
{
  if (key != GDK_KEY_Escape
      || g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), self->shown) == 0)
    return GDK_EVENT_PROPAGATE;
  show (self);
  return GDK_EVENT_STOP;
}

static void
lb_text_entry_dispose (GObject *object)
{
  LbTextEntry *self = LB_TEXT_ENTRY (object);

  lb_dispose_session (&self->session, self);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (lb_text_entry_parent_class)->dispose (object);
}

static void
lb_text_entry_class_init (LbTextEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_text_entry_dispose;
}

static void
lb_text_entry_init (LbTextEntry *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (commit), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  g_signal_connect (self, "activate", G_CALLBACK (commit), NULL);
}

static GtkWidget *
text_entry_new (LbSession *session, int leader, glong longest, const char *name)
{
  LbTextEntry *self = g_object_new (LB_TYPE_TEXT_ENTRY, "max-length", (int) longest, NULL);

  self->session = g_object_ref (session);
  self->leader = leader;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (edited_cb), self);
  show (self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_text_entry_new_title (LbSession *session)
{
  GtkWidget *self = text_entry_new (session, TITLE, LB_TITLE_LONGEST, _ ("Name of the rig"));

  gtk_entry_set_placeholder_text (GTK_ENTRY (self), _ ("Untitled rig"));
  return self;
}

GtkWidget *
lb_text_entry_new_lure_name (LbSession *session, gsize leader)
{
  g_autofree char *name = g_strdup_printf (_ ("Leader %zu: name of the lure"), leader + 1);

  g_return_val_if_fail (leader < LB_MAX_LEADERS, NULL);
  return text_entry_new (session, (int) leader, LB_NAME_LONGEST, name);
}
