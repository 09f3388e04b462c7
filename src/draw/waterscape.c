/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sky, water and bed of the side view. */
#include <math.h>

#include "scene_build.h"

double
lb_scene_bed_y (const LbScene *scene, double px)
{
  double x = lb_view_world_x (&scene->view, px);

  return lb_view_y (&scene->view, -lb_bed_at (&scene->current.bed, x).depth);
}

static void
add_sky (LbScene *scene, double surface)
{
  LbLook look = { .fill = LB_COLOUR_SKY_TOP, .fill_low = LB_COLOUR_SKY_LOW };

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, 0, scene->width, surface + 1, 0);
  lb_scene_end (scene, look);
}

static void
add_water (LbScene *scene, double surface, double deepest)
{
  LbLook look = { .fill = LB_COLOUR_WATER_TOP, .fill_low = LB_COLOUR_WATER_LOW };

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, surface, scene->width, deepest - surface + 2, 0);
  lb_scene_end (scene, look);
}

/* The wanted band along the bed, faintly; the strip below shows it large. */
static void
add_band (LbScene *scene)
{
  double low = fmax (0, scene->setup.band.low) * scene->view.per_metre_z;
  double high = fmin (scene->setup.band.high, scene->setup.river.depth) * scene->view.per_metre_z;
  double step = scene->current.bed.n < 2 ? scene->width : fmax (4, scene->width / 200);
  LbLook tint = { .fill = LB_COLOUR_BAND, .opacity = 0.55 };

  if (high <= low)
    return;
  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_move_to (scene, 0, lb_scene_bed_y (scene, 0) - high);
  for (double x = step; x < scene->width + step; x += step)
    lb_scene_line_to (scene, x, lb_scene_bed_y (scene, x) - high);
  for (double x = scene->width; x > -step; x -= step)
    lb_scene_line_to (scene, x, lb_scene_bed_y (scene, x) - low);
  lb_scene_close (scene);
  lb_scene_end (scene, tint);
}

/* Goes along the bed from the left edge to the right; a plane bed is one straight line. */
static void
trace_bed (LbScene *scene)
{
  bool plane = scene->current.bed.n < 2;
  double step = plane ? scene->width : fmax (3, scene->width / 400);

  lb_scene_move_to (scene, -2, lb_scene_bed_y (scene, -2));
  for (double x = 0; x < scene->width; x += step)
    lb_scene_line_to (scene, x, lb_scene_bed_y (scene, x));
  lb_scene_line_to (scene, scene->width + 2, lb_scene_bed_y (scene, scene->width + 2));
}

static void
add_bed (LbScene *scene)
{
  LbLook earth = { .fill = LB_COLOUR_BED_TOP, .fill_low = LB_COLOUR_BED_LOW };
  LbLook line = { .stroke = LB_COLOUR_BED_LINE, .width = 2 * scene->style.scale };

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  trace_bed (scene);
  lb_scene_line_to (scene, scene->width + 2, fmax (scene->height + 2, scene->view.height));
  lb_scene_line_to (scene, -2, fmax (scene->height + 2, scene->view.height));
  lb_scene_close (scene);
  lb_scene_end_pickable (scene, earth, LB_PICK_BED, 0);

  lb_scene_add_pebbles (scene, scene->height - 30 * scene->style.scale);
  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  trace_bed (scene);
  lb_scene_end_pickable (scene, line, LB_PICK_BED, 0);
  for (int i = 0; i < 40; i++)
    {
      double x = scene->width * i / 40, next = scene->width * (i + 1) / 40;

      lb_scene_note_line (scene, x, lb_scene_bed_y (scene, x), next, lb_scene_bed_y (scene, next));
    }
}

/* A number from 0 to 1 that belongs to a place, always the same. */
static double
chance (int column, int row, int which)
{
  guint h = (guint) column * 374761393u + (guint) row * 668265263u + (guint) which * 2246822519u;

  h = (h ^ (h >> 13)) * 1274126177u;
  return ((h ^ (h >> 16)) & 0xffff) / 65536.0;
}

/* One stone in a cell of the texture, if the cell has one; smaller and rarer further down. */
static void
add_pebble (LbScene *scene, int column, int row, double lowest)
{
  double s = scene->style.scale, cell = 17 * s;
  double x = (column + 0.15 + 0.7 * chance (column, row, 0)) * cell;
  double rx = (2.2 + 4.2 * chance (column, row, 1) * chance (column, row, 4)) * s * (row ? 1 : 1.3);
  double ry = rx * (0.5 + 0.25 * chance (column, row, 2));
  double y =
      lb_scene_bed_y (scene, x) + ry + 2.5 * s + (row + 0.6 * chance (column, row, 3)) * cell * 0.8;
  bool is_light = chance (column, row, 5) > 0.62;
  LbLook look = { .fill = is_light ? LB_COLOUR_PEBBLE_LIGHT : LB_COLOUR_PEBBLE };

  if (y + ry > lowest || chance (column, row, 6) < fmin (0.86, 0.18 + 0.15 * row))
    return;
  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_ellipse (scene, x, y, rx, ry);
  lb_scene_end (scene, look);
}

void
lb_scene_add_pebbles (LbScene *scene, double lowest)
{
  double cell = 17 * scene->style.scale;
  int columns = (int) fmin (400, scene->width / cell + 1);

  for (int column = 0; column < columns; column++)
    for (int row = 0; row < 9; row++)
      add_pebble (scene, column, row, lowest);
}

void
lb_scene_add_water (LbScene *scene)
{
  double surface = lb_view_y (&scene->view, 0);
  double deepest = surface;

  for (int i = 0; i <= 48; i++)
    deepest = fmax (deepest, lb_scene_bed_y (scene, scene->width * i / 48));
  add_sky (scene, surface);
  add_water (scene, surface, fmin (deepest, scene->height));
  add_band (scene);
  add_bed (scene);
  lb_scene_add_bed_points (scene);
}
