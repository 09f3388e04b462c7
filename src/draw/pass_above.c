/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pass from above: downstream to the right, the boat's course, the rig at the moment with the
 * trails so far, where it touched, and how near its lines came. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "axes.h"
#include "boat.h"
#include "labels.h"
#include "pass_parts.h"

#define BEAM 0.85 /* m, half the boat's */
#define MOST_NODES 2048
#define STRAIGHT 0.01 /* rad */

enum
{
  MEMORY_WEIGHT,
  MEMORY_BOAT,
  MEMORY_CLOSEST,
  MEMORY_LURES,
};

/* ---- Things ---- */

static LbSpot
project_cb (const LbScene *scene, LbVec3 at)
{
  return (LbSpot){ lb_view_x (&scene->view, at.x), lb_view_y (&scene->view, at.y) };
}

static void
add_water (LbScene *scene)
{
  double s = scene->style.scale;
  LbLook water = { .fill = LB_COLOUR_WATER_TOP };
  LbLook shaft = { .stroke = LB_COLOUR_CURRENT, .width = 1.4 * s, .opacity = 0.4 };
  LbLook head = { .fill = LB_COLOUR_CURRENT, .opacity = 0.4 };

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, 0, scene->width, scene->height, 0);
  lb_scene_end (scene, water);
  for (double y = 0.5 * 96 * s; y < scene->height; y += 96 * s)
    for (double x = 40 * s; x < scene->width; x += 190 * s)
      {
        lb_scene_line (scene, LB_LAYER_BACKGROUND, x, y, x + 26 * s, y, shaft);
        lb_scene_begin (scene, LB_LAYER_BACKGROUND);
        lb_scene_add_arrow_head (scene, x + 32 * s, y, 0, 8 * s);
        lb_scene_end (scene, head);
      }
  lb_scene_try_text (
      scene, LB_LAYER_BACKGROUND, LB_FONT_PLAIN,
      lb_phrase_format (_ ("Current %s"), lb_phrase_quantity (&scene->picture, LB_QUANTITY_SPEED,
                                                              scene->setup.river.surface_current)
                                              .text)
          .text,
      8 * s, 6 * s, 0, 0, LB_COLOUR_TEXT, true);
}

/* A bar of round length. */
static void
add_scale_bar (LbScene *scene)
{
  double s = scene->style.scale, y = scene->height - 10 * s, left = 10 * s;
  LbQuantity length = LB_QUANTITY_LENGTH;
  LbUnits units = scene->picture.units;
  double metres = lb_ticks_choose (length, units, scene->view.per_metre_x, 90 * s, 90 * s).major;
  double right = left + metres * scene->view.per_metre_x;
  LbLook look = { .stroke = LB_COLOUR_TEXT, .width = 1.6 * s };

  lb_scene_line (scene, LB_LAYER_BACKGROUND, left, y, right, y, look);
  lb_scene_line (scene, LB_LAYER_BACKGROUND, left, y - 5 * s, left, y + 3 * s, look);
  lb_scene_line (scene, LB_LAYER_BACKGROUND, right, y - 5 * s, right, y + 3 * s, look);
  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_phrase_quantity (&scene->picture, length, metres).text, (left + right) / 2,
                     y - 4 * s, 0.5, 1, LB_COLOUR_TEXT, true);
  lb_scene_take (scene, (LbBox){ left, y - 6 * s, right - left, 10 * s });
}

/* All of the way that is known; what is past is drawn over it by the boat's wake. */
static void
add_course (LbScene *scene, const LbPassPicture *picture)
{
  const LbPassTrack *track = &picture->track;
  LbSpot last = { 0 };

  if (track->n < 1)
    return;
  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  for (size_t i = 0; i < track->n; i++)
    {
      LbSpot at = project_cb (scene, track->moments[i].reel);

      if (i == 0)
        lb_scene_move_to (scene, at.x, at.y);
      else if (hypot (at.x - last.x, at.y - last.y) < 2 && i + 1 < track->n)
        continue;
      else
        lb_scene_line_to (scene, at.x, at.y);
      last = at;
    }
  lb_scene_end (scene, (LbLook){ .stroke = LB_COLOUR_HULL_TRIM,
                                 .width = 1.4 * scene->style.scale,
                                 .pattern = LB_LINE_DASHED });
}

/* Boat metres: `ahead` of the reel, `right` of the boat's middle, seen towards the bow. */
static LbSpot
boat_spot (const LbScene *scene, const LbTrackMoment *now, double ahead, double right)
{
  double c = cos (now->heading), s = sin (now->heading);

  right -= now->reel_across;
  LbVec3 at = { now->reel.x - ahead * c + right * s, now->reel.y + ahead * s + right * c, 0 };

  return project_cb (scene, at);
}

