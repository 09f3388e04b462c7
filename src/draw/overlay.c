/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "overlay.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "labels.h"

/* Places in the label memory, after those of the single drawings. */
enum
{
  MEMORY_NAMES = 48,
  MEMORY_LURES = 52,
};

/* Where beds of two runs count as different, m. */
#define SAME_BED 0.001

/* The flatter a wire, the higher up its name stands, so that pointers do not cross. */
#define FLATTEST_NAME 0.40
#define STEEPER_NAME 0.14

static LbPicture
picture_like (const LbPicture *like, const LbSetup *setup)
{
  LbPicture picture = *like;

  picture.setup = setup;
  picture.shape = NULL;
  picture.readings = NULL;
  picture.status = LB_STATUS_BAD_SETUP;
  picture.remark = NULL;
  picture.handles = NULL;
  return picture;
}

LbOverlay
lb_overlay_of_runs (const LbComparedRuns *runs, const LbPicture *like)
{
  LbOverlay overlay = { .ground = picture_like (like, runs->ground), .n = runs->n };

  overlay.ground.remark = runs->remark;
  for (size_t i = 0; i < runs->n; i++)
    {
      const LbComparedRun *run = &runs->runs[i];
      LbPicture picture = picture_like (like, run->setup);

      picture.shape = run->shape;
      picture.readings = run->readings;
      picture.status = run->status;
      overlay.runs[i] = (LbOverlayRun){ run->name, run->words, picture };
    }
  return overlay;
}

LbExtents
lb_overlay_extents (const LbOverlay *overlay)
{
  LbExtents all = { 0 };
  bool any = false;

  for (size_t i = 0; i < overlay->n; i++)
    {
      LbExtents own;

      if (!lb_picture_is_solved (&overlay->runs[i].picture))
        continue;
      own = lb_picture_extents (&overlay->runs[i].picture);
      if (!any)
        all = own;
      all.x_min = fmin (all.x_min, own.x_min);
      all.x_max = fmax (all.x_max, own.x_max);
      all.z_min = fmin (all.z_min, own.z_min);
      all.z_max = fmax (all.z_max, own.z_max);
      all.x_rig = fmin (all.x_rig, own.x_rig);
      any = true;
    }
  return any ? all : lb_picture_extents (&overlay->ground);
}

/* ---- One run after the other ---- */

/* Makes the scene draw that picture's rig over the river that it has: as run `run`, or -1 for the
 * ground. */
static void
use (LbScene *scene, const LbPicture *picture, int run)
{
  scene->run = run;
  scene->setup = *picture->setup;
  scene->solved = run >= 0 && lb_picture_is_solved (picture);
  if (scene->solved)
    scene->readings = *picture->readings;
  scene->picture.status = picture->status;
  scene->picture.readings = scene->solved ? &scene->readings : NULL;
  scene->shape = scene->solved ? picture->shape : NULL;
  lb_current_init (&scene->current, &scene->setup.river);
}

static LbScene *
start (LbSceneKind kind,
       LbDrawContext *context,
       const LbOverlay *overlay,
       const LbStyle *style,
       const LbView *view,
       double width,
       double height)
{
  LbScene *scene = lb_scene_new (kind, context, &overlay->ground, style, view, width, height);

  use (scene, &overlay->ground, -1);
  return scene;
}

static LbScene *
end (LbScene *scene, const LbOverlay *overlay, const LbLabel *labels, size_t n, GString *words)
{
  use (scene, &overlay->ground, -1);
  lb_labels_place (scene, labels, n);
  lb_scene_finish (scene);
  scene->words = g_string_free (words, FALSE);
  return scene;
}

static void
add_words (GString *words, const char *more)
{
  g_string_append_printf (words, "%s%s", words->len ? " " : "", more);
}

/* ---- Side view ---- */

static bool
has_same_bed (const LbScene *scene, const LbPicture *ground)
{
  LbBed bed;

  lb_bed_init (&bed, &ground->setup->river);
  for (int i = 0; i <= 64; i++)
    {
      double x = lb_view_world_x (&scene->view, scene->width * i / 64);

      if (fabs (lb_bed_at (&bed, x).depth - lb_bed_at (&scene->current.bed, x).depth) > SAME_BED)
        return false;
    }
  return true;
}

