/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The settings table: for each weight a grid of line out and wire angle, by depth down and current
 * across. A cell in the band has a frame and strong letters, any other says in words what is wrong,
 * so that nothing rests on colour. More currents than are room for go on in a grid below. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_grid.h"

#define BETWEEN 0.9 /* of plain letters, between grids */

/* ---- Writing: draws, or only measures where the pen has no page ---- */

/* Text in the middle of a cell; returns how high it is. */
static double
write_centred (const LbGrid *g, LbFont font, const char *text, double x, double y, double width)
{
  LbText shaped = lb_card_pen_text (&g->pen, font, text, width - 2 * LB_GRID_PAD * g->body);

  if (!*text)
    return 0;
  if (g->pen.page)
    lb_scene_put_text (g->pen.page->scene, LB_LAYER_FOREGROUND, shaped,
                       x + fmax ((width - shaped.width) / 2, 0), y, LB_COLOUR_TEXT);
  return shaped.height;
}

/* A number over its unit where there is no room for them side by side. */
static double
write_head (const LbGrid *g, const char *text, double x, double y)
{
  double room = g->cell - 2 * LB_GRID_PAD * g->body, start = y;
  g_auto (GStrv) words = NULL;

  if (lb_card_pen_text (&g->pen, LB_FONT_PLAIN, text, 1e4).width <= room)
    return write_centred (g, LB_FONT_PLAIN, text, x, y, g->cell);
  words = g_strsplit (text, " ", -1);
  for (char **word = words; *word; word++)
    y += write_centred (g, LB_FONT_PLAIN, *word, x, y, g->cell);
  return y - start;
}

/* Line out and angle in one line; returns its height. */
static double
write_pair (const LbGrid *g, const LbCardCell *cell, LbFont font, double x, double y)
{
  LbText line = lb_card_pen_text (&g->pen, font, cell->line_words, 1e4);
  LbText angle = lb_card_pen_text (&g->pen, LB_FONT_PLAIN, cell->angle_words, 1e4);
  double left = x + (g->cell - line.width - 0.5 * g->body - angle.width) / 2;

  if (g->pen.page)
    {
      LbScene *scene = g->pen.page->scene;

      lb_scene_put_text (scene, LB_LAYER_FOREGROUND, line, left, y, LB_COLOUR_TEXT);
      lb_scene_put_text (scene, LB_LAYER_FOREGROUND, angle, left + line.width + 0.5 * g->body, y,
                         LB_COLOUR_TEXT);
    }
  return fmax (line.height, angle.height);
}

static double
write_cell (const LbGrid *g, const LbCardCell *cell, double x, double y)
{
  LbFont font = cell->state == LB_RUN_IN_BAND ? LB_FONT_STRONG : LB_FONT_PLAIN;
  double start = y;

  if (g->in_pairs && *cell->line_words)
    y += write_pair (g, cell, font, x, y);
  else
    {
      y += write_centred (g, font, cell->line_words, x, y, g->cell);
      y += write_centred (g, LB_FONT_PLAIN, cell->angle_words, x, y, g->cell);
    }
  y += write_centred (g, LB_FONT_SCALE, lb_card_state_words (cell->state), x, y, g->cell);
  return y - start;
}

static void
frame_cell (const LbGrid *g, double x, double y, double height)
{
  LbScene *scene = g->pen.page->scene;

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (scene, x + 0.8, y + 0.8, g->cell - 1.6, height - 1.6, 0.25 * g->body);
  lb_scene_end (scene, (LbLook){ .stroke = LB_COLOUR_TEXT, .width = 0.9 });
}

static double
write_line (const LbGrid *g, const LbGridLine *line, size_t first, double x, double y)
{
  const LbCardRow *row = &line->block->rows[line->depth];
  size_t end = MIN (first + g->across, g->table->n_currents);
  double pad = LB_GRID_PAD * g->body, height = 0, cells = x + g->label;
  double limits = cells + (double) g->across * g->cell;
  LbGrid dry = *g;

  dry.pen.page = NULL;
  for (size_t c = first; c < end; c++)
    height = fmax (height, write_cell (&dry, &row->cells[c], 0, 0));
  if (g->limits > 0)
    height = fmax (height, write_centred (&dry, LB_FONT_SCALE, row->limits, 0, 0, g->limits));
  height += 2 * pad;
  if (!g->pen.page)
    return height;
  lb_card_pen_rule (&g->pen, x, y, limits + g->limits, y, 0.35);
  lb_card_pen_put (&g->pen, LB_FONT_PLAIN, g->table->depth_words[line->depth], x, y + pad, g->label,
                   LB_COLOUR_TEXT);
  for (size_t c = first; c < end; c++)
    {
      double left = cells + (double) (c - first) * g->cell;

      write_cell (g, &row->cells[c], left, y + pad);
      if (row->cells[c].state == LB_RUN_IN_BAND)
        frame_cell (g, left, y, height);
    }
  if (g->limits > 0)
    write_centred (g, LB_FONT_SCALE, row->limits, limits, y + pad, g->limits);
  return height;
}

/* "In the band: 1.6 to 3.4 mph", under a line without a column for it. */
static double
write_limits (const LbGrid *g, const LbGridLine *line, double x, double y)
{
  g_autofree char *words =
      g_strdup_printf (_ ("%s: %s"), g->table->limits_title, line->block->rows[line->depth].limits);
  double left = x + g->label, width = g->width - g->label;

  if (!g->pen.page)
    return lb_card_pen_text (&g->pen, LB_FONT_SCALE, words, width).height;
  return lb_card_pen_put (&g->pen, LB_FONT_SCALE, words, left, y, width, LB_COLOUR_TEXT);
}

