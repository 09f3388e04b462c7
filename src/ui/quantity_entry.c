/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity_entry.h"

#include <glib/gi18n.h>
#include <string.h>

#include "accessible.h"
#include "dispose.h"
#include "entry_parts.h"
#include "words.h"

struct _LbQuantityEntry
{
  GtkEntry parent;
  LbSession *session;
  LbQuantity quantity;
  double minimum, maximum;
  gboolean optional; /* an empty text is a value, too */
  double value;
  char *shown; /* the text that stands for the value */
  char *fault;
  char *hint; /* the tooltip of its own, while that of the fault is in its place */
  guint gesture;
};

G_DEFINE_FINAL_TYPE (LbQuantityEntry, lb_quantity_entry, GTK_TYPE_ENTRY)

enum
{
  ENTERED,
  FAULT_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
take_fault (LbQuantityEntry *self, char *fault)
{
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean same = g_strcmp0 (fault, self->fault) == 0;

  if (fault && !self->fault)
    self->hint = g_strdup (gtk_widget_get_tooltip_text (widget));
  g_free (self->fault);
  self->fault = fault;
  if (same)
    return;
  lb_entry_show_invalid (GTK_ENTRY (self), fault != NULL);
  gtk_widget_set_tooltip_text (widget, fault ? fault : self->hint);
  if (!fault)
    g_clear_pointer (&self->hint, g_free);
  g_signal_emit (self, signals[FAULT_CHANGED], 0);
}

static gboolean
is_being_edited (LbQuantityEntry *self)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), self->shown) != 0;
}

static void
show_value (LbQuantityEntry *self)
{
  g_autofree char *text = lb_is_set (self->value)
                              ? lb_session_dup_words (self->session, self->quantity, self->value)
                              : g_strdup ("");

  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self), text);
  g_free (self->shown);
  self->shown = g_steal_pointer (&text);
  take_fault (self, NULL);
}

/* "1:15" as a clock shows it, into seconds. */
static gboolean
parse_clock (const char *text, double *value)
{
  guint minutes, seconds;
  char rest;

  if (sscanf (text, " %u : %u %c", &minutes, &seconds, &rest) != 2 || seconds >= 60)
    return FALSE;
  *value = 60.0 * minutes + seconds;
  return TRUE;
}

static gboolean
parse (LbQuantityEntry *self, double *value, char **fault)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self));

  if (self->quantity == LB_QUANTITY_TIME && parse_clock (text, value))
    return TRUE;
  if (self->quantity == LB_QUANTITY_TIME && strchr (text, ':'))
    {
      *fault = g_strdup_printf (_ ("“%s” is no time: write minutes and seconds like “1:15”, the "
                                   "seconds from 0 to 59."),
                                text);
      return FALSE;
    }
  return lb_words_parse (self->quantity, lb_session_get_units (self->session), text, value, fault);
}

static gboolean
is_empty (LbQuantityEntry *self)
{
  g_autofree char *bare = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self))));

  return *bare == '\0';
}

static void
enter (LbQuantityEntry *self, double value)
{
  self->value = value;
  show_value (self);
  g_signal_emit (self, signals[ENTERED], 0, value);
}

void
lb_quantity_entry_commit (LbQuantityEntry *self)
{
  char *fault = NULL;
  double value;

  g_return_if_fail (LB_IS_QUANTITY_ENTRY (self));
  if (!is_being_edited (self))
    return;
  if (self->optional && is_empty (self))
    enter (self, LB_UNSET);
  else if (!parse (self, &value, &fault))
    take_fault (self, fault);
  else if (!(value >= self->minimum && value <= self->maximum))
    take_fault (self, lb_entry_range_fault (self->session, self->quantity, self->minimum,
                                            self->maximum, FALSE));
  else
    enter (self, value);
}

static void
leave_cb (LbQuantityEntry *self)
{
  lb_quantity_entry_commit (self);
  self->gesture = 0;
}

