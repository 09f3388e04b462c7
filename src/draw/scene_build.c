/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scene_build.h"

#include <math.h>
#include <string.h>

#include "keys.h"

/* Of a quarter circle as a Bezier curve. */
#define KAPPA 0.5522847498

/* ---- Paths ---- */

void
lb_scene_begin (LbScene *scene, LbLayer layer)
{
  memset (&scene->open, 0, sizeof scene->open);
  scene->open.layer = layer;
  scene->open.run = scene->run;
  scene->open.first_op = scene->ops->len;
}

static void
add_op (LbScene *scene, LbOp op)
{
  g_array_append_val (scene->ops, op);
}

void
lb_scene_move_to (LbScene *scene, double x, double y)
{
  add_op (scene, (LbOp){ LB_OP_MOVE, { x }, { y } });
}

void
lb_scene_line_to (LbScene *scene, double x, double y)
{
  add_op (scene, (LbOp){ LB_OP_LINE, { x }, { y } });
}

void
lb_scene_curve_to (LbScene *scene, double x1, double y1, double x2, double y2, double x3, double y3)
{
  add_op (scene, (LbOp){ LB_OP_CURVE, { x1, x2, x3 }, { y1, y2, y3 } });
}

void
lb_scene_close (LbScene *scene)
{
  add_op (scene, (LbOp){ LB_OP_CLOSE });
}

/* The box round all points of a path, control points of curves included. */
static LbBox
path_bounds (const LbScene *scene, size_t first, size_t n)
{
  double x0 = INFINITY, y0 = INFINITY, x1 = -INFINITY, y1 = -INFINITY;

  for (size_t i = first; i < first + n; i++)
    {
      const LbOp *op = &g_array_index (scene->ops, LbOp, i);
      int points = op->kind == LB_OP_CLOSE ? 0 : op->kind == LB_OP_CURVE ? 3 : 1;

      for (int k = 0; k < points; k++)
        {
          x0 = fmin (x0, op->x[k]);
          x1 = fmax (x1, op->x[k]);
          y0 = fmin (y0, op->y[k]);
          y1 = fmax (y1, op->y[k]);
        }
    }
  return (LbBox){ x0, y0, x1 - x0, y1 - y0 };
}

static guint64
path_key (const LbScene *scene, const LbItem *item)
{
  guint64 key = 1;

  for (size_t i = item->first_op; i < item->first_op + item->n_ops; i++)
    {
      const LbOp *op = &g_array_index (scene->ops, LbOp, i);
      int points = op->kind == LB_OP_CLOSE ? 0 : op->kind == LB_OP_CURVE ? 3 : 1;

      key = lb_key_mix (key, op->kind);
      for (int k = 0; k < points; k++)
        key = lb_key_mix_number (lb_key_mix_number (key, op->x[k]), op->y[k]);
    }
  return lb_key_mix_look (key, &item->look);
}

void
lb_scene_end_pickable (LbScene *scene, LbLook look, LbPickKind pick, int index)
{
  LbItem *item = &scene->open;

  item->n_ops = scene->ops->len - item->first_op;
  if (item->n_ops == 0)
    return;
  item->look = look = lb_overlay_look (scene, look);
  item->pick = pick;
  item->index = index;
  item->bounds = lb_box_grown (path_bounds (scene, item->first_op, item->n_ops),
                               look.stroke ? look.width / 2 + 1 : 1);
  item->key = path_key (scene, item);
  g_array_append_vals (scene->items, item, 1);
}

void
lb_scene_end (LbScene *scene, LbLook look)
{
  lb_scene_end_pickable (scene, look, LB_PICK_NOTHING, 0);
}

void
lb_scene_line (
    LbScene *scene, LbLayer layer, double x1, double y1, double x2, double y2, LbLook look)
{
  lb_scene_begin (scene, layer);
  lb_scene_move_to (scene, x1, y1);
  lb_scene_line_to (scene, x2, y2);
  lb_scene_end (scene, look);
}

/* ---- Figures ---- */

void
lb_scene_add_box (LbScene *scene, double x, double y, double width, double height, double radius)
{
  double r = fmin (radius, fmin (width, height) / 2), k = r * (1 - KAPPA);
  double right = x + width, low = y + height;

  lb_scene_move_to (scene, x + r, y);
  lb_scene_line_to (scene, right - r, y);
  if (r > 0)
    lb_scene_curve_to (scene, right - k, y, right, y + k, right, y + r);
  lb_scene_line_to (scene, right, low - r);
  if (r > 0)
    lb_scene_curve_to (scene, right, low - k, right - k, low, right - r, low);
  lb_scene_line_to (scene, x + r, low);
  if (r > 0)
    lb_scene_curve_to (scene, x + k, low, x, low - k, x, low - r);
  lb_scene_line_to (scene, x, y + r);
  if (r > 0)
    lb_scene_curve_to (scene, x, y + k, x + k, y, x + r, y);
  lb_scene_close (scene);
}

