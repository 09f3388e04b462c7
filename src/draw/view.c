/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view.h"

#include <math.h>

/* Room for the scales, in style units. */
#define LEFT_FOR_BOAT 14.0
#define LEFT_FOR_RIG 152.0
#define RIGHT 58.0
#define TOP 26.0
#define BOTTOM 46.0

/* A view is kept while the picture fills at least this much of what it was fitted for. */
#define LEAST_FILL 0.62
/* What a new view takes beyond what is wanted. */
#define SPARE 0.04

/* The largest scales at which the width and the height of what is wanted have room. */
static double
width_scale (const LbView *view, const LbExtents *wanted)
{
  double x_room = view->width - view->left - view->right;
  double rig_room = view->width - LEFT_FOR_RIG * view->style_scale - view->right;

  return fmin (x_room / (wanted->x_max - wanted->x_min),
               rig_room / (wanted->x_max - wanted->x_rig));
}

static double
height_scale (const LbView *view, const LbExtents *wanted)
{
  return (view->height - view->top - view->bottom) / (wanted->z_max - wanted->z_min);
}

/* How much to stretch heights, by a whole number, so that they fill the picture. */
static double
fitting_stretch (const LbView *view, const LbExtents *wanted)
{
  double stretch = floor (height_scale (view, wanted) / width_scale (view, wanted));

  return fmax (LB_VIEW_LEAST_STRETCH, fmin (stretch, LB_VIEW_MOST_STRETCH));
}

static double
fitting_scale (const LbView *view, const LbExtents *wanted, double stretch)
{
  return fmin (width_scale (view, wanted), height_scale (view, wanted) / stretch);
}

/* Rounds down to a power of 1.06, so that neighbouring fits land on the same scale. */
static double
stepped_down (double scale)
{
  double steps = log (scale) / log (1.06);

  return pow (1.06, floor (steps + 1e-9));
}

bool
lb_view_holds (const LbView *view, const LbExtents *wanted)
{
  double slack = 0.5; /* drawing units: rounding */
  double rig_left = LEFT_FOR_RIG * view->style_scale;

  return lb_view_x (view, wanted->x_min) >= view->left - slack
         && lb_view_x (view, wanted->x_rig) >= rig_left - slack
         && lb_view_x (view, wanted->x_max) <= view->width - view->right + slack
         && lb_view_y (view, wanted->z_max) >= view->top - slack
         && lb_view_y (view, wanted->z_min) <= view->height - view->bottom + slack;
}

double
lb_view_stretch (const LbView *view)
{
  return view->per_metre_x > 0 ? view->per_metre_z / view->per_metre_x : 1;
}

static bool
is_worth_keeping (const LbView *previous, const LbView *view, const LbExtents *wanted, bool stretch)
{
  double factor = stretch ? fitting_stretch (view, wanted) : 1;
  double least = LEAST_FILL * fitting_scale (view, wanted, factor);

  return previous && previous->per_metre_x > 0 && previous->width == view->width
         && previous->height == view->height && previous->style_scale == view->style_scale
         && lb_view_holds (previous, wanted) && previous->per_metre_x >= least
         && (stretch ? previous->per_metre_z >= least * factor
                     : previous->per_metre_z == previous->per_metre_x);
}

/* Puts what is wanted in the free part of the picture. Spare width goes mostly behind the rig,
 * where labels stand, spare height mostly under the bed. */
static void
centre (LbView *view, const LbExtents *wanted)
{
  double scale = view->per_metre_x, scale_z = view->per_metre_z;
  double rig_left = LEFT_FOR_RIG * view->style_scale;
  double left = fmax (view->left, rig_left - (wanted->x_rig - wanted->x_min) * scale);
  double x_spare = view->width - view->right - left - (wanted->x_max - wanted->x_min) * scale;
  double z_spare =
      view->height - view->top - view->bottom - (wanted->z_max - wanted->z_min) * scale_z;

  view->x_left = wanted->x_min - (left + 0.4 * x_spare) / scale;
  view->z_top = wanted->z_max + (view->top + 0.42 * z_spare) / scale_z;
}

static LbView
fit (const LbView *previous,
     const LbExtents *wanted,
     const LbStyle *style,
     double width,
     double height,
     bool stretch)
{
  LbView view = {
    .width = width,
    .height = height,
    .style_scale = style->scale,
    .left = fmin (LEFT_FOR_BOAT * style->scale, 0.1 * width),
    .right = fmin (RIGHT * style->scale, 0.2 * width),
    .top = fmin (TOP * style->scale, 0.25 * height),
    .bottom = fmin (BOTTOM * style->scale, 0.3 * height),
  };
  double factor;

  if (is_worth_keeping (previous, &view, wanted, stretch))
    return *previous;

  factor = stretch ? fitting_stretch (&view, wanted) : 1;
  view.per_metre_x = stepped_down (fitting_scale (&view, wanted, factor) / (1 + SPARE));
  view.per_metre_z = factor * view.per_metre_x;
  centre (&view, wanted);
  return view;
}

LbView
lb_view_fit (const LbView *previous,
             const LbExtents *wanted,
             const LbStyle *style,
             double width,
             double height)
{
  return fit (previous, wanted, style, width, height, false);
}

LbView
lb_view_fit_stretched (const LbView *previous,
                       const LbExtents *wanted,
                       const LbStyle *style,
                       double width,
                       double height)
{
  return fit (previous, wanted, style, width, height, true);
}

LbView
lb_view_zoomed (const LbView *view, double factor, double px, double py)
{
  LbView zoomed = *view;
  double x = lb_view_world_x (view, px), z = lb_view_world_z (view, py);

  zoomed.per_metre_x *= factor;
  zoomed.per_metre_z *= factor;
  zoomed.x_left = x - px / zoomed.per_metre_x;
  zoomed.z_top = z + py / zoomed.per_metre_z;
  return zoomed;
}

LbView
lb_view_panned (const LbView *view, double dx, double dy)
{
  LbView panned = *view;

  panned.x_left -= dx / view->per_metre_x;
  panned.z_top += dy / view->per_metre_z;
  return panned;
}
