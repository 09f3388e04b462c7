/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "handling_private.h"

#include <glib/gi18n.h>
#include <math.h>

/* How near the pointer must be to a thing, and how far it must move for a drag, drawing units; a
 * finger is less exact. */
#define TOLERANCE 10
#define TOUCH_TOLERANCE 24
#define DRAG_THRESHOLD 4
#define TOUCH_THRESHOLD 9
/* One notch of the wheel. */
#define WHEEL_ZOOM 1.15

const LbSetup *
lb_handling_setup (LbHandling *self)
{
  return lb_document_get_setup (lb_session_get_document (self->session));
}

void
lb_handling_refresh (LbHandling *self)
{
  self->host.refresh (self->canvas);
}

void
lb_handling_show_words (LbHandling *self, char *words, double x, double y)
{
  g_free (self->words);
  self->words = words;
  self->handles.x = x;
  self->handles.y = y;
  lb_handling_refresh (self);
}

/* ---- What is there ---- */

static LbPick
pick_at (LbHandling *self, double x, double y, double tolerance)
{
  LbScene *scene = self->host.get_scene (self->canvas);

  return scene ? lb_scene_pick (scene, x, y, tolerance) : (LbPick){ .kind = LB_PICK_NOTHING };
}

gboolean
lb_handling_grab (LbHandling *self, LbPickKind kind, int index, LbGrab *grab)
{
  LbScene *scene = self->host.get_scene (self->canvas);
  double along = lb_viewport_get_view (self->viewport)->per_metre_x;
  double up = scene ? lb_scene_per_metre_up (scene) : 0;

  return along > 0 && up > 0 && lb_grab_begin (grab, self->session, kind, index, along, up);
}

/* Whether a drag that begins there pulls at the part. The earth under the bed is only ground to
 * move the drawing by, and in the strip the bed is the straight line that heights are measured
 * from. */
static gboolean
can_pull (LbHandling *self, const LbPick *pick, double y, double tolerance, LbGrab *grab)
{
  LbScene *scene = self->host.get_scene (self->canvas);

  if (pick->kind == LB_PICK_NOTHING || !scene)
    return FALSE;
  if (pick->kind == LB_PICK_BED
      && (!self->is_side_view
          || fabs (y
                   - lb_scene_bed_line (scene,
                                        lb_view_x (lb_viewport_get_view (self->viewport), pick->x)))
                 > tolerance))
    return FALSE;
  return lb_handling_grab (self, pick->kind, pick->index, grab) && lb_grab_can_drag (grab);
}

const LbHandles *
lb_handling_get_handles (LbHandling *self)
{
  LbHandles *handles = &self->handles;
  const LbView *view = lb_viewport_get_view (self->viewport);
  LbGrab grab;

  lb_session_get_selected (self->session, &handles->selected, &handles->selected_index);
  /* Only whether; no scene is asked, since this is asked for one. */
  handles->selected_pulls = view->per_metre_x > 0
                            && lb_grab_begin (&grab, self->session, handles->selected,
                                              handles->selected_index, view->per_metre_x, 1)
                            && lb_grab_can_drag (&grab);
  handles->words = self->words;
  return handles;
}

/* ---- Selecting ---- */

void
lb_handling_select (LbHandling *self, LbPickKind kind, int index)
{
  lb_session_select (self->session, kind, index);
}

void
lb_handling_open (LbHandling *self)
{
  gtk_widget_activate_action (self->canvas, "win.open-selected", NULL);
}

gboolean
lb_handling_add_bed_point (LbHandling *self, double x)
{
  LbDocument *document = lb_session_get_document (self->session);
  size_t index = 0;

  if (!lb_session_do (self->session, lb_change_new_add_bed_point (document, x, LB_UNSET, &index)))
    return FALSE;
  lb_handling_select (self, LB_PICK_BED_POINT, (int) index);
  return TRUE;
}

/* What is selected is the drawing's name too: GTK has no other way to have it said. */
static void
name_canvas (LbHandling *self)
{
  g_autofree char *words = NULL;
  g_autofree char *name = NULL;
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  words = lb_grab_dup_words (self->session, kind, index);
  if (words && gtk_widget_has_focus (self->canvas))
    name = g_strdup_printf (_ ("%s. Selected in the drawing"), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name ? name : self->name, -1);
}

static void
selected_cb (LbHandling *self)
{
  lb_handling_end_keys (self);
  name_canvas (self);
  lb_handling_refresh (self);
}

static void
solved_cb (LbHandling *self)
{
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  if (kind != LB_PICK_NOTHING && gtk_widget_has_focus (self->canvas))
    name_canvas (self);
}

/* ---- The pointer over the drawing ---- */

