/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What pulling at a part of a drawing sets: the one value that a drag or the arrow keys change, and
 * how far. A point of the bed has two, its depth and its distance along the reach.
 *
 *   weight         the height it is held at (line out given becomes held)
 *   mainline       line out (held becomes given)
 *   reel           its height             shank        its length
 *   attachment     along the shank        leader, lure the leader's length
 *   plane bed      depth                  bed point    depth, distance
 *   boat           its place, over a bed of points
 *   band edges     their height           current, surface: the current, by keys only */
#pragma once

#include "session.h"

G_BEGIN_DECLS

typedef struct
{
  LbPickKind kind;
  int index;
  const LbField *field;
  gsize leader;
  double value;              /* SI, at the start */
  double lowest, highest;    /* SI */
  double per_x, per_y;       /* change of the value, SI, for a drawing unit right and down; both 0:
                                not to be dragged */
  int right, up;             /* steps of the value for an arrow key to that side: -1, 0, 1 */
  double along, per_metre_x; /* bed point: m along the reach at the start */
} LbGrab;

/* Takes hold of a part, in a drawing where a metre takes `per_metre_x` drawing units along and
 * `per_metre_up` upward (> 0). FALSE when pulling at it sets nothing, or is not known to as long as
 * there is no answer. */
gboolean lb_grab_begin (LbGrab *self,
                        LbSession *session,
                        LbPickKind kind,
                        int index,
                        double per_metre_x,
                        double per_metre_up);

gboolean lb_grab_can_drag (const LbGrab *self);

/* The pointer is (dx, dy) drawing units from where it took hold. The value is set to a whole number
 * of the field's steps in the user's units, with `fine` of tenths of them, as part of `gesture`.
 * Returns whether anything changed. */
gboolean lb_grab_drag (
    const LbGrab *self, LbSession *session, double dx, double dy, gboolean fine, guint gesture);

/* Moves by that many steps to the right and upward; `fine`: by tenths of a step. */
gboolean lb_grab_step (
    const LbGrab *self, LbSession *session, int right, int up, gboolean fine, guint gesture);

/* The part's value as it is now, with what it is called: "Weight above the bed 9 in". NULL for a
 * part that has none. (transfer full) */
char *lb_grab_dup_words (LbSession *session, LbPickKind kind, int index);

G_END_DECLS
