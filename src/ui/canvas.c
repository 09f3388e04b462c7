/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "canvas.h"

#include <glib/gi18n.h>

#include "handling.h"
#include "pick_words.h"

/* How near the pointer must be to a thing, drawing units. */
#define PICK_TOLERANCE 10
/* The screen reader is told when the rig has been still for this long: a stream of changes would
 * only cut it short, and laying out the words costs as much as a frame. */
#define DESCRIBE_DELAY_MS 150

/* Rectangles repainted at most: while little else in the window changes, and else. */
#define SIDE_VIEW_BOXES 14
#define SIDE_VIEW_BOXES_CROWDED 7
#define BED_STRIP_BOXES 4
#define BED_STRIP_BOXES_CROWDED 3

struct _LbCanvas
{
  GtkWidget parent;
  LbCanvasKind kind;
  LbSession *session;
  LbViewport *viewport;
  LbDrawContext *context;
  LbScene *scene; /* NULL: to be made anew */
  int scene_width, scene_height;
  double scene_time; /* us */
  LbNodeCache *cache;
  LbDocument *document; /* the labels stand for; only compared */
  LbTheme theme;        /* of what the cache holds */
  gboolean crowded;     /* see lb_canvas_make_way() */
  guint describe_id;
  LbHandling *handling;
};

G_DEFINE_FINAL_TYPE (LbCanvas, lb_canvas, GTK_TYPE_WIDGET)

static LbScene *
make_scene (LbCanvas *self, int width, int height)
{
  const LbView *view = lb_viewport_get_view (self->viewport);
  const LbStyle *style = lb_viewport_get_style (self->viewport);
  LbPicture picture;

  lb_session_get_picture (self->session, &picture);
  picture.handles = lb_handling_get_handles (self->handling);
  return self->kind == LB_CANVAS_SIDE_VIEW
             ? lb_side_view_new (self->context, &picture, style, view, width, height)
             : lb_bed_strip_new (self->context, &picture, style, view, width, height);
}

/* The scene as it is now, or NULL while there is no room for one. */
static LbScene *
ensure_scene (LbCanvas *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  LbDocument *document = lb_session_get_document (self->session);
  gint64 start = g_get_monotonic_time ();

  if (width < 1 || height < 1 || lb_viewport_get_view (self->viewport)->width == 0)
    return NULL;
  if (self->scene && width == self->scene_width && height == self->scene_height)
    return self->scene;
  if (document != self->document)
    lb_draw_context_forget_labels (self->context);
  self->document = document;
  g_clear_pointer (&self->scene, lb_scene_free);
  self->scene = make_scene (self, width, height);
  self->scene_width = width;
  self->scene_height = height;
  self->scene_time = (double) (g_get_monotonic_time () - start);
  return self->scene;
}

static gboolean
describe_cb (gpointer user_data)
{
  LbCanvas *self = user_data;
  g_autofree char *text = lb_canvas_describe (self);

  self->describe_id = 0;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  return G_SOURCE_REMOVE;
}

static void
outdated_cb (LbCanvas *self)
{
  g_clear_pointer (&self->scene, lb_scene_free);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_clear_handle_id (&self->describe_id, g_source_remove);
  self->describe_id =
      g_timeout_add_full (G_PRIORITY_LOW, DESCRIBE_DELAY_MS, describe_cb, self, NULL);
}

static gsize
most_boxes (const LbCanvas *self)
{
  if (self->kind == LB_CANVAS_SIDE_VIEW)
    return self->crowded ? SIDE_VIEW_BOXES_CROWDED : SIDE_VIEW_BOXES;
  return self->crowded ? BED_STRIP_BOXES_CROWDED : BED_STRIP_BOXES;
}

static void
lb_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbCanvas *self = LB_CANVAS (widget);
  LbScene *scene = ensure_scene (self);

  if (!scene)
    return;
  /* What is kept must not keep the colours of another theme. */
  if (lb_viewport_get_style (self->viewport)->theme != self->theme)
    lb_node_cache_clear (self->cache);
  self->theme = lb_viewport_get_style (self->viewport)->theme;
  lb_node_cache_set_most_boxes (self->cache, most_boxes (self));
  self->crowded = FALSE;
  lb_node_cache_snapshot (self->cache, snapshot, scene, self->scene_width, self->scene_height,
                          gtk_widget_get_scale_factor (widget));
}

/* Asked for by the keyboard, it is of the selected part. */
static char *
dup_selected_words (LbCanvas *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  LbPick pick = { .x = setup->boat.position };

  lb_session_get_selected (self->session, &pick.kind, &pick.index);
  return pick.kind == LB_PICK_NOTHING ? NULL : lb_pick_words (self->session, &pick);
}

