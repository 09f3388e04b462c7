/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig in the bed strip: its lines, a marker for each lure and the weight, and their labels. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "labels.h"

#define MOST_NODES 4096
#define MOST_MARKERS (1 + LB_MAX_LEADERS)

/* Places in the label memory, after those of the side view. */
enum
{
  MEMORY_MARKERS = 32,
};

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

/* The weight where it hangs: on its point. The band is for the lures and does not judge it. */
static void
trace_weight (LbScene *scene, double x, double y, double r)
{
  lb_scene_move_to (scene, x, y - 1.35 * r);
  lb_scene_line_to (scene, x + 1.35 * r, y);
  lb_scene_line_to (scene, x, y + 1.35 * r);
  lb_scene_line_to (scene, x - 1.35 * r, y);
  lb_scene_close (scene);
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

/* One lure, or the weight. */
typedef struct
{
  const LbPointReading *reading;
  LbBandState state;
  LbPhrase sign; /* stands in the marker */
  LbPhrase name;
  LbPickKind pick;
  int index;
  double x, y, r; /* drawing units */
} Marker;

/* Whether this is the weight, clear of the bed. */
static bool
hangs_free (const Marker *m)
{
  return m->pick == LB_PICK_WEIGHT && m->state != LB_BAND_ON_BED;
}

static LbColour
marker_colour (const Marker *m)
{
  return hangs_free (m) ? LB_COLOUR_WIRE : state_colour (m->state);
}

static LbBox
marker_box (const Marker *m)
{
  return (LbBox){ m->x - m->r, m->y - m->r, 2 * m->r, 2 * m->r };
}

/* Where the marker stands: at its height, but not beyond the strip or sunk into the bed. */
static Marker
make_marker (const LbScene *scene, const LbPointReading *reading, LbBandState state)
{
  double r = fmin (9 * scene->style.scale, 0.14 * scene->height);
  double y = lb_scene_strip_y (scene, fmin (reading->height, scene->strip_high));

  return (Marker){
    .reading = reading,
    .state = state,
    .x = lb_view_x (&scene->view, reading->position.x),
    .y = fmax (2 + 1.9 * r, fmin (y, scene->strip_floor - r)),
    .r = r,
  };
}

static size_t
make_markers (const LbScene *scene, Marker *markers)
{
  const LbPointReading *weight = &scene->readings.weight;
  size_t n = 0;

  markers[n] = make_marker (scene, weight,
                            lb_band_state (&scene->setup.band, weight->height, weight->on_bed));
  /* Translators: one letter for "weight", in a small mark. */
  markers[n].sign = lb_phrase_format ("%s", C_ ("marker", "W"));
  markers[n].name = lb_phrase_format ("%s", _ ("Weight"));
  markers[n++].pick = LB_PICK_WEIGHT;
  for (size_t i = 0; i < scene->shape->n_leaders; i++)
    {
      const LbLureReading *lure = &scene->readings.lures[i];

      markers[n] = make_marker (scene, &lure->at, lure->band);
      markers[n].sign = lb_phrase_lure_sign (&scene->picture, i);
      markers[n].name = lb_phrase_lure_place (&scene->picture, i);
      markers[n].index = (int) i;
      markers[n++].pick = LB_PICK_LURE;
    }
  return n;
}

static bool
is_covered (const Marker *markers, size_t n, size_t which, LbBox box)
{
  for (size_t i = which + 1; i < n; i++)
    if (lb_box_overlaps (box, marker_box (&markers[i])))
      return true;
  return false;
}

static void
add_outlines (LbScene *scene, const Marker *markers, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      LbLook look = {
        .fill = marker_colour (&markers[i]),
        .stroke = LB_COLOUR_CARD,
        .width = 1.4 * scene->style.scale,
      };

      lb_scene_begin (scene, LB_LAYER_FOREGROUND);
      if (hangs_free (&markers[i]))
        trace_weight (scene, markers[i].x, markers[i].y, markers[i].r);
      else
        trace_marker (scene, markers[i].state, markers[i].x, markers[i].y, markers[i].r);
      lb_scene_end_pickable (scene, look, markers[i].pick, markers[i].index);
    }
}

