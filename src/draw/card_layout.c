/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A page has one column or two, with pieces over and under both. All ways to deal the pieces out
 * are tried; the one that leaves the least room empty, and reads best, is taken. */
#include "card_layout.h"

#include <math.h>
#include <string.h>

#define GAP 1.0           /* of plain letters, between pieces */
#define COLUMN_GAP 1.6    /* of plain letters */
#define LINE_MOST 52.0    /* of plain letters: a longer line is hard to read */
#define OUT_OF_ORDER 0.12 /* what a step back in reading order costs, as a share of a page */
#define LONG_LINES 0.12   /* what a piece with long lines of words costs */
#define NARROW 0.15       /* what a picture in a column costs */
#define FEWEST_LINES 3    /* of a piece that begins on a page and goes on on the next */
#define MOST_OVER 2       /* pieces over the columns, and under them */

/* Heights of a piece at one of two widths. */
typedef struct
{
  double least, most;
} Heights;

typedef struct
{
  const LbCardPen *pen;
  LbCardPiece pieces[LB_CARD_MOST_PIECES];
  size_t n;
  double width, height;
  double gap, column_gap, column;
  Heights wide[LB_CARD_MOST_PIECES], narrow[LB_CARD_MOST_PIECES];
} Page;

/* How the pieces are dealt out: sets of their bits. All over: one column. */
typedef struct
{
  unsigned over, under, left, right;
  double cost; /* INFINITY: does not fit */
} Deal;

/* ---- Judging ---- */

/* What a stack of pieces takes. */
static Heights
stacked (const Page *page, unsigned members, const Heights *heights)
{
  Heights sum = { 0, 0 };

  for (size_t i = 0; i < page->n; i++)
    if (members >> i & 1)
      {
        double gap = sum.least > 0 ? page->gap : 0;

        sum.least += gap + heights[i].least;
        sum.most += gap + heights[i].most;
      }
  return sum;
}

/* The share of the page that is left empty in `room` of `width`. */
static double
emptiness (const Page *page, double room, double width)
{
  return fmax (0, room) * width / (page->width * page->height);
}

static int
count_steps_back (const Page *page, unsigned left, unsigned right)
{
  int steps = 0;

  for (size_t i = 0; i + 1 < page->n; i++)
    steps += (right >> i & 1) && (left >> (i + 1) & 1);
  return steps;
}

/* Words in lines that are hard to read, as they are so long. */
static int
count_long_lines (const Page *page, unsigned members)
{
  int n = 0;

  if (page->width <= LINE_MOST * lb_card_pen_body (page->pen))
    return 0;
  for (size_t i = 0; i < page->n; i++)
    n += (members >> i & 1) && page->pieces[i].kind->is_words;
  return n;
}

static int
count_pictures (const Page *page, unsigned members)
{
  int n = 0;

  for (size_t i = 0; i < page->n; i++)
    n += (members >> i & 1) && page->pieces[i].kind->is_picture;
  return n;
}

static double
between (const Page *page, unsigned a, unsigned b)
{
  return a && b ? page->gap : 0;
}

static void
judge (const Page *page, Deal *deal)
{
  unsigned full = deal->over | deal->under;
  Heights over = stacked (page, deal->over, page->wide);
  Heights under = stacked (page, deal->under, page->wide);
  Heights left = stacked (page, deal->left, page->narrow);
  Heights right = stacked (page, deal->right, page->narrow);
  double fixed = between (page, deal->over, deal->left) + between (page, deal->under, deal->left);
  double tall = fmax (left.least, right.least), room, spare;

  deal->cost = INFINITY;
  if (!(fixed + over.least + under.least + tall <= page->height))
    return;
  room = page->height - fixed - over.least - under.least;
  spare = fmax (0, fmin (room - left.most, room - right.most));
  room -= fmin (spare, over.most - over.least + under.most - under.least);
  deal->cost = LONG_LINES * count_long_lines (page, full)
               + OUT_OF_ORDER * count_steps_back (page, deal->left, deal->right)
               + NARROW * count_pictures (page, deal->left | deal->right);
  if (deal->left)
    deal->cost += emptiness (page, room - left.most, page->column)
                  + emptiness (page, room - right.most, page->column);
  else
    deal->cost += emptiness (page, page->height - fixed - over.most - under.most, page->width);
}

static Deal
best_deal (const Page *page)
{
  unsigned all = (1u << page->n) - 1;
  Deal best = { .over = all };

  judge (page, &best);
  for (size_t n_over = 0; n_over <= MOST_OVER && n_over < page->n; n_over++)
    for (size_t n_under = 0; n_under <= MOST_OVER && n_over + n_under + 2 <= page->n; n_under++)
      {
        unsigned over = (1u << n_over) - 1, under = all & ~(all >> n_under);
        unsigned rest = all & ~over & ~under;

        for (unsigned right = rest & (rest - 1); right; right = (right - 1) & rest)
          {
            Deal deal = { over, under, rest & ~right, right };

            if (right != rest)
              judge (page, &deal);
            if (right != rest && deal.cost < best.cost)
              best = deal;
          }
      }
  return best;
}

