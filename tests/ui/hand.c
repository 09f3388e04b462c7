/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hand.h"

/* The first controller of a type. (transfer none): the widget keeps it. */
static gpointer
controller_of (LbCanvas *canvas, GType type)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (canvas));

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);

      if (G_TYPE_CHECK_INSTANCE_TYPE (controller, type))
        return controller;
    }
  fail_msg ("the drawing has no %s", g_type_name (type));
  return NULL;
}

void
hand_move (LbCanvas *canvas, double x, double y)
{
  g_signal_emit_by_name (controller_of (canvas, GTK_TYPE_EVENT_CONTROLLER_MOTION), "motion", x, y);
}

void
hand_press (LbCanvas *canvas, double x, double y)
{
  hand_move (canvas, x, y);
  g_signal_emit_by_name (controller_of (canvas, GTK_TYPE_GESTURE_DRAG), "drag-begin", x, y);
}

void
hand_drag (LbCanvas *canvas, double dx, double dy, int moves)
{
  for (int i = 1; i <= moves; i++)
    g_signal_emit_by_name (controller_of (canvas, GTK_TYPE_GESTURE_DRAG), "drag-update",
                           dx * i / moves, dy * i / moves);
}

void
hand_release (LbCanvas *canvas, double dx, double dy)
{
  g_signal_emit_by_name (controller_of (canvas, GTK_TYPE_GESTURE_DRAG), "drag-end", dx, dy);
}

void
hand_pull (LbCanvas *canvas, double x, double y, double dx, double dy)
{
  hand_press (canvas, x, y);
  hand_drag (canvas, dx, dy, 8);
  hand_release (canvas, dx, dy);
}

void
hand_click (LbCanvas *canvas, double x, double y, int times)
{
  for (int i = 1; i <= times; i++)
    {
      hand_press (canvas, x, y);
      g_signal_emit_by_name (controller_of (canvas, GTK_TYPE_GESTURE_CLICK), "pressed", i, x, y);
      hand_release (canvas, 0, 0);
    }
}

gboolean
hand_key (LbCanvas *canvas, guint key, GdkModifierType state)
{
  gboolean handled = FALSE;

  g_signal_emit_by_name (controller_of (canvas, GTK_TYPE_EVENT_CONTROLLER_KEY), "key-pressed", key,
                         0u, state, &handled);
  return handled;
}

void
hand_find (LbCanvas *canvas, LbPickKind kind, int index, double *x, double *y)
{
  LbScene *scene = lb_canvas_get_scene (canvas);

  assert_non_null (scene);
  if (!lb_scene_part_place (scene, kind, index, x, y))
    fail_msg ("part %d, %d is not in the drawing", (int) kind, index);
}