/* A sign that a later marker would cover is left out, the label still has it. */
static void
add_signs (LbScene *scene, const Marker *markers, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      LbText sign = lb_scene_text (scene, LB_FONT_SCALE, markers[i].sign.text);
      LbBox box = { markers[i].x - sign.width / 2, markers[i].y - sign.height / 2, sign.width,
                    sign.height };

      if (*markers[i].sign.text && !is_covered (markers, n, i, box)
          && lb_scene_is_free (scene, box, 0))
        lb_scene_put_text (scene, LB_LAYER_FOREGROUND, sign, box.x, box.y, LB_COLOUR_CARD);
    }
}

static void
take_places (LbScene *scene, const Marker *markers, size_t n)
{
  for (size_t i = 0; i < n; i++)
    lb_scene_take (scene, marker_box (&markers[i]));
}

void
lb_scene_add_strip_markers (LbScene *scene)
{
  Marker markers[MOST_MARKERS];
  size_t n = make_markers (scene, markers);

  add_outlines (scene, markers, n);
  take_places (scene, markers, n);
}

void
lb_scene_strip_marker_place (const LbScene *scene, size_t lure, double *x, double *y)
{
  const LbLureReading *reading = &scene->readings.lures[lure];
  Marker marker = make_marker (scene, &reading->at, reading->band);

  *x = marker.x;
  *y = marker.y;
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

static void
set_wordings (const LbScene *scene, const Marker *m, LbLabel *label)
{
  LbPhrase value = lb_phrase_height_value (&scene->picture, m->reading->height);
  const char *words = lb_phrase_band (m->state), *less = lb_phrase_band_short (m->state);

  if (m->state == LB_BAND_ON_BED)
    {
      label->wordings[0].title = lb_phrase_format (_ ("%s: %s"), m->name.text, words);
      label->wordings[1].title = lb_phrase_format ("%s", less);
    }
  else if (hangs_free (m))
    {
      label->wordings[0].title = lb_phrase_format (_ ("%s: %s"), m->name.text, value.text);
      label->wordings[1].title = value;
    }
  else
    {
      label->wordings[0].title =
          lb_phrase_format (_ ("%s: %s, %s"), m->name.text, value.text, words);
      label->wordings[1].title = lb_phrase_format (_ ("%s, %s"), value.text, less);
    }
  /* Many markers leave no room for long words; the number is in the marker too. */
  if (scene->is_crowded && m->state == LB_BAND_ON_BED)
    label->wordings[0].title = lb_phrase_format (_ ("%s: %s"), m->sign.text, less);
  else if (scene->is_crowded && hangs_free (m))
    label->wordings[0].title = lb_phrase_format (_ ("%s: %s"), m->sign.text, value.text);
  else if (scene->is_crowded)
    label->wordings[0].title = lb_phrase_format (_ ("%s: %s, %s"), m->sign.text, value.text, less);
}

void
lb_scene_add_strip_labels (LbScene *scene)
{
  LbLabel labels[MOST_MARKERS] = { 0 };
  Marker markers[MOST_MARKERS];
  size_t n;

  if (!scene->solved)
    return;
  scene->is_crowded = scene->shape->n_leaders > LB_PHRASE_MOST_PLACES;
  n = make_markers (scene, markers);
  add_outlines (scene, markers, n);
  add_signs (scene, markers, n);
  take_places (scene, markers, n);
  for (size_t i = 0; i < n; i++)
    {
      labels[i] = (LbLabel){
        .memory = MEMORY_MARKERS + (int) i,
        .x = markers[i].x,
        .y = markers[i].y,
        .clear = 12 * scene->style.scale,
        .toward = markers[i].reading->height > 0.5 * scene->strip_high ? 0.9 : -0.9,
        .title_font = LB_FONT_STRONG,
        .accent = marker_colour (&markers[i]),
      };
      set_wordings (scene, &markers[i], &labels[i]);
    }
  lb_labels_place (scene, labels, n);
}