/* ---- Placing ---- */

/* What is left over goes to those that gain by it, evenly, until they have their most. */
static void
stretch (const Page *page, unsigned members, const Heights *heights, double spare, double *tall)
{
  for (size_t round = 0; round < page->n && spare > 0.01; round++)
    {
      double share;
      int n = 0;

      for (size_t i = 0; i < page->n; i++)
        n += (members >> i & 1) && heights[i].most > tall[i] + 0.01;
      if (n == 0)
        return;
      share = spare / n;
      for (size_t i = 0; i < page->n; i++)
        if (members >> i & 1)
          {
            double more = fmax (0, fmin (share, heights[i].most - tall[i]));

            tall[i] += more;
            spare -= more;
          }
    }
}

/* Stacks pieces into `room`, grown to fill it. */
static void
place (const Page *page, unsigned members, LbBox room, LbCardArrangement *out)
{
  const Heights *heights = room.width < page->width - 0.01 ? page->narrow : page->wide;
  double tall[LB_CARD_MOST_PIECES], y = room.y;

  for (size_t i = 0; i < page->n; i++)
    tall[i] = heights[i].least;
  stretch (page, members, heights, room.height - stacked (page, members, heights).least, tall);
  for (size_t i = 0; i < page->n; i++)
    if (members >> i & 1)
      {
        out->places[out->n++] =
            (LbCardPlace){ page->pieces[i], { room.x, y, room.width, tall[i] } };
        y += tall[i] + page->gap;
      }
}

/* What stands over and under the columns grows by what neither column can use. */
static void
place_all (const Page *page, const Deal *deal, LbCardArrangement *out)
{
  Heights over = stacked (page, deal->over, page->wide);
  Heights under = stacked (page, deal->under, page->wide);
  Heights left = stacked (page, deal->left, page->narrow);
  Heights right = stacked (page, deal->right, page->narrow);
  double fixed = between (page, deal->over, deal->left) + between (page, deal->under, deal->left);
  double room = page->height - fixed - over.least - under.least;
  double spare = fmax (0, room - fmax (left.most, right.most));
  double more_over = fmin (spare, over.most - over.least);
  double more_under = fmin (spare - more_over, under.most - under.least);
  double top = over.least + more_over, low = under.least + more_under;
  double y = top + between (page, deal->over, deal->left);

  room -= more_over + more_under;
  place (page, deal->over, (LbBox){ 0, 0, page->width, deal->left ? top : page->height }, out);
  if (!deal->left)
    return;
  place (page, deal->left, (LbBox){ 0, y, page->column, room }, out);
  place (page, deal->right, (LbBox){ page->column + page->column_gap, y, page->column, room }, out);
  if (deal->under)
    /* Not at the foot of the page but where the columns end. */
    place (
        page, deal->under,
        (LbBox){ 0, y + fmin (room, fmax (left.most, right.most)) + page->gap, page->width, low },
        out);
}

/* ---- Heights ---- */

/* What the heights of a piece hang on, in one drawing; no padding within, as it is hashed whole. */
typedef struct
{
  const LbCardPieceClass *kind;
  size_t variant, first, n;
  double width, body;
} HeightsKey;

typedef struct
{
  HeightsKey key;
  Heights heights;
} Measured;

static guint
hash_key (gconstpointer key)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (key, sizeof (HeightsKey));

  return g_bytes_hash (bytes);
}

static gboolean
equal_keys (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (HeightsKey)) == 0;
}

GHashTable *
lb_card_heights_new (void)
{
  return g_hash_table_new_full (hash_key, equal_keys, NULL, g_free);
}

static Heights
measure_anew (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  Heights heights = { .least = piece->kind->height (pen, piece, width) };

  heights.most = heights.least;
  if (piece->kind->most_height && heights.least < INFINITY)
    heights.most = fmax (heights.least, piece->kind->most_height (pen, piece, width));
  return heights;
}

/* While pages are dealt out the same pieces are measured again and again. */
static Heights
heights_of (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  HeightsKey key = { piece->kind, (size_t) piece->variant, piece->first, piece->n,
                     width,       lb_card_pen_body (pen) };
  Measured *known = g_hash_table_lookup (pen->heights, &key);

  if (!known)
    {
      known = g_new (Measured, 1);
      *known = (Measured){ key, measure_anew (pen, piece, width) };
      g_hash_table_insert (pen->heights, &known->key, known);
    }
  return known->heights;
}

