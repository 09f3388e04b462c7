/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "recovery_writer.h"

#include <glib/gstdio.h>

#include "save_file.h"

/* Shared with the thread and with calls on their way to the main loop. */
struct LbRecoveryWriter
{
  gatomicrefcount references;
  GThreadPool *pool; /* of one thread */
  GMutex mutex;
  GCond idle;
  guint n_waiting;                                                   /* jobs; under the mutex */
  void (*done_cb) (void *data, const char *path, const char *fault); /* NULL: given up */
  void *data;
};

typedef struct
{
  LbRecoveryWriter *writer; /* a reference */
  char *path;
  GBytes *bytes; /* NULL: remove */
  char *fault;   /* once done */
} Job;

static void
unref (LbRecoveryWriter *writer)
{
  if (!g_atomic_ref_count_dec (&writer->references))
    return;
  g_mutex_clear (&writer->mutex);
  g_cond_clear (&writer->idle);
  g_free (writer);
}

static void
job_free (gpointer data)
{
  Job *job = data;

  unref (job->writer);
  g_free (job->path);
  g_clear_pointer (&job->bytes, g_bytes_unref);
  g_free (job->fault);
  g_free (job);
}

static gboolean
done_cb (gpointer data)
{
  Job *job = data;

  if (job->writer->done_cb)
    job->writer->done_cb (job->writer->data, job->path, job->fault);
  return G_SOURCE_REMOVE;
}

static void
write_copy (Job *job)
{
  g_autoptr (GFile) file = g_file_new_for_path (job->path);
  g_autoptr (GError) error = NULL;
  gsize length;
  const char *text = g_bytes_get_data (job->bytes, &length);

  if (!lb_save_file (file, text, length, &error))
    job->fault = g_strdup (error->message);
}

static void
run_cb (gpointer data, gpointer user_data)
{
  Job *job = data;
  LbRecoveryWriter *writer = job->writer;
  gboolean written = job->bytes != NULL;

  g_atomic_ref_count_inc (&writer->references);
  if (written)
    write_copy (job);
  else
    g_unlink (job->path);
  if (written)
    g_idle_add_full (G_PRIORITY_DEFAULT, done_cb, job, job_free);
  else
    job_free (job);

  g_mutex_lock (&writer->mutex);
  writer->n_waiting--;
  g_cond_signal (&writer->idle);
  g_mutex_unlock (&writer->mutex);
  unref (writer);
}

LbRecoveryWriter *
lb_recovery_writer_new (void (*done) (void *data, const char *path, const char *fault), void *data)
{
  LbRecoveryWriter *writer = g_new0 (LbRecoveryWriter, 1);

  g_atomic_ref_count_init (&writer->references);
  g_mutex_init (&writer->mutex);
  g_cond_init (&writer->idle);
  writer->pool = g_thread_pool_new (run_cb, NULL, 1, FALSE, NULL);
  writer->done_cb = done;
  writer->data = data;
  return writer;
}

void
lb_recovery_writer_free (LbRecoveryWriter *writer)
{
  writer->done_cb = NULL;
  g_thread_pool_free (g_steal_pointer (&writer->pool), FALSE, TRUE);
  unref (writer);
}

static void
push (LbRecoveryWriter *writer, const char *path, GBytes *bytes)
{
  Job *job = g_new0 (Job, 1);

  g_atomic_ref_count_inc (&writer->references);
  job->writer = writer;
  job->path = g_strdup (path);
  job->bytes = bytes ? g_bytes_ref (bytes) : NULL;
  g_mutex_lock (&writer->mutex);
  writer->n_waiting++;
  g_mutex_unlock (&writer->mutex);
  g_thread_pool_push (writer->pool, job, NULL);
}

void
lb_recovery_writer_write (LbRecoveryWriter *writer, const char *path, GBytes *bytes)
{
  push (writer, path, bytes);
}

void
lb_recovery_writer_remove (LbRecoveryWriter *writer, const char *path)
{
  push (writer, path, NULL);
}

void
lb_recovery_writer_wait (LbRecoveryWriter *writer)
{
  g_mutex_lock (&writer->mutex);
  while (writer->n_waiting > 0)
    g_cond_wait (&writer->idle, &writer->mutex);
  g_mutex_unlock (&writer->mutex);
}
