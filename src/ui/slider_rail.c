/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "slider_rail.h"

#include <math.h>

/* With Shift held, a drag moves the knob by this part of what the pointer moves. */
#define FINE_PART 0.1
/* A tick, px: below the middle of the rail, so that it shows under the knob. */
#define TICK_TOP 9
#define TICK_LENGTH 5
#define TICK_OPACITY 0.55f

struct _LbSliderRail
{
  GtkScale parent;
  /* Named and nested as GTK's own, so that any theme knows them. */
  GtkWidget *trough, *fill, *highlight, *knob;
  GArray *marks;  /* double */
  double pointer; /* px along the rail, where the last event of the drag was */
  double held;    /* px along the rail, where the drag wants the knob's middle */
  gulong changed_id, value_changed_id;
  GtkAdjustment *adjustment; /* that the two are connected to */
};

G_DEFINE_FINAL_TYPE (LbSliderRail, lb_slider_rail, GTK_TYPE_SCALE)

/* ---- Where things are ---- */

static int
least (GtkWidget *widget, GtkOrientation orientation)
{
  int minimum;

  gtk_widget_measure (widget, orientation, -1, &minimum, NULL, NULL, NULL);
  return minimum;
}

static gboolean
is_mirrored (LbSliderRail *self)
{
  return gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
}

/* Of the way from the rail's left end to its right end. */
static double
share_of (LbSliderRail *self, double value)
{
  double lower = gtk_adjustment_get_lower (self->adjustment);
  double upper = gtk_adjustment_get_upper (self->adjustment);
  double share = upper > lower ? CLAMP ((value - lower) / (upper - lower), 0, 1) : 0;

  return is_mirrored (self) ? 1 - share : share;
}

static double
value_at (LbSliderRail *self, double share)
{
  double lower = gtk_adjustment_get_lower (self->adjustment);
  double upper = gtk_adjustment_get_upper (self->adjustment);

  share = CLAMP (share, 0, 1);
  return lower + (is_mirrored (self) ? 1 - share : share) * (upper - lower);
}

/* The stretch that the knob's middle moves over, px from the rail's left end. */
static void
stretch_of (LbSliderRail *self, double *start, double *length)
{
  double knob = least (self->knob, GTK_ORIENTATION_HORIZONTAL);
  graphene_point_t at;

  if (!gtk_widget_compute_point (self->trough, GTK_WIDGET (self), &GRAPHENE_POINT_INIT (0, 0), &at))
    at.x = 0;
  *start = at.x + knob / 2;
  *length = fmax (gtk_widget_get_width (self->trough) - knob, 1);
}

/* A part of the trough, from its end up to the middle of where the knob stands at `value`. */
static void
place_bar (LbSliderRail *self, GtkWidget *bar, double value)
{
  int width = gtk_widget_get_width (self->trough), height = gtk_widget_get_height (self->trough);
  int knob = least (self->knob, GTK_ORIENTATION_HORIZONTAL);
  int end = (int) round (knob / 2.0 + share_of (self, value) * MAX (width - knob, 0));
  int size = MAX (is_mirrored (self) ? width - end : end, least (bar, GTK_ORIENTATION_HORIZONTAL));

  gtk_widget_size_allocate (
      bar, &(GtkAllocation){ is_mirrored (self) ? width - size : 0, 0, size, height }, -1);
}

/* Only the trough's children move: nothing else need be laid out. */
static void
place_parts (LbSliderRail *self)
{
  GtkRange *range = GTK_RANGE (self);
  int width = gtk_widget_get_width (self->trough), height = gtk_widget_get_height (self->trough);
  GtkAllocation knob = { .width = least (self->knob, GTK_ORIENTATION_HORIZONTAL),
                         .height = least (self->knob, GTK_ORIENTATION_VERTICAL) };
  double value = gtk_adjustment_get_value (self->adjustment);

  if (width < 1)
    return;
  knob.x = (int) round (share_of (self, value) * MAX (width - knob.width, 0));
  knob.y = (height - knob.height) / 2;
  if (gtk_range_get_show_fill_level (range))
    place_bar (self, self->fill, gtk_range_get_fill_level (range));
  place_bar (self, self->highlight, value);
  gtk_widget_size_allocate (self->knob, &knob, -1);
}

