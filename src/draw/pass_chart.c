/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The time chart of a pass: panels over one another with one axis of time, and what each line says
 * at the moment beside them. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "chart_axes.h"
#include "pass_parts.h"

/* Style units. */
#define LEFT 46.0
#define RIGHT 176.0
#define RIGHT_MOST_PART 0.34 /* of the width */
#define TOP 4.0
#define FOOT 21.0
#define GAP 7.0

#define HEIGHTS_PART 0.46 /* of the room for panels */
#define SAMPLE 26.0       /* a piece of a line beside its words */

/* Above this, m, heights are told in feet or metres. */
#define HIGH 1.6

enum
{
  PANEL_HEIGHTS,
  PANEL_ANGLE,
  PANEL_HAND,
  PANEL_SPEED,
  N_PANELS
};

typedef struct
{
  LbScene *scene;
  const LbPassPicture *picture;
  const LbPassTrack *track;
  LbPlot plots[N_PANELS];
  double beside;        /* where the words beside the panels begin */
  LbTrackMoment moment; /* now */
  bool is_known;
} Chart;

typedef struct
{
  const char *name; /* N_() */
  LbQuantity quantity;
  LbColour colour;
  LbLinePattern pattern;
} Panel;

static const Panel panels[N_PANELS] = {
  [PANEL_HEIGHTS] = { N_ ("Off the bed"), LB_QUANTITY_HEIGHT, LB_COLOUR_TEXT, LB_LINE_SOLID },
  [PANEL_ANGLE] = { N_ ("Wire angle"), LB_QUANTITY_ANGLE, LB_COLOUR_ANGLE, LB_LINE_SOLID },
  [PANEL_HAND] = { N_ ("Hand"), LB_QUANTITY_FORCE, LB_COLOUR_WIRE, LB_LINE_SOLID },
  [PANEL_SPEED] = { N_ ("Boat"), LB_QUANTITY_SPEED, LB_COLOUR_CURRENT, LB_LINE_SOLID },
};

static double
value_of (const LbTrackMoment *m, int panel)
{
  switch (panel)
    {
    case PANEL_ANGLE:
      return m->wire_angle;
    case PANEL_HAND:
      return m->hand_tension;
    default:
      return m->boat_speed;
    }
}

static LbQuantity
quantity_of (const Chart *c, int panel)
{
  if (panel == PANEL_HEIGHTS && c->plots[panel].y_to > HIGH)
    return LB_QUANTITY_LENGTH;
  return panels[panel].quantity;
}

/* ---- The axes ---- */

/* Of heights: the band, and all that weight and lures did; from the bed up. */
static double
highest (const Chart *c)
{
  double most = 1.25 * c->scene->setup.band.high;

  for (size_t i = 0; i < c->track->n; i++)
    for (int thing = LB_TRACK_WEIGHT; thing < (int) c->track->n_lures; thing++)
      most = fmax (most, lb_pass_thing (&c->track->moments[i], thing)->height);
  return most;
}

/* Whole steps round all values, from 0 where that is what one compares with. */
static void
find_range (const Chart *c, int panel, LbPlot *plot)
{
  double low = INFINITY, high = -INFINITY, step;
  LbUnits units = c->scene->picture.units;
  double least = lb_units_size (panels[panel].quantity, units) * (panel == PANEL_ANGLE ? 4 : 0.5);

  for (size_t i = 0; i < c->track->n; i++)
    {
      low = fmin (low, value_of (&c->track->moments[i], panel));
      high = fmax (high, value_of (&c->track->moments[i], panel));
    }
  if (!(low <= high))
    low = high = 0;
  if (panel != PANEL_ANGLE)
    low = fmin (low, 0);
  high = fmax (high, low + least);
  step = lb_plot_step (panels[panel].quantity, units, high - low, plot->bottom - plot->top,
                       24 * c->scene->style.scale);
  plot->y_from = step * floor (low / step + 1e-9);
  plot->y_to = step * ceil (high / step - 1e-9);
}

static void
lay_out (Chart *c)
{
  double s = c->scene->style.scale, width = c->scene->width, height = c->scene->height;
  double right = width - fmin (RIGHT * s, RIGHT_MOST_PART * width);
  double room = height - (TOP + FOOT + (N_PANELS - 1) * GAP) * s, y = TOP * s;

  for (int i = 0; i < N_PANELS; i++)
    {
      double part = i == PANEL_HEIGHTS ? HEIGHTS_PART : (1 - HEIGHTS_PART) / (N_PANELS - 1);

      c->plots[i] = (LbPlot){ .left = LEFT * s,
                              .right = right,
                              .top = y,
                              .bottom = y + part * room,
                              .x_to = fmax (c->track->duration, 1),
                              .y_to = 1 };
      if (i == PANEL_HEIGHTS)
        c->plots[i].y_to = 1.04 * highest (c);
      else
        find_range (c, i, &c->plots[i]);
      y += part * room + GAP * s;
    }
  c->beside = right + 8 * s;
}