static const char *
cursor_for (LbPickKind kind, gboolean pulls)
{
  if (kind == LB_PICK_NOTHING)
    return "grab";
  if (!pulls)
    return "pointer";
  switch (kind)
    {
    case LB_PICK_BED_POINT:
      return "move";
    case LB_PICK_MAINLINE:
      return "nwse-resize";
    case LB_PICK_LEADER:
    case LB_PICK_LURE:
    case LB_PICK_BOAT:
      return "ew-resize";
    default:
      return "ns-resize";
    }
}

static void
set_cursor (LbHandling *self, const char *cursor)
{
  if (g_strcmp0 (cursor, self->cursor) != 0)
    gtk_widget_set_cursor_from_name (self->canvas, cursor);
  self->cursor = cursor;
}

static void
hover (LbHandling *self, const LbPick *pick, gboolean pulls)
{
  LbHandles *handles = &self->handles;

  if (handles->hover == pick->kind && handles->hover_index == pick->index
      && handles->hover_pulls == pulls)
    return;
  handles->hover = pick->kind;
  handles->hover_index = pick->index;
  handles->hover_pulls = pulls;
  lb_handling_refresh (self);
}

static void
motion_cb (LbHandling *self, double x, double y)
{
  LbPick pick;
  LbGrab grab;
  gboolean pulls;

  self->x = x;
  self->y = y;
  if (self->hold != LB_HOLD_NOTHING)
    return;
  pick = pick_at (self, x, y, TOLERANCE);
  pulls = can_pull (self, &pick, y, TOLERANCE, &grab);
  set_cursor (self, cursor_for (pick.kind, pulls));
  hover (self, &pick, pulls);
}

static void
leave_cb (LbHandling *self)
{
  LbPick nothing = { .kind = LB_PICK_NOTHING };

  if (self->hold == LB_HOLD_NOTHING)
    hover (self, &nothing, FALSE);
}

static gboolean
scroll_cb (LbHandling *self, double dx, double dy)
{
  /* A scroll event does not say where it happened. */
  lb_viewport_zoom (self->viewport, pow (WHEEL_ZOOM, -dy), self->x, self->y);
  return GDK_EVENT_STOP;
}

/* ---- Dragging ---- */

static gboolean
is_touch (GtkGesture *gesture)
{
  GdkDevice *device = gtk_gesture_get_device (gesture);

  return device && gdk_device_get_source (device) == GDK_SOURCE_TOUCHSCREEN;
}

static void
drag_begin_cb (LbHandling *self, double x, double y, GtkGesture *gesture)
{
  double tolerance = is_touch (gesture) ? TOUCH_TOLERANCE : TOLERANCE;

  gtk_widget_grab_focus (self->canvas);
  lb_handling_end_keys (self);
  self->x = x;
  self->y = y;
  self->hold = LB_HOLD_PRESSED;
  self->moved_x = self->moved_y = 0;
  self->pressed = pick_at (self, x, y, tolerance);
  self->can_pull = can_pull (self, &self->pressed, y, tolerance, &self->grab);
  if (self->can_pull)
    lb_handling_select (self, self->pressed.kind, self->pressed.index);
}

/* From here on it is a drag. */
static void
start_moving (LbHandling *self)
{
  /* It would lie over what the drag is about. */
  gtk_widget_set_has_tooltip (self->canvas, FALSE);
  if (!self->can_pull)
    {
      self->hold = LB_HOLD_VIEW;
      set_cursor (self, "grabbing");
      return;
    }
  self->hold = LB_HOLD_PART;
  self->gesture = lb_session_new_gesture (self->session);
  self->document = lb_session_get_document (self->session);
  lb_viewport_hold (self->viewport, TRUE);
}

static void
end_moving (LbHandling *self)
{
  gboolean was_part = self->hold == LB_HOLD_PART;

  self->gesture = 0;
  gtk_widget_set_has_tooltip (self->canvas, TRUE);
  if (!was_part)
    return;
  lb_viewport_hold (self->viewport, FALSE);
  lb_handling_show_words (self, NULL, 0, 0);
}

static gboolean
is_fine (GtkGesture *gesture)
{
  return (gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture))
          & GDK_SHIFT_MASK)
         != 0;
}

static void
pull (LbHandling *self, double dx, double dy, gboolean fine)
{
  /* Another document took its place under the pointer. */
  if (lb_session_get_document (self->session) != self->document)
    {
      end_moving (self);
      self->hold = LB_HOLD_LET_GO;
      return;
    }
  lb_grab_drag (&self->grab, self->session, dx, dy, fine, self->gesture);
  lb_handling_show_words (self,
                          lb_grab_dup_words (self->session, self->grab.kind, self->grab.index),
                          self->x + dx, self->y + dy);
}

