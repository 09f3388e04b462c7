/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Solves setups on a thread of its own. A request replaces the one that is still waiting, so that
 * at most one solve runs and one waits however fast requests come.
 *
 * Signals, both on the main context of the thread that made the solver:
 *  "solved" (LbResult *result): a solve is done; read lb_result_get_failed() first.
 *  Every request is answered by itself or by a later one. */
#pragma once

#include "result.h"

G_BEGIN_DECLS

#define LB_TYPE_SOLVER (lb_solver_get_type ())
G_DECLARE_FINAL_TYPE (LbSolver, lb_solver, LB, SOLVER, GObject)

/* A solver with its thread. Dropping the last reference ends the thread. (transfer full) */
LbSolver *lb_solver_new (void);

/* Asks for `setup`, which is copied. */
void lb_solver_request (LbSolver *self, const LbSetup *setup);

/* As above, and waits for the answer: "solved" is emitted before this returns. For the first
 * frame, and for a drawing that must not be late. `max_wait_us` < 0 waits for ever. Returns FALSE
 * when the time ran out; the answer then comes as usual. */
gboolean lb_solver_request_and_wait (LbSolver *self, const LbSetup *setup, gint64 max_wait_us);

/* Whether a request is not yet answered. */
gboolean lb_solver_get_busy (LbSolver *self);

/* The last result that did not fail; NULL before the first. (transfer none) (nullable) */
LbResult *lb_solver_get_good_result (LbSolver *self);

/* The last result, good or failed. (transfer none) (nullable) */
LbResult *lb_solver_get_last_result (LbSolver *self);

/* How many solves have run, for tests and statistics. */
guint64 lb_solver_get_n_solves (LbSolver *self);

G_END_DECLS
