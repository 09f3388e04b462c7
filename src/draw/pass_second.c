/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The second rig of a pass, on the left of the boat, in the drawings of the first: told apart by
 * dashed lines, hollow bodies and square marks. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "pass_parts.h"

#define SQUARE 5.5 /* style units */

bool
lb_pass_second_at (const LbPassPicture *picture, LbTrackMoment *now)
{
  return picture->second.n > 0 && lb_track_at (&picture->second, picture->time, now);
}

LbPassPicture
lb_pass_of_second (const LbPassPicture *picture)
{
  LbPassPicture second = *picture;

  second.track = picture->second;
  return second;
}

LbPassFirst
lb_pass_begin_second (LbScene *scene, const LbPassPicture *picture)
{
  LbPassFirst first = { scene->shape, scene->setup.rig.weight.mass };

  scene->is_second = true;
  scene->shape = picture->second_shape;
  if (picture->second_setup)
    scene->setup.rig.weight.mass = picture->second_setup->rig.weight.mass;
  return first;
}

void
lb_pass_end_second (LbScene *scene, LbPassFirst first)
{
  scene->is_second = false;
  scene->shape = first.shape;
  scene->setup.rig.weight.mass = first.mass;
}

void
lb_pass_add_square (LbScene *scene, LbLayer layer, double x, double y, LbColour colour)
{
  double s = scene->style.scale, side = SQUARE * s;

  lb_scene_begin (scene, layer);
  lb_scene_add_box (scene, x - side / 2, y - side / 2, side, side, 0);
  lb_scene_end (scene, (LbLook){ .fill = LB_COLOUR_CARD, .stroke = colour, .width = 1.3 * s });
}

/* ---- Words ---- */

static LbPhrase
name_of (const LbScene *scene, const LbPassPicture *picture, int thing)
{
  LbPhrase name = lb_pass_thing_words (scene, thing);

  if (thing < 0 && picture->second_setup)
    name = lb_phrase_format (_ ("Weight %s"),
                             lb_phrase_quantity (&scene->picture, LB_QUANTITY_MASS,
                                                 picture->second_setup->rig.weight.mass)
                                 .text);
  /* Translators: "Weight 2 lb", "Lower lure" */
  return lb_phrase_format (_ ("%s, second rig"), name.text);
}

static LbPhrase
height_of (const LbScene *scene, const LbTrackPoint *point)
{
  return lb_phrase_height (&scene->picture, fmax (point->height, 0), point->on_bed);
}

size_t
lb_pass_second_labels (const LbScene *scene,
                       const LbPassPicture *picture,
                       LbPassProject project,
                       LbLabel labels[LB_PASS_SECOND_LABELS])
{
  LbTrackMoment now;
  size_t n = 0;
  int last;

  if (!lb_pass_second_at (picture, &now))
    return 0;
  last = picture->second.n_lures > LB_PHRASE_MOST_PLACES ? 0 : (int) picture->second.n_lures;
  for (int thing = LB_TRACK_WEIGHT; thing < last; thing++)
    {
      const LbTrackPoint *point = lb_pass_thing (&now, thing);
      LbSpot at = project (scene, point->position);
      LbPhrase name = name_of (scene, picture, thing);

      labels[n] = (LbLabel){
        .memory = LB_PASS_SECOND_MEMORY + (int) n,
        .x = at.x,
        .y = at.y,
        .clear = 8 * scene->style.scale,
        .toward = G_PI / 2,
        .title_font = LB_FONT_STRONG,
        .accent = lb_pass_colour (thing),
        .pattern = LB_LINE_LONG_DASHED,
        .wordings = { { name, height_of (scene, point) }, { name } },
      };
      n++;
    }
  return n;
}

void
lb_pass_describe_second (const LbScene *scene, const LbPassPicture *picture, GString *text)
{
  LbTrackMoment now;

  if (!lb_pass_second_at (picture, &now))
    return;
  g_string_append_printf (
      text, " %s",
      _ ("A second rig on the left of the boat, with dashed lines and hollow bodies:"));
  for (int thing = LB_TRACK_WEIGHT; thing < (int) picture->second.n_lures; thing++)
    {
      LbPhrase name = lb_pass_thing_words (scene, thing);
      LbPhrase height = height_of (scene, lb_pass_thing (&now, thing));
      bool is_last = thing + 1 == (int) picture->second.n_lures;

      g_string_append_printf (text, " %s %s%s", name.text, height.text, is_last ? "." : ";");
    }
}