static gboolean
lb_canvas_query_tooltip (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  LbCanvas *self = LB_CANVAS (widget);
  g_autofree char *words =
      keyboard ? dup_selected_words (self) : lb_canvas_dup_words_at (self, x, y);

  if (!words)
    return FALSE;
  gtk_tooltip_set_text (tooltip, words);
  if (keyboard)
    return TRUE;
  /* Beside the part, not beside the whole drawing. */
  gtk_tooltip_set_tip_area (tooltip, &(GdkRectangle){ x - PICK_TOLERANCE, y - PICK_TOLERANCE,
                                                      2 * PICK_TOLERANCE, 2 * PICK_TOLERANCE });
  return TRUE;
}

/* ---- For the handling ---- */

static LbScene *
get_scene_cb (GtkWidget *widget)
{
  return ensure_scene (LB_CANVAS (widget));
}

static void
refresh_cb (GtkWidget *widget)
{
  g_clear_pointer (&LB_CANVAS (widget)->scene, lb_scene_free);
  gtk_widget_queue_draw (widget);
}

static void
lb_canvas_dispose (GObject *object)
{
  LbCanvas *self = LB_CANVAS (object);

  g_clear_handle_id (&self->describe_id, g_source_remove);
  g_clear_pointer (&self->handling, lb_handling_free);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  if (self->viewport)
    g_signal_handlers_disconnect_by_data (self->viewport, self);
  g_clear_pointer (&self->scene, lb_scene_free);
  g_clear_pointer (&self->cache, lb_node_cache_free);
  g_clear_pointer (&self->context, lb_draw_context_free);
  g_clear_object (&self->session);
  g_clear_object (&self->viewport);
  G_OBJECT_CLASS (lb_canvas_parent_class)->dispose (object);
}

static void
lb_canvas_class_init (LbCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_canvas_dispose;
  widget_class->snapshot = lb_canvas_snapshot;
  widget_class->query_tooltip = lb_canvas_query_tooltip;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "lbcanvas");
}

static void
lb_canvas_init (LbCanvas *self)
{
  self->context = lb_draw_context_new ();
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
}

GtkWidget *
lb_canvas_new (LbCanvasKind kind, LbSession *session, LbViewport *viewport)
{
  static const LbHandlingHost host = { get_scene_cb, refresh_cb };
  LbCanvas *self = g_object_new (LB_TYPE_CANVAS, NULL);

  self->kind = kind;
  self->cache = lb_node_cache_new (most_boxes (self));
  self->session = g_object_ref (session);
  self->viewport = g_object_ref (viewport);
  self->handling =
      lb_handling_new (GTK_WIDGET (self), &host,
                       kind == LB_CANVAS_SIDE_VIEW ? _ ("Side view of the rig in the river")
                                                   : _ ("Bed strip: the water next to the bed"),
                       session, viewport, kind == LB_CANVAS_SIDE_VIEW);
  g_signal_connect_swapped (session, "solved", G_CALLBACK (outdated_cb), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (outdated_cb), self);
  g_signal_connect_swapped (viewport, "changed", G_CALLBACK (outdated_cb), self);
  outdated_cb (self);
  return GTK_WIDGET (self);
}

LbScene *
lb_canvas_get_scene (LbCanvas *self)
{
  g_return_val_if_fail (LB_IS_CANVAS (self), NULL);
  return ensure_scene (self);
}

char *
lb_canvas_describe (LbCanvas *self)
{
  LbScene *scene;

  g_return_val_if_fail (LB_IS_CANVAS (self), NULL);
  scene = ensure_scene (self);
  return scene ? lb_scene_describe (scene) : g_strdup ("");
}

char *
lb_canvas_dup_words_at (LbCanvas *self, double x, double y)
{
  LbScene *scene;
  LbPick pick;

  g_return_val_if_fail (LB_IS_CANVAS (self), NULL);
  scene = ensure_scene (self);
  if (!scene)
    return NULL;
  pick = lb_scene_pick (scene, x, y, PICK_TOLERANCE);
  return pick.kind == LB_PICK_NOTHING ? NULL : lb_pick_words (self->session, &pick);
}

void
lb_canvas_make_way (LbCanvas *self)
{
  g_return_if_fail (LB_IS_CANVAS (self));
  self->crowded = TRUE;
}

LbNodeCache *
lb_canvas_get_cache (LbCanvas *self)
{
  g_return_val_if_fail (LB_IS_CANVAS (self), NULL);
  return self->cache;
}

double
lb_canvas_get_scene_time (LbCanvas *self)
{
  g_return_val_if_fail (LB_IS_CANVAS (self), 0);
  return self->scene_time;
}
