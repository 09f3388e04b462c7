/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a pointer is on, from the geometry that is painted. */
#include "flatten.h"

#include <math.h>

typedef struct
{
  double x, y;
  double nearest; /* distance to the outline, drawing units */
  int crossings;  /* of a ray to the right with the outline */
} Probe;

static void
probe_piece_cb (double x1, double y1, double x2, double y2, void *data)
{
  Probe *probe = data;
  double dx = x2 - x1, dy = y2 - y1, length2 = dx * dx + dy * dy;
  double t = length2 > 0 ? ((probe->x - x1) * dx + (probe->y - y1) * dy) / length2 : 0;

  t = fmax (0, fmin (1, t));
  probe->nearest = fmin (probe->nearest, hypot (probe->x - x1 - t * dx, probe->y - y1 - t * dy));
  if ((y1 > probe->y) != (y2 > probe->y) && probe->x < x1 + (probe->y - y1) / (y2 - y1) * (x2 - x1))
    probe->crossings++;
}

static double
distance_to (const LbScene *scene, const LbItem *item, double x, double y)
{
  Probe probe = { x, y, INFINITY, 0 };

  lb_item_flatten (scene, item, probe_piece_cb, &probe);
  if (item->look.fill && probe.crossings % 2)
    return 0;
  return fmax (0, probe.nearest - item->look.width / 2);
}

/* Small things that lie on larger ones come first when both are within reach. */
static int
rank (LbPickKind kind)
{
  switch (kind)
    {
    case LB_PICK_LURE:
    case LB_PICK_WEIGHT:
    case LB_PICK_REEL:
      return 4;
    case LB_PICK_ATTACHMENT:
      return 3;
    case LB_PICK_MAINLINE:
    case LB_PICK_SHANK:
    case LB_PICK_LEADER:
    case LB_PICK_BED_POINT: /* the nearer one where a line runs close over the bed */
      return 2;
    case LB_PICK_BOAT:
    case LB_PICK_CURRENT:
    case LB_PICK_BAND_LOW:
    case LB_PICK_BAND_HIGH:
      return 1;
    case LB_PICK_SURFACE:
    case LB_PICK_BED:
    case LB_PICK_NOTHING:
      break;
    }
  return 0;
}

static bool
is_better (const LbItem *item, double distance, const LbPick *than)
{
  if (than->kind == LB_PICK_NOTHING || rank (item->pick) > rank (than->kind))
    return true;
  return rank (item->pick) == rank (than->kind) && distance <= than->distance;
}

LbPick
lb_scene_pick (const LbScene *scene, double x, double y, double tolerance)
{
  LbPick pick = { .kind = LB_PICK_NOTHING, .run = -1, .x = lb_view_world_x (&scene->view, x) };

  if (scene->kind != LB_SCENE_BED_STRIP)
    pick.z = lb_view_world_z (&scene->view, y);
  else
    pick.z = (scene->strip_floor - y) / (scene->strip_floor - scene->strip_top) * scene->strip_high;

  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);
      LbBox reach = lb_box_grown (item->bounds, tolerance);
      double distance;

      if (item->pick == LB_PICK_NOTHING || item->n_ops == 0
          || !lb_box_overlaps (reach, (LbBox){ x, y, 1e-9, 1e-9 }))
        continue;
      distance = distance_to (scene, item, x, y);
      if (distance <= tolerance && is_better (item, distance, &pick))
        {
          pick.kind = item->pick;
          pick.index = item->index;
          pick.run = item->run;
          pick.distance = distance;
        }
    }
  return pick;
}
