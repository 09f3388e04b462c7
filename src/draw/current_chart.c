/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "current_chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "chart_axes.h"

#define PIECES 80
#define BED_BAND 7.0 /* style units, under the plot */
#define ARROW_SPACING 22.0
#define STILL 1e-6 /* m/s */

typedef struct
{
  LbScene *scene;
  LbPlot plot;
  const LbRiver *river;
  double surface, near, mean, most; /* m/s */
  double near_height;               /* m */
} Chart;

static double
speed_at (const Chart *c, double height)
{
  return lb_current_at (&c->scene->current, 0, height - c->river->depth).speed;
}

/* Heights that stand closer near the bed, where the curve bends most. */
static double
height_of_piece (const Chart *c, int i)
{
  double t = (double) i / PIECES;

  return c->river->depth * t * t;
}

static void
find_speeds (Chart *c)
{
  c->near_height = fmin (lb_phrase_near_bed (&c->scene->picture), c->river->depth / 2);
  c->surface = speed_at (c, c->river->depth);
  c->near = speed_at (c, c->near_height);
  c->mean = lb_current_mean (&c->scene->current, 0);
  c->most = 0;
  for (int i = 0; i <= PIECES; i++)
    c->most = fmax (c->most, speed_at (c, height_of_piece (c, i)));
}

/* Room for the numbers of the axes; the speed axis starts at 0 and has room to the right. */
static void
lay_out (Chart *c)
{
  double s = c->scene->style.scale;

  c->plot = (LbPlot){
    .left = 34 * s,
    .right = c->scene->width - 12 * s,
    .top = 31 * s,
    .bottom = c->scene->height - (40 + BED_BAND) * s,
    .x_to = fmax (1.12 * c->most, 0.1),
    .y_to = c->river->depth,
  };
}

static void
add_ground (const Chart *c)
{
  const LbPlot *p = &c->plot;
  double s = c->scene->style.scale;
  LbLook surface = { .stroke = LB_COLOUR_SURFACE, .width = 1.6 * s };
  LbLook bed = { .stroke = LB_COLOUR_BED_LINE, .width = 1.6 * s };

  lb_plot_add_ground (c->scene, p->left, p->top, p->right - p->left, p->bottom - p->top,
                      LB_COLOUR_WATER_TOP, LB_COLOUR_WATER_LOW);
  lb_plot_add_ground (c->scene, p->left, p->bottom, p->right - p->left, BED_BAND * s,
                      LB_COLOUR_BED_TOP, LB_COLOUR_BED_LOW);
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, p->top, p->right, p->top, surface);
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, p->bottom, p->right, p->bottom, bed);
}

static void
add_axes (const Chart *c)
{
  LbScene *scene = c->scene;
  double s = scene->style.scale;
  LbPlot below = c->plot;

  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (scene, _ ("Off the bed"), LB_QUANTITY_LENGTH).text, 2 * s,
                     2 * s, 0, 0, LB_COLOUR_TEXT_QUIET, true);
  lb_plot_add_y_axis (scene, &c->plot, LB_QUANTITY_LENGTH, 1);
  below.bottom += BED_BAND * s;
  lb_plot_add_x_axis (scene, &below, LB_QUANTITY_SPEED);
  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (scene, _ ("Current"), LB_QUANTITY_SPEED).text, c->plot.right,
                     scene->height - 2 * s, 1, 1, LB_COLOUR_TEXT_QUIET, true);
}

static void
add_curve (const Chart *c)
{
  double s = c->scene->style.scale;
  LbLook tint = { .fill = LB_COLOUR_CURRENT, .opacity = 0.14 };
  LbLook edge = { .stroke = LB_COLOUR_CURRENT, .width = 2.2 * s };

  for (int pass = 0; pass < 2; pass++)
    {
      lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
      if (pass == 0)
        lb_scene_move_to (c->scene, c->plot.left, c->plot.bottom);
      for (int i = 0; i <= PIECES; i++)
        {
          double height = height_of_piece (c, i);
          double x = lb_plot_x (&c->plot, speed_at (c, height)), y = lb_plot_y (&c->plot, height);

          if (pass == 1 && i == 0)
            lb_scene_move_to (c->scene, x, y);
          else
            lb_scene_line_to (c->scene, x, y);
        }
      if (pass == 0)
        {
          lb_scene_line_to (c->scene, c->plot.left, c->plot.top);
          lb_scene_close (c->scene);
        }
      lb_scene_end_pickable (c->scene, pass ? edge : tint, LB_PICK_CURRENT, 0);
    }
}