/* The bed that this run hangs over, where it is not the one that is drawn. */
static void
add_own_bed (LbScene *scene, const LbPicture *ground)
{
  LbLook look = { .stroke = LB_COLOUR_WIRE, .width = 1.2 * scene->style.scale };

  if (has_same_bed (scene, ground))
    return;
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  for (int i = 0; i <= 100; i++)
    {
      double px = scene->width * i / 100;

      if (i == 0)
        lb_scene_move_to (scene, px, lb_scene_bed_y (scene, px));
      else
        lb_scene_line_to (scene, px, lb_scene_bed_y (scene, px));
    }
  lb_scene_end_pickable (scene, look, LB_PICK_BED, 0);
}

/* How many of the runs have a flatter wire. */
static size_t
flatter_than (const LbOverlay *overlay, size_t run)
{
  size_t n = 0;

  for (size_t i = 0; i < overlay->n; i++)
    if (lb_picture_is_solved (&overlay->runs[i].picture)
        && overlay->runs[i].picture.readings->wire_angle
               > overlay->runs[run].picture.readings->wire_angle)
      n++;
  return n;
}

/* The steepest first: it is the one that the others' pointers would have to cross. */
static void
sort_labels (LbLabel *labels, size_t n)
{
  for (size_t i = 1; i < n; i++)
    for (size_t j = i; j > 0 && labels[j].y > labels[j - 1].y; j--)
      {
        LbLabel other = labels[j];

        labels[j] = labels[j - 1];
        labels[j - 1] = other;
      }
}

static LbLabel
name_label (const LbScene *scene, const LbOverlay *overlay, size_t i)
{
  const LbOverlayRun *run = &overlay->runs[i];
  const LbReadings *r = &scene->readings;
  LbLabel label = {
    .memory = MEMORY_NAMES + (int) i,
    .clear = 3 * scene->style.scale,
    /* The flatter wires are named to the right of them, the steeper to the left. */
    .toward = 2 * flatter_than (overlay, i) + 1 < overlay->n ? -0.2 : 2.9,
    .title_font = LB_FONT_STRONG,
    .accent = lb_overlay_colour (i),
    .pattern = lb_overlay_pattern (i),
  };
  LbPhrase name = lb_phrase_format ("%s", run->name);
  LbPhrase angle = lb_phrase_quantity (&scene->picture, LB_QUANTITY_ANGLE, r->wire_angle);
  LbPhrase line = lb_phrase_quantity (&scene->picture, LB_QUANTITY_LENGTH, r->line_out);

  lb_scene_along_wire (scene, FLATTEST_NAME + STEEPER_NAME * (double) flatter_than (overlay, i),
                       &label.x, &label.y);
  label.wordings[0].title = name;
  /* Translators: wire angle and line out: "31°, 24 ft 6 in out" */
  label.wordings[0].detail = lb_phrase_format (_ ("%s, %s out"), angle.text, line.text);
  label.wordings[1].title = name;
  label.wordings[1].detail = angle;
  label.wordings[2].title = name;
  return label;
}

static void
describe_run (GString *words, const LbOverlayRun *run, size_t i)
{
  g_autofree char *text = NULL;

  if (lb_picture_is_solved (&run->picture))
    /* Translators: a variant's name, how its lines are drawn, how it runs */
    text = g_strdup_printf (_ ("%s, as a %s: %s."), run->name, lb_overlay_pattern_words (i),
                            run->words);
  else
    text = g_strdup_printf (_ ("%s is not drawn: %s"), run->name, run->words);
  add_words (words, text);
}

LbScene *
lb_overlay_side_view_new (LbDrawContext *context,
                          const LbOverlay *overlay,
                          const LbStyle *style,
                          const LbView *view,
                          double width,
                          double height)
{
  LbScene *scene = start (LB_SCENE_SIDE_VIEW, context, overlay, style, view, width, height);
  LbLabel labels[LB_OVERLAY_MOST];
  GString *words = g_string_new (NULL);
  size_t n = 0;

  lb_scene_add_water (scene);
  lb_scene_add_side_scales (scene);
  lb_scene_add_boat (scene);
  lb_scene_add_current (scene);
  lb_scene_add_boat_speed (scene);
  for (size_t i = 0; i < overlay->n; i++)
    {
      const LbOverlayRun *run = &overlay->runs[i];

      describe_run (words, run, i);
      use (scene, &run->picture, (int) i);
      if (i == 0 || scene->solved)
        lb_scene_add_rig (scene);
      if (!scene->solved)
        continue;
      add_own_bed (scene, &overlay->ground);
      labels[n++] = name_label (scene, overlay, i);
    }
  use (scene, &overlay->ground, -1);
  if (scene->remark)
    lb_scene_add_remark_words (scene, scene->remark);
  sort_labels (labels, n);
  return end (scene, overlay, labels, n, words);
}

