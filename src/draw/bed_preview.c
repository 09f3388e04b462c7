/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bed_preview.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "chart_axes.h"

#define STEP 2.0         /* drawing units between places where the bed is computed */
#define MOST_DOTS 60     /* bed points drawn one by one */
#define SHORTEST 1.0     /* m; what a picture spans at least */
#define BEYOND_DEPTH 1.5 /* soundings deeper than this times the bed are cut off */
#define MARGIN 0.03      /* of the length, at either end */
#define BELOW_BED 0.12   /* ground shown below the deepest place, of its depth */

typedef struct
{
  LbScene *scene;
  LbPlot plot;
  const LbRiver *river;
  const LbBedPreview *preview;
  double shallowest, deepest; /* m, of the bed */
  double bed_from, bed_to;    /* m, along */
  size_t n_outside;           /* soundings below the picture */
} Preview;

/* The column of the picture that holds `x`; -1: none. */
static int
column_of (const Preview *p, double x, int n_columns)
{
  double place = (x - p->plot.x_from) / (p->plot.x_to - p->plot.x_from) * n_columns;

  return place >= 0 && place < n_columns + 1 ? (int) fmin (place, n_columns - 1) : -1;
}

/* ---- What has to be shown ---- */

static void
find_depths (Preview *p)
{
  const LbRiver *river = p->river;

  p->shallowest = p->deepest = river->depth;
  p->bed_from = p->bed_to = 0;
  for (size_t i = 0; i < river->n_bed_points; i++)
    {
      double depth = river->bed_depth[i];

      p->shallowest = i ? fmin (p->shallowest, depth) : depth;
      p->deepest = i ? fmax (p->deepest, depth) : depth;
    }
  if (river->n_bed_points > 0)
    {
      p->bed_from = river->bed_x[0];
      p->bed_to = river->bed_x[river->n_bed_points - 1];
    }
}

static void
widen (double value, double *from, double *to)
{
  *from = fmin (*from, value);
  *to = fmax (*to, value);
}

static void
lay_out (Preview *p)
{
  double s = p->scene->style.scale;
  double from = p->bed_from, to = p->bed_to, lowest = p->deepest;
  double reel = p->scene->setup.boat.position;
  double margin;

  if (p->preview->show_reel)
    widen (reel, &from, &to);
  for (size_t i = 0; i < p->preview->soundings.n; i++)
    {
      double depth = p->preview->soundings.depth[i];

      widen (p->preview->soundings.x[i], &from, &to);
      if (depth <= BEYOND_DEPTH * p->deepest)
        lowest = fmax (lowest, depth);
    }
  if (to - from < SHORTEST)
    {
      from -= 10;
      to += 10;
    }
  margin = MARGIN * (to - from);
  from -= margin;
  to += margin;
  p->plot = (LbPlot){
    .left = 34 * s,
    .right = p->scene->width - 12 * s,
    .top = 31 * s,
    .bottom = p->scene->height - 39 * s,
    .x_from = from,
    .x_to = to,
    .y_from = -lowest * (1 + BELOW_BED),
  };
  for (size_t i = 0; i < p->preview->soundings.n; i++)
    p->n_outside += p->preview->soundings.depth[i] > -p->plot.y_from;
}

/* The world of lb_scene_pick(). */
static void
set_view (Preview *p)
{
  LbView *view = &p->scene->view;

  view->per_metre_x = (p->plot.right - p->plot.left) / (p->plot.x_to - p->plot.x_from);
  view->per_metre_z = (p->plot.bottom - p->plot.top) / (p->plot.y_to - p->plot.y_from);
  view->x_left = p->plot.x_from - p->plot.left / view->per_metre_x;
  view->z_top = p->plot.y_to + p->plot.top / view->per_metre_z;
}

/* ---- Ground and axes ---- */

static double
bed_y (const Preview *p, double px)
{
  double x = lb_view_world_x (&p->scene->view, px);

  return lb_plot_y (&p->plot, -lb_bed_at (&p->scene->current.bed, x).depth);
}

static void
trace_bed (const Preview *p)
{
  lb_scene_move_to (p->scene, p->plot.left, bed_y (p, p->plot.left));
  for (double px = p->plot.left + STEP; px < p->plot.right; px += STEP)
    lb_scene_line_to (p->scene, px, bed_y (p, px));
  lb_scene_line_to (p->scene, p->plot.right, bed_y (p, p->plot.right));
}