static void
boat_curve (LbScene *scene, LbSpot a, LbSpot b, LbSpot c)
{
  lb_scene_curve_to (scene, a.x, a.y, b.x, b.y, c.x, c.y);
}

static void
add_boat (LbScene *scene, const LbTrackMoment *now)
{
  double s = scene->style.scale;
  LbLook hull = { .fill = LB_COLOUR_HULL, .stroke = LB_COLOUR_HULL_LINE, .width = 1.5 * s };
  LbSpot at = boat_spot (scene, now, -LB_BOAT_STERN, -0.8 * BEAM);
  LbSpot bow = boat_spot (scene, now, LB_BOAT_BOW, 0);

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (scene, at.x, at.y);
  boat_curve (scene, boat_spot (scene, now, 0, -1.1 * BEAM), boat_spot (scene, now, 2.4, -BEAM),
              bow);
  boat_curve (scene, boat_spot (scene, now, 2.4, BEAM), boat_spot (scene, now, 0, 1.1 * BEAM),
              boat_spot (scene, now, -LB_BOAT_STERN, 0.8 * BEAM));
  lb_scene_close (scene);
  lb_scene_end_pickable (scene, hull, LB_PICK_BOAT, 0);
  lb_scene_note_line (scene, bow.x, bow.y, at.x, at.y);
}

static void
add_reel (LbScene *scene, const LbTrackMoment *now)
{
  double s = scene->style.scale;
  LbLook reel = { .fill = LB_COLOUR_REEL, .stroke = LB_COLOUR_HULL_LINE, .width = 1.2 * s };
  LbSpot at = project_cb (scene, now->reel);

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, at.x, at.y, 4 * s, 4 * s);
  lb_scene_end_pickable (scene, reel, LB_PICK_REEL, 0);
}

static void
add_line (LbScene *scene, int part, LbLook look, LbPickKind pick, int index)
{
  size_t nodes[MOST_NODES];
  size_t n = MIN (lb_shape_line (scene->shape, part, nodes, MOST_NODES), MOST_NODES);
  LbSpot last = { 0 };

  if (n < 2)
    return;
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  for (size_t i = 0; i < n; i++)
    {
      LbSpot at = project_cb (scene, scene->shape->nodes[nodes[i]].position);

      if (i == 0)
        lb_scene_move_to (scene, at.x, at.y);
      else if (i + 1 < n && hypot (at.x - last.x, at.y - last.y) < 0.5)
        continue;
      else
        {
          lb_scene_line_to (scene, at.x, at.y);
          lb_scene_note_line (scene, last.x, last.y, at.x, at.y);
        }
      last = at;
    }
  lb_scene_end_pickable (scene, look, pick, index);
}

static void
add_body (LbScene *scene, LbSpot at, LbColour colour, double radius, LbPickKind pick, int index)
{
  double r = radius * scene->style.scale;

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, at.x, at.y, pick == LB_PICK_LURE ? 1.7 * r : r, r);
  lb_scene_end_pickable (
      scene,
      (LbLook){ .fill = colour, .stroke = LB_COLOUR_WIRE, .width = scene->style.outline_width },
      pick, index);
}

static void
add_rig (LbScene *scene)
{
  const LbStyle *style = &scene->style;

  if (!scene->shape)
    return;
  for (int i = 0; i < (int) scene->shape->n_leaders; i++)
    add_line (scene, LB_PART_LEADER_0 + i,
              (LbLook){ .stroke = LB_COLOUR_LEADER, .width = style->leader_width }, LB_PICK_LEADER,
              i);
  add_line (scene, LB_PART_SHANK,
            (LbLook){ .stroke = LB_COLOUR_SHANK, .width = style->shank_width }, LB_PICK_SHANK, 0);
  add_line (scene, LB_PART_MAINLINE,
            (LbLook){ .stroke = LB_COLOUR_WIRE, .width = style->wire_width }, LB_PICK_MAINLINE, 0);
  for (int i = 0; i < (int) scene->shape->n_leaders; i++)
    add_body (scene, project_cb (scene, scene->shape->nodes[scene->shape->lure[i]].position),
              LB_COLOUR_LURE_BACK, 4, LB_PICK_LURE, i);
  add_body (scene, project_cb (scene, scene->shape->nodes[scene->shape->weight].position),
            LB_COLOUR_WEIGHT, 6, LB_PICK_WEIGHT, 0);
}