/* ---- Pages ---- */

static void
measure (Page *page, size_t i)
{
  page->wide[i] = heights_of (page->pen, &page->pieces[i], page->width);
  page->narrow[i] = heights_of (page->pen, &page->pieces[i], page->column);
}

/* A form that the page is too narrow for will not fit on a later page either. */
static void
take_narrow_form (Page *page, size_t i, GArray *pieces)
{
  LbCardPiece *piece = &page->pieces[i];

  while (page->wide[i].least == INFINITY && piece->variant + 1 < piece->kind->n_variants)
    {
      g_array_index (pieces, LbCardPiece, i).variant = ++piece->variant;
      measure (page, i);
    }
}

/* The first of `pieces`, each measured once. */
static Page
make_page (const LbCardPen *pen, GArray *pieces, double width, double height)
{
  double body = lb_card_pen_body (pen);
  Page page = { .pen = pen, .width = width, .height = height };

  page.gap = GAP * body;
  page.column_gap = COLUMN_GAP * body;
  page.column = (width - page.column_gap) / 2;
  page.n = MIN (pieces->len, LB_CARD_MOST_PIECES);
  memcpy (page.pieces, pieces->data, page.n * sizeof (LbCardPiece));
  for (size_t i = 0; i < page.n; i++)
    {
      measure (&page, i);
      take_narrow_form (&page, i, pieces);
    }
  return page;
}

/* The first `n` pieces on the page, or nothing. */
static LbCardArrangement
try_whole (const Page *all, size_t n)
{
  LbCardArrangement out = { 0 };
  Page page = *all;
  Deal deal;

  page.n = n;
  deal = best_deal (&page);
  if (deal.cost < INFINITY)
    place_all (&page, &deal, &out);
  return out;
}

static LbCardArrangement
try_lines (const Page *all, size_t n, size_t lines)
{
  Page page = *all;

  page.pieces[n].n = lines;
  measure (&page, n);
  return try_whole (&page, n + 1);
}

/* The first `n` pieces, and so many lines of the next as there is room for, but `fewest`; found by
 * halving, for more lines are higher. */
static LbCardArrangement
try_part (const Page *page, size_t n, size_t fewest)
{
  const LbCardPiece *next = &page->pieces[n];
  size_t most = next->n - 1, least = fewest;
  LbCardArrangement out = { 0 };

  while (least <= most)
    {
      size_t lines = (least + most + 1) / 2;
      LbCardArrangement some = try_lines (page, n, lines);

      if (some.n > 0)
        {
          out = some;
          least = lines + 1;
        }
      else
        most = lines - 1;
    }
  if (out.n > 0 && next->kind->good_break)
    {
      size_t lines = next->kind->good_break (page->pen, next, least - 1);

      if (lines > 0)
        out = try_lines (page, n, lines);
      else if (n > 0) /* it can begin on a page of its own instead */
        out.n = 0;
    }
  return out;
}

/* As many whole pieces as fit, and then, where the next can be broken and there is room, its
 * beginning. */
static LbCardArrangement
try_all (const Page *page)
{
  LbCardArrangement out = { 0 }, more = { 0 };
  size_t n = page->n + 1;

  while (out.n == 0 && n > 1)
    out = try_whole (page, --n);
  if (out.n > 0 && n < page->n && page->pieces[n].kind->good_break)
    more = try_part (page, n, FEWEST_LINES);
  if (out.n == 0)
    out = try_part (page, 0, 1);
  return more.n > 0 ? more : out;
}

/* What was put, which need not be in order. */
static void
take_off (GArray *pieces, const LbCardArrangement *out)
{
  LbCardPiece *last = &g_array_index (pieces, LbCardPiece, out->n - 1);
  size_t whole = out->n;

  for (size_t i = 0; i < out->n; i++)
    if (out->places[i].piece.kind == last->kind && out->places[i].piece.n < last->n)
      {
        last->first += out->places[i].piece.n;
        last->n -= out->places[i].piece.n;
        whole--;
      }
  g_array_remove_range (pieces, 0, (guint) whole);
}

LbCardArrangement
lb_card_arrange (const LbCardPen *pen, GArray *pieces, double width, double height, GArray *dropped)
{
  Page page = make_page (pen, pieces, width, height);
  LbCardArrangement out = try_all (&page);

  while (out.n == 0 && page.pieces[0].variant + 1 < page.pieces[0].kind->n_variants)
    {
      g_array_index (pieces, LbCardPiece, 0).variant = ++page.pieces[0].variant;
      page.n = 1;
      measure (&page, 0);
      out = try_all (&page);
    }
  if (out.n > 0)
    take_off (pieces, &out);
  else
    {
      g_array_append_vals (dropped, pieces->data, 1);
      g_array_remove_index (pieces, 0);
    }
  return out;
}
