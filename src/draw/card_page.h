/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pages of a card and what frames them; for the files of this folder only. */
#pragma once

#include "card_layout.h"

/* How small the plain letters of a card of this size are to be, points: at best, and at least. */
double lb_card_body_best (double width, double height);
#define LB_CARD_BODY_LEAST 6.5

/* Left free along the edges, points: what poor printers cannot reach, or more. */
double lb_card_margin (double width, double height);

/* An empty page; free with lb_card_page_free(). */
LbCardPage *lb_card_page_new (const LbCardPen *pen, double width, double height);
void lb_card_page_free (gpointer page); /* an LbCardPage; NULL is fine */

/* Where the pieces go: under the title, which is written large and in full or small in one line,
 * and over the foot. */
LbBox lb_card_page_room (const LbCardPen *pen, double width, double height, bool full_title);

/* Draws title and foot of page `number` (from 0) of `n` onto the pen's page. */
void lb_card_page_add_frame (const LbCardPen *pen, int number, int n, bool full_title);

/* Paints a page with its top left corner at the origin. */
void lb_card_page_paint (const LbCardPage *page, cairo_t *cr);

/* Cuts what was added into what can be painted; the last thing to do to a page. */
void lb_card_page_finish (LbCardPage *page);
