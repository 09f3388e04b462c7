/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Boat and rig from above. */
#include <math.h>

#include "boat.h"
#include "pass_above_private.h"

#define BEAM 0.85 /* m, half the boat's */
#define MOST_NODES 2048

/* Boat metres: `ahead` of the reel, `right` of the boat's middle, seen towards the bow. */
LbSpot
lb_above_boat_spot (const LbScene *scene, const LbTrackMoment *now, double ahead, double right)
{
  double c = cos (now->heading), s = sin (now->heading);

  right -= now->reel_across;
  LbVec3 at = { now->reel.x - ahead * c + right * s, now->reel.y + ahead * s + right * c, 0 };

  return lb_above_project (scene, at);
}

static void
boat_curve (LbScene *scene, LbSpot a, LbSpot b, LbSpot c)
{
  lb_scene_curve_to (scene, a.x, a.y, b.x, b.y, c.x, c.y);
}

void
lb_above_add_boat (LbScene *scene, const LbTrackMoment *now)
{
  double s = scene->style.scale;
  LbLook hull = { .fill = LB_COLOUR_HULL, .stroke = LB_COLOUR_HULL_LINE, .width = 1.5 * s };
  LbSpot at = lb_above_boat_spot (scene, now, -LB_BOAT_STERN, -0.8 * BEAM);
  LbSpot bow = lb_above_boat_spot (scene, now, LB_BOAT_BOW, 0);

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (scene, at.x, at.y);
  boat_curve (scene, lb_above_boat_spot (scene, now, 0, -1.1 * BEAM),
              lb_above_boat_spot (scene, now, 2.4, -BEAM), bow);
  boat_curve (scene, lb_above_boat_spot (scene, now, 2.4, BEAM),
              lb_above_boat_spot (scene, now, 0, 1.1 * BEAM),
              lb_above_boat_spot (scene, now, -LB_BOAT_STERN, 0.8 * BEAM));
  lb_scene_close (scene);
  lb_scene_end_pickable (scene, hull, LB_PICK_BOAT, 0);
  lb_scene_note_line (scene, bow.x, bow.y, at.x, at.y);
}

void
lb_above_add_reel (LbScene *scene, const LbTrackMoment *now)
{
  double s = scene->style.scale;
  LbLook reel = { .fill = LB_COLOUR_REEL, .stroke = LB_COLOUR_HULL_LINE, .width = 1.2 * s };
  LbSpot at = lb_above_project (scene, now->reel);

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, at.x, at.y, 4 * s, 4 * s);
  lb_scene_end_pickable (scene, reel, LB_PICK_REEL, 0);
}

static void
add_line (LbScene *scene, int part, LbLook look, LbPickKind pick, int index)
{
  size_t nodes[MOST_NODES];
  size_t n = MIN (lb_shape_line (scene->shape, part, nodes, MOST_NODES), MOST_NODES);
  LbSpot last = { 0 };

  if (n < 2)
    return;
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  for (size_t i = 0; i < n; i++)
    {
      LbSpot at = lb_above_project (scene, scene->shape->nodes[nodes[i]].position);

      if (i == 0)
        lb_scene_move_to (scene, at.x, at.y);
      else if (i + 1 < n && hypot (at.x - last.x, at.y - last.y) < 0.5)
        continue;
      else
        {
          lb_scene_line_to (scene, at.x, at.y);
          lb_scene_note_line (scene, last.x, last.y, at.x, at.y);
        }
      last = at;
    }
  lb_scene_end_pickable (scene, look, pick, index);
}

static void
add_body (LbScene *scene, LbSpot at, LbColour colour, double radius, LbPickKind pick, int index)
{
  double r = radius * scene->style.scale;

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, at.x, at.y, pick == LB_PICK_LURE ? 1.7 * r : r, r);
  lb_scene_end_pickable (
      scene,
      (LbLook){ .fill = colour, .stroke = LB_COLOUR_WIRE, .width = scene->style.outline_width },
      pick, index);
}

void
lb_above_add_rig (LbScene *scene)
{
  const LbStyle *style = &scene->style;

  if (!scene->shape)
    return;
  for (int i = 0; i < (int) scene->shape->n_leaders; i++)
    add_line (scene, LB_PART_LEADER_0 + i,
              (LbLook){ .stroke = LB_COLOUR_LEADER, .width = style->leader_width }, LB_PICK_LEADER,
              i);
  add_line (scene, LB_PART_SHANK,
            (LbLook){ .stroke = LB_COLOUR_SHANK, .width = style->shank_width }, LB_PICK_SHANK, 0);
  add_line (scene, LB_PART_MAINLINE,
            (LbLook){ .stroke = LB_COLOUR_WIRE, .width = style->wire_width }, LB_PICK_MAINLINE, 0);
  for (int i = 0; i < (int) scene->shape->n_leaders; i++)
    add_body (scene, lb_above_project (scene, scene->shape->nodes[scene->shape->lure[i]].position),
              LB_COLOUR_LURE_BACK, 4, LB_PICK_LURE, i);
  add_body (scene, lb_above_project (scene, scene->shape->nodes[scene->shape->weight].position),
            LB_COLOUR_WEIGHT, 6, LB_PICK_WEIGHT, 0);
}
