/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What part of the world the drawings of a pass show. */
#include <math.h>

#include "boat.h"
#include "pass_parts.h"

/* All of a pass is shown at once unless it would then be smaller than this part of the rig alone.
 */
#define LEAST_SHARE 0.5
/* Else a page holds so many lengths of boat and rig. */
#define PAGE 1.7

#define AROUND 1.0 /* m, shown round everything from above */

/* A view that does not go with every moment moves on before the weight is nearer to its edge than
 * this part of it. */
#define EDGE 0.08

LbSetup
lb_pass_setup_now (const LbPassPicture *picture)
{
  LbSetup setup = *picture->now.setup;
  LbTrackMoment now;

  if (lb_track_at (&picture->track, picture->time, &now))
    {
      setup.boat.position = now.reel.x;
      setup.boat.speed_over_ground = now.boat_speed;
    }
  return setup;
}

/* ---- From the side ---- */

static void
include (LbExtents *extents, double x, double ahead, double behind)
{
  extents->x_min = fmin (extents->x_min, x - ahead);
  extents->x_max = fmax (extents->x_max, x + behind);
}

/* All that the boat and the rig take at the moment, with spare room for what swings. */
static LbExtents
extents_now (const LbPassPicture *picture, const LbSetup *setup)
{
  LbPicture now = picture->now;

  now.setup = setup;
  LbExtents extents = lb_picture_extents (&now);
  if (picture->second_shape)
    {
      now.shape = picture->second_shape;
      LbExtents second = lb_picture_extents (&now);
      extents.x_max = fmax (extents.x_max, second.x_max);
      extents.z_min = fmin (extents.z_min, second.z_min);
    }
  return extents;
}

static void
include_track (LbExtents *extents, const LbPassTrack *track)
{
  for (size_t i = 0; i < track->n; i++)
    {
      const LbTrackMoment *m = &track->moments[i];

      include (extents, m->reel.x, LB_BOAT_BOW, LB_BOAT_STERN);
      include (extents, m->weight.position.x, 0, 0.1);
      for (size_t k = 0; k < track->n_lures; k++)
        include (extents, m->lures[k].position.x, 0, 0.1);
    }
}

/* The deepest bed that the boat passes over, and how high anything comes. */
static LbExtents
extents_of_pass (const LbPassPicture *picture, LbExtents now)
{
  const LbPassTrack *track = &picture->track;
  LbExtents all = now;

  include_track (&all, track);
  include_track (&all, &picture->second);
  /* What is not known yet goes on as it went last. */
  if (track->n > 0)
    {
      const LbTrackMoment *last = &track->moments[track->n - 1];

      if (last->time < track->duration)
        include (&all, last->reel.x - last->boat_speed * (track->duration - last->time),
                 LB_BOAT_BOW, 0);
    }
  all.x_rig = all.x_min + LB_BOAT_BOW;
  return all;
}

static void
find_depth (LbExtents *extents, const LbSetup *setup)
{
  LbBed bed;

  lb_bed_init (&bed, &setup->river);
  for (int i = 0; i <= 128; i++)
    {
      double x = extents->x_min + (extents->x_max - extents->x_min) * i / 128;

      extents->z_min = fmin (extents->z_min, -lb_bed_at (&bed, x).depth);
    }
}

/* Boat and rig at the downstream end of a page. */
static LbExtents
page_of (LbExtents now)
{
  double length = now.x_max - now.x_min;

  now.x_min = now.x_max - PAGE * length;
  now.x_rig = now.x_min + LB_BOAT_BOW;
  return now;
}

LbView
lb_pass_side_fit (const LbView *previous,
                  const LbPassPicture *picture,
                  const LbStyle *style,
                  double width,
                  double height)
{
  LbSetup setup = lb_pass_setup_now (picture);
  LbExtents now = extents_now (picture, &setup), page = page_of (now);
  LbExtents whole;
  LbView alone, view;

  if (previous && previous->per_metre_x > 0 && previous->width == width
      && previous->height == height && previous->style_scale == style->scale)
    {
      now.x_rig = now.x_min + LB_BOAT_BOW;
      if (lb_view_holds (previous, &now))
        return *previous;
      now.x_rig = setup.boat.position;
    }
  alone = lb_view_fit (NULL, &now, style, width, height);
  whole = extents_of_pass (picture, now);
  find_depth (&whole, &setup);
  view = lb_view_fit (NULL, &whole, style, width, height);
  if (view.per_metre_x >= LEAST_SHARE * alone.per_metre_x)
    return view;
  find_depth (&page, &setup);
  return lb_view_fit (NULL, &page, style, width, height);
}

LbView
lb_pass_side_near (const LbPassPicture *picture, const LbStyle *style, double width, double height)
{
  LbSetup setup = lb_pass_setup_now (picture);
  LbExtents now = extents_now (picture, &setup);

  find_depth (&now, &setup);
  return lb_view_fit (NULL, &now, style, width, height);
}

/* ---- From above ---- */

static void
include_around (LbExtents *extents, LbVec3 at, double around)
{
  extents->x_min = fmin (extents->x_min, at.x - around);
  extents->x_max = fmax (extents->x_max, at.x + around);
  extents->z_min = fmin (extents->z_min, at.y - around);
  extents->z_max = fmax (extents->z_max, at.y + around);
}

static void
include_track_above (LbExtents *extents, const LbPassTrack *track)
{
  for (size_t i = 0; i < track->n; i++)
    {
      const LbTrackMoment *m = &track->moments[i];

      include_around (extents, m->reel, LB_BOAT_BOW);
      include_around (extents, m->weight.position, AROUND);
      for (size_t k = 0; k < track->n_lures; k++)
        include_around (extents, m->lures[k].position, AROUND);
    }
}

LbView
lb_pass_above_fit (const LbView *previous,
                   const LbPassPicture *picture,
                   const LbStyle *style,
                   double width,
                   double height)
{
  double start = picture->reach_start;
  LbExtents all = { start - LB_BOAT_BOW, start + 2 * LB_BOAT_STERN, -AROUND, AROUND, start };

  include_track_above (&all, &picture->track);
  include_track_above (&all, &picture->second);
  all.x_rig = all.x_min + LB_BOAT_BOW;
  return lb_view_fit (previous, &all, style, width, height);
}

/* ---- Along with the rig ---- */

static bool
is_inside (double at, double size)
{
  return at > EDGE * size && at < (1 - EDGE) * size;
}

LbView
lb_pass_view_along (
    const LbView *view, const LbPassPicture *picture, bool above, bool closely, LbVec3 *reel)
{
  LbView along = *view;
  LbTrackMoment now;
  double up;

  if (!lb_track_at (&picture->track, picture->time, &now))
    return along;
  up = above ? now.weight.position.y : now.weight.position.z;
  if (closely || !is_inside (lb_view_x (view, now.weight.position.x), view->width))
    {
      along.x_left += now.reel.x - reel->x;
      if (above)
        along.z_top += now.reel.y - reel->y;
      *reel = now.reel;
    }
  /* What is still not in it: heights go up and down with the bed, and a moment may be far off. */
  if (!is_inside (lb_view_x (&along, now.weight.position.x), view->width))
    along.x_left = now.weight.position.x - 0.5 * view->width / view->per_metre_x;
  if (!is_inside (lb_view_y (&along, up), view->height))
    along.z_top = up + 0.6 * view->height / view->per_metre_z;
  return along;
}
