/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "read_points.h"

#include <glib/gi18n-lib.h>

#include "json_shown.h"
#include "validate.h"

static gboolean
read_coordinate (JsonNode *node, const char *path, double *value, GError **error)
{
  g_autofree char *found = NULL;

  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_DOUBLE)
    {
      *value = json_node_get_double (node);
      return TRUE;
    }
  found = lb_json_shown (node);
  return lb_validate_fail (error, LB_FILE_ERROR_TYPE, path, found, _ ("a number"));
}

static gboolean
read_point (JsonNode *node, const char *path, double *a, double *b, GError **error)
{
  g_autofree char *path_a = g_strconcat (path, "[0]", NULL);
  g_autofree char *path_b = g_strconcat (path, "[1]", NULL);
  g_autofree char *found = NULL;
  JsonArray *array;

  if (!JSON_NODE_HOLDS_ARRAY (node) || json_array_get_length (json_node_get_array (node)) != 2)
    {
      found = lb_json_shown (node);
      return lb_validate_fail (error, LB_FILE_ERROR_TYPE, path, found, _ ("a list of two numbers"));
    }
  array = json_node_get_array (node);
  return read_coordinate (json_array_get_element (array, 0), path_a, a, error)
         && read_coordinate (json_array_get_element (array, 1), path_b, b, error);
}

gboolean
lb_read_points (JsonNode *node,
                const char *path,
                gsize least,
                gsize most,
                double *a,
                double *b,
                gsize *n,
                GError **error)
{
  g_autofree char *expected = g_strdup_printf (_ ("a list of %zu to %zu points"), least, most);
  g_autofree char *found = NULL;
  gsize length;

  if (!JSON_NODE_HOLDS_ARRAY (node))
    {
      found = lb_json_shown (node);
      return lb_validate_fail (error, LB_FILE_ERROR_TYPE, path, found, expected);
    }
  length = json_array_get_length (json_node_get_array (node));
  if (length < least || length > most)
    {
      found = g_strdup_printf (_ ("%zu points"), length);
      return lb_validate_fail (error, LB_FILE_ERROR_RANGE, path, found, expected);
    }
  for (gsize i = 0; i < length; i++)
    {
      g_autofree char *point = g_strdup_printf ("%s[%zu]", path, i);
      if (!read_point (json_array_get_element (json_node_get_array (node), (guint) i), point, &a[i],
                       &b[i], error))
        return FALSE;
    }
  *n = length;
  return TRUE;
}
