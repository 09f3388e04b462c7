/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What part of the world the drawings of a window show, and in which style: shared by the side view
 * and the bed strip, so that they line up. Follows the rig until the user zooms or moves.
 *
 * Signal "changed": the view or the style is another; every drawing is to be made anew. */
#pragma once

#include "session.h"
#include "style.h"
#include "view.h"

G_BEGIN_DECLS

#define LB_TYPE_VIEWPORT (lb_viewport_get_type ())
G_DECLARE_FINAL_TYPE (LbViewport, lb_viewport, LB, VIEWPORT, GObject)

LbViewport *lb_viewport_new (LbSession *session);

/* Shows `extents` from now on, not the rig of the document: for a drawing of something else. */
void lb_viewport_set_extents (LbViewport *self, const LbExtents *extents);

/* The size of the side view and the height of the bed strip under it, drawing units. */
void lb_viewport_set_size (LbViewport *self, double width, double height, double strip_height);

/* Valid until the next call. A view of width 0: there is no size yet. */
const LbView *lb_viewport_get_view (LbViewport *self);
const LbStyle *lb_viewport_get_style (LbViewport *self);

/* `factor` > 1: closer; the drawing point (x, y) stays where it is. */
void lb_viewport_zoom (LbViewport *self, double factor, double x, double y);

/* The same about the selected part, so that the keyboard finds what it came for; about the middle
 * when none is selected, or one without a place. */
void lb_viewport_zoom_selected (LbViewport *self, double factor);

/* Moves the drawing by (dx, dy) drawing units. */
void lb_viewport_pan (LbViewport *self, double dx, double dy);

/* Shows the whole rig again and follows it from now on. */
void lb_viewport_fit (LbViewport *self);

/* Stretches heights so that they fill the drawing, or shows them true to scale again; the whole rig
 * in either case. */
void lb_viewport_set_stretched (LbViewport *self, gboolean stretched);
gboolean lb_viewport_get_stretched (LbViewport *self);

/* While it is held the view does not follow the rig: a part that is being dragged must not move
 * away from under the pointer. */
void lb_viewport_hold (LbViewport *self, gboolean hold);

/* Whether the user has zoomed or moved since the last lb_viewport_fit(). */
gboolean lb_viewport_get_moved (LbViewport *self);

G_END_DECLS
