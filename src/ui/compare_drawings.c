/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_drawings.h"

#include <glib/gi18n.h>
#include <math.h>

#include "accessible.h"
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
  LbView view;           /* kept while it fits, so that it does not rescale at every change */
  LbScene *side, *strip; /* NULL: to be made anew */
  int scene_width, scene_height;
  guint describe_id;
};

G_DEFINE_FINAL_TYPE (LbCompareDrawings, lb_compare_drawings, GTK_TYPE_WIDGET)

static guint picked_signal;

static LbStyle
style_of (LbSession *session, double width, double height)
{
  LbAppearance *appearance = lb_session_get_appearance (session);
  LbTheme theme = lb_appearance_get_dark (appearance) ? LB_THEME_DARK : LB_THEME_LIGHT;

  return lb_style_make (theme, lb_style_scale_for (width, height)
                                   * lb_appearance_get_text_scale (appearance));
}

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
  LbStyle style = style_of (self->session, width, height);
  LbPicture like;
  LbOverlay overlay;
  LbExtents extents;
  int side = side_height (height);

  lb_session_get_picture (self->session, &like);
  /* The page's own heading has it. */
  like.title = NULL;
  overlay = lb_overlay_of_runs (runs, &like);
  extents = lb_overlay_extents (&overlay);
  self->view = lb_view_fit (&self->view, &extents, &style, width, side);
  self->side = lb_overlay_side_view_new (self->context, &overlay, &style, &self->view, width, side);
  self->strip =
      lb_overlay_strip_new (self->context, &overlay, &style, &self->view, width, height - side);
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
  make_scenes (self, width, height);
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

  if (!ensure_scenes (self))
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
  lb_accessible_name (GTK_WIDGET (self), _ ("Variants over one another"));
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (outdate), self);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::dark",
                           G_CALLBACK (outdate), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::text-scale",
                           G_CALLBACK (outdate), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

/* ---- A piece of a line ---- */

#define SAMPLE_WIDTH 34
#define SAMPLE_HEIGHT 12

static void
draw_sample_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer run)
{
  LbSession *session = g_object_get_data (G_OBJECT (area), "session");
  LbStyle style = style_of (session, 900, 480);
  LbRgba c = style.colours[lb_overlay_colour (GPOINTER_TO_SIZE (run))];
  double dashes[LB_OVERLAY_MOST_DASHES];
  int n = lb_overlay_dashes (GPOINTER_TO_SIZE (run), 2.4, dashes);

  cairo_set_source_rgb (cr, c.r, c.g, c.b);
  cairo_set_line_width (cr, 2.4);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (cr, dashes, n, 0);
  cairo_move_to (cr, 2, height / 2.0);
  cairo_line_to (cr, width - 2, height / 2.0);
  cairo_stroke (cr);
}

GtkWidget *
lb_compare_sample_new (LbSession *session, gsize run)
{
  GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role",
                                  GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);

  g_object_set_data_full (G_OBJECT (area), "session", g_object_ref (session), g_object_unref);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), SAMPLE_WIDTH);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), SAMPLE_HEIGHT);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_sample_cb, GSIZE_TO_POINTER (run),
                                  NULL);
  gtk_widget_set_valign (area, GTK_ALIGN_CENTER);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), area, G_CONNECT_SWAPPED);
  return area;
}
