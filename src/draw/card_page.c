/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_page.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* A quarter inch is what nearly every printer leaves free; common practice, no source. */
#define LEAST_MARGIN 18.0

double
lb_card_body_best (double width, double height)
{
  double side = fmin (width, height);

  return side < 150 ? 7 : side < 230 ? 7.5 : side < 310 ? 8 : side < 430 ? 9 : 10;
}

double
lb_card_margin (double width, double height)
{
  double side = fmin (width, height);

  return side < 160 ? 12 : side < 350 ? LEAST_MARGIN : side < 430 ? 24 : 36;
}

LbCardPage *
lb_card_page_new (const LbCardPen *pen, double width, double height)
{
  LbCardPage *page = g_new0 (LbCardPage, 1);
  LbView none = { 0 };

  page->width = width;
  page->height = height;
  page->scene =
      lb_scene_new (LB_SCENE_PART, pen->context, pen->picture, &pen->style, &none, width, height);
  return page;
}

void
lb_card_page_free (gpointer data)
{
  LbCardPage *page = data;

  if (!page)
    return;
  lb_scene_free (page->scene);
  for (size_t i = 0; i < page->n_insets; i++)
    lb_scene_free (page->insets[i].scene);
  g_free (page);
}

void
lb_card_page_finish (LbCardPage *page)
{
  lb_scene_finish (page->scene);
  page->scene->shape = NULL;
}

void
lb_card_page_paint (const LbCardPage *page, cairo_t *cr)
{
  lb_scene_paint (page->scene, cr, LB_LAYER_ALL);
  for (size_t i = 0; i < page->n_insets; i++)
    {
      cairo_save (cr);
      cairo_translate (cr, page->insets[i].x, page->insets[i].y);
      lb_scene_paint (page->insets[i].scene, cr, LB_LAYER_ALL);
      cairo_restore (cr);
    }
}

/* ---- Title and foot ---- */

/* All of it, however long; or its beginning in one line. */
static LbText
title_text (const LbCardPen *pen, double width, bool in_full)
{
  const char *title = pen->contents->title;
  double line = 2.0 * pen->style.font_size[LB_FONT_TITLE];
  LbText text;

  if (!in_full)
    return lb_draw_context_text (pen->context, &pen->style, LB_FONT_STRONG, title, -width);
  text = lb_card_pen_text (pen, LB_FONT_TITLE, title, width);
  if (text.height > line)
    text = lb_card_pen_text (pen, LB_FONT_STRONG, title, width);
  return text;
}

static char *
foot_words (const LbCardPen *pen)
{
  const LbCardContents *contents = pen->contents;
  const char *parts[] = { contents->date, contents->calibration, contents->estimate_note };
  GString *words = g_string_new (NULL);

  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    if (*parts[i])
      g_string_append_printf (words, "%s%s", words->len ? " · " : "", parts[i]);
  return g_string_free (words, FALSE);
}

/* Room for "12 / 34" at the end of the foot. */
static double
number_width (const LbCardPen *pen)
{
  return lb_card_pen_text (pen, LB_FONT_SCALE, "00 / 00", 1e4).width + 0.5 * lb_card_pen_body (pen);
}

static LbText
foot_text (const LbCardPen *pen, double width)
{
  g_autofree char *words = foot_words (pen);

  return lb_card_pen_text (pen, LB_FONT_SCALE, words, width - number_width (pen));
}

LbBox
lb_card_page_room (const LbCardPen *pen, double width, double height, bool full_title)
{
  double margin = lb_card_margin (width, height), body = lb_card_pen_body (pen);
  double inner = width - 2 * margin;
  double top = margin + title_text (pen, inner, full_title).height + 0.9 * body;
  double low = margin + foot_text (pen, inner).height + 0.7 * body;

  return (LbBox){ margin, top, inner, fmax (height - top - low, 0) };
}

void
lb_card_page_add_frame (const LbCardPen *pen, int number, int n, bool full_title)
{
  LbCardPage *page = pen->page;
  double margin = lb_card_margin (page->width, page->height), body = lb_card_pen_body (pen);
  double inner = page->width - 2 * margin, right = margin + inner;
  LbText title = title_text (pen, inner, full_title), foot = foot_text (pen, inner);
  double under = margin + title.height + 0.25 * body;
  double over = page->height - margin - foot.height - 0.25 * body;
  char numbers[32];
  LbText count;

  lb_scene_put_text (page->scene, LB_LAYER_FOREGROUND, title, margin, margin, LB_COLOUR_TEXT);
  lb_card_pen_rule (pen, margin, under, right, under, 1.4);
  lb_card_pen_rule (pen, margin, over, right, over, 0.5);
  lb_scene_put_text (page->scene, LB_LAYER_FOREGROUND, foot, margin, over + 0.25 * body,
                     LB_COLOUR_TEXT);
  if (n < 2)
    return;
  g_snprintf (numbers, sizeof numbers, "%d / %d", number + 1, n);
  count = lb_card_pen_text (pen, LB_FONT_SCALE, numbers, 1e4);
  lb_scene_put_text (page->scene, LB_LAYER_FOREGROUND, count, right - count.width,
                     over + 0.25 * body, LB_COLOUR_TEXT);
}
