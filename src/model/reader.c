/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reader.h"

#include <string.h>
#include <glib/gi18n-lib.h>

#include "card_file.h"
#include "fields.h"
#include "migrate.h"
#include "pass_file.h"
#include "read_plain.h"
#include "read_points.h"
#include "read_value.h"
#include "read_variants.h"
#include "reader_tree.h"
#include "strict_json.h"
#include "validate.h"

#define TOP LB_READER_TOP

typedef struct
{
  LbContents *contents;
  GError **error;
} Reader;

/* ---- Faults ---- */

static gboolean
fail_node (Reader *r, LbFileError code, const char *path, JsonNode *node, const char *expected)
{
  return lb_read_fail (r->error, code, path, node, expected);
}

static gboolean
fail_missing (Reader *r, const char *path, const char *expected)
{
  g_set_error (r->error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY, _ ("%s: missing, expected %s"),
               path, expected);
  return FALSE;
}

static gboolean
check_keys (Reader *r, JsonObject *object, const char *prefix, const char *shown_prefix)
{
  return lb_reader_check_keys (object, prefix, shown_prefix, &r->contents->setup, r->error);
}

/* ---- Single values ---- */

static gboolean
read_value (Reader *r, const LbField *field, size_t leader, JsonNode *node, const char *path)
{
  double value;

  if (!lb_read_value (field, node, path, &value, r->error))
    return FALSE;
  lb_field_set (field, &r->contents->setup, leader, value);
  return TRUE;
}

static gboolean
read_text (
    Reader *r, JsonNode *node, const char *path, gboolean one_line, glong longest, char **text)
{
  return lb_read_text (node, path, one_line, longest, text, r->error);
}

/* {"given_m": 5.5}, {"weight_above_bed_m": 0.1} or {"touching": true} */
static gboolean
read_line_out (Reader *r, JsonNode *node, const char *path)
{
  const LbField *mode = lb_field ("mainline.line_out");
  g_autofree char *one_of = lb_validate_expected (mode);
  g_autofree char *expected = g_strdup_printf (_ ("an object with one key, %s"), one_of);
  g_autoptr (GList) members = NULL;
  g_autofree char *key_path = NULL;
  JsonNode *value;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return fail_node (r, LB_FILE_ERROR_TYPE, path, node, expected);
  members = json_object_get_members (json_node_get_object (node));
  if (g_list_length (members) != 1)
    {
      g_autofree char *found = g_strdup_printf (_ ("%u keys"), g_list_length (members));
      return lb_validate_fail (r->error, LB_FILE_ERROR_TYPE, path, found, expected);
    }
  if (!lb_field_choice_named (mode, members->data))
    {
      g_autofree char *key = lb_validate_shown (members->data);
      g_set_error (r->error, LB_FILE_ERROR, LB_FILE_ERROR_UNKNOWN_KEY,
                   _ ("%s.%s: unknown key, expected one of %s"), path, key, one_of);
      return FALSE;
    }
  key_path = g_strconcat (path, ".", members->data, NULL);
  value = json_object_get_member (json_node_get_object (node), members->data);
  if (!g_str_equal (members->data, "touching"))
    return read_value (r, lb_field (key_path), 0, value, key_path);
  if (!JSON_NODE_HOLDS_VALUE (value) || json_node_get_value_type (value) != G_TYPE_BOOLEAN
      || !json_node_get_boolean (value))
    return fail_node (r, LB_FILE_ERROR_TYPE, key_path, value, "true");
  r->contents->setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_TOUCHING, 0 };
  return TRUE;
}

/* ---- Groups of fields ---- */

/* A field that does not stand in the file. */
static gboolean
leave_out (Reader *r, const LbField *field, size_t leader, const char *path)
{
  LbSetup *setup = &r->contents->setup;
  g_autofree char *expected = NULL;

  if (!lb_field_applies (field, setup))
    return TRUE;
  if (field->nullable)
    lb_field_set (field, setup, leader, LB_UNSET);
  if (!field->required)
    return TRUE;
  /* A surveyed bed brings its depths along. */
  if (field->offset == offsetof (LbSetup, river.depth) && setup->river.n_bed_points > 0)
    {
      setup->river.depth = setup->river.bed_depth[0];
      return TRUE;
    }
  expected = lb_validate_expected (field);
  return fail_missing (r, path, expected);
}

/* Reads the fields that stand directly in the object of `prefix`, in the order of the table, as
 * some decide whether later ones apply. */
