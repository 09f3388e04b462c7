/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The bed strip: the lowest metre (3 ft) of water, its bed drawn level, heights stretched. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "axes.h"
#include "labels.h"

#define MOST_NODES 4096
#define MOST_NAMED 3   /* lures with long words */
#define HIGH_US 0.9144 /* m: 3 ft */
#define HIGH_METRIC 1.0

enum
{
  MEMORY_WEIGHT = 32,
  MEMORY_LURES,
};

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
                           edge + inward * 11 * s, height > 0 ? y : y - 5 * s, side, 0.5,
                           LB_COLOUR_TEXT_QUIET, true);
    }
  if (is_major && height > 0)
    lb_scene_line (scene, LB_LAYER_BACKGROUND, 52 * s, y, scene->width - 52 * s, y, grid);
}

static void
add_band_name (LbScene *scene)
{
  double s = scene->style.scale, x = 58 * s;
  LbPhrase low = lb_phrase_height_value (&scene->picture, scene->setup.band.low);
  LbPhrase high = lb_phrase_height_value (&scene->picture, scene->setup.band.high);
  LbPhrase words = lb_phrase_format (_ ("Wanted band, %s to %s"), low.text, high.text);
  double y_low = lb_scene_strip_y (scene, scene->setup.band.low);
  double y_high = lb_scene_strip_y (scene, fmin (scene->setup.band.high, scene->strip_high));

  if (scene->setup.band.low >= scene->strip_high)
    return;
  if (!lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_STRONG, words.text, x,
                          (y_low + y_high) / 2, 0, 0.5, LB_COLOUR_TEXT, true))
    lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_STRONG, words.text, x, y_high - 2 * s, 0,
                       1, LB_COLOUR_TEXT, true);
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
  for (int i = 0; i < 200 && i * ticks.minor < scene->strip_high + 1e-6; i++)
    add_height_tick (scene, i * ticks.minor, ticks);
  add_heading (scene);
  add_band_name (scene);
}

/* ---- The rig ---- */

typedef struct
{
  double x, y; /* drawing units */
  bool is_in;  /* not above the strip */
} StripPoint;

static StripPoint
strip_point (const LbScene *scene, LbVec3 at)
{
  double height = at.z + lb_bed_at (&scene->current.bed, at.x).depth;

  return (StripPoint){ lb_view_x (&scene->view, at.x), lb_scene_strip_y (scene, height),
                       height <= scene->strip_high };
}

/* The point of a segment where it leaves through the strip's top. */
static StripPoint
at_top (const LbScene *scene, StripPoint a, StripPoint b)
{
  double t = a.y == b.y ? 0 : (scene->strip_top - a.y) / (b.y - a.y);

  return (StripPoint){ a.x + t * (b.x - a.x), scene->strip_top, true };
}

static void
add_line (LbScene *scene, int part, LbLook look, LbPickKind pick, int index)
{
  size_t nodes[MOST_NODES];
  size_t n = MIN (lb_shape_line (scene->shape, part, nodes, MOST_NODES), MOST_NODES);
  bool is_down = false; /* the pen */

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  for (size_t i = 1; i < n; i++)
    {
      StripPoint a = strip_point (scene, scene->shape->nodes[nodes[i - 1]].position);
      StripPoint b = strip_point (scene, scene->shape->nodes[nodes[i]].position);

      if (!a.is_in && !b.is_in)
        {
          is_down = false;
          continue;
        }
      if (!a.is_in)
        a = at_top (scene, a, b);
      if (!is_down || !b.is_in)
        lb_scene_move_to (scene, a.x, a.y);
      if (!b.is_in)
        b = at_top (scene, a, b);
      lb_scene_line_to (scene, b.x, b.y);
      lb_scene_note_line (scene, a.x, a.y, b.x, b.y);
      is_down = true;
    }
  lb_scene_end_pickable (scene, look, pick, index);
}

/* ---- Markers ---- */

static LbColour
state_colour (LbBandState state)
{
  switch (state)
    {
    case LB_BAND_INSIDE:
      return LB_COLOUR_INSIDE;
    case LB_BAND_ABOVE:
      return LB_COLOUR_ABOVE;
    case LB_BAND_BELOW:
      return LB_COLOUR_BELOW;
    case LB_BAND_ON_BED:
      break;
    }
  return LB_COLOUR_ON_BED;
}

/* Round: in the band. Points up: above it. Points down: below it. Square: on the bed. */
static void
trace_marker (LbScene *scene, LbBandState state, double x, double y, double r)
{
  double k = 1.25 * r;

  switch (state)
    {
    case LB_BAND_INSIDE:
      lb_scene_add_ellipse (scene, x, y, r, r);
      break;
    case LB_BAND_ABOVE:
    case LB_BAND_BELOW:
      {
        double up = state == LB_BAND_ABOVE ? 1 : -1;

        lb_scene_move_to (scene, x, y - up * 1.45 * k);
        lb_scene_line_to (scene, x + 1.2 * k, y + up * 0.72 * k);
        lb_scene_line_to (scene, x - 1.2 * k, y + up * 0.72 * k);
        lb_scene_close (scene);
        break;
      }
    case LB_BAND_ON_BED:
      lb_scene_add_box (scene, x - 0.95 * r, y - 0.95 * r, 1.9 * r, 1.9 * r, 0.12 * r);
      break;
    }
}

