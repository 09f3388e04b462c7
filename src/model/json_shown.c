/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "json_shown.h"

#include <glib/gi18n-lib.h>

#include "validate.h"
#include "json_text.h"

char *
lb_json_shown (JsonNode *node)
{
  if (JSON_NODE_HOLDS_NULL (node))
    return g_strdup ("null");
  if (JSON_NODE_HOLDS_OBJECT (node))
    return g_strdup (_ ("an object"));
  if (JSON_NODE_HOLDS_ARRAY (node))
    return g_strdup (_ ("a list"));
  if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    return g_strdup (json_node_get_boolean (node) ? "true" : "false");
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    {
      g_autofree char *text = lb_validate_shown (json_node_get_string (node));
      return g_strdup_printf (_ ("the text \"%s\""), text);
    }
  char text[LB_JSON_NUMBER_SIZE];
  lb_json_text_number (json_node_get_double (node), text);
  return g_strdup (text);
}
