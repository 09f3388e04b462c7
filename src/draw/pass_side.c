/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The side view of a pass: boat and rig at a moment over a bed at rest, with the trails so far. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat.h"
#include "pass_parts.h"

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
  LbSetup setup = lb_pass_setup_now (picture);
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