/* The weight, and the currents over their columns. */
static double
write_top (const LbGrid *g, const LbCardBlock *block, size_t first, double x, double y)
{
  size_t end = MIN (first + g->across, g->table->n_currents);
  double height = lb_card_pen_text (&g->pen, LB_FONT_STRONG, block->name, g->label).height;

  for (size_t c = first; c < end; c++)
    height = fmax (height, write_head (g, g->table->current_words[c],
                                       x + g->label + (double) (c - first) * g->cell, y));
  if (g->pen.page)
    lb_card_pen_put (&g->pen, LB_FONT_STRONG, block->name, x, y, g->label, LB_COLOUR_TEXT);
  if (g->limits > 0)
    height =
        fmax (height, write_centred (g, LB_FONT_SCALE, g->table->limits_title,
                                     x + g->label + (double) g->across * g->cell, y, g->limits));
  return height + 0.5 * LB_GRID_PAD * g->body;
}

/* The lines from `i` on that are of one weight, in as many grids as the currents take. */
static double
write_weight (const LbGrid *g, size_t i, size_t end, bool is_first, double x, double y)
{
  double start = y;

  for (size_t first = 0; first < g->table->n_currents; first += g->across)
    {
      if (!is_first || first > 0)
        y += (first > 0 ? 0.5 : 1) * BETWEEN * g->body;
      y += write_top (g, g->lines[i].block, first, x, y);
      for (size_t k = i; k < end; k++)
        {
          y += write_line (g, &g->lines[k], first, x, y);
          if (g->limits <= 0 && first + g->across >= g->table->n_currents)
            y += write_limits (g, &g->lines[k], x, y);
        }
    }
  return y - start;
}

static double
write_grids (const LbGrid *g, const LbCardPiece *piece, double x, double y)
{
  size_t end = MIN (piece->first + piece->n, g->n), next;
  double start = y;

  for (size_t i = piece->first; i < end; i = next)
    {
      for (next = i + 1; next < end && g->lines[next].block == g->lines[i].block;)
        next++;
      y += write_weight (g, i, next, i == piece->first, x, y);
    }
  return y - start;
}

/* ---- Words round the grids ---- */

/* In the letters of the page, whatever those of the grid are. */
static double
write_words (const LbCardPen *pen, LbFont font, const char *text, double x, double y, double width)
{
  if (!*text)
    return 0;
  if (!pen->page)
    return lb_card_pen_text (pen, font, text, width).height;
  return lb_card_pen_put (pen, font, text, x, y, width, LB_COLOUR_TEXT);
}

/* What the words in the cells mean, of those that stand in any. */
static char *
legend (const LbGrid *g)
{
  GString *words = g_string_new (_ ("framed: in the band"));
  unsigned seen = 1u << LB_RUN_IN_BAND;

  for (size_t i = 0; i < g->n; i++)
    for (size_t c = 0; c < g->table->n_currents; c++)
      {
        LbRunState state = g->lines[i].block->rows[g->lines[i].depth].cells[c].state;

        if (!(seen >> state & 1))
          g_string_append_printf (words, "; %s", lb_card_state_legend (state));
        seen |= 1u << state;
      }
  return g_string_free (words, FALSE);
}

static char *
caption (const LbGrid *g)
{
  /* Translators: the first is the unit of the line out, as "ft" */
  g_autofree char *what =
      g_strdup_printf (_ ("Line out in %s, wire angle from vertical."), g->table->length_unit);

  return g_strjoin (" ", g->table->caption, what, NULL);
}

static double
write_table (const LbCardPen *pen, const LbGrid *g, const LbCardPiece *piece, double x, double y)
{
  const char *speeds = pen->contents->speed_window.sentence;
  double start = y, body = lb_card_pen_body (pen);
  g_autofree char *over = caption (g);
  g_autofree char *under = legend (g);

  if (piece->first == 0)
    y += write_words (pen, LB_FONT_PLAIN, over, x, y, g->width) + 0.5 * body;
  y += write_grids (g, piece, x, y);
  if (piece->first + piece->n < g->n)
    return y - start;
  y += write_words (pen, LB_FONT_SCALE, under, x, y + 0.5 * body, g->width) + 0.9 * body;
  return y - start + write_words (pen, LB_FONT_PLAIN, speeds, x, y, g->width);
}

static char *
table_heading (const LbCardPen *pen, const LbCardPiece *piece)
{
  return lb_card_computed (pen, piece->first == 0 ? _ ("Settings") : _ ("Settings, continued"));
}

static double
table_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  LbGrid grid = lb_grid_make (pen, piece, width);
  g_autofree char *heading = table_heading (pen, piece);

  if (grid.across < MIN (grid.table->n_currents, LB_GRID_FEWEST - (piece->variant > 0)))
    return INFINITY;
  return lb_card_pen_heading_height (pen, heading, width) + write_table (pen, &grid, piece, 0, 0);
}

static void
add_table (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  LbGrid grid = lb_grid_make (pen, piece, box.width);
  g_autofree char *heading = table_heading (pen, piece);
  double head = lb_card_pen_put_heading (pen, heading, box);

  write_table (pen, &grid, piece, box.x, box.y + head);
}

const LbCardPieceClass lb_card_table_piece = {
  .title = N_ ("Settings"),
  .n_variants = 3,
  .is_picture = true,
  .count = lb_grid_count,
  .good_break = lb_grid_break,
  .height = table_height,
  .add = add_table,
};
