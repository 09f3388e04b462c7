/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "line_entry.h"

#include "accessible.h"
#include "entry_parts.h"

struct _LbLineEntry
{
  GtkEntry parent;
  char *shown; /* the text that was set */
  char *fault;
};

G_DEFINE_FINAL_TYPE (LbLineEntry, lb_line_entry, GTK_TYPE_ENTRY)

enum
{
  ENTERED,
  FAULT_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
show (LbLineEntry *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self), self->shown);
  lb_line_entry_set_fault (self, NULL);
}

void
lb_line_entry_commit (LbLineEntry *self)
{
  g_autofree char *text = NULL;

  g_return_if_fail (LB_IS_LINE_ENTRY (self));
  text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self))));
  if (g_strcmp0 (text, self->shown) == 0)
    return;
  lb_line_entry_set_fault (self, NULL);
  g_signal_emit (self, signals[ENTERED], 0, text);
  /* It came to nothing. */
  if (!self->fault && g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), self->shown) != 0)
    show (self);
}

static gboolean
key_pressed_cb (LbLineEntry *self, guint key, guint code, GdkModifierType state)
{
  if (key != GDK_KEY_Escape
      || g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), self->shown) == 0)
    return GDK_EVENT_PROPAGATE;
  show (self);
  return GDK_EVENT_STOP;
}

static void
lb_line_entry_finalize (GObject *object)
{
  LbLineEntry *self = LB_LINE_ENTRY (object);

  g_free (self->shown);
  g_free (self->fault);
  G_OBJECT_CLASS (lb_line_entry_parent_class)->finalize (object);
}

static void
lb_line_entry_class_init (LbLineEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lb_line_entry_finalize;
  signals[ENTERED] = g_signal_new ("entered", LB_TYPE_LINE_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[FAULT_CHANGED] = g_signal_new ("fault-changed", LB_TYPE_LINE_ENTRY, G_SIGNAL_RUN_LAST, 0,
                                         NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_line_entry_init (LbLineEntry *self)
{
  self->shown = g_strdup ("");
  gtk_editable_set_width_chars (GTK_EDITABLE (self), 6);
  lb_entry_watch (GTK_ENTRY (self), G_CALLBACK (key_pressed_cb), G_CALLBACK (lb_line_entry_commit),
                  G_CALLBACK (lb_line_entry_commit));
  gtk_editable_set_alignment (GTK_EDITABLE (self), 0);
}

GtkWidget *
lb_line_entry_new (const char *name, int longest)
{
  GtkWidget *self = g_object_new (LB_TYPE_LINE_ENTRY, "max-length", longest, NULL);

  lb_accessible_name (self, name);
  return self;
}

void
lb_line_entry_set_text (LbLineEntry *self, const char *text)
{
  g_return_if_fail (LB_IS_LINE_ENTRY (self));
  if (g_strcmp0 (text, self->shown) == 0)
    return;
  g_free (self->shown);
  self->shown = g_strdup (text ? text : "");
  show (self);
}

void
lb_line_entry_set_fault (LbLineEntry *self, const char *fault)
{
  g_return_if_fail (LB_IS_LINE_ENTRY (self));
  if (g_strcmp0 (fault, self->fault) == 0)
    return;
  g_free (self->fault);
  self->fault = g_strdup (fault);
  lb_entry_show_invalid (GTK_ENTRY (self), fault != NULL);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), fault);
  g_signal_emit (self, signals[FAULT_CHANGED], 0);
}

const char *
lb_line_entry_get_fault (LbLineEntry *self)
{
  g_return_val_if_fail (LB_IS_LINE_ENTRY (self), NULL);
  return self->fault;
}
