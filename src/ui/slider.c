/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "slider.h"

#include <math.h>

#include "accessible.h"
#include "dispose.h"
#include "fault_bubble.h"
#include "field_entry.h"
#include "flat.h"
#include "slider_rail.h"

/* Key presses further apart than this are steps of their own in the history. */
#define GESTURE_PAUSE_MS 1000
/* A drag stops at a tick within this part of the slider's length. */
#define SNAP_PART 0.012
/* A drag moves by this part of the field's step: finer would show digits nobody asked for. */
#define DRAG_STEP_PART 0.2
#define PAGE_STEPS 5
/* Room beyond a value that the usual range does not hold. */
#define ROOM_BEYOND 1.25

struct _LbSlider
{
  GtkWidget parent;
  LbSession *session;
  const LbField *field;
  GtkWidget *label; /* or NULL */
  GtkWidget *scale;
  GtkWidget *entry;
  GtkAdjustment *adjustment;
  double lower, upper; /* usual, SI */
  GArray *marks;       /* double, SI, rising */
  gboolean following;  /* the slider is being set from the document */
  gboolean pressed;
  guint gesture; /* 0: none under way */
  guint pause_id;
};

G_DEFINE_FINAL_TYPE (LbSlider, lb_slider, GTK_TYPE_WIDGET)

static void
end_gesture (LbSlider *self)
{
  g_clear_handle_id (&self->pause_id, g_source_remove);
  self->gesture = 0;
}

static gboolean
pause_cb (gpointer user_data)
{
  LbSlider *self = user_data;

  self->pause_id = 0;
  if (!self->pressed)
    self->gesture = 0;
  return G_SOURCE_REMOVE;
}

static guint
gesture_now (LbSlider *self)
{
  if (!self->gesture)
    self->gesture = lb_session_new_gesture (self->session);
  g_clear_handle_id (&self->pause_id, g_source_remove);
  if (!self->pressed)
    self->pause_id = g_timeout_add (GESTURE_PAUSE_MS, pause_cb, self);
  return self->gesture;
}

static double
step_of (LbSlider *self)
{
  return lb_field_step (self->field, lb_session_get_units (self->session));
}

/* Sets the slider's range so that the usual range and the value are in it. */
static void
fit_range (LbSlider *self, double value)
{
  double lower = fmin (self->lower, value);
  double upper = self->upper;

  if (value > upper)
    upper = fmin (value * ROOM_BEYOND, self->field->maximum);
  /* In the middle of a drag the range must not move under the pointer. */
  if (self->pressed && value <= gtk_adjustment_get_upper (self->adjustment))
    return;
  gtk_adjustment_set_lower (self->adjustment, lower);
  gtk_adjustment_set_upper (self->adjustment, upper);
}

static void
follow (LbSlider *self)
{
  g_autofree char *words = NULL;
  double value;

  if (!self->field)
    return;
  value = lb_session_get_value (self->session, self->field, 0);
  if (!lb_is_set (value))
    return;
  self->following = TRUE;
  fit_range (self, value);
  gtk_adjustment_set_value (self->adjustment, value);
  self->following = FALSE;
  words = lb_session_dup_words (self->session, self->field->quantity, value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                  words, -1);
}

static double
snapped (LbSlider *self, double value)
{
  LbUnits units = lb_session_get_units (self->session);
  LbQuantity quantity = self->field->quantity;
  double reach = SNAP_PART * (self->upper - self->lower);
  double grid = DRAG_STEP_PART * step_of (self) / lb_units_size (quantity, units);

  for (guint i = 0; i < self->marks->len; i++)
    {
      double mark = g_array_index (self->marks, double, i);

      if (fabs (value - mark) <= reach)
        return mark;
    }
  value = lb_units_from_si (quantity, units, value);
  return lb_units_to_si (quantity, units, grid * round (value / grid));
}

static void
value_changed_cb (LbSlider *self)
{
  double value;

  if (self->following || !self->field)
    return;
  value = gtk_adjustment_get_value (self->adjustment);
  /* Only a drag is drawn to ticks and round numbers; keys make exact steps. */
  if (self->pressed)
    value = lb_field_clamp (self->field, snapped (self, value));
  if (!lb_session_set_value (self->session, self->field, 0, value, gesture_now (self)))
    follow (self);
}

/* Sets the value as the user does: one step of the history with the key presses around it. */
static void
go_to (LbSlider *self, double value)
{
  lb_session_set_value (self->session, self->field, 0, value, gesture_now (self));
}

static gboolean
go_to_mark (LbSlider *self, int direction)
{
  double value = lb_session_get_value (self->session, self->field, 0);
  double slack = 1e-6 * (self->upper - self->lower);
  int n = (int) self->marks->len;

  for (int k = 0; k < n; k++)
    {
      double mark = g_array_index (self->marks, double, direction > 0 ? k : n - 1 - k);

      if (direction * (mark - value) > slack)
        {
          go_to (self, mark);
          return TRUE;
        }
    }
  return n > 0;
}

