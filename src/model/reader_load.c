/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From the disk to the reader, with no trust in what the file is or how large it says it is. */
#include "reader.h"

#include <glib/gi18n-lib.h>

static gboolean
check_kind (GFile *file, GError **error)
{
  g_autoptr (GFileInfo) info =
      g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_TYPE "," G_FILE_ATTRIBUTE_STANDARD_SIZE,
                         G_FILE_QUERY_INFO_NONE, NULL, error);

  if (info == NULL)
    return FALSE;
  if (g_file_info_get_file_type (info) == G_FILE_TYPE_DIRECTORY)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_READ,
                 _ ("found a folder, expected a rig file"));
  else if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_READ,
                 _ ("found a device or pipe, expected a rig file"));
  else if (g_file_info_get_size (info) > LB_READER_LARGEST_FILE)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_TOO_LARGE,
                 _ ("found %" G_GOFFSET_FORMAT " bytes, expected at most %d"),
                 g_file_info_get_size (info), LB_READER_LARGEST_FILE);
  else
    return TRUE;
  return FALSE;
}

static GBytes *
read_bytes (GFile *file, GError **error)
{
  g_autoptr (GFileInputStream) stream = NULL;
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  guint8 buffer[64 * 1024];
  gssize n;

  if (!check_kind (file, error))
    return NULL;
  stream = g_file_read (file, NULL, error);
  if (stream == NULL)
    return NULL;
  /* The file may grow meanwhile: one piece more than allowed is enough to tell. */
  while ((n = g_input_stream_read (G_INPUT_STREAM (stream), buffer, sizeof buffer, NULL, error)) > 0
         && bytes->len <= LB_READER_LARGEST_FILE)
    g_byte_array_append (bytes, buffer, (guint) n);
  return n < 0 ? NULL : g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}

/* Puts the file's name before the fault. */
static gboolean
fail (GFile *file, const GError *fault, GError **error)
{
  g_autofree char *name = g_file_get_parse_name (file);

  g_set_error (error, LB_FILE_ERROR,
               fault->domain == LB_FILE_ERROR ? fault->code : LB_FILE_ERROR_READ, "%s: %s", name,
               fault->message);
  return FALSE;
}

GBytes *
lb_reader_read_bytes (GFile *file, GError **error)
{
  g_autoptr (GError) fault = NULL;
  GBytes *bytes = read_bytes (file, &fault);

  if (bytes == NULL)
    fail (file, fault, error);
  return bytes;
}

gboolean
lb_reader_parse_bytes (GFile *file, GBytes *bytes, LbContents *contents, GError **error)
{
  g_autoptr (GError) fault = NULL;
  gsize size = 0;
  const char *text = g_bytes_get_data (bytes, &size);

  return lb_reader_parse (text ? text : "", (gssize) size, contents, &fault)
         || fail (file, fault, error);
}

gboolean
lb_reader_load (GFile *file, LbContents *contents, GError **error)
{
  g_autoptr (GBytes) bytes = lb_reader_read_bytes (file, error);

  return bytes && lb_reader_parse_bytes (file, bytes, contents, error);
}
