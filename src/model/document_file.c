/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Documents from files and into them. */
#include <glib/gi18n-lib.h>

#include "document_private.h"
#include "file_watch.h"
#include "reader.h"
#include "save_file.h"
#include "writer.h"

LbDocument *
lb_document_load (GFile *file, GError **error)
{
  g_autoptr (LbDocument) self = lb_document_new ();
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *mark = NULL;
  gsize length;
  const char *text;

  bytes = lb_reader_read_bytes (file, error);
  if (bytes == NULL || !lb_reader_parse_bytes (file, bytes, lb_document_edit (self), error))
    return NULL;
  text = g_bytes_get_data (bytes, &length);
  mark = lb_file_mark (text, length);
  lb_document_set_file (self, file, mark);
  return g_steal_pointer (&self);
}

LbDocument *
lb_document_restore (const LbContents *contents, GFile *file, const char *mark)
{
  LbDocument *self = lb_document_new_with (contents);

  if (file)
    lb_document_set_file (self, file, mark);
  lb_document_set_modified (self, TRUE);
  return self;
}

/* Whether the own file may be written without losing what another program wrote there. */
static gboolean
check_own_file (LbDocument *self, GError **error)
{
  LbFileState state = lb_document_check_file (self);
  g_autofree char *name = NULL;

  if (state == LB_FILE_SAME)
    return TRUE;
  name = g_file_get_parse_name (lb_document_get_file (self));
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_CHANGED,
               state == LB_FILE_REMOVED
                   ? _ ("%s: not written: another program has removed it meanwhile")
                   : _ ("%s: not written: another program has changed it meanwhile"),
               name);
  return FALSE;
}

gboolean
lb_document_save (LbDocument *self, GFile *file, GError **error)
{
  GFile *own;

  g_return_val_if_fail (LB_IS_DOCUMENT (self), FALSE);
  own = lb_document_get_file (self);
  if (own && g_file_equal (own, file) && !check_own_file (self, error))
    return FALSE;
  return lb_document_save_over (self, file, error);
}

gboolean
lb_document_save_over (LbDocument *self, GFile *file, GError **error)
{
  gsize length;
  g_autofree char *text = NULL;
  g_autofree char *mark = NULL;

  g_return_val_if_fail (LB_IS_DOCUMENT (self), FALSE);

  text = lb_writer_to_text (lb_document_get_contents (self), &length);
  if (!lb_save_file (file, text, length, error))
    return FALSE;
  mark = lb_file_mark (text, length);
  lb_document_set_file (self, file, mark);
  lb_document_set_modified (self, FALSE);
  return TRUE;
}
