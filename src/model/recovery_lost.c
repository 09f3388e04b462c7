/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What dead programs left: listed, restored, removed. */
#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "document_private.h"
#include "recovery_copy.h"
#include "recovery_folder.h"
#include "recovery_private.h"

/* ---- One of them ---- */

LbLost *
lb_lost_copy (const LbLost *lost)
{
  LbLost *copy = g_new0 (LbLost, 1);

  copy->name = g_strdup (lost->name);
  copy->file = lost->file ? g_object_ref (lost->file) : NULL;
  copy->time = g_date_time_ref (lost->time);
  copy->path = g_strdup (lost->path);
  return copy;
}

void
lb_lost_free (LbLost *lost)
{
  if (lost == NULL)
    return;
  g_free (lost->name);
  g_clear_object (&lost->file);
  g_clear_pointer (&lost->time, g_date_time_unref);
  g_free (lost->path);
  g_free (lost);
}

static GDateTime *
time_of_file (const char *path)
{
  GStatBuf status;

  return g_date_time_new_from_unix_local (g_stat (path, &status) == 0 ? status.st_mtime : 0);
}

/* One that cannot be read is listed too: the user may know better than to throw it away. */
static LbLost *
lost_new (const char *path)
{
  LbLost *lost = g_new0 (LbLost, 1);
  g_autoptr (LbRecoveryCopy) copy = lb_recovery_copy_read (path, NULL);
  g_autoptr (LbDocument) document = NULL;

  lost->path = g_strdup (path);
  if (copy == NULL)
    {
      lost->name = g_strdup (_ ("Damaged copy"));
      lost->time = time_of_file (path);
      return lost;
    }
  document = lb_document_restore (copy->contents, copy->file, copy->mark);
  lost->name = lb_document_dup_display_name (document);
  lost->file = g_steal_pointer (&copy->file);
  lost->time = g_steal_pointer (&copy->time);
  return lost;
}

/* ---- All of them ---- */

static void
add_lost_in (const LbRecoveryFolder *folder, GPtrArray *list)
{
  g_auto (GStrv) names = lb_recovery_folder_list (folder);

  for (char **name = names; *name; name++)
    {
      g_autofree char *path = g_build_filename (folder->path, *name, NULL);
      g_ptr_array_add (list, lost_new (path));
    }
}

static gint
compare_cb (gconstpointer a, gconstpointer b)
{
  return g_date_time_compare ((*(LbLost *const *) b)->time, (*(LbLost *const *) a)->time);
}

GPtrArray *
lb_recovery_list_lost (LbRecovery *self)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) lb_lost_free);
  g_autofree char *root = lb_recovery_root ();
  g_autoptr (GDir) dir = g_dir_open (root, 0, NULL);
  const char *name;

  g_return_val_if_fail (LB_IS_RECOVERY (self), list);
  while (dir && (name = g_dir_read_name (dir)))
    {
      g_autofree char *path = g_build_filename (root, name, NULL);
      g_autoptr (LbRecoveryFolder) folder = NULL;

      if (*name == '.' || lb_recovery_is_own_folder (self, path))
        continue;
      folder = lb_recovery_folder_claim (path);
      if (folder)
        add_lost_in (folder, list);
    }
  g_ptr_array_sort (list, compare_cb);
  return list;
}

/* The folder of a copy, held, so that no other program restores it at the same time. */
static LbRecoveryFolder *
claim_folder_of (const LbLost *lost, GError **error)
{
  g_autofree char *path = g_path_get_dirname (lost->path);
  LbRecoveryFolder *folder = lb_recovery_folder_claim (path);

  if (folder == NULL)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_READ,
                 _ ("“%s” is no longer there to be restored, or another window has it"),
                 lost->name);
  return folder;
}

static LbDocument *
fail_to_restore (const LbLost *lost, const char *why, GError **error)
{
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_WRITE, _ ("“%s” cannot be restored: %s"),
               lost->name, why);
  return NULL;
}

LbDocument *
lb_recovery_restore (LbRecovery *self, const LbLost *lost, GError **error)
{
  g_autoptr (LbRecoveryFolder) folder = NULL;
  g_autoptr (LbRecoveryCopy) copy = NULL;
  g_autofree char *path = NULL;
  g_autoptr (GError) fault = NULL;
  LbDocument *document;

  g_return_val_if_fail (LB_IS_RECOVERY (self) && lost != NULL, NULL);
  folder = claim_folder_of (lost, error);
  copy = folder ? lb_recovery_copy_read (lost->path, error) : NULL;
  if (copy == NULL)
    return NULL;
  path = lb_recovery_new_path (self, &fault);
  if (path == NULL)
    return fail_to_restore (lost, fault->message, error);
  if (g_rename (lost->path, path) != 0)
    return fail_to_restore (lost, g_strerror (errno), error);
  document = lb_document_restore (copy->contents, copy->file, copy->mark);
  lb_recovery_adopt (self, document, path);
  return document;
}

gboolean
lb_recovery_remove (LbRecovery *self, const LbLost *lost, GError **error)
{
  g_autoptr (LbRecoveryFolder) folder = NULL;

  g_return_val_if_fail (LB_IS_RECOVERY (self) && lost != NULL, FALSE);
  folder = claim_folder_of (lost, error);
  if (folder == NULL)
    return FALSE;
  if (g_unlink (lost->path) == 0 || errno == ENOENT)
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_WRITE, _ ("“%s” cannot be removed: %s"),
               lost->name, g_strerror (errno));
  return FALSE;
}
