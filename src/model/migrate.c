/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "migrate.h"

#include <math.h>
#include <glib/gi18n-lib.h>

#include "json_shown.h"
#include "validate.h"

/* The one place for later versions: a table of functions, step i bringing version i + 1 to i + 2.
 */

static gboolean
check_format (JsonNode *node, GError **error)
{
  g_autofree char *found = NULL;

  if (node == NULL)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_VERSION, _ ("%s: missing, expected %s"),
                   "format", "\"" LB_RIG_FORMAT "\"");
      return FALSE;
    }
  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING
      && g_str_equal (json_node_get_string (node), LB_RIG_FORMAT))
    return TRUE;
  found = lb_json_shown (node);
  return lb_validate_fail (error, LB_FILE_ERROR_VERSION, "format", found, "\"" LB_RIG_FORMAT "\"");
}

static gboolean
check_version (JsonNode *node, GError **error)
{
  g_autofree char *found = NULL;
  g_autofree char *expected = g_strdup_printf ("%d", LB_RIG_VERSION);

  if (node == NULL)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_VERSION, _ ("%s: missing, expected %s"),
                   "version", expected);
      return FALSE;
    }
  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_DOUBLE)
    {
      double version = json_node_get_double (node);
      if (version == LB_RIG_VERSION)
        return TRUE;
      if (version > LB_RIG_VERSION && version == floor (version))
        {
          g_autofree char *known = g_steal_pointer (&expected);
          expected = g_strdup_printf (_ ("%s; a newer Layback may know it"), known);
        }
    }
  found = lb_json_shown (node);
  return lb_validate_fail (error, LB_FILE_ERROR_VERSION, "version", found, expected);
}

gboolean
lb_migrate (JsonObject *top, GError **error)
{
  return check_format (json_object_get_member (top, "format"), error)
         && check_version (json_object_get_member (top, "version"), error);
}
