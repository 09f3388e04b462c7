/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_parts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "overlay.h"

/* Trails are cut into items of about this length: only the last one grows. Style units. */
#define CHUNK 110.0
#define NEAREST_NODES 1.6 /* drawing units between two points of a trail */
#define MOST_CHUNKS 600
#define MOST_MARKS 240

/* The weight is the solid dark one. Three colours go with four patterns, so that eight lures differ
 * from one another in at least one of them, and three in both. */
LbColour
lb_pass_colour (int thing)
{
  return thing < 0 ? lb_overlay_colour (0) : lb_overlay_colour (1 + (size_t) thing % 3);
}

LbLinePattern
lb_pass_pattern (int thing)
{
  return thing < 0 ? LB_LINE_SOLID
                   : lb_overlay_pattern (1 + (size_t) thing % 3 + (size_t) (thing / 3));
}

const LbTrackPoint *
lb_pass_thing (const LbTrackMoment *moment, int thing)
{
  return thing < 0 ? &moment->weight : &moment->lures[thing];
}

LbPhrase
lb_pass_thing_words (const LbScene *scene, int thing)
{
  if (thing < 0)
    return lb_phrase_format ("%s", _ ("Weight"));
  return lb_phrase_lure_place (&scene->picture, (size_t) thing);
}

LbPhrase
lb_pass_time_words (const LbScene *scene, double time)
{
  return lb_phrase_format (_ ("%s s"), lb_phrase_number (&scene->picture, time, 1).text);
}

LbPhrase
lb_pass_moment_words (const LbScene *scene, const LbPassPicture *picture)
{
  LbPhrase now = lb_pass_time_words (scene, picture->time);
  LbPhrase all = lb_phrase_format (
      _ ("%s s"), lb_phrase_number (&scene->picture, picture->track.duration, 0).text);

  return lb_phrase_format (_ ("At %s of a pass of %s."), now.text, all.text);
}

/* ---- Marks of time ---- */

double
lb_pass_mark_step (const LbPassPicture *picture, double per_metre, double least)
{
  static const double steps[] = { 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200, 3600 };
  const LbPassTrack *track = &picture->track;
  size_t stride = 1 + track->n / 256; /* a course has no sharp bends */
  double way = 0, time = 0;

  for (size_t i = stride; i < track->n; i += stride)
    way += hypot (track->moments[i].reel.x - track->moments[i - stride].reel.x,
                  track->moments[i].reel.y - track->moments[i - stride].reel.y);
  if (track->n > 1)
    time = track->moments[track->n - 1].time - track->moments[0].time;
  for (size_t i = 0; i < G_N_ELEMENTS (steps); i++)
    if (way * per_metre * steps[i] >= least * time && steps[i] * MOST_MARKS >= track->duration)
      return steps[i];
  return steps[G_N_ELEMENTS (steps) - 1];
}

static LbLook
trail_look (const LbScene *scene, int thing)
{
  double s = scene->style.scale;

  return (LbLook){ .stroke = lb_pass_colour (thing),
                   .width = (thing < 0 ? 1.5 : 2.0) * s,
                   .pattern = lb_pass_pattern (thing),
                   .opacity = 0.85 };
}

/* A ring on the trail, filled for the weight; a square on those of the second rig. None over words.
 */
static void
add_mark (LbScene *scene, int thing, LbSpot at)
{
  double r = 3 * scene->style.scale;
  LbBox box = { at.x - r, at.y - r, 2 * r, 2 * r };
  LbLook look = {
    .fill = thing < 0 ? lb_pass_colour (thing) : LB_COLOUR_CARD,
    .stroke = lb_pass_colour (thing),
    .width = 1.5 * scene->style.scale,
  };

  if (!lb_scene_is_free (scene, box, 1))
    return;
  if (scene->is_second)
    {
      lb_pass_add_square (scene, LB_LAYER_FOREGROUND, at.x, at.y, look.stroke);
      return;
    }
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, at.x, at.y, r, r);
  lb_scene_end (scene, look);
}

static void
add_marks (LbScene *scene, const LbPassPicture *picture, int thing, LbPassProject project)
{
  double step = lb_pass_mark_step (picture, scene->view.per_metre_x, 70 * scene->style.scale);
  LbTrackMoment m;

  for (double t = 0; t <= picture->time && lb_track_at (&picture->track, t, &m); t += step)
    {
      LbSpot at = project (scene, lb_pass_thing (&m, thing)->position);

      if (at.x > -10 && at.x < scene->width + 10)
        add_mark (scene, thing, at);
    }
}

/* ---- Trails ---- */

/* Seconds that one item of a trail takes: fixed for a pass, so that those behind stay the same. */
static double
chunk_time (const LbScene *scene, const LbPassPicture *picture)
{
  double chunk = lb_pass_mark_step (picture, scene->view.per_metre_x, CHUNK * scene->style.scale);

  return fmax (chunk, picture->track.duration / MOST_CHUNKS);
}

