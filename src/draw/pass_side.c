/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The side view of a pass: boat and rig at a moment over a bed at rest, with the trails so far. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat.h"
#include "pass_parts.h"

/* All of a pass is shown at once unless it would then be smaller than this part of the rig alone.
 */
#define LEAST_SHARE 0.5
/* Else a page holds so many lengths of boat and rig. */
#define PAGE 1.7

/* The setup at the moment: the boat is where the reel is. */
static LbSetup
setup_now (const LbPassPicture *picture)
{
  LbSetup setup = *picture->now.setup;
  LbTrackMoment now;

  if (lb_track_at (&picture->track, picture->time, &now))
    {
      setup.boat.position = now.reel.x;
      setup.boat.speed_over_ground = now.boat_speed;
    }
  return setup;
}

/* ---- The view ---- */

static void
include (LbExtents *extents, double x, double ahead, double behind)
{
  extents->x_min = fmin (extents->x_min, x - ahead);
  extents->x_max = fmax (extents->x_max, x + behind);
}

/* All that the boat and the rig take at the moment, with spare room for what swings. */
static LbExtents
extents_now (const LbPassPicture *picture, const LbSetup *setup)
{
  LbPicture now = picture->now;

  now.setup = setup;
  LbExtents extents = lb_picture_extents (&now);
  if (picture->second_shape)
    {
      now.shape = picture->second_shape;
      LbExtents second = lb_picture_extents (&now);
      extents.x_max = fmax (extents.x_max, second.x_max);
      extents.z_min = fmin (extents.z_min, second.z_min);
    }
  return extents;
}

static void
include_track (LbExtents *extents, const LbPassTrack *track)
{
  for (size_t i = 0; i < track->n; i++)
    {
      const LbTrackMoment *m = &track->moments[i];

      include (extents, m->reel.x, LB_BOAT_BOW, LB_BOAT_STERN);
      include (extents, m->weight.position.x, 0, 0.1);
      for (size_t k = 0; k < track->n_lures; k++)
        include (extents, m->lures[k].position.x, 0, 0.1);
    }
}

/* The deepest bed that the boat passes over, and how high anything comes. */
static LbExtents
extents_of_pass (const LbPassPicture *picture, LbExtents now)
{
  const LbPassTrack *track = &picture->track;
  LbExtents all = now;

  include_track (&all, track);
  include_track (&all, &picture->second);
  /* What is not known yet goes on as it went last. */
  if (track->n > 0)
    {
      const LbTrackMoment *last = &track->moments[track->n - 1];

      if (last->time < track->duration)
        include (&all, last->reel.x - last->boat_speed * (track->duration - last->time),
                 LB_BOAT_BOW, 0);
    }
  all.x_rig = all.x_min + LB_BOAT_BOW;
  return all;
}

static void
find_depth (LbExtents *extents, const LbSetup *setup)
{
  LbBed bed;

  lb_bed_init (&bed, &setup->river);
  for (int i = 0; i <= 128; i++)
    {
      double x = extents->x_min + (extents->x_max - extents->x_min) * i / 128;

      extents->z_min = fmin (extents->z_min, -lb_bed_at (&bed, x).depth);
    }
}

/* Boat and rig at the downstream end of a page. */
static LbExtents
page_of (LbExtents now)
{
  double length = now.x_max - now.x_min;

  now.x_min = now.x_max - PAGE * length;
  now.x_rig = now.x_min + LB_BOAT_BOW;
  return now;
}

LbView
lb_pass_side_fit (const LbView *previous,
                  const LbPassPicture *picture,
                  const LbStyle *style,
                  double width,
                  double height)
{
  LbSetup setup = setup_now (picture);
  LbExtents now = extents_now (picture, &setup), page = page_of (now);
  LbExtents whole;
  LbView alone, view;

  if (previous && previous->per_metre_x > 0 && previous->width == width
      && previous->height == height && previous->style_scale == style->scale)
    {
      now.x_rig = now.x_min + LB_BOAT_BOW;
      if (lb_view_holds (previous, &now))
        return *previous;
      now.x_rig = setup.boat.position;
    }
  alone = lb_view_fit (NULL, &now, style, width, height);
  whole = extents_of_pass (picture, now);
  find_depth (&whole, &setup);
  view = lb_view_fit (NULL, &whole, style, width, height);
  if (view.per_metre_x >= LEAST_SHARE * alone.per_metre_x)
    return view;
  find_depth (&page, &setup);
  return lb_view_fit (NULL, &page, style, width, height);
}

/* ---- What is drawn ---- */

static LbSpot
project_cb (const LbScene *scene, LbVec3 at)
{
  return (LbSpot){ lb_view_x (&scene->view, at.x), lb_view_y (&scene->view, at.z) };
}

/* A ruler along the foot, with the way from where the reel was at the start. */
static void
add_way_scale (LbScene *scene, double start)
{
  double s = scene->style.scale, origin = lb_view_x (&scene->view, start);
  double metres = lb_scene_distance_step (scene), step = metres * scene->view.per_metre_x;
  int first = (int) ceil ((origin - scene->width) / step), last = (int) floor (origin / step);
  LbLook grid = { .stroke = LB_COLOUR_GRID, .width = scene->style.grid_width };

  for (int i = MAX (first - 1, -400); i <= MIN (last + 1, 400); i++)
    {
      double x = origin - i * step;

      lb_scene_add_ruler_piece (scene, fmax (x - step, -2), fmin (x, scene->width + 2), i % 2 == 0);
      if (x < 0 || x > scene->width)
        continue;
      lb_scene_line (scene, LB_LAYER_BACKGROUND, x, lb_view_y (&scene->view, 0), x,
                     lb_scene_bed_y (scene, x), grid);
      if (i >= 0)
        lb_scene_add_distance_tick (scene, x, i * metres, metres);
    }
  for (int i = 0; i < 2; i++)
    if (lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_PLAIN, _ ("Up from the start"),
                           i ? 6 * s : scene->width - 6 * s, scene->height - 26 * s, i ? 0 : 1, 1,
                           LB_COLOUR_TEXT_ON_BED, true))
      break;
}

