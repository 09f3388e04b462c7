/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drawing of the pass at the moment that its playback shows. */
#pragma once

#include <gtk/gtk.h>

#include "node_cache.h"
#include "pass_camera.h"
#include "pass_playback.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_CANVAS (lb_pass_canvas_get_type ())
G_DECLARE_FINAL_TYPE (LbPassCanvas, lb_pass_canvas, LB, PASS_CANVAS, GtkWidget)

typedef enum
{
  LB_PASS_CANVAS_SIDE,
  LB_PASS_CANVAS_ABOVE,
  LB_PASS_CANVAS_CHART, /* a pointer pulled along it changes the moment */
} LbPassCanvasKind;

GtkWidget *lb_pass_canvas_new (LbPassCanvasKind kind, LbSession *session, LbPassPlayback *playback);

/* How large words are drawn (LbStyle.scale), so that drawings beside one another agree. */
void lb_pass_canvas_set_scale (LbPassCanvas *self, double scale);

/* Of a view: nearer by `factor`, about the weight; all of it, or page by page, again; whether it
 * goes with the boat. The wheel zooms about the pointer, a drag moves. */
void lb_pass_canvas_zoom (LbPassCanvas *self, double factor);
void lb_pass_canvas_fit (LbPassCanvas *self);
void lb_pass_canvas_set_follows (LbPassCanvas *self, gboolean follows);
const LbPassCamera *lb_pass_canvas_get_camera (LbPassCanvas *self); /* (transfer none) */

/* What is drawn, as it is now; NULL while there is no room. Valid until the next change.
 * (transfer none) (nullable) */
LbScene *lb_pass_canvas_get_scene (LbPassCanvas *self);

/* The drawing in words, as the screen reader is told. (transfer full) */
char *lb_pass_canvas_describe (LbPassCanvas *self);

LbNodeCache *lb_pass_canvas_get_cache (LbPassCanvas *self); /* (transfer none) */

G_END_DECLS
