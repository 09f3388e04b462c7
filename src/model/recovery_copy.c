/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "recovery_copy.h"

#include <string.h>
#include <glib/gi18n-lib.h>
#include <json-glib/json-glib.h>

#include "document_private.h"
#include "reader.h"
#include "strict_json.h"
#include "writer.h"

#define FORMAT "layback-unsaved"
#define DEEPEST 2

/* ---- Writing ---- */

static char *
first_line (LbDocument *document)
{
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);
  JsonObject *object = json_object_new ();
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autofree char *time = g_date_time_format_iso8601 (now);
  GFile *file = lb_document_get_file (document);
  g_autofree char *uri = file ? g_file_get_uri (file) : NULL;

  json_node_take_object (node, object);
  json_object_set_string_member (object, "format", FORMAT);
  json_object_set_string_member (object, "time", time);
  if (file)
    {
      json_object_set_string_member (object, "file", uri);
      json_object_set_string_member (object, "mark", lb_document_get_file_mark (document));
    }
  return json_to_string (node, FALSE);
}

GBytes *
lb_recovery_copy_of (LbDocument *document)
{
  g_autofree char *line = first_line (document);
  g_autofree char *rig = lb_writer_to_text (lb_document_get_contents (document), NULL);
  char *text = g_strconcat (line, "\n", rig, NULL);

  return g_bytes_new_take (text, strlen (text));
}

/* ---- Reading ---- */

static gboolean
fail (const char *path, const char *why, GError **error)
{
  g_autofree char *name = g_filename_display_basename (path);

  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_READ,
               _ ("the copy “%s” of unsaved work cannot be read: %s"), name, why);
  return FALSE;
}

static const char *
text_in (JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node && JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING
             ? json_node_get_string (node)
             : NULL;
}

static gboolean
read_first_line (LbRecoveryCopy *copy, const char *line, gsize length, GError **error)
{
  g_autoptr (JsonNode) tree = lb_strict_json_parse (line, length, DEEPEST, error);
  JsonObject *object = tree && JSON_NODE_HOLDS_OBJECT (tree) ? json_node_get_object (tree) : NULL;
  const char *time = object ? text_in (object, "time") : NULL;
  const char *uri = object ? text_in (object, "file") : NULL;
  g_autoptr (GDateTime) utc = time ? g_date_time_new_from_iso8601 (time, NULL) : NULL;

  if (tree == NULL)
    return FALSE;
  if (object == NULL || g_strcmp0 (text_in (object, "format"), FORMAT) != 0 || utc == NULL)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_VERSION, _ ("its first line is damaged"));
      return FALSE;
    }
  copy->time = g_date_time_to_local (utc);
  if (uri)
    {
      copy->file = g_file_new_for_uri (uri);
      copy->mark = g_strdup (text_in (object, "mark"));
    }
  return TRUE;
}

LbRecoveryCopy *
lb_recovery_copy_read (const char *path, GError **error)
{
  g_autoptr (LbRecoveryCopy) copy = g_new0 (LbRecoveryCopy, 1);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) fault = NULL;
  g_autoptr (GBytes) bytes = lb_reader_read_bytes (file, error);
  gsize length = 0;
  const char *text = bytes ? g_bytes_get_data (bytes, &length) : NULL;
  const char *end = text ? memchr (text, '\n', length) : NULL;

  if (bytes == NULL)
    return NULL;
  copy->contents = lb_contents_new ();
  if (end == NULL)
    fail (path, _ ("it is cut off"), error);
  else if (read_first_line (copy, text, (gsize) (end - text), &fault)
           && lb_reader_parse (end + 1, (gssize) (length - (gsize) (end + 1 - text)),
                               copy->contents, &fault))
    return g_steal_pointer (&copy);
  else
    fail (path, fault->message, error);
  return NULL;
}

void
lb_recovery_copy_free (LbRecoveryCopy *copy)
{
  if (copy == NULL)
    return;
  lb_contents_free (copy->contents);
  g_clear_object (&copy->file);
  g_clear_pointer (&copy->time, g_date_time_unref);
  g_free (copy->mark);
  g_free (copy);
}
