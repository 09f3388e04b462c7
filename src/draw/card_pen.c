/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_pen.h"

#include <math.h>

double
lb_card_pen_body (const LbCardPen *pen)
{
  return pen->style.font_size[LB_FONT_PLAIN];
}

/* The drawings' style at the scale that gives plain letters that size. */
LbStyle
lb_card_style (double body)
{
  double plain = lb_style_make (LB_THEME_PRINT, 1).font_size[LB_FONT_PLAIN];
  LbStyle style = lb_style_make (LB_THEME_PRINT, body / plain);

  style.font_size[LB_FONT_SCALE] = fmax (style.font_size[LB_FONT_SCALE], LB_CARD_LEAST_LETTERS);
  style.font_size[LB_FONT_STRONG] = body;
  return style;
}

LbText
lb_card_pen_text (const LbCardPen *pen, LbFont font, const char *text, double width)
{
  return lb_draw_context_text (pen->context, &pen->style, font, text, fmax (width, 1));
}

double
lb_card_pen_put (const LbCardPen *pen,
                 LbFont font,
                 const char *text,
                 double x,
                 double y,
                 double width,
                 LbColour colour)
{
  LbText shaped = lb_card_pen_text (pen, font, text, width);

  /* A single line that runs from right to left begins at the right, as broken ones do. */
  if (pango_layout_get_direction (shaped.layout, 0) == PANGO_DIRECTION_RTL)
    x += fmax (width - shaped.width, 0);
  lb_scene_put_text (pen->page->scene, LB_LAYER_FOREGROUND, shaped, x, y, colour);
  return shaped.height;
}

#define HEADING_GAP 0.25 /* of plain letters, above and below the rule */

double
lb_card_pen_heading_height (const LbCardPen *pen, const char *heading, double width)
{
  double body = lb_card_pen_body (pen);

  return lb_card_pen_text (pen, LB_FONT_STRONG, heading, width).height + 2 * HEADING_GAP * body;
}

double
lb_card_pen_put_heading (const LbCardPen *pen, const char *heading, LbBox box)
{
  double gap = HEADING_GAP * lb_card_pen_body (pen);
  double height =
      lb_card_pen_put (pen, LB_FONT_STRONG, heading, box.x, box.y, box.width, LB_COLOUR_TEXT);
  double y = box.y + height + 0.5 * gap;

  lb_card_pen_rule (pen, box.x, y, box.x + box.width, y, 0.6);
  return height + 2 * gap;
}

void
lb_card_pen_rule (const LbCardPen *pen, double x1, double y1, double x2, double y2, double width)
{
  lb_scene_line (pen->page->scene, LB_LAYER_FOREGROUND, x1, y1, x2, y2,
                 (LbLook){ .stroke = LB_COLOUR_TEXT, .width = width });
}

void
lb_card_pen_arrow (const LbCardPen *pen, double x, double y, double angle)
{
  lb_scene_begin (pen->page->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_arrow_head (pen->page->scene, x, y, angle, 0.75 * lb_card_pen_body (pen));
  lb_scene_end (pen->page->scene, (LbLook){ .fill = LB_COLOUR_TEXT });
}

char *
lb_card_isolated (const char *text)
{
  return g_strconcat ("\u2068", text, "\u2069", NULL);
}

char *
lb_card_computed (const LbCardPen *pen, const char *heading)
{
  return g_strdup_printf ("%s · %s", heading, pen->contents->computed_note);
}

char *
lb_card_marked (const LbCardPen *pen, const char *value, bool estimate)
{
  if (!estimate || !*value)
    return g_strdup (value);
  return g_strconcat (pen->contents->estimate_mark, "\u00a0", value, NULL);
}
