/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "read_variants.h"

#include <glib/gi18n-lib.h>

#include "read_value.h"
#include "validate.h"

static gboolean
fail_missing (const char *path, const char *expected, GError **error)
{
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY, _ ("%s: missing, expected %s"),
               path, expected);
  return FALSE;
}

/* ---- The name ---- */

static gboolean
read_name (
    JsonNode *node, const char *path, const LbVariants *before, LbVariant *variant, GError **error)
{
  g_autofree char *expected =
      g_strdup_printf (_ ("one line of text of 1 to %d characters"), LB_VARIANT_NAME_LONGEST);

  if (node == NULL)
    return fail_missing (path, expected, error);
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
  if (!lb_variant_name_is_fine (json_node_get_string (node)))
    return lb_read_fail (error, LB_FILE_ERROR_RANGE, path, node, expected);
  if (lb_variants_find (before, json_node_get_string (node)))
    return lb_read_fail (error, LB_FILE_ERROR_RANGE, path, node,
                         _ ("a name that no variant before has"));
  g_strlcpy (variant->name, json_node_get_string (node), sizeof variant->name);
  return TRUE;
}

/* ---- What it replaces ---- */

static gboolean
fail_unknown (const char *set_path, const char *key, GError **error)
{
  g_autofree char *shown = lb_validate_shown (key);

  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_UNKNOWN_KEY,
               _ ("%s: unknown key \"%s\", expected the path of a value, as \"weight.mass_kg\""),
               set_path, shown);
  return FALSE;
}

/* Touching is no value, but "true" at a key of its own. */
static gboolean
read_override_value (
    const LbField *field, JsonNode *node, const char *path, double *value, GError **error)
{
  if (!g_str_equal (field->path, "mainline.line_out"))
    return lb_read_value (field, node, path, value, error);
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN
      || !json_node_get_boolean (node))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, "true");
  *value = LB_LINE_OUT_TOUCHING;
  return TRUE;
}

static gboolean
check_excluded (const LbVariant *variant,
                const LbField *field,
                const char *path,
                const char *key,
                GError **error)
{
  for (size_t i = 0; i < variant->n_overrides; i++)
    if (lb_override_excludes (variant->overrides[i].field, field))
      {
        g_autofree char *other = lb_override_dup_path (&variant->overrides[i]);

        g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_ORDER,
                     _ ("%s: found \"%s\" beside \"%s\", expected one of them"), path, key, other);
        return FALSE;
      }
  return TRUE;
}

static gboolean
read_override (
    JsonNode *node, const char *set_path, const char *key, LbVariant *variant, GError **error)
{
  g_autofree char *path = g_strconcat (set_path, ".", key, NULL);
  const LbField *field;
  size_t leader;
  double value;

  if (!lb_override_find (key, &field, &leader))
    return fail_unknown (set_path, key, error);
  return read_override_value (field, node, path, &value, error)
         && check_excluded (variant, field, set_path, key, error)
         && lb_variant_set (variant, field, leader, value);
}

static gboolean
read_set (JsonNode *node, const char *path, LbVariant *variant, GError **error)
{
  g_autofree char *expected =
      g_strdup_printf (_ ("an object with at most %d values"), LB_MAX_OVERRIDES);
  g_autofree char *found = NULL;
  g_autoptr (GList) members = NULL;

  if (node == NULL)
    return fail_missing (path, expected, error);
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, expected);
  members = json_object_get_members (json_node_get_object (node));
  if (g_list_length (members) > LB_MAX_OVERRIDES)
    {
      found = g_strdup_printf (_ ("%u values"), g_list_length (members));
      return lb_validate_fail (error, LB_FILE_ERROR_RANGE, path, found, expected);
    }
  for (GList *l = members; l; l = l->next)
    if (!read_override (json_object_get_member (json_node_get_object (node), l->data), path,
                        l->data, variant, error))
      return FALSE;
  return TRUE;
}

/* ---- The list ---- */

static gboolean
check_keys (JsonObject *object, const char *path, GError **error)
{
  g_autoptr (GList) members = json_object_get_members (object);

  for (GList *l = members; l; l = l->next)
    if (!g_str_equal (l->data, "name") && !g_str_equal (l->data, "set"))
      {
        g_autofree char *key = lb_validate_shown (l->data);

        g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_UNKNOWN_KEY,
                     _ ("%s.%s: unknown key, expected one of %s"), path, key, "name, set");
        return FALSE;
      }
  return TRUE;
}

gboolean
lb_read_variant (JsonNode *node, const char *path, LbVariants *variants, GError **error)
{
  LbVariant variant = { 0 };
  g_autofree char *name_path = g_strconcat (path, ".name", NULL);
  g_autofree char *set_path = g_strconcat (path, ".set", NULL);
  JsonObject *object;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node, _ ("an object"));
  object = json_node_get_object (node);
  if (!check_keys (object, path, error)
      || !read_name (json_object_get_member (object, "name"), name_path, variants, &variant, error)
      || !read_set (json_object_get_member (object, "set"), set_path, &variant, error))
    return FALSE;
  variants->list[variants->n++] = variant;
  return TRUE;
}

gboolean
lb_read_variants (JsonNode *node, LbVariants *variants, GError **error)
{
  g_autofree char *expected =
      g_strdup_printf (_ ("a list of at most %d variants"), LB_MAX_VARIANTS);
  JsonArray *array;

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return lb_read_fail (error, LB_FILE_ERROR_TYPE, "variants", node, expected);
  array = json_node_get_array (node);
  if (json_array_get_length (array) > LB_MAX_VARIANTS)
    {
      g_autofree char *found = g_strdup_printf (_ ("%u variants"), json_array_get_length (array));
      return lb_validate_fail (error, LB_FILE_ERROR_RANGE, "variants", found, expected);
    }
  variants->n = 0;
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      g_autofree char *path = g_strdup_printf ("variants[%u]", i);

      if (!lb_read_variant (json_array_get_element (array, i), path, variants, error))
        return FALSE;
    }
  return TRUE;
}