/* The bed where the weight or a lure has lain on it: the line of the bed, thick. */
static void
add_touches (LbScene *scene, const LbPassPicture *picture, int thing)
{
  const LbPassTrack *track = &picture->track;
  size_t n = lb_track_until (track, picture->time);
  double s = scene->style.scale;
  LbLook look = { .stroke = LB_COLOUR_ON_BED, .width = 4.5 * s };

  for (size_t i = 0; i < n;)
    {
      double from, to;
      size_t k = i;

      if (!lb_pass_thing (&track->moments[i], thing)->touched)
        {
          i++;
          continue;
        }
      while (k + 1 < n && lb_pass_thing (&track->moments[k + 1], thing)->touched)
        k++;
      from = lb_view_x (&scene->view, lb_pass_thing (&track->moments[i], thing)->position.x);
      to = lb_view_x (&scene->view, lb_pass_thing (&track->moments[k], thing)->position.x);
      i = k + 1;
      if (fmax (from, to) < 0 || fmin (from, to) > scene->width)
        continue;
      lb_scene_begin (scene, LB_LAYER_FOREGROUND);
      lb_scene_move_to (scene, from, lb_scene_bed_y (scene, from));
      for (int piece = 1; piece <= 8; piece++)
        {
          double x = from + (to - from) * piece / 8;

          lb_scene_line_to (scene, x, lb_scene_bed_y (scene, x));
        }
      lb_scene_end (scene, look);
    }
}

/* Times under the bed, at the marks on the weight's trail. */
static void
add_times (LbScene *scene, const LbPassPicture *picture)
{
  double s = scene->style.scale;
  double step = lb_pass_mark_step (picture, scene->view.per_metre_x, 70 * s);
  LbTrackMoment m;

  for (double t = 0; t <= picture->time && lb_track_at (&picture->track, t, &m); t += step)
    {
      double x = lb_view_x (&scene->view, m.weight.position.x);
      LbPhrase words = lb_phrase_format (_ ("%s s"), lb_phrase_number (&scene->picture, t, 0).text);

      if (x > 0 && x < scene->width)
        lb_scene_try_text (scene, LB_LAYER_FOREGROUND, LB_FONT_SCALE, words.text, x,
                           lb_scene_bed_y (scene, x) + 6 * s, 0.5, 0, LB_COLOUR_TEXT_ON_BED, true);
    }
}

/* Where it touched, and its trails. */
static void
add_second (LbScene *scene, const LbPassPicture *picture)
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

  if (scene->shape && scene->solved)
    lb_scene_add_rig (scene);
  lb_pass_end_second (scene, first);
}

static char *
describe (const LbScene *scene, const LbPassPicture *picture)
{
  GString *text = g_string_new (lb_pass_moment_words (scene, picture).text);
  double way = picture->reach_start - scene->setup.boat.position;
  LbPhrase far = lb_phrase_quantity (&scene->picture, LB_QUANTITY_LENGTH, fabs (way));

  g_string_append_c (text, ' ');
  g_string_append (text, lb_phrase_format (way < 0 ? _ ("The boat has come %s down the river.")
                                                   : _ ("The boat has come %s up the river."),
                                           far.text)
                             .text);
  lb_pass_describe_touches (scene, picture, text);
  lb_pass_describe_second (scene, picture, text);
  return g_string_free (text, FALSE);
}

LbScene *
lb_pass_side_view_new (LbDrawContext *context,
                       const LbPassPicture *picture,
                       const LbStyle *style,
                       const LbView *view,
                       double width,
                       double height)
{
  LbSetup setup = setup_now (picture);
  LbPicture now = picture->now;
  LbLabel second[LB_PASS_SECOND_LABELS];
  LbScene *scene;
  size_t n;

  now.setup = &setup;
  now.handles = NULL;
  scene = lb_scene_new (LB_SCENE_SIDE_VIEW, context, &now, style, view, width, height);
  scene->boat_layer = LB_LAYER_FOREGROUND;
  lb_scene_add_water (scene);
  lb_scene_add_upright_scales (scene);
  add_way_scale (scene, picture->reach_start);
  add_second (scene, picture);
  for (int thing = LB_TRACK_WEIGHT; thing < (int) picture->track.n_lures; thing++)
    add_touches (scene, picture, thing);
  lb_pass_add_trails (scene, picture, project_cb);
  add_times (scene, picture);
  lb_scene_add_boat (scene);
  lb_scene_add_current (scene);
  lb_scene_add_boat_speed (scene);
  add_second_rig (scene, picture);
  lb_scene_add_rig (scene);
  lb_scene_add_remark (scene);
  n = lb_pass_second_labels (scene, picture, project_cb, second);
  lb_labels_place_side (scene, second, n);
  scene->moment = describe (scene, picture);
  lb_scene_finish (scene);
  scene->shape = NULL;
  return scene;
}
