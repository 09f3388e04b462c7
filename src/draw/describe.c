/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The drawing in words. */
#include <glib/gi18n-lib.h>

#include "phrases.h"

/* Words of any length. */
static void
say_text (GString *text, const char *words)
{
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, words);
}

static void
say (GString *text, LbPhrase words)
{
  say_text (text, words.text);
}

static LbPhrase
quantity (const LbScene *scene, LbQuantity kind, double value)
{
  return lb_phrase_quantity (&scene->picture, kind, value);
}

static void
describe_river (const LbScene *scene, GString *text)
{
  const LbRiver *river = &scene->setup.river;
  double reel = scene->setup.boat.position, depth = lb_bed_at (&scene->current.bed, reel).depth;
  double near_bed = lb_phrase_near_bed (&scene->picture);
  LbPhrase deep = quantity (scene, LB_QUANTITY_LENGTH, depth);
  LbPhrase top =
      quantity (scene, LB_QUANTITY_SPEED, lb_current_at (&scene->current, reel, 0).speed);
  LbPhrase low = quantity (scene, LB_QUANTITY_SPEED,
                           lb_current_at (&scene->current, reel, near_bed - depth).speed);
  LbPhrase near = lb_phrase_height_value (&scene->picture, near_bed);

  say (text, river->n_bed_points > 1 ? lb_phrase_format (
                 _ ("River with an uneven bed, %s deep under the reel."), deep.text)
                                     : lb_phrase_format (_ ("River %s deep."), deep.text));
  say (text, lb_phrase_format (_ ("Current to the right, %s at the surface and %s at %s off the "
                                  "bed."),
                               top.text, low.text, near.text));
}

static void
describe_boat (const LbScene *scene, GString *text)
{
  double speed = scene->setup.boat.speed_over_ground;

  if (speed > 0)
    say (text, lb_phrase_format (_ ("The boat moves to the left, upstream, at %s over the ground."),
                                 quantity (scene, LB_QUANTITY_SPEED, speed).text));
  else
    say_text (text, _ ("The boat holds its place over the ground."));
}

static void
describe_mainline (const LbScene *scene, GString *text)
{
  const LbReadings *r = &scene->readings;
  LbPhrase out = quantity (scene, LB_QUANTITY_LENGTH, r->line_out);
  LbPhrase angle = quantity (scene, LB_QUANTITY_ANGLE, r->wire_angle);
  LbPhrase hand = quantity (scene, LB_QUANTITY_FORCE, r->hand_tension);
  LbPhrase shank = quantity (scene, LB_QUANTITY_LENGTH, scene->setup.rig.shank_length);

  say (text,
       lb_phrase_format (_ ("Mainline: %s of line out, wire angle %s from vertical at the reel, "
                            "%s in the hand."),
                         out.text, angle.text, hand.text));
  if (scene->setup.rig.shank_length > 0)
    say (text, lb_phrase_format (_ ("Shank: %s long, from the mainline down to the weight."),
                                 shank.text));
}

static void
describe_weight (const LbScene *scene, GString *text)
{
  const LbPointReading *weight = &scene->readings.weight;
  LbPhrase mass = quantity (scene, LB_QUANTITY_MASS, scene->setup.rig.weight.mass);
  LbPhrase height = lb_phrase_height (&scene->picture, weight->height, weight->on_bed);
  LbPhrase back = quantity (scene, LB_QUANTITY_LENGTH, weight->layback);

  say (text, lb_phrase_format (_ ("Weight %s: %s, %s behind the reel."), mass.text, height.text,
                               back.text));
}

static void
describe_lure (const LbScene *scene, size_t i, GString *text)
{
  const LbLureReading *lure = &scene->readings.lures[i];
  const LbLeader *leader = &scene->setup.rig.leaders[i];
  LbPhrase length = quantity (scene, LB_QUANTITY_LENGTH, leader->length);
  LbPhrase attached = lb_phrase_height_value (&scene->picture, leader->attach_above_weight);
  LbPhrase height = lb_phrase_height (&scene->picture, lure->at.height, lure->at.on_bed);
  LbPhrase back = quantity (scene, LB_QUANTITY_LENGTH, lure->at.layback);
  LbPhrase name = lb_phrase_lure (&scene->picture, i);

  say (text, lb_phrase_format (_ ("%s: %s long, attached %s above the weight."),
                               lb_phrase_leader_place (&scene->picture, i).text, length.text,
                               attached.text));
  if (lure->band == LB_BAND_ON_BED)
    say (text, lb_phrase_format (_ ("%s: on the bed, %s behind the reel."), name.text, back.text));
  else
    say (text, lb_phrase_format (_ ("%s: %s, %s, %s behind the reel."), name.text, height.text,
                                 lb_phrase_band (lure->band), back.text));
}

static void
describe_band (const LbScene *scene, GString *text)
{
  LbPhrase low = lb_phrase_height_value (&scene->picture, scene->setup.band.low);
  LbPhrase high = lb_phrase_height_value (&scene->picture, scene->setup.band.high);

  say (text, lb_phrase_format (_ ("Wanted band: %s to %s off the bed."), low.text, high.text));
}

static void
describe_remarks (const LbScene *scene, GString *text)
{
  const char *status = lb_phrase_status (scene);

  if (status)
    say_text (text, status);
  if (scene->remark)
    say_text (text, scene->remark);
}

char *
lb_scene_describe (const LbScene *scene)
{
  GString *text;

  if (scene->kind == LB_SCENE_CHART)
    return g_strdup (scene->words);
  text = g_string_new (NULL);
  if (scene->kind == LB_SCENE_SIDE_VIEW)
    {
      say_text (text, _ ("Side view."));
      if (scene->moment)
        say_text (text, scene->moment);
      if (scene->title)
        {
          say_text (text, scene->title);
          g_string_append_c (text, '.');
        }
    }
  else
    say_text (text, _ ("Bed strip: the lowest water along the rig, stretched upward."));
  if (!scene->words)
    describe_remarks (scene, text);
  if (scene->kind == LB_SCENE_SIDE_VIEW)
    {
      if (lb_view_stretch (&scene->view) > 1)
        say (text, lb_phrase_format (
                       _ ("Heights are stretched %s times."),
                       lb_phrase_number (&scene->picture, lb_view_stretch (&scene->view), 0).text));
      describe_river (scene, text);
      describe_boat (scene, text);
    }
  describe_band (scene, text);
  if (scene->words)
    {
      say_text (text, _ ("Laid over one another:"));
      say_text (text, scene->words);
    }
  else if (scene->solved)
    {
      if (scene->kind == LB_SCENE_SIDE_VIEW)
        describe_mainline (scene, text);
      describe_weight (scene, text);
      for (size_t i = 0; i < scene->readings.n_leaders; i++)
        describe_lure (scene, i, text);
    }
  return g_string_free (text, FALSE);
}
