/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an object and a thread that works for it share. Internal to model.
 *
 * It is the first member of a struct with what else they share, which lies in a box of
 * g_atomic_rc_box_new0() that both hold, so that it outlives the object until the thread has
 * ended. */
#pragma once

#include <glib-object.h>

typedef struct
{
  GMutex mutex; /* of all that is shared */
  GCond wake;   /* there is something to do, or to stop */
  gboolean stop;
  GMainContext *context; /* of the object's signals */
  GWeakRef owner;
} LbWorker;

/* Of `owner`, whose signals are sent on this thread's main context. */
void lb_worker_init (LbWorker *self, void *owner);
void lb_worker_clear (LbWorker *self);

/* Calls `callback`, with the struct that `self` is the first member of, on the main context. That
 * is held until then and given back to `release`. */
void lb_worker_call (LbWorker *self, GSourceFunc callback, GDestroyNotify release);

/* Tells the thread to stop and waits for it; once. */
void lb_worker_end (LbWorker *self, GThread **thread);
