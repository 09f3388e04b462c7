/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What hangs in the water in the side view: mainline, shank, leaders, weight and lures. */
#include <math.h>

#include "boat.h"
#include "scene_build.h"

#define PI 3.14159265358979323846
#define MOST_NODES 4096

/* ---- Lines ---- */

typedef struct
{
  double x, y;
} Point;

static Point
node_point (const LbScene *scene, size_t node)
{
  LbVec3 at = scene->shape->nodes[node].position;

  return (Point){ lb_view_x (&scene->view, at.x), lb_view_y (&scene->view, at.z) };
}

/* Adds one part of the shape as a line; nodes closer than a third of a unit are passed over. */
static void
add_line (LbScene *scene, int part, LbLook look, LbPickKind pick, int index)
{
  size_t nodes[MOST_NODES];
  size_t n = MIN (lb_shape_line (scene->shape, part, nodes, MOST_NODES), MOST_NODES);
  Point last;

  if (n < 2)
    return;
  last = node_point (scene, nodes[0]);
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (scene, last.x, last.y);
  for (size_t i = 1; i < n; i++)
    {
      Point p = node_point (scene, nodes[i]);

      if (i + 1 < n && hypot (p.x - last.x, p.y - last.y) < 0.33)
        continue;
      lb_scene_line_to (scene, p.x, p.y);
      lb_scene_note_line (scene, last.x, last.y, p.x, p.y);
      last = p;
    }
  lb_scene_end_pickable (scene, look, pick, index);
}

/* ---- The weight ---- */

double
lb_weight_radius (const LbWeight *weight)
{
  return cbrt (3 * weight->mass / weight->density / (4 * PI));
}

/* The radius to draw a weight with: of a ball of the same volume, or the least that can be seen. */
static double
weight_radius (const LbScene *scene)
{
  double per_metre = scene->kind == LB_SCENE_BED_STRIP ? 0 : scene->view.per_metre_x;

  return fmax (lb_weight_radius (&scene->setup.rig.weight) * per_metre,
               scene->style.weight_radius_least);
}

/* The outlines, round the middle (x, y), for a ball of radius r. The proportions are those that
 * the physics takes for each shape. */
static void
trace_weight (LbScene *scene, double x, double y, double r)
{
  double d;

  switch (scene->setup.rig.weight.shape)
    {
    case LB_WEIGHT_PEAR: /* half a ball under a cone as high as it is wide */
      lb_scene_move_to (scene, x, y - 1.35 * r);
      lb_scene_curve_to (scene, x + 0.2 * r, y - 0.9 * r, x + r, y - 0.2 * r, x + r, y + 0.2 * r);
      lb_scene_curve_to (scene, x + r, y + 1.25 * r, x - r, y + 1.25 * r, x - r, y + 0.2 * r);
      lb_scene_curve_to (scene, x - r, y - 0.2 * r, x - 0.2 * r, y - 0.9 * r, x, y - 1.35 * r);
      lb_scene_close (scene);
      break;
    case LB_WEIGHT_TORPEDO: /* a rod four times as long as thick, nose upstream */
      d = cbrt (4.0 / 3) * r;
      lb_scene_move_to (scene, x - 2 * d, y);
      lb_scene_curve_to (scene, x - 1.9 * d, y - 0.5 * d, x - 1.2 * d, y - 0.55 * d, x - 0.6 * d,
                         y - 0.55 * d);
      lb_scene_line_to (scene, x + 0.9 * d, y - 0.45 * d);
      lb_scene_line_to (scene, x + 2 * d, y - 0.7 * d);
      lb_scene_line_to (scene, x + 2 * d, y + 0.7 * d);
      lb_scene_line_to (scene, x + 0.9 * d, y + 0.45 * d);
      lb_scene_line_to (scene, x - 0.6 * d, y + 0.55 * d);
      lb_scene_curve_to (scene, x - 1.2 * d, y + 0.55 * d, x - 1.9 * d, y + 0.5 * d, x - 2 * d, y);
      lb_scene_close (scene);
      break;
    case LB_WEIGHT_DISC: /* a coin with its face to the flow, seen from its edge */
      d = cbrt (32) * r / 2;
      lb_scene_add_box (scene, x - fmax (d / 6, 0.2 * r), y - d, fmax (d / 3, 0.4 * r), 2 * d,
                        0.2 * r);
      break;
    case LB_WEIGHT_BALL:
      lb_scene_add_ellipse (scene, x, y, r, r);
      break;
    }
}

