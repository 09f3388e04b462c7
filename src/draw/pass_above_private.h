/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the view from above share; internal to it. */
#pragma once

#include "pass_parts.h"

LbSpot lb_above_project (const LbScene *scene, LbVec3 at);

/* ---- pass_above_rig.c ---- */

/* Boat metres: `ahead` of the reel, `right` of the boat's middle, seen towards the bow. */
LbSpot
lb_above_boat_spot (const LbScene *scene, const LbTrackMoment *now, double ahead, double right);

void lb_above_add_boat (LbScene *scene, const LbTrackMoment *now);
void lb_above_add_reel (LbScene *scene, const LbTrackMoment *now);

/* The scene's shape; nothing when it has none. */
void lb_above_add_rig (LbScene *scene);

/* ---- pass_above_words.c ---- */

LbLabel lb_above_thing_label (const LbScene *scene, const LbTrackMoment *now, int thing);
LbLabel lb_above_boat_label (const LbScene *scene, const LbTrackMoment *now);
bool lb_above_may_tangle (const LbPassPicture *picture, const LbTrackMoment *closest);

/* Marks where two lines came nearer than they should, and labels it. */
LbLabel lb_above_add_closest (LbScene *scene, const LbTrackMoment *closest);

/* All of it in words; `now` and `closest` may be NULL. Free with g_free(). */
char *lb_above_describe (const LbScene *scene,
                         const LbPassPicture *picture,
                         const LbTrackMoment *now,
                         const LbTrackMoment *closest);
