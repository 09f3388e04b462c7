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
#define MOST_OVER 2       /* pieces over the columns, and under them */

/* Heights of a piece at one of two widths. */
typedef struct
{
  double least, most;
} Heights;

typedef struct
{
  const LbCardPen *pen;
  const LbCardPiece *pieces;
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
               + OUT_OF_ORDER * count_steps_back (page, deal->left, deal->right);
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

/* ---- Pages ---- */

static Heights
heights_of (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  Heights heights = { .least = piece->kind->height (pen, piece, width) };

  heights.most = heights.least;
  if (piece->kind->most_height && heights.least < INFINITY)
    heights.most = fmax (heights.least, piece->kind->most_height (pen, piece, width));
  return heights;
}

static Page
make_page (const LbCardPen *pen, const LbCardPiece *pieces, size_t n, double width, double height)
{
  double body = lb_card_pen_body (pen);
  Page page = { pen, pieces, n, width, height, GAP * body, COLUMN_GAP * body };

  page.column = (width - page.column_gap) / 2;
  for (size_t i = 0; i < n; i++)
    {
      page.wide[i] = heights_of (pen, &pieces[i], width);
      page.narrow[i] = heights_of (pen, &pieces[i], page.column);
    }
  return page;
}

/* The first `n` pieces on one page, or nothing. */
static LbCardArrangement
try_whole (const LbCardPen *pen, const LbCardPiece *pieces, size_t n, double width, double height)
{
  Page page = make_page (pen, pieces, n, width, height);
  Deal deal = best_deal (&page);
  LbCardArrangement out = { 0 };

  if (deal.cost < INFINITY)
    place_all (&page, &deal, &out);
  return out;
}

/* So many lines of the first piece as fill a page. */
static LbCardArrangement
try_part (const LbCardPen *pen, const LbCardPiece *piece, double width, double height)
{
  LbCardArrangement out = { 0 };

  for (size_t n = piece->n - 1; n >= 1 && out.n == 0; n--)
    {
      LbCardPiece part = *piece;

      part.n = n;
      out = try_whole (pen, &part, 1, width, height);
    }
  return out;
}

static void
take_off (GArray *pieces, const LbCardArrangement *out)
{
  LbCardPiece *first = &g_array_index (pieces, LbCardPiece, 0);

  if (out->n == 1 && out->places[0].piece.n < first->n)
    {
      first->first += out->places[0].piece.n;
      first->n -= out->places[0].piece.n;
    }
  else
    g_array_remove_range (pieces, 0, (guint) out->n);
}

LbCardArrangement
lb_card_arrange (const LbCardPen *pen, GArray *pieces, double width, double height, GArray *dropped)
{
  LbCardPiece *first = &g_array_index (pieces, LbCardPiece, 0);
  LbCardArrangement out = { 0 };

  for (size_t n = MIN (pieces->len, LB_CARD_MOST_PIECES); n >= 1 && out.n == 0; n--)
    out = try_whole (pen, first, n, width, height);
  if (out.n == 0)
    out = try_part (pen, first, width, height);
  while (out.n == 0 && first->variant + 1 < first->kind->n_variants)
    {
      first->variant++;
      out = try_whole (pen, first, 1, width, height);
      if (out.n == 0)
        out = try_part (pen, first, width, height);
    }
  if (out.n > 0)
    take_off (pieces, &out);
  else
    {
      g_array_append_val (dropped, *first);
      g_array_remove_index (pieces, 0);
    }
  return out;
}
