/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The only file that puts paint on a surface. */
#include "scene_build.h"

static LbRgba
rgba (const LbScene *scene, LbColour colour, double opacity)
{
  LbRgba value = scene->style.colours[colour];

  value.a *= opacity;
  return value;
}

static void
set_colour (cairo_t *cr, LbRgba c)
{
  if (c.a >= 1)
    cairo_set_source_rgb (cr, c.r, c.g, c.b);
  else
    cairo_set_source_rgba (cr, c.r, c.g, c.b, c.a);
}

static void
trace (const LbScene *scene, const LbItem *item, cairo_t *cr)
{
  cairo_new_path (cr);
  for (size_t i = item->first_op; i < item->first_op + item->n_ops; i++)
    {
      const LbOp *op = &g_array_index (scene->ops, LbOp, i);

      switch (op->kind)
        {
        case LB_OP_MOVE:
          cairo_move_to (cr, op->x[0], op->y[0]);
          break;
        case LB_OP_LINE:
          cairo_line_to (cr, op->x[0], op->y[0]);
          break;
        case LB_OP_CURVE:
          cairo_curve_to (cr, op->x[0], op->y[0], op->x[1], op->y[1], op->x[2], op->y[2]);
          break;
        case LB_OP_CLOSE:
          cairo_close_path (cr);
          break;
        }
    }
}

static void
fill_from_top_to_bottom (const LbScene *scene, const LbItem *item, cairo_t *cr, double opacity)
{
  LbRgba top = rgba (scene, item->look.fill, opacity);
  LbRgba low = rgba (scene, item->look.fill_low, opacity);
  cairo_pattern_t *pattern =
      cairo_pattern_create_linear (0, item->bounds.y, 0, item->bounds.y + item->bounds.height);

  cairo_pattern_add_color_stop_rgba (pattern, 0, top.r, top.g, top.b, top.a);
  cairo_pattern_add_color_stop_rgba (pattern, 1, low.r, low.g, low.b, low.a);
  cairo_set_source (cr, pattern);
  cairo_pattern_destroy (pattern);
  cairo_fill_preserve (cr);
}

int
lb_pattern_dashes (LbLinePattern pattern,
                   double width,
                   double scale,
                   double dashes[LB_PATTERN_MOST])
{
  const double patterns[][LB_PATTERN_MOST] = {
    [LB_LINE_DASHED] = { 6 * scale, 4 * scale },
    [LB_LINE_DOTTED] = { 0.01, width * 2.2 },
    [LB_LINE_LONG_DASHED] = { 5 * width, 3.4 * width },
    [LB_LINE_SPOTTED] = { 0.01, width * 2.4 },
    [LB_LINE_DASH_DOTTED] = { 4.5 * width, 2.8 * width, 0.01, 2.8 * width },
  };

  if (pattern == LB_LINE_SOLID)
    return 0;
  for (int i = 0; i < LB_PATTERN_MOST; i++)
    dashes[i] = patterns[pattern][i];
  return dashes[2] > 0 ? 4 : 2;
}

static void
set_pattern (cairo_t *cr, const LbLook *look, double scale)
{
  double dashes[LB_PATTERN_MOST];

  cairo_set_dash (cr, dashes, lb_pattern_dashes (look->pattern, look->width, scale, dashes), 0);
}

static void
paint_path (const LbScene *scene, const LbItem *item, cairo_t *cr)
{
  const LbLook *look = &item->look;
  double opacity = look->opacity > 0 ? look->opacity : 1;

  trace (scene, item, cr);
  if (look->fill && look->fill_low)
    fill_from_top_to_bottom (scene, item, cr, opacity);
  else if (look->fill)
    {
      set_colour (cr, rgba (scene, look->fill, opacity));
      cairo_fill_preserve (cr);
    }
  if (look->stroke && look->width > 0)
    {
      set_colour (cr, rgba (scene, look->stroke, opacity));
      cairo_set_line_width (cr, look->width);
      set_pattern (cr, look, scene->style.scale);
      cairo_stroke (cr);
    }
  cairo_new_path (cr);
}

static void
paint_item (const LbScene *scene, const LbItem *item, cairo_t *cr)
{
  if (item->n_ops > 0)
    {
      paint_path (scene, item, cr);
      return;
    }
  set_colour (cr, rgba (scene, item->text_colour, 1));
  cairo_move_to (cr, item->text_x, item->text_y);
  pango_cairo_show_layout (cr, item->layout);
  cairo_new_path (cr);
}

static void
paint_items (const LbScene *scene, cairo_t *cr, LbLayer layers, const LbBox *within)
{
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->layer & layers && (!within || lb_box_overlaps (item->bounds, *within)))
        paint_item (scene, item, cr);
    }
}

void
lb_scene_paint (const LbScene *scene, cairo_t *cr, LbLayer layers)
{
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, scene->width, scene->height);
  cairo_clip (cr);
  for (int layer = LB_LAYER_BACKGROUND; layer <= LB_LAYER_FOREGROUND; layer++)
    if (layers & layer)
      paint_items (scene, cr, (LbLayer) layer, NULL);
  cairo_restore (cr);
}

void
lb_scene_paint_tile (const LbScene *scene, cairo_t *cr, size_t tile)
{
  LbBox bounds = lb_scene_tile_bounds (scene, tile);

  cairo_save (cr);
  cairo_rectangle (cr, bounds.x, bounds.y, bounds.width, bounds.height);
  cairo_clip (cr);
  paint_items (scene, cr, LB_LAYER_FOREGROUND, &bounds);
  cairo_restore (cr);
}
