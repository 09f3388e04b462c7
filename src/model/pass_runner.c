/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_runner.h"

#include "worker.h"

/* Told so often at most, us, and first when so much is recorded, s. */
#define TELL_EVERY 60000
#define TELL_FIRST 1.0

/* One pass: held by the owner until the next one, and by the thread while it records. */
typedef struct
{
  LbPassRecord *record;
  LbResult *start; /* the thread's while it records */
  int cancelled;   /* atomic */
  int state;       /* atomic; LbPassRunState */
  int status;      /* atomic; LbStatus */
} Job;

/* What the thread and the owner share. */
typedef struct
{
  LbWorker worker; /* first */
  Job *waiting;    /* (owned) */
  int told;        /* atomic: a message is on its way */
} Shared;

struct _LbPassRunner
{
  GObject parent_instance;

  Shared *shared; /* (atomic rc) */
  GThread *thread;
  Job *job; /* (owned) the last one asked for */
  const char *fault;
  LbStatus refused; /* why there is no record */
};

G_DEFINE_FINAL_TYPE (LbPassRunner, lb_pass_runner, G_TYPE_OBJECT)

static guint progressed_signal;

static void
job_clear (void *data)
{
  Job *job = data;

  lb_pass_record_free (job->record);
  g_clear_object (&job->start);
}

static void
job_release (Job *job)
{
  if (job)
    g_atomic_rc_box_release_full (job, job_clear);
}

static void
shared_clear (void *data)
{
  Shared *shared = data;

  job_release (shared->waiting);
  lb_worker_clear (&shared->worker);
}

static void
shared_release (void *shared)
{
  g_atomic_rc_box_release_full (shared, shared_clear);
}

/* ---- The thread's side ---- */

static void queue (LbPassRunner *self);

/* It was told to go on when the thread had just given up. */
static void
go_on_if_overlooked (LbPassRunner *self)
{
  if (self->job && g_atomic_int_get (&self->job->state) == LB_PASS_RUN_CANCELLED
      && !g_atomic_int_get (&self->job->cancelled))
    queue (self);
}

static gboolean
deliver_cb (void *data)
{
  Shared *shared = data;
  g_autoptr (LbPassRunner) self = g_weak_ref_get (&shared->worker.owner);

  g_atomic_int_set (&shared->told, FALSE);
  if (self)
    {
      go_on_if_overlooked (self);
      g_signal_emit (self, progressed_signal, 0);
    }
  return G_SOURCE_REMOVE;
}

static void
tell (Shared *shared)
{
  if (!g_atomic_int_compare_and_exchange (&shared->told, FALSE, TRUE))
    return;
  lb_worker_call (&shared->worker, deliver_cb, shared_release);
}

typedef struct
{
  Shared *shared;
  Job *job;
  gint64 last_told; /* us; 0: not yet */
} Progress;

static bool
progress_cb (void *data, double done)
{
  Progress *progress = data;
  gint64 now = g_get_monotonic_time ();

  if (progress->last_told == 0 ? lb_pass_record_end (progress->job->record) >= TELL_FIRST
                               : now - progress->last_told >= TELL_EVERY)
    {
      progress->last_told = now;
      tell (progress->shared);
    }
  return g_atomic_int_get (&progress->job->cancelled);
}

static bool
is_cancelled_cb (void *data, size_t iterations)
{
  return g_atomic_int_get (&((Job *) data)->cancelled);
}

/* There is something to say of the start: solved once more, for its numbers. */
static void
find_start (Job *job)
{
  LbSteadyOptions options = { .cancel = is_cancelled_cb, .cancel_data = job };
  g_autoptr (LbResult) start = lb_result_solve (NULL, lb_pass_record_setup (job->record), &options);

  if (!lb_result_get_failed (start))
    g_set_object (&job->start, start);
}

static void
record (Shared *shared, Job *job)
{
  Progress progress = { .shared = shared, .job = job };
  LbPlanTask task = { progress_cb, &progress };
  LbStatus status = LB_STATUS_CANCELLED;
  LbPassRunState state = LB_PASS_RUN_WHOLE;

  if (!g_atomic_int_get (&job->cancelled))
    status = lb_pass_record_run (job->record, INFINITY, &task);
  if (status == LB_STATUS_CANCELLED)
    state = LB_PASS_RUN_CANCELLED;
  else if (!lb_pass_record_is_complete (job->record))
    state = LB_PASS_RUN_FAILED;
  if (status != LB_STATUS_OK && status != LB_STATUS_CANCELLED)
    find_start (job);
  g_atomic_int_set (&job->status, status);
  g_atomic_int_set (&job->state, state);
  tell (shared);
}

static Job *
next_job (Shared *shared)
{
  Job *job = NULL;

  g_mutex_lock (&shared->worker.mutex);
  while (!shared->waiting && !shared->worker.stop)
    g_cond_wait (&shared->worker.wake, &shared->worker.mutex);
  if (!shared->worker.stop)
    job = g_steal_pointer (&shared->waiting);
  g_mutex_unlock (&shared->worker.mutex);
  return job;
}

