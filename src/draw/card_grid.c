/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_grid.h"

#include <math.h>

/* How small the letters of the table may become (an estimate), of those of the page; and with how
 * many weights they begin to, so that line out and angle stand side by side. */
#define LEAST_SHARE 0.8
#define FEW_WEIGHTS 2

#define LIMITS_WIDEST 7.0 /* of plain letters */
#define LIMITS_BROKEN 4.6 /* the same, in two lines */

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
  return lb_card_pen_text (&grid->pen, font, text, 1e4).width;
}

/* Of the longest word: texts of several go on below. */
static double
width_of_words (const LbGrid *grid, LbFont font, const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " ", -1);
  double most = 0;

  for (char **word = words; *word; word++)
    most = fmax (most, width_of (grid, font, *word));
  return most;
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
  return fmax (width_of_words (grid, LB_FONT_SCALE, lb_card_state_words (cell->state)),
               fmax (width_of (grid, LB_FONT_STRONG, cell->line_words),
                     width_of (grid, LB_FONT_PLAIN, cell->angle_words)));
}

static void
measure_heads (LbGrid *grid)
{
  const LbCardTable *table = grid->table;

  for (size_t d = 0; d < table->n_depths; d++)
    grid->label = fmax (grid->label, width_of (grid, LB_FONT_PLAIN, table->depth_words[d]));
  for (size_t c = 0; c < table->n_currents; c++)
    grid->cell = fmax (grid->cell, width_of_words (grid, LB_FONT_PLAIN, table->current_words[c]));
  grid->limits = width_of (grid, LB_FONT_SCALE, table->limits_title);
}

static void
measure_columns (LbGrid *grid)
{
  const LbCardTable *table = grid->table;
  double pads = 2 * LB_GRID_PAD * grid->body;

  measure_heads (grid);
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
  grid->label += pads;
  grid->cell += pads;
  grid->pair += pads;
  grid->limits = fmin (grid->limits, LIMITS_WIDEST * grid->body) + pads;
}

static void
measure (LbGrid *grid, double body)
{
  if (body != lb_card_pen_body (&grid->pen))
    grid->pen.style = lb_card_style (body);
  grid->body = body;
  grid->label = grid->cell = grid->limits = grid->pair = 0;
  measure_columns (grid);
}

/* All currents side by side, line out and angle too where they are to be `in_pairs`. */
static bool
fits_at_once (LbGrid *grid, bool in_pairs)
{
  double n = (double) grid->table->n_currents;
  double least = in_pairs ? fmax (grid->pair, grid->cell) : grid->cell, broken;

  broken = fmin (grid->limits, (LIMITS_BROKEN + 2 * LB_GRID_PAD) * grid->body);
  if (grid->label + n * least + (in_pairs ? grid->limits : broken) > grid->width)
    return false;
  grid->limits = fmin (grid->limits, grid->width - grid->label - n * least);
  grid->across = grid->table->n_currents;
  grid->cell = fmin ((grid->width - grid->label - grid->limits) / n, 2.2 * least);
  grid->in_pairs = grid->pair <= grid->cell;
  return true;
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
  grid->in_pairs = grid->pair <= grid->cell;
}

/* Side by side in the letters of the page; few weights in large letters above one another, many in
 * small ones side by side, which takes half the height; whatever fits. */
static bool
choose_form (LbGrid *grid, double body)
{
  bool few = grid->n <= FEW_WEIGHTS * grid->table->n_depths;
  double least = fmax (LEAST_SHARE * body, LB_CARD_LEAST_LETTERS);

  if (fits_at_once (grid, true) || (few && fits_at_once (grid, false)))
    return true;
  for (double smaller = body - 0.5; smaller >= least; smaller -= 0.5)
    {
      measure (grid, smaller);
      if (fits_at_once (grid, true))
        return true;
    }
  for (double smaller = body; smaller >= least; smaller -= 0.5)
    {
      measure (grid, smaller);
      if (fits_at_once (grid, false))
        return true;
    }
  return false;
}

static LbGrid
make (const LbCardPen *pen, int variant, double width)
{
  LbGrid grid = { .pen = *pen, .table = &pen->contents->table, .width = width };
  double body = lb_card_pen_body (pen);

  grid.n = collect (pen, variant, grid.lines);
  measure (&grid, body);
  if (!choose_form (&grid, body))
    {
      measure (&grid, body);
      share_columns (&grid);
    }
  return grid;
}

/* ---- Made once ---- */

#define CACHED 6

struct LbGridCache
{
  size_t n, next;
  struct
  {
    int variant;
    double width, body; /* of the page */
    LbGrid grid;
  } made[CACHED];
};

LbGridCache *
lb_grid_cache_new (void)
{
  return g_new0 (LbGridCache, 1);
}

void
lb_grid_cache_free (LbGridCache *cache)
{
  g_free (cache);
}

LbGrid
lb_grid_make (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  LbGridCache *cache = pen->grids;
  double body = lb_card_pen_body (pen);
  size_t i = 0;

  while (i < cache->n
         && !(cache->made[i].variant == piece->variant && cache->made[i].width == width
              && cache->made[i].body == body))
    i++;
  if (i == cache->n)
    {
      i = cache->next++ % CACHED;
      cache->n = MAX (cache->n, i + 1);
      cache->made[i].variant = piece->variant;
      cache->made[i].width = width;
      cache->made[i].body = body;
      cache->made[i].grid = make (pen, piece->variant, width);
    }
  cache->made[i].grid.pen.page = pen->page;
  return cache->made[i].grid;
}
