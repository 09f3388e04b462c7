/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists of labelled facts on a card: how the rig runs, and what it is put together with. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "card_piece.h"

#define MOST_FACTS 160
#define BETWEEN 0.22   /* of plain letters, between rows */
#define LABEL_MOST 0.5 /* of the width that labels may take */

/* The rows of a list; what is NULL is a gap. */
typedef struct
{
  size_t n;
  const LbCardFact *facts[MOST_FACTS];
  size_t given; /* from this gap on what is given, not computed; 0: no such */
} Rows;

static void
collect (Rows *rows, const LbCardFacts *facts, LbCardRank lowest)
{
  if (rows->n > 0 && facts->n > 0 && rows->n < MOST_FACTS)
    rows->facts[rows->n++] = NULL;
  for (size_t i = 0; i < facts->n && rows->n < MOST_FACTS; i++)
    if (facts->facts[i].rank <= lowest)
      rows->facts[rows->n++] = &facts->facts[i];
}

/* How wide the column of labels is: as the widest, but never more than its share. */
static double
label_width (const LbCardPen *pen, const Rows *rows, double width)
{
  double most = 0;

  for (size_t i = 0; i < rows->n; i++)
    if (rows->facts[i])
      most = fmax (most, lb_card_pen_text (pen, LB_FONT_PLAIN, rows->facts[i]->label, 1e4).width);
  return fmin (most + 1, LABEL_MOST * width);
}

/* One row: the label, the value in strong letters, the note behind it or under it. */
static double
write_row (
    const LbCardPen *pen, const LbCardFact *fact, double labels, double x, double y, double w)
{
  double body = lb_card_pen_body (pen), left = x + labels + 0.6 * body;
  double room = x + w - left;
  g_autofree char *value = lb_card_marked (pen, fact->value, fact->estimate);
  LbText label = lb_card_pen_text (pen, LB_FONT_PLAIN, fact->label, labels);
  LbText strong = lb_card_pen_text (pen, LB_FONT_STRONG, value, room);
  LbText note = lb_card_pen_text (pen, LB_FONT_PLAIN, fact->note, room);
  bool beside = *fact->note && strong.width + 0.5 * body + note.width <= room
                && note.height < 1.5 * strong.height;
  double first = *value ? strong.height : 0, height = first;

  if (*fact->note && !beside)
    height += note.height;
  else if (beside)
    height = fmax (height, note.height);
  if (pen->page)
    {
      LbScene *scene = pen->page->scene;

      lb_scene_put_text (scene, LB_LAYER_FOREGROUND, label, x, y, LB_COLOUR_TEXT);
      if (*value)
        lb_scene_put_text (scene, LB_LAYER_FOREGROUND, strong, left, y, LB_COLOUR_TEXT);
      if (beside)
        lb_scene_put_text (scene, LB_LAYER_FOREGROUND, note, left + strong.width + 0.5 * body, y,
                           LB_COLOUR_TEXT_QUIET);
      else if (*fact->note)
        lb_scene_put_text (scene, LB_LAYER_FOREGROUND, note, left, y + first, LB_COLOUR_TEXT_QUIET);
    }
  return fmax (height, label.height);
}

/* In strong letters over the rows that follow. */
static double
write_over (const LbCardPen *pen, const char *words, double x, double y, double width)
{
  if (!pen->page)
    return lb_card_pen_text (pen, LB_FONT_STRONG, words, width).height;
  return lb_card_pen_put (pen, LB_FONT_STRONG, words, x, y, width, LB_COLOUR_TEXT);
}

static double
write_rows (const LbCardPen *pen,
            const Rows *rows,
            const LbCardPiece *piece,
            double x,
            double y,
            double width)
{
  double labels = label_width (pen, rows, width), start = y;
  double body = lb_card_pen_body (pen);

  for (size_t i = piece->first; i < MIN (rows->n, piece->first + piece->n); i++)
    if (rows->facts[i])
      y += write_row (pen, rows->facts[i], labels, x, y, width) + BETWEEN * body;
    else if (i > piece->first)
      {
        y += 0.4 * body;
        if (i == rows->given)
          y += write_over (pen, _ ("Computed for"), x, y, width) + BETWEEN * body;
      }
  return y - start;
}

/* ---- How it runs ---- */

