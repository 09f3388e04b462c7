/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a drawing of the pass looks: at all of it or page by page, until the user zooms, moves or
 * has it follow the boat. Plain state; the canvas that it belongs to is told when to draw anew. */
#pragma once

#include "pass_drawing.h"

typedef struct
{
  LbView view;
  bool above;   /* else from the side */
  bool moved;   /* by the user */
  bool follows; /* every moment, so that the boat stays where it is in the picture */
  LbVec3 reel;  /* where it was when the view was last taken along */
} LbPassCamera;

/* The view of the moment that `picture` shows. */
const LbView *lb_pass_camera_look (LbPassCamera *self,
                                   const LbPassPicture *picture,
                                   const LbStyle *style,
                                   double width,
                                   double height);

/* `factor` > 1: closer; the drawing point (x, y) stays where it is. Within limits. */
void lb_pass_camera_zoom (LbPassCamera *self, double factor, double x, double y);
void lb_pass_camera_pan (LbPassCamera *self, double dx, double dy);

/* As at first. */
void lb_pass_camera_fit (LbPassCamera *self);

/* Whether it goes with the boat; from the side it then begins as close as boat and rig allow. */
void lb_pass_camera_follow (LbPassCamera *self, bool follow);