/* Faint arrows say that the water runs to the right. */
static void
add_arrows (const Chart *c)
{
  double s = c->scene->style.scale;
  double room = c->plot.bottom - c->plot.top;
  int n = (int) floor (room / (ARROW_SPACING * s));
  LbLook shaft = { .stroke = LB_COLOUR_CURRENT, .width = 1.2 * s, .opacity = 0.5 };
  LbLook point = { .fill = LB_COLOUR_CURRENT, .opacity = 0.5 };

  for (int i = 1; i < n; i++)
    {
      double height = c->river->depth * i / n, y = lb_plot_y (&c->plot, height);
      double tip = lb_plot_x (&c->plot, speed_at (c, height)) - 3 * s;

      if (tip < c->plot.left + 14 * s)
        continue;
      lb_scene_line (c->scene, LB_LAYER_FOREGROUND, c->plot.left, y, tip - 5 * s, y, shaft);
      lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
      lb_scene_add_arrow_head (c->scene, tip, y, 0, 7 * s);
      lb_scene_end (c->scene, point);
    }
}

static void
add_dot (const Chart *c, double height, double speed, double radius)
{
  double s = c->scene->style.scale;

  lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (c->scene, lb_plot_x (&c->plot, speed), lb_plot_y (&c->plot, height),
                        radius * s, radius * s);
  lb_scene_end (c->scene,
                (LbLook){ .fill = LB_COLOUR_CARD, .stroke = LB_COLOUR_CURRENT, .width = 2 * s });
}

static void
add_measured (const Chart *c)
{
  const LbProfile *profile = &c->river->profile;

  if (profile->law != LB_PROFILE_POINTS)
    return;
  for (size_t i = 0; i < profile->n_points; i++)
    add_dot (c, profile->height_fraction[i] * c->river->depth,
             profile->speed_fraction[i] * c->surface, 4);
}

static void
add_mean (const Chart *c)
{
  double s = c->scene->style.scale, x = lb_plot_x (&c->plot, c->mean);
  LbLook line = { .stroke = LB_COLOUR_ANGLE, .width = 1.4 * s, .pattern = LB_LINE_DASHED };

  lb_scene_line (c->scene, LB_LAYER_FOREGROUND, x, c->plot.top, x, c->plot.bottom, line);
}

/* The speed close to the bed, where the lures are: a card beside the curve above it, out of the
 * curve's way, and a line to the place. */
static void
add_near_bed (const Chart *c)
{
  const LbPicture *picture = &c->scene->picture;
  double s = c->scene->style.scale, high = lb_scene_text (c->scene, LB_FONT_PLAIN, "0").height;
  double y = c->plot.bottom - high - 18 * s;
  double height = (c->plot.bottom - y - high) / (c->plot.bottom - c->plot.top) * c->river->depth;
  double x = lb_plot_x (&c->plot, speed_at (c, fmin (height, c->river->depth))) - 12 * s;
  LbPhrase low = lb_phrase_quantity (picture, LB_QUANTITY_SPEED, c->near);
  LbPhrase up = lb_phrase_height_value (picture, c->near_height);
  LbLook line = { .stroke = LB_COLOUR_POINTER, .width = c->scene->style.pointer_width };

  lb_scene_line (c->scene, LB_LAYER_FOREGROUND, fmax (x - 14 * s, c->plot.left + 14 * s), y + high,
                 lb_plot_x (&c->plot, c->near), lb_plot_y (&c->plot, c->near_height), line);
  lb_plot_add_card (c->scene, &c->plot,
                    lb_phrase_format (_ ("%s at %s up"), low.text, up.text).text, x, y, 1,
                    LB_COLOUR_TEXT);
  lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (c->scene, lb_plot_x (&c->plot, c->near),
                        lb_plot_y (&c->plot, c->near_height), 3 * s, 3 * s);
  lb_scene_end (c->scene, (LbLook){ .fill = LB_COLOUR_CURRENT });
}