void
lb_scene_add_ellipse (LbScene *scene, double x, double y, double rx, double ry)
{
  double kx = rx * KAPPA, ky = ry * KAPPA;

  lb_scene_move_to (scene, x + rx, y);
  lb_scene_curve_to (scene, x + rx, y + ky, x + kx, y + ry, x, y + ry);
  lb_scene_curve_to (scene, x - kx, y + ry, x - rx, y + ky, x - rx, y);
  lb_scene_curve_to (scene, x - rx, y - ky, x - kx, y - ry, x, y - ry);
  lb_scene_curve_to (scene, x + kx, y - ry, x + rx, y - ky, x + rx, y);
  lb_scene_close (scene);
}

/* Angles in radians, clockwise on the screen from the right; less than half a turn. */
void
lb_scene_add_arc (LbScene *scene, double x, double y, double radius, double from, double to)
{
  double k = 4.0 / 3 * tan ((to - from) / 4) * radius;
  double c0 = cos (from), s0 = sin (from), c1 = cos (to), s1 = sin (to);

  lb_scene_move_to (scene, x + radius * c0, y + radius * s0);
  lb_scene_curve_to (scene, x + radius * c0 - k * s0, y + radius * s0 + k * c0,
                     x + radius * c1 + k * s1, y + radius * s1 - k * c1, x + radius * c1,
                     y + radius * s1);
}

/* A head with its tip at (x, y), pointing along `angle`. */
void
lb_scene_add_arrow_head (LbScene *scene, double x, double y, double angle, double size)
{
  double c = cos (angle), s = sin (angle), half = 0.42 * size;

  lb_scene_move_to (scene, x, y);
  lb_scene_line_to (scene, x - size * c - half * s, y - size * s + half * c);
  lb_scene_line_to (scene, x - 0.75 * size * c, y - 0.75 * size * s);
  lb_scene_line_to (scene, x - size * c + half * s, y - size * s - half * c);
  lb_scene_close (scene);
}

/* ---- Text ---- */

LbText
lb_scene_text (LbScene *scene, LbFont font, const char *text)
{
  return lb_draw_context_text (scene->context, &scene->style, font, text, 0);
}

void
lb_scene_take (LbScene *scene, LbBox box)
{
  g_array_append_val (scene->texts, box);
}

void
lb_scene_put_text (LbScene *scene, LbLayer layer, LbText text, double x, double y, LbColour colour)
{
  LbItem item = {
    .layer = layer,
    .layout = g_object_ref (text.layout),
    .text_x = x,
    .text_y = y,
    .text_colour = colour,
    .run = scene->run,
    .bounds = { x - 2, y - 1, text.width + 4, text.height + 2 },
  };
  LbBox taken = { x, y, text.width, text.height };

  item.key = lb_key_mix_number (
      lb_key_mix_number (lb_key_mix (g_str_hash (pango_layout_get_text (text.layout)), colour),
                         x + 3 * text.width),
      y + 3 * text.height);
  g_array_append_val (scene->items, item);
  g_array_append_val (scene->texts, taken);
}

bool
lb_scene_is_free (const LbScene *scene, LbBox box, double gap)
{
  LbBox grown = lb_box_grown (box, gap);

  if (box.x < 1 || box.y < 1 || box.x + box.width > scene->width - 1
      || box.y + box.height > scene->height - 1)
    return false;
  for (guint i = 0; i < scene->texts->len; i++)
    if (lb_box_overlaps (grown, g_array_index (scene->texts, LbBox, i)))
      return false;
  return true;
}

bool
lb_scene_try_text (LbScene *scene,
                   LbLayer layer,
                   LbFont font,
                   const char *text,
                   double x,
                   double y,
                   double align_x,
                   double align_y,
                   LbColour colour,
                   bool is_scale)
{
  LbText shaped = lb_scene_text (scene, font, text);
  double left = x - align_x * shaped.width, top = y - align_y * shaped.height;

  if (!lb_scene_is_free (scene, (LbBox){ left, top, shaped.width, shaped.height },
                         (is_scale ? 0.5 : 2) * scene->style.scale))
    return false;
  lb_scene_put_text (scene, layer, shaped, left, top, colour);
  return true;
}

void
lb_scene_note_line (LbScene *scene, double x1, double y1, double x2, double y2)
{
  double step = 24 * scene->style.scale;
  int pieces = 1 + (int) fmin (200, hypot (x2 - x1, y2 - y1) / step);

  for (int i = 0; i < pieces; i++)
    {
      double xa = x1 + (x2 - x1) * i / pieces, xb = x1 + (x2 - x1) * (i + 1) / pieces;
      double ya = y1 + (y2 - y1) * i / pieces, yb = y1 + (y2 - y1) * (i + 1) / pieces;
      LbBox box = { fmin (xa, xb), fmin (ya, yb), fabs (xb - xa), fabs (yb - ya) };

      g_array_append_val (scene->lines, box);
    }
}
