/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Paragraphs on a card: the cautions, which are always there, and the user's notes. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "card_piece.h"

#define BULLET "•"
#define INDENT 0.9 /* of plain letters: from a bullet to its words */
#define BETWEEN 0.18

/* ---- Cautions ---- */

/* Those of this rig and river come first, the reminder of local rules last. */
static const char *
caution (const LbCardPen *pen, size_t i)
{
  return i < pen->contents->n_cautions ? pen->contents->cautions[i] : pen->contents->rules;
}

static size_t
count_cautions (const LbCardPen *pen)
{
  return pen->contents->n_cautions + 1;
}

/* All in one paragraph: less legible, but never less. */
static char *
cautions_in_one (const LbCardPen *pen, const LbCardPiece *piece)
{
  GString *text = g_string_new (NULL);

  for (size_t i = piece->first; i < piece->first + piece->n; i++)
    g_string_append_printf (text, "%s%s", text->len ? " " : "", caution (pen, i));
  return g_string_free (text, FALSE);
}

static const char *
cautions_heading (const LbCardPiece *piece)
{
  return piece->first == 0 ? _ ("Cautions") : _ ("Cautions, continued");
}

/* Draws, or only measures where the pen has no page. */
static double
write_line (const LbCardPen *pen, LbFont font, const char *text, double x, double y, double width)
{
  if (!pen->page)
    return lb_card_pen_text (pen, font, text, width).height;
  return lb_card_pen_put (pen, font, text, x, y, width, LB_COLOUR_TEXT);
}

static double
write_bullets (const LbCardPen *pen, const LbCardPiece *piece, double x, double y, double width)
{
  double body = lb_card_pen_body (pen), indent = INDENT * body, start = y;

  for (size_t i = piece->first; i < piece->first + piece->n; i++)
    {
      if (pen->page)
        lb_card_pen_put (pen, LB_FONT_PLAIN, BULLET, x, y, indent, LB_COLOUR_TEXT);
      y += write_line (pen, LB_FONT_PLAIN, caution (pen, i), x + indent, y, width - indent)
           + BETWEEN * body;
    }
  return y - start;
}

static double
write_cautions (const LbCardPen *pen, const LbCardPiece *piece, double x, double y, double width)
{
  g_autofree char *in_one = NULL;

  if (piece->variant == 0)
    return write_bullets (pen, piece, x, y, width);
  in_one = cautions_in_one (pen, piece);
  return write_line (pen, piece->variant == 1 ? LB_FONT_PLAIN : LB_FONT_SCALE, in_one, x, y, width);
}

static double
cautions_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  if (width < 9 * lb_card_pen_body (pen))
    return INFINITY;
  return lb_card_pen_heading_height (pen, cautions_heading (piece), width)
         + write_cautions (pen, piece, 0, 0, width);
}

static void
add_cautions (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  double head = lb_card_pen_put_heading (pen, cautions_heading (piece), box);

  write_cautions (pen, piece, box.x, box.y + head, box.width);
}

/* After any of them, but one does not go on alone. */
static size_t
break_cautions (const LbCardPen *pen, const LbCardPiece *piece, size_t n)
{
  return n + 1 == piece->n ? n - 1 : n;
}

const LbCardPieceClass lb_card_cautions_piece = {
  .title = N_ ("Cautions"),
  .n_variants = 3,
  .is_words = true,
  .count = count_cautions,
  .good_break = break_cautions,
  .height = cautions_height,
  .add = add_cautions,
};

/* ---- Notes ---- */

#define LONGEST_PIECE 300 /* bytes; a longer paragraph can go on on the next page */

/* Where the piece of a paragraph that starts at `start` ends: after a blank, if there is one. */
static const char *
piece_end (const char *start)
{
  const char *line = start + strcspn (start, "\n"), *end = start + LONGEST_PIECE, *blank;

  if (line <= end)
    return line;
  blank = g_strrstr_len (start, LONGEST_PIECE, " ");
  if (blank && blank > start)
    return blank + 1;
  while ((*end & 0xC0) == 0x80) /* not within a character */
    end--;
  return end;
}

/* The piece that starts at `*at`, which goes on to the next; NULL at the end. */
static char *
next_piece (const char **at)
{
  const char *start = *at, *end;

  if (!*start)
    return NULL;
  end = piece_end (start);
  *at = *end == '\n' ? end + 1 : end;
  return g_strchomp (g_strndup (start, (gsize) (end - start)));
}

static size_t
count_notes (const LbCardPen *pen)
{
  const char *at = pen->contents->notes;
  size_t n = 0;
  char *piece;

  for (; (piece = next_piece (&at)); n++)
    g_free (piece);
  return n;
}

static size_t
break_notes (const LbCardPen *pen, const LbCardPiece *piece, size_t n)
{
  return n; /* anywhere */
}

static double
write_notes (const LbCardPen *pen, const LbCardPiece *piece, double x, double y, double width)
{
  const char *at = pen->contents->notes;
  double start = y;
  char *text;

  for (size_t i = 0; (text = next_piece (&at)); i++)
    {
      if (i >= piece->first && i < piece->first + piece->n)
        y += *text ? write_line (pen, LB_FONT_PLAIN, text, x, y, width)
                   : 0.5 * lb_card_pen_body (pen);
      g_free (text);
    }
  return y - start;
}

static const char *
notes_heading (const LbCardPiece *piece)
{
  return piece->first == 0 ? _ ("Notes") : _ ("Notes, continued");
}

static double
notes_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  if (width < 9 * lb_card_pen_body (pen))
    return INFINITY;
  return lb_card_pen_heading_height (pen, notes_heading (piece), width)
         + write_notes (pen, piece, 0, 0, width);
}

static void
add_notes (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  double head = lb_card_pen_put_heading (pen, notes_heading (piece), box);

  write_notes (pen, piece, box.x, box.y + head, box.width);
}

const LbCardPieceClass lb_card_notes_piece = {
  .title = N_ ("Notes"),
  .n_variants = 1,
  .is_words = true,
  .count = count_notes,
  .good_break = break_notes,
  .height = notes_height,
  .add = add_notes,
};