/* A marker with a sign in it; returns where its label belongs. */
static StripPoint
add_marker (LbScene *scene,
            const LbPointReading *at,
            LbBandState state,
            const char *sign,
            LbPickKind pick,
            int index)
{
  double s = scene->style.scale, r = fmin (9 * s, 0.14 * scene->height);
  StripPoint p = { lb_view_x (&scene->view, at->position.x), 0, true };
  double y = lb_scene_strip_y (scene, fmin (at->height, scene->strip_high));
  LbLook look = {
    .fill = state_colour (state),
    .stroke = LB_COLOUR_CARD,
    .width = 1.4 * s,
  };

  p.y = fmax (2 + 1.9 * r, fmin (y, scene->strip_floor - r));
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  trace_marker (scene, state, p.x, p.y, r);
  lb_scene_end_pickable (scene, look, pick, index);
  lb_scene_try_text (scene, LB_LAYER_FOREGROUND, LB_FONT_SCALE, sign, p.x, p.y, 0.5, 0.5,
                     LB_COLOUR_CARD, false);
  lb_scene_take (scene, (LbBox){ p.x - r, p.y - r, 2 * r, 2 * r });
  return p;
}

void
lb_scene_add_strip_rig (LbScene *scene)
{
  const LbStyle *style = &scene->style;
  LbLook wire = { .stroke = LB_COLOUR_WIRE, .width = style->wire_width };
  LbLook shank = { .stroke = LB_COLOUR_SHANK, .width = style->shank_width };
  LbLook leader = { .stroke = LB_COLOUR_LEADER, .width = style->leader_width };

  if (!scene->solved)
    return;
  for (size_t i = 0; i < scene->shape->n_leaders; i++)
    add_line (scene, LB_PART_LEADER_0 + (int) i, leader, LB_PICK_LEADER, (int) i);
  add_line (scene, LB_PART_SHANK, shank, LB_PICK_SHANK, 0);
  add_line (scene, LB_PART_MAINLINE, wire, LB_PICK_MAINLINE, 0);
}

/* ---- Labels ---- */

static LbLabel
marker_label (LbScene *scene,
              StripPoint at,
              const LbPointReading *reading,
              LbBandState state,
              const char *name,
              const char *sign,
              int memory)
{
  LbPhrase value = lb_phrase_height_value (&scene->picture, reading->height);
  const char *words = lb_phrase_band (state);
  LbLabel label = {
    .memory = memory,
    .x = at.x,
    .y = at.y,
    .clear = 12 * scene->style.scale,
    .toward = reading->height > 0.5 * scene->strip_high ? 0.9 : -0.9,
    .title_font = LB_FONT_STRONG,
    .accent = state_colour (state),
  };

  if (state == LB_BAND_ON_BED)
    {
      label.wordings[0].title = lb_phrase_format (_ ("%s: %s"), name, words);
      label.wordings[1].title = lb_phrase_format (_ ("%s: %s"), sign, words);
      label.wordings[2].title = lb_phrase_format ("%s", lb_phrase_band_short (state));
    }
  else
    {
      label.wordings[0].title = lb_phrase_format (_ ("%s: %s, %s"), name, value.text, words);
      label.wordings[1].title = lb_phrase_format (_ ("%s: %s, %s"), sign, value.text, words);
      label.wordings[2].title =
          lb_phrase_format (_ ("%s, %s"), value.text, lb_phrase_band_short (state));
    }
  /* Many markers leave no room for long words; the number is in the marker too. */
  if (scene->is_crowded)
    {
      label.wordings[0] = label.wordings[1];
      label.wordings[1] = label.wordings[2];
      label.wordings[2] = (LbWording){ 0 };
    }
  return label;
}

void
lb_scene_add_strip_labels (LbScene *scene)
{
  LbLabel labels[1 + LB_MAX_LEADERS];
  const LbPointReading *weight = &scene->readings.weight;
  LbBandState state;
  StripPoint at;
  size_t n = 0;

  if (!scene->solved)
    return;
  scene->is_crowded = scene->shape->n_leaders > MOST_NAMED;
  state = lb_band_state (&scene->setup.band, weight->height, weight->on_bed);
  /* Translators: one letter for "weight", in a small mark. */
  at = add_marker (scene, weight, state, C_ ("marker", "W"), LB_PICK_WEIGHT, 0);
  labels[n++] =
      marker_label (scene, at, weight, state, _ ("Weight"), C_ ("marker", "W"), MEMORY_WEIGHT);
  for (size_t i = 0; i < scene->shape->n_leaders; i++)
    {
      const LbLureReading *lure = &scene->readings.lures[i];
      LbPhrase sign = lb_phrase_format ("%d", (int) i + 1);
      LbPhrase name = lb_phrase_format (_ ("Lure %d"), (int) i + 1);

      at = add_marker (scene, &lure->at, lure->band, sign.text, LB_PICK_LURE, (int) i);
      labels[n++] = marker_label (scene, at, &lure->at, lure->band, name.text, sign.text,
                                  MEMORY_LURES + (int) i);
    }
  lb_labels_place (scene, labels, n);
}
