/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The time chart of a pass: panels over one another with one axis of time; its axes. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "pass_chart_private.h"

/* Style units. */
#define LEFT 46.0
#define RIGHT 176.0
#define RIGHT_OF_TWO 226.0   /* with a second rig */
#define RIGHT_MOST_PART 0.34 /* of the width */
#define TOP 4.0
#define FOOT 21.0

#define HEIGHTS_PART 0.42 /* of the room for panels */

/* Above this, m, heights are told in feet or metres. */
#define HIGH 1.6

const LbChartPanelKind lb_chart_panels[LB_CHART_N_PANELS] = {
  [LB_CHART_HEIGHTS] = { N_ ("Off the bed"), LB_QUANTITY_HEIGHT, LB_COLOUR_TEXT },
  [LB_CHART_ANGLE] = { N_ ("Wire angle"), LB_QUANTITY_ANGLE, LB_COLOUR_ANGLE },
  [LB_CHART_HAND] = { N_ ("Hand"), LB_QUANTITY_FORCE, LB_COLOUR_WIRE },
  [LB_CHART_SPEED] = { N_ ("Boat"), LB_QUANTITY_SPEED, LB_COLOUR_CURRENT },
  /* Translators: how far the nearest two lines are from each other */
  [LB_CHART_APART] = { N_ ("Lines apart"), LB_QUANTITY_HEIGHT, LB_COLOUR_LEADER },
};

double
lb_chart_value (const LbTrackMoment *moment, LbChartPanel panel, int thing)
{
  switch (panel)
    {
    case LB_CHART_HEIGHTS:
      return lb_pass_thing (moment, thing)->height;
    case LB_CHART_ANGLE:
      return moment->wire_angle;
    case LB_CHART_HAND:
      return moment->hand_tension;
    case LB_CHART_APART:
      return moment->closest;
    default:
      return moment->boat_speed;
    }
}

void
lb_chart_range (const LbChartRig *rig, LbChartPanel panel, int thing, double range[2])
{
  range[0] = INFINITY;
  range[1] = -INFINITY;
  for (size_t i = 0; rig->track && i < rig->track->n; i++)
    {
      double value = lb_chart_value (&rig->track->moments[i], panel, thing);

      range[0] = fmin (range[0], value);
      range[1] = fmax (range[1], value);
    }
}

LbQuantity
lb_chart_quantity (const LbPassChart *c, LbChartPanel panel)
{
  if (panel == LB_CHART_HEIGHTS && c->plots[panel].y_to > HIGH)
    return LB_QUANTITY_LENGTH;
  return lb_chart_panels[panel].quantity;
}

LbLook
lb_chart_look (const LbPassChart *c, LbChartPanel panel, int thing)
{
  double s = c->scene->style.scale;

  if (panel == LB_CHART_HEIGHTS)
    return (LbLook){ .stroke = lb_pass_colour (thing),
                     .width = (thing < 0 ? 1.6 : 2) * s,
                     .pattern = lb_pass_pattern (thing) };
  return (LbLook){ .stroke = lb_chart_panels[panel].colour, .width = 1.7 * s };
}

bool
lb_chart_has_rig (const LbPassChart *c, LbChartPanel panel, int rig)
{
  return c->rigs[rig].track && (rig == 0 || (panel != LB_CHART_SPEED && panel != LB_CHART_APART));
}

/* A rig of one line, alone, has nothing to come near. */
static bool
can_compare (const LbPassChart *c)
{
  return lb_track_closest (&c->picture->track, INFINITY) != NULL;
}

/* ---- The axes ---- */

/* Of heights: the band, and all that weight and lures did; from the bed up. */
static double
highest (const LbPassChart *c)
{
  double most = 1.25 * c->scene->setup.band.high, range[2];

  for (int rig = 0; rig < LB_CHART_N_RIGS; rig++)
    for (int thing = LB_TRACK_WEIGHT; thing < (int) c->picture->track.n_lures; thing++)
      {
        lb_chart_range (&c->rigs[rig], LB_CHART_HEIGHTS, thing, range);
        most = fmax (most, range[1]);
      }
  return most;
}

/* Whole steps round all values, from 0 where that is what one compares with. */
static void
find_range (const LbPassChart *c, LbChartPanel panel, LbPlot *plot)
{
  double first[2], second[2], low, high, step;
  LbQuantity quantity = lb_chart_panels[panel].quantity;
  LbUnits units = c->scene->picture.units;
  double least = lb_units_size (quantity, units) * (panel == LB_CHART_ANGLE ? 4 : 0.5);

  lb_chart_range (&c->rigs[0], panel, 0, first);
  lb_chart_range (&c->rigs[1], panel, 0, second);
  low = fmin (first[0], second[0]);
  high = fmax (first[1], second[1]);
  if (!(low <= high))
    low = high = 0;
  if (panel != LB_CHART_ANGLE)
    low = fmin (low, 0);
  high = fmax (high, low + least);
  if (panel == LB_CHART_APART)
    high = fmax (high, 1.25 * c->picture->tangle);
  step = lb_plot_step (quantity, units, high - low, plot->bottom - plot->top,
                       24 * c->scene->style.scale);
  plot->y_from = step * floor (low / step + 1e-9);
  plot->y_to = step * ceil (high / step - 1e-9);
}

