/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the view from above says: at its things, and to a screen reader. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "pass_above_private.h"

#define STRAIGHT 0.01 /* rad */

enum
{
  MEMORY_WEIGHT,
  MEMORY_BOAT,
  MEMORY_CLOSEST,
  MEMORY_LURES,
};

/* ---- Words ---- */

LbLabel
lb_above_thing_label (const LbScene *scene, const LbTrackMoment *now, int thing)
{
  const LbTrackPoint *point = lb_pass_thing (now, thing);
  LbSpot at = lb_above_project (scene, point->position);
  LbPhrase name = lb_pass_thing_words (scene, thing);
  LbPhrase height = lb_phrase_height (&scene->picture, fmax (point->height, 0), point->on_bed);

  return (LbLabel){
    .memory = thing < 0 ? MEMORY_WEIGHT : MEMORY_LURES + thing,
    .x = at.x,
    .y = at.y,
    .clear = 8 * scene->style.scale,
    .toward = thing % 2 == 0 ? -G_PI / 2 : G_PI / 2,
    .title_font = LB_FONT_STRONG,
    .accent = lb_pass_colour (thing),
    .pattern = lb_pass_pattern (thing),
    .wordings = { { name, height }, { name } },
  };
}

static LbPhrase
heading_words (const LbScene *scene, const LbTrackMoment *now)
{
  LbPhrase angle = lb_phrase_quantity (&scene->picture, LB_QUANTITY_ANGLE, fabs (now->heading));

  if (fabs (now->heading) < STRAIGHT)
    return lb_phrase_format ("%s", _ ("straight upstream"));
  return lb_phrase_format (now->heading > 0 ? _ ("%s to the right of upstream")
                                            : _ ("%s to the left of upstream"),
                           angle.text);
}

LbLabel
lb_above_boat_label (const LbScene *scene, const LbTrackMoment *now)
{
  LbSpot at = lb_above_boat_spot (scene, now, 1.5, 0);
  LbPhrase speed = lb_phrase_quantity (&scene->picture, LB_QUANTITY_SPEED, now->boat_speed);

  return (LbLabel){
    .memory = MEMORY_BOAT,
    .x = at.x,
    .y = at.y,
    .clear = 12 * scene->style.scale,
    .toward = -G_PI / 2,
    .title_font = LB_FONT_STRONG,
    .accent = LB_COLOUR_HULL_TRIM,
    .wordings = { { lb_phrase_format (_ ("Boat %s"), speed.text), heading_words (scene, now) },
                  { lb_phrase_format (_ ("Boat %s"), speed.text) } },
  };
}

bool
lb_above_may_tangle (const LbPassPicture *picture, const LbTrackMoment *closest)
{
  return closest && closest->closest < picture->tangle;
}

static LbPhrase
closest_words (const LbScene *scene, const LbTrackMoment *closest)
{
  return lb_phrase_format (_ ("Lines %s apart at %s"),
                           lb_phrase_height_value (&scene->picture, closest->closest).text,
                           lb_pass_time_words (scene, closest->time).text);
}

/* A ring with a cross where two lines came nearer than they should. */
LbLabel
lb_above_add_closest (LbScene *scene, const LbTrackMoment *closest)
{
  double s = scene->style.scale, r = 9 * s;
  LbSpot at = lb_above_project (scene, closest->closest_at);
  LbLook look = { .stroke = LB_COLOUR_REMARK, .width = 2 * s };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, at.x, at.y, r, r);
  lb_scene_end (scene, look);
  for (int i = -1; i <= 1; i += 2)
    lb_scene_line (scene, LB_LAYER_FOREGROUND, at.x - 0.7 * r, at.y - i * 0.7 * r, at.x + 0.7 * r,
                   at.y + i * 0.7 * r, look);
  return (LbLabel){
    .memory = MEMORY_CLOSEST,
    .x = at.x,
    .y = at.y,
    .clear = r,
    .toward = G_PI / 2,
    .title_font = LB_FONT_STRONG,
    .accent = LB_COLOUR_REMARK,
    .wordings = { { closest_words (scene, closest),
                    lb_phrase_format ("%s", _ ("near enough to tangle")) },
                  { closest_words (scene, closest) } },
  };
}

char *
lb_above_describe (const LbScene *scene,
                   const LbPassPicture *picture,
                   const LbTrackMoment *now,
                   const LbTrackMoment *closest)
{
  GString *text = g_string_new (_ ("The pass from above, downstream to the right."));

  g_string_append_printf (text, " %s", lb_pass_moment_words (scene, picture).text);
  if (now)
    {
      LbPhrase speed = lb_phrase_quantity (&scene->picture, LB_QUANTITY_SPEED, now->boat_speed);

      g_string_append_printf (text, " %s",
                              lb_phrase_format (_ ("Boat %s over the ground, %s."), speed.text,
                                                heading_words (scene, now).text)
                                  .text);
      for (int thing = LB_TRACK_WEIGHT; thing < (int) picture->track.n_lures; thing++)
        {
          const LbTrackPoint *point = lb_pass_thing (now, thing);
          double aside = point->position.y - now->reel.y;
          LbPhrase far = lb_phrase_quantity (&scene->picture, LB_QUANTITY_LENGTH, fabs (aside));

          g_string_append_printf (
              text, " %s",
              lb_phrase_format (
                  aside >= 0 ? _ ("%s: %s, %s to the right of the reel, seen upstream.")
                             : _ ("%s: %s, %s to the left of the reel, seen upstream."),
                  lb_pass_thing_words (scene, thing).text,
                  lb_phrase_height (&scene->picture, fmax (point->height, 0), point->on_bed).text,
                  far.text)
                  .text);
        }
    }
  lb_pass_describe_touches (scene, picture, text);
  lb_pass_describe_second (scene, picture, text);
  if (closest)
    g_string_append_printf (text, " %s%s.", closest_words (scene, closest).text,
                            lb_above_may_tangle (picture, closest) ? _ (", near enough to tangle")
                                                                   : "");
  return g_string_free (text, FALSE);
}
