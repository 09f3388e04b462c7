/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "damage.h"

/* The rows are cut into bands; the columns marked in any row of a band make its runs, and a run is
 * a box. The best cut is found row by row: the least area that covers the rows so far with so many
 * boxes, for each number of boxes. */

typedef struct
{
  const gboolean *marked;
  int columns, rows;
} Grid;

/* The best way to cover the rows above one with a number of boxes. */
typedef struct
{
  int area; /* cells; G_MAXINT: there is none */
  int top;  /* where its last band begins */
  gsize n_in_band;
} Cover;

static gboolean
is_marked (const Grid *grid, int column, int top, int below)
{
  for (int r = top; r < below; r++)
    if (grid->marked[r * grid->columns + column])
      return TRUE;
  return FALSE;
}

static gsize
find_runs (const Grid *grid, int top, int below, GArray *runs)
{
  gboolean inside = FALSE;

  g_array_set_size (runs, 0);
  for (int c = 0; c < grid->columns; c++)
    {
      gboolean marked = is_marked (grid, c, top, below);

      if (marked && !inside)
        {
          LbCellBox run = { c, top, 0, below - top };

          g_array_append_val (runs, run);
        }
      if (marked)
        g_array_index (runs, LbCellBox, runs->len - 1).columns++;
      inside = marked;
    }
  return runs->len;
}

/* Joins the two runs that are the least apart. */
static void
join_nearest (GArray *runs)
{
  LbCellBox *run = &g_array_index (runs, LbCellBox, 0);
  guint best = 0;
  int best_gap = G_MAXINT;

  for (guint i = 0; i + 1 < runs->len; i++)
    {
      int gap = run[i + 1].column - run[i].column - run[i].columns;

      if (gap < best_gap)
        {
          best_gap = gap;
          best = i;
        }
    }
  run[best].columns = run[best + 1].column + run[best + 1].columns - run[best].column;
  g_array_remove_index (runs, best + 1);
}

static int
area (const GArray *runs)
{
  int cells = 0;

  for (guint i = 0; i < runs->len; i++)
    {
      const LbCellBox *run = &g_array_index (runs, LbCellBox, i);

      cells += run->columns * run->rows;
    }
  return cells;
}

/* Tries the rows from `top` on as the last band above row `below`. `covers` has for each row
 * `most` + 1 entries, one for each number of boxes. */
static void
try_band (const Grid *grid, int top, int below, gsize most, Cover *covers, GArray *runs)
{
  const Cover *before = covers + (gsize) top * (most + 1);
  Cover *now = covers + (gsize) below * (most + 1);

  for (find_runs (grid, top, below, runs);; join_nearest (runs))
    {
      int cells = area (runs);

      for (gsize n = runs->len; n <= most; n++)
        if (before[n - runs->len].area < G_MAXINT
            && before[n - runs->len].area + cells < now[n].area)
          now[n] = (Cover){ before[n - runs->len].area + cells, top, runs->len };
      if (runs->len <= 1)
        return;
    }
}

static void
find_covers (const Grid *grid, gsize most, Cover *covers, GArray *runs)
{
  for (gsize i = 0; i < (gsize) (grid->rows + 1) * (most + 1); i++)
    covers[i] = (Cover){ i == 0 ? 0 : G_MAXINT, 0, 0 };
  for (int below = 1; below <= grid->rows; below++)
    for (int top = 0; top < below; top++)
      try_band (grid, top, below, most, covers, runs);
}

/* Reads the bands of the best cover from the last to the first. */
static gsize
collect (const Grid *grid, gsize most, const Cover *covers, GArray *runs, LbCellBox *boxes)
{
  const Cover *last = covers + (gsize) grid->rows * (most + 1);
  gsize n = 0, n_boxes = 0;

  for (gsize i = 1; i <= most; i++)
    if (last[i].area < last[n].area)
      n = i;
  for (int below = grid->rows; below > 0;)
    {
      Cover band = covers[(gsize) below * (most + 1) + n];

      find_runs (grid, band.top, below, runs);
      while (runs->len > band.n_in_band)
        join_nearest (runs);
      for (guint i = 0; i < runs->len; i++)
        boxes[n_boxes++] = g_array_index (runs, LbCellBox, i);
      n -= band.n_in_band;
      below = band.top;
    }
  return n_boxes;
}

gsize
lb_damage_cover (const gboolean *marked, int columns, int rows, gsize most, LbCellBox *boxes)
{
  Grid grid = { marked, columns, rows };
  g_autofree Cover *covers = NULL;
  g_autoptr (GArray) runs = g_array_new (FALSE, FALSE, sizeof (LbCellBox));

  g_return_val_if_fail (most > 0 && columns > 0 && rows > 0, 0);
  covers = g_new (Cover, (gsize) (rows + 1) * (most + 1));
  find_covers (&grid, most, covers, runs);
  return collect (&grid, most, covers, runs, boxes);
}