static void
lay_out (LbPassChart *c)
{
  double s = c->scene->style.scale, width = c->scene->width, height = c->scene->height;
  double beside = (c->rigs[1].track ? RIGHT_OF_TWO : RIGHT) * s;
  double right = width - fmin (beside, RIGHT_MOST_PART * width);
  double room = height - (TOP + FOOT + (c->n_panels - 1) * LB_CHART_GAP) * s, y = TOP * s;

  for (int i = 0; i < c->n_panels; i++)
    {
      double part = i == LB_CHART_HEIGHTS ? HEIGHTS_PART : (1 - HEIGHTS_PART) / (c->n_panels - 1);

      c->plots[i] = (LbPlot){ .left = LEFT * s,
                              .right = right,
                              .top = y,
                              .bottom = y + part * room,
                              .x_to = fmax (c->picture->track.duration, 1),
                              .y_to = 1 };
      if (i == LB_CHART_HEIGHTS)
        c->plots[i].y_to = 1.04 * highest (c);
      else
        find_range (c, (LbChartPanel) i, &c->plots[i]);
      y += part * room + LB_CHART_GAP * s;
    }
  c->beside = right + 8 * s;
}

/* Nearer than this, lines may tangle. */
static void
add_tangle (const LbPassChart *c)
{
  const LbPlot *p = &c->plots[LB_CHART_APART];
  double top = lb_plot_y (p, c->picture->tangle), s = c->scene->style.scale;
  LbLook edge = { .stroke = LB_COLOUR_REMARK, .width = s, .pattern = LB_LINE_DASHED };

  if (!(c->picture->tangle > 0))
    return;
  lb_plot_add_ground (c->scene, p->left, top, p->right - p->left, p->bottom - top,
                      LB_COLOUR_REMARK_CARD, LB_COLOUR_NONE);
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, top, p->right, top, edge);
}

static void
add_ground (const LbPassChart *c, LbChartPanel panel)
{
  const LbPlot *p = &c->plots[panel];
  const LbBand *band = &c->scene->setup.band;
  double s = c->scene->style.scale;

  lb_plot_add_ground (c->scene, p->left, p->top, p->right - p->left, p->bottom - p->top,
                      LB_COLOUR_WATER_TOP, LB_COLOUR_NONE);
  if (panel == LB_CHART_APART)
    add_tangle (c);
  if (panel == LB_CHART_HEIGHTS)
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
add_frame (const LbPassChart *c, LbChartPanel panel)
{
  const LbPlot *p = &c->plots[panel];
  double s = c->scene->style.scale;
  bool is_bed = panel == LB_CHART_HEIGHTS;
  LbLook foot = { .stroke = is_bed ? LB_COLOUR_BED_LINE : LB_COLOUR_TEXT_QUIET,
                  .width = (is_bed ? 2 : 1) * s };

  lb_plot_add_y_axis (c->scene, p, lb_chart_quantity (c, panel), 1);
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, p->bottom, p->right, p->bottom, foot);
}

/* Lines through all panels at round times; the numbers under the last. */
static void
add_times (const LbPassChart *c)
{
  double s = c->scene->style.scale;
  LbPlot foot = c->plots[c->n_panels - 1];

  foot.top = c->plots[0].top;
  lb_plot_add_x_axis (c->scene, &foot, LB_QUANTITY_TIME);
  lb_scene_try_text (c->scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (c->scene, _ ("Time"), LB_QUANTITY_TIME).text,
                     c->beside + (LB_CHART_SAMPLE + 6) * s, foot.bottom + 5 * s, 0, 0,
                     LB_COLOUR_TEXT_QUIET, true);
}

/* A veil over what is not known yet. */
static void
add_unknown (const LbPassChart *c)
{
  double from =
      c->picture->track.n > 0 ? c->picture->track.moments[c->picture->track.n - 1].time : 0;

  if (from >= c->picture->track.duration - 1e-6)
    return;
  for (int panel = 0; panel < c->n_panels; panel++)
    {
      const LbPlot *p = &c->plots[panel];
      double x = lb_plot_x (p, from);

      lb_scene_begin (c->scene, LB_LAYER_BACKGROUND);
      lb_scene_add_box (c->scene, x, p->top, p->right - x, p->bottom - p->top, 0);
      lb_scene_end (c->scene, (LbLook){ .fill = LB_COLOUR_CARD, .opacity = 0.7 });
    }
}

LbScene *
lb_pass_chart_new (LbDrawContext *context,
                   const LbPassPicture *picture,
                   const LbStyle *style,
                   double width,
                   double height)
{
  LbScene *scene = lb_plot_scene (context, &picture->now, picture->now.setup, style, width, height);
  LbPassChart c = { .scene = scene,
                    .picture = picture,
                    .rigs = { { .track = &picture->track },
                              { .track = picture->second.n > 0 ? &picture->second : NULL } } };

  for (int rig = 0; rig < LB_CHART_N_RIGS && c.rigs[rig].track; rig++)
    c.rigs[rig].is_known = lb_track_at (c.rigs[rig].track, picture->time, &c.rigs[rig].moment);
  c.n_panels = can_compare (&c) ? LB_CHART_N_PANELS : LB_CHART_APART;
  lay_out (&c);
  lb_plot_add_ground (scene, 0, 0, width, height, LB_COLOUR_SKY_LOW, LB_COLOUR_NONE);
  for (int panel = 0; panel < c.n_panels; panel++)
    add_ground (&c, (LbChartPanel) panel);
  for (int panel = 0; panel < c.n_panels; panel++)
    add_frame (&c, (LbChartPanel) panel);
  add_times (&c);
  lb_chart_add_curves (&c);
  add_unknown (&c);
  lb_chart_add_cursor (&c);
  lb_chart_add_words (&c);
  scene->words = lb_chart_describe (&c);
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
