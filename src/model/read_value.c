/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "read_value.h"

#include "json_shown.h"
#include "validate.h"

gboolean
lb_read_fail (
    GError **error, LbFileError code, const char *path, JsonNode *node, const char *expected)
{
  g_autofree char *found = lb_json_shown (node);
  return lb_validate_fail (error, code, path, found, expected);
}

static gboolean
read_number (const LbField *field, JsonNode *node, const char *path, double *value, GError **error)
{
  g_autofree char *expected = lb_validate_expected (field);

  if (JSON_NODE_HOLDS_NULL (node) && field->nullable)
    *value = LB_UNSET;
  else if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_DOUBLE)
    *value = json_node_get_double (node);
  else
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
  return lb_field_accepts (field, *value)
         || lb_read_fail (error, LB_FILE_ERROR_RANGE, path, node, expected);
}

static gboolean
read_choice (const LbField *field, JsonNode *node, const char *path, double *value, GError **error)
{
  g_autofree char *expected = lb_validate_expected (field);
  const LbFieldChoice *choice;

  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
  choice = lb_field_choice_named (field, json_node_get_string (node));
  if (choice == NULL)
    return lb_read_fail (error, LB_FILE_ERROR_RANGE, path, node, expected);
  *value = choice->value;
  return TRUE;
}

gboolean
lb_read_value (
    const LbField *field, JsonNode *node, const char *path, double *value, GError **error)
{
  return field->kind == LB_FIELD_CHOICE ? read_choice (field, node, path, value, error)
                                        : read_number (field, node, path, value, error);
}
