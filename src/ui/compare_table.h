/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A comparison in words: a line for each variant, the table of readings and differences, and the
 * cautions. */
#pragma once

#include <gtk/gtk.h>

#include "comparison.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_COMPARE_TABLE (lb_compare_table_get_type ())
G_DECLARE_FINAL_TYPE (LbCompareTable, lb_compare_table, LB, COMPARE_TABLE, GtkWidget)

GtkWidget *lb_compare_table_new (LbSession *session);

void lb_compare_table_set (LbCompareTable *self, LbComparison *comparison);

/* The text of a cell as it is shown, row 0 being the first reading; NULL when there is none. */
const char *lb_compare_table_get_text (LbCompareTable *self, int row, int column);

/* The line of words of a variant. */
const char *lb_compare_table_get_line (LbCompareTable *self, int variant);

G_END_DECLS
