/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "snag_chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "chart_axes.h"

#define PIECES 160
#define SAMPLE 24.0  /* style units, a piece of a line beside its words */
#define SHORTEST 2.0 /* s, of the axis */
#define LONGEST 600.0
#define WITHIN 4.0 /* what comes later than this many times the first is left out */

typedef struct
{
  LbScene *scene;
  const LbSnagPicture *snag;
  LbPlot plot;
  LbSnagTimes times; /* of the chosen curve */
} Chart;

static double
pull_at (const Chart *c, int curve, double time)
{
  return lb_snag_pull (&c->snag->snag, c->snag->speed[curve], time);
}

/* ---- The axes ---- */

/* So long that the chosen curve's moments are seen, and what comes soon after the first. */
static double
last_time (const Chart *c)
{
  double first = fmin (c->times.until_hand, c->times.until_breaks), last = 0;
  const double others[] = { c->times.until_hand, c->times.until_breaks,
                            c->snag->times[1 - c->snag->chosen].until_hand };

  if (!(first < LONGEST))
    return 60;
  for (size_t i = 0; i < G_N_ELEMENTS (others); i++)
    if (others[i] <= WITHIN * first)
      last = fmax (last, others[i]);
  return fmin (fmax (1.2 * last, SHORTEST), LONGEST);
}

static void
lay_out (Chart *c)
{
  double s = c->scene->style.scale, most = c->snag->limit;

  c->plot = (LbPlot){
    .left = 34 * s,
    .right = c->scene->width - 8 * s,
    .top = 44 * s,
    .bottom = c->scene->height - 38 * s,
    .x_to = last_time (c),
  };
  if (c->times.until_breaks <= c->plot.x_to)
    most = fmax (most, pull_at (c, c->snag->chosen, c->times.until_breaks));
  c->plot.y_to = 1.15 * fmax (most, c->snag->snag.pull_now);
}

static LbLook
look_of (const Chart *c, int curve)
{
  double s = c->scene->style.scale;

  return (LbLook){ .stroke = curve == 0 ? LB_COLOUR_WIRE : LB_COLOUR_CURRENT,
                   .width = (curve == c->snag->chosen ? 2.6 : 1.4) * s,
                   .pattern = curve == 0 ? LB_LINE_SOLID : LB_LINE_DASHED };
}

static const char *
name_of (int curve)
{
  return curve == 0 ? _ ("motor on") : _ ("motor stopped");
}

static void
add_key (const Chart *c)
{
  double s = c->scene->style.scale, x = c->plot.left, y = 21 * s;

  for (int curve = 0; curve < LB_SNAG_CURVES; curve++)
    {
      LbText text = lb_scene_text (c->scene, LB_FONT_PLAIN, name_of (curve));

      lb_scene_line (c->scene, LB_LAYER_BACKGROUND, x, y + text.height / 2, x + SAMPLE * s,
                     y + text.height / 2, look_of (c, curve));
      lb_scene_put_text (c->scene, LB_LAYER_BACKGROUND, text, x + (SAMPLE + 6) * s, y,
                         LB_COLOUR_TEXT);
      x += (SAMPLE + 20) * s + text.width;
    }
}

static void
add_axes (const Chart *c)
{
  const LbPlot *p = &c->plot;
  double s = c->scene->style.scale;
  LbLook foot = { .stroke = LB_COLOUR_TEXT_QUIET, .width = s };

  lb_plot_add_ground (c->scene, p->left, p->top, p->right - p->left, p->bottom - p->top,
                      LB_COLOUR_WATER_TOP, LB_COLOUR_NONE);
  lb_scene_try_text (c->scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (c->scene, _ ("In the hand"), LB_QUANTITY_FORCE).text, 2 * s,
                     2 * s, 0, 0, LB_COLOUR_TEXT_QUIET, true);
  lb_plot_add_y_axis (c->scene, p, LB_QUANTITY_FORCE, 1);
  lb_plot_add_x_axis (c->scene, p, LB_QUANTITY_TIME);
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, p->left, p->bottom, p->right, p->bottom, foot);
  lb_scene_try_text (c->scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE,
                     lb_plot_heading (c->scene, _ ("Since it hung up"), LB_QUANTITY_TIME).text,
                     p->right, c->scene->height - 2 * s, 1, 1, LB_COLOUR_TEXT_QUIET, true);
  add_key (c);
}

/* ---- What happens ---- */

/* Until the line parts, or the pull leaves the plot. */
static void
add_curve (const Chart *c, int curve)
{
  const LbPlot *p = &c->plot;
  /* A line that never parts has an unset time, which fmin() leaves out. */
  double end = fmin (p->x_to, c->snag->times[curve].until_breaks);

  lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (c->scene, p->left, lb_plot_y (p, c->snag->snag.pull_now));
  for (int i = 1; i <= PIECES; i++)
    {
      double time = end * i / PIECES, pull = pull_at (c, curve, time);

      lb_scene_line_to (c->scene, lb_plot_x (p, time), lb_plot_y (p, fmin (pull, p->y_to)));
      if (pull > p->y_to)
        break;
    }
  lb_scene_end (c->scene, look_of (c, curve));
}

static LbPhrase
time_words (const Chart *c, double time)
{
  const LbPicture *picture = &c->scene->picture;

  return lb_phrase_format (_ ("%s s"), lb_phrase_number (picture, time, time < 10 ? 1 : 0).text);
}

