/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The boat, to scale: an open skiff seen from its side, bow upstream, reel on the near gunwale. */
#include "boat.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "phrases.h"

/* Where the boat's own metres lie: origin at the waterline under the reel. */
typedef struct
{
  LbScene *scene;
  double x, y, k;
} BoatFrame;

static BoatFrame
boat_frame (LbScene *scene)
{
  double x = lb_view_x (&scene->view, scene->setup.boat.position);
  double k = fmax (scene->view.per_metre_x, 11 * scene->style.scale);

  return (BoatFrame){ scene, x, lb_view_y (&scene->view, 0), k };
}

static void
move (const BoatFrame *f, double x, double z)
{
  lb_scene_move_to (f->scene, f->x + x * f->k, f->y - z * f->k);
}

static void
line (const BoatFrame *f, double x, double z)
{
  lb_scene_line_to (f->scene, f->x + x * f->k, f->y - z * f->k);
}

static void
curve (const BoatFrame *f, double x1, double z1, double x2, double z2, double x3, double z3)
{
  lb_scene_curve_to (f->scene, f->x + x1 * f->k, f->y - z1 * f->k, f->x + x2 * f->k,
                     f->y - z2 * f->k, f->x + x3 * f->k, f->y - z3 * f->k);
}

/* How deep the hull sits: less over a very shallow bed. */
static double
draught (const LbScene *scene)
{
  return fmin (0.16, 0.35 * scene->setup.river.depth);
}

double
lb_scene_hull_low (LbScene *scene, double px)
{
  BoatFrame f = boat_frame (scene);

  return px < f.x - 3.4 * f.k || px > f.x + 1.8 * f.k ? f.y : f.y + draught (scene) * f.k;
}

/* The motor's leg, fainter where it is under water. */
static void
add_motor (const BoatFrame *f)
{
  double deep = fmin (0.42, 0.6 * f->scene->setup.river.depth);
  LbLook leg = { .fill = LB_COLOUR_HULL_TRIM };
  LbLook wet = { .fill = LB_COLOUR_HULL_TRIM, .opacity = 0.4 };
  LbLook cowl = { .fill = LB_COLOUR_HULL_LINE };

  lb_scene_begin (f->scene, f->scene->boat_layer);
  move (f, 1.36, 0.50);
  line (f, 1.50, 0.50);
  line (f, 1.485, 0);
  line (f, 1.375, 0);
  lb_scene_close (f->scene);
  lb_scene_end_pickable (f->scene, leg, LB_PICK_BOAT, 0);

  lb_scene_begin (f->scene, f->scene->boat_layer);
  move (f, 1.375, 0);
  line (f, 1.485, 0);
  line (f, 1.47, -0.5 * deep);
  line (f, 1.66, -0.8 * deep);
  line (f, 1.60, -deep);
  line (f, 1.40, -0.75 * deep);
  lb_scene_close (f->scene);
  lb_scene_end_pickable (f->scene, wet, LB_PICK_BOAT, 0);

  lb_scene_begin (f->scene, f->scene->boat_layer);
  move (f, 1.27, 0.50);
  curve (f, 1.22, 0.80, 1.30, 0.94, 1.48, 0.94);
  curve (f, 1.64, 0.94, 1.68, 0.72, 1.62, 0.50);
  lb_scene_close (f->scene);
  lb_scene_end_pickable (f->scene, cowl, LB_PICK_BOAT, 0);
}

static void
add_hull (const BoatFrame *f)
{
  double d = draught (f->scene);
  LbLook hull = {
    .fill = LB_COLOUR_HULL,
    .stroke = LB_COLOUR_HULL_LINE,
    .width = f->scene->style.outline_width * 1.3,
  };
  LbLook stripe = { .fill = LB_COLOUR_HULL_TRIM };

  lb_scene_begin (f->scene, f->scene->boat_layer);
  move (f, -3.75, 0.92);
  curve (f, -2.6, 0.62, -1.2, 0.54, 1.32, 0.58);
  line (f, 1.24, -d);
  line (f, -1.9, -d);
  curve (f, -2.75, -d, -3.25, 0.25, -3.75, 0.92);
  lb_scene_close (f->scene);
  lb_scene_end_pickable (f->scene, hull, LB_PICK_BOAT, 0);

  lb_scene_begin (f->scene, f->scene->boat_layer);
  move (f, -3.70, 0.88);
  curve (f, -2.6, 0.60, -1.2, 0.53, 1.315, 0.565);
  line (f, 1.295, 0.43);
  curve (f, -1.2, 0.39, -2.6, 0.46, -3.52, 0.65);
  lb_scene_close (f->scene);
  lb_scene_end_pickable (f->scene, stripe, LB_PICK_BOAT, 0);
}

