/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_preview.h"

#include <math.h>

#include "accessible.h"

#define POINTS_PER_INCH 72.0
#define MM_PER_INCH 25.4
#define USUAL_DENSITY 96.0 /* pixels to the inch, of a screen that does not tell */
/* What no screen has; the usual is taken instead. */
#define LEAST_DENSITY 40.0
#define MOST_DENSITY 400.0

#define MARGIN 16 /* around the paper */
#define LEAST_SIDE 120
#define LEAST_SCALE 0.2
#define MOST_SCALE 12.0
#define SHADOW 3.0

typedef enum
{
  FIT,
  TRUE_SIZE,
  AS_SET,
} Zoom;

struct _LbCardPreview
{
  GtkWidget parent;
  LbMadeCard *card;
  gsize sheet;
  Zoom zoom;
  double scale; /* when AS_SET */
};

G_DEFINE_FINAL_TYPE (LbCardPreview, lb_card_preview, GTK_TYPE_WIDGET)

static guint turned_signal;

/* ---- Sizes ---- */

static gboolean
get_paper (LbCardPreview *self, double *width, double *height)
{
  if (!self->card)
    return FALSE;
  lb_card_drawing_sheet_size (lb_made_card_get_drawing (self->card), self->sheet, width, height);
  return *width > 0 && *height > 0;
}

/* Pixels for a point on the monitor that the window is on. */
static double
true_scale (LbCardPreview *self)
{
  GtkNative *native = gtk_widget_get_native (GTK_WIDGET (self));
  GdkSurface *surface = native ? gtk_native_get_surface (native) : NULL;
  GdkMonitor *monitor =
      surface ? gdk_display_get_monitor_at_surface (gdk_surface_get_display (surface), surface)
              : NULL;
  double density = 0;
  GdkRectangle geometry;

  if (monitor && gdk_monitor_get_width_mm (monitor) > 0)
    {
      gdk_monitor_get_geometry (monitor, &geometry);
      density = geometry.width * MM_PER_INCH / gdk_monitor_get_width_mm (monitor);
    }
  if (!(density >= LEAST_DENSITY && density <= MOST_DENSITY))
    density = USUAL_DENSITY;
  return density / POINTS_PER_INCH;
}

static double
fit_scale (LbCardPreview *self, double width, double height)
{
  double room_x = MAX (1, gtk_widget_get_width (GTK_WIDGET (self)) - 2 * MARGIN);
  double room_y = MAX (1, gtk_widget_get_height (GTK_WIDGET (self)) - 2 * MARGIN);

  return MIN (room_x / width, room_y / height);
}

double
lb_card_preview_get_scale (LbCardPreview *self)
{
  double width, height;

  g_return_val_if_fail (LB_IS_CARD_PREVIEW (self), 1);
  if (self->zoom == TRUE_SIZE)
    return true_scale (self);
  if (self->zoom == AS_SET)
    return self->scale;
  return get_paper (self, &width, &height) ? fit_scale (self, width, height) : 1;
}

static void
lb_card_preview_measure (GtkWidget *widget,
                         GtkOrientation orientation,
                         int for_size,
                         int *minimum,
                         int *natural,
                         int *minimum_baseline,
                         int *natural_baseline)
{
  LbCardPreview *self = LB_CARD_PREVIEW (widget);
  double width, height, scale;

  *minimum = *natural = LEAST_SIDE;
  if (self->zoom == FIT || !get_paper (self, &width, &height))
    return;
  scale = lb_card_preview_get_scale (self);
  *minimum = *natural =
      (int) ceil ((orientation == GTK_ORIENTATION_HORIZONTAL ? width : height) * scale)
      + 2 * MARGIN;
}

/* ---- Drawing ---- */

static void
append_paper (GtkSnapshot *snapshot, const graphene_rect_t *paper)
{
  static const GdkRGBA white = { 1, 1, 1, 1 };
  static const GdkRGBA shade = { 0, 0, 0, 0.25F };
  static const GdkRGBA edge = { 0.55F, 0.55F, 0.55F, 1 };
  const GdkRGBA edges[] = { edge, edge, edge, edge };
  const float widths[] = { 1, 1, 1, 1 };
  graphene_rect_t shadow = *paper;
  graphene_rect_t outer = *paper;
  GskRoundedRect outline;

  graphene_rect_offset (&shadow, (float) SHADOW, (float) SHADOW);
  gtk_snapshot_append_color (snapshot, &shade, &shadow);
  gtk_snapshot_append_color (snapshot, &white, paper);
  graphene_rect_inset (&outer, -1, -1);
  gsk_rounded_rect_init_from_rect (&outline, &outer, 0);
  gtk_snapshot_append_border (snapshot, &outline, widths, edges);
}

