/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cuts the foreground into tiles that hold paint, with tight bounds, and computes the keys. */
#include "flatten.h"

#include <math.h>

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
  double reach; /* half the width of the line being marked, and a margin */
} Marking;

static int
clamped (double cell, int most)
{
  /* Told so that NAN, which is never larger, comes out as 0. */
  return !(cell > 0) ? 0 : cell > most ? most : (int) cell;
}

static void
mark_cell (Marking *marking, int column, int row, LbBox box)
{
  Cell *cell = &marking->cells[row * marking->columns + column];

  cell->x0 = fmin (cell->x0, fmax (box.x, column * TILE));
  cell->y0 = fmin (cell->y0, fmax (box.y, row * TILE));
  cell->x1 = fmax (cell->x1, fmin (box.x + box.width, (column + 1) * TILE));
  cell->y1 = fmax (cell->y1, fmin (box.y + box.height, (row + 1) * TILE));
  if (cell->last_item != marking->item)
    {
      cell->key = cell->key * G_GUINT64_CONSTANT (0x100000001b3) + marking->key;
      cell->last_item = marking->item;
    }
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
  int parts = 1 + (int) fmin (400, hypot (x2 - x1, y2 - y1) / 40);

  for (int i = 0; i < parts; i++)
    {
      double xa = x1 + (x2 - x1) * i / parts, xb = x1 + (x2 - x1) * (i + 1) / parts;
      double ya = y1 + (y2 - y1) * i / parts, yb = y1 + (y2 - y1) * (i + 1) / parts;
      LbBox box = { fmin (xa, xb), fmin (ya, yb), fabs (xb - xa), fabs (yb - ya) };

      mark_box (marking, lb_box_grown (box, marking->reach));
    }
}

static void
mark_item (Marking *marking, guint i)
{
  const LbItem *item = &g_array_index (marking->scene->items, LbItem, i);

  marking->item = i + 1;
  marking->key = item->key;
  marking->reach = item->look.width / 2 + 1;
  if (item->n_ops > 0 && !item->look.fill)
    lb_item_flatten (marking->scene, item, mark_piece_cb, marking);
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
