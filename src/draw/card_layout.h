/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which piece of a card goes where; for the files of this folder only. */
#pragma once

#include "card_piece.h"

#define LB_CARD_MOST_PIECES 12 /* on one page */

typedef struct
{
  LbCardPiece piece;
  LbBox box; /* in the page's room */
} LbCardPlace;

typedef struct
{
  size_t n;
  LbCardPlace places[LB_CARD_MOST_PIECES];
} LbCardArrangement;

/* The heights of pieces that were measured; one table serves one drawing, in all its letters. Unref
 * when done. */
GHashTable *lb_card_heights_new (void);

/* Puts as many of the pieces as fit into a page whose room is `width` x `height`: in their order,
 * the first ones; of one that is longer than a page, so much as there is room for. What was put is
 * taken off `pieces` (LbCardPiece). At least one piece is taken off each time: one that fits no
 * page even in its shortest form is put into `dropped` instead. */
LbCardArrangement lb_card_arrange (
    const LbCardPen *pen, GArray *pieces, double width, double height, GArray *dropped);
