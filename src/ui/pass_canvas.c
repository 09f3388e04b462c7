/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_canvas.h"

#include <glib/gi18n.h>
#include <math.h>

#include "accessible.h"
#include "dispose.h"

/* The screen reader is told when the drawing has been still for this long. */
#define DESCRIBE_DELAY_MS 400
#define BOXES 12
#define CHART_BOXES 4
#define WHEEL_ZOOM 1.15

struct _LbPassCanvas
{
  GtkWidget parent;
  LbPassCanvasKind kind;
  LbSession *session;
  LbPassPlayback *playback;
  LbDrawContext *context;
  LbNodeCache *cache;
  LbPassCamera camera;
  double x, y;             /* of the pointer */
  double moved_x, moved_y; /* of a drag, so far */
  double scale;
  LbTheme theme;  /* of what the cache holds */
  LbScene *scene; /* NULL: to be made anew */
  int scene_width, scene_height;
  guint describe_id;
};

G_DEFINE_FINAL_TYPE (LbPassCanvas, lb_pass_canvas, GTK_TYPE_WIDGET)

/* ---- The scene ---- */

static LbScene *
make_scene (LbPassCanvas *self, const LbPassPicture *picture, int width, int height)
{
  LbAppearance *appearance = lb_session_get_appearance (self->session);
  LbTheme theme = lb_appearance_get_dark (appearance) ? LB_THEME_DARK : LB_THEME_LIGHT;
  LbStyle style = lb_style_make (theme, self->scale);
  const LbView *view;

  if (theme != self->theme)
    lb_node_cache_clear (self->cache);
  self->theme = theme;
  switch (self->kind)
    {
    case LB_PASS_CANVAS_SIDE:
      view = lb_pass_camera_look (&self->camera, picture, &style, width, height);
      return lb_pass_side_view_new (self->context, picture, &style, view, width, height);
    case LB_PASS_CANVAS_ABOVE:
      view = lb_pass_camera_look (&self->camera, picture, &style, width, height);
      return lb_pass_above_new (self->context, picture, &style, view, width, height);
    case LB_PASS_CANVAS_CHART:
      break;
    }
  return lb_pass_chart_new (self->context, picture, &style, width, height);
}

static LbScene *
ensure_scene (LbPassCanvas *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  LbPassPicture picture;

  if (width < 1 || height < 1)
    return NULL;
  if (self->scene && width == self->scene_width && height == self->scene_height)
    return self->scene;
  g_clear_pointer (&self->scene, lb_scene_free);
  lb_pass_playback_get_picture (self->playback, &picture);
  self->scene = make_scene (self, &picture, width, height);
  self->scene_width = width;
  self->scene_height = height;
  return self->scene;
}

static gboolean
describe_cb (gpointer user_data)
{
  LbPassCanvas *self = user_data;
  g_autofree char *text = lb_pass_canvas_describe (self);

  self->describe_id = 0;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  return G_SOURCE_REMOVE;
}

static void
outdate (LbPassCanvas *self)
{
  g_clear_pointer (&self->scene, lb_scene_free);
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_clear_handle_id (&self->describe_id, g_source_remove);
  self->describe_id =
      g_timeout_add_full (G_PRIORITY_LOW, DESCRIBE_DELAY_MS, describe_cb, self, NULL);
}

/* Another pass has another reach. What follows goes on following. */
static void
restarted_cb (LbPassCanvas *self)
{
  self->camera.moved = false;
  self->camera.view = (LbView){ 0 };
  lb_draw_context_forget_labels (self->context);
  outdate (self);
}

void
lb_pass_canvas_set_scale (LbPassCanvas *self, double scale)
{
  g_return_if_fail (LB_IS_PASS_CANVAS (self));
  if (scale == self->scale)
    return;
  self->scale = scale;
  outdate (self);
}

/* ---- The moment, by the pointer ---- */

static void
scrub_to (LbPassCanvas *self, double x)
{
  LbScene *scene = ensure_scene (self);

  if (scene)
    lb_pass_playback_go_to (self->playback, lb_pass_chart_time (scene, x));
}

static void
drag_begin_cb (LbPassCanvas *self, double x, double y)
{
  lb_pass_playback_set_playing (self->playback, FALSE);
  scrub_to (self, x);
}

static void
drag_update_cb (LbPassCanvas *self, double dx, double dy, GtkGestureDrag *drag)
{
  double x, y;

  if (gtk_gesture_drag_get_start_point (drag, &x, &y))
    scrub_to (self, x + dx);
}

static void
add_scrubbing (LbPassCanvas *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "col-resize");
}

/* ---- Where it looks ---- */

static void
motion_cb (LbPassCanvas *self, double x, double y)
{
  self->x = x;
  self->y = y;
}

static gboolean
scroll_cb (LbPassCanvas *self, double dx, double dy)
{
  lb_pass_camera_zoom (&self->camera, pow (WHEEL_ZOOM, -dy), self->x, self->y);
  outdate (self);
  return GDK_EVENT_STOP;
}

static void
pan_begin_cb (LbPassCanvas *self)
{
  self->moved_x = self->moved_y = 0;
}

static void
pan_cb (LbPassCanvas *self, double dx, double dy)
{
  lb_pass_camera_pan (&self->camera, dx - self->moved_x, dy - self->moved_y);
  self->moved_x = dx;
  self->moved_y = dy;
  outdate (self);
}

