/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A document's variants, solved beside one another. Never changes once made: any thread may read
 * it. */
#pragma once

#include "contents.h"
#include "result.h"

G_BEGIN_DECLS

#define LB_TYPE_COMPARISON (lb_comparison_get_type ())
G_DECLARE_FINAL_TYPE (LbComparison, lb_comparison, LB, COMPARISON, GObject)

/* What is compared for these variants: they themselves; but before a single one that replaces
 * something, or when there is none, the document as it is. */
LbVariants lb_comparison_list (const LbVariants *variants);

/* Solves all of them here and now, on this thread. `options` may be NULL. (transfer full) */
LbComparison *lb_comparison_solve (const LbContents *contents, const LbSteadyOptions *options);

/* For one that was solved elsewhere: `results[i]` belongs to the i-th of lb_comparison_list() and
 * is NULL where that makes no rig (lb_comparison_makes_rig()). (transfer full) */
LbComparison *lb_comparison_new (const LbContents *contents, LbResult *const *results);

/* Whether variant `variant` makes a rig out of `setup`; that is then in `made`. */
bool lb_comparison_makes_rig (const LbVariant *variant, const LbSetup *setup, LbSetup *made);

/* How many there are, 1 to LB_MAX_VARIANTS. The differences are told from the first. */
size_t lb_comparison_get_n (const LbComparison *self);

/* Its name, and what it replaces. (transfer none) */
const LbVariant *lb_comparison_get_variant (const LbComparison *self, size_t i);

/* Its place among the document's variants; -1: it is the document as it is. */
int lb_comparison_get_place (const LbComparison *self, size_t i);

/* What was solved for it; failed or not. (transfer none) (nullable): NULL when it makes no rig */
LbResult *lb_comparison_get_result (const LbComparison *self, size_t i);

/* (transfer none) (nullable): NULL when there is no answer, and nothing to draw */
const LbReadings *lb_comparison_get_readings (const LbComparison *self, size_t i);

/* The document's own setup. (transfer none) */
const LbSetup *lb_comparison_get_setup (const LbComparison *self);

G_END_DECLS
