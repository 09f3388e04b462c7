/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pages of cards on sheets of paper, with marks to cut by; for the files of this folder only. */
#pragma once

#include "card_page.h"

#define LB_PRESS_MOST_SPOTS 128

/* One sheet as it comes out of the printer. */
typedef struct
{
  double width, height;
  LbScene *marks; /* to cut by; NULL when the sheet is the card */
  size_t n_spots;
  struct
  {
    const LbCardPage *page; /* not owned */
    double x, y;
  } spots[LB_PRESS_MOST_SPOTS];
} LbPressSheet;

void lb_press_sheet_free (gpointer sheet); /* an LbPressSheet; NULL is fine */

/* Lays `n` pages of one size on sheets of `width` x `height`, which are turned where more, or only
 * then any, fit; appends LbPressSheet to `sheets`. With `several` a sheet holds as many as fit: the
 * pages one after the other, and all of them again while there is room. Otherwise one each. */
void lb_press_lay (GPtrArray *sheets,
                   const LbCardPen *pen,
                   LbCardPage *const *pages,
                   size_t n,
                   double width,
                   double height,
                   bool several);

/* A page that is a sheet by itself. */
void lb_press_lay_alone (GPtrArray *sheets, const LbCardPage *page);

/* The pages of a card, without those of the template, as they were drawn; and all sheets. */
const LbCardPage *lb_card_drawing_page (const LbCardDrawing *drawing, size_t page);
const LbPressSheet *lb_card_drawing_sheet (const LbCardDrawing *drawing, size_t sheet);