static void *
runner_thread (void *data)
{
  Shared *shared = data;
  Job *job;

  while ((job = next_job (shared)))
    {
      record (shared, job);
      job_release (job);
    }
  shared_release (shared);
  return NULL;
}

/* ---- The owner's side ---- */

static void
drop_job (LbPassRunner *self)
{
  if (self->job)
    g_atomic_int_set (&self->job->cancelled, TRUE);
  g_clear_pointer (&self->job, job_release);
}

/* Hands the job, if there is one, to the thread, in place of what waits. */
static void
queue (LbPassRunner *self)
{
  Job *overtaken;

  if (self->job)
    g_atomic_int_set (&self->job->state, LB_PASS_RUN_GOING);
  g_mutex_lock (&self->shared->worker.mutex);
  overtaken = self->shared->waiting;
  self->shared->waiting = self->job ? g_atomic_rc_box_acquire (self->job) : NULL;
  g_cond_signal (&self->shared->worker.wake);
  g_mutex_unlock (&self->shared->worker.mutex);
  job_release (overtaken);
}

void
lb_pass_runner_request (LbPassRunner *self, const LbSetup *setup, const LbPassScript *script)
{
  LbPassRecord *made = NULL;

  g_return_if_fail (LB_IS_PASS_RUNNER (self));
  drop_job (self);
  self->fault = NULL;
  self->refused = lb_pass_record_new (&made, setup, script, NULL, &self->fault);
  if (made)
    {
      self->job = g_atomic_rc_box_new0 (Job);
      self->job->record = made;
    }
  queue (self);
  if (!made)
    tell (self->shared);
}

void
lb_pass_runner_cancel (LbPassRunner *self)
{
  g_return_if_fail (LB_IS_PASS_RUNNER (self));
  if (self->job)
    g_atomic_int_set (&self->job->cancelled, TRUE);
}

void
lb_pass_runner_go_on (LbPassRunner *self)
{
  g_return_if_fail (LB_IS_PASS_RUNNER (self));
  if (!self->job || !g_atomic_int_get (&self->job->cancelled))
    return;
  g_atomic_int_set (&self->job->cancelled, FALSE);
  go_on_if_overlooked (self);
}

LbPassRunState
lb_pass_runner_get_state (LbPassRunner *self)
{
  g_return_val_if_fail (LB_IS_PASS_RUNNER (self), LB_PASS_RUN_NOTHING);
  if (self->job)
    return (LbPassRunState) g_atomic_int_get (&self->job->state);
  return lb_status_is_failure (self->refused) ? LB_PASS_RUN_REFUSED : LB_PASS_RUN_NOTHING;
}

LbPassRecord *
lb_pass_runner_get_record (LbPassRunner *self)
{
  g_return_val_if_fail (LB_IS_PASS_RUNNER (self), NULL);
  return self->job ? self->job->record : NULL;
}

LbStatus
lb_pass_runner_get_status (LbPassRunner *self)
{
  g_return_val_if_fail (LB_IS_PASS_RUNNER (self), LB_STATUS_OK);
  return self->job ? (LbStatus) g_atomic_int_get (&self->job->status) : self->refused;
}

const char *
lb_pass_runner_get_fault (LbPassRunner *self)
{
  g_return_val_if_fail (LB_IS_PASS_RUNNER (self), NULL);
  return self->fault;
}

LbResult *
lb_pass_runner_get_start (LbPassRunner *self)
{
  g_return_val_if_fail (LB_IS_PASS_RUNNER (self), NULL);
  if (!self->job || g_atomic_int_get (&self->job->state) == LB_PASS_RUN_GOING)
    return NULL;
  return self->job->start;
}

double
lb_pass_runner_get_done (LbPassRunner *self)
{
  LbPassRecord *made = lb_pass_runner_get_record (self);

  if (!made)
    return 0;
  return lb_pass_record_is_complete (made)
             ? 1
             : lb_pass_record_end (made) / lb_pass_record_duration (made);
}

/* ---- The object ---- */

static void
lb_pass_runner_dispose (GObject *object)
{
  LbPassRunner *self = LB_PASS_RUNNER (object);

  drop_job (self);
  lb_worker_end (&self->shared->worker, &self->thread);
  G_OBJECT_CLASS (lb_pass_runner_parent_class)->dispose (object);
}

static void
lb_pass_runner_finalize (GObject *object)
{
  shared_release (LB_PASS_RUNNER (object)->shared);
  G_OBJECT_CLASS (lb_pass_runner_parent_class)->finalize (object);
}

static void
lb_pass_runner_class_init (LbPassRunnerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_pass_runner_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pass_runner_finalize;
  progressed_signal = g_signal_new ("progressed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                    NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_pass_runner_init (LbPassRunner *self)
{
  Shared *shared = g_atomic_rc_box_new0 (Shared);

  lb_worker_init (&shared->worker, self);
  self->shared = shared;
  self->thread = g_thread_new ("pass", runner_thread, g_atomic_rc_box_acquire (shared));
}

LbPassRunner *
lb_pass_runner_new (void)
{
  return g_object_new (LB_TYPE_PASS_RUNNER, NULL);
}