static void
add_ground (const Chart *c, int panel)
{
  const LbPlot *p = &c->plots[panel];
  const LbBand *band = &c->scene->setup.band;
  double s = c->scene->style.scale;

  lb_plot_add_ground (c->scene, p->left, p->top, p->right - p->left, p->bottom - p->top,
                      LB_COLOUR_WATER_TOP, LB_COLOUR_NONE);
  if (panel == PANEL_HEIGHTS)
    {
      double low = lb_plot_y (p, band->low), high = fmax (lb_plot_y (p, band->high), p->top);
      LbLook edge = { .stroke = LB_COLOUR_BAND_EDGE, .width = s, .pattern = LB_LINE_DASHED };

      lb_plot_add_ground (c->scene, p->left, high, p->right - p->left, low - high, LB_COLOUR_BAND,
                          LB_COLOUR_NONE);
      lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, low, p->right, low, edge);
      lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, high, p->right, high, edge);
    }
}

static void
add_frame (const Chart *c, int panel)
{
  const LbPlot *p = &c->plots[panel];
  double s = c->scene->style.scale;
  bool is_bed = panel == PANEL_HEIGHTS;
  LbLook foot = { .stroke = is_bed ? LB_COLOUR_BED_LINE : LB_COLOUR_TEXT_QUIET,
                  .width = (is_bed ? 2 : 1) * s };

  lb_plot_add_y_axis (c->scene, p, quantity_of (c, panel), 1);
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, p->bottom, p->right, p->bottom, foot);
}

/* Lines through all panels at round times; the numbers under the last. */
static void
add_times (const Chart *c)
{
  double s = c->scene->style.scale;
  LbPlot foot = c->plots[N_PANELS - 1];

  foot.top = c->plots[0].top;
  lb_plot_add_x_axis (c->scene, &foot, LB_QUANTITY_TIME);
  lb_scene_try_text (c->scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (c->scene, _ ("Time"), LB_QUANTITY_TIME).text,
                     c->beside + (SAMPLE + 6) * s, foot.bottom + 5 * s, 0, 0, LB_COLOUR_TEXT_QUIET,
                     true);
}

/* ---- The lines ---- */

/* A line with the least and the most of every drawing unit: a jerk must not get lost. */
static void
add_curve (const Chart *c, int panel, int thing, LbLook look)
{
  const LbPlot *p = &c->plots[panel];
  double low = INFINITY, high = -INFINITY, last_x = 0;
  bool any = false;

  if (c->track->n < 1)
    return;
  lb_scene_begin (c->scene, LB_LAYER_BACKGROUND);
  for (size_t i = 0; i < c->track->n; i++)
    {
      const LbTrackMoment *m = &c->track->moments[i];
      double value =
          panel == PANEL_HEIGHTS ? lb_pass_thing (m, thing)->height : value_of (m, panel);
      double x = lb_plot_x (p, m->time), y = fmax (lb_plot_y (p, value), p->top);

      y = fmin (y, p->bottom);
      if (!any)
        lb_scene_move_to (c->scene, x, y);
      else if (x - last_x < 1 && i + 1 < c->track->n)
        {
          low = fmin (low, y);
          high = fmax (high, y);
          continue;
        }
      else
        {
          if (low < y - 1)
            lb_scene_line_to (c->scene, last_x + 0.4, low);
          if (high > y + 1)
            lb_scene_line_to (c->scene, last_x + 0.6, high);
          lb_scene_line_to (c->scene, x, y);
        }
      any = true;
      last_x = x;
      low = INFINITY;
      high = -INFINITY;
    }
  lb_scene_end (c->scene, look);
}

static LbLook
look_of (const Chart *c, int panel, int thing)
{
  double s = c->scene->style.scale;

  if (panel == PANEL_HEIGHTS)
    return (LbLook){ .stroke = lb_pass_colour (thing),
                     .width = (thing < 0 ? 1.6 : 2) * s,
                     .pattern = lb_pass_pattern (thing) };
  return (LbLook){ .stroke = panels[panel].colour, .width = 1.7 * s };
}

static void
add_curves (const Chart *c)
{
  for (int thing = (int) c->track->n_lures - 1; thing >= LB_TRACK_WEIGHT; thing--)
    add_curve (c, PANEL_HEIGHTS, thing, look_of (c, PANEL_HEIGHTS, thing));
  for (int panel = PANEL_HEIGHTS + 1; panel < N_PANELS; panel++)
    add_curve (c, panel, 0, look_of (c, panel, 0));
}

