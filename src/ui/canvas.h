/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drawing of the session's rig: the side view or the bed strip. What pointer and keys do on it
 * stands in handling.h; resting the pointer on a part shows its numbers. */
#pragma once

#include <gtk/gtk.h>

#include "node_cache.h"
#include "viewport.h"

G_BEGIN_DECLS

#define LB_TYPE_CANVAS (lb_canvas_get_type ())
G_DECLARE_FINAL_TYPE (LbCanvas, lb_canvas, LB, CANVAS, GtkWidget)

typedef enum
{
  LB_CANVAS_SIDE_VIEW,
  LB_CANVAS_BED_STRIP,
} LbCanvasKind;

GtkWidget *lb_canvas_new (LbCanvasKind kind, LbSession *session, LbViewport *viewport);

/* Says that in the next frame much else of the window is repainted, too: the drawing then comes
 * apart into fewer rectangles (see node_cache.h). */
void lb_canvas_make_way (LbCanvas *self);

/* What is drawn, as it is now; NULL while there is no room for it. Valid until the next change.
 * (transfer none) (nullable) */
LbScene *lb_canvas_get_scene (LbCanvas *self);

/* The drawing in words, as the screen reader is told. (transfer full) */
char *lb_canvas_describe (LbCanvas *self);

/* The tooltip at a point, or NULL. (transfer full) */
char *lb_canvas_dup_words_at (LbCanvas *self, double x, double y);

LbNodeCache *lb_canvas_get_cache (LbCanvas *self); /* (transfer none) */

/* How long it took to lay out the last scene, microseconds. */
double lb_canvas_get_scene_time (LbCanvas *self);

G_END_DECLS
