/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture.h"

#include <math.h>

#include "bed.h"
#include "boat.h"

bool
lb_picture_is_solved (const LbPicture *picture)
{
  return picture->shape && picture->readings && !lb_status_is_failure (picture->status)
         && picture->shape->n_nodes > 0;
}

/* Depth to show: the deepest bed between the two ends. */
static double
deepest_between (const LbSetup *setup, double x_min, double x_max)
{
  LbBed bed;
  double deepest = 0;

  lb_bed_init (&bed, &setup->river);
  for (int i = 0; i <= 64; i++)
    deepest = fmax (deepest, lb_bed_at (&bed, x_min + (x_max - x_min) * i / 64).depth);
  return deepest;
}

LbExtents
lb_picture_extents (const LbPicture *picture)
{
  const LbSetup *setup = picture->setup;
  double reel = setup->boat.position;
  LbExtents extents = {
    .x_min = reel - LB_BOAT_BOW,
    .x_max = reel + LB_BOAT_STERN,
    .z_max = fmax (LB_BOAT_TOP, setup->boat.reel_height + LB_REEL_ABOVE),
    .x_rig = reel,
  };

  if (lb_picture_is_solved (picture))
    for (size_t i = 0; i < picture->shape->n_nodes; i++)
      {
        LbVec3 at = picture->shape->nodes[i].position;

        extents.x_max = fmax (extents.x_max, at.x + 0.1);
        extents.x_min = fmin (extents.x_min, at.x);
        extents.x_rig = fmin (extents.x_rig, at.x);
      }
  else
    extents.x_max = fmax (extents.x_max, reel + 2 * setup->river.depth);
  extents.z_min = -deepest_between (setup, extents.x_min, extents.x_max);
  return extents;
}