static void
add_ground (const Preview *p)
{
  const LbPlot *plot = &p->plot;
  LbLook earth = { .fill = LB_COLOUR_BED_TOP, .fill_low = LB_COLOUR_BED_LOW };
  LbLook surface = { .stroke = LB_COLOUR_SURFACE, .width = 1.6 * p->scene->style.scale };

  lb_plot_add_ground (p->scene, plot->left, plot->top, plot->right - plot->left,
                      plot->bottom - plot->top, LB_COLOUR_WATER_TOP, LB_COLOUR_WATER_LOW);
  lb_scene_begin (p->scene, LB_LAYER_BACKGROUND);
  trace_bed (p);
  lb_scene_line_to (p->scene, plot->right, plot->bottom);
  lb_scene_line_to (p->scene, plot->left, plot->bottom);
  lb_scene_close (p->scene);
  lb_scene_end_pickable (p->scene, earth, LB_PICK_BED, 0);
  lb_scene_line (p->scene, LB_LAYER_BACKGROUND, plot->left, plot->top, plot->right, plot->top,
                 surface);
}

static void
add_axes (const Preview *p)
{
  LbScene *scene = p->scene;
  double s = scene->style.scale;

  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (scene, _ ("Depth"), LB_QUANTITY_LENGTH).text, 2 * s, 3 * s, 0,
                     0, LB_COLOUR_TEXT_QUIET, true);
  lb_plot_add_y_axis (scene, &p->plot, LB_QUANTITY_LENGTH, -1);
  lb_plot_add_x_axis (scene, &p->plot, LB_QUANTITY_LENGTH);
  lb_scene_try_text (scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (scene, _ ("Downstream"), LB_QUANTITY_LENGTH).text,
                     p->plot.right, scene->height - 2 * s, 1, 1, LB_COLOUR_TEXT_QUIET, true);
}

/* ---- Soundings, bed, points, reel ---- */

/* The soundings of each column as one stroke from its shallowest to its deepest: a million of them
 * take no more than the picture is wide. */
static void
add_soundings (const Preview *p)
{
  const LbSoundings *all = &p->preview->soundings;
  double s = p->scene->style.scale;
  int n = (int) fmax (1, (p->plot.right - p->plot.left) / STEP);
  g_autofree double *low = g_new (double, n);
  g_autofree double *high = g_new (double, n);
  LbLook look = { .stroke = LB_COLOUR_BELOW, .width = 1.8 * s, .opacity = 0.6 };

  for (int i = 0; i < n; i++)
    {
      low[i] = -INFINITY;
      high[i] = INFINITY;
    }
  for (size_t i = 0; i < all->n; i++)
    {
      int column = column_of (p, all->x[i], n);
      double depth = fmin (all->depth[i], -p->plot.y_from);

      if (column < 0)
        continue;
      low[column] = fmax (low[column], depth);
      high[column] = fmin (high[column], depth);
    }
  for (int i = 0; i < n; i++)
    {
      double x = p->plot.left + (i + 0.5) * STEP;

      if (low[i] < 0)
        continue;
      /* A single sounding is a dot. */
      lb_scene_line (p->scene, LB_LAYER_FOREGROUND, x, lb_plot_y (&p->plot, -high[i]) - 0.5 * s, x,
                     lb_plot_y (&p->plot, -low[i]) + 0.5 * s, look);
    }
}

static void
add_bed_line (const Preview *p)
{
  lb_scene_begin (p->scene, LB_LAYER_FOREGROUND);
  trace_bed (p);
  lb_scene_end_pickable (
      p->scene, (LbLook){ .stroke = LB_COLOUR_BED_LINE, .width = 2 * p->scene->style.scale },
      LB_PICK_BED, 0);
}

