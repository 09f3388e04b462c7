/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_handling.h"

#include <math.h>

#define WHEEL_ZOOM 1.15
#define KEY_ZOOM 1.25
#define PAN 40.0 /* drawing units at normal letters, of an arrow key */
#define PAGE 5   /* times as far, of Page Up and Page Down */

struct LbCompareHandling
{
  GtkWidget *drawings;  /* not owned */
  LbViewport *viewport; /* not owned: that of the drawings */
  double x, y;          /* of the pointer */
  double moved_x, moved_y;
  double pinched;
  gboolean dragged;
};

static void
motion_cb (LbCompareHandling *self, double x, double y)
{
  self->x = x;
  self->y = y;
}

static gboolean
scroll_cb (LbCompareHandling *self, double dx, double dy)
{
  const LbView *view = lb_viewport_get_view (self->viewport);

  /* The strip shows heights above the bed, and has only one scale along with the side view. */
  lb_viewport_zoom (self->viewport, pow (WHEEL_ZOOM, -dy), self->x, fmin (self->y, view->height));
  return GDK_EVENT_STOP;
}

static void
drag_begin_cb (LbCompareHandling *self)
{
  gtk_widget_grab_focus (self->drawings);
  self->moved_x = self->moved_y = 0;
  self->dragged = FALSE;
}

static void
drag_update_cb (LbCompareHandling *self, double dx, double dy)
{
  if (!self->dragged && !gtk_drag_check_threshold (self->drawings, 0, 0, (int) dx, (int) dy))
    return;
  self->dragged = TRUE;
  lb_viewport_pan (self->viewport, dx - self->moved_x, dy - self->moved_y);
  self->moved_x = dx;
  self->moved_y = dy;
}

static void
pinch_begin_cb (LbCompareHandling *self)
{
  self->pinched = 1;
}

static void
pinch_cb (LbCompareHandling *self, double scale, GtkGesture *gesture)
{
  double x, y;

  if (!gtk_gesture_get_bounding_box_center (gesture, &x, &y) || !(scale > 0))
    return;
  lb_viewport_zoom (self->viewport, scale / self->pinched, x, y);
  self->pinched = scale;
}

static gboolean
pan (LbCompareHandling *self, int right, int up)
{
  double step = PAN * lb_viewport_get_style (self->viewport)->scale;

  lb_viewport_pan (self->viewport, -right * step, up * step);
  return GDK_EVENT_STOP;
}

static gboolean
zoom (LbCompareHandling *self, double factor)
{
  lb_compare_handling_zoom (self, factor);
  return GDK_EVENT_STOP;
}

static gboolean
key_pressed_cb (LbCompareHandling *self, guint key, guint code, GdkModifierType state)
{
  if (state & GDK_CONTROL_MASK)
    return GDK_EVENT_PROPAGATE;
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return pan (self, -1, 0);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return pan (self, 1, 0);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return pan (self, 0, 1);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return pan (self, 0, -1);
    case GDK_KEY_Page_Up:
      return pan (self, 0, PAGE);
    case GDK_KEY_Page_Down:
      return pan (self, 0, -PAGE);
    case GDK_KEY_plus:
    case GDK_KEY_KP_Add:
      return zoom (self, KEY_ZOOM);
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      return zoom (self, 1 / KEY_ZOOM);
    case GDK_KEY_0:
      lb_viewport_fit (self->viewport);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* ---- Making ---- */

static void
add (LbCompareHandling *self, gpointer controller)
{
  gtk_widget_add_controller (self->drawings, GTK_EVENT_CONTROLLER (controller));
}

static void
add_keys_and_drag (LbCompareHandling *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  add (self, keys);
  add (self, drag);
}

static void
add_wheel_and_pinch (LbCompareHandling *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  g_signal_connect_swapped (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect_swapped (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  add (self, motion);
  add (self, scroll);
  add (self, pinch);
}

LbCompareHandling *
lb_compare_handling_new (GtkWidget *drawings, LbViewport *viewport)
{
  LbCompareHandling *self = g_new0 (LbCompareHandling, 1);

  self->drawings = drawings;
  self->viewport = viewport;
  self->pinched = 1;
  add_keys_and_drag (self);
  add_wheel_and_pinch (self);
  return self;
}

void
lb_compare_handling_free (LbCompareHandling *self)
{
  g_free (self);
}

void
lb_compare_handling_zoom (LbCompareHandling *self, double factor)
{
  const LbView *view = lb_viewport_get_view (self->viewport);

  lb_viewport_zoom (self->viewport, factor, view->width / 2, 0.75 * view->height);
}

gboolean
lb_compare_handling_was_drag (LbCompareHandling *self)
{
  return self->dragged;
}
