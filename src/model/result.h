/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One solve of a setup, finished. Never changes once made: any thread may read it. */
#pragma once

#include <glib-object.h>

#include "readings.h"
#include "steady.h"

G_BEGIN_DECLS

#define LB_TYPE_RESULT (lb_result_get_type ())
G_DECLARE_FINAL_TYPE (LbResult, lb_result, LB, RESULT, GObject)

/* Solves `setup` here and now, on this thread. `steady` is used (and left warm) when given, else a
 * solver is made for this once. `options` may be NULL. Never NULL. (transfer full) */
LbResult *lb_result_solve (LbSteady *steady, const LbSetup *setup, const LbSteadyOptions *options);

LbStatus lb_result_get_status (const LbResult *self);

/* TRUE: the solve failed, there is no shape and there are no readings. */
gboolean lb_result_get_failed (const LbResult *self);

/* What was solved. (transfer none) */
const LbSetup *lb_result_get_setup (const LbResult *self);

/* (transfer none) (nullable): NULL when failed */
const LbShape *lb_result_get_shape (const LbResult *self);
const LbReadings *lb_result_get_readings (const LbResult *self);

LbSteadyStatistics lb_result_get_statistics (const LbResult *self);

/* How long the solve took, microseconds, readings included. */
double lb_result_get_solve_time (const LbResult *self);

G_END_DECLS
