/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The water's speed against depth, as arrows at the upstream edge. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "phrases.h"

#define BASE_X 58.0 /* style units */
#define LONGEST 82.0
#define SPACING 25.0
#define LABEL_STEP 20.0

typedef struct
{
  LbScene *scene;
  double base, surface, bed; /* drawing units */
  double top;                /* where the words at the surface may begin */
  double x;                  /* m */
  double per_speed;          /* drawing units of length for 1 m/s */
} Arrows;

static double
speed_at (const Arrows *a, double y)
{
  return lb_current_at (&a->scene->current, a->x, lb_view_world_z (&a->scene->view, y)).speed;
}

static void
add_arrow (const Arrows *a, double y)
{
  double s = a->scene->style.scale;
  double tip = a->base + speed_at (a, y) * a->per_speed;
  double head = fmin (10 * s, fmax (2, 0.8 * (tip - a->base)));
  LbLook shaft = { .stroke = LB_COLOUR_CURRENT, .width = 1.8 * s };
  LbLook point = { .fill = LB_COLOUR_CURRENT };

  if (tip - a->base > head)
    lb_scene_line (a->scene, LB_LAYER_FOREGROUND, a->base, y, tip - 0.8 * head, y, shaft);
  lb_scene_begin (a->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_arrow_head (a->scene, tip, y, 0, head);
  lb_scene_end_pickable (a->scene, point, LB_PICK_CURRENT, 0);
}

/* The tips joined: the profile's own shape, with a tint under it. */
static void
add_profile (const Arrows *a)
{
  double s = a->scene->style.scale;
  LbLook tint = { .fill = LB_COLOUR_CURRENT, .opacity = 0.10 };
  LbLook edge = { .stroke = LB_COLOUR_CURRENT, .width = 1 * s, .opacity = 0.55 };

  for (int pass = 0; pass < 2; pass++)
    {
      lb_scene_begin (a->scene, LB_LAYER_FOREGROUND);
      lb_scene_move_to (a->scene, a->base, a->surface);
      for (int i = 0; i <= 24; i++)
        {
          double t = i / 24.0, y = a->surface + (a->bed - a->surface) * (1 - (1 - t) * (1 - t));

          lb_scene_line_to (a->scene, a->base + speed_at (a, y) * a->per_speed, y);
        }
      lb_scene_line_to (a->scene, a->base, a->bed);
      if (pass == 0)
        lb_scene_close (a->scene);
      lb_scene_end_pickable (a->scene, pass ? edge : tint, LB_PICK_CURRENT, 0);
    }
}

/* At the surface, or the next free place down through the water; in very shallow water, where there
 * is none, under the bed. */
static void
add_surface_value (const Arrows *a, const char *words)
{
  double s = a->scene->style.scale, low = fmin (a->bed, a->scene->height) - 40 * s;

  for (double y = a->top; y <= low; y += LABEL_STEP * s)
    if (lb_scene_try_text (a->scene, LB_LAYER_FOREGROUND, LB_FONT_STRONG, words, a->base, y, 0, 0,
                           LB_COLOUR_TEXT, false))
      return;
  if (a->top > low)
    lb_scene_try_text (a->scene, LB_LAYER_FOREGROUND, LB_FONT_STRONG, words, a->base,
                       a->bed + 4 * s, 0, 0, LB_COLOUR_TEXT_ON_BED, false);
}

/* "Current 2.7 mph"; where the surface is out of sight, that it is meant. */
static LbPhrase
surface_words (const Arrows *a)
{
  LbPhrase top =
      lb_phrase_quantity (&a->scene->picture, LB_QUANTITY_SPEED, speed_at (a, a->surface));

  return lb_phrase_format (a->surface < 0 ? _ ("Current %s at the surface") : _ ("Current %s"),
                           top.text);
}

static void
add_values (const Arrows *a, double near_y)
{
  LbScene *scene = a->scene;
  double s = scene->style.scale;
  double near_height = (a->bed - near_y) / scene->view.per_metre_z;
  LbPhrase low = lb_phrase_quantity (&scene->picture, LB_QUANTITY_SPEED, speed_at (a, near_y));
  LbPhrase height = lb_phrase_height_value (&scene->picture, near_height);

  add_surface_value (a, surface_words (a).text);
  if (near_y > a->top + 36 * s)
    lb_scene_try_text (scene, LB_LAYER_FOREGROUND, LB_FONT_PLAIN,
                       lb_phrase_format (_ ("%s, %s up"), low.text, height.text).text, a->base,
                       near_y - 4 * s, 0, 1, LB_COLOUR_TEXT, false);
}

void
lb_scene_add_current (LbScene *scene)
{
  double s = scene->style.scale;
  double largest;
  Arrows a = { .scene = scene, .base = BASE_X * s, .surface = lb_view_y (&scene->view, 0) };
  double first, last, room;
  int n;

  a.top =
      fmax (lb_scene_hull_low (scene, a.base), lb_scene_hull_low (scene, a.base + 130 * s)) + 4 * s;
  /* Closer to the rig the surface is above the drawing. */
  a.top = fmax (a.top, 4 * s);
  a.x = lb_view_world_x (&scene->view, a.base);
  a.bed = lb_scene_bed_y (scene, a.base);
  largest = fmax (speed_at (&a, a.surface), speed_at (&a, (a.surface + a.bed) / 2));
  if (largest <= 0)
    {
      add_surface_value (&a, _ ("No current"));
      return;
    }
  a.per_speed = LONGEST * s / fmax (largest, 1.2);

  first = a.top + 23 * s < a.bed - 12 * s ? a.top + 23 * s : (a.surface + a.bed) / 2;
  last = a.bed - fmax (lb_phrase_near_bed (&scene->picture) * scene->view.per_metre_z, 5 * s);
  last = fmax (first, last);
  room = last - first;
  n = (int) fmin (12, floor (room / (SPACING * s)));
  add_profile (&a);
  for (int i = 0; i <= n; i++)
    add_arrow (&a, n > 0 ? first + room * i / n : first);
  add_values (&a, last);
  lb_scene_take (scene, (LbBox){ a.base, a.surface, LONGEST * s, a.bed - a.surface });
}