/* Where something lay on the bed: its trail, thick. */
static void
add_touches (LbScene *scene, const LbPassPicture *picture, int thing)
{
  const LbPassTrack *track = &picture->track;
  size_t n = lb_track_until (track, picture->time);
  bool down = false;

  for (size_t i = 0; i < n; i++)
    {
      const LbTrackPoint *point = lb_pass_thing (&track->moments[i], thing);
      LbSpot at = project_cb (scene, point->position);

      if (point->touched && !down)
        {
          lb_scene_begin (scene, LB_LAYER_FOREGROUND);
          lb_scene_move_to (scene, at.x, at.y);
        }
      if (point->touched || down)
        lb_scene_line_to (scene, at.x, at.y);
      if (down && (!point->touched || i + 1 == n))
        lb_scene_end (scene, (LbLook){ .stroke = LB_COLOUR_ON_BED,
                                       .width = 5 * scene->style.scale,
                                       .opacity = 0.8 });
      down = point->touched;
    }
  if (down && n > 0 && (n == 1 || !lb_pass_thing (&track->moments[n - 2], thing)->touched))
    lb_scene_end (scene, (LbLook){ .stroke = LB_COLOUR_ON_BED, .width = 5 * scene->style.scale });
}

/* ---- The second rig ---- */

static void
add_second_trails (LbScene *scene, const LbPassPicture *picture)
{
  LbPassPicture second = lb_pass_of_second (picture);
  LbPassFirst first = lb_pass_begin_second (scene, picture);

  for (int thing = LB_TRACK_WEIGHT; thing < (int) second.track.n_lures; thing++)
    add_touches (scene, &second, thing);
  lb_pass_add_trails (scene, &second, project_cb);
  lb_pass_end_second (scene, first);
}

static void
add_second_rig (LbScene *scene, const LbPassPicture *picture)
{
  LbPassFirst first = lb_pass_begin_second (scene, picture);
  LbTrackMoment now;

  if (lb_pass_second_at (picture, &now))
    {
      add_reel (scene, &now);
      add_rig (scene);
    }
  lb_pass_end_second (scene, first);
}

/* ---- Words ---- */

static LbLabel
thing_label (const LbScene *scene, const LbTrackMoment *now, int thing)
{
  const LbTrackPoint *point = lb_pass_thing (now, thing);
  LbSpot at = project_cb (scene, point->position);
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

static LbLabel
boat_label (const LbScene *scene, const LbTrackMoment *now)
{
  LbSpot at = boat_spot (scene, now, 1.5, 0);
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

static bool
may_tangle (const LbPassPicture *picture, const LbTrackMoment *closest)
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
static LbLabel
add_closest (LbScene *scene, const LbTrackMoment *closest)
{
  double s = scene->style.scale, r = 9 * s;
  LbSpot at = project_cb (scene, closest->closest_at);
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

static char *
describe (const LbScene *scene,
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
                            may_tangle (picture, closest) ? _ (", near enough to tangle") : "");
  return g_string_free (text, FALSE);
}

LbScene *
lb_pass_above_new (LbDrawContext *context,
                   const LbPassPicture *picture,
                   const LbStyle *style,
                   const LbView *view,
                   double width,
                   double height)
{
  LbPicture plain = picture->now;
  const LbTrackMoment *closest = lb_track_closest (&picture->track, picture->time);
  LbLabel labels[LB_LABELS_MOST];
  LbTrackMoment now;
  LbScene *scene;
  bool is_known = lb_track_at (&picture->track, picture->time, &now);
  size_t n = 0;

  plain.handles = NULL;
  scene = lb_scene_new (LB_SCENE_CHART, context, &plain, style, view, width, height);
  add_water (scene);
  add_scale_bar (scene);
  add_course (scene, picture);
  for (int thing = LB_TRACK_WEIGHT; thing < (int) picture->track.n_lures; thing++)
    add_touches (scene, picture, thing);
  add_second_trails (scene, picture);
  lb_pass_add_trails (scene, picture, project_cb);
  if (is_known)
    {
      add_boat (scene, &now);
      add_second_rig (scene, picture);
      add_reel (scene, &now);
      add_rig (scene);
      for (int thing = LB_TRACK_WEIGHT; thing < (int) picture->track.n_lures; thing++)
        labels[n++] = thing_label (scene, &now, thing);
      if (may_tangle (picture, closest))
        labels[n++] = add_closest (scene, closest);
      labels[n++] = boat_label (scene, &now);
      n += lb_pass_second_labels (scene, picture, project_cb, &labels[n]);
    }
  lb_scene_add_remark (scene);
  lb_labels_place (scene, labels, n);
  scene->words = describe (scene, picture, is_known ? &now : NULL, closest);
  lb_scene_finish (scene);
  scene->shape = NULL;
  return scene;
}