static double
weight_half_height (const LbScene *scene, double r)
{
  switch (scene->setup.rig.weight.shape)
    {
    case LB_WEIGHT_TORPEDO:
      return 0.7 * cbrt (4.0 / 3) * r;
    case LB_WEIGHT_DISC:
      return cbrt (32) * r / 2;
    default:
      return r;
    }
}

static double
weight_half_width (const LbScene *scene, double r)
{
  return scene->setup.rig.weight.shape == LB_WEIGHT_TORPEDO ? 2 * cbrt (4.0 / 3) * r : r;
}

/* A glint, so that it looks round; a disc shows only its edge and has none. */
static void
add_glint (LbScene *scene, double x, double y, double r)
{
  LbLook glint = { .fill = LB_COLOUR_WEIGHT_LIGHT, .opacity = 0.75 };

  if (scene->setup.rig.weight.shape == LB_WEIGHT_DISC)
    return;
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  if (scene->setup.rig.weight.shape == LB_WEIGHT_TORPEDO)
    lb_scene_add_ellipse (scene, x - 0.5 * r, y - 0.22 * r, 0.9 * r, 0.14 * r);
  else
    lb_scene_add_ellipse (scene, x - 0.32 * r, y - 0.30 * r, 0.34 * r, 0.28 * r);
  lb_scene_end (scene, glint);
}

void
lb_scene_add_weight (LbScene *scene, double x, double y, double floor_y)
{
  double r = weight_radius (scene), half = weight_half_height (scene, r);
  double half_width = weight_half_width (scene, r);
  double middle = fmin (y, floor_y - half);
  LbLook body = {
    .fill = LB_COLOUR_WEIGHT,
    .stroke = LB_COLOUR_WIRE,
    .width = scene->style.outline_width,
  };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  trace_weight (scene, x, middle, r);
  lb_scene_end_pickable (scene, body, LB_PICK_WEIGHT, 0);
  add_glint (scene, x, middle, r);
  lb_scene_take (scene, (LbBox){ x - half_width, middle - half, 2 * half_width, 2 * half });
}

/* ---- Lures ---- */

/* A point of the lure: (0, 0) the nose, x downstream, y down, in lengths of the lure. */
typedef struct
{
  LbScene *scene;
  double x, y, length;
} LureFrame;

static void
lure_move (const LureFrame *f, double x, double y)
{
  lb_scene_move_to (f->scene, f->x + x * f->length, f->y + y * f->length);
}

static void
lure_line (const LureFrame *f, double x, double y)
{
  lb_scene_line_to (f->scene, f->x + x * f->length, f->y + y * f->length);
}

static void
lure_curve (const LureFrame *f, double x1, double y1, double x2, double y2, double x3, double y3)
{
  lb_scene_curve_to (f->scene, f->x + x1 * f->length, f->y + y1 * f->length, f->x + x2 * f->length,
                     f->y + y2 * f->length, f->x + x3 * f->length, f->y + y3 * f->length);
}

/* The lip that makes it dive: the longer and the flatter, the deeper. `dive`: down-force by drag.
 */