static void
lb_slider_rail_measure (GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  LbSliderRail *self = LB_SLIDER_RAIL (widget);

  *minimum = MAX (least (self->trough, orientation), least (self->knob, orientation));
  *natural = *minimum;
}

static void
lb_slider_rail_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbSliderRail *self = LB_SLIDER_RAIL (widget);
  int thick = MAX (least (self->trough, GTK_ORIENTATION_VERTICAL),
                   least (self->knob, GTK_ORIENTATION_VERTICAL));

  least (self->trough, GTK_ORIENTATION_HORIZONTAL);
  gtk_widget_size_allocate (self->trough, &(GtkAllocation){ 0, (height - thick) / 2, width, thick },
                            -1);
  place_parts (self);
}

static void
lb_slider_rail_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbSliderRail *self = LB_SLIDER_RAIL (widget);
  float middle = 0.5f * (float) gtk_widget_get_height (widget);
  double start, length;
  GdkRGBA color;

  stretch_of (self, &start, &length);
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
  color.alpha *= TICK_OPACITY;
  for (guint i = 0; i < self->marks->len; i++)
    {
      double share = share_of (self, g_array_index (self->marks, double, i));
      float x = (float) floor (start + share * length);

      gtk_snapshot_append_color (
          snapshot, &color, &GRAPHENE_RECT_INIT (x, floorf (middle) + TICK_TOP, 1, TICK_LENGTH));
    }
  gtk_widget_snapshot_child (widget, self->trough, snapshot);
}

/* ---- Being moved ---- */

static void
take_adjustment_cb (LbSliderRail *self)
{
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self));

  g_clear_signal_handler (&self->changed_id, self->adjustment);
  g_clear_signal_handler (&self->value_changed_id, self->adjustment);
  g_set_object (&self->adjustment, adjustment);
  self->changed_id =
      g_signal_connect_swapped (adjustment, "changed", G_CALLBACK (place_parts), self);
  self->value_changed_id =
      g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (place_parts), self);
}

static void
show_fill_cb (LbSliderRail *self)
{
  gtk_widget_set_visible (self->fill, gtk_range_get_show_fill_level (GTK_RANGE (self)));
  place_parts (self);
}

static void
hold_at (LbSliderRail *self, double x)
{
  double start, length;

  self->held = x;
  stretch_of (self, &start, &length);
  gtk_adjustment_set_value (self->adjustment, value_at (self, (x - start) / length));
}

static void
drag_begin_cb (LbSliderRail *self, double x, double y, GtkGesture *gesture)
{
  double start, length, knob;
  graphene_rect_t bounds;

  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_widget_grab_focus (GTK_WIDGET (self));
  gtk_widget_set_state_flags (self->knob, GTK_STATE_FLAG_ACTIVE, FALSE);
  stretch_of (self, &start, &length);
  knob = start + share_of (self, gtk_adjustment_get_value (self->adjustment)) * length;
  self->pointer = x;
  self->held = knob;
  /* Taken beside its middle, the knob does not leap. */
  if (gtk_widget_compute_bounds (self->knob, GTK_WIDGET (self), &bounds)
      && graphene_rect_contains_point (&bounds, &GRAPHENE_POINT_INIT ((float) x, (float) y)))
    return;
  hold_at (self, x);
}

