/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "file_watch.h"

#include <stdlib.h>

#include "reader.h"

#define GATHER_MS 100 /* notices that come closer together than this are one */

struct LbFileWatch
{
  void (*changed_cb) (void *data);
  void *data;
  GFile *file; /* NULL: none */
  char *mark;  /* of what the document knows */
  char *seen;  /* of what the last look found; "" when it could not be read */
  LbFileState state;
  GFileMonitor *monitor; /* NULL: not started, or no file */
  gboolean started;
};

char *
lb_file_mark (const char *bytes, gsize length)
{
  return g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) bytes, length);
}

LbFileWatch *
lb_file_watch_new (void (*changed_cb) (void *data), void *data)
{
  LbFileWatch *watch = g_new0 (LbFileWatch, 1);

  watch->changed_cb = changed_cb;
  watch->data = data;
  return watch;
}

static void
stop (LbFileWatch *watch)
{
  if (watch->monitor == NULL)
    return;
  g_signal_handlers_disconnect_by_data (watch->monitor, watch);
  g_file_monitor_cancel (watch->monitor);
  g_clear_object (&watch->monitor);
}

void
lb_file_watch_free (LbFileWatch *watch)
{
  stop (watch);
  g_clear_object (&watch->file);
  g_free (watch->mark);
  g_free (watch->seen);
  g_free (watch);
}

static LbFileState
state_of (const LbFileWatch *watch, const char *found)
{
  if (watch->file == NULL || g_strcmp0 (found, watch->mark) == 0)
    return LB_FILE_SAME;
  return g_file_query_exists (watch->file, NULL) ? LB_FILE_CHANGED : LB_FILE_REMOVED;
}

LbFileState
lb_file_watch_look (LbFileWatch *watch)
{
  g_autoptr (GBytes) bytes = watch->file ? lb_reader_read_bytes (watch->file, NULL) : NULL;
  gsize length = 0;
  const char *text = bytes ? g_bytes_get_data (bytes, &length) : NULL;
  g_autofree char *found = bytes ? lb_file_mark (text ? text : "", length) : g_strdup ("");
  gboolean news = watch->file != NULL && g_strcmp0 (found, watch->seen) != 0;

  if (!news)
    return watch->state;
  g_free (watch->seen);
  watch->seen = g_steal_pointer (&found);
  watch->state = state_of (watch, watch->seen);
  watch->changed_cb (watch->data);
  return watch->state;
}

static void
monitor_cb (LbFileWatch *watch)
{
  lb_file_watch_look (watch);
}

/* The file itself is watched, not a symbolic link to it. */
static GFile *
real_file (GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  char *real = path ? realpath (path, NULL) : NULL;
  GFile *result = real ? g_file_new_for_path (real) : g_object_ref (file);

  free (real);
  return result;
}

static void
start (LbFileWatch *watch)
{
  g_autoptr (GFile) real = watch->file ? real_file (watch->file) : NULL;

  if (real == NULL || !watch->started)
    return;
  watch->monitor = g_file_monitor_file (real, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (watch->monitor == NULL)
    return;
  g_file_monitor_set_rate_limit (watch->monitor, GATHER_MS);
  g_signal_connect_swapped (watch->monitor, "changed", G_CALLBACK (monitor_cb), watch);
}

void
lb_file_watch_start (LbFileWatch *watch)
{
  if (watch->started)
    return;
  watch->started = TRUE;
  start (watch);
}

void
lb_file_watch_set (LbFileWatch *watch, GFile *file, const char *mark)
{
  gboolean other = watch->file == NULL || file == NULL || !g_file_equal (watch->file, file);

  if (other)
    stop (watch);
  g_set_object (&watch->file, file);
  g_free (watch->mark);
  g_free (watch->seen);
  watch->mark = g_strdup (mark);
  watch->seen = g_strdup (mark);
  watch->state = LB_FILE_SAME;
  if (other)
    start (watch);
}

LbFileState
lb_file_watch_get_state (const LbFileWatch *watch)
{
  return watch->state;
}

const char *
lb_file_watch_get_mark (const LbFileWatch *watch)
{
  return watch->mark;
}