static void
add_lure_lip (const LureFrame *f, double dive)
{
  double slant = fmax (0.35, fmin (1.31, 1.31 - 2.13 * (dive - 0.25)));
  double reach = fmax (0.10, fmin (0.40, 0.10 + 0.38 * (dive - 0.20)));
  double tip_x = 0.11 - reach * cos (slant), tip_y = 0.03 + reach * sin (slant);
  double side_x = 0.055 * sin (slant), side_y = 0.055 * cos (slant);
  LbLook lip = {
    .fill = LB_COLOUR_CARD,
    .stroke = LB_COLOUR_LURE_LINE,
    .width = 0.8 * f->scene->style.outline_width,
  };

  lb_scene_begin (f->scene, LB_LAYER_FOREGROUND);
  lure_move (f, 0.11 - side_x, 0.03 - side_y);
  lure_line (f, tip_x - 0.8 * side_x, tip_y - 0.8 * side_y);
  lure_curve (f, tip_x - 1.3 * side_x, tip_y + 0.4 * side_y, tip_x - 0.6 * side_x,
              tip_y + 1.4 * side_y, tip_x + 0.8 * side_x, tip_y + 0.8 * side_y);
  lure_line (f, 0.11 + side_x, 0.03 + side_y);
  lb_scene_close (f->scene);
  lb_scene_end (f->scene, lip);
}

/* Two hooks, where the lure is large enough to show them. */
static void
add_lure_hooks (const LureFrame *f)
{
  LbLook hook = { .stroke = LB_COLOUR_LURE_LINE, .width = 0.9 * f->scene->style.outline_width };

  lb_scene_begin (f->scene, LB_LAYER_FOREGROUND);
  for (int i = 0; i < 2; i++)
    {
      double x = i ? 0.80 : 0.45, y = i ? 0.05 : 0.12;

      lure_move (f, x, y);
      lure_line (f, x + 0.02, y + 0.06);
      lure_curve (f, x + 0.03, y + 0.12, x + 0.09, y + 0.11, x + 0.08, y + 0.05);
    }
  lb_scene_end (f->scene, hook);
}

static void
add_lure_body (const LureFrame *f, int index)
{
  LbLook back = { .fill = LB_COLOUR_LURE_BACK };
  LbLook whole = {
    .fill = LB_COLOUR_LURE_BELLY,
    .stroke = LB_COLOUR_LURE_LINE,
    .width = f->scene->style.outline_width,
  };
  LbLook eye = { .fill = LB_COLOUR_LURE_LINE };

  lb_scene_begin (f->scene, LB_LAYER_FOREGROUND);
  lure_move (f, 0, -0.01);
  lure_curve (f, 0.10, -0.15, 0.45, -0.20, 0.84, -0.03);
  lure_line (f, 1.0, -0.12);
  lure_curve (f, 0.96, -0.04, 0.96, 0.04, 1.0, 0.12);
  lure_line (f, 0.84, 0.03);
  lure_curve (f, 0.50, 0.18, 0.15, 0.15, 0, -0.01);
  lb_scene_close (f->scene);
  lb_scene_end_pickable (f->scene, whole, LB_PICK_LURE, index);

  lb_scene_begin (f->scene, LB_LAYER_FOREGROUND);
  lure_move (f, 0.02, -0.015);
  lure_curve (f, 0.12, -0.13, 0.45, -0.175, 0.84, -0.015);
  lure_line (f, 0.98, -0.09);
  lure_curve (f, 0.95, -0.03, 0.95, 0.00, 0.955, 0.01);
  lure_curve (f, 0.60, 0.035, 0.25, 0.035, 0.02, -0.015);
  lb_scene_close (f->scene);
  lb_scene_end_pickable (f->scene, back, LB_PICK_LURE, index);

  lb_scene_begin (f->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (f->scene, f->x + 0.15 * f->length, f->y - 0.03 * f->length,
                        0.035 * f->length, 0.035 * f->length);
  lb_scene_end (f->scene, eye);
}

/* Kept clear of the bed as drawn: a lure shown larger than it is would sink into it. */
void
lb_scene_add_lure (LbScene *scene, int index, double x, double y, double floor_y)
{
  double true_length = scene->setup.rig.leaders[index].lure.length * scene->view.per_metre_x;
  double length = fmax (true_length, scene->style.lure_length_least);
  LureFrame f = { scene, x, fmin (y, floor_y - 0.21 * length), length };

  if (length > 2 * scene->style.lure_length_least)
    add_lure_hooks (&f);
  add_lure_lip (&f, scene->setup.rig.leaders[index].lure.down_force_ratio);
  add_lure_body (&f, index);
  lb_scene_take (scene,
                 (LbBox){ f.x - 0.1 * length, f.y - 0.15 * length, 1.1 * length, 0.37 * length });
}

/* ---- The reel ---- */

static void
add_reel (LbScene *scene)
{
  double s = scene->style.scale;
  double k = fmax (scene->view.per_metre_x, 11 * s);
  double x = lb_view_x (&scene->view, scene->setup.boat.position);
  double water = lb_view_y (&scene->view, 0);
  double start = lb_view_y (&scene->view, scene->setup.boat.reel_height);
  double r = fmax (0.15 * k, 6 * s);
  double y = fmin (water - LB_BOAT_RAIL * k - 0.5 * r, start);
  LbLook bracket = { .stroke = LB_COLOUR_HULL_LINE, .width = 3 * s };
  LbLook wire = { .stroke = LB_COLOUR_WIRE, .width = scene->style.wire_width };
  LbLook drum = {
    .fill = LB_COLOUR_REEL,
    .stroke = LB_COLOUR_HULL_LINE,
    .width = 1.4 * s,
  };
  LbLook hub = { .fill = LB_COLOUR_HULL_LINE };

  lb_scene_line (scene, LB_LAYER_FOREGROUND, x - r, y, x - r, water - 0.40 * k, bracket);
  if (start > y + 0.5)
    lb_scene_line (scene, LB_LAYER_FOREGROUND, x, y, x, start, wire);
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, x - r, y, r, r);
  lb_scene_end_pickable (scene, drum, LB_PICK_REEL, 0);
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, x - r, y, 0.28 * r, 0.28 * r);
  lb_scene_end (scene, hub);
  lb_scene_line (scene, LB_LAYER_FOREGROUND, x - r, y, x - 1.55 * r, y - 0.55 * r,
                 (LbLook){ .stroke = LB_COLOUR_HULL_LINE, .width = 1.6 * s });
  lb_scene_take (scene, (LbBox){ x - 2 * r, y - r, 2 * r, 2 * r });
}