static gboolean
read_fields (
    Reader *r, JsonObject *object, const char *prefix, const char *shown_prefix, size_t leader)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  for (size_t i = 0; i < n_fields; i++)
    {
      const char *key = lb_reader_key_of (&fields[i], prefix);
      g_autofree char *path = g_strconcat (shown_prefix, key, NULL);
      JsonNode *node = key ? json_object_get_member (object, key) : NULL;
      gboolean fine;

      if (key == NULL || (node && !lb_field_applies (&fields[i], &r->contents->setup)))
        continue;
      if (node == NULL)
        fine = leave_out (r, &fields[i], leader, path);
      else if (g_str_equal (fields[i].path, "mainline.line_out"))
        fine = read_line_out (r, node, path);
      else
        fine = read_value (r, &fields[i], leader, node, path);
      if (!fine)
        return FALSE;
    }
  return check_keys (r, object, prefix, shown_prefix);
}

/* The object `key` of `parent`, or NULL after a fault. */
static JsonObject *
get_object (Reader *r, JsonObject *parent, const char *key, const char *path)
{
  JsonNode *node = json_object_get_member (parent, key);

  if (node == NULL)
    fail_missing (r, path, _ ("an object"));
  else if (!JSON_NODE_HOLDS_OBJECT (node))
    fail_node (r, LB_FILE_ERROR_TYPE, path, node, _ ("an object"));
  else
    return json_node_get_object (node);
  return NULL;
}

static gboolean
read_group (Reader *r, JsonObject *parent, const char *key)
{
  g_autofree char *prefix = g_strconcat (key, ".", NULL);
  JsonObject *object = get_object (r, parent, key, key);

  return object && read_fields (r, object, prefix, prefix, 0);
}

/* A group that came after the first release: a file without it leaves all its values open. */
static gboolean
read_later_group (Reader *r, JsonObject *parent, const char *key)
{
  return !json_object_has_member (parent, key) || read_group (r, parent, key);
}

/* ---- River ---- */

static gboolean
read_profile (Reader *r, JsonObject *river)
{
  LbProfile *profile = &r->contents->setup.river.profile;
  JsonObject *object = get_object (r, river, "profile", "river.profile");
  JsonNode *points;

  if (object == NULL)
    return FALSE;
  profile->material = LB_BED_MATERIAL_NONE;
  if (!read_fields (r, object, "river.profile.", "river.profile.", 0))
    return FALSE;
  if (profile->law != LB_PROFILE_POINTS)
    return TRUE;
  points = json_object_get_member (object, "points");
  if (points == NULL)
    return fail_missing (r, "river.profile.points", _ ("a list of [height, speed] fractions"));
  return lb_read_points (points, "river.profile.points", LB_PROFILE_LEAST_POINTS,
                         LB_MAX_PROFILE_POINTS, profile->height_fraction, profile->speed_fraction,
                         &profile->n_points, r->error);
}

static gboolean
read_river (Reader *r, JsonObject *top)
{
  LbRiver *river = &r->contents->setup.river;
  JsonObject *object = get_object (r, top, "river", "river");
  JsonNode *bed = object ? json_object_get_member (object, "bed") : NULL;

  if (object == NULL)
    return FALSE;
  river->n_bed_points = 0;
  if (bed
      && !lb_read_points (bed, "river.bed", LB_BED_LEAST_POINTS, LB_MAX_BED_POINTS, river->bed_x,
                          river->bed_depth, &river->n_bed_points, r->error))
    return FALSE;
  return read_profile (r, object) && read_fields (r, object, "river.", "river.", 0);
}

/* ---- Leaders ---- */

static gboolean
read_leader (Reader *r, JsonNode *node, size_t leader)
{
  g_autofree char *path = g_strdup_printf ("leaders[%zu]", leader);
  g_autofree char *prefix = g_strconcat (path, ".", NULL);
  g_autofree char *lure_path = g_strconcat (prefix, "lure", NULL);
  g_autofree char *lure_prefix = g_strconcat (lure_path, ".", NULL);
  g_autofree char *name_path = g_strconcat (lure_prefix, "name", NULL);
  JsonObject *lure;
  JsonNode *name;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return fail_node (r, LB_FILE_ERROR_TYPE, path, node, _ ("an object"));
  if (!read_fields (r, json_node_get_object (node), "leaders[].", prefix, leader))
    return FALSE;
  lure = get_object (r, json_node_get_object (node), "lure", lure_path);
  if (lure == NULL)
    return FALSE;
  name = json_object_get_member (lure, "name");
  if (name == NULL)
    return fail_missing (r, name_path, _ ("a text"));
  return read_text (r, name, name_path, TRUE, LB_NAME_LONGEST, &r->contents->lure_names[leader])
         && read_fields (r, lure, "leaders[].lure.", lure_prefix, leader);
}