static Rows
numbers_rows (const LbCardPen *pen, const LbCardPiece *piece)
{
  static const LbCardRank lowest[] = { LB_CARD_RANK_LAST, LB_CARD_RANK_NEXT, LB_CARD_RANK_FIRST,
                                       LB_CARD_RANK_ALWAYS };
  const LbCardRunning *running = &pen->contents->running;
  Rows rows = { 0 };

  collect (&rows, &running->line, lowest[piece->variant]);
  collect (&rows, &running->lures, lowest[piece->variant]);
  rows.given = rows.n;
  collect (&rows, &running->water, lowest[piece->variant]);
  return rows;
}

static size_t
count_numbers (const LbCardPen *pen)
{
  return numbers_rows (pen, &(LbCardPiece){ 0 }).n;
}

/* After a group. */
static size_t
break_numbers (const LbCardPen *pen, const LbCardPiece *piece, size_t n)
{
  Rows rows = numbers_rows (pen, piece);

  for (size_t k = MIN (n, rows.n - MIN (rows.n, piece->first)); k > 0; k--)
    if (piece->first + k < rows.n && !rows.facts[piece->first + k])
      return k;
  return 0;
}

static char *
numbers_heading (const LbCardPen *pen, const LbCardPiece *piece)
{
  size_t given = numbers_rows (pen, piece).given;

  if (given == 0) /* no answer */
    return g_strdup (piece->first == 0 ? _ ("How it runs") : _ ("How it runs, continued"));
  if (piece->first >= given)
    return g_strdup (_ ("Computed for"));
  return lb_card_computed (pen,
                           piece->first == 0 ? _ ("How it runs") : _ ("How it runs, continued"));
}

/* The sentence stands over the first of the numbers. */
static const char *
numbers_sentence (const LbCardPen *pen, const LbCardPiece *piece)
{
  return piece->first == 0 && piece->variant < 2 ? pen->contents->running.sentence : "";
}

static double
write_numbers (const LbCardPen *pen, const LbCardPiece *piece, double x, double y, double width)
{
  Rows rows = numbers_rows (pen, piece);
  const char *sentence = numbers_sentence (pen, piece);
  double start = y;

  if (*sentence)
    {
      y += pen->page ? lb_card_pen_put (pen, LB_FONT_PLAIN, sentence, x, y, width, LB_COLOUR_TEXT)
                     : lb_card_pen_text (pen, LB_FONT_PLAIN, sentence, width).height;
      y += 0.5 * lb_card_pen_body (pen);
    }
  return y - start + write_rows (pen, &rows, piece, x, y, width);
}

static double
numbers_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  g_autofree char *heading = numbers_heading (pen, piece);

  if (width < 14 * lb_card_pen_body (pen))
    return INFINITY;
  return lb_card_pen_heading_height (pen, heading, width) + write_numbers (pen, piece, 0, 0, width);
}

static void
add_numbers (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  g_autofree char *heading = numbers_heading (pen, piece);
  double head = lb_card_pen_put_heading (pen, heading, box);

  write_numbers (pen, piece, box.x, box.y + head, box.width);
}

const LbCardPieceClass lb_card_numbers_piece = {
  .title = N_ ("How it runs"),
  .n_variants = 4,
  .is_words = true,
  .count = count_numbers,
  .good_break = break_numbers,
  .height = numbers_height,
  .add = add_numbers,
};

/* ---- Terminations and hardware ---- */

static Rows
hardware_rows (const LbCardPen *pen)
{
  Rows rows = { 0 };

  collect (&rows, &pen->contents->rig.terminations, LB_CARD_RANK_LAST);
  collect (&rows, &pen->contents->rig.hardware, LB_CARD_RANK_LAST);
  return rows;
}

static size_t
count_hardware (const LbCardPen *pen)
{
  return hardware_rows (pen).n;
}

static double
hardware_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  Rows rows = hardware_rows (pen);

  if (width < 14 * lb_card_pen_body (pen))
    return INFINITY;
  return lb_card_pen_heading_height (pen, _ ("Put together with"), width)
         + write_rows (pen, &rows, piece, 0, 0, width);
}

static void
add_hardware (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  Rows rows = hardware_rows (pen);
  double head = lb_card_pen_put_heading (pen, _ ("Put together with"), box);

  write_rows (pen, &rows, piece, box.x, box.y + head, box.width);
}

const LbCardPieceClass lb_card_hardware_piece = {
  .title = N_ ("Put together with"),
  .n_variants = 1,
  .is_words = true,
  .count = count_hardware,
  .height = hardware_height,
  .add = add_hardware,
};