static gboolean
key_pressed_cb (LbSlider *self, guint key, guint code, GdkModifierType state)
{
  double value, step;

  if (!self->field || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)))
    return GDK_EVENT_PROPAGATE;
  value = lb_session_get_value (self->session, self->field, 0);
  step = step_of (self);
  switch (key)
    {
    /* Up is more, as the number is, whichever way a theme or a language turns the slider. */
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      go_to (self, value + step);
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      go_to (self, value - step);
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      if (!go_to_mark (self, 1))
        go_to (self, value + PAGE_STEPS * step);
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      if (!go_to_mark (self, -1))
        go_to (self, value - PAGE_STEPS * step);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static gboolean
pointer_cb (LbSlider *self, GdkEvent *event)
{
  switch ((int) gdk_event_get_event_type (event))
    {
    case GDK_BUTTON_PRESS:
    case GDK_TOUCH_BEGIN:
      end_gesture (self);
      self->pressed = TRUE;
      /* It would lie over what the drag is about. */
      gtk_widget_set_has_tooltip (self->scale, FALSE);
      break;
    case GDK_BUTTON_RELEASE:
    case GDK_TOUCH_END:
    case GDK_TOUCH_CANCEL:
      self->pressed = FALSE;
      gtk_widget_set_has_tooltip (self->scale, TRUE);
      end_gesture (self);
      follow (self);
      break;
    default:
      break;
    }
  return GDK_EVENT_PROPAGATE;
}

static void
edited_cb (LbSlider *self)
{
  follow (self);
}

static void
reworded_cb (LbSlider *self)
{
  if (!self->field)
    return;
  gtk_adjustment_set_step_increment (self->adjustment, step_of (self));
  gtk_adjustment_set_page_increment (self->adjustment, PAGE_STEPS * step_of (self));
  follow (self);
}

static gboolean
lb_slider_grab_focus (GtkWidget *widget)
{
  return lb_accessible_pass_focus (widget, LB_SLIDER (widget)->scale);
}

static void
lb_slider_dispose (GObject *object)
{
  LbSlider *self = LB_SLIDER (object);

  end_gesture (self);
  self->field = NULL;
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  g_clear_pointer (&self->marks, g_array_unref);
  G_OBJECT_CLASS (lb_slider_parent_class)->dispose (object);
}

static void
lb_slider_class_init (LbSliderClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_slider_dispose;
  widget_class->grab_focus = lb_slider_grab_focus;
  widget_class->snapshot = lb_flat_snapshot_children;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbslider");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
add_controllers (LbSlider *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *pointer = gtk_event_controller_legacy_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->scale, keys);
  /* Only looks: the slider's own gestures claim presses, so that another gesture would not be told
   * when they end. */
  gtk_event_controller_set_propagation_phase (pointer, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (pointer, "event", G_CALLBACK (pointer_cb), self);
  gtk_widget_add_controller (self->scale, pointer);
}

static void
lb_slider_init (LbSlider *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 8);
  self->marks = g_array_new (FALSE, FALSE, sizeof (double));
  self->adjustment = gtk_adjustment_new (0, 0, 1, 0.1, 0.5, 0);
  self->scale = lb_slider_rail_new (self->adjustment);
  gtk_widget_set_hexpand (self->scale, TRUE);
  gtk_widget_set_valign (self->scale, GTK_ALIGN_CENTER);
  gtk_widget_set_parent (self->scale, GTK_WIDGET (self));
  g_signal_connect_swapped (self->adjustment, "value-changed", G_CALLBACK (value_changed_cb), self);
  add_controllers (self);

  self->entry = g_object_new (LB_TYPE_FIELD_ENTRY, "width-chars", 8, "max-width-chars", 8, "valign",
                              GTK_ALIGN_CENTER, NULL);
  lb_fault_bubble_attach (LB_FIELD_ENTRY (self->entry));
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
}

GtkWidget *
lb_slider_new (LbSession *session, const char *label)
{
  LbSlider *self = g_object_new (LB_TYPE_SLIDER, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (edited_cb), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (reworded_cb), self);
  if (label)
    {
      self->label = gtk_label_new_with_mnemonic (label);
      gtk_label_set_xalign (GTK_LABEL (self->label), 0);
      gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), self->scale);
      gtk_widget_insert_after (self->label, GTK_WIDGET (self), NULL);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      gtk_label_get_text (GTK_LABEL (self->label)), -1);
    }
  return GTK_WIDGET (self);
}

void
lb_slider_set_field (LbSlider *self, const LbField *field, const char *tooltip)
{
  g_return_if_fail (LB_IS_SLIDER (self));

  end_gesture (self);
  self->field = field;
  self->lower = field->usual_high > field->usual_low ? field->usual_low : field->minimum;
  self->upper = field->usual_high > field->usual_low ? field->usual_high : field->maximum;
  gtk_widget_set_tooltip_text (self->scale, tooltip);
  lb_field_entry_set_field (LB_FIELD_ENTRY (self->entry), self->session, field, 0);
  reworded_cb (self);
}

void
lb_slider_set_marks (LbSlider *self, const double *values, gsize n)
{
  g_return_if_fail (LB_IS_SLIDER (self));

  g_array_set_size (self->marks, 0);
  g_array_append_vals (self->marks, values, n);
  lb_slider_rail_set_marks (LB_SLIDER_RAIL (self->scale), values, n);
}

GtkWidget *
lb_slider_get_label (LbSlider *self)
{
  g_return_val_if_fail (LB_IS_SLIDER (self), NULL);
  return self->label;
}

GtkWidget *
lb_slider_get_scale (LbSlider *self)
{
  g_return_val_if_fail (LB_IS_SLIDER (self), NULL);
  return self->scale;
}

GtkWidget *
lb_slider_get_entry (LbSlider *self)
{
  g_return_val_if_fail (LB_IS_SLIDER (self), NULL);
  return self->entry;
}

void
lb_slider_set_accessible_name (LbSlider *self, const char *name)
{
  g_return_if_fail (LB_IS_SLIDER (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
}