static LbPhrase
limit_words (const Chart *c)
{
  LbPicture plain = c->scene->picture;

  /* Whole numbers, as its source gives it. */
  plain.decimals_plus_1 = 1;
  LbPhrase limit = lb_phrase_quantity (&plain, LB_QUANTITY_FORCE, c->snag->limit);

  return lb_phrase_format (_ ("hand limit %s"), limit.text);
}

static LbPhrase
parting_words (const Chart *c)
{
  int part = c->times.breaks;
  const char *name = part == LB_PART_MAINLINE ? _ ("mainline parts")
                     : part == LB_PART_SHANK  ? _ ("shank parts")
                                              : _ ("leader parts");

  return lb_phrase_format ("%s", name);
}

static void
add_limit (const Chart *c)
{
  const LbPlot *p = &c->plot;
  double s = c->scene->style.scale, y = lb_plot_y (p, c->snag->limit);
  LbLook look = { .stroke = LB_COLOUR_REMARK, .width = 1.4 * s, .pattern = LB_LINE_DOTTED };

  lb_scene_line (c->scene, LB_LAYER_FOREGROUND, p->left, y, p->right, y, look);
}

/* Beside a point of the chosen curve, which rises: to the left above it, or to the right below. */
static void
add_words_at (const Chart *c, const char *words, double x, double y)
{
  double s = c->scene->style.scale;
  LbText text = lb_scene_text (c->scene, LB_FONT_PLAIN, words);
  double above = fmax (y - text.height - 4 * s, c->plot.top + 2 * s);
  bool room = x - 12 * s - text.width > c->plot.left;

  if (!room || !lb_plot_add_card (c->scene, &c->plot, words, x - 12 * s, above, 1, LB_COLOUR_TEXT))
    lb_plot_add_card (c->scene, &c->plot, words, x + 12 * s, y + 5 * s, 0, LB_COLOUR_TEXT);
}

static void
add_moments (const Chart *c)
{
  const LbPlot *p = &c->plot;
  double s = c->scene->style.scale, r = 5 * s;
  LbLook cross = { .stroke = LB_COLOUR_REMARK, .width = 2.4 * s };

  if (c->times.until_hand <= p->x_to)
    {
      double x = lb_plot_x (p, c->times.until_hand), y = lb_plot_y (p, c->snag->limit);

      lb_scene_begin (c->scene, LB_LAYER_FOREGROUND);
      lb_scene_add_ellipse (c->scene, x, y, r, r);
      lb_scene_end (
          c->scene,
          (LbLook){ .fill = LB_COLOUR_CARD, .stroke = LB_COLOUR_REMARK, .width = 2.2 * s });
      add_words_at (c,
                    lb_phrase_format (_ ("%s: %s"), time_words (c, c->times.until_hand).text,
                                      limit_words (c).text)
                        .text,
                    x, y);
    }
  if (c->times.until_breaks <= p->x_to)
    {
      double x = lb_plot_x (p, c->times.until_breaks);
      double y = lb_plot_y (p, pull_at (c, c->snag->chosen, c->times.until_breaks));
      LbPhrase when = time_words (c, c->times.until_breaks);

      for (int i = -1; i <= 1; i += 2)
        lb_scene_line (c->scene, LB_LAYER_FOREGROUND, x - r, y - i * r, x + r, y + i * r, cross);
      add_words_at (c, lb_phrase_format (_ ("%s: %s"), when.text, parting_words (c).text).text, x,
                    y);
    }
}

/* ---- In words ---- */

static char *
describe (const Chart *c)
{
  const LbPicture *picture = &c->scene->picture;
  LbPhrase now = lb_phrase_quantity (picture, LB_QUANTITY_FORCE, c->snag->snag.pull_now);
  GString *text =
      g_string_new (_ ("Chart of the pull in the hand from the moment when it hangs up."));

  g_string_append_printf (text, " %s", lb_phrase_format (_ ("At first %s."), now.text).text);
  for (int curve = 0; curve < LB_SNAG_CURVES; curve++)
    {
      LbSnagTimes times = c->snag->times[curve];
      Chart of = *c;

      of.times = times;
      g_string_append_printf (text, " %s:", curve == 0 ? _ ("Motor on") : _ ("Motor stopped"));
      if (times.until_hand < LONGEST)
        g_string_append_printf (text, " %s",
                                lb_phrase_format (_ ("%s at %s"), limit_words (c).text,
                                                  time_words (c, times.until_hand).text)
                                    .text);
      else
        g_string_append_printf (text, " %s", _ ("the hand limit is not reached"));
      if (times.until_breaks < LONGEST)
        g_string_append_printf (text, "; %s",
                                lb_phrase_format (_ ("%s at %s"), parting_words (&of).text,
                                                  time_words (c, times.until_breaks).text)
                                    .text);
      g_string_append_c (text, '.');
    }
  return g_string_free (text, FALSE);
}

LbScene *
lb_snag_chart_new (LbDrawContext *context,
                   const LbPicture *picture,
                   const LbSnagPicture *snag,
                   const LbStyle *style,
                   double width,
                   double height)
{
  Chart c = { .scene = lb_plot_scene (context, picture, picture->setup, style, width, height),
              .snag = snag,
              .times = snag->times[snag->chosen] };

  lay_out (&c);
  add_axes (&c);
  add_limit (&c);
  add_curve (&c, 1 - snag->chosen);
  add_curve (&c, snag->chosen);
  add_moments (&c);
  c.scene->words = describe (&c);
  lb_scene_finish (c.scene);
  return c.scene;
}
