/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the parts of a card are drawn with: the page at hand, its letters and rules; for the files
 * of this folder only. All measures are points. */
#pragma once

#include "card_drawing.h"
#include "phrases.h"

/* A drawing of its own within a page, as the side view is. */
typedef struct
{
  LbScene *scene;
  double x, y;
} LbCardInset;

#define LB_CARD_MOST_INSETS 8

/* One side of one card. */
typedef struct
{
  LbScene *scene;
  double width, height;
  size_t n_insets;
  LbCardInset insets[LB_CARD_MOST_INSETS];
} LbCardPage;

typedef struct LbGridCache LbGridCache; /* card_grid.h */

typedef struct
{
  LbDrawContext *context;
  LbGridCache *grids;
  GHashTable *heights; /* card_layout.h */
  LbStyle style;
  const LbCardContents *contents;
  const LbPicture *picture; /* the document's own run; may be unsolved */
  LbCardPage *page;         /* NULL while measuring */
} LbCardPen;

/* No letters are smaller. */
#define LB_CARD_LEAST_LETTERS 6.0

/* The size of plain letters; everything else goes by it. */
double lb_card_pen_body (const LbCardPen *pen);

/* The style of a card with plain letters of `body` points. */
LbStyle lb_card_style (double body);

/* Text broken into lines of `width`. */
LbText lb_card_pen_text (const LbCardPen *pen, LbFont font, const char *text, double width);

/* Puts text with its top left corner at (x, y); returns how high it is. */
double lb_card_pen_put (const LbCardPen *pen,
                        LbFont font,
                        const char *text,
                        double x,
                        double y,
                        double width,
                        LbColour colour);

/* A part's heading and the rule under it: its height, and putting it at the top of `box`. */
double lb_card_pen_heading_height (const LbCardPen *pen, const char *heading, double width);
double lb_card_pen_put_heading (const LbCardPen *pen, const char *heading, LbBox box);

void
lb_card_pen_rule (const LbCardPen *pen, double x1, double y1, double x2, double y2, double width);

/* An arrow head with its tip at (x, y), as dimension lines have. */
void lb_card_pen_arrow (const LbCardPen *pen, double x, double y, double angle);

/* `text` between marks that keep its direction of writing to itself (Unicode FSI and PDI). Free
 * with g_free(). */
char *lb_card_isolated (const char *text);

/* A heading of what is computed as a whole says so: "Settings · ≈ computed". Free with g_free(). */
char *lb_card_computed (const LbCardPen *pen, const char *heading);

/* `value` with the mark of an estimate before it where it is one. Free with g_free(). */
char *lb_card_marked (const LbCardPen *pen, const char *value, bool estimate);
