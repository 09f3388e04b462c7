/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "damage.h"

#include <cairo.h>

static int
area (const LbCellBox *box)
{
  return box->columns * box->rows;
}

static LbCellBox
around (const LbCellBox *a, const LbCellBox *b)
{
  int column = MIN (a->column, b->column), row = MIN (a->row, b->row);

  return (LbCellBox){ column, row, MAX (a->column + a->columns, b->column + b->columns) - column,
                      MAX (a->row + a->rows, b->row + b->rows) - row };
}

/* Adds the run of a row to the list; one that continues the same run of the row above makes that
 * longer instead. */
static void
add_run (GArray *boxes, LbCellBox run)
{
  for (guint i = boxes->len; i-- > 0;)
    {
      LbCellBox *box = &g_array_index (boxes, LbCellBox, i);

      if (box->row + box->rows == run.row && box->column == run.column
          && box->columns == run.columns)
        {
          box->rows++;
          return;
        }
    }
  g_array_append_val (boxes, run);
}

static void
add_runs (GArray *boxes, const gboolean *marked, int columns, int row)
{
  for (int c = 0; c < columns; c++)
    if (marked[c])
      {
        LbCellBox run = { c, row, 0, 1 };

        for (; c < columns && marked[c]; c++)
          run.columns++;
        add_run (boxes, run);
      }
}

/* Makes one box of the two that are cheapest to join. */
static void
join_cheapest (GArray *boxes)
{
  guint best_i = 0, best_j = 1;
  int best = G_MAXINT;

  for (guint i = 0; i < boxes->len; i++)
    for (guint j = i + 1; j < boxes->len; j++)
      {
        const LbCellBox *a = &g_array_index (boxes, LbCellBox, i);
        const LbCellBox *b = &g_array_index (boxes, LbCellBox, j);
        LbCellBox both = around (a, b);
        int cost = area (&both) - area (a) - area (b);

        if (cost < best)
          {
            best = cost;
            best_i = i;
            best_j = j;
          }
      }
  g_array_index (boxes, LbCellBox, best_i) =
      around (&g_array_index (boxes, LbCellBox, best_i), &g_array_index (boxes, LbCellBox, best_j));
  g_array_remove_index_fast (boxes, best_j);
}

/* Into how many rectangles GTK takes the boxes apart: it cuts their union into bands. */
static int
count_rectangles (const GArray *boxes)
{
  cairo_region_t *region = cairo_region_create ();
  int n;

  for (guint i = 0; i < boxes->len; i++)
    {
      const LbCellBox *box = &g_array_index (boxes, LbCellBox, i);
      cairo_region_union_rectangle (
          region, &(cairo_rectangle_int_t){ box->column, box->row, box->columns, box->rows });
    }
  n = cairo_region_num_rectangles (region);
  cairo_region_destroy (region);
  return n;
}

gsize
lb_damage_cover (const gboolean *marked, int columns, int rows, gsize most, LbCellBox *boxes)
{
  g_autoptr (GArray) list = g_array_new (FALSE, FALSE, sizeof (LbCellBox));

  g_return_val_if_fail (most > 0, 0);
  for (int r = 0; r < rows; r++)
    add_runs (list, marked + r * columns, columns, r);
  while (list->len > most || (list->len > 1 && count_rectangles (list) > (int) most))
    join_cheapest (list);
  for (guint i = 0; i < list->len; i++)
    boxes[i] = g_array_index (list, LbCellBox, i);
  return list->len;
}
