/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines and columns of the settings table; for the files of this folder only. */
#pragma once

#include "card_piece.h"

#define LB_GRID_MOST_LINES 256
#define LB_GRID_PAD 0.3  /* of plain letters, round what is in a cell */
#define LB_GRID_FEWEST 3 /* currents side by side, if it can be */

/* One line of the table: a weight at a depth. */
typedef struct
{
  const LbCardBlock *block;
  size_t depth;
} LbGridLine;

typedef struct
{
  LbCardPen pen; /* its letters may be smaller than those of the page */
  const LbCardTable *table;
  size_t n;
  LbGridLine lines[LB_GRID_MOST_LINES];
  double body, width;
  double label, cell, limits; /* widths of the columns; 0 limits: they have no column */
  size_t across;              /* currents in one grid */
  double pair;                /* the widest pair of line out and angle */
  bool in_pairs;              /* they stand side by side in a cell */
} LbGrid;

/* The lines of the piece's variant, and columns for `width`: all currents in one grid, in letters
 * that are somewhat smaller where it takes that; else plain letters and as many grids as it
 * takes. */
LbGrid lb_grid_make (const LbCardPen *pen, const LbCardPiece *piece, double width);

/* Grids are asked for again and again while pages are dealt out, and take many widths to make. One
 * cache serves one drawing. */
LbGridCache *lb_grid_cache_new (void);
void lb_grid_cache_free (LbGridCache *cache);

/* All lines; and where they are best broken off, as LbCardPieceClass has it. */
size_t lb_grid_count (const LbCardPen *pen);
size_t lb_grid_break (const LbCardPen *pen, const LbCardPiece *piece, size_t n);
