/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_sheets.h"

#include <math.h>

#define CLOSE 0.01     /* points: sizes that differ by less are the same */
#define MARK_OFF 3.0   /* points: from the corner of a card to a mark */
#define MARK_LONG 14.0 /* points */
#define MARK_WIDTH 0.5

void
lb_press_sheet_free (gpointer data)
{
  LbPressSheet *sheet = data;

  if (!sheet)
    return;
  lb_scene_free (sheet->marks);
  g_free (sheet);
}

static LbPressSheet *
add_sheet (GPtrArray *sheets, double width, double height)
{
  LbPressSheet *sheet = g_new0 (LbPressSheet, 1);

  sheet->width = width;
  sheet->height = height;
  g_ptr_array_add (sheets, sheet);
  return sheet;
}

static void
add_spot (LbPressSheet *sheet, const LbCardPage *page, double x, double y)
{
  sheet->spots[sheet->n_spots].page = page;
  sheet->spots[sheet->n_spots].x = x;
  sheet->spots[sheet->n_spots++].y = y;
}

void
lb_press_lay_alone (GPtrArray *sheets, const LbCardPage *page)
{
  add_spot (add_sheet (sheets, page->width, page->height), page, 0, 0);
}

/* ---- The grid ---- */

typedef struct
{
  double width, height; /* of the sheet, turned if need be */
  double card_width, card_height;
  int columns, rows;
  double x, y; /* of its corner */
} Grid;

static Grid
grid_of (double width, double height, double card_width, double card_height)
{
  Grid grid = { width, height, card_width, card_height };

  grid.columns = (int) floor ((width + CLOSE) / card_width);
  grid.rows = (int) floor ((height + CLOSE) / card_height);
  return grid;
}

static Grid
choose_grid (double width, double height, const LbCardPage *page, bool several)
{
  Grid upright = grid_of (width, height, page->width, page->height);
  Grid turned = grid_of (height, width, page->width, page->height);
  int n = upright.columns * upright.rows, m = turned.columns * turned.rows;
  Grid grid = n >= 1 && (!several || n >= m) ? upright : turned;

  if (!several)
    grid.columns = grid.rows = 1;
  grid.columns = CLAMP (grid.columns, 1, LB_PRESS_MOST_SPOTS);
  grid.rows = CLAMP (grid.rows, 1, LB_PRESS_MOST_SPOTS / grid.columns);
  grid.x = (grid.width - grid.columns * grid.card_width) / 2;
  grid.y = (grid.height - grid.rows * grid.card_height) / 2;
  return grid;
}

/* ---- Marks ---- */

/* A line to cut along, where it is not the sheet's own edge. */
static void
add_cut (LbScene *marks, const Grid *grid, double at, bool upright)
{
  double x1 = upright ? at : grid->x, x2 = upright ? at : grid->width - grid->x;
  double y1 = upright ? grid->y : at, y2 = upright ? grid->height - grid->y : at;
  double off = upright ? grid->y : grid->x, out = fmin (off, MARK_OFF + MARK_LONG);
  double dx = upright ? 0 : 1, dy = upright ? 1 : 0;
  LbLook cut = { .stroke = LB_COLOUR_CARD_EDGE, .width = MARK_WIDTH, .pattern = LB_LINE_DOTTED };
  LbLook mark = { .stroke = LB_COLOUR_TEXT, .width = MARK_WIDTH };

  if (at < CLOSE || at > (upright ? grid->width : grid->height) - CLOSE)
    return;
  lb_scene_line (marks, LB_LAYER_FOREGROUND, x1, y1, x2, y2, cut);
  if (out <= MARK_OFF)
    return;
  lb_scene_line (marks, LB_LAYER_FOREGROUND, x1 - MARK_OFF * dx, y1 - MARK_OFF * dy, x1 - out * dx,
                 y1 - out * dy, mark);
  lb_scene_line (marks, LB_LAYER_FOREGROUND, x2 + MARK_OFF * dx, y2 + MARK_OFF * dy, x2 + out * dx,
                 y2 + out * dy, mark);
}

static LbScene *
new_marks (const LbCardPen *pen, const Grid *grid)
{
  LbView none = { 0 };
  LbScene *marks = lb_scene_new (LB_SCENE_PART, pen->context, pen->picture, &pen->style, &none,
                                 grid->width, grid->height);

  for (int i = 0; i <= grid->columns; i++)
    add_cut (marks, grid, grid->x + i * grid->card_width, true);
  for (int i = 0; i <= grid->rows; i++)
    add_cut (marks, grid, grid->y + i * grid->card_height, false);
  lb_scene_finish (marks);
  marks->shape = NULL;
  return marks;
}

/* ---- Laying ---- */

void
lb_press_lay (GPtrArray *sheets,
              const LbCardPen *pen,
              LbCardPage *const *pages,
              size_t n,
              double width,
              double height,
              bool several)
{
  Grid grid = choose_grid (width, height, pages[0], several);
  size_t spots = (size_t) (grid.columns * grid.rows), copies = MAX (1, spots / n);
  LbPressSheet *sheet = NULL;

  for (size_t i = 0; i < n * copies; i++)
    {
      size_t spot = i % spots;

      if (spot == 0)
        {
          sheet = add_sheet (sheets, grid.width, grid.height);
          sheet->marks = new_marks (pen, &grid);
        }
      add_spot (sheet, pages[i % n],
                grid.x + (double) (spot % (size_t) grid.columns) * grid.card_width,
                grid.y + (double) (spot / (size_t) grid.columns) * grid.card_height);
    }
}
