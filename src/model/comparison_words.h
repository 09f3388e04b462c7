/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A comparison in the user's language and units: as a table, and as a line of plain words for each
 * variant. The window, the command line and the card show the same. */
#pragma once

#include "compared_runs.h"
#include "comparison.h"
#include "readings_table.h"
#include "words.h"

/* "wire 15° steeper, 1 ft 3 in less line, 3.1 lbf in the hand, both lures in the band": how variant
 * `i` runs, told from the first; then a remark, if there is one. Of the first itself, and when that
 * has no answer, the plain readings. Without an answer: why. Free with g_free(). */
char *
lb_comparison_dup_sentence (const LbComparison *comparison, size_t i, const LbWording *wording);

/* Only what must be said before its numbers are believed, or why it has none; NULL when there is
 * nothing of the kind. Free with g_free(). */
char *lb_comparison_dup_remark (const LbComparison *comparison, size_t i, const LbWording *wording);

/* "Weight: 2 lb; Current: 2.5 mph", or that nothing is. Free with g_free(). */
char *
lb_comparison_dup_changes (const LbComparison *comparison, size_t i, const LbWording *wording);

/* The cautions for all variants, each once (see lb_cautions_new()). (element-type LbCaution)
 * (transfer full) */
GPtrArray *lb_comparison_cautions_new (const LbComparison *comparison, const LbWording *wording);

/* The runs as plain values, with their words. Keeps a reference of `comparison`. Free with
 * lb_compared_runs_free(). */
LbComparedRuns *lb_compared_runs_new (LbComparison *comparison, const LbWording *wording);

typedef struct
{
  double si;        /* unset when there is no answer */
  char *value;      /* "31.2°"; "-" when there is no answer */
  char *note;       /* "in the band"; NULL for none */
  char *difference; /* "15° steeper"; NULL for the first, and where there is none */
} LbComparisonCell;

typedef struct
{
  LbQuantity quantity;
  char *label; /* "Wire angle" */
  LbComparisonCell cells[LB_MAX_VARIANTS];
} LbComparisonRow;

typedef struct
{
  size_t n; /* variants, which are the columns */
  char *names[LB_MAX_VARIANTS];
  char *changes[LB_MAX_VARIANTS];
  char *sentences[LB_MAX_VARIANTS];
  char *remarks[LB_MAX_VARIANTS]; /* NULL for none */
  size_t n_rows;
  LbComparisonRow *rows;
} LbComparisonTable;

LbComparisonTable *lb_comparison_table_new (const LbComparison *comparison,
                                            const LbWording *wording);
void lb_comparison_table_free (LbComparisonTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbComparedRuns, lb_compared_runs_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbComparisonTable, lb_comparison_table_free)