/* The water in front of the hull below the waterline: along the hull's own outline. */
static void
add_water_over_hull (const BoatFrame *f)
{
  double d = draught (f->scene), low = d + 1.2 * f->scene->style.outline_width / f->k;
  LbLook veil = { .fill = LB_COLOUR_WATER_TOP, .opacity = 0.62 };

  lb_scene_begin (f->scene, f->scene->boat_layer);
  move (f, 1.30, 0);
  line (f, 1.27, -low);
  line (f, -1.9, -low);
  for (int i = 1; i < 24; i++)
    {
      double t = i / 24.0, u = 1 - t;
      double x = -1.9 * u * u * u - 3 * 2.75 * u * u * t - 3 * 3.25 * u * t * t - 3.75 * t * t * t;
      double z = -low * u * u * u - 3 * low * u * u * t + 3 * 0.25 * u * t * t + 0.92 * t * t * t;

      if (z >= 0)
        break;
      line (f, x, z);
    }
  lb_scene_close (f->scene);
  lb_scene_end (f->scene, veil);
}

void
lb_scene_add_boat (LbScene *scene)
{
  BoatFrame f = boat_frame (scene);
  LbLook surface = {
    .stroke = LB_COLOUR_SURFACE,
    .width = 1.6 * scene->style.scale,
  };

  add_motor (&f);
  add_hull (&f);
  add_water_over_hull (&f);
  lb_scene_begin (scene, scene->boat_layer);
  lb_scene_move_to (scene, 0, f.y);
  lb_scene_line_to (scene, scene->width, f.y);
  lb_scene_end_pickable (scene, surface, LB_PICK_SURFACE, 0);

  lb_scene_take (scene, (LbBox){ f.x - 3.75 * f.k, f.y - 0.95 * f.k, 5.45 * f.k, 0.95 * f.k });
  lb_scene_take (scene, (LbBox){ f.x - 3.0 * f.k, f.y, 4.3 * f.k, draught (scene) * f.k });
}

/* An arrow over the bow, and the boat's speed over the ground. */
void
lb_scene_add_boat_speed (LbScene *scene)
{
  BoatFrame f = boat_frame (scene);
  double s = scene->style.scale;
  double speed = scene->setup.boat.speed_over_ground;
  LbPhrase value = lb_phrase_quantity (&scene->picture, LB_QUANTITY_SPEED, speed);
  LbPhrase words = speed > 0 ? lb_phrase_format (_ ("Boat %s over the ground"), value.text)
                             : lb_phrase_format ("%s", _ ("Boat holds its place"));
  LbText text = lb_scene_text (scene, LB_FONT_PLAIN, words.text);
  double length = speed > 0 ? 26 * s : 0;
  double x = fmax (8 * s, f.x - 2.9 * f.k);
  double reel = LB_BOAT_RAIL * f.k + 2 * fmax (0.15 * f.k, 6 * s); /* is never drawn too small */
  double y = f.y - fmax (0.98 * f.k, reel) - text.height;
  LbBox box = { x, y, length + 6 * s + text.width, text.height };
  LbLook shaft = { .stroke = LB_COLOUR_HULL_TRIM, .width = 2 * s };
  LbLook head = { .fill = LB_COLOUR_HULL_TRIM };

  box.y = y = fmax (2 * s, y);
  if (!lb_scene_is_free (scene, box, 0))
    return;
  if (length > 0)
    {
      double middle = y + text.height / 2;

      lb_scene_line (scene, LB_LAYER_FOREGROUND, x + 4 * s, middle, x + length, middle, shaft);
      lb_scene_begin (scene, LB_LAYER_FOREGROUND);
      lb_scene_add_arrow_head (scene, x, middle, G_PI, 10 * s);
      lb_scene_end (scene, head);
      length += 6 * s;
    }
  lb_scene_put_text (scene, LB_LAYER_FOREGROUND, text, x + length, y, LB_COLOUR_TEXT);
  lb_scene_take (scene, box);
}
