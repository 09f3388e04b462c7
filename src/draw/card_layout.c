/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A page has one column or two, and the first piece may stand over both. All ways to deal the
 * pieces out to the columns are tried; the one that leaves the least room empty is taken. */
#include "card_layout.h"

#include <math.h>
#include <string.h>

#define GAP 1.0           /* of plain letters, between pieces */
#define COLUMN_GAP 1.6    /* of plain letters */
#define LINE_MOST 52.0    /* of plain letters: a longer line is hard to read */
#define OUT_OF_ORDER 0.12 /* what a step back in reading order costs, as a share of a page */
#define TOO_LONG 0.3      /* what one column with long lines costs */

typedef struct
{
  const LbCardPen *pen;
  const LbCardPiece *pieces;
  size_t n;
  double width, height;
  double gap, column_gap, column;
  double tall[2][LB_CARD_MOST_PIECES]; /* least heights: in the whole width, in a column */
} Page;

/* How the pieces are dealt out. */
typedef struct
{
  size_t n_over;  /* pieces over the columns; all of them: one column */
  unsigned right; /* bits of the pieces in the right column */
  double cost;    /* INFINITY: does not fit */
  double over_height;
} Deal;

/* ---- Judging ---- */

static double
stacked (const Page *page, unsigned members, bool narrow)
{
  double sum = 0;

  for (size_t i = 0; i < page->n; i++)
    if (members >> i & 1)
      sum += (sum > 0 ? page->gap : 0) + page->tall[narrow][i];
  return sum;
}

static double
most_stacked (const Page *page, unsigned members, double width)
{
  double sum = 0;

  for (size_t i = 0; i < page->n; i++)
    if (members >> i & 1)
      {
        const LbCardPiece *piece = &page->pieces[i];
        double tall = page->tall[width < page->width][i];

        if (piece->kind->most_height)
          tall = fmax (tall, piece->kind->most_height (page->pen, piece, width));
        sum += (sum > 0 ? page->gap : 0) + tall;
      }
  return sum;
}

/* The share of the page that a column leaves empty when all in it has grown. */
static double
emptiness (const Page *page, unsigned members, double room, double width)
{
  double most = most_stacked (page, members, width);

  return fmax (0, room - most) * width / (page->width * page->height);
}

static int
count_steps_back (const Page *page, unsigned left, unsigned right)
{
  int steps = 0;

  for (size_t i = 0; i + 1 < page->n; i++)
    steps += (right >> i & 1) && (left >> (i + 1) & 1);
  return steps;
}

static Deal
judge_one_column (const Page *page)
{
  unsigned all = (1u << page->n) - 1;
  Deal deal = { .n_over = page->n, .cost = INFINITY };

  deal.over_height = stacked (page, all, false);
  if (deal.over_height > page->height)
    return deal;
  deal.cost = emptiness (page, all, page->height, page->width);
  if (page->width > LINE_MOST * lb_card_pen_body (page->pen))
    deal.cost += TOO_LONG;
  return deal;
}

static Deal
judge_two_columns (const Page *page, size_t n_over, unsigned right)
{
  unsigned all = (1u << page->n) - 1, over = (1u << n_over) - 1;
  unsigned left = all & ~over & ~right;
  Deal deal = { .n_over = n_over, .right = right, .cost = INFINITY };
  double room;

  deal.over_height = stacked (page, over, false);
  room = page->height - deal.over_height - (n_over ? page->gap : 0);
  if (!left || !right || !(stacked (page, left, true) <= room)
      || !(stacked (page, right, true) <= room))
    return deal;
  deal.cost = emptiness (page, left, room, page->column)
              + emptiness (page, right, room, page->column)
              + OUT_OF_ORDER * count_steps_back (page, left, right);
  return deal;
}

static Deal
best_deal (const Page *page)
{
  Deal best = judge_one_column (page);

  for (size_t n_over = 0; n_over <= 1 && n_over < page->n; n_over++)
    for (unsigned right = 1u << n_over; right < 1u << page->n; right++)
      {
        Deal deal = { .cost = INFINITY };

        if (!(right & ((1u << n_over) - 1)))
          deal = judge_two_columns (page, n_over, right);
        if (deal.cost < best.cost)
          best = deal;
      }
  return best;
}

/* ---- Placing ---- */

/* What is left over goes to those that gain by it, evenly, until they have their most. */
static void
stretch (const Page *page, unsigned members, double width, double spare, double *tall)
{
  for (int round = 0; round < LB_CARD_MOST_PIECES && spare > 0.01; round++)
    {
      double share = 0;
      int n = 0;

      for (size_t i = 0; i < page->n; i++)
        {
          const LbCardPiece *piece = &page->pieces[i];

          n += members >> i & 1 && piece->kind->most_height
               && piece->kind->most_height (page->pen, piece, width) > tall[i] + 0.01;
        }
      if (n == 0)
        return;
      share = spare / n;
      for (size_t i = 0; i < page->n; i++)
        {
          const LbCardPiece *piece = &page->pieces[i];
          double more = 0;

          if (members >> i & 1 && piece->kind->most_height)
            more = fmin (share, piece->kind->most_height (page->pen, piece, width) - tall[i]);
          if (more > 0)
            {
              tall[i] += more;
              spare -= more;
            }
        }
    }
}

static void
place (const Page *page, unsigned members, LbBox room, LbCardArrangement *out)
{
  bool narrow = room.width < page->width - 0.01;
  double tall[LB_CARD_MOST_PIECES], y = room.y;

  memcpy (tall, page->tall[narrow], sizeof tall);
  stretch (page, members, room.width, room.height - stacked (page, members, narrow), tall);
  for (size_t i = 0; i < page->n; i++)
    if (members >> i & 1)
      {
        out->places[out->n++] =
            (LbCardPlace){ page->pieces[i], { room.x, y, room.width, tall[i] } };
        y += tall[i] + page->gap;
      }
}

static void
place_all (const Page *page, const Deal *deal, LbCardArrangement *out)
{
  unsigned all = (1u << page->n) - 1, over = (1u << deal->n_over) - 1;
  double top = deal->over_height, room, spare;

  if (deal->n_over == page->n)
    {
      place (page, all, (LbBox){ 0, 0, page->width, page->height }, out);
      return;
    }
  /* What stands over both columns grows by what neither of them can use. */
  if (over)
    {
      double left = most_stacked (page, all & ~over & ~deal->right, page->column);
      double right = most_stacked (page, deal->right, page->column);

      spare = page->height - top - page->gap - fmax (left, right);
      if (spare > 0)
        top = fmin (top + spare, fmax (top, most_stacked (page, over, page->width)));
      place (page, over, (LbBox){ 0, 0, page->width, top }, out);
      top += page->gap;
    }
  room = page->height - top;
  place (page, all & ~over & ~deal->right, (LbBox){ 0, top, page->column, room }, out);
  place (page, deal->right, (LbBox){ page->column + page->column_gap, top, page->column, room },
         out);
}

/* ---- Pages ---- */

static Page
make_page (const LbCardPen *pen, const LbCardPiece *pieces, size_t n, double width, double height)
{
  double body = lb_card_pen_body (pen);
  Page page = { pen, pieces, n, width, height, GAP * body, COLUMN_GAP * body };

  page.column = (width - page.column_gap) / 2;
  for (size_t i = 0; i < n; i++)
    {
      page.tall[0][i] = pieces[i].kind->height (pen, &pieces[i], width);
      page.tall[1][i] = pieces[i].kind->height (pen, &pieces[i], page.column);
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
