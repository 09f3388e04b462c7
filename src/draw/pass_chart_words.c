/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the time chart says: beside its panels, and to a screen reader. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "pass_chart_private.h"

/* ---- One line ---- */

static LbPhrase
name_of (const LbPassChart *c, LbChartPanel panel, int thing)
{
  if (panel == LB_CHART_HEIGHTS)
    return lb_pass_thing_words (c->scene, thing);
  return lb_phrase_format ("%s", _ (lb_chart_panels[panel].name));
}

static LbPhrase
value_words (const LbPassChart *c, LbChartPanel panel, double value)
{
  if (panel == LB_CHART_HEIGHTS)
    return lb_phrase_height_value (&c->scene->picture, fmax (value, 0));
  return lb_phrase_quantity (&c->scene->picture, lb_chart_panels[panel].quantity, value);
}

static LbPhrase
moment_words (const LbPassChart *c, int rig, LbChartPanel panel, int thing)
{
  const LbTrackMoment *moment = &c->rigs[rig].moment;

  if (panel == LB_CHART_HEIGHTS && lb_pass_thing (moment, thing)->on_bed)
    return lb_phrase_format ("%s", c->rigs[1].track ? _ ("on bed") : _ ("on the bed"));
  return value_words (c, panel, lb_chart_value (moment, panel, thing));
}

/* With `between` before what it is of the second rig. */
static LbPhrase
at_moment (const LbPassChart *c, LbChartPanel panel, int thing, const char *between)
{
  LbPhrase name = name_of (c, panel, thing), words;

  if (!c->rigs[0].is_known)
    return name;
  words = lb_phrase_format (_ ("%s: %s"), name.text, moment_words (c, 0, panel, thing).text);
  if (lb_chart_has_rig (c, panel, 1) && c->rigs[1].is_known)
    return lb_phrase_format ("%s%s%s", words.text, between, moment_words (c, 1, panel, thing).text);
  return words;
}

/* ---- Beside the panels ---- */

/* A piece of the line, and its words on one line at `y`; false when there is no room. */
static bool
add_beside (const LbPassChart *c, LbLook look, const char *words, double y, double bottom)
{
  double s = c->scene->style.scale, left = c->beside + (LB_CHART_SAMPLE + 6) * s;
  LbText text = lb_draw_context_text (c->scene->context, &c->scene->style, LB_FONT_PLAIN, words,
                                      -fmax (c->scene->width - left - 4 * s, 10 * s));
  double middle = y + text.height / 2;

  if (y + text.height > bottom
      || !lb_scene_is_free (c->scene, (LbBox){ left, y, text.width, text.height }, 0))
    return false;
  lb_scene_line (c->scene, LB_LAYER_BACKGROUND, c->beside, middle, c->beside + LB_CHART_SAMPLE * s,
                 middle, look);
  lb_scene_put_text (c->scene, LB_LAYER_FOREGROUND, text, left, y, LB_COLOUR_TEXT);
  return true;
}

static void
add_line (const LbPassChart *c, LbChartPanel panel, int thing, double y, double bottom)
{
  LbPhrase words = at_moment (c, panel, thing, " / ");

  if (!add_beside (c, lb_chart_look (c, panel, thing), words.text, y, bottom))
    c->scene->n_missing_labels++;
}

/* What the panel of heights shows, and what the squares are; returns its foot. */
static double
add_heading (const LbPassChart *c)
{
  LbPhrase heading = lb_plot_heading (c->scene, _ (lb_chart_panels[LB_CHART_HEIGHTS].name),
                                      lb_chart_quantity (c, LB_CHART_HEIGHTS));

  if (c->rigs[1].track)
    /* Translators: numbers beside the chart are those of the first rig and, after a stroke, those
       of the second, whose lines bear squares */
    heading = lb_phrase_format (_ ("%s / □ second rig"), heading.text);
  lb_scene_try_text (c->scene, LB_LAYER_BACKGROUND, LB_FONT_SCALE, heading.text, c->beside,
                     c->plots[0].top, 0, 0, LB_COLOUR_TEXT_QUIET, true);
  /* The square may come from another font, with taller lines. */
  return c->plots[0].top
         + fmax (lb_scene_text (c->scene, LB_FONT_SCALE, heading.text).height,
                 lb_scene_text (c->scene, LB_FONT_PLAIN, "0").height);
}

