/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ground of the bed strip: the lowest metre (3 ft) of water, its bed drawn level, heights
 * stretched; the wanted band; the scales. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "axes.h"
#include "phrases.h"

#define HIGH_US 0.9144 /* m: 3 ft */
#define HIGH_METRIC 1.0

/* ---- Water, band, scales ---- */

static void
add_band (LbScene *scene)
{
  double s = scene->style.scale;
  double high = fmin (scene->setup.band.high, scene->strip_high);
  double low = fmin (fmax (0, scene->setup.band.low), high);
  double y_high = lb_scene_strip_y (scene, high), y_low = lb_scene_strip_y (scene, low);
  LbLook tint = { .fill = LB_COLOUR_BAND };
  LbLook edge = {
    .stroke = LB_COLOUR_BAND_EDGE,
    .width = 1.4 * s,
    .pattern = LB_LINE_DASHED,
  };

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, y_high, scene->width, y_low - y_high, 0);
  lb_scene_end (scene, tint);
  for (int i = 0; i < 2; i++)
    {
      double y = i ? y_high : y_low;

      lb_scene_begin (scene, LB_LAYER_BACKGROUND);
      lb_scene_move_to (scene, 52 * s, y);
      lb_scene_line_to (scene, scene->width - 52 * s, y);
      lb_scene_end_pickable (scene, edge, i ? LB_PICK_BAND_HIGH : LB_PICK_BAND_LOW, 0);
    }
}

void
lb_scene_add_strip_water (LbScene *scene)
{
  double s = scene->style.scale, floor_room = fmin (26 * s, 0.3 * scene->height);
  LbLook water = { .fill = LB_COLOUR_WATER_TOP, .fill_low = LB_COLOUR_WATER_LOW };
  LbLook earth = { .fill = LB_COLOUR_BED_TOP, .fill_low = LB_COLOUR_BED_LOW };
  LbLook line = { .stroke = LB_COLOUR_BED_LINE, .width = 2 * s };
  LbLook top = { .stroke = LB_COLOUR_SURFACE, .width = 1 * s, .opacity = 0.6 };

  scene->strip_floor = scene->height - floor_room;
  scene->strip_top = fmin (11 * s, 0.12 * scene->height);
  scene->strip_high = scene->picture.units == LB_UNITS_US ? HIGH_US : HIGH_METRIC;

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, 0, scene->width, scene->strip_floor + 1, 0);
  lb_scene_end (scene, water);
  add_band (scene);
  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, scene->strip_floor, scene->width, floor_room + 2, 0);
  lb_scene_end_pickable (scene, earth, LB_PICK_BED, 0);
  lb_scene_line (scene, LB_LAYER_BACKGROUND, 0, scene->strip_floor, scene->width,
                 scene->strip_floor, line);
  lb_scene_note_line (scene, 0, scene->strip_floor, scene->width, scene->strip_floor);
  lb_scene_line (scene, LB_LAYER_BACKGROUND, 0, 0.5, scene->width, 0.5, top);
}

static void
add_height_tick (LbScene *scene, double height, LbTicks ticks)
{
  double s = scene->style.scale, y = lb_scene_strip_y (scene, height);
  LbQuantity quantity = LB_QUANTITY_HEIGHT;
  LbUnits units = scene->picture.units;
  bool is_major = fabs (remainder (height, ticks.major)) < 1e-6;
  LbLook tick = { .stroke = LB_COLOUR_TEXT_QUIET, .width = scene->style.grid_width };
  LbLook grid = { .stroke = LB_COLOUR_GRID, .width = scene->style.grid_width };
  LbPhrase number =
      lb_phrase_number (&scene->picture, lb_units_from_si (quantity, units, height), 0);
  LbPhrase words = lb_phrase_format ("%s %s", number.text, lb_units_name (quantity, units));

  for (int side = 0; side < 2; side++)
    {
      double edge = side ? scene->width : 0, inward = side ? -1 : 1;

      lb_scene_line (scene, LB_LAYER_BACKGROUND, edge, y, edge + inward * (is_major ? 8 : 4) * s, y,
                     tick);
      if (is_major)
        lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE, words.text,
                           edge + inward * 11 * s, height > 0 ? y : y - 7 * s, side, 0.5,
                           LB_COLOUR_TEXT_QUIET, true);
    }
  if (is_major && height > 0)
    lb_scene_line (scene, LB_LAYER_BACKGROUND, 52 * s, y, scene->width - 52 * s, y, grid);
}