static void
drag_update_cb (LbHandling *self, double dx, double dy, GtkGesture *gesture)
{
  double threshold = is_touch (gesture) ? TOUCH_THRESHOLD : DRAG_THRESHOLD;

  if (self->hold == LB_HOLD_PRESSED && hypot (dx, dy) >= threshold)
    start_moving (self);
  if (self->hold == LB_HOLD_PART)
    pull (self, dx, dy, is_fine (gesture));
  /* The strip shows heights above the bed: it moves along the reach only. */
  if (self->hold == LB_HOLD_VIEW)
    lb_viewport_pan (self->viewport, dx - self->moved_x,
                     self->is_side_view ? dy - self->moved_y : 0);
  self->moved_x = dx;
  self->moved_y = dy;
}

static void
drag_end_cb (LbHandling *self)
{
  LbHold hold = self->hold;

  end_moving (self);
  self->hold = LB_HOLD_NOTHING;
  if (hold == LB_HOLD_PRESSED)
    lb_handling_select (self, self->pressed.kind, self->pressed.index);
  if (hold == LB_HOLD_VIEW)
    set_cursor (self, cursor_for (self->pressed.kind, FALSE));
}

gboolean
lb_handling_let_go (LbHandling *self)
{
  guint gesture = self->gesture;

  if (self->hold != LB_HOLD_PART)
    return FALSE;
  end_moving (self);
  self->hold = LB_HOLD_LET_GO;
  if (lb_session_get_document (self->session) == self->document)
    lb_session_cancel_gesture (self->session, gesture);
  return TRUE;
}

static void
drag_cancel_cb (LbHandling *self)
{
  lb_handling_let_go (self);
  self->hold = LB_HOLD_NOTHING;
}

static void
pressed_cb (LbHandling *self, int n_press, double x, double y)
{
  LbPick pick;

  if (n_press != 2)
    return;
  pick = pick_at (self, x, y, TOLERANCE);
  if (pick.kind == LB_PICK_NOTHING || pick.kind == LB_PICK_SURFACE)
    lb_viewport_fit (self->viewport);
  else if (pick.kind == LB_PICK_BED)
    lb_handling_add_bed_point (self, pick.x);
  else
    {
      lb_handling_select (self, pick.kind, pick.index);
      lb_handling_open (self);
    }
  /* What follows is no click and no drag. */
  self->hold = LB_HOLD_LET_GO;
}

/* ---- Two fingers ---- */

static void
pinch_begin_cb (LbHandling *self)
{
  self->pinched = 1;
  lb_handling_let_go (self);
}

static void
pinch_cb (LbHandling *self, double scale, GtkGesture *gesture)
{
  double x, y;

  if (!gtk_gesture_get_bounding_box_center (gesture, &x, &y))
    return;
  lb_viewport_zoom (self->viewport, scale / self->pinched, x, y);
  self->pinched = scale;
}

/* ---- Making ---- */

static void
add_controller (LbHandling *self, gpointer controller)
{
  gtk_widget_add_controller (self->canvas, GTK_EVENT_CONTROLLER (controller));
}

static void
add_wheel_and_pinch (LbHandling *self)
{
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  add_controller (self, scroll);
  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect_swapped (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  add_controller (self, pinch);
}

static void
add_controllers (LbHandling *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_swapped (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  add_controller (self, motion);
  g_signal_connect_swapped (focus, "enter", G_CALLBACK (name_canvas), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (lb_handling_end_keys), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (name_canvas), self);
  add_controller (self, focus);
  /* The wheel is for the side view only: the strip shows heights above the bed. */
  if (self->is_side_view)
    add_wheel_and_pinch (self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (drag_cancel_cb), self);
  add_controller (self, drag);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  add_controller (self, click);
}

LbHandling *
lb_handling_new (GtkWidget *canvas,
                 const LbHandlingHost *host,
                 const char *name,
                 LbSession *session,
                 LbViewport *viewport,
                 gboolean is_side_view)
{
  LbHandling *self = g_new0 (LbHandling, 1);

  self->canvas = canvas;
  self->host = *host;
  self->name = g_strdup (name);
  self->session = g_object_ref (session);
  self->viewport = g_object_ref (viewport);
  self->is_side_view = is_side_view;
  gtk_widget_set_focusable (canvas, TRUE);
  add_controllers (self);
  lb_handling_add_keys (self);
  g_signal_connect_swapped (session, "selected", G_CALLBACK (selected_cb), self);
  g_signal_connect_swapped (session, "solved", G_CALLBACK (solved_cb), self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return self;
}

/* The controllers go with the canvas, but may still speak while it is taken apart. */
static void
silence_controllers (LbHandling *self)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (self->canvas);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);

      g_signal_handlers_disconnect_by_data (controller, self);
    }
}

void
lb_handling_free (LbHandling *self)
{
  if (!self)
    return;
  g_clear_handle_id (&self->pause_id, g_source_remove);
  g_clear_handle_id (&self->words_id, g_source_remove);
  silence_controllers (self);
  g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  g_clear_object (&self->viewport);
  g_free (self->words);
  g_free (self->name);
  g_free (self);
}
