/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The whole bed of a river at a glance, heights stretched: on the river page, and before and after
 * the cleaning of an imported log. */
#pragma once

#include "scene.h"

/* What a log held before it was cleaned: depth (m) at x (m, in any order). */
typedef struct
{
  const double *x;
  const double *depth;
  size_t n;
} LbSoundings;

typedef struct
{
  LbSoundings soundings; /* n is 0: none to show */
  int selected;          /* a bed point to mark; -1: none */
  bool show_reel;        /* where the reel is along the bed; the picture then reaches to there */
} LbBedPreview;

/* The bed of `picture`'s river in `width` x `height` drawing units, its points as dots where there
 * is room, the soundings behind it. Only setup, units and number style of the picture count.
 * Pickable: LB_PICK_BED with the world's x. lb_scene_describe() gives it in words. Free with
 * lb_scene_free(). The context must outlive the scene. */
LbScene *lb_bed_preview_new (LbDrawContext *context,
                             const LbPicture *picture,
                             const LbBedPreview *preview,
                             const LbStyle *style,
                             double width,
                             double height);
