/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_drawings.h"

#include <glib/gi18n.h>
#include <math.h>

#include "accessible.h"
#include "compare_handling.h"
#include "comparison_words.h"
#include "overlay.h"

#define STRIP_PART 0.34
#define WIDTH_LEAST 360
#define HEIGHT_LEAST 220
#define PICK_TOLERANCE 8.0
#define DESCRIBE_DELAY_MS 400

struct _LbCompareDrawings
{
  GtkWidget parent;
  LbSession *session;
  LbComparison *comparison; /* NULL before the first */
  LbDrawContext *context;
  LbViewport *viewport;
  LbCompareHandling *handling;
  LbScene *side, *strip; /* NULL: to be made anew */
  int scene_width, scene_height;
  gboolean making; /* the scenes */
  guint describe_id;
};

G_DEFINE_FINAL_TYPE (LbCompareDrawings, lb_compare_drawings, GTK_TYPE_WIDGET)

static guint picked_signal;

/* ---- Scenes ---- */

static void
drop_scenes (LbCompareDrawings *self)
{
  g_clear_pointer (&self->side, lb_scene_free);
  g_clear_pointer (&self->strip, lb_scene_free);
}

static int
side_height (int height)
{
  return height - (int) floor (STRIP_PART * height);
}

static void
make_scenes (LbCompareDrawings *self, int width, int height)
{
  LbWording wording = lb_session_get_wording (self->session);
  g_autoptr (LbComparedRuns) runs = lb_compared_runs_new (self->comparison, &wording);
  int side = side_height (height);
  const LbStyle *style;
  const LbView *view;
  LbPicture like;
  LbOverlay overlay;
  LbExtents extents;

  lb_session_get_picture (self->session, &like);
  /* The page's own heading has it. */
  like.title = NULL;
  overlay = lb_overlay_of_runs (runs, &like);
  extents = lb_overlay_extents (&overlay);
  lb_viewport_set_extents (self->viewport, &extents);
  lb_viewport_set_size (self->viewport, width, side, height - side);
  style = lb_viewport_get_style (self->viewport);
  view = lb_viewport_get_view (self->viewport);
  self->side = lb_overlay_side_view_new (self->context, &overlay, style, view, width, side);
  self->strip = lb_overlay_strip_new (self->context, &overlay, style, view, width, height - side);
  self->scene_width = width;
  self->scene_height = height;
}

static gboolean
ensure_scenes (LbCompareDrawings *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));

  if (!self->comparison || width < WIDTH_LEAST / 2 || height < HEIGHT_LEAST / 2)
    return FALSE;
  if (self->side && width == self->scene_width && height == self->scene_height)
    return TRUE;
  drop_scenes (self);
  self->making = TRUE;
  make_scenes (self, width, height);
  self->making = FALSE;
  return TRUE;
}

char *
lb_compare_drawings_describe (LbCompareDrawings *self)
{
  g_autofree char *side = NULL;
  g_autofree char *strip = NULL;

  g_return_val_if_fail (LB_IS_COMPARE_DRAWINGS (self), NULL);
  if (!ensure_scenes (self))
    return g_strdup ("");
  side = lb_scene_describe (self->side);
  strip = lb_scene_describe (self->strip);
  return g_strjoin (" ", side, strip, NULL);
}

static gboolean
describe_cb (gpointer user_data)
{
  LbCompareDrawings *self = user_data;
  g_autofree char *text = lb_compare_drawings_describe (self);

  self->describe_id = 0;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  return G_SOURCE_REMOVE;
}

