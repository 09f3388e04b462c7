/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scales of the side view: depth on the left, height above the bed on the right, distance
 * behind the reel along the foot. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "axes.h"
#include "boat.h"
#include "phrases.h"

static LbPhrase
tick_words (const LbScene *scene, double value, double step)
{
  LbQuantity length = LB_QUANTITY_LENGTH;
  LbUnits units = scene->picture.units;
  LbPhrase number = lb_phrase_number (&scene->picture, lb_units_from_si (length, units, value),
                                      lb_ticks_decimals (length, units, step));

  return lb_phrase_format ("%s %s", number.text, lb_units_name (length, units));
}

static void
add_depth_scale (LbScene *scene)
{
  double s = scene->style.scale, surface = lb_view_y (&scene->view, 0);
  double bow = lb_view_x (&scene->view, scene->setup.boat.position - LB_BOAT_BOW);
  /* Not where a boat that moves would come. */
  double heading_above = bow > 60 * s && scene->boat_layer == LB_LAYER_BACKGROUND ? 1 : 0;
  double heading_y = surface + (heading_above > 0 ? -3 : 3) * s;
  double bed = lb_scene_bed_y (scene, 2);
  LbTicks ticks = lb_ticks_choose (LB_QUANTITY_LENGTH, scene->picture.units,
                                   scene->view.per_metre_z, 34 * s, 6 * s);
  LbLook tick = { .stroke = LB_COLOUR_TEXT_QUIET, .width = scene->style.grid_width };
  LbLook grid = { .stroke = LB_COLOUR_GRID, .width = scene->style.grid_width };

  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_PLAIN, _ ("Depth"), 6 * s, heading_y, 0,
                     heading_above, LB_COLOUR_TEXT_QUIET, true);
  for (int i = 1; i < 400 && surface + i * ticks.minor * scene->view.per_metre_z < bed - 1; i++)
    {
      double depth = i * ticks.minor, y = lb_view_y (&scene->view, -depth);
      bool is_major = fabs (remainder (depth, ticks.major)) < 1e-6;

      lb_scene_line (scene, LB_LAYER_BACKGROUND, 0, y, (is_major ? 8 : 4) * s, y, tick);
      if (!is_major || y > bed - 9 * s)
        continue;
      if (lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                             tick_words (scene, depth, ticks.major).text, 11 * s, y, 0, 0.5,
                             LB_COLOUR_TEXT_QUIET, true))
        lb_scene_line (scene, LB_LAYER_BACKGROUND, 54 * s, y, scene->width - 56 * s, y, grid);
    }
}

static void
add_height_scale (LbScene *scene)
{
  double s = scene->style.scale, right = scene->width, surface = lb_view_y (&scene->view, 0);
  double bed = lb_scene_bed_y (scene, right - 2);
  LbTicks ticks = lb_ticks_choose (LB_QUANTITY_LENGTH, scene->picture.units,
                                   scene->view.per_metre_z, 34 * s, 6 * s);
  LbLook tick = { .stroke = LB_COLOUR_TEXT_QUIET, .width = scene->style.grid_width };

  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_PLAIN, _ ("Off the bed"), right - 6 * s,
                     surface - 3 * s, 1, 1, LB_COLOUR_TEXT_QUIET, true);
  for (int i = 0; i < 400 && bed - i * ticks.minor * scene->view.per_metre_z > surface + 1; i++)
    {
      double height = i * ticks.minor, y = bed - height * scene->view.per_metre_z;
      bool is_major = fabs (remainder (height, ticks.major)) < 1e-6;

      lb_scene_line (scene, LB_LAYER_BACKGROUND, right - (is_major ? 8 : 4) * s, y, right, y, tick);
      if (is_major)
        lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                           tick_words (scene, height, ticks.major).text, right - 11 * s,
                           i ? y : y - 7 * s, 1, 0.5, LB_COLOUR_TEXT_QUIET, true);
    }
}

