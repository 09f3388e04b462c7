/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table of points, each two numbers in entries and a button that takes it away: the bed's points,
 * measured speeds. Long tables are shown a page at a time, so that every entry has its place in the
 * order of the Tab key. It knows nothing of documents. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_POINT_TABLE (lb_point_table_get_type ())
G_DECLARE_FINAL_TYPE (LbPointTable, lb_point_table, LB, POINT_TABLE, GtkWidget)

/* One of the two columns. Strings are static and translated. */
typedef struct
{
  const char *heading;
  LbQuantity quantity;
} LbPointColumn;

/* Signals, with points counted from 0:
 *  "entered" (guint point, guint column, double value, guint gesture);
 *  "remove" (guint point);
 *  "picked" (guint point) when the focus comes into a row. */
GtkWidget *lb_point_table_new (LbSession *session, const LbPointColumn columns[2]);

void lb_point_table_set_heading (LbPointTable *self, guint column, const char *heading);

/* How many points there are, and how few there must be to take one away. */
void lb_point_table_set_count (LbPointTable *self, guint n, guint least);

/* One number (unset: an empty entry) and its range; only of the page that is shown, so call it for
 * the points from lb_point_table_get_first() on, and again after "paged". */
void lb_point_table_set_value (
    LbPointTable *self, guint point, guint column, double value, double minimum, double maximum);

/* The points that are shown. Signal "paged" when they are others. */
guint lb_point_table_get_first (LbPointTable *self);
guint lb_point_table_get_shown (LbPointTable *self);

/* Marks a point and turns to its page; -1: none. */
void lb_point_table_select (LbPointTable *self, int point);

/* Takes the focus to the first entry of the point. */
void lb_point_table_focus (LbPointTable *self, guint point);

/* An entry, or NULL when its page is not shown. (transfer none) */
GtkWidget *lb_point_table_get_entry (LbPointTable *self, guint point, guint column);
GtkWidget *lb_point_table_get_remove_button (LbPointTable *self, guint point);

/* What is wrong with a text in it, with the point it is about; NULL when nothing is. */
const char *lb_point_table_get_fault (LbPointTable *self);

G_END_DECLS
