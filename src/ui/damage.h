/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Covers scattered cells of a grid with few rectangles. Pure arithmetic. */
#pragma once

#include <glib.h>

typedef struct
{
  int column, row, columns, rows; /* in cells */
} LbCellBox;

/* Finds at most `most` (> 0) boxes that together cover every cell that is TRUE in `marked` (row by
 * row, `columns` x `rows`, both > 0), and as few others as so many boxes can. They come in bands:
 * GTK cuts what is to be repainted into bands, and finds no more rectangles in their union than
 * there are boxes. Writes them to `boxes`, which has room for `most`, and returns how many there
 * are. */
gsize lb_damage_cover (const gboolean *marked, int columns, int rows, gsize most, LbCellBox *boxes);
