/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lines of the time chart, and the moment. */
#include <math.h>

#include "pass_chart_private.h"

#define BETWEEN 64.0     /* style units, of the squares on a line */
#define SECOND_WIDTH 0.7 /* of a line, when it is the second rig's */

static double
held_y (const LbPlot *plot, double value)
{
  return fmin (fmax (lb_plot_y (plot, value), plot->top), plot->bottom);
}

/* ---- The lines ---- */

/* A line with the least and the most of every drawing unit: a jerk must not get lost. */
static void
add_curve (const LbPassChart *c, int rig, LbChartPanel panel, int thing)
{
  const LbPassTrack *track = c->rigs[rig].track;
  LbLook look = lb_chart_look (c, panel, thing);
  const LbPlot *p = &c->plots[panel];
  double low = INFINITY, high = -INFINITY, last_x = 0;

  if (track->n < 1)
    return;
  lb_scene_begin (c->scene, LB_LAYER_BACKGROUND);
  for (size_t i = 0; i < track->n; i++)
    {
      double x = lb_plot_x (p, track->moments[i].time);
      double y = held_y (p, lb_chart_value (&track->moments[i], panel, thing));

      if (i == 0)
        lb_scene_move_to (c->scene, x, y);
      else if (x - last_x < 1 && i + 1 < track->n)
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
      last_x = x;
      low = INFINITY;
      high = -INFINITY;
    }
  if (rig > 0)
    look.width *= SECOND_WIDTH;
  lb_scene_end (c->scene, look);
}

/* At even distances along a line of the second rig. */
static void
add_squares (const LbPassChart *c, const LbPassTrack *track, LbChartPanel panel, int thing)
{
  const LbPlot *p = &c->plots[panel];
  double s = c->scene->style.scale;
  double step = BETWEEN * s * (p->x_to - p->x_from) / (p->right - p->left);
  LbColour colour = lb_chart_look (c, panel, thing).stroke;
  LbTrackMoment m;

  for (double t = step / 2; track->n > 0 && t <= track->moments[track->n - 1].time; t += step)
    if (lb_track_at (track, t, &m))
      lb_pass_add_square (c->scene, LB_LAYER_BACKGROUND, lb_plot_x (p, t),
                          held_y (p, lb_chart_value (&m, panel, thing)), colour);
}

static void
add_line (const LbPassChart *c, int rig, LbChartPanel panel, int thing)
{
  const LbPassTrack *track = c->rigs[rig].track;

  add_curve (c, rig, panel, thing);
  if (rig > 0)
    add_squares (c, track, panel, thing);
}

void
lb_chart_add_curves (const LbPassChart *c)
{
  for (int rig = LB_CHART_N_RIGS - 1; rig >= 0; rig--)
    for (int panel = 0; panel < c->n_panels; panel++)
      {
        if (!lb_chart_has_rig (c, (LbChartPanel) panel, rig))
          continue;
        if (panel == LB_CHART_HEIGHTS)
          for (int thing = (int) c->picture->track.n_lures - 1; thing >= LB_TRACK_WEIGHT; thing--)
            add_line (c, rig, LB_CHART_HEIGHTS, thing);
        else
          add_line (c, rig, (LbChartPanel) panel, 0);
      }
}

/* ---- The moment ---- */

static void
add_dot (const LbPassChart *c, int rig, LbChartPanel panel, int thing)
{
  const LbPlot *p = &c->plots[panel];
  const LbTrackMoment *moment = &c->rigs[rig].moment;
  double s = c->scene->style.scale;
  double x = lb_plot_x (p, moment->time), y = held_y (p, lb_chart_value (moment, panel, thing));
  LbColour colour = lb_chart_look (c, panel, thing).stroke;

  if (rig > 0)
    {
      lb_pass_add_square (c->scene, LB_LAYER_FOREGROUND, x, y, colour);
      return;
    }
  lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (c->scene, x, y, 3.4 * s, 3.4 * s);
  lb_scene_end (c->scene, (LbLook){ .fill = colour, .stroke = LB_COLOUR_CARD, .width = s });
}

static void
add_dots (const LbPassChart *c, int rig)
{
  for (int thing = (int) c->picture->track.n_lures - 1; thing >= LB_TRACK_WEIGHT; thing--)
    add_dot (c, rig, LB_CHART_HEIGHTS, thing);
  for (int panel = LB_CHART_HEIGHTS + 1; panel < c->n_panels; panel++)
    if (lb_chart_has_rig (c, (LbChartPanel) panel, rig))
      add_dot (c, rig, (LbChartPanel) panel, 0);
}

void
lb_chart_add_cursor (const LbPassChart *c)
{
  double x = lb_plot_x (&c->plots[0], c->picture->time), s = c->scene->style.scale;
  LbLook line = { .stroke = LB_COLOUR_HANDLE, .width = 1.6 * s };

  lb_scene_line (c->scene, LB_LAYER_FOREGROUND, x, c->plots[0].top, x,
                 c->plots[c->n_panels - 1].bottom, line);
  lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_arrow_head (c->scene, x, c->plots[0].top + 7 * s, G_PI / 2, 9 * s);
  lb_scene_end (c->scene, (LbLook){ .fill = LB_COLOUR_HANDLE });
  for (int rig = LB_CHART_N_RIGS - 1; rig >= 0; rig--)
    if (c->rigs[rig].is_known)
      add_dots (c, rig);
}
