/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chart_image.h"

#include "accessible.h"
#include "dispose.h"

#define POINT (96 / 72.0)
#define USUAL_LETTERS (10 * POINT)
#define WIDTH_LEAST 220
#define PICK_TOLERANCE 12
/* See canvas.c. */
#define DESCRIBE_DELAY_MS 150

struct _LbChartImage
{
  GtkWidget parent;
  LbSession *session;
  LbDrawContext *context;
  LbChartMake make;
  gpointer data;
  int height;
  LbScene *scene; /* NULL: to be made anew */
  int scene_width, scene_height;
  guint describe_id;
};

G_DEFINE_FINAL_TYPE (LbChartImage, lb_chart_image, GTK_TYPE_WIDGET)

static guint picked_signal;

/* Letters may have other sizes than usual; the drawing goes along with them. */
static double
scale_of (GtkWidget *widget)
{
  PangoContext *pango = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (pango);
  double size = pango_units_to_double (pango_font_description_get_size (font));

  if (!pango_font_description_get_size_is_absolute (font))
    size *= POINT;
  return CLAMP (size / USUAL_LETTERS, 0.8, 4);
}

static LbScene *
ensure_scene (LbChartImage *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  gboolean dark = lb_appearance_get_dark (lb_session_get_appearance (self->session));
  LbStyle style = lb_style_make (dark ? LB_THEME_DARK : LB_THEME_LIGHT, scale_of (widget));
  LbPicture picture;

  if (width < 1 || height < 1)
    return NULL;
  if (self->scene && width == self->scene_width && height == self->scene_height)
    return self->scene;
  g_clear_pointer (&self->scene, lb_scene_free);
  lb_session_get_picture (self->session, &picture);
  /* What is being edited, not what was last solved. */
  picture.setup = lb_document_get_setup (lb_session_get_document (self->session));
  self->scene = self->make (self->context, &picture, &style, width, height, self->data);
  self->scene_width = width;
  self->scene_height = height;
  return self->scene;
}

static gboolean
describe_cb (gpointer user_data)
{
  LbChartImage *self = user_data;
  g_autofree char *text = lb_chart_image_describe (self);

  self->describe_id = 0;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  return G_SOURCE_REMOVE;
}

void
lb_chart_image_outdate (LbChartImage *self)
{
  g_return_if_fail (LB_IS_CHART_IMAGE (self));
  g_clear_pointer (&self->scene, lb_scene_free);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_clear_handle_id (&self->describe_id, g_source_remove);
  self->describe_id =
      g_timeout_add_full (G_PRIORITY_LOW, DESCRIBE_DELAY_MS, describe_cb, self, NULL);
}

char *
lb_chart_image_describe (LbChartImage *self)
{
  LbScene *scene = ensure_scene (self);

  return scene ? lb_scene_describe (scene) : g_strdup ("");
}

static void
lb_chart_image_measure (GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  LbChartImage *self = LB_CHART_IMAGE (widget);
  int length = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_LEAST : self->height;

  *minimum = *natural = (int) (length * scale_of (widget));
}

static void
lb_chart_image_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbChartImage *self = LB_CHART_IMAGE (widget);
  LbScene *scene = ensure_scene (self);
  cairo_t *cr;

  if (!scene)
    return;
  cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) self->scene_width, (float) self->scene_height));
  lb_scene_paint (scene, cr, LB_LAYER_ALL);
  cairo_destroy (cr);
}

static void
released_cb (LbChartImage *self, int n_press, double x, double y)
{
  LbScene *scene = ensure_scene (self);
  LbPick pick;

  if (!scene)
    return;
  pick = lb_scene_pick (scene, x, y, PICK_TOLERANCE);
  if (pick.kind != LB_PICK_NOTHING)
    g_signal_emit (self, picked_signal, 0, pick.x, pick.z);
}

static void
lb_chart_image_dispose (GObject *object)
{
  LbChartImage *self = LB_CHART_IMAGE (object);

  g_clear_handle_id (&self->describe_id, g_source_remove);
  lb_dispose_session (&self->session, self);
  G_OBJECT_CLASS (lb_chart_image_parent_class)->dispose (object);
}

static void
lb_chart_image_finalize (GObject *object)
{
  LbChartImage *self = LB_CHART_IMAGE (object);

  lb_scene_free (self->scene);
  lb_draw_context_free (self->context);
  G_OBJECT_CLASS (lb_chart_image_parent_class)->finalize (object);
}

static void
lb_chart_image_class_init (LbChartImageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_chart_image_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_chart_image_finalize;
  widget_class->measure = lb_chart_image_measure;
  widget_class->snapshot = lb_chart_image_snapshot;
  gtk_widget_class_set_css_name (widget_class, "lbchart");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  picked_signal = g_signal_new ("picked", LB_TYPE_CHART_IMAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
}

static void
lb_chart_image_init (LbChartImage *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->context = lb_draw_context_new ();
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
lb_chart_image_new (
    LbSession *session, const char *name, int height, LbChartMake make, gpointer data)
{
  LbChartImage *self = g_object_new (LB_TYPE_CHART_IMAGE, NULL);

  self->session = g_object_ref (session);
  self->height = height;
  self->make = make;
  self->data = data;
  lb_accessible_name (GTK_WIDGET (self), name);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (lb_chart_image_outdate), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (lb_chart_image_outdate), self);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::dark",
                           G_CALLBACK (lb_chart_image_outdate), self, G_CONNECT_SWAPPED);
  lb_chart_image_outdate (self);
  return GTK_WIDGET (self);
}
