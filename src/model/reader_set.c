/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "key=value": the change is made in the JSON tree that the contents would be written as, and the
 * outcome is read back, so that every key can be set and every check is the reader's own. */
#include "reader.h"

#include <string.h>
#include <glib/gi18n-lib.h>

#include "reader_tree.h"
#include "strict_json.h"
#include "writer.h"

static gboolean
fail (GError **error, LbFileError code, const char *path, const char *message)
{
  g_set_error (error, LB_FILE_ERROR, code, "%s: %s", path, message);
  return FALSE;
}

static gboolean
is_text (JsonNode *node)
{
  return node && JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
}

/* ---- Finding the place ---- */

/* "leaders[1].lure.name" or "leaders.1.lure.name" as a list of keys and indices. */
static GStrv
split_path (const char *path)
{
  g_autoptr (GString) plain = g_string_new (NULL);

  for (const char *p = path; *p; p++)
    if (*p == '[')
      g_string_append_c (plain, '.');
    else if (*p != ']')
      g_string_append_c (plain, *p);
  return g_strsplit (plain->str, ".", -1);
}

static gboolean
read_index (const char *text, guint length, guint *index)
{
  guint64 value;

  if (!g_ascii_string_to_unsigned (text, 10, 0, length ? length - 1 : 0, &value, NULL) || !length)
    return FALSE;
  *index = (guint) value;
  return TRUE;
}

static JsonNode *
child (JsonNode *parent, const char *key)
{
  guint index;

  if (JSON_NODE_HOLDS_OBJECT (parent))
    return json_object_get_member (json_node_get_object (parent), key);
  if (JSON_NODE_HOLDS_ARRAY (parent)
      && read_index (key, json_array_get_length (json_node_get_array (parent)), &index))
    return json_array_get_element (json_node_get_array (parent), index);
  return NULL;
}

static void
replace_child (JsonNode *parent, const char *key, JsonNode *value)
{
  JsonArray *array;
  guint index = 0, length;

  if (JSON_NODE_HOLDS_OBJECT (parent))
    {
      json_object_set_member (json_node_get_object (parent), key, value);
      return;
    }
  /* JsonArray has no "replace": rotate the elements behind the new one. */
  array = json_node_get_array (parent);
  length = json_array_get_length (array);
  read_index (key, length, &index);
  for (guint i = 0; i < length; i++)
    {
      json_array_add_element (array, i == index ? value : json_array_dup_element (array, 0));
      json_array_remove_element (array, 0);
    }
}

/* ---- Objects whose keys exclude one another ---- */

static void
remove_other_members (JsonObject *object, const char *const *keep)
{
  g_autoptr (GList) members = json_object_get_members (object);

  for (GList *l = members; l; l = l->next)
    if (!g_strv_contains (keep, l->data))
      json_object_remove_member (object, l->data);
}

/* The legs of a course say how long, and how far round, in one way or the other. */
static void
remove_twin (JsonObject *leg, const char *key)
{
  static const char *const twins[][2] = { { "duration_s", "distance_m" },
                                          { "turn_deg", "turn_rate_deg_s" } };

  for (gsize i = 0; i < G_N_ELEMENTS (twins); i++)
    for (gsize j = 0; j < 2; j++)
      if (g_str_equal (key, twins[i][j]))
        json_object_remove_member (leg, twins[i][1 - j]);
}

/* Makes room for `key`: another law takes other keys along, and so on. */
static void
make_room (JsonObject *object, const char *parent_path, const char *key, JsonNode *value)
{
  if (g_str_equal (parent_path, "mainline.line_out"))
    remove_other_members (object, (const char *const[]){ NULL });
  else if (g_str_equal (parent_path, "pass.course"))
    remove_twin (object, key);
  else if (!g_str_equal (parent_path, "river.profile"))
    return;
  else if (g_str_equal (key, "bed_material"))
    json_object_remove_member (object, "roughness_m");
  else if (g_str_equal (key, "roughness_m"))
    json_object_remove_member (object, "bed_material");
  else if (g_str_equal (key, "law") && is_text (value)
           && g_strcmp0 (json_node_get_string (value),
                         json_object_get_string_member_with_default (object, "law", ""))
                  != 0)
    {
      remove_other_members (object, (const char *const[]){ NULL });
      if (g_str_equal (json_node_get_string (value), "power"))
        json_object_set_double_member (object, "exponent",
                                       lb_setup_default ().river.profile.exponent);
      else if (g_str_equal (json_node_get_string (value), "log"))
        json_object_set_string_member (object, "bed_material", "cobble");
    }
}