/* A veil over what is not known yet. */
static void
add_unknown (const Chart *c)
{
  double from = c->track->n > 0 ? c->track->moments[c->track->n - 1].time : 0;

  if (from >= c->track->duration - 1e-6)
    return;
  for (int panel = 0; panel < N_PANELS; panel++)
    {
      const LbPlot *p = &c->plots[panel];
      double x = lb_plot_x (p, from);

      lb_scene_begin (c->scene, LB_LAYER_BACKGROUND);
      lb_scene_add_box (c->scene, x, p->top, p->right - x, p->bottom - p->top, 0);
      lb_scene_end (c->scene, (LbLook){ .fill = LB_COLOUR_CARD, .opacity = 0.7 });
    }
}

/* ---- The moment ---- */

static void
add_dot (const Chart *c, int panel, double value, LbColour colour)
{
  const LbPlot *p = &c->plots[panel];
  double s = c->scene->style.scale, y = lb_plot_y (p, value);

  lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (c->scene, lb_plot_x (p, c->moment.time), fmin (fmax (y, p->top), p->bottom),
                        3.4 * s, 3.4 * s);
  lb_scene_end (c->scene, (LbLook){ .fill = colour, .stroke = LB_COLOUR_CARD, .width = s });
}

static void
add_cursor (const Chart *c)
{
  double x = lb_plot_x (&c->plots[0], c->picture->time), s = c->scene->style.scale;
  LbLook line = { .stroke = LB_COLOUR_HANDLE, .width = 1.6 * s };

  lb_scene_line (c->scene, LB_LAYER_FOREGROUND, x, c->plots[0].top, x,
                 c->plots[N_PANELS - 1].bottom, line);
  lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_arrow_head (c->scene, x, c->plots[0].top + 7 * s, G_PI / 2, 9 * s);
  lb_scene_end (c->scene, (LbLook){ .fill = LB_COLOUR_HANDLE });
  if (!c->is_known)
    return;
  for (int thing = (int) c->track->n_lures - 1; thing >= LB_TRACK_WEIGHT; thing--)
    add_dot (c, PANEL_HEIGHTS, lb_pass_thing (&c->moment, thing)->height, lb_pass_colour (thing));
  for (int panel = PANEL_HEIGHTS + 1; panel < N_PANELS; panel++)
    add_dot (c, panel, value_of (&c->moment, panel), panels[panel].colour);
}

/* A piece of the line, and its words on one line at `y`; false when there is no room. */
static bool
add_beside (const Chart *c, LbLook look, const char *words, double y, double bottom)
{
  double s = c->scene->style.scale, left = c->beside + (SAMPLE + 6) * s;
  LbText text = lb_draw_context_text (c->scene->context, &c->scene->style, LB_FONT_PLAIN, words,
                                      -fmax (c->scene->width - left - 4 * s, 10 * s));
  double middle = y + text.height / 2;

  if (y + text.height > bottom
      || !lb_scene_is_free (c->scene, (LbBox){ left, y, text.width, text.height }, 0))
    return false;
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, c->beside, middle, c->beside + SAMPLE * s, middle,
                 look);
  lb_scene_put_text (c->scene, LB_LAYER_FOREGROUND, text, left, y, LB_COLOUR_TEXT);
  return true;
}

static LbPhrase
thing_at_moment (const Chart *c, int thing)
{
  const LbTrackPoint *point = lb_pass_thing (&c->moment, thing);
  LbPhrase name = lb_pass_thing_words (c->scene, thing);
  LbPhrase height = lb_phrase_height_value (&c->scene->picture, fmax (point->height, 0));

  if (!c->is_known)
    return name;
  return lb_phrase_format (_ ("%s: %s"), name.text, point->on_bed ? _ ("on the bed") : height.text);
}

static LbPhrase
panel_at_moment (const Chart *c, int panel)
{
  LbPhrase value =
      lb_phrase_quantity (&c->scene->picture, panels[panel].quantity, value_of (&c->moment, panel));

  if (!c->is_known)
    return lb_phrase_format ("%s", _ (panels[panel].name));
  return lb_phrase_format (_ ("%s: %s"), _ (panels[panel].name), value.text);
}

static void
add_words (const Chart *c)
{
  double s = c->scene->style.scale, high = lb_scene_text (c->scene, LB_FONT_PLAIN, "0").height;
  double y = c->plots[0].top, foot = c->plots[0].bottom + GAP * s - 1;

  lb_scene_try_text (c->scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (c->scene, _ (panels[0].name), quantity_of (c, 0)).text,
                     c->beside, y, 0, 0, LB_COLOUR_TEXT_QUIET, true);
  y += high;
  for (int thing = LB_TRACK_WEIGHT; thing < (int) c->track->n_lures; thing++, y += high)
    if (!add_beside (c, look_of (c, PANEL_HEIGHTS, thing), thing_at_moment (c, thing).text, y,
                     foot))
      c->scene->n_missing_labels++;
  for (int panel = PANEL_HEIGHTS + 1; panel < N_PANELS; panel++)
    {
      double middle = (c->plots[panel].top + c->plots[panel].bottom) / 2;

      if (!add_beside (c, look_of (c, panel, 0), panel_at_moment (c, panel).text, middle - high / 2,
                       c->scene->height))
        c->scene->n_missing_labels++;
    }
}

