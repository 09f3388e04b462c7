/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field_entry.h"

#include <glib/gi18n.h>

#include "entry_parts.h"
#include "misfit.h"
#include "words.h"

struct _LbFieldEntry
{
  GtkEntry parent;
  LbSession *session;
  const LbField *field;
  gsize leader;
  char *shown;   /* the text that stands for the value */
  char *fault;   /* why the text is no value, or NULL */
  guint gesture; /* of a row of arrow keys; 0: none */
};

G_DEFINE_FINAL_TYPE (LbFieldEntry, lb_field_entry, GTK_TYPE_ENTRY)

enum
{
  PROP_FAULT = 1,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

static void
update_tooltip (LbFieldEntry *self)
{
  const char *hint = self->field && self->field->hint ? _ (self->field->hint) : NULL;

  gtk_widget_set_tooltip_text (GTK_WIDGET (self), self->fault ? self->fault : hint);
}

static void
take_fault (LbFieldEntry *self, char *fault)
{
  if (g_strcmp0 (self->fault, fault) == 0)
    {
      g_free (fault);
      return;
    }
  g_free (self->fault);
  self->fault = fault;
  lb_entry_show_invalid (GTK_ENTRY (self), fault != NULL);
  update_tooltip (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FAULT]);
}

/* The text that stands for the value; unset is an empty entry. */
static char *
dup_text (LbFieldEntry *self)
{
  double value = lb_session_get_value (self->session, self->field, self->leader);

  return lb_is_set (value) ? lb_session_dup_words (self->session, self->field->quantity, value)
                           : g_strdup ("");
}

static gboolean
is_being_edited (LbFieldEntry *self)
{
  return self->shown && g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), self->shown) != 0;
}

/* Puts the value's text in, whatever stood there. */
static void
show_value (LbFieldEntry *self)
{
  g_autofree char *text = NULL;

  if (!self->field)
    return;
  text = dup_text (self);
  take_fault (self, NULL);
  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self), text);
  g_free (self->shown);
  self->shown = g_steal_pointer (&text);
}

/* Follows the document, but leaves a text alone that is being typed. */
static void
edited_cb (LbFieldEntry *self)
{
  g_autofree char *text = NULL;

  if (!self->field)
    return;
  text = dup_text (self);
  if (g_strcmp0 (text, self->shown) != 0)
    show_value (self);
}

static char *
range_message (LbFieldEntry *self)
{
  return lb_entry_range_fault (self->session, self->field->quantity, self->field->minimum,
                               self->field->maximum, self->field->whole);
}

static char *
misfit_message (LbFieldEntry *self, double value)
{
  LbWording wording = lb_session_get_wording (self->session);
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));

  return lb_misfit_explain (setup, self->field, self->leader, value, &wording);
}

/* An empty text stands for unset where that is allowed. */
static gboolean
parse (LbFieldEntry *self, const char *text, double *value, char **fault)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));

  if (self->field->nullable && *bare == '\0')
    {
      *value = LB_UNSET;
      return TRUE;
    }
  return lb_words_parse (self->field->quantity, lb_session_get_units (self->session), text, value,
                         fault);
}

static gboolean
same_value (double a, double b)
{
  return a == b || (!lb_is_set (a) && !lb_is_set (b));
}

static void
commit (LbFieldEntry *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self));
  char *fault = NULL;
  double value;

  if (!self->field || !is_being_edited (self))
    return;
  if (!parse (self, text, &value, &fault))
    {
      take_fault (self, fault);
      return;
    }
  if (!lb_field_accepts (self->field, value))
    {
      take_fault (self, range_message (self));
      return;
    }
  if (lb_session_set_value (self->session, self->field, self->leader, value, 0)
      || same_value (lb_session_get_value (self->session, self->field, self->leader), value))
    show_value (self);
  else
    take_fault (self, misfit_message (self, value));
}

static void
leave_cb (LbFieldEntry *self)
{
  self->gesture = 0;
  commit (self);
}

static void
move (LbFieldEntry *self, double steps)
{
  double step = lb_field_step (self->field, lb_session_get_units (self->session));
  double value;

  commit (self);
  if (self->fault)
    return;
  if (!self->gesture)
    self->gesture = lb_session_new_gesture (self->session);
  value = lb_session_get_value (self->session, self->field, self->leader);
  if (!lb_is_set (value))
    value = self->field->usual_low - steps * step;
  lb_session_set_value (self->session, self->field, self->leader,
                        lb_field_clamp (self->field, value + steps * step), self->gesture);
}

static gboolean
key_pressed_cb (LbFieldEntry *self, guint key, guint code, GdkModifierType state)
{
  double steps = lb_entry_steps_of_key (key, state);

  if (!self->field)
    return GDK_EVENT_PROPAGATE;
  if (steps != 0)
    move (self, steps);
  else if (key == GDK_KEY_Escape && (is_being_edited (self) || self->fault))
    show_value (self);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

static void
drop_session (LbFieldEntry *self)
{
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
}

static void
lb_field_entry_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_FAULT)
    g_value_set_string (value, LB_FIELD_ENTRY (object)->fault);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
lb_field_entry_dispose (GObject *object)
{
  LbFieldEntry *self = LB_FIELD_ENTRY (object);

  drop_session (self);
  self->field = NULL;
  g_clear_pointer (&self->shown, g_free);
  g_clear_pointer (&self->fault, g_free);
  G_OBJECT_CLASS (lb_field_entry_parent_class)->dispose (object);
}

static void
lb_field_entry_class_init (LbFieldEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = lb_field_entry_dispose;
  object_class->get_property = lb_field_entry_get_property;
  props[PROP_FAULT] =
      g_param_spec_string ("fault", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
lb_field_entry_init (LbFieldEntry *self)
{
  lb_entry_watch (GTK_ENTRY (self), G_CALLBACK (key_pressed_cb), G_CALLBACK (leave_cb),
                  G_CALLBACK (commit));
}

GtkWidget *
lb_field_entry_new (LbSession *session, const LbField *field, gsize leader)
{
  LbFieldEntry *self = g_object_new (LB_TYPE_FIELD_ENTRY, NULL);

  lb_field_entry_set_field (self, session, field, leader);
  return GTK_WIDGET (self);
}

void
lb_field_entry_set_field (LbFieldEntry *self,
                          LbSession *session,
                          const LbField *field,
                          gsize leader)
{
  g_return_if_fail (LB_IS_FIELD_ENTRY (self));
  g_return_if_fail (LB_IS_SESSION (session));

  if (session != self->session)
    {
      drop_session (self);
      self->session = g_object_ref (session);
      g_signal_connect_swapped (session, "edited", G_CALLBACK (edited_cb), self);
      g_signal_connect_swapped (session, "reworded", G_CALLBACK (show_value), self);
    }
  self->field = field;
  self->leader = leader;
  self->gesture = 0;
  show_value (self);
  update_tooltip (self);
}

const char *
lb_field_entry_get_fault (LbFieldEntry *self)
{
  g_return_val_if_fail (LB_IS_FIELD_ENTRY (self), NULL);
  return self->fault;
}