/* ---- All of it ---- */

static void
add_attachments (LbScene *scene)
{
  double r = 2.8 * scene->style.scale;
  LbLook look = {
    .fill = LB_COLOUR_CARD,
    .stroke = LB_COLOUR_LEADER,
    .width = 1.4 * scene->style.scale,
  };

  for (size_t i = 0; i < scene->shape->n_leaders; i++)
    {
      Point p = node_point (scene, scene->shape->attachment[i]);

      lb_scene_begin (scene, LB_LAYER_FOREGROUND);
      lb_scene_add_ellipse (scene, p.x, p.y, r, r);
      lb_scene_end_pickable (scene, look, LB_PICK_ATTACHMENT, (int) i);
    }
}

void
lb_scene_add_rig (LbScene *scene)
{
  const LbStyle *style = &scene->style;
  LbLook wire = { .stroke = LB_COLOUR_WIRE, .width = style->wire_width };
  LbLook shank = { .stroke = LB_COLOUR_SHANK, .width = style->shank_width };
  LbLook leader = { .stroke = LB_COLOUR_LEADER, .width = style->leader_width };

  if (!scene->solved)
    {
      add_reel (scene);
      return;
    }
  for (size_t i = 0; i < scene->shape->n_leaders; i++)
    add_line (scene, LB_PART_LEADER_0 + (int) i, leader, LB_PICK_LEADER, (int) i);
  add_line (scene, LB_PART_SHANK, shank, LB_PICK_SHANK, 0);
  add_line (scene, LB_PART_MAINLINE, wire, LB_PICK_MAINLINE, 0);
  if (scene->run <= 0 && !scene->is_second)
    add_reel (scene);
  add_attachments (scene);
  {
    Point p = node_point (scene, scene->shape->weight);

    lb_scene_add_weight (scene, p.x, p.y, lb_scene_bed_y (scene, p.x));
  }
  for (size_t i = 0; i < scene->shape->n_leaders; i++)
    {
      Point p = node_point (scene, scene->shape->lure[i]);

      lb_scene_add_lure (scene, (int) i, p.x, p.y, lb_scene_bed_y (scene, p.x));
    }
}
