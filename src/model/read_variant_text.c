/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "heavy: weight.mass_kg=1.1": the text is made the JSON that would stand in a file, so that every
 * check is the reader's own. */
#include "read_variants.h"

#include <string.h>
#include <glib/gi18n-lib.h>

#include "reader.h"
#include "strict_json.h"

/* The path as it stands in a file. */
static char *
path_in_file (const char *path)
{
  size_t leader;
  const LbField *field = strstr (path, "[]") ? NULL : lb_field_find (path, &leader);

  return field ? lb_field_full_path (field, leader) : g_strdup (path);
}

static JsonNode *
value_of (const char *text)
{
  JsonNode *node = lb_strict_json_parse (text, strlen (text), LB_READER_DEEPEST, NULL);

  return node ? node : json_node_init_string (json_node_alloc (), text);
}

static gboolean
add_value (JsonObject *set, char *part, GError **error)
{
  char *equals = strchr (part, '=');
  g_autofree char *path = NULL;

  if (equals == NULL || equals == part)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX, _ ("%s: expected key=value"), part);
      return FALSE;
    }
  *equals = '\0';
  path = path_in_file (g_strstrip (part));
  if (json_object_has_member (set, path))
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX, _ ("%s: found twice"), path);
      return FALSE;
    }
  json_object_set_member (set, path, value_of (g_strstrip (equals + 1)));
  return TRUE;
}

static gboolean
add_values (JsonObject *set, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ",", -1);

  for (char **part = parts; *part; part++)
    if (*g_strstrip (*part) != '\0' && !add_value (set, *part, error))
      return FALSE;
  return TRUE;
}

gboolean
lb_read_variant_text (const char *text, LbVariants *variants, GError **error)
{
  const char *colon = strchr (text, ':');
  g_autofree char *name =
      g_strstrip (colon ? g_strndup (text, (gsize) (colon - text)) : g_strdup (text));
  g_autoptr (JsonNode) node = json_node_init_object (json_node_alloc (), NULL);
  g_autoptr (JsonObject) object = json_object_new ();
  JsonObject *set = json_object_new ();

  if (!g_utf8_validate (text, -1, NULL))
    {
      json_object_unref (set);
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX, _ ("%s: expected text in UTF-8"),
                   "?");
      return FALSE;
    }
  json_object_set_string_member (object, "name", name);
  json_object_set_object_member (object, "set", set);
  json_node_set_object (node, object);
  return add_values (set, colon ? colon + 1 : "", error)
         && lb_read_variant (node, name, variants, error);
}