/* Where the rig begins, which hangs from the boat downstream. */
static double
rig_left (const LbScene *scene)
{
  double left = scene->width;

  for (size_t i = 0; scene->solved && i < scene->shape->n_nodes; i++)
    if (scene->shape->nodes[i].part != LB_PART_MAINLINE || i == scene->shape->weight)
      left = fmin (left, lb_view_x (&scene->view, scene->shape->nodes[i].position.x));
  return left - 12 * scene->style.scale;
}

/* Left of the rig, in shorter words where there is little room. */
static void
add_band_name (LbScene *scene)
{
  double s = scene->style.scale, x = 58 * s;
  LbPhrase low = lb_phrase_height_value (&scene->picture, scene->setup.band.low);
  LbPhrase high = lb_phrase_height_value (&scene->picture, scene->setup.band.high);
  const LbPhrase words[] = { lb_phrase_format (_ ("Wanted band, %s to %s"), low.text, high.text),
                             lb_phrase_format (_ ("Band, %s to %s"), low.text, high.text),
                             lb_phrase_format ("%s", _ ("Wanted band")) };
  double y_low = lb_scene_strip_y (scene, scene->setup.band.low);
  double y_high = lb_scene_strip_y (scene, fmin (scene->setup.band.high, scene->strip_high));
  double room = rig_left (scene) - x;

  if (scene->setup.band.low >= scene->strip_high)
    return;
  for (size_t i = 0; i < G_N_ELEMENTS (words); i++)
    {
      if (lb_scene_text (scene, LB_FONT_STRONG, words[i].text).width > room)
        continue;
      if (lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_STRONG, words[i].text, x,
                             (y_low + y_high) / 2, 0, 0.5, LB_COLOUR_TEXT, true)
          || lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_STRONG, words[i].text, x,
                                y_high - 2 * s, 0, 1, LB_COLOUR_TEXT, true))
        return;
    }
}

static void
add_heading (LbScene *scene)
{
  double s = scene->style.scale;
  double y = (scene->strip_floor + scene->height) / 2 + s;
  bool us = scene->picture.units == LB_UNITS_US;
  const char *plane = us ? _ ("The lowest 3 ft of water, stretched upward")
                         : _ ("The lowest metre of water, stretched upward");
  const char *uneven =
      us ? _ ("The lowest 3 ft of water, stretched upward; the uneven bed is drawn level")
         : _ ("The lowest metre of water, stretched upward; the uneven bed is drawn level");

  if (scene->current.bed.n < 2
      || !lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_PLAIN, uneven, 11 * s, y, 0, 0.5,
                             LB_COLOUR_TEXT_ON_BED, true))
    lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_PLAIN, plane, 11 * s, y, 0, 0.5,
                       LB_COLOUR_TEXT_ON_BED, true);
}

void
lb_scene_add_strip_scales (LbScene *scene)
{
  double s = scene->style.scale;
  double per_metre = (scene->strip_floor - scene->strip_top) / scene->strip_high;
  LbTicks ticks =
      lb_ticks_choose (LB_QUANTITY_HEIGHT, scene->picture.units, per_metre, 15 * s, 2.6 * s);

  lb_scene_add_distance_lines (scene, 0, scene->strip_floor);
  /* From the top, so that of two numbers too close the bed's own 0 gives way. */
  for (int i = (int) floor (scene->strip_high / ticks.minor + 1e-6); i >= 0; i--)
    add_height_tick (scene, i * ticks.minor, ticks);
  add_heading (scene);
  add_band_name (scene);
}
