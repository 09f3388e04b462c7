/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cuts the foreground into tiles that hold paint, with tight bounds, and computes the keys.
 *
 * A key comes from what is painted in its tile, not elsewhere: an arrow that grows or an area whose
 * edge moves changes the tiles its end or its edge is in, and no others. */
#include "flatten.h"

#include <math.h>

#include "keys.h"

#define TILE 112.0

typedef struct
{
  double x0, y0, x1, y1; /* what is painted in this cell; empty while x1 < x0 */
  guint64 key;
  guint last_item; /* the last item whose key went in, plus one */
} Cell;

typedef struct
{
  LbScene *scene;
  Cell *cells;
  int columns, rows;
  guint item; /* plus one */
  guint64 key;
  bool by_part;  /* to be mixed into the key: which part of the item is in the cell */
  bool by_piece; /* every piece in the cell is mixed in, not the item once */
  double reach;  /* half the width of the line being marked, and a margin */
} Marking;

static int
clamped (double cell, int most)
{
  /* Told so that NAN, which is never larger, comes out as 0. */
  return !(cell > 0) ? 0 : cell > most ? most : (int) cell;
}

/* The part of a box that is in a cell, or within `margin` of it. */
static LbBox
part_in_cell (LbBox box, int column, int row, double margin)
{
  double x0 = fmax (box.x, column * TILE - margin), y0 = fmax (box.y, row * TILE - margin);
  double x1 = fmin (box.x + box.width, (column + 1) * TILE + margin);
  double y1 = fmin (box.y + box.height, (row + 1) * TILE + margin);

  return (LbBox){ x0, y0, x1 - x0, y1 - y0 };
}

static void
mark_cell (Marking *marking, int column, int row, LbBox box)
{
  Cell *cell = &marking->cells[row * marking->columns + column];
  LbBox part = part_in_cell (box, column, row, 0);
  guint64 key = marking->key;

  cell->x0 = fmin (cell->x0, part.x);
  cell->y0 = fmin (cell->y0, part.y);
  cell->x1 = fmax (cell->x1, part.x + part.width);
  cell->y1 = fmax (cell->y1, part.y + part.height);
  if (cell->last_item == marking->item && !marking->by_piece)
    return;
  /* The margin: a line's round end shows in the cell even if the end's middle is beside it. */
  if (marking->by_part)
    key = lb_key_mix_box (key, part_in_cell (box, column, row, 2 * marking->reach));
  cell->key = cell->key * G_GUINT64_CONSTANT (0x100000001b3) + key;
  cell->last_item = marking->item;
}

static void
mark_box (Marking *marking, LbBox box)
{
  const LbScene *scene = marking->scene;
  int c1, r1;

  if (box.x + box.width <= 0 || box.y + box.height <= 0 || box.x >= scene->width
      || box.y >= scene->height)
    return;
  c1 = clamped (floor ((box.x + box.width) / TILE), marking->columns - 1);
  r1 = clamped (floor ((box.y + box.height) / TILE), marking->rows - 1);
  for (int r = clamped (floor (box.y / TILE), marking->rows - 1); r <= r1; r++)
    for (int c = clamped (floor (box.x / TILE), marking->columns - 1); c <= c1; c++)
      mark_cell (marking, c, r, box);
}

static void
mark_piece_cb (double x1, double y1, double x2, double y2, void *data)
{
  Marking *marking = data;
  guint64 key = marking->key;
  int parts = 1 + (int) fmin (400, hypot (x2 - x1, y2 - y1) / 40);

  if (marking->by_piece)
    marking->key = lb_key_mix_box (key, (LbBox){ x1, y1, x2, y2 });
  for (int i = 0; i < parts; i++)
    {
      double xa = x1 + (x2 - x1) * i / parts, xb = x1 + (x2 - x1) * (i + 1) / parts;
      double ya = y1 + (y2 - y1) * i / parts, yb = y1 + (y2 - y1) * (i + 1) / parts;
      LbBox box = { fmin (xa, xb), fmin (ya, yb), fabs (xb - xa), fabs (yb - ya) };

      mark_box (marking, lb_box_grown (box, marking->reach));
    }
  marking->key = key;
}

/* ---- Lines ---- */

static const LbOp *
ops_of (const LbScene *scene, const LbItem *item)
{
  return &g_array_index (scene->ops, LbOp, item->first_op);
}

/* Alike wherever both ends are out of the tile. */
static bool
is_along_an_axis (const LbScene *scene, const LbItem *item)
{
  const LbOp *ops = ops_of (scene, item);

  return item->n_ops == 2 && ops[1].kind == LB_OP_LINE
         && (ops[0].x[0] == ops[1].x[0] || ops[0].y[0] == ops[1].y[0]);
}

