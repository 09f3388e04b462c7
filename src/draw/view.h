/* SPDX-License-Identifier: GPL-3.0-or-later */
/* World metres to drawing units and back. Pure arithmetic. */
#pragma once

#include <stdbool.h>

#include "picture.h"
#include "style.h"

/* Where the world lies in a side view. The bed strip under it shares x, so that they line up. Plain
 * values; a view full of zeros is "no view yet". */
typedef struct
{
  double width, height; /* drawing units, of the side view it was fitted to */
  double style_scale;   /* of the style it was fitted for */
  double left, right;   /* drawing units kept free for the scales on either side */
  double top, bottom;
  double x_left;      /* m, at drawing x = 0 */
  double z_top;       /* m, at drawing y = 0 */
  double per_metre_x; /* drawing units */
  double per_metre_z; /* the same as per_metre_x in a picture that is true to scale */
} LbView;

static inline double
lb_view_x (const LbView *view, double x)
{
  return (x - view->x_left) * view->per_metre_x;
}

static inline double
lb_view_y (const LbView *view, double z)
{
  return (view->z_top - z) * view->per_metre_z;
}

static inline double
lb_view_world_x (const LbView *view, double px)
{
  return view->x_left + px / view->per_metre_x;
}

static inline double
lb_view_world_z (const LbView *view, double py)
{
  return view->z_top - py / view->per_metre_z;
}

/* A view of `width` x `height` drawing units that shows all of `wanted`, true to scale. `previous`
 * (may be NULL) is returned unchanged while it still fits: same size and style, everything wanted
 * inside, and not so large that the rig would look lost. So a moving slider does not rescale
 * the picture at every frame; when it must change it takes a wider step at once. */
LbView lb_view_fit (const LbView *previous,
                    const LbExtents *wanted,
                    const LbStyle *style,
                    double width,
                    double height);

/* The same with heights stretched by a whole number, as large as there is room for. */
#define LB_VIEW_LEAST_STRETCH 2
#define LB_VIEW_MOST_STRETCH 10
LbView lb_view_fit_stretched (const LbView *previous,
                              const LbExtents *wanted,
                              const LbStyle *style,
                              double width,
                              double height);

/* How much heights are stretched against distances; 1: true to scale. */
double lb_view_stretch (const LbView *view);

/* True if `wanted` lies inside the view, clear of the scales. */
bool lb_view_holds (const LbView *view, const LbExtents *wanted);

/* Zooms by `factor` (> 1: closer) about the drawing point (px, py), which stays where it is. */
LbView lb_view_zoomed (const LbView *view, double factor, double px, double py);

/* Moves the picture by (dx, dy) drawing units. */
LbView lb_view_panned (const LbView *view, double dx, double dy);
