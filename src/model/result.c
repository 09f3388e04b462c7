/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result.h"

struct _LbResult
{
  GObject parent_instance;

  LbSetup setup;
  LbStatus status;
  LbShape shape;
  LbReadings readings;
  LbSteadyStatistics statistics;
  double solve_time; /* us */
};

G_DEFINE_FINAL_TYPE (LbResult, lb_result, G_TYPE_OBJECT)

static void
lb_result_finalize (GObject *object)
{
  LbResult *self = LB_RESULT (object);

  lb_shape_clear (&self->shape);
  G_OBJECT_CLASS (lb_result_parent_class)->finalize (object);
}

static void
lb_result_class_init (LbResultClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lb_result_finalize;
}

static void
lb_result_init (LbResult *self)
{
  lb_shape_init (&self->shape);
  self->status = LB_STATUS_NO_CONVERGENCE;
}

/* A copy of the shape, for the solver's own changes with its next solve. */
static void
keep (LbResult *self, LbSteady *steady)
{
  if (lb_shape_copy (&self->shape, lb_steady_shape (steady)) != LB_STATUS_OK)
    {
      self->status = LB_STATUS_OUT_OF_MEMORY;
      return;
    }
  lb_readings_compute (&self->readings, &self->setup, &self->shape);
}

LbResult *
lb_result_solve (LbSteady *steady, const LbSetup *setup, const LbSteadyOptions *options)
{
  LbResult *self = g_object_new (LB_TYPE_RESULT, NULL);
  LbSteady *own = steady ? NULL : lb_steady_new ();
  LbSteady *solver = steady ? steady : own;
  gint64 start = g_get_monotonic_time ();

  self->setup = *setup;
  self->status = solver ? lb_steady_solve (solver, setup, options) : LB_STATUS_OUT_OF_MEMORY;
  if (!lb_status_is_failure (self->status))
    keep (self, solver);
  if (solver)
    self->statistics = lb_steady_statistics (solver);
  self->solve_time = (double) (g_get_monotonic_time () - start);
  lb_steady_free (own);
  return self;
}

LbStatus
lb_result_get_status (const LbResult *self)
{
  return self->status;
}

gboolean
lb_result_get_failed (const LbResult *self)
{
  return lb_status_is_failure (self->status);
}

const LbSetup *
lb_result_get_setup (const LbResult *self)
{
  return &self->setup;
}

const LbShape *
lb_result_get_shape (const LbResult *self)
{
  return lb_result_get_failed (self) ? NULL : &self->shape;
}

const LbReadings *
lb_result_get_readings (const LbResult *self)
{
  return lb_result_get_failed (self) ? NULL : &self->readings;
}

LbSteadyStatistics
lb_result_get_statistics (const LbResult *self)
{
  return self->statistics;
}

double
lb_result_get_solve_time (const LbResult *self)
{
  return self->solve_time;
}
