/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Logs from files, here and on a thread. */
#include <glib/gi18n-lib.h>

#include "file_error.h"
#include "import_private.h"

#define CHUNK (1024 * 1024)
#define READING_SHARE 0.3 /* of the work */

/* Bytes; -1 with an error. A pipe would be waited for, a device never end. */
static goffset
find_size (GFile *file, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInfo) info =
      g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_TYPE "," G_FILE_ATTRIBUTE_STANDARD_SIZE,
                         G_FILE_QUERY_INFO_NONE, cancellable, error);

  if (!info)
    return -1;
  if (g_file_info_get_file_type (info) == G_FILE_TYPE_REGULAR)
    return g_file_info_get_size (info);
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_READ, _ ("this is no plain file"));
  return -1;
}

static gboolean
read_all (LbImporter *importer, GFile *file, GByteArray *bytes, GError **error)
{
  goffset size = find_size (file, importer->cancellable, error);
  g_autoptr (GFileInputStream) stream = NULL;
  g_autofree char *buffer = NULL;
  gssize n;

  if (size >= 0)
    stream = g_file_read (file, importer->cancellable, error);
  if (!stream)
    return FALSE;
  buffer = g_malloc (CHUNK);
  while ((n = g_input_stream_read (G_INPUT_STREAM (stream), buffer, CHUNK, importer->cancellable,
                                   error))
         > 0)
    {
      if ((goffset) bytes->len + n > LB_IMPORT_LARGEST_FILE)
        {
          g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_TOO_LARGE,
                       _ ("this file is too large for a log"));
          return FALSE;
        }
      g_byte_array_append (bytes, (const guint8 *) buffer, (guint) n);
      if (!lb_importer_go_on (importer, size > 0 ? READING_SHARE * bytes->len / (double) size : 0,
                              error))
        return FALSE;
    }
  return n == 0;
}

/* The progress of the second part of the work. */
typedef struct
{
  LbImportProgress progress;
  gpointer data;
} SecondPart;

static void
second_part_cb (double share, gpointer data)
{
  const SecondPart *part = data;

  if (part->progress)
    part->progress (READING_SHARE + (1 - READING_SHARE) * share, part->data);
}

LbImport *
lb_import_read (GFile *file,
                const LbImportOptions *options,
                LbImportProgress progress,
                gpointer progress_data,
                GCancellable *cancellable,
                GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autofree char *name = g_file_get_parse_name (file);
  g_autoptr (GError) fault = NULL;
  LbImporter reading = { .progress = progress,
                         .progress_data = progress_data,
                         .cancellable = cancellable };
  SecondPart part = { progress, progress_data };
  LbImport *import = NULL;

  if (read_all (&reading, file, bytes, &fault))
    import = lb_import_parse ((const char *) bytes->data, bytes->len, options, second_part_cb,
                              &part, cancellable, &fault);
  if (import)
    return import;
  if (g_error_matches (fault, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    g_propagate_error (error, g_steal_pointer (&fault));
  else
    g_set_error (error, LB_FILE_ERROR,
                 fault->domain == LB_FILE_ERROR ? fault->code : LB_FILE_ERROR_READ, "%s: %s", name,
                 fault->message);
  return NULL;
}

typedef struct
{
  GFile *file;
  LbImportOptions options;
  LbImportProgress progress;
  gpointer progress_data;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_object_unref (job->file);
  g_free (job);
}

static void
work_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  LbImport *import = lb_import_read (job->file, &job->options, job->progress, job->progress_data,
                                     cancellable, &error);

  if (import)
    g_task_return_pointer (task, import, (GDestroyNotify) lb_import_free);
  else
    g_task_return_error (task, error);
}

void
lb_import_read_async (GFile *file,
                      const LbImportOptions *options,
                      LbImportProgress progress,
                      gpointer progress_data,
                      GCancellable *cancellable,
                      GAsyncReadyCallback callback,
                      gpointer data)
{
  g_autoptr (GTask) task = g_task_new (file, cancellable, callback, data);
  Job *job = g_new0 (Job, 1);

  job->file = g_object_ref (file);
  job->options = options ? *options : lb_import_options_default (LB_UNITS_METRIC);
  job->progress = progress;
  job->progress_data = progress_data;
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, work_cb);
}

LbImport *
lb_import_read_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