static void
drag_update_cb (LbSliderRail *self, double dx, double dy, GtkGesture *gesture)
{
  GdkModifierType state =
      gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
  double x, y, moved;

  if (!gtk_gesture_drag_get_start_point (GTK_GESTURE_DRAG (gesture), &x, &y))
    return;
  moved = x + dx - self->pointer;
  self->pointer = x + dx;
  if (moved != 0)
    hold_at (self, self->held + moved * (state & GDK_SHIFT_MASK ? FINE_PART : 1));
}

static void
drag_end_cb (LbSliderRail *self)
{
  gtk_widget_unset_state_flags (self->knob, GTK_STATE_FLAG_ACTIVE);
}

/* ---- Making ---- */

/* A node of the theme's, which the rail lays out. */
static GtkWidget *
add_part (GtkWidget *parent, const char *css_name)
{
  GtkWidget *part = g_object_new (GTK_TYPE_BOX, "css-name", css_name, "accessible-role",
                                  GTK_ACCESSIBLE_ROLE_NONE, NULL);

  gtk_widget_set_layout_manager (part, NULL);
  gtk_widget_set_parent (part, parent);
  return part;
}

/* GTK's gestures look for GTK's knob. */
static void
still_gestures (LbSliderRail *self)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (self));

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_GESTURE (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

static void
add_gesture (LbSliderRail *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  still_gestures (self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

static void
lb_slider_rail_dispose (GObject *object)
{
  LbSliderRail *self = LB_SLIDER_RAIL (object);

  if (self->adjustment)
    {
      g_clear_signal_handler (&self->changed_id, self->adjustment);
      g_clear_signal_handler (&self->value_changed_id, self->adjustment);
    }
  g_clear_pointer (&self->fill, gtk_widget_unparent);
  g_clear_pointer (&self->highlight, gtk_widget_unparent);
  g_clear_pointer (&self->knob, gtk_widget_unparent);
  g_clear_pointer (&self->trough, gtk_widget_unparent);
  g_clear_pointer (&self->marks, g_array_unref);
  G_OBJECT_CLASS (lb_slider_rail_parent_class)->dispose (object);
  g_clear_object (&self->adjustment);
}

static void
lb_slider_rail_class_init (LbSliderRailClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_slider_rail_dispose;
  widget_class->measure = lb_slider_rail_measure;
  widget_class->size_allocate = lb_slider_rail_size_allocate;
  widget_class->snapshot = lb_slider_rail_snapshot;
}

static void
lb_slider_rail_init (LbSliderRail *self)
{
  GtkWidget *own = gtk_widget_get_first_child (GTK_WIDGET (self));

  /* Hidden, GTK's trough may ask for room as often as it likes. */
  if (own)
    gtk_widget_set_visible (own, FALSE);
  self->marks = g_array_new (FALSE, FALSE, sizeof (double));
  self->trough = add_part (GTK_WIDGET (self), "trough");
  self->fill = add_part (self->trough, "fill");
  self->highlight = add_part (self->trough, "highlight");
  gtk_widget_add_css_class (self->highlight, "top");
  self->knob = add_part (self->trough, "slider");
  gtk_widget_set_visible (self->fill, FALSE);
  take_adjustment_cb (self);
  g_signal_connect (self, "notify::adjustment", G_CALLBACK (take_adjustment_cb), NULL);
  g_signal_connect (self, "notify::fill-level", G_CALLBACK (place_parts), NULL);
  g_signal_connect (self, "notify::show-fill-level", G_CALLBACK (show_fill_cb), NULL);
  add_gesture (self);
}

GtkWidget *
lb_slider_rail_new (GtkAdjustment *adjustment)
{
  return g_object_new (LB_TYPE_SLIDER_RAIL, "orientation", GTK_ORIENTATION_HORIZONTAL, "adjustment",
                       adjustment, NULL);
}

void
lb_slider_rail_set_marks (LbSliderRail *self, const double *values, gsize n)
{
  g_return_if_fail (LB_IS_SLIDER_RAIL (self));

  g_array_set_size (self->marks, 0);
  g_array_append_vals (self->marks, values, n);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