static void
add_words (const Chart *c)
{
  const LbPicture *picture = &c->scene->picture;
  double s = c->scene->style.scale, high = lb_scene_text (c->scene, LB_FONT_PLAIN, "0").height;
  double middle = (c->plot.top + c->plot.bottom) / 2 - high / 2;
  LbPhrase top = lb_phrase_quantity (picture, LB_QUANTITY_SPEED, c->surface);
  LbPhrase mean = lb_phrase_quantity (picture, LB_QUANTITY_SPEED, c->mean);

  lb_plot_add_card (c->scene, &c->plot, lb_phrase_format (_ ("%s at the surface"), top.text).text,
                    lb_plot_x (&c->plot, c->surface) - 10 * s, c->plot.top + 5 * s, 1,
                    LB_COLOUR_TEXT);
  lb_plot_add_card (c->scene, &c->plot, lb_phrase_format (_ ("%s on average"), mean.text).text,
                    lb_plot_x (&c->plot, c->mean) - 8 * s, middle, 1, LB_COLOUR_ANGLE);
}

/* ---- In words ---- */

static void
say_measured (const Chart *c, GString *text)
{
  const LbProfile *profile = &c->river->profile;
  const LbPicture *picture = &c->scene->picture;

  if (profile->law != LB_PROFILE_POINTS)
    return;
  g_string_append_printf (text, " %s", _ ("Measured:"));
  for (size_t i = 0; i < profile->n_points; i++)
    {
      LbPhrase up = lb_phrase_height_value (picture, profile->height_fraction[i] * c->river->depth);
      LbPhrase speed =
          lb_phrase_quantity (picture, LB_QUANTITY_SPEED, profile->speed_fraction[i] * c->surface);
      /* Translators: one measured point: its speed, then its height. */
      LbPhrase point = lb_phrase_format (_ ("%s at %s off the bed"), speed.text, up.text);

      g_string_append_printf (text, " %s%s", point.text, i + 1 < profile->n_points ? ";" : ".");
    }
}

static char *
describe (const Chart *c)
{
  const LbPicture *picture = &c->scene->picture;
  GString *text = g_string_new (NULL);
  LbPhrase depth = lb_phrase_quantity (picture, LB_QUANTITY_LENGTH, c->river->depth);
  LbPhrase top = lb_phrase_quantity (picture, LB_QUANTITY_SPEED, c->surface);
  LbPhrase half =
      lb_phrase_quantity (picture, LB_QUANTITY_SPEED, speed_at (c, c->river->depth / 2));
  LbPhrase low = lb_phrase_quantity (picture, LB_QUANTITY_SPEED, c->near);
  LbPhrase up = lb_phrase_height_value (picture, c->near_height);
  LbPhrase mean = lb_phrase_quantity (picture, LB_QUANTITY_SPEED, c->mean);

  g_string_append_printf (
      text, _ ("Speed curve: the current against the height off the bed, in water %s deep."),
      depth.text);
  if (c->most < STILL)
    {
      g_string_append_printf (text, " %s", _ ("No current."));
      return g_string_free (text, FALSE);
    }
  g_string_append_c (text, ' ');
  g_string_append_printf (text,
                          _ ("%s at the surface, %s half way down, %s at %s off the bed; %s "
                             "on average over the depth."),
                          top.text, half.text, low.text, up.text, mean.text);
  say_measured (c, text);
  return g_string_free (text, FALSE);
}

LbScene *
lb_current_chart_new (LbDrawContext *context,
                      const LbPicture *picture,
                      const LbStyle *style,
                      double width,
                      double height)
{
  LbSetup setup = *picture->setup;
  LbScene *scene;
  Chart c;

  /* The curve belongs to the depth that the surface current was measured at: over an uneven bed
   * too, so that it shows the numbers that were given. */
  setup.river.n_bed_points = 0;
  scene = lb_plot_scene (context, picture, &setup, style, width, height);
  c = (Chart){ .scene = scene, .river = &scene->setup.river };

  find_speeds (&c);
  lay_out (&c);
  add_ground (&c);
  add_axes (&c);
  if (c.most >= STILL)
    {
      add_curve (&c);
      add_arrows (&c);
      add_mean (&c);
      add_near_bed (&c);
      add_words (&c);
      add_measured (&c);
    }
  else
    lb_plot_add_card (scene, &c.plot, _ ("No current"), (c.plot.left + c.plot.right) / 2,
                      (c.plot.top + c.plot.bottom) / 2, 0.5, LB_COLOUR_TEXT);
  scene->words = describe (&c);
  lb_scene_finish (scene);
  return scene;
}
