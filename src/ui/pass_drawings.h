/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The drawings of a pass over one another: from the side or from above, and the time chart. */
#pragma once

#include "pass_canvas.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_DRAWINGS (lb_pass_drawings_get_type ())
G_DECLARE_FINAL_TYPE (LbPassDrawings, lb_pass_drawings, LB, PASS_DRAWINGS, GtkWidget)

GtkWidget *lb_pass_drawings_new (LbSession *session, LbPassPlayback *playback);

gboolean lb_pass_drawings_get_above (LbPassDrawings *self);
void lb_pass_drawings_set_above (LbPassDrawings *self, gboolean above);

/* The view that is shown, from the side or from above. (transfer none) */
LbPassCanvas *lb_pass_drawings_get_view (LbPassDrawings *self);

/* Whether both views go with the boat. */
gboolean lb_pass_drawings_get_follows (LbPassDrawings *self);
void lb_pass_drawings_set_follows (LbPassDrawings *self, gboolean follows);

/* (transfer none) */
LbPassCanvas *lb_pass_drawings_get_canvas (LbPassDrawings *self, LbPassCanvasKind kind);

G_END_DECLS
