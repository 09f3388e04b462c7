/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "export_file.h"

#include <glib/gi18n-lib.h>

#include "export.h"

cairo_status_t
lb_export_append_cb (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

gboolean
lb_export_write_bytes (const char *path, const GByteArray *bytes, GError **error)
{
  g_autoptr (GError) inner = NULL;

  if (g_file_set_contents_full (path, (const char *) bytes->data, bytes->len,
                                G_FILE_SET_CONTENTS_CONSISTENT, 0666, &inner))
    return TRUE;
  g_set_error (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_WRITE, _ ("%s: cannot be written: %s"), path,
               inner->message);
  return FALSE;
}
