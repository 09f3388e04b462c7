/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pass from above: downstream to the right, the boat's course, the rig at the moment with the
 * trails so far, where it touched, and how near its lines came. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "axes.h"
#include "pass_above_private.h"

/* ---- The river ---- */

LbSpot
lb_above_project (const LbScene *scene, LbVec3 at)
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
      LbSpot at = lb_above_project (scene, track->moments[i].reel);

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
      LbSpot at = lb_above_project (scene, point->position);

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
  lb_pass_add_trails (scene, &second, lb_above_project);
  lb_pass_end_second (scene, first);
}

static void
add_second_rig (LbScene *scene, const LbPassPicture *picture)
{
  LbPassFirst first = lb_pass_begin_second (scene, picture);
  LbTrackMoment now;

  if (lb_pass_second_at (picture, &now))
    {
      lb_above_add_reel (scene, &now);
      lb_above_add_rig (scene);
    }
  lb_pass_end_second (scene, first);
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
  lb_pass_add_trails (scene, picture, lb_above_project);
  if (is_known)
    {
      lb_above_add_boat (scene, &now);
      add_second_rig (scene, picture);
      lb_above_add_reel (scene, &now);
      lb_above_add_rig (scene);
      for (int thing = LB_TRACK_WEIGHT; thing < (int) picture->track.n_lures; thing++)
        labels[n++] = lb_above_thing_label (scene, &now, thing);
      if (lb_above_may_tangle (picture, closest))
        labels[n++] = lb_above_add_closest (scene, closest);
      labels[n++] = lb_above_boat_label (scene, &now);
      n += lb_pass_second_labels (scene, picture, lb_above_project, &labels[n]);
    }
  lb_scene_add_remark (scene);
  lb_labels_place (scene, labels, n);
  scene->words = lb_above_describe (scene, picture, is_known ? &now : NULL, closest);
  lb_scene_finish (scene);
  scene->shape = NULL;
  return scene;
}