/* ---- In words ---- */

static void
say_range (
    const Chart *c, GString *text, const char *name, LbQuantity quantity, double low, double high)
{
  const LbPicture *p = &c->scene->picture;
  LbPhrase from = quantity == LB_QUANTITY_HEIGHT ? lb_phrase_height_value (p, fmax (low, 0))
                                                 : lb_phrase_quantity (p, quantity, low);
  LbPhrase to = quantity == LB_QUANTITY_HEIGHT ? lb_phrase_height_value (p, fmax (high, 0))
                                               : lb_phrase_quantity (p, quantity, high);

  g_string_append_c (text, ' ');
  /* Translators: a line of the chart, its least and its most value */
  g_string_append (text, lb_phrase_format (_ ("%s: %s to %s."), name, from.text, to.text).text);
}

static void
say_ranges (const Chart *c, GString *text)
{
  for (int thing = LB_TRACK_WEIGHT; thing < (int) c->track->n_lures + N_PANELS - 1; thing++)
    {
      int panel = thing - (int) c->track->n_lures + 1;
      double low = INFINITY, high = -INFINITY;

      for (size_t i = 0; i < c->track->n; i++)
        {
          const LbTrackMoment *m = &c->track->moments[i];
          double value = panel > 0 ? value_of (m, panel) : lb_pass_thing (m, thing)->height;

          low = fmin (low, value);
          high = fmax (high, value);
        }
      if (low <= high)
        say_range (c, text,
                   panel > 0 ? _ (panels[panel].name) : lb_pass_thing_words (c->scene, thing).text,
                   panel > 0 ? panels[panel].quantity : LB_QUANTITY_HEIGHT, low, high);
    }
}

static char *
describe (const Chart *c)
{
  GString *text =
      g_string_new (_ ("Time chart of the pass: heights off the bed of weight and lures "
                       "with the band, wire angle, hand tension, boat speed."));
  const LbBand *band = &c->scene->setup.band;
  LbPhrase low = lb_phrase_height_value (&c->scene->picture, band->low);
  LbPhrase high = lb_phrase_height_value (&c->scene->picture, band->high);

  g_string_append_c (text, ' ');
  g_string_append_printf (text, _ ("Wanted band: %s to %s off the bed."), low.text, high.text);
  g_string_append_printf (text, " %s", lb_pass_moment_words (c->scene, c->picture).text);
  if (c->is_known)
    {
      for (int thing = LB_TRACK_WEIGHT; thing < (int) c->track->n_lures; thing++)
        g_string_append_printf (text, " %s.", thing_at_moment (c, thing).text);
      for (int panel = PANEL_HEIGHTS + 1; panel < N_PANELS; panel++)
        g_string_append_printf (text, " %s.", panel_at_moment (c, panel).text);
    }
  g_string_append_printf (text, " %s", _ ("Over all that is known of the pass:"));
  say_ranges (c, text);
  return g_string_free (text, FALSE);
}

LbScene *
lb_pass_chart_new (LbDrawContext *context,
                   const LbPassPicture *picture,
                   const LbStyle *style,
                   double width,
                   double height)
{
  LbScene *scene = lb_plot_scene (context, &picture->now, picture->now.setup, style, width, height);
  Chart c = { .scene = scene, .picture = picture, .track = &picture->track };

  c.is_known = lb_track_at (c.track, picture->time, &c.moment);
  lay_out (&c);
  lb_plot_add_ground (scene, 0, 0, width, height, LB_COLOUR_SKY_LOW, LB_COLOUR_NONE);
  for (int panel = 0; panel < N_PANELS; panel++)
    add_ground (&c, panel);
  for (int panel = 0; panel < N_PANELS; panel++)
    add_frame (&c, panel);
  add_times (&c);
  add_curves (&c);
  add_unknown (&c);
  add_cursor (&c);
  add_words (&c);
  scene->words = describe (&c);
  /* For lb_pass_chart_time(). */
  scene->view.x_left = -c.plots[0].left / (c.plots[0].right - c.plots[0].left) * c.plots[0].x_to;
  scene->view.per_metre_x = (c.plots[0].right - c.plots[0].left) / c.plots[0].x_to;
  scene->view.right = c.plots[0].x_to;
  lb_scene_finish (scene);
  return scene;
}

double
lb_pass_chart_time (const LbScene *chart, double x)
{
  return fmax (0, fmin (lb_view_world_x (&chart->view, x), chart->view.right));
}