/* ---- The change ---- */

/* The text as JSON. As a bare word when it is none, or when a text stands in its place now: a title
 * may be "2"; but a date that is null is none. */
static JsonNode *
parse_value (const char *path, const char *text, JsonNode *now)
{
  g_autoptr (JsonNode) node = lb_strict_json_parse (text, strlen (text), LB_READER_DEEPEST, NULL);

  if (node
      && (is_text (node) || !is_text (now)
          || (JSON_NODE_HOLDS_NULL (node) && g_str_equal (path, "card.date"))))
    return g_steal_pointer (&node);
  return json_node_init_string (json_node_alloc (), text);
}

static gboolean
change_tree (JsonNode *tree, const char *path, const char *text, GError **error)
{
  g_auto (GStrv) keys = split_path (path);
  guint n = g_strv_length (keys);
  g_autoptr (JsonNode) value = NULL;
  JsonNode *parent = tree;
  g_autofree char *parent_path = NULL;

  if (!g_utf8_validate (path, -1, NULL) || !g_utf8_validate (text, -1, NULL))
    return fail (error, LB_FILE_ERROR_SYNTAX, "?", _ ("expected text in UTF-8"));
  if (n == 0 || *path == '\0')
    return fail (error, LB_FILE_ERROR_SYNTAX, "?", _ ("expected key=value"));
  for (guint i = 0; i + 1 < n; i++)
    {
      parent = child (parent, keys[i]);
      if (parent == NULL || !(JSON_NODE_HOLDS_OBJECT (parent) || JSON_NODE_HOLDS_ARRAY (parent)))
        return fail (error, LB_FILE_ERROR_UNKNOWN_KEY, path,
                     _ ("there is no such key in this rig"));
    }
  if (JSON_NODE_HOLDS_ARRAY (parent) && child (parent, keys[n - 1]) == NULL)
    return fail (error, LB_FILE_ERROR_UNKNOWN_KEY, path, _ ("there is no such key in this rig"));

  value = parse_value (path, text, child (parent, keys[n - 1]));
  if (JSON_NODE_HOLDS_OBJECT (parent) && n >= 2)
    {
      parent_path = g_strjoin (".", keys[0], n >= 3 ? keys[1] : NULL, NULL);
      make_room (json_node_get_object (parent), parent_path, keys[n - 1], value);
    }
  replace_child (parent, keys[n - 1], g_steal_pointer (&value));
  return TRUE;
}

static gboolean
change_once (JsonNode *tree, const char *change, GError **error)
{
  const char *equals = strchr (change, '=');
  g_autofree char *path = NULL;

  if (equals == NULL || equals == change)
    return fail (error, LB_FILE_ERROR_SYNTAX, change, _ ("expected key=value"));
  path = g_strstrip (g_strndup (change, (gsize) (equals - change)));
  return change_tree (tree, path, equals + 1, error);
}

gboolean
lb_reader_set_all (LbContents *contents, const char *const *changes, GError **error)
{
  gsize length;
  g_autofree char *text = lb_writer_to_full_text (contents, &length);
  g_autoptr (JsonNode) tree = lb_strict_json_parse (text, length, LB_READER_DEEPEST, error);

  if (tree == NULL)
    return FALSE;
  for (gsize i = 0; changes && changes[i]; i++)
    if (!change_once (tree, changes[i], error))
      return FALSE;
  return lb_reader_read_tree (tree, contents, error);
}

gboolean
lb_reader_set (LbContents *contents, const char *path, const char *value, GError **error)
{
  g_autofree char *change = g_strconcat (path, "=", value, NULL);
  const char *changes[] = { change, NULL };

  return lb_reader_set_all (contents, changes, error);
}
