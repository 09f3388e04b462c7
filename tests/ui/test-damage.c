/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Few rectangles cover all marked cells. */
#include "damage.h"

#include <cairo.h>
#include "test.h"

#define COLUMNS 12
#define ROWS 9

static gboolean
is_covered (const LbCellBox *boxes, gsize n, int column, int row)
{
  for (gsize i = 0; i < n; i++)
    if (column >= boxes[i].column && column < boxes[i].column + boxes[i].columns
        && row >= boxes[i].row && row < boxes[i].row + boxes[i].rows)
      return TRUE;
  return FALSE;
}

static int
covered_cells (const LbCellBox *boxes, gsize n)
{
  int count = 0;

  for (int r = 0; r < ROWS; r++)
    for (int c = 0; c < COLUMNS; c++)
      count += is_covered (boxes, n, c, r);
  return count;
}

static void
nothing_marked_needs_no_box (void **state)
{
  gboolean marked[COLUMNS * ROWS] = { FALSE };
  LbCellBox boxes[3];

  assert_int_equal (lb_damage_cover (marked, COLUMNS, ROWS, 3, boxes), 0);
}

static void
a_block_is_one_box (void **state)
{
  gboolean marked[COLUMNS * ROWS] = { FALSE };
  LbCellBox boxes[3];

  for (int r = 2; r < 6; r++)
    for (int c = 3; c < 8; c++)
      marked[r * COLUMNS + c] = TRUE;
  assert_int_equal (lb_damage_cover (marked, COLUMNS, ROWS, 3, boxes), 1);
  assert_int_equal (boxes[0].column, 3);
  assert_int_equal (boxes[0].row, 2);
  assert_int_equal (boxes[0].columns, 5);
  assert_int_equal (boxes[0].rows, 4);
}

static void
two_corners_are_two_small_boxes (void **state)
{
  gboolean marked[COLUMNS * ROWS] = { FALSE };
  LbCellBox boxes[3];
  gsize n;

  marked[0] = marked[COLUMNS * ROWS - 1] = TRUE;
  n = lb_damage_cover (marked, COLUMNS, ROWS, 3, boxes);
  assert_int_equal (n, 2);
  assert_int_equal (covered_cells (boxes, n), 2);
}

/* Of the union of all boxes, as GTK takes it apart. */
static int
n_rectangles (const LbCellBox *boxes, gsize n)
{
  cairo_region_t *region = cairo_region_create ();
  int rectangles;

  for (gsize i = 0; i < n; i++)
    cairo_region_union_rectangle (
        region,
        &(cairo_rectangle_int_t){ boxes[i].column, boxes[i].row, boxes[i].columns, boxes[i].rows });
  rectangles = cairo_region_num_rectangles (region);
  cairo_region_destroy (region);
  return rectangles;
}

static void
any_pattern_is_covered_by_no_more_than_allowed (void **state)
{
  TestRandom random = { 20 };

  for (int k = 0; k < 2000; k++)
    {
      gboolean marked[COLUMNS * ROWS];
      LbCellBox boxes[6];
      gsize most = 1 + (gsize) test_random (&random, 0, 5.999);
      double share = test_random (&random, 0, 1);
      gsize n;

      for (int i = 0; i < COLUMNS * ROWS; i++)
        marked[i] = test_random (&random, 0, 1) < share * share;
      n = lb_damage_cover (marked, COLUMNS, ROWS, most, boxes);
      assert_true (n <= most);
      assert_true (n_rectangles (boxes, n) <= (int) most);
      for (int i = 0; i < COLUMNS * ROWS; i++)
        if (marked[i])
          assert_true (is_covered (boxes, n, i % COLUMNS, i / COLUMNS));
      for (gsize i = 0; i < n; i++)
        {
          assert_true (boxes[i].column >= 0 && boxes[i].row >= 0);
          assert_true (boxes[i].column + boxes[i].columns <= COLUMNS);
          assert_true (boxes[i].row + boxes[i].rows <= ROWS);
        }
    }
}

/* Two columns of marks that lean: with as many boxes as it has steps nothing else is covered. */
static void
leaning_marks_are_covered_exactly (void **state)
{
  gboolean marked[COLUMNS * ROWS] = { FALSE };
  LbCellBox boxes[12];
  gsize n;

  for (int r = 0; r < ROWS; r++)
    marked[r * COLUMNS + r / 3] = marked[r * COLUMNS + 6 + r / 3] = TRUE;
  n = lb_damage_cover (marked, COLUMNS, ROWS, 6, boxes);
  assert_int_equal (n, 6);
  assert_int_equal (covered_cells (boxes, n), 2 * ROWS);
}

/* Few enough rows to try every cut into bands by counting. */
static void
no_cut_into_bands_covers_less (void **state)
{
  TestRandom random = { 8 };

  for (int k = 0; k < 300; k++)
    {
      gboolean marked[COLUMNS * ROWS] = { FALSE };
      LbCellBox boxes[ROWS];
      gsize n;
      int least = G_MAXINT;

      for (int i = 0; i < COLUMNS * ROWS; i++)
        marked[i] = test_random (&random, 0, 1) < 0.15;
      n = lb_damage_cover (marked, COLUMNS, ROWS, ROWS, boxes);
      /* A bit of `cut` set: a band ends below that row. One box a band. */
      for (int cut = 0; cut < 1 << (ROWS - 1); cut++)
        {
          int cells = 0, first = COLUMNS, last = -1, height = 0;

          for (int r = 0; r < ROWS; r++)
            {
              height++;
              for (int c = 0; c < COLUMNS; c++)
                if (marked[r * COLUMNS + c])
                  {
                    first = MIN (first, c);
                    last = MAX (last, c);
                  }
              if (r < ROWS - 1 && !(cut >> r & 1))
                continue;
              cells += last < 0 ? 0 : height * (last - first + 1);
              first = COLUMNS;
              last = -1;
              height = 0;
            }
          least = MIN (least, cells);
        }
      assert_true (covered_cells (boxes, n) <= least);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (nothing_marked_needs_no_box),
    cmocka_unit_test (a_block_is_one_box),
    cmocka_unit_test (two_corners_are_two_small_boxes),
    cmocka_unit_test (leaning_marks_are_covered_exactly),
    cmocka_unit_test (no_cut_into_bands_covers_less),
    cmocka_unit_test (any_pattern_is_covered_by_no_more_than_allowed),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