/* A ruler of light and dark pieces from the reel to the right edge. */
void
lb_scene_add_ruler_piece (LbScene *scene, double x, double next, bool is_dark)
{
  double s = scene->style.scale;
  LbLook look = {
    .fill = is_dark ? LB_COLOUR_TEXT_ON_BED : LB_COLOUR_CARD,
    .stroke = LB_COLOUR_TEXT_ON_BED,
    .width = 0.8 * s,
  };

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, x, scene->height - 8 * s, next - x, 4 * s, 0);
  lb_scene_end (scene, look);
}

void
lb_scene_add_distance_tick (LbScene *scene, double x, double distance, double step)
{
  double s = scene->style.scale;
  LbLook tick = { .stroke = LB_COLOUR_TEXT_ON_BED, .width = scene->style.grid_width };

  lb_scene_line (scene, LB_LAYER_BACKGROUND, x, scene->height - 11 * s, x, scene->height - 4 * s,
                 tick);
  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     tick_words (scene, distance, step).text, x, scene->height - 11 * s, 0.5, 1,
                     LB_COLOUR_TEXT_ON_BED, true);
}

static LbTicks
distance_ticks (const LbScene *scene)
{
  double s = scene->style.scale;

  return lb_ticks_choose (LB_QUANTITY_LENGTH, scene->picture.units, scene->view.per_metre_x, 60 * s,
                          30 * s);
}

double
lb_scene_distance_step (const LbScene *scene)
{
  return distance_ticks (scene).major;
}

/* Faint upright lines at the steps of the distance scale, in the side view down to the bed. */
void
lb_scene_add_distance_lines (LbScene *scene, double top, double low)
{
  LbLook grid = { .stroke = LB_COLOUR_GRID, .width = scene->style.grid_width };
  double reel = lb_view_x (&scene->view, scene->setup.boat.position);
  double step = distance_ticks (scene).major * scene->view.per_metre_x;

  for (int i = 0; i < 400 && reel + i * step < scene->width; i++)
    {
      double x = reel + i * step;
      double y = scene->kind == LB_SCENE_SIDE_VIEW ? lb_scene_bed_y (scene, x) : low;

      lb_scene_line (scene, LB_LAYER_BACKGROUND, x, top, x, y, grid);
    }
}

static void
add_distance_scale (LbScene *scene)
{
  double s = scene->style.scale, reel = lb_view_x (&scene->view, scene->setup.boat.position);
  LbTicks ticks = distance_ticks (scene);
  double step = ticks.major * scene->view.per_metre_x;

  for (int i = 0; i < 400 && reel + i * step < scene->width; i++)
    {
      lb_scene_add_ruler_piece (scene, reel + i * step,
                                fmin (reel + (i + 1) * step, scene->width + 2), i % 2 == 0);
      lb_scene_add_distance_tick (scene, reel + i * step, i * ticks.major, ticks.major);
    }
  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_PLAIN, _ ("Behind the reel"),
                     reel - 24 * s, scene->height - 4 * s, 1, 1, LB_COLOUR_TEXT_ON_BED, true);
}

/* Nobody must take a stretched drawing for what the rig looks like. */
static void
add_stretch (LbScene *scene)
{
  double s = scene->style.scale, surface = lb_view_y (&scene->view, 0);
  double stretch = lb_view_stretch (&scene->view);
  LbPhrase words;

  if (fabs (stretch - 1) < 1e-9)
    return;
  words = lb_phrase_format (_ ("Heights stretched %s times"),
                            lb_phrase_number (&scene->picture, stretch, 0).text);
  if (!lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_STRONG, words.text,
                          scene->width - 6 * s, surface - 20 * s, 1, 1, LB_COLOUR_ANGLE, true))
    lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_STRONG, words.text,
                       scene->width - 62 * s, surface + 4 * s, 1, 0, LB_COLOUR_ANGLE, true);
}

void
lb_scene_add_upright_scales (LbScene *scene)
{
  add_depth_scale (scene);
  add_height_scale (scene);
  add_stretch (scene);
}

void
lb_scene_add_side_scales (LbScene *scene)
{
  lb_scene_add_upright_scales (scene);
  lb_scene_add_distance_lines (scene, lb_view_y (&scene->view, 0), 0);
  add_distance_scale (scene);
}