static bool
is_seen (const LbScene *scene, LbSpot a, LbSpot b)
{
  return fmax (a.x, b.x) > -20 && fmin (a.x, b.x) < scene->width + 20;
}

/* The piece of a trail from moment `from` to moment `to`, both included, and on to `end` if not
 * NULL. */
static void
add_piece (LbScene *scene,
           const LbPassPicture *picture,
           int thing,
           LbPassProject project,
           size_t from,
           size_t to,
           const LbTrackMoment *end)
{
  const LbTrackMoment *moments = picture->track.moments;
  LbSpot first = project (scene, lb_pass_thing (&moments[from], thing)->position), last = first;
  LbSpot tip = project (scene, lb_pass_thing (end ? end : &moments[to], thing)->position);

  if (!is_seen (scene, first, tip))
    return;
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (scene, first.x, first.y);
  for (size_t i = from + 1; i <= to; i++)
    {
      LbSpot at = project (scene, lb_pass_thing (&moments[i], thing)->position);

      if (hypot (at.x - last.x, at.y - last.y) < NEAREST_NODES && (i < to || end))
        continue;
      lb_scene_line_to (scene, at.x, at.y);
      last = at;
    }
  if (end)
    lb_scene_line_to (scene, tip.x, tip.y);
  lb_scene_note_line (scene, first.x, first.y, tip.x, tip.y);
  lb_scene_end (scene, trail_look (scene, thing));
}

static void
add_trail (LbScene *scene, const LbPassPicture *picture, int thing, LbPassProject project)
{
  const LbPassTrack *track = &picture->track;
  size_t n = lb_track_until (track, picture->time), from = 0;
  double chunk = chunk_time (scene, picture);
  LbTrackMoment now;

  while (from + 1 < n)
    {
      double until = chunk * (floor (track->moments[from].time / chunk + 1e-9) + 1);
      size_t to = lb_track_until (track, until + 1e-9) - 1;

      if (to <= from)
        to = from + 1;
      if (to >= n - 1)
        break;
      add_piece (scene, picture, thing, project, from, to, NULL);
      from = to;
    }
  if (n > 0 && lb_track_at (track, picture->time, &now))
    add_piece (scene, picture, thing, project, from, n - 1, &now);
}

void
lb_pass_add_trails (LbScene *scene, const LbPassPicture *picture, LbPassProject project)
{
  int n = (int) picture->track.n_lures;

  for (int thing = n - 1; thing >= LB_TRACK_WEIGHT; thing--)
    add_trail (scene, picture, thing, project);
  for (int thing = n - 1; thing >= LB_TRACK_WEIGHT; thing--)
    add_marks (scene, picture, thing, project);
}

/* ---- In words ---- */

#define MOST_TOUCHES_TOLD 6

static LbPhrase
way_words (const LbScene *scene, const LbPassPicture *picture, const LbTrackMoment *m, int thing)
{
  double way = picture->reach_start - lb_pass_thing (m, thing)->position.x;

  /* Translators: how far up the river from where the pass began */
  return lb_phrase_format (
      way < 0 ? _ ("%s back from the start") : _ ("%s up from the start"),
      lb_phrase_quantity (&scene->picture, LB_QUANTITY_LENGTH, fabs (way)).text);
}

static void
describe_thing (const LbScene *scene, const LbPassPicture *picture, int thing, GString *text)
{
  const LbPassTrack *track = &picture->track;
  size_t n = lb_track_until (track, picture->time), touches = 0;
  LbPhrase name = lb_pass_thing_words (scene, thing);
  GString *where = g_string_new (NULL);

  for (size_t i = 0; i < n; i++)
    {
      if (!lb_pass_thing (&track->moments[i], thing)->touched
          || (i > 0 && lb_pass_thing (&track->moments[i - 1], thing)->touched))
        continue;
      if (touches++ < MOST_TOUCHES_TOLD)
        g_string_append_printf (where, "%s%s", where->len ? "; " : "",
                                way_words (scene, picture, &track->moments[i], thing).text);
    }
  if (touches == 0)
    g_string_append_printf (text, " %s",
                            lb_phrase_format (_ ("%s: has not touched so far."), name.text).text);
  else
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("%s: touched the bed %s"), name.text, where->str);
      g_string_append (text, touches > MOST_TOUCHES_TOLD ? _ (" and so on.") : ".");
    }
  g_string_free (where, TRUE);
}

void
lb_pass_describe_touches (const LbScene *scene, const LbPassPicture *picture, GString *text)
{
  for (int thing = LB_TRACK_WEIGHT; thing < (int) picture->track.n_lures; thing++)
    describe_thing (scene, picture, thing, text);
}