static void
lb_card_preview_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbCardPreview *self = LB_CARD_PREVIEW (widget);
  graphene_rect_t paper;
  double width, height, scale, x, y;
  cairo_t *cr;

  if (!get_paper (self, &width, &height))
    return;
  scale = lb_card_preview_get_scale (self);
  x = floor (MAX (MARGIN, (gtk_widget_get_width (widget) - width * scale) / 2));
  y = floor (MAX (MARGIN, (gtk_widget_get_height (widget) - height * scale) / 2));
  graphene_rect_init (&paper, (float) x, (float) y, (float) (width * scale),
                      (float) (height * scale));
  append_paper (snapshot, &paper);
  cr = gtk_snapshot_append_cairo (snapshot, &paper);
  cairo_translate (cr, x, y);
  cairo_scale (cr, scale, scale);
  lb_card_drawing_paint (lb_made_card_get_drawing (self->card), self->sheet, cr);
  cairo_destroy (cr);
}

/* ---- Keys ---- */

static gboolean
key_pressed_cb (LbCardPreview *self, guint key, guint code, GdkModifierType state)
{
  int turn = 0;

  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK))
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Page_Down || key == GDK_KEY_KP_Page_Down)
    turn = 1;
  else if (key == GDK_KEY_Page_Up || key == GDK_KEY_KP_Page_Up)
    turn = -1;
  else if (key == GDK_KEY_End || key == GDK_KEY_KP_End)
    turn = 2;
  else if (key == GDK_KEY_Home || key == GDK_KEY_KP_Home)
    turn = -2;
  if (turn == 0)
    return GDK_EVENT_PROPAGATE;
  g_signal_emit (self, turned_signal, 0, turn);
  return GDK_EVENT_STOP;
}

static void
pressed_cb (LbCardPreview *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
lb_card_preview_finalize (GObject *object)
{
  lb_made_card_unref (LB_CARD_PREVIEW (object)->card);
  G_OBJECT_CLASS (lb_card_preview_parent_class)->finalize (object);
}

static void
lb_card_preview_class_init (LbCardPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lb_card_preview_finalize;
  widget_class->measure = lb_card_preview_measure;
  widget_class->snapshot = lb_card_preview_snapshot;
  gtk_widget_class_set_css_name (widget_class, "lbcardpreview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  turned_signal = g_signal_new ("turned", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
lb_card_preview_init (LbCardPreview *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
lb_card_preview_new (void)
{
  return g_object_new (LB_TYPE_CARD_PREVIEW, NULL);
}

void
lb_card_preview_show (LbCardPreview *self, LbMadeCard *card, gsize sheet, const char *name)
{
  g_autofree char *words = NULL;

  g_return_if_fail (LB_IS_CARD_PREVIEW (self));
  lb_made_card_ref (card);
  lb_made_card_unref (self->card);
  self->card = card;
  self->sheet = sheet;
  words = lb_card_drawing_describe (lb_made_card_get_drawing (card), sheet);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* ---- Zoom ---- */

static void
set_zoom (LbCardPreview *self, Zoom zoom, double scale)
{
  self->zoom = zoom;
  self->scale = scale;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
lb_card_preview_fit (LbCardPreview *self)
{
  g_return_if_fail (LB_IS_CARD_PREVIEW (self));
  set_zoom (self, FIT, 1);
}

gboolean
lb_card_preview_is_fit (LbCardPreview *self)
{
  g_return_val_if_fail (LB_IS_CARD_PREVIEW (self), FALSE);
  return self->zoom == FIT;
}

void
lb_card_preview_true_size (LbCardPreview *self)
{
  g_return_if_fail (LB_IS_CARD_PREVIEW (self));
  set_zoom (self, TRUE_SIZE, 1);
}

gboolean
lb_card_preview_is_true_size (LbCardPreview *self)
{
  g_return_val_if_fail (LB_IS_CARD_PREVIEW (self), FALSE);
  return self->zoom == TRUE_SIZE;
}

void
lb_card_preview_zoom (LbCardPreview *self, double factor)
{
  g_return_if_fail (LB_IS_CARD_PREVIEW (self));
  set_zoom (self, AS_SET,
            CLAMP (lb_card_preview_get_scale (self) * factor, LEAST_SCALE, MOST_SCALE));
}
