/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings of a pass: the side view at a moment with the trails up to it, the time chart, and the
 * view from above. Scenes like any other: painted, and described in words. */
#pragma once

#include "pass_track.h"
#include "scene.h"

/* Nothing is owned and nothing is kept, as in LbPicture. */
typedef struct
{
  LbPicture now;      /* the rig at the moment: the document's setup; shape and readings of the
                         moment */
  LbPassTrack track;  /* the pass as far as it is known */
  double time;        /* s, the moment */
  double tangle;      /* m; lines nearer than this may tangle; 0: not asked */
  double reach_start; /* m along the bed, where the reel is at time 0 */
  LbPassTrack second; /* of a second rig from the same boat; without moments: there is none */
  const LbSetup *second_setup; /* NULL: there is none */
  const LbShape *second_shape; /* at the moment; NULL: not known */
} LbPassPicture;

/* ---- Views ---- */

/* A side view of the moment that is kept while boat and rig stay inside, and then moves on by a
 * page, so that boat and rig go over a bed at rest. `previous` may be NULL. */
LbView lb_pass_side_fit (const LbView *previous,
                         const LbPassPicture *picture,
                         const LbStyle *style,
                         double width,
                         double height);

/* Boat and rig alone at the moment, as large as there is room. */
LbView
lb_pass_side_near (const LbPassPicture *picture, const LbStyle *style, double width, double height);

/* A view that was zoomed or moved, taken along with the rig: closely, so that the boat stays where
 * it is in the picture, or else only when the weight comes to its edge. From the side or from
 * above. `reel` is where the reel was when it was last taken along, and becomes where it is. */
LbView lb_pass_view_along (
    const LbView *view, const LbPassPicture *picture, bool above, bool closely, LbVec3 *reel);

/* A view from above of all that is known of the pass; x as in the side view, and across the river
 * as heights are there: lb_view_y (view, y). */
LbView lb_pass_above_fit (const LbView *previous,
                          const LbPassPicture *picture,
                          const LbStyle *style,
                          double width,
                          double height);

/* ---- Scenes; free with lb_scene_free(), the context must outlive them ---- */

/* The background holds nothing that moves until the view does. */
LbScene *lb_pass_side_view_new (LbDrawContext *context,
                                const LbPassPicture *picture,
                                const LbStyle *style,
                                const LbView *view,
                                double width,
                                double height);

LbScene *lb_pass_above_new (LbDrawContext *context,
                            const LbPassPicture *picture,
                            const LbStyle *style,
                            const LbView *view,
                            double width,
                            double height);

/* Heights of weight and lures with the band, wire angle, hand tension and boat speed against time.
 * The background changes when more of the pass is known, the foreground with the moment. */
LbScene *lb_pass_chart_new (LbDrawContext *context,
                            const LbPassPicture *picture,
                            const LbStyle *style,
                            double width,
                            double height);

/* The time that a point of the chart stands for, s, held to the pass. */
double lb_pass_chart_time (const LbScene *chart, double x);

/* ---- How things are told apart, for keys beside the drawings ---- */

/* Of the weight (-1) or of a lure. */
LbColour lb_pass_colour (int thing);