/* ---- Bed strip ---- */

static LbLabel
lure_label (const LbScene *scene, const LbOverlayRun *run, size_t i, size_t lure, bool is_crowded)
{
  const LbLureReading *reading = &scene->readings.lures[lure];
  LbPhrase place = lb_phrase_lure_place (&scene->picture, lure);
  LbPhrase height = lb_phrase_height_value (&scene->picture, reading->at.height);
  const char *band = lb_phrase_band (reading->band), *less = lb_phrase_band_short (reading->band);
  LbLabel label = {
    .memory = MEMORY_LURES + (int) (i * (LB_LABELS_MOST / LB_OVERLAY_MOST) + lure) % LB_LABELS_MOST,
    .clear = 12 * scene->style.scale,
    .toward = reading->at.height > 0.5 * scene->strip_high ? 0.9 : -0.9,
    .title_font = LB_FONT_PLAIN,
    .accent = lb_overlay_colour (i),
    .pattern = lb_overlay_pattern (i),
  };

  lb_scene_strip_marker_place (scene, lure, &label.x, &label.y);
  /* Translators: a variant, one of its lures, its height off the bed, where that is */
  label.wordings[0].title =
      lb_phrase_format (_ ("%s, %s: %s, %s"), run->name, place.text, height.text, band);
  label.wordings[1].title = lb_phrase_format (_ ("%s: %s, %s"), run->name, height.text, less);
  label.wordings[2].title = lb_phrase_format (_ ("%s: %s"), run->name, height.text);
  /* Of many, what is as wanted needs no words. */
  if (is_crowded)
    label.wordings[0] = label.wordings[reading->band == LB_BAND_INSIDE ? 2 : 1];
  return label;
}

static void
describe_strip_run (const LbScene *scene, GString *words, const LbOverlayRun *run)
{
  GString *text = g_string_new (NULL);

  for (size_t i = 0; i < scene->readings.n_leaders; i++)
    {
      const LbLureReading *lure = &scene->readings.lures[i];
      LbPhrase place = lb_phrase_lure_place (&scene->picture, i);
      LbPhrase height = lb_phrase_height (&scene->picture, lure->at.height, lure->at.on_bed);

      g_string_append_printf (
          text, "%s%s", i ? "; " : "",
          lb_phrase_format (_ ("%s %s, %s"), place.text, height.text, lb_phrase_band (lure->band))
              .text);
    }
  if (text->len > 0)
    {
      g_autofree char *whole = g_strdup_printf ("%s: %s.", run->name, text->str);

      add_words (words, whole);
    }
  g_string_free (text, TRUE);
}

LbScene *
lb_overlay_strip_new (LbDrawContext *context,
                      const LbOverlay *overlay,
                      const LbStyle *style,
                      const LbView *view,
                      double width,
                      double height)
{
  LbScene *scene = start (LB_SCENE_BED_STRIP, context, overlay, style, view, width, height);
  LbLabel labels[LB_LABELS_MOST];
  GString *words = g_string_new (NULL);
  size_t n = 0, per_run = LB_LABELS_MOST / MAX (overlay->n, 1);

  lb_scene_add_strip_water (scene);
  lb_scene_add_strip_scales (scene);
  for (size_t i = 0; i < overlay->n; i++)
    {
      use (scene, &overlay->runs[i].picture, (int) i);
      lb_scene_add_strip_rig (scene);
    }
  for (size_t i = 0; i < overlay->n; i++)
    {
      const LbOverlayRun *run = &overlay->runs[i];

      use (scene, &run->picture, (int) i);
      if (!scene->solved)
        continue;
      lb_scene_add_strip_markers (scene);
      describe_strip_run (scene, words, run);
      for (size_t lure = 0; lure < MIN (scene->readings.n_leaders, per_run); lure++)
        if (n < LB_LABELS_MOST)
          labels[n++] = lure_label (scene, run, i, lure, overlay->n > 2);
    }
  return end (scene, overlay, labels, n, words);
}
