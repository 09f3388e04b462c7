/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "worker.h"

void
lb_worker_init (LbWorker *self, void *owner)
{
  g_mutex_init (&self->mutex);
  g_cond_init (&self->wake);
  self->context = g_main_context_ref_thread_default ();
  g_weak_ref_init (&self->owner, owner);
}

void
lb_worker_clear (LbWorker *self)
{
  g_mutex_clear (&self->mutex);
  g_cond_clear (&self->wake);
  g_main_context_unref (self->context);
  g_weak_ref_clear (&self->owner);
}

void
lb_worker_call (LbWorker *self, GSourceFunc callback, GDestroyNotify release)
{
  g_autoptr (GSource) source = g_idle_source_new ();

  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, callback, g_atomic_rc_box_acquire (self), release);
  g_source_attach (source, self->context);
}

void
lb_worker_end (LbWorker *self, GThread **thread)
{
  if (*thread == NULL)
    return;
  g_mutex_lock (&self->mutex);
  self->stop = TRUE;
  g_cond_signal (&self->wake);
  g_mutex_unlock (&self->mutex);
  g_thread_join (g_steal_pointer (thread));
}
