/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_grid.h"

#include <math.h>

/* ---- Which lines ---- */

/* All; of the document's weight; of that the depth nearest to the document's. */
static bool
line_belongs (const LbCardPen *pen, const LbCardBlock *block, size_t depth, int variant)
{
  const LbCardTable *table = &pen->contents->table;
  double own = pen->contents->setup.river.depth;

  if (variant >= 1 && !block->is_own)
    return false;
  for (size_t i = 0; variant >= 2 && i < table->n_depths; i++)
    if (fabs (table->depths[i] - own) < fabs (table->depths[depth] - own))
      return false;
  return true;
}

static size_t
collect (const LbCardPen *pen, int variant, LbGridLine *lines)
{
  const LbCardTable *table = &pen->contents->table;
  size_t n = 0;

  for (size_t w = 0; w < table->n_weights; w++)
    for (size_t d = 0; d < table->n_depths && n < LB_GRID_MOST_LINES; d++)
      if (line_belongs (pen, &table->blocks[w], d, variant))
        lines[n++] = (LbGridLine){ &table->blocks[w], d };
  return n;
}

size_t
lb_grid_count (const LbCardPen *pen)
{
  LbGridLine lines[LB_GRID_MOST_LINES];

  return collect (pen, 0, lines);
}

/* After a weight, if there is one that ends. */
size_t
lb_grid_break (const LbCardPen *pen, const LbCardPiece *piece, size_t n)
{
  LbGridLine lines[LB_GRID_MOST_LINES];
  size_t end = collect (pen, piece->variant, lines);

  for (size_t k = n; k > 0; k--)
    if (piece->first + k >= end
        || lines[piece->first + k].block != lines[piece->first + k - 1].block)
      return k;
  return 0;
}

/* ---- Columns ---- */

static double
width_of (const LbGrid *grid, LbFont font, const char *text)
{
  return lb_card_pen_text (grid->pen, font, text, 1e4).width;
}

/* Line out and angle side by side. */
static double
pair_width (const LbGrid *grid, const LbCardCell *cell)
{
  return width_of (grid, LB_FONT_STRONG, cell->line_words) + 0.5 * grid->body
         + width_of (grid, LB_FONT_PLAIN, cell->angle_words);
}

static double
cell_width (const LbGrid *grid, const LbCardCell *cell)
{
  double words = width_of (grid, LB_FONT_SCALE, lb_card_state_words (cell->state));

  return fmax (fmin (words, 5.5 * grid->body),
               fmax (width_of (grid, LB_FONT_STRONG, cell->line_words),
                     width_of (grid, LB_FONT_PLAIN, cell->angle_words)));
}

static void
measure_columns (LbGrid *grid)
{
  const LbCardTable *table = grid->table;

  for (size_t d = 0; d < table->n_depths; d++)
    grid->label = fmax (grid->label, width_of (grid, LB_FONT_PLAIN, table->depth_words[d]));
  for (size_t c = 0; c < table->n_currents; c++)
    grid->cell = fmax (grid->cell, width_of (grid, LB_FONT_PLAIN, table->current_words[c]));
  for (size_t i = 0; i < grid->n; i++)
    {
      const LbCardRow *row = &grid->lines[i].block->rows[grid->lines[i].depth];

      grid->label = fmax (grid->label, width_of (grid, LB_FONT_STRONG, grid->lines[i].block->name));
      grid->limits = fmax (grid->limits, width_of (grid, LB_FONT_SCALE, row->limits));
      for (size_t c = 0; c < table->n_currents; c++)
        {
          grid->cell = fmax (grid->cell, cell_width (grid, &row->cells[c]));
          grid->pair = fmax (grid->pair, pair_width (grid, &row->cells[c]));
        }
    }
  grid->limits = fmax (grid->limits, width_of (grid, LB_FONT_SCALE, table->limits_title));
  grid->label += 2 * LB_GRID_PAD * grid->body;
  grid->cell += 2 * LB_GRID_PAD * grid->body;
  grid->limits = fmin (grid->limits, 7 * grid->body) + 2 * LB_GRID_PAD * grid->body;
}

/* As many currents side by side as there is room for, evenly dealt out to the grids. */
static void
share_columns (LbGrid *grid)
{
  double room = grid->width - grid->label - grid->limits;
  size_t most = room > 0 ? (size_t) floor (room / grid->cell) : 0;
  size_t n = grid->table->n_currents, grids;

  if (most < MIN (n, LB_GRID_FEWEST) && grid->limits > 0) /* they then stand under each line */
    {
      grid->limits = 0;
      share_columns (grid);
      return;
    }
  if (most == 0 || n == 0)
    {
      grid->across = 0;
      return;
    }
  grids = (n + MIN (most, n) - 1) / MIN (most, n);
  grid->across = (n + grids - 1) / grids;
  grid->cell = fmin (room / (double) grid->across, 2.2 * grid->cell);
  grid->in_pairs = grid->pair + 2 * LB_GRID_PAD * grid->body <= grid->cell;
}

LbGrid
lb_grid_make (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  LbGrid grid = { .pen = pen, .table = &pen->contents->table, .width = width };

  grid.body = lb_card_pen_body (pen);
  grid.n = collect (pen, piece->variant, grid.lines);
  measure_columns (&grid);
  share_columns (&grid);
  return grid;
}
