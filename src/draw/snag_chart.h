/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small chart of the pull in the hand from the moment when something hangs up on the bed. */
#pragma once

#include "scene.h"
#include "snag.h"

/* What the boat may do: 0 it goes on, 1 it drifts with its motor stopped. */
#define LB_SNAG_CURVES 2

/* Plain values; nothing is owned. */
typedef struct
{
  LbSnag snag;
  double speed[LB_SNAG_CURVES]; /* m/s of the boat over the ground, upstream */
  LbSnagTimes times[LB_SNAG_CURVES];
  double limit; /* N, of the hand */
  int chosen;   /* the curve that is drawn strong, with its moments marked */
} LbSnagPicture;

/* Both curves against time, the hand's limit, when the chosen one passes it, and when the line
 * parts. Only units and number style of `picture` count. lb_scene_describe() gives all of it in
 * words. Free with lb_scene_free(). The context must outlive the scene. */
LbScene *lb_snag_chart_new (LbDrawContext *context,
                            const LbPicture *picture,
                            const LbSnagPicture *snag,
                            const LbStyle *style,
                            double width,
                            double height);
