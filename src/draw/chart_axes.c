/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chart_axes.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "axes.h"

#define MOST_TICKS 60

LbScene *
lb_plot_scene (LbDrawContext *context,
               const LbPicture *picture,
               const LbSetup *setup,
               const LbStyle *style,
               double width,
               double height)
{
  LbPicture plain = { .setup = setup,
                      .units = picture->units,
                      .decimal = picture->decimal,
                      .decimals_plus_1 = picture->decimals_plus_1 };
  LbView view = { .width = width, .height = height, .per_metre_x = 1, .per_metre_z = 1 };

  return lb_scene_new (LB_SCENE_CHART, context, &plain, style, &view, width, height);
}

double
lb_plot_step (LbQuantity quantity, LbUnits units, double range, double room, double least)
{
  static const double times[] = { 1, 2, 5 };
  double unit = lb_units_size (quantity, units);
  double wanted = range / unit * least / fmax (room, 1);
  double power = pow (10, floor (log10 (fmax (wanted, 1e-6))));

  for (int i = 0; i < 3; i++)
    if (times[i] * power >= wanted * (1 - 1e-9))
      return times[i] * power * unit;
  return 10 * power * unit;
}

static LbPhrase
tick_words (const LbScene *scene, LbQuantity quantity, double value, double step)
{
  LbUnits units = scene->picture.units;
  double shown = lb_units_from_si (quantity, units, value);

  /* No minus in front of a zero. */
  return lb_phrase_number (&scene->picture, fabs (shown) < 1e-9 ? 0 : shown,
                           lb_ticks_decimals (quantity, units, step));
}

void
lb_plot_add_y_axis (LbScene *scene, const LbPlot *plot, LbQuantity quantity, double sign)
{
  double s = scene->style.scale;
  double step = lb_plot_step (quantity, scene->picture.units, plot->y_to - plot->y_from,
                              plot->bottom - plot->top, 24 * s);
  LbLook grid = { .stroke = LB_COLOUR_GRID, .width = scene->style.grid_width };
  double first = ceil (plot->y_from / step - 1e-9);

  for (int i = 0; i < MOST_TICKS; i++)
    {
      double value = (first + i) * step, y = lb_plot_y (plot, value);

      if (value > plot->y_to + 1e-9 * step)
        break;
      lb_scene_line (scene, LB_LAYER_BACKGROUND, plot->left, y, plot->right, y, grid);
      lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                         tick_words (scene, quantity, sign * value, step).text, plot->left - 5 * s,
                         y, 1, 0.5, LB_COLOUR_TEXT_QUIET, true);
    }
}

void
lb_plot_add_x_axis (LbScene *scene, const LbPlot *plot, LbQuantity quantity)
{
  double s = scene->style.scale;
  double step = lb_plot_step (quantity, scene->picture.units, plot->x_to - plot->x_from,
                              plot->right - plot->left, 46 * s);
  LbLook grid = { .stroke = LB_COLOUR_GRID, .width = scene->style.grid_width };
  LbLook tick = { .stroke = LB_COLOUR_TEXT_QUIET, .width = scene->style.grid_width };
  double first = ceil (plot->x_from / step - 1e-9);

  for (int i = 0; i < MOST_TICKS; i++)
    {
      double value = (first + i) * step, x = lb_plot_x (plot, value);

      if (value > plot->x_to + 1e-9 * step)
        break;
      lb_scene_line (scene, LB_LAYER_BACKGROUND, x, plot->top, x, plot->bottom, grid);
      lb_scene_line (scene, LB_LAYER_BACKGROUND, x, plot->bottom, x, plot->bottom + 4 * s, tick);
      lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                         tick_words (scene, quantity, value, step).text, x, plot->bottom + 5 * s,
                         0.5, 0, LB_COLOUR_TEXT_QUIET, true);
    }
}

void
lb_plot_add_ground (
    LbScene *scene, double x, double y, double width, double height, LbColour top, LbColour low)
{
  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, x, y, width, height, 0);
  lb_scene_end (scene, (LbLook){ .fill = top, .fill_low = low });
}

bool
lb_plot_add_card (LbScene *scene,
                  const LbPlot *plot,
                  const char *words,
                  double x,
                  double y,
                  double align_x,
                  LbColour colour)
{
  double pad = 3 * scene->style.scale;
  LbText text = lb_scene_text (scene, LB_FONT_PLAIN, words);
  double left =
      fmin (fmax (x - align_x * text.width, plot->left + pad), plot->right - text.width - pad);
  LbBox box = { left - pad, y - pad / 2, text.width + 2 * pad, text.height + pad };

  if (!lb_scene_is_free (scene, box, 0))
    return false;
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (scene, box.x, box.y, box.width, box.height, pad);
  lb_scene_end (scene, (LbLook){ .fill = LB_COLOUR_CARD });
  lb_scene_put_text (scene, LB_LAYER_FOREGROUND, text, left, y, colour);
  return true;
}

LbPhrase
lb_plot_heading (const LbScene *scene, const char *name, LbQuantity quantity)
{
  /* Translators: the heading of an axis: its name, then its unit. */
  return lb_phrase_format (_ ("%s, %s"), name, lb_units_name (quantity, scene->picture.units));
}