static gboolean
read_leaders (Reader *r, JsonObject *top)
{
  JsonNode *node = json_object_get_member (top, "leaders");
  g_autofree char *expected = g_strdup_printf (_ ("a list of at most %d leaders"), LB_MAX_LEADERS);
  JsonArray *array;

  if (node == NULL)
    return fail_missing (r, "leaders", expected);
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return fail_node (r, LB_FILE_ERROR_TYPE, "leaders", node, expected);
  array = json_node_get_array (node);
  if (json_array_get_length (array) > LB_MAX_LEADERS)
    {
      g_autofree char *found = g_strdup_printf (_ ("%u leaders"), json_array_get_length (array));
      return lb_validate_fail (r->error, LB_FILE_ERROR_RANGE, "leaders", found, expected);
    }
  r->contents->setup.rig.n_leaders = json_array_get_length (array);
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (!read_leader (r, json_array_get_element (array, i), i))
      return FALSE;
  return TRUE;
}

/* ---- All of it ---- */

static gboolean
read_words (Reader *r, JsonObject *top)
{
  JsonNode *title = json_object_get_member (top, "title");
  JsonNode *notes = json_object_get_member (top, "notes");

  if (title == NULL)
    return fail_missing (r, "title", _ ("a text"));
  if (!read_text (r, title, "title", TRUE, LB_TITLE_LONGEST, &r->contents->title))
    return FALSE;
  return notes == NULL
         || read_text (r, notes, "notes", FALSE, LB_NOTES_LONGEST, &r->contents->notes);
}

static gboolean
read_variants (Reader *r, JsonObject *top)
{
  JsonNode *node = json_object_get_member (top, "variants");

  return node == NULL || lb_read_variants (node, &r->contents->variants, r->error);
}

/* A file that says nothing of a card has the usual one. */
static gboolean
read_card (Reader *r, JsonObject *top)
{
  JsonNode *node = json_object_get_member (top, LB_CARD_KEY);

  return node == NULL || lb_card_read (node, &r->contents->card, r->error);
}

/* The same for a pass. */
static gboolean
read_pass (Reader *r, JsonObject *top)
{
  JsonNode *node = json_object_get_member (top, LB_PASS_KEY);

  return node == NULL || lb_pass_read (node, &r->contents->pass, r->error);
}

gboolean
lb_reader_read_tree (JsonNode *tree, LbContents *contents, GError **error)
{
  g_autoptr (LbContents) fresh = lb_contents_new ();
  Reader r = { .contents = fresh, .error = error };
  JsonObject *top;

  if (!JSON_NODE_HOLDS_OBJECT (tree))
    return fail_node (&r, LB_FILE_ERROR_TYPE, _ ("the file"), tree, _ ("an object"));
  top = json_node_get_object (tree);
  if (!lb_migrate (top, error) || !check_keys (&r, top, TOP, TOP) || !read_words (&r, top)
      || !read_river (&r, top) || !read_group (&r, top, "boat") || !read_group (&r, top, "mainline")
      || !read_group (&r, top, "shank") || !read_group (&r, top, "weight")
      || !read_leaders (&r, top) || !read_group (&r, top, "band")
      || !read_later_group (&r, top, "rules") || !read_variants (&r, top) || !read_card (&r, top)
      || !read_pass (&r, top) || !lb_setup_validate (&fresh->setup, error))
    return FALSE;
  lb_contents_copy (contents, fresh);
  return TRUE;
}

gboolean
lb_reader_parse (const char *text, gssize length, LbContents *contents, GError **error)
{
  gsize size = length < 0 ? strlen (text) : (gsize) length;
  g_autoptr (JsonNode) tree = NULL;

  if (size > LB_READER_LARGEST_FILE)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_TOO_LARGE,
                   _ ("found %zu bytes, expected at most %d"), size, LB_READER_LARGEST_FILE);
      return FALSE;
    }
  tree = lb_strict_json_parse (text, size, LB_READER_DEEPEST, error);
  return tree && lb_reader_read_tree (tree, contents, error);
}
