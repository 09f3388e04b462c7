/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drawing on a page, with its words for a screen reader. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_CHART_IMAGE (lb_chart_image_get_type ())
G_DECLARE_FINAL_TYPE (LbChartImage, lb_chart_image, LB, CHART_IMAGE, GtkWidget)

/* Makes the scene (transfer full) for the present state of `data`. */
typedef LbScene *(*LbChartMake) (LbDrawContext *context,
                                 const LbPicture *picture,
                                 const LbStyle *style,
                                 double width,
                                 double height,
                                 gpointer data);

/* `name` is what a screen reader calls it; the scene's own words describe it. It is `height` high
 * with letters of the normal size and grows with them. It follows the session's theme, edits and
 * units; for anything else call lb_chart_image_outdate().
 *
 * Signal: "picked" (double x, double z: where in the world) when something was clicked. */
GtkWidget *lb_chart_image_new (
    LbSession *session, const char *name, int height, LbChartMake make, gpointer data);

/* Draws it anew. */
void lb_chart_image_outdate (LbChartImage *self);

/* What a screen reader is told; (transfer full). "" while it has no size. */
char *lb_chart_image_describe (LbChartImage *self);

G_END_DECLS
