/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sentence_label.h"

/* Narrower than this it does not get: the longest word must have room. */
#define CHARS_LEAST 16

struct _LbSentenceLabel
{
  GtkWidget parent;
  PangoLayout *layout; /* NULL: to be made, in the present font */
  char *text;
  int tallest; /* px, of all texts at `width` */
  int width;   /* px, that `tallest` belongs to */
};

G_DEFINE_FINAL_TYPE (LbSentenceLabel, lb_sentence_label, GTK_TYPE_WIDGET)

static PangoLayout *
ensure_layout (LbSentenceLabel *self)
{
  if (self->layout)
    return self->layout;
  self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), self->text);
  pango_layout_set_wrap (self->layout, PANGO_WRAP_WORD_CHAR);
  return self->layout;
}

/* The height that the text takes at `width`, and all before it at the same width. */
static int
height_for (LbSentenceLabel *self, int width)
{
  PangoLayout *layout = ensure_layout (self);
  int height;

  pango_layout_set_width (layout, width * PANGO_SCALE);
  pango_layout_get_pixel_size (layout, NULL, &height);
  if (width != self->width)
    self->tallest = 0;
  self->width = width;
  self->tallest = MAX (self->tallest, height);
  return self->tallest;
}

static GtkSizeRequestMode
lb_sentence_label_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
lb_sentence_label_measure (GtkWidget *widget,
                           GtkOrientation orientation,
                           int for_size,
                           int *minimum,
                           int *natural,
                           int *minimum_baseline,
                           int *natural_baseline)
{
  LbSentenceLabel *self = LB_SENTENCE_LABEL (widget);
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  int char_width = pango_font_metrics_get_approximate_char_width (metrics);
  int least = PANGO_PIXELS_CEIL (CHARS_LEAST * char_width);

  pango_font_metrics_unref (metrics);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = least;
  else
    *minimum = height_for (self, MAX (for_size, least));
  *natural = *minimum;
}

static void
lb_sentence_label_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbSentenceLabel *self = LB_SENTENCE_LABEL (widget);
  PangoLayout *layout = ensure_layout (self);

  pango_layout_set_width (layout, gtk_widget_get_width (widget) * PANGO_SCALE);
  gtk_snapshot_render_layout (snapshot, gtk_widget_get_style_context (widget), 0, 0, layout);
}

/* Another font or language: all is to be measured anew. */
static void
forget_layout (LbSentenceLabel *self)
{
  g_clear_object (&self->layout);
  self->tallest = 0;
}

static void
lb_sentence_label_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lb_sentence_label_parent_class)->css_changed (widget, change);
  forget_layout (LB_SENTENCE_LABEL (widget));
}

static void
lb_sentence_label_system_setting_changed (GtkWidget *widget, GtkSystemSetting setting)
{
  GTK_WIDGET_CLASS (lb_sentence_label_parent_class)->system_setting_changed (widget, setting);
  forget_layout (LB_SENTENCE_LABEL (widget));
}

static void
lb_sentence_label_dispose (GObject *object)
{
  LbSentenceLabel *self = LB_SENTENCE_LABEL (object);

  g_clear_object (&self->layout);
  g_clear_pointer (&self->text, g_free);
  G_OBJECT_CLASS (lb_sentence_label_parent_class)->dispose (object);
}

static void
lb_sentence_label_class_init (LbSentenceLabelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_sentence_label_dispose;
  widget_class->get_request_mode = lb_sentence_label_get_request_mode;
  widget_class->measure = lb_sentence_label_measure;
  widget_class->snapshot = lb_sentence_label_snapshot;
  widget_class->css_changed = lb_sentence_label_css_changed;
  widget_class->system_setting_changed = lb_sentence_label_system_setting_changed;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LABEL);
  gtk_widget_class_set_css_name (widget_class, "lbsentence");
}

static void
lb_sentence_label_init (LbSentenceLabel *self)
{
  self->text = g_strdup ("");
}

GtkWidget *
lb_sentence_label_new (void)
{
  return g_object_new (LB_TYPE_SENTENCE_LABEL, NULL);
}

void
lb_sentence_label_set_text (LbSentenceLabel *self, const char *text)
{
  int old;

  g_return_if_fail (LB_IS_SENTENCE_LABEL (self));
  if (g_str_equal (text, self->text))
    return;
  g_free (self->text);
  self->text = g_strdup (text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  if (self->layout)
    pango_layout_set_text (self->layout, text, -1);
  old = self->tallest;
  if (self->width == 0 || height_for (self, self->width) != old)
    gtk_widget_queue_resize (GTK_WIDGET (self));
  else
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

const char *
lb_sentence_label_get_text (LbSentenceLabel *self)
{
  g_return_val_if_fail (LB_IS_SENTENCE_LABEL (self), NULL);
  return self->text;
}

void
lb_sentence_label_settle (LbSentenceLabel *self)
{
  g_return_if_fail (LB_IS_SENTENCE_LABEL (self));
  self->tallest = 0;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
