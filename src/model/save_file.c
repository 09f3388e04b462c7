/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "save_file.h"

#include <stdlib.h>
#include <unistd.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#define MOST_LINKS 40 /* as the kernel follows */

/* What the symbolic link at `path` points to, or NULL when it is none. */
static char *
target_of (const char *path)
{
  g_autofree char *target = g_file_read_link (path, NULL);
  g_autofree char *folder = g_path_get_dirname (path);

  return target ? g_canonicalize_filename (target, folder) : NULL;
}

/* The file at the end of any symbolic links, so that it is replaced and not the link; also when it
 * is not there yet. */
static char *
resolve (const char *path)
{
  char *real = realpath (path, NULL);
  char *copy = g_strdup (real ? real : path);

  for (int i = 0; real == NULL && i < MOST_LINKS; i++)
    {
      char *target = target_of (copy);

      if (target == NULL)
        break;
      g_free (copy);
      copy = target;
    }
  free (real);
  return copy;
}

/* The permissions of a file that is there, or -1. */
static int
mode_of (const char *path)
{
  GStatBuf status;
  return g_stat (path, &status) == 0 ? (int) (status.st_mode & 0777) : -1;
}

/* Why, in words; the system's own where there are none. (transfer none) */
static const char *
reason (const GError *fault)
{
  if (fault->domain != G_FILE_ERROR)
    return fault->message;
  switch (fault->code)
    {
    case G_FILE_ERROR_NOSPC:
      return _ ("the disk is full");
    case G_FILE_ERROR_ACCES:
    case G_FILE_ERROR_PERM:
      return _ ("you may not write into this folder");
    case G_FILE_ERROR_ROFS:
      return _ ("this disk cannot be written to");
    case G_FILE_ERROR_NOENT:
      return _ ("the folder is not there");
    case G_FILE_ERROR_NOTDIR:
      return _ ("this is no folder");
    default:
      return fault->message;
    }
}

static gboolean
fail (GFile *file, const char *why, GError **error)
{
  g_autofree char *name = g_file_get_parse_name (file);

  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_WRITE, _ ("%s: not written: %s"), name, why);
  return FALSE;
}

gboolean
lb_save_file (GFile *file, const char *text, gsize length, GError **error)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *real = path ? resolve (path) : NULL;
  g_autoptr (GError) fault = NULL;
  int mode;

  if (path == NULL)
    return fail (file, _ ("this is no file on this computer"), error);
  mode = mode_of (real);
  if (mode >= 0 && g_access (real, W_OK) != 0)
    return fail (file, _ ("this file is write-protected"), error);
  if (!g_file_set_contents_full (real, text, (gssize) length,
                                 G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                 mode >= 0 ? mode : 0666, &fault))
    return fail (file, reason (fault), error);
  /* The umask may have taken something away; the contents are safe either way. */
  if (mode >= 0 && mode_of (real) != mode)
    (void) g_chmod (real, mode);
  return TRUE;
}