static void
add_point (const Preview *p, size_t i, bool is_selected)
{
  double s = p->scene->style.scale, radius = (is_selected ? 6 : 3.5) * s;
  LbLook look = { .fill = is_selected ? LB_COLOUR_INSIDE : LB_COLOUR_CARD,
                  .stroke = is_selected ? LB_COLOUR_CARD : LB_COLOUR_BED_LINE,
                  .width = 1.6 * s };

  lb_scene_begin (p->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (p->scene, lb_plot_x (&p->plot, p->river->bed_x[i]),
                        lb_plot_y (&p->plot, -p->river->bed_depth[i]), radius, radius);
  lb_scene_end (p->scene, look);
}

static void
add_points (const Preview *p)
{
  size_t n = p->river->n_bed_points;
  int selected = p->preview->selected;

  for (size_t i = 0; i < n && n <= MOST_DOTS; i++)
    add_point (p, i, false);
  if (selected >= 0 && (size_t) selected < n)
    add_point (p, (size_t) selected, true);
}

static void
add_reel (const Preview *p)
{
  double s = p->scene->style.scale, x = lb_plot_x (&p->plot, p->scene->setup.boat.position);
  LbLook line = { .stroke = LB_COLOUR_REEL, .width = 1.2 * s, .pattern = LB_LINE_DASHED };
  LbLook mark = { .fill = LB_COLOUR_REEL, .stroke = LB_COLOUR_HULL_LINE, .width = s };

  if (!p->preview->show_reel)
    return;
  lb_scene_line (p->scene, LB_LAYER_FOREGROUND, x, p->plot.top, x, bed_y (p, x), line);
  lb_scene_begin (p->scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (p->scene, x - 6 * s, p->plot.top - 8 * s);
  lb_scene_line_to (p->scene, x + 6 * s, p->plot.top - 8 * s);
  lb_scene_line_to (p->scene, x, p->plot.top);
  lb_scene_close (p->scene);
  lb_scene_end (p->scene, mark);
  if (!lb_scene_try_text (p->scene, LB_LAYER_FOREGROUND, LB_FONT_SCALE, _ ("Reel"), x + 9 * s,
                          p->plot.top - 3 * s, 0, 1, LB_COLOUR_TEXT, true))
    lb_scene_try_text (p->scene, LB_LAYER_FOREGROUND, LB_FONT_SCALE, _ ("Reel"), x - 9 * s,
                       p->plot.top - 3 * s, 1, 1, LB_COLOUR_TEXT, true);
}

/* What the strokes and the line are. */
static void
add_legend (const Preview *p)
{
  double s = p->scene->style.scale, y = 11 * s, x = p->plot.right;
  LbText read = lb_scene_text (p->scene, LB_FONT_SCALE, _ ("as read"));
  LbText kept = lb_scene_text (p->scene, LB_FONT_SCALE, _ ("bed to use"));
  LbLook strokes = { .stroke = LB_COLOUR_BELOW, .width = 2 * s, .opacity = 0.6 };
  LbLook line = { .stroke = LB_COLOUR_BED_LINE, .width = 2 * s };

  if (p->preview->soundings.n == 0)
    return;
  x -= kept.width;
  lb_scene_put_text (p->scene, LB_LAYER_FOREGROUND, kept, x, y - kept.height / 2, LB_COLOUR_TEXT);
  lb_scene_line (p->scene, LB_LAYER_FOREGROUND, x - 22 * s, y, x - 6 * s, y, line);
  x -= 38 * s + read.width;
  lb_scene_put_text (p->scene, LB_LAYER_FOREGROUND, read, x, y - read.height / 2, LB_COLOUR_TEXT);
  for (int i = 0; i < 4; i++)
    lb_scene_line (p->scene, LB_LAYER_FOREGROUND, x - (8 + 4 * i) * s, y - (2 + i % 3) * s,
                   x - (8 + 4 * i) * s, y + (5 - i % 2) * s, strokes);
}

/* ---- In words ---- */

static LbPhrase
length (const Preview *p, double value)
{
  return lb_phrase_quantity (&p->scene->picture, LB_QUANTITY_LENGTH, value);
}

static char *
describe (const Preview *p)
{
  GString *text = g_string_new (NULL);
  LbPhrase reel = length (p, p->scene->setup.boat.position);

  if (p->river->n_bed_points < 2)
    g_string_append_printf (text, _ ("Bed: even, %s deep."), length (p, p->deepest).text);
  else
    g_string_append_printf (text,
                            _ ("Bed over %s of river, made of %zu points: from %s to %s deep."),
                            length (p, p->bed_to - p->bed_from).text, p->river->n_bed_points,
                            length (p, p->shallowest).text, length (p, p->deepest).text);
  if (p->preview->selected >= 0 && (size_t) p->preview->selected < p->river->n_bed_points)
    {
      size_t i = (size_t) p->preview->selected;

      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("Point %zu is selected: %s deep at %s."), i + 1,
                              length (p, p->river->bed_depth[i]).text,
                              length (p, p->river->bed_x[i]).text);
    }
  if (p->preview->show_reel)
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("The reel is at %s."), reel.text);
    }
  if (p->preview->soundings.n > 0)
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("Behind it the %zu soundings as they were read."),
                              p->preview->soundings.n);
    }
  if (p->n_outside > 0)
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("%zu of them are too deep for the picture."), p->n_outside);
    }
  return g_string_free (text, FALSE);
}

LbScene *
lb_bed_preview_new (LbDrawContext *context,
                    const LbPicture *picture,
                    const LbBedPreview *preview,
                    const LbStyle *style,
                    double width,
                    double height)
{
  LbView view = { .width = width, .height = height, .per_metre_x = 1, .per_metre_z = 1 };
  LbPicture bare = { .setup = picture->setup,
                     .units = picture->units,
                     .decimal = picture->decimal,
                     .decimals_plus_1 = picture->decimals_plus_1 };
  LbScene *scene = lb_scene_new (LB_SCENE_CHART, context, &bare, style, &view, width, height);
  Preview p = { .scene = scene, .river = &scene->setup.river, .preview = preview };

  find_depths (&p);
  lay_out (&p);
  set_view (&p);
  add_ground (&p);
  add_axes (&p);
  add_soundings (&p);
  add_bed_line (&p);
  add_points (&p);
  add_reel (&p);
  add_legend (&p);
  scene->words = describe (&p);
  lb_scene_finish (scene);
  return scene;
}
