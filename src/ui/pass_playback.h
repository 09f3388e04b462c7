/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pass of the session's document, recorded ahead on a thread, and the moment of it that is
 * shown. It begins anew when the document changes.
 *
 * Signals:
 *  "moved": another moment is shown;
 *  "grown": more of the pass is known, or the state of its computation has changed;
 *  "restarted": it is another pass;
 *  "playing": it has begun or ceased to play. */
#pragma once

#include "pass_drawing.h"
#include "pass_runner.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_PLAYBACK (lb_pass_playback_get_type ())
G_DECLARE_FINAL_TYPE (LbPassPlayback, lb_pass_playback, LB, PASS_PLAYBACK, GObject)

/* (transfer full) */
LbPassPlayback *lb_pass_playback_new (LbSession *session);

/* While it is not active, as on a page that is not shown, it neither computes nor plays; a change
 * of the document then counts when it becomes active. */
void lb_pass_playback_set_active (LbPassPlayback *self, gboolean active);

LbPassRunner *lb_pass_playback_get_runner (LbPassPlayback *self); /* (transfer none) */

/* Computes on from where it was called off; nothing otherwise. */
void lb_pass_playback_go_on (LbPassPlayback *self);

/* ---- The moment ---- */

double lb_pass_playback_get_time (LbPassPlayback *self);     /* s */
double lb_pass_playback_get_duration (LbPassPlayback *self); /* s, of the whole pass */
double lb_pass_playback_get_end (LbPassPlayback *self);      /* s, up to which it is known */

/* Whether nothing more of the pass is to come. */
gboolean lb_pass_playback_get_settled (LbPassPlayback *self);

/* Shows the moment at `time`, held to what is known. */
void lb_pass_playback_go_to (LbPassPlayback *self, double time);

/* ---- Playing ---- */

#define LB_PASS_SLOWEST 0.5
#define LB_PASS_FASTEST 8.0

gboolean lb_pass_playback_get_playing (LbPassPlayback *self);

/* Playing on from the end begins at the start. */
void lb_pass_playback_set_playing (LbPassPlayback *self, gboolean playing);

/* How many seconds of the pass go by in one; 1 at first. */
double lb_pass_playback_get_speed (LbPassPlayback *self);
void lb_pass_playback_set_speed (LbPassPlayback *self, double speed);

/* While it plays: goes on by `seconds` of the clock. Waits where nothing is known yet, and ceases
 * at the end. */
void lb_pass_playback_advance (LbPassPlayback *self, double seconds);

/* ---- What is drawn and told ---- */

/* Fills `picture`; its pointers live until the next signal. FALSE when nothing is known. */
gboolean lb_pass_playback_get_picture (LbPassPlayback *self, LbPassPicture *picture);

G_END_DECLS