static void
outdate (LbCompareDrawings *self)
{
  if (self->making) /* the view is being set for what is drawn now */
    return;
  drop_scenes (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_clear_handle_id (&self->describe_id, g_source_remove);
  self->describe_id =
      g_timeout_add_full (G_PRIORITY_LOW, DESCRIBE_DELAY_MS, describe_cb, self, NULL);
}

void
lb_compare_drawings_set (LbCompareDrawings *self, LbComparison *comparison)
{
  g_return_if_fail (LB_IS_COMPARE_DRAWINGS (self));
  g_set_object (&self->comparison, comparison);
  outdate (self);
}

/* ---- The widget ---- */

static void
lb_compare_drawings_measure (GtkWidget *widget,
                             GtkOrientation orientation,
                             int for_size,
                             int *minimum,
                             int *natural,
                             int *minimum_baseline,
                             int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_LEAST : HEIGHT_LEAST;
}

static void
lb_compare_drawings_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbCompareDrawings *self = LB_COMPARE_DRAWINGS (widget);
  cairo_t *cr;

  if (!ensure_scenes (self))
    return;
  cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) self->scene_width, (float) self->scene_height));
  lb_scene_paint (self->side, cr, LB_LAYER_ALL);
  cairo_translate (cr, 0, side_height (self->scene_height));
  lb_scene_paint (self->strip, cr, LB_LAYER_ALL);
  cairo_destroy (cr);
}

static void
released_cb (LbCompareDrawings *self, int n_press, double x, double y)
{
  LbPick pick;
  int side;

  if (lb_compare_handling_was_drag (self->handling) || !ensure_scenes (self))
    return;
  side = side_height (self->scene_height);
  pick = y < side ? lb_scene_pick (self->side, x, y, PICK_TOLERANCE)
                  : lb_scene_pick (self->strip, x, y - side, PICK_TOLERANCE);
  if (pick.kind != LB_PICK_NOTHING && pick.run >= 0)
    g_signal_emit (self, picked_signal, 0, pick.run);
}

static void
lb_compare_drawings_dispose (GObject *object)
{
  LbCompareDrawings *self = LB_COMPARE_DRAWINGS (object);

  g_clear_handle_id (&self->describe_id, g_source_remove);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  if (self->viewport)
    g_signal_handlers_disconnect_by_data (self->viewport, self);
  g_clear_object (&self->viewport);
  g_clear_object (&self->session);
  g_clear_object (&self->comparison);
  G_OBJECT_CLASS (lb_compare_drawings_parent_class)->dispose (object);
}

static void
lb_compare_drawings_finalize (GObject *object)
{
  LbCompareDrawings *self = LB_COMPARE_DRAWINGS (object);

  drop_scenes (self);
  lb_draw_context_free (self->context);
  lb_compare_handling_free (self->handling);
  G_OBJECT_CLASS (lb_compare_drawings_parent_class)->finalize (object);
}

static void
lb_compare_drawings_class_init (LbCompareDrawingsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_compare_drawings_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_compare_drawings_finalize;
  widget_class->measure = lb_compare_drawings_measure;
  widget_class->snapshot = lb_compare_drawings_snapshot;
  gtk_widget_class_set_css_name (widget_class, "lbcomparedrawings");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  picked_signal = g_signal_new ("picked", LB_TYPE_COMPARE_DRAWINGS, G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
lb_compare_drawings_init (LbCompareDrawings *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->context = lb_draw_context_new ();
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect_swapped (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
lb_compare_drawings_new (LbSession *session)
{
  LbCompareDrawings *self = g_object_new (LB_TYPE_COMPARE_DRAWINGS, NULL);

  self->session = g_object_ref (session);
  self->viewport = lb_viewport_new (session);
  self->handling = lb_compare_handling_new (GTK_WIDGET (self), self->viewport);
  lb_accessible_name (GTK_WIDGET (self), _ ("Variants over one another"));
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (outdate), self);
  g_signal_connect_swapped (self->viewport, "changed", G_CALLBACK (outdate), self);
  return GTK_WIDGET (self);
}

LbViewport *
lb_compare_drawings_get_viewport (LbCompareDrawings *self)
{
  g_return_val_if_fail (LB_IS_COMPARE_DRAWINGS (self), NULL);
  return self->viewport;
}

void
lb_compare_drawings_zoom (LbCompareDrawings *self, double factor)
{
  g_return_if_fail (LB_IS_COMPARE_DRAWINGS (self));
  lb_compare_handling_zoom (self->handling, factor);
}