void
lb_chart_add_words (const LbPassChart *c)
{
  double s = c->scene->style.scale, high = lb_scene_text (c->scene, LB_FONT_PLAIN, "0").height;
  double y = add_heading (c), foot = c->plots[0].bottom + LB_CHART_GAP * s - 1;

  for (int thing = LB_TRACK_WEIGHT; thing < (int) c->picture->track.n_lures; thing++, y += high)
    add_line (c, LB_CHART_HEIGHTS, thing, y, foot);
  for (int panel = LB_CHART_HEIGHTS + 1; panel < c->n_panels; panel++)
    {
      double middle = (c->plots[panel].top + c->plots[panel].bottom) / 2;

      add_line (c, (LbChartPanel) panel, 0, middle - high / 2, c->scene->height);
    }
}

/* ---- In words ---- */

static void
say_range (const LbPassChart *c, int rig, LbChartPanel panel, int thing, GString *text)
{
  double range[2];

  if (!lb_chart_has_rig (c, panel, rig))
    return;
  lb_chart_range (&c->rigs[rig], panel, thing, range);
  if (!(range[0] <= range[1]))
    return;
  g_string_append_c (text, ' ');
  /* Translators: a line of the chart, its least and its most value */
  g_string_append (text, lb_phrase_format (_ ("%s: %s to %s."), name_of (c, panel, thing).text,
                                           value_words (c, panel, range[0]).text,
                                           value_words (c, panel, range[1]).text)
                             .text);
}

static void
say_ranges (const LbPassChart *c, int rig, GString *text)
{
  for (int thing = LB_TRACK_WEIGHT; thing < (int) c->picture->track.n_lures; thing++)
    say_range (c, rig, LB_CHART_HEIGHTS, thing, text);
  for (int panel = LB_CHART_HEIGHTS + 1; panel < c->n_panels; panel++)
    say_range (c, rig, (LbChartPanel) panel, 0, text);
}

static void
say_moment (const LbPassChart *c, GString *text)
{
  const char *second = _ (", of the second rig ");

  for (int thing = LB_TRACK_WEIGHT; thing < (int) c->picture->track.n_lures; thing++)
    g_string_append_printf (text, " %s.", at_moment (c, LB_CHART_HEIGHTS, thing, second).text);
  for (int panel = LB_CHART_HEIGHTS + 1; panel < c->n_panels; panel++)
    g_string_append_printf (text, " %s.", at_moment (c, (LbChartPanel) panel, 0, second).text);
}

char *
lb_chart_describe (const LbPassChart *c)
{
  GString *text = g_string_new (
      c->n_panels > LB_CHART_APART
          ? _ (
              "Time chart of the pass: heights off the bed of weight and lures with the band, wire "
              "angle, hand tension, boat speed, and how far the nearest two lines are apart.")
          : _ (
              "Time chart of the pass: heights off the bed of weight and lures with the band, wire "
              "angle, hand tension, boat speed."));
  const LbBand *band = &c->scene->setup.band;
  LbPhrase low = lb_phrase_height_value (&c->scene->picture, band->low);
  LbPhrase high = lb_phrase_height_value (&c->scene->picture, band->high);

  g_string_append_c (text, ' ');
  g_string_append_printf (text, _ ("Wanted band: %s to %s off the bed."), low.text, high.text);
  g_string_append_printf (text, " %s", lb_pass_moment_words (c->scene, c->picture).text);
  if (c->rigs[0].is_known)
    say_moment (c, text);
  g_string_append_printf (text, " %s",
                          c->picture->track.n > 0 ? _ ("Over all that is known of the pass:")
                                                  : _ ("Nothing of the pass is known yet."));
  say_ranges (c, 0, text);
  if (c->rigs[1].track)
    {
      g_string_append_printf (text, " %s", _ ("The second rig, its lines marked with squares:"));
      say_ranges (c, 1, text);
    }
  return g_string_free (text, FALSE);
}
