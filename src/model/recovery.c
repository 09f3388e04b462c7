/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "recovery.h"

#include <glib/gi18n-lib.h>

#include "recovery_copy.h"
#include "recovery_folder.h"
#include "recovery_private.h"
#include "recovery_writer.h"

#define WRITE_AFTER_MS 1000 /* an edit, and again as long as edits go on */

struct _LbRecovery
{
  GObject parent_instance;

  LbRecoveryFolder *folder; /* NULL until it is needed */
  LbRecoveryWriter *writer;
  GPtrArray *copies; /* (element-type Copy) */
  gboolean failing;  /* told already */
};

/* What is known of a watched document. */
typedef struct
{
  LbRecovery *recovery; /* (unowned) */
  LbDocument *document;
  char *path;       /* NULL: no copy yet */
  guint timer;      /* 0: nothing to write */
  gboolean writing; /* the thread has not written the last one yet */
} Copy;

G_DEFINE_FINAL_TYPE (LbRecovery, lb_recovery, G_TYPE_OBJECT)

enum
{
  FAILED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- Writing ---- */

static void
tell_fault (LbRecovery *self, const char *fault)
{
  gboolean told = self->failing;
  g_autofree char *message = NULL;

  self->failing = fault != NULL;
  if (fault == NULL || told)
    return;
  message = g_strdup_printf (_ ("No copy of unsaved work can be kept: %s"), fault);
  g_signal_emit (self, signals[FAILED], 0, message);
}

static gboolean
have_folder (LbRecovery *self, GError **error)
{
  if (self->folder == NULL)
    self->folder = lb_recovery_folder_new (error);
  return self->folder != NULL;
}

static char *
new_path (LbRecovery *self)
{
  g_autofree char *id = g_uuid_string_random ();
  g_autofree char *name = g_strconcat (id, LB_RECOVERY_ENDING, NULL);

  return g_build_filename (self->folder->path, name, NULL);
}

static void
write_copy (Copy *copy)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;

  g_clear_handle_id (&copy->timer, g_source_remove);
  if (!have_folder (copy->recovery, &error))
    {
      tell_fault (copy->recovery, error->message);
      return;
    }
  if (copy->path == NULL)
    copy->path = new_path (copy->recovery);
  bytes = lb_recovery_copy_of (copy->document);
  copy->writing = TRUE;
  lb_recovery_writer_write (copy->recovery->writer, copy->path, bytes);
}

static gboolean
timer_cb (gpointer data)
{
  Copy *copy = data;

  /* A slow disk is not given more than one at a time. */
  if (copy->writing)
    return G_SOURCE_CONTINUE;
  copy->timer = 0;
  write_copy (copy);
  return G_SOURCE_REMOVE;
}

static void
written_cb (void *data, const char *path, const char *fault)
{
  LbRecovery *self = data;

  for (guint i = 0; i < self->copies->len; i++)
    {
      Copy *copy = g_ptr_array_index (self->copies, i);

      if (g_strcmp0 (copy->path, path) == 0)
        copy->writing = FALSE;
    }
  tell_fault (self, fault);
}

/* ---- Watching ---- */

static void
drop_copy_file (Copy *copy)
{
  g_clear_handle_id (&copy->timer, g_source_remove);
  copy->writing = FALSE;
  if (copy->path)
    lb_recovery_writer_remove (copy->recovery->writer, copy->path);
  g_clear_pointer (&copy->path, g_free);
}

static void
edited_cb (Copy *copy)
{
  if (!lb_document_get_modified (copy->document) || copy->timer)
    return;
  copy->timer = g_timeout_add (WRITE_AFTER_MS, timer_cb, copy);
}

static void
modified_cb (Copy *copy)
{
  if (lb_document_get_modified (copy->document))
    edited_cb (copy);
  else
    drop_copy_file (copy);
}

static void
copy_free (gpointer data)
{
  Copy *copy = data;

  g_clear_handle_id (&copy->timer, g_source_remove);
  g_signal_handlers_disconnect_by_data (copy->document, copy);
  g_object_unref (copy->document);
  g_free (copy->path);
  g_free (copy);
}

static Copy *
find_copy (LbRecovery *self, LbDocument *document)
{
  for (guint i = 0; i < self->copies->len; i++)
    {
      Copy *copy = g_ptr_array_index (self->copies, i);

      if (copy->document == document)
        return copy;
    }
  return NULL;
}

static Copy *
add_copy (LbRecovery *self, LbDocument *document)
{
  Copy *copy = g_new0 (Copy, 1);

  copy->recovery = self;
  copy->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (edited_cb), copy);
  g_signal_connect_swapped (document, "notify::modified", G_CALLBACK (modified_cb), copy);
  g_ptr_array_add (self->copies, copy);
  return copy;
}

void
lb_recovery_watch (LbRecovery *self, LbDocument *document)
{
  g_return_if_fail (LB_IS_RECOVERY (self));
  g_return_if_fail (LB_IS_DOCUMENT (document));

  if (find_copy (self, document) == NULL)
    edited_cb (add_copy (self, document));
}

void
lb_recovery_forget (LbRecovery *self, LbDocument *document)
{
  Copy *copy;

  g_return_if_fail (LB_IS_RECOVERY (self));
  copy = find_copy (self, document);
  if (copy == NULL)
    return;
  drop_copy_file (copy);
  g_ptr_array_remove (self->copies, copy);
}

void
lb_recovery_flush (LbRecovery *self)
{
  g_return_if_fail (LB_IS_RECOVERY (self));

  for (guint i = 0; i < self->copies->len; i++)
    {
      Copy *copy = g_ptr_array_index (self->copies, i);

      if (copy->timer)
        write_copy (copy);
    }
  lb_recovery_writer_wait (self->writer);
}

/* ---- For what was lost (recovery_private.h) ---- */

gboolean
lb_recovery_is_own_folder (LbRecovery *self, const char *path)
{
  return self->folder && g_str_equal (self->folder->path, path);
}

char *
lb_recovery_new_path (LbRecovery *self, GError **error)
{
  return have_folder (self, error) ? new_path (self) : NULL;
}

void
lb_recovery_adopt (LbRecovery *self, LbDocument *document, const char *path)
{
  add_copy (self, document)->path = g_strdup (path);
}

/* ---- The object ---- */

static void
lb_recovery_dispose (GObject *object)
{
  LbRecovery *self = LB_RECOVERY (object);

  if (self->writer)
    {
      lb_recovery_flush (self);
      g_ptr_array_set_size (self->copies, 0);
      g_clear_pointer (&self->writer, lb_recovery_writer_free);
    }
  g_clear_pointer (&self->folder, lb_recovery_folder_free);
  G_OBJECT_CLASS (lb_recovery_parent_class)->dispose (object);
}

static void
lb_recovery_finalize (GObject *object)
{
  g_ptr_array_unref (LB_RECOVERY (object)->copies);
  G_OBJECT_CLASS (lb_recovery_parent_class)->finalize (object);
}

static void
lb_recovery_class_init (LbRecoveryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = lb_recovery_dispose;
  object_class->finalize = lb_recovery_finalize;

  signals[FAILED] = g_signal_new ("failed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
lb_recovery_init (LbRecovery *self)
{
  self->copies = g_ptr_array_new_with_free_func (copy_free);
  self->writer = lb_recovery_writer_new (written_cb, self);
}

LbRecovery *
lb_recovery_new (void)
{
  return g_object_new (LB_TYPE_RECOVERY, NULL);
}
