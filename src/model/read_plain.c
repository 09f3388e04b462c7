/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "read_plain.h"

#include <glib/gi18n-lib.h>

#include "contents.h"
#include "read_value.h"
#include "validate.h"

gboolean
lb_read_check_keys (JsonObject *object,
                    const char *const *known,
                    const char *prefix,
                    GError **error)
{
  g_autoptr (GList) members = json_object_get_members (object);

  for (GList *l = members; l; l = l->next)
    if (!g_strv_contains (known, l->data))
      {
        g_autofree char *key = lb_validate_shown (l->data);
        g_autofree char *list = g_strjoinv (", ", (char **) known);

        g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_UNKNOWN_KEY,
                     _ ("%s%s: unknown key, expected one of %s"), prefix, key, list);
        return FALSE;
      }
  return TRUE;
}

/* ---- Kinds of values ---- */

static gboolean
holds (JsonNode *node, GType type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

gboolean
lb_read_text (
    JsonNode *node, const char *path, gboolean one_line, glong longest, char **text, GError **error)
{
  g_autofree char *expected =
      g_strdup_printf (one_line ? _ ("one line of text of at most %ld characters")
                                : _ ("a text of at most %ld characters"),
                       longest);

  if (!holds (node, G_TYPE_STRING))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
  if (g_utf8_strlen (json_node_get_string (node), -1) > longest
      || (one_line && !lb_text_is_one_line (json_node_get_string (node))))
    return lb_read_fail (error, LB_FILE_ERROR_RANGE, path, node, expected);
  g_free (*text);
  *text = json_node_dup_string (node);
  return TRUE;
}

gboolean
lb_read_boolean (JsonNode *node, const char *path, bool *value, GError **error)
{
  if (!holds (node, G_TYPE_BOOLEAN))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, _ ("true or false"));
  *value = json_node_get_boolean (node);
  return TRUE;
}

gboolean
lb_read_number (
    JsonNode *node, const char *path, double minimum, double maximum, double *value, GError **error)
{
  double number;

  if (!holds (node, G_TYPE_DOUBLE))
    {
      g_autofree char *expected = lb_validate_expected_range (minimum, maximum);
      return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
    }
  number = json_node_get_double (node);
  if (!lb_validate_number (path, number, minimum, maximum, error))
    return FALSE;
  *value = number;
  return TRUE;
}

gboolean
lb_read_whole (
    JsonNode *node, const char *path, int minimum, int maximum, int *value, GError **error)
{
  g_autofree char *expected =
      g_strdup_printf (_ ("a whole number from %d to %d"), minimum, maximum);
  double number;

  if (!holds (node, G_TYPE_DOUBLE))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
  number = json_node_get_double (node);
  if (!(number >= minimum && number <= maximum) || number != floor (number))
    return lb_read_fail (error, LB_FILE_ERROR_RANGE, path, node, expected);
  *value = (int) number;
  return TRUE;
}

static char *
expected_choice (const char *(*name) (int value), int n)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < n; i++)
    g_string_append_printf (text, "%s\"%s\"",
                            i == 0      ? ""
                            : i + 1 < n ? ", "
                                        : _ (" or "),
                            name (i));
  return g_string_free (text, FALSE);
}

gboolean
lb_read_choice (JsonNode *node,
                const char *path,
                const char *(*name) (int value),
                int n,
                int *value,
                GError **error)
{
  g_autofree char *expected = expected_choice (name, n);

  if (!holds (node, G_TYPE_STRING))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
  for (int i = 0; i < n; i++)
    if (g_str_equal (json_node_get_string (node), name (i)))
      {
        *value = i;
        return TRUE;
      }
  return lb_read_fail (error, LB_FILE_ERROR_RANGE, path, node, expected);
}

JsonObject *
lb_read_object (JsonNode *node, const char *path, GError **error)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, _ ("an object"));
  return NULL;
}
