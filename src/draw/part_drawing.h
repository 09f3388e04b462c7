/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One piece of tackle by itself, as the catalogue shows it: a weight by its shape, a line by its
 * thickness and make, a lure by its length and lip. Weights and lures look as in the side view. */
#pragma once

#include "scene.h"

typedef enum
{
  LB_TACKLE_WEIGHT,
  LB_TACKLE_LINE,
  LB_TACKLE_LURE,
} LbTackleKind;

/* Only the member of the kind counts. */
typedef struct
{
  LbTackleKind kind;
  LbWeight weight;
  LbLine line;
  LbLure lure;
} LbTackle;

/* How many drawing units a metre may take at most for the piece to fit in `width` x `height`. Take
 * the least over a list to draw all of it to one scale. A line is drawn thicker than it is: to
 * a fifth of the height where this scale is used. */
double lb_part_drawing_fit (const LbTackle *tackle, double width, double height);

/* The piece in the middle of `width` x `height` drawing units, with a metre `per_metre` long. All
 * of it is foreground; there is no ground under it. Free with lb_scene_free(). The context must
 * outlive the scene. */
LbScene *lb_part_drawing_new (LbDrawContext *context,
                              const LbTackle *tackle,
                              const LbStyle *style,
                              double per_metre,
                              double width,
                              double height);
