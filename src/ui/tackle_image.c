/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tackle_image.h"

#include <string.h>

/* Pixels with letters of the normal size. */
#define WIDTH 64
#define HEIGHT 38
#define POINT (96 / 72.0)
#define USUAL_LETTERS (10 * POINT)

struct _LbTackleImage
{
  GtkWidget parent;
  LbSession *session;
  LbDrawContext *context;
  LbTackle tackle;
  double per_metre;
  double size;
  gboolean is_empty;
};

G_DEFINE_FINAL_TYPE (LbTackleImage, lb_tackle_image, GTK_TYPE_WIDGET)

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

static void
lb_tackle_image_measure (GtkWidget *widget,
                         GtkOrientation orientation,
                         int for_size,
                         int *minimum,
                         int *natural,
                         int *minimum_baseline,
                         int *natural_baseline)
{
  int length = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT;

  *minimum = *natural = (int) (length * LB_TACKLE_IMAGE (widget)->size * scale_of (widget));
}

static void
lb_tackle_image_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbTackleImage *self = LB_TACKLE_IMAGE (widget);
  gboolean dark = lb_appearance_get_dark (lb_session_get_appearance (self->session));
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double scale = scale_of (widget);
  LbStyle style = lb_style_make (dark ? LB_THEME_DARK : LB_THEME_LIGHT, scale);
  double per_metre = self->per_metre * scale;
  LbScene *scene;
  cairo_t *cr;

  if (self->is_empty || width < 1 || height < 1)
    return;
  if (per_metre <= 0)
    per_metre = lb_part_drawing_fit (&self->tackle, width, height);
  scene = lb_part_drawing_new (self->context, &self->tackle, &style, per_metre, width, height);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  lb_scene_paint (scene, cr, LB_LAYER_ALL);
  cairo_destroy (cr);
  lb_scene_free (scene);
}

static void
lb_tackle_image_dispose (GObject *object)
{
  g_clear_object (&LB_TACKLE_IMAGE (object)->session);
  G_OBJECT_CLASS (lb_tackle_image_parent_class)->dispose (object);
}

static void
lb_tackle_image_finalize (GObject *object)
{
  lb_draw_context_free (LB_TACKLE_IMAGE (object)->context);
  G_OBJECT_CLASS (lb_tackle_image_parent_class)->finalize (object);
}

static void
lb_tackle_image_class_init (LbTackleImageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_tackle_image_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_tackle_image_finalize;
  widget_class->measure = lb_tackle_image_measure;
  widget_class->snapshot = lb_tackle_image_snapshot;
  gtk_widget_class_set_css_name (widget_class, "lbtackleimage");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
lb_tackle_image_init (LbTackleImage *self)
{
  self->context = lb_draw_context_new ();
  self->is_empty = TRUE;
  self->size = 1;
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

GtkWidget *
lb_tackle_image_new (LbSession *session)
{
  LbTackleImage *self = g_object_new (LB_TYPE_TACKLE_IMAGE, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

void
lb_tackle_image_set_size (LbTackleImage *self, double size)
{
  g_return_if_fail (LB_IS_TACKLE_IMAGE (self));
  self->size = size;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
lb_tackle_image_show (LbTackleImage *self, const LbTackle *tackle, double per_metre)
{
  g_return_if_fail (LB_IS_TACKLE_IMAGE (self));
  if (!self->is_empty && per_metre == self->per_metre
      && memcmp (tackle, &self->tackle, sizeof *tackle) == 0)
    return;
  self->tackle = *tackle;
  self->per_metre = per_metre;
  self->is_empty = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

double
lb_tackle_image_fit (const LbTackle *tackle)
{
  return lb_part_drawing_fit (tackle, WIDTH, HEIGHT);
}
