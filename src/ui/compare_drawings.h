/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The runs of a comparison over one another: the side view with the bed strip under it. */
#pragma once

#include <gtk/gtk.h>

#include "comparison.h"
#include "session.h"
#include "viewport.h"

G_BEGIN_DECLS

#define LB_TYPE_COMPARE_DRAWINGS (lb_compare_drawings_get_type ())
G_DECLARE_FINAL_TYPE (LbCompareDrawings, lb_compare_drawings, LB, COMPARE_DRAWINGS, GtkWidget)

/* Signal: "picked" (int run) when a run's line, weight or lure was clicked. */
GtkWidget *lb_compare_drawings_new (LbSession *session);

/* Draws `comparison` from now on. */
void lb_compare_drawings_set (LbCompareDrawings *self, LbComparison *comparison);

/* What a screen reader is told. (transfer full) */
char *lb_compare_drawings_describe (LbCompareDrawings *self);

/* What part of the world is shown. (transfer none) */
LbViewport *lb_compare_drawings_get_viewport (LbCompareDrawings *self);

/* `factor` > 1: closer, about where the rigs hang. */
void lb_compare_drawings_zoom (LbCompareDrawings *self, double factor);

G_END_DECLS
