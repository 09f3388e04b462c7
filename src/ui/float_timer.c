/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "float_timer.h"

#include <glib/gi18n.h>

#include "dispose.h"
#include "page_parts.h"

#define LONGEST 10000.0 /* m */
#define SLOWEST 86400.0 /* s */

struct _LbFloatTimer
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *distance;
  GtkWidget *time;
  GtkWidget *result;
  GtkWidget *fault;
};

G_DEFINE_FINAL_TYPE (LbFloatTimer, lb_float_timer, GTK_TYPE_WIDGET)

/* Unset while one of them is missing. */
static double
speed_of (LbFloatTimer *self)
{
  double distance = lb_quantity_entry_get_value (LB_QUANTITY_ENTRY (self->distance));
  double time = lb_quantity_entry_get_value (LB_QUANTITY_ENTRY (self->time));

  return distance / time;
}

/* (transfer full) */
static char *
find_fault (LbFloatTimer *self, double speed)
{
  const LbField *field = lb_field ("river.surface_current_m_s");
  const char *distance = lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (self->distance));
  const char *time = lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (self->time));

  if (distance)
    return g_strdup_printf (_ ("Distance: %s"), distance);
  if (time)
    return g_strdup_printf (_ ("Time: %s"), time);
  if (lb_is_set (speed) && !lb_field_accepts (field, speed))
    {
      g_autofree char *found = lb_session_dup_words (self->session, field->quantity, speed);
      g_autofree char *most = lb_session_dup_words (self->session, field->quantity, field->maximum);

      return g_strdup_printf (
          _ ("That would be %s; no more than %s is taken. Check the distance and the time."), found,
          most);
    }
  return NULL;
}

static void
say (LbFloatTimer *self)
{
  double speed = speed_of (self);
  g_autofree char *fault = find_fault (self, speed);
  g_autofree char *words = NULL;
  g_autofree char *text = NULL;

  lb_page_show_fault (self->fault, fault);
  gtk_widget_set_visible (self->result, !fault);
  if (!lb_is_set (speed))
    {
      gtk_label_set_text (GTK_LABEL (self->result),
                          _ ("Time something that floats low, over a measured distance, in the "
                             "part of the river you fish. Do it three times and take the middle "
                             "one; wind spoils it."));
      return;
    }
  words = lb_session_dup_words (self->session, LB_QUANTITY_SPEED, speed);
  text = g_strdup_printf (_ ("The float says %s at the surface."), words);
  gtk_label_set_text (GTK_LABEL (self->result), text);
}

static void
entered_cb (LbFloatTimer *self, double value, LbQuantityEntry *entry)
{
  const LbField *field = lb_field ("river.surface_current_m_s");
  double speed = speed_of (self);

  if (lb_is_set (speed) && lb_field_accepts (field, speed))
    lb_session_set_value (self->session, field, 0, speed, lb_quantity_entry_get_gesture (entry));
  say (self);
}

static GtkWidget *
add_entry (LbFloatTimer *self, LbQuantity quantity, const char *name, double most)
{
  GtkWidget *entry = lb_quantity_entry_new (self->session, quantity, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), most / 1e5, most);
  g_signal_connect_swapped (entry, "entered", G_CALLBACK (entered_cb), self);
  g_signal_connect_swapped (entry, "fault-changed", G_CALLBACK (say), self);
  return entry;
}

static void
lb_float_timer_dispose (GObject *object)
{
  LbFloatTimer *self = LB_FLOAT_TIMER (object);

  if (self->session)
    {
      g_signal_handlers_disconnect_by_data (self->session, self);
      g_signal_handlers_disconnect_by_data (self->distance, self);
      g_signal_handlers_disconnect_by_data (self->time, self);
    }
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_float_timer_parent_class)->dispose (object);
}

static void
lb_float_timer_class_init (LbFloatTimerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_float_timer_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_float_timer_init (LbFloatTimer *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
lb_float_timer_new (LbSession *session)
{
  LbFloatTimer *self = g_object_new (LB_TYPE_FLOAT_TIMER, NULL);

  self->session = g_object_ref (session);
  self->distance = add_entry (self, LB_QUANTITY_LENGTH, _ ("Distance the float drifted"), LONGEST);
  self->time = add_entry (self, LB_QUANTITY_TIME, _ ("Time the float took"), SLOWEST);
  self->result = lb_page_note (NULL);
  self->fault = lb_page_fault ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->time), _ ("1:15 or 75 s"));
  gtk_widget_set_parent (lb_page_row (_ ("Distance"), self->distance), GTK_WIDGET (self));
  gtk_widget_set_parent (lb_page_row (_ ("Time"), self->time), GTK_WIDGET (self));
  gtk_widget_set_parent (self->result, GTK_WIDGET (self));
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (say), self);
  say (self);
  return GTK_WIDGET (self);
}

LbQuantityEntry *
lb_float_timer_get_distance (LbFloatTimer *self)
{
  g_return_val_if_fail (LB_IS_FLOAT_TIMER (self), NULL);
  return LB_QUANTITY_ENTRY (self->distance);
}

LbQuantityEntry *
lb_float_timer_get_time (LbFloatTimer *self)
{
  g_return_val_if_fail (LB_IS_FLOAT_TIMER (self), NULL);
  return LB_QUANTITY_ENTRY (self->time);
}

const char *
lb_float_timer_get_words (LbFloatTimer *self)
{
  g_return_val_if_fail (LB_IS_FLOAT_TIMER (self), NULL);
  return gtk_label_get_text (
      GTK_LABEL (gtk_widget_get_visible (self->fault) ? self->fault : self->result));
}
