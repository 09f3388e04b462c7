/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The side view with the bed strip under it, sharing one viewport. */
#pragma once

#include <gtk/gtk.h>

#include "canvas.h"

G_BEGIN_DECLS

#define LB_TYPE_DRAWINGS (lb_drawings_get_type ())
G_DECLARE_FINAL_TYPE (LbDrawings, lb_drawings, LB, DRAWINGS, GtkWidget)

GtkWidget *lb_drawings_new (LbSession *session);

LbCanvas *lb_drawings_get_side_view (LbDrawings *self);  /* (transfer none) */
LbCanvas *lb_drawings_get_bed_strip (LbDrawings *self);  /* (transfer none) */
LbViewport *lb_drawings_get_viewport (LbDrawings *self); /* (transfer none) */

/* See lb_canvas_make_way(). */
void lb_drawings_make_way (LbDrawings *self);

/* `factor` > 1: closer, about the middle of the side view. */
void lb_drawings_zoom (LbDrawings *self, double factor);

G_END_DECLS
