/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "solver.h"

#include "worker.h"

/* Newton steps between two looks whether a solve is still wanted, and those that it is granted
 * although something newer waits. */
#define STEPS_BETWEEN_LOOKS 64
#define STEPS_GRANTED 4096

/* What the thread and the owner share. */
typedef struct
{
  LbWorker worker;  /* first */
  GCond answered;   /* `done` has a result */
  gboolean waiting; /* `setup` is to be solved */
  gboolean solving;
  LbSetup setup;
  LbResult *done; /* (owned) solved and not yet taken by the owner */
  guint64 n_solves;
} Shared;

struct _LbSolver
{
  GObject parent_instance;

  Shared *shared; /* (atomic rc) */
  GThread *thread;
  LbResult *good, *last;
};

G_DEFINE_FINAL_TYPE (LbSolver, lb_solver, G_TYPE_OBJECT)

enum
{
  SOLVED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
shared_clear (void *data)
{
  Shared *shared = data;

  lb_worker_clear (&shared->worker);
  g_cond_clear (&shared->answered);
  g_clear_object (&shared->done);
}

static void
shared_release (void *shared)
{
  g_atomic_rc_box_release_full (shared, shared_clear);
}

/* ---- The owner's side ---- */

/* Takes the result that waits to be taken, if any, and tells. */
static void
take_result (LbSolver *self)
{
  g_autoptr (LbResult) result = NULL;

  g_mutex_lock (&self->shared->worker.mutex);
  result = g_steal_pointer (&self->shared->done);
  g_mutex_unlock (&self->shared->worker.mutex);
  if (result == NULL)
    return;
  g_set_object (&self->last, result);
  if (!lb_result_get_failed (result))
    g_set_object (&self->good, result);
  g_signal_emit (self, signals[SOLVED], 0, result);
}

static gboolean
deliver_cb (void *data)
{
  Shared *shared = data;
  g_autoptr (LbSolver) self = g_weak_ref_get (&shared->worker.owner);

  if (self)
    take_result (self);
  return G_SOURCE_REMOVE;
}

/* ---- The thread's side ---- */

static void
deliver (Shared *shared)
{
  lb_worker_call (&shared->worker, deliver_cb, shared_release);
}

/* Waits for work; FALSE when it is time to stop. */
static gboolean
next_setup (Shared *shared, LbSetup *setup)
{
  gboolean go_on;

  g_mutex_lock (&shared->worker.mutex);
  while (!shared->waiting && !shared->worker.stop)
    g_cond_wait (&shared->worker.wake, &shared->worker.mutex);
  go_on = !shared->worker.stop;
  if (go_on)
    {
      *setup = shared->setup;
      shared->waiting = FALSE;
      shared->solving = TRUE;
    }
  g_mutex_unlock (&shared->worker.mutex);
  return go_on;
}

/* A result nobody has taken yet gives way to the newer one. */
static void
hand_over (Shared *shared, LbResult *result)
{
  gboolean was_empty;

  g_mutex_lock (&shared->worker.mutex);
  was_empty = shared->done == NULL;
  g_set_object (&shared->done, result);
  shared->solving = FALSE;
  shared->n_solves++;
  g_cond_broadcast (&shared->answered);
  g_mutex_unlock (&shared->worker.mutex);
  if (was_empty)
    deliver (shared);
}

/* A hard rig can take seconds: it gives way to a newer request and to the end. */
static bool
is_overtaken_cb (void *data, size_t iterations)
{
  Shared *shared = data;
  bool overtaken;

  if (iterations % STEPS_BETWEEN_LOOKS != 0)
    return false;
  g_mutex_lock (&shared->worker.mutex);
  overtaken = shared->worker.stop || (shared->waiting && iterations >= STEPS_GRANTED);
  g_mutex_unlock (&shared->worker.mutex);
  return overtaken;
}

static void *
solver_thread (void *data)
{
  Shared *shared = data;
  LbSteady *steady = lb_steady_new ();
  LbSteadyOptions options = { .cancel = is_overtaken_cb, .cancel_data = shared };
  LbSetup setup;

  while (next_setup (shared, &setup))
    {
      g_autoptr (LbResult) result = lb_result_solve (steady, &setup, &options);
      /* What was overtaken has no answer: the newer request brings it. */
      if (lb_result_get_status (result) != LB_STATUS_CANCELLED)
        hand_over (shared, result);
    }
  lb_steady_free (steady);
  shared_release (shared);
  return NULL;
}

/* ---- The object ---- */

static void
lb_solver_dispose (GObject *object)
{
  LbSolver *self = LB_SOLVER (object);

  lb_worker_end (&self->shared->worker, &self->thread);
  g_clear_object (&self->good);
  g_clear_object (&self->last);
  G_OBJECT_CLASS (lb_solver_parent_class)->dispose (object);
}

static void
lb_solver_finalize (GObject *object)
{
  shared_release (LB_SOLVER (object)->shared);
  G_OBJECT_CLASS (lb_solver_parent_class)->finalize (object);
}

static void
lb_solver_class_init (LbSolverClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = lb_solver_dispose;
  object_class->finalize = lb_solver_finalize;

  signals[SOLVED] = g_signal_new ("solved", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, LB_TYPE_RESULT);
}

static void
lb_solver_init (LbSolver *self)
{
  Shared *shared = g_atomic_rc_box_new0 (Shared);

  lb_worker_init (&shared->worker, self);
  g_cond_init (&shared->answered);
  self->shared = shared;
  self->thread = g_thread_new ("solver", solver_thread, g_atomic_rc_box_acquire (shared));
}

LbSolver *
lb_solver_new (void)
{
  return g_object_new (LB_TYPE_SOLVER, NULL);
}

void
lb_solver_request (LbSolver *self, const LbSetup *setup)
{
  g_return_if_fail (LB_IS_SOLVER (self));

  g_mutex_lock (&self->shared->worker.mutex);
  self->shared->setup = *setup;
  self->shared->waiting = TRUE;
  g_cond_signal (&self->shared->worker.wake);
  g_mutex_unlock (&self->shared->worker.mutex);
}

gboolean
lb_solver_request_and_wait (LbSolver *self, const LbSetup *setup, gint64 max_wait_us)
{
  gint64 end = g_get_monotonic_time () + max_wait_us;
  gboolean answered;

  g_return_val_if_fail (LB_IS_SOLVER (self), FALSE);
  lb_solver_request (self, setup);

  g_mutex_lock (&self->shared->worker.mutex);
  while ((self->shared->waiting || self->shared->solving)
         && (max_wait_us < 0
                 ? (g_cond_wait (&self->shared->answered, &self->shared->worker.mutex), TRUE)
                 : g_cond_wait_until (&self->shared->answered, &self->shared->worker.mutex, end)))
    ;
  answered = !self->shared->waiting && !self->shared->solving;
  g_mutex_unlock (&self->shared->worker.mutex);
  if (answered)
    take_result (self);
  return answered;
}

gboolean
lb_solver_get_busy (LbSolver *self)
{
  gboolean busy;

  g_return_val_if_fail (LB_IS_SOLVER (self), FALSE);
  g_mutex_lock (&self->shared->worker.mutex);
  busy = self->shared->waiting || self->shared->solving || self->shared->done != NULL;
  g_mutex_unlock (&self->shared->worker.mutex);
  return busy;
}

LbResult *
lb_solver_get_good_result (LbSolver *self)
{
  g_return_val_if_fail (LB_IS_SOLVER (self), NULL);
  return self->good;
}

LbResult *
lb_solver_get_last_result (LbSolver *self)
{
  g_return_val_if_fail (LB_IS_SOLVER (self), NULL);
  return self->last;
}

guint64
lb_solver_get_n_solves (LbSolver *self)
{
  guint64 n;

  g_return_val_if_fail (LB_IS_SOLVER (self), 0);
  g_mutex_lock (&self->shared->worker.mutex);
  n = self->shared->n_solves;
  g_mutex_unlock (&self->shared->worker.mutex);
  return n;
}
