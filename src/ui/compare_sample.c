/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_sample.h"

#include "overlay.h"

#define SAMPLE_WIDTH 34
#define SAMPLE_HEIGHT 12

static void
draw_sample_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer run)
{
  LbSession *session = g_object_get_data (G_OBJECT (area), "session");
  gboolean dark = lb_appearance_get_dark (lb_session_get_appearance (session));
  LbStyle style = lb_style_make (dark ? LB_THEME_DARK : LB_THEME_LIGHT, 1);
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