static void
mark_line (Marking *marking, const LbItem *item)
{
  if (item->look.pattern != LB_LINE_SOLID)
    {
      /* Where a dash is depends on all of the line before it. */
      lb_item_flatten (marking->scene, item, mark_piece_cb, marking);
      return;
    }
  marking->key = lb_key_mix_look (1, &item->look);
  if (is_along_an_axis (marking->scene, item))
    {
      marking->by_part = true;
      mark_box (marking, item->bounds);
      marking->by_part = false;
    }
  else
    {
      marking->by_piece = true;
      lb_item_flatten (marking->scene, item, mark_piece_cb, marking);
      marking->by_piece = false;
    }
}

/* ---- Plain areas ---- */

static bool
is_large_plain_area (const LbScene *scene, const LbItem *item)
{
  const LbOp *ops = ops_of (scene, item);
  const LbLook *look = &item->look;
  int moves = 0;

  if (!look->fill || look->fill_low || look->stroke
      || fmax (item->bounds.width, item->bounds.height) <= TILE)
    return false;
  for (size_t i = 0; i < item->n_ops; i++)
    moves += ops[i].kind == LB_OP_MOVE;
  return moves == 1 && ops[item->n_ops - 1].kind == LB_OP_CLOSE;
}

typedef struct
{
  double x, y;
  int turns; /* how often the path goes round the point */
} Around;

static void
count_turns_cb (double x1, double y1, double x2, double y2, void *data)
{
  Around *around = data;

  if ((y1 <= around->y) == (y2 <= around->y))
    return;
  if (x1 + (x2 - x1) * (around->y - y1) / (y2 - y1) > around->x)
    around->turns += y2 > y1 ? 1 : -1;
}

/* What an area puts into a tile follows from the pieces of its edge that are there, and from how
 * often the edge goes round the tile's middle. */
static void
mark_area (Marking *marking, const LbItem *item)
{
  const LbBox *box = &item->bounds;
  guint64 look_key = lb_key_mix_look (1, &item->look);
  int c0 = clamped (floor (box->x / TILE), marking->columns - 1);
  int c1 = clamped (floor ((box->x + box->width) / TILE), marking->columns - 1);
  int r1 = clamped (floor ((box->y + box->height) / TILE), marking->rows - 1);

  marking->key = look_key;
  marking->by_piece = true;
  lb_item_flatten (marking->scene, item, mark_piece_cb, marking);
  for (int r = clamped (floor (box->y / TILE), marking->rows - 1); r <= r1; r++)
    for (int c = c0; c <= c1; c++)
      {
        Around middle = { (c + 0.5) * TILE, (r + 0.5) * TILE, 0 };

        lb_item_flatten (marking->scene, item, count_turns_cb, &middle);
        marking->key = lb_key_mix (look_key, (guint64) (gint64) middle.turns);
        if (middle.turns || marking->cells[r * marking->columns + c].last_item == marking->item)
          mark_cell (marking, c, r, *box);
      }
  marking->by_piece = false;
}

static void
mark_item (Marking *marking, guint i)
{
  const LbScene *scene = marking->scene;
  const LbItem *item = &g_array_index (scene->items, LbItem, i);

  marking->item = i + 1;
  marking->key = item->key;
  marking->reach = item->look.width / 2 + 1;
  if (item->n_ops > 0 && !item->look.fill)
    mark_line (marking, item);
  else if (item->n_ops > 0 && is_large_plain_area (scene, item))
    mark_area (marking, item);
  else
    mark_box (marking, item->bounds);
}

static void
keep_tiles (Marking *marking)
{
  LbScene *scene = marking->scene;

  for (int i = 0; i < marking->columns * marking->rows; i++)
    {
      const Cell *cell = &marking->cells[i];
      double x0 = fmax (0, floor (cell->x0)), y0 = fmax (0, floor (cell->y0));
      double x1 = fmin (scene->width, ceil (cell->x1)), y1 = fmin (scene->height, ceil (cell->y1));
      LbTile tile = { { x0, y0, x1 - x0, y1 - y0 }, cell->key };

      if (cell->last_item && x1 > x0 && y1 > y0)
        g_array_append_val (scene->tiles, tile);
    }
}

void
lb_scene_finish (LbScene *scene)
{
  Marking marking = {
    .scene = scene,
    .columns = 1 + (int) (scene->width / TILE),
    .rows = 1 + (int) (scene->height / TILE),
  };
  int n = marking.columns * marking.rows;
  guint64 ground = (guint64) scene->style.theme + 1; /* the keys of items hold colours by name */

  marking.cells = g_new (Cell, n);
  for (int i = 0; i < n; i++)
    marking.cells[i] = (Cell){ INFINITY, INFINITY, -INFINITY, -INFINITY, ground, 0 };

  scene->background_key = ground;
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->layer == LB_LAYER_FOREGROUND)
        mark_item (&marking, i);
      else
        scene->background_key =
            scene->background_key * G_GUINT64_CONSTANT (0x100000001b3) + item->key;
    }
  keep_tiles (&marking);
  g_free (marking.cells);
}