static void
add_looking (LbPassCanvas *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect_swapped (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (pan_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (pan_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

void
lb_pass_canvas_zoom (LbPassCanvas *self, double factor)
{
  LbPassPicture picture;
  LbTrackMoment now;
  const LbView *view;

  g_return_if_fail (LB_IS_PASS_CANVAS (self));
  view = &self->camera.view;
  if (!lb_pass_playback_get_picture (self->playback, &picture)
      || !lb_track_at (&picture.track, picture.time, &now))
    return;
  lb_pass_camera_zoom (
      &self->camera, factor, lb_view_x (view, now.weight.position.x),
      lb_view_y (view, self->camera.above ? now.weight.position.y : now.weight.position.z));
  outdate (self);
}

void
lb_pass_canvas_fit (LbPassCanvas *self)
{
  g_return_if_fail (LB_IS_PASS_CANVAS (self));
  lb_pass_camera_fit (&self->camera);
  outdate (self);
}

void
lb_pass_canvas_set_follows (LbPassCanvas *self, gboolean follows)
{
  g_return_if_fail (LB_IS_PASS_CANVAS (self));
  lb_pass_camera_follow (&self->camera, follows);
  outdate (self);
}

const LbPassCamera *
lb_pass_canvas_get_camera (LbPassCanvas *self)
{
  g_return_val_if_fail (LB_IS_PASS_CANVAS (self), NULL);
  ensure_scene (self);
  return &self->camera;
}

static void
pressed_cb (LbPassCanvas *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* ---- The widget ---- */

static void
lb_pass_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbPassCanvas *self = LB_PASS_CANVAS (widget);
  LbScene *scene = ensure_scene (self);

  if (!scene)
    return;
  lb_node_cache_snapshot (self->cache, snapshot, scene, self->scene_width, self->scene_height,
                          gtk_widget_get_scale_factor (widget));
  if (gtk_widget_has_visible_focus (widget))
    gtk_snapshot_render_focus (snapshot, gtk_widget_get_style_context (widget), 2, 2,
                               self->scene_width - 4, self->scene_height - 4);
}

static void
lb_pass_canvas_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (lb_pass_canvas_parent_class)->map (widget);
  outdate (LB_PASS_CANVAS (widget));
}

static void
lb_pass_canvas_dispose (GObject *object)
{
  LbPassCanvas *self = LB_PASS_CANVAS (object);

  g_clear_handle_id (&self->describe_id, g_source_remove);
  if (self->playback)
    g_signal_handlers_disconnect_by_data (self->playback, self);
  lb_dispose_session (&self->session, self);
  g_clear_pointer (&self->scene, lb_scene_free);
  g_clear_object (&self->playback);
  G_OBJECT_CLASS (lb_pass_canvas_parent_class)->dispose (object);
}

static void
lb_pass_canvas_finalize (GObject *object)
{
  LbPassCanvas *self = LB_PASS_CANVAS (object);

  lb_node_cache_free (self->cache);
  lb_draw_context_free (self->context);
  G_OBJECT_CLASS (lb_pass_canvas_parent_class)->finalize (object);
}

static void
lb_pass_canvas_class_init (LbPassCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pass_canvas_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pass_canvas_finalize;
  widget_class->snapshot = lb_pass_canvas_snapshot;
  widget_class->map = lb_pass_canvas_map;
  gtk_widget_class_set_css_name (widget_class, "lbpasscanvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lb_pass_canvas_init (LbPassCanvas *self)
{
  self->context = lb_draw_context_new ();
  self->scale = 1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

static const char *
name_of (LbPassCanvasKind kind)
{
  switch (kind)
    {
    case LB_PASS_CANVAS_SIDE:
      return _ ("Side view of the pass");
    case LB_PASS_CANVAS_ABOVE:
      return _ ("The pass from above");
    case LB_PASS_CANVAS_CHART:
      break;
    }
  return _ ("Time chart of the pass");
}

GtkWidget *
lb_pass_canvas_new (LbPassCanvasKind kind, LbSession *session, LbPassPlayback *playback)
{
  LbPassCanvas *self = g_object_new (LB_TYPE_PASS_CANVAS, NULL);
  LbAppearance *appearance = lb_session_get_appearance (session);
  GtkGesture *click = gtk_gesture_click_new ();

  self->kind = kind;
  self->camera.above = kind == LB_PASS_CANVAS_ABOVE;
  self->session = g_object_ref (session);
  self->playback = g_object_ref (playback);
  self->cache = lb_node_cache_new (kind == LB_PASS_CANVAS_CHART ? CHART_BOXES : BOXES);
  lb_accessible_name (GTK_WIDGET (self), name_of (kind));
  g_signal_connect_swapped (playback, "moved", G_CALLBACK (outdate), self);
  g_signal_connect_swapped (playback, "grown", G_CALLBACK (outdate), self);
  g_signal_connect_swapped (playback, "restarted", G_CALLBACK (restarted_cb), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (outdate), self);
  g_signal_connect_object (appearance, "notify::dark", G_CALLBACK (outdate), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  if (kind == LB_PASS_CANVAS_CHART)
    add_scrubbing (self);
  else
    add_looking (self);
  return GTK_WIDGET (self);
}

LbScene *
lb_pass_canvas_get_scene (LbPassCanvas *self)
{
  g_return_val_if_fail (LB_IS_PASS_CANVAS (self), NULL);
  return ensure_scene (self);
}

char *
lb_pass_canvas_describe (LbPassCanvas *self)
{
  LbScene *scene;

  g_return_val_if_fail (LB_IS_PASS_CANVAS (self), NULL);
  scene = ensure_scene (self);
  return scene ? lb_scene_describe (scene) : g_strdup ("");
}

LbNodeCache *
lb_pass_canvas_get_cache (LbPassCanvas *self)
{
  g_return_val_if_fail (LB_IS_PASS_CANVAS (self), NULL);
  return self->cache;
}
