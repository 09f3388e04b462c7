/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Keeps the comparison of a document up to date, off the main thread: the variants are solved one
 * after the other by an LbSolver. What has not changed since the last comparison is not solved
 * again.
 *
 * Signals, on the main context of the thread that made it:
 *  "compared" (LbComparison *comparison): all variants of the latest request are done. */
#pragma once

#include "comparison.h"

G_BEGIN_DECLS

#define LB_TYPE_COMPARER (lb_comparer_get_type ())
G_DECLARE_FINAL_TYPE (LbComparer, lb_comparer, LB, COMPARER, GObject)

/* (transfer full) */
LbComparer *lb_comparer_new (void);

/* Asks for the variants of `contents`, which are copied. A request takes the place of one that is
 * not yet answered. When nothing is left to solve, it is answered before this returns. */
void lb_comparer_request (LbComparer *self, const LbContents *contents);

/* Whether a request is not yet answered. */
gboolean lb_comparer_get_busy (LbComparer *self);

/* The last comparison; NULL before the first. (transfer none) (nullable) */
LbComparison *lb_comparer_get_comparison (LbComparer *self);

G_END_DECLS
