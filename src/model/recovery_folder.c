/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "recovery_folder.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>
#include <glib/gstdio.h>

#include "recovery_copy.h"

#define LOCK_NAME "lock"

char *
lb_recovery_root (void)
{
  return g_build_filename (g_get_user_state_dir (), "layback", "recovery", NULL);
}

/* The lock of `folder`, held, or -1. It is not handed on to programs that this one starts, which
 * may outlive it. */
static int
hold_lock (const char *folder, int flags)
{
  g_autofree char *path = g_build_filename (folder, LOCK_NAME, NULL);
  int lock = g_open (path, O_RDWR | O_CLOEXEC | flags, 0600);

  if (lock >= 0 && flock (lock, LOCK_EX | LOCK_NB) != 0)
    {
      int fault = errno;
      close (lock);
      errno = fault;
      lock = -1;
    }
  return lock;
}

static LbRecoveryFolder *
folder_new (char *path, int lock)
{
  LbRecoveryFolder *folder = g_new (LbRecoveryFolder, 1);

  *folder = (LbRecoveryFolder){ path, lock };
  return folder;
}

static LbRecoveryFolder *
fail (const char *path, GError **error)
{
  int fault = errno;

  g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (fault), "%s: %s", path,
               g_strerror (fault));
  return NULL;
}

/* It is hidden, by its name, until it is locked: nobody shall take it for a dead program's. */
LbRecoveryFolder *
lb_recovery_folder_new (GError **error)
{
  g_autofree char *root = lb_recovery_root ();
  g_autofree char *id = g_uuid_string_random ();
  g_autofree char *hidden_name = g_strconcat (".", id, NULL);
  g_autofree char *hidden = g_build_filename (root, hidden_name, NULL);
  g_autofree char *path = g_build_filename (root, id, NULL);
  int lock;

  if (g_mkdir_with_parents (hidden, 0700) != 0)
    return fail (hidden, error);
  lock = hold_lock (hidden, O_CREAT);
  if (lock < 0)
    return fail (hidden, error);
  if (g_rename (hidden, path) != 0)
    {
      fail (path, error);
      close (lock);
      return NULL;
    }
  return folder_new (g_steal_pointer (&path), lock);
}

LbRecoveryFolder *
lb_recovery_folder_claim (const char *path)
{
  int lock = hold_lock (path, 0);

  if (lock < 0 && errno != ENOENT)
    return NULL;
  return g_file_test (path, G_FILE_TEST_IS_DIR) ? folder_new (g_strdup (path), lock) : NULL;
}

/* The names in `path`, with that ending only unless it is NULL. */
static char **
names_in (const char *path, const char *ending)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  const char *name;

  while (dir && (name = g_dir_read_name (dir)))
    if (ending == NULL || g_str_has_suffix (name, ending))
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_add (names, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&names), FALSE);
}

char **
lb_recovery_folder_list (const LbRecoveryFolder *folder)
{
  return names_in (folder->path, LB_RECOVERY_ENDING);
}

/* A program that died while writing leaves half a file behind. */
static void
remove_all (const char *path)
{
  g_auto (GStrv) names = names_in (path, NULL);

  for (char **name = names; *name; name++)
    {
      g_autofree char *file = g_build_filename (path, *name, NULL);
      g_unlink (file);
    }
  g_rmdir (path);
}

void
lb_recovery_folder_free (LbRecoveryFolder *folder)
{
  g_auto (GStrv) names = NULL;

  if (folder == NULL)
    return;
  names = lb_recovery_folder_list (folder);
  if (*names == NULL)
    remove_all (folder->path);
  if (folder->lock >= 0)
    close (folder->lock);
  g_free (folder->path);
  g_free (folder);
}
