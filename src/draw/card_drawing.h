/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A document's card as sheets to be printed: preview, print, PDF, SVG and PNG paint these. */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "card_contents.h"

typedef struct LbCardDrawing LbCardDrawing;

/* What the drawing needs to know beside the contents. Zeros are fine. */
typedef struct
{
  char decimal;        /* decimal sign; 0 stands for '.' */
  int decimals_plus_1; /* as in LbPicture */
  int most_pages;      /* of the card, the template's not counted; 0: as many as it takes */
} LbCardDrawingOptions;

/* Lays the card out as its choices (contents->card) say. What has no room goes to a further page;
 * with `most_pages`, it is first written smaller, then shorter, and then left out, the lowest rank
 * first. No text is smaller than 6 pt. `contents` must outlive the drawing; `options` may be NULL.
 * Never NULL; free with lb_card_drawing_free(). */
LbCardDrawing *lb_card_drawing_new (const LbCardContents *contents,
                                    const LbCardDrawingOptions *options);
void lb_card_drawing_free (LbCardDrawing *drawing); /* NULL is fine */

/* The sheets to print, at least one. */
size_t lb_card_drawing_n_sheets (const LbCardDrawing *drawing);

/* Points of 1/72 in. The sheets of one card need not be of one size: those of the template stand
 * upright. */
void lb_card_drawing_sheet_size (const LbCardDrawing *drawing,
                                 size_t sheet,
                                 double *width,
                                 double *height);

/* Paints with the sheet's top left corner at the origin, in points. Does not paint the paper. */
void lb_card_drawing_paint (const LbCardDrawing *drawing, size_t sheet, cairo_t *cr);

/* The pages of the card, without those of the template. */
size_t lb_card_drawing_n_pages (const LbCardDrawing *drawing);

/* The title of the card, owned by its contents. */
const char *lb_card_drawing_title (const LbCardDrawing *drawing);

/* What was left out for want of room, translated ("Notes, Hardware"), or NULL. Owned by the
 * drawing. */
const char *lb_card_drawing_left_out (const LbCardDrawing *drawing);

/* All that is written on a sheet, from top to bottom, for a screen reader. Free with g_free(). */
char *lb_card_drawing_describe (const LbCardDrawing *drawing, size_t sheet);

/* What is written with letters that no font of this computer has, and is printed as boxes: a text a
 * line. NULL: nothing. Free with g_free(). */
char *lb_card_drawing_dup_unlettered (const LbCardDrawing *drawing);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbCardDrawing, lb_card_drawing_free)