static void
move (LbQuantityEntry *self, double steps)
{
  double step = lb_units_step (self->quantity, lb_session_get_units (self->session));

  lb_quantity_entry_commit (self);
  if (self->fault || !lb_is_set (self->value))
    return;
  if (!self->gesture)
    self->gesture = lb_session_new_gesture (self->session);
  enter (self, CLAMP (self->value + steps * step, self->minimum, self->maximum));
}

static gboolean
key_pressed_cb (LbQuantityEntry *self, guint key, guint code, GdkModifierType state)
{
  double steps = lb_entry_steps_of_key (key, state);

  if (steps != 0)
    move (self, steps);
  else if (key == GDK_KEY_Escape && (is_being_edited (self) || self->fault))
    show_value (self);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

static void
lb_quantity_entry_dispose (GObject *object)
{
  LbQuantityEntry *self = LB_QUANTITY_ENTRY (object);

  lb_dispose_session (&self->session, self);
  g_clear_pointer (&self->shown, g_free);
  g_clear_pointer (&self->fault, g_free);
  g_clear_pointer (&self->hint, g_free);
  G_OBJECT_CLASS (lb_quantity_entry_parent_class)->dispose (object);
}

static void
lb_quantity_entry_class_init (LbQuantityEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_quantity_entry_dispose;
  signals[ENTERED] = g_signal_new ("entered", LB_TYPE_QUANTITY_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
  signals[FAULT_CHANGED] = g_signal_new ("fault-changed", LB_TYPE_QUANTITY_ENTRY, G_SIGNAL_RUN_LAST,
                                         0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_quantity_entry_init (LbQuantityEntry *self)
{
  self->value = LB_UNSET;
  self->minimum = -INFINITY;
  self->maximum = INFINITY;
  self->shown = g_strdup ("");
  gtk_editable_set_width_chars (GTK_EDITABLE (self), 8);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self), 8);
  lb_entry_watch (GTK_ENTRY (self), G_CALLBACK (key_pressed_cb), G_CALLBACK (leave_cb),
                  G_CALLBACK (lb_quantity_entry_commit));
}

GtkWidget *
lb_quantity_entry_new (LbSession *session, LbQuantity quantity, const char *name)
{
  LbQuantityEntry *self = g_object_new (LB_TYPE_QUANTITY_ENTRY, NULL);

  self->session = g_object_ref (session);
  self->quantity = quantity;
  lb_quantity_entry_set_name (self, name);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (show_value), self);
  return GTK_WIDGET (self);
}

void
lb_quantity_entry_set_name (LbQuantityEntry *self, const char *name)
{
  g_return_if_fail (LB_IS_QUANTITY_ENTRY (self));
  lb_accessible_name (GTK_WIDGET (self), name);
}

void
lb_quantity_entry_set_range (LbQuantityEntry *self, double minimum, double maximum)
{
  g_return_if_fail (LB_IS_QUANTITY_ENTRY (self));
  self->minimum = minimum;
  self->maximum = maximum;
}

void
lb_quantity_entry_set_optional (LbQuantityEntry *self, gboolean optional)
{
  g_return_if_fail (LB_IS_QUANTITY_ENTRY (self));
  self->optional = optional;
}

void
lb_quantity_entry_set_value (LbQuantityEntry *self, double value)
{
  g_return_if_fail (LB_IS_QUANTITY_ENTRY (self));
  if (value == self->value || (!lb_is_set (value) && !lb_is_set (self->value)))
    return;
  self->value = value;
  show_value (self);
}

void
lb_quantity_entry_reset (LbQuantityEntry *self)
{
  g_return_if_fail (LB_IS_QUANTITY_ENTRY (self));
  show_value (self);
}

double
lb_quantity_entry_get_value (LbQuantityEntry *self)
{
  g_return_val_if_fail (LB_IS_QUANTITY_ENTRY (self), LB_UNSET);
  return self->value;
}

guint
lb_quantity_entry_get_gesture (LbQuantityEntry *self)
{
  g_return_val_if_fail (LB_IS_QUANTITY_ENTRY (self), 0);
  return self->gesture;
}

const char *
lb_quantity_entry_get_fault (LbQuantityEntry *self)
{
  g_return_val_if_fail (LB_IS_QUANTITY_ENTRY (self), NULL);
  return self->fault;
}
