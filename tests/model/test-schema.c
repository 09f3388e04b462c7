/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The JSON Schema in data/ and the table of fields say the same: keys, types, limits, what is
 * required, what may be null. (Whether the schema accepts and refuses the files that it should is
 * checked by "schema-files".) */
#include "model-support.h"

#include <string.h>
#include <json-glib/json-glib.h>

#include "card.h"
#include "pass_script.h"
#include "data_path.h"

typedef struct
{
  JsonParser *parser;
  JsonObject *top;
  GHashTable *seen; /* paths of the fields that were found */
} Schema;

static int
set_up (void **state)
{
  Schema *schema = g_new0 (Schema, 1);
  g_autofree char *path = lb_data_path ("rig.schema.json");

  schema->parser = json_parser_new ();
  assert_true (json_parser_load_from_file (schema->parser, path, NULL));
  schema->top = json_node_get_object (json_parser_get_root (schema->parser));
  schema->seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  *state = schema;
  return 0;
}

static int
tear_down (void **state)
{
  Schema *schema = *state;

  g_hash_table_unref (schema->seen);
  g_object_unref (schema->parser);
  g_free (schema);
  return 0;
}

/* Follows "$ref": "#/$defs/NAME". */
static JsonObject *
resolve (const Schema *schema, JsonObject *object)
{
  static const char start[] = "#/$defs/";
  const char *ref = json_object_get_string_member_with_default (object, "$ref", NULL);

  if (ref == NULL)
    return object;
  assert_true (g_str_has_prefix (ref, start));
  object = json_object_get_object_member (json_object_get_object_member (schema->top, "$defs"),
                                          ref + strlen (start));
  assert_non_null (object);
  return object;
}

static bool
list_has (JsonObject *object, const char *list, const char *word)
{
  JsonArray *array =
      json_object_has_member (object, list) ? json_object_get_array_member (object, list) : NULL;

  for (guint i = 0; array && i < json_array_get_length (array); i++)
    if (g_str_equal (json_array_get_string_element (array, i), word))
      return true;
  return false;
}

/* ---- One property against one field ---- */

static void
check_number (const LbField *field, JsonObject *property, const char *path)
{
  JsonNode *type = json_object_get_member (property, "type");
  const char *number = field->whole ? "integer" : "number";

  assert_non_null (type);
  if (field->nullable)
    assert_true (list_has (property, "type", number) && list_has (property, "type", "null"));
  else
    assert_string_equal (json_node_get_string (type), number);
  if (json_object_get_double_member (property, "minimum") != field->minimum
      || json_object_get_double_member (property, "maximum") != field->maximum)
    fail_msg ("%s: the limits differ", path);
}

static void
check_choice (const LbField *field, JsonObject *property, const char *path)
{
  guint n = 0;

  for (size_t i = 0; i < field->n_choices; i++)
    if (field->choices[i].name)
      {
        n++;
        if (!list_has (property, "enum", field->choices[i].name))
          fail_msg ("%s: %s is not in the schema", path, field->choices[i].name);
      }
  assert_int_equal (json_array_get_length (json_object_get_array_member (property, "enum")), n);
}

/* Keys that are no field of their own. */
static const char *const other_paths[] = {
  "format",
  "version",
  "title",
  "notes",
  "river.bed",
  "river.profile.law",
  "river.profile.points",
  "mainline.line_out.touching",
  "leaders[].lure.name",
  "variants",
  NULL,
};

static void
check_property (
    Schema *schema, JsonObject *parent, const char *key, JsonObject *property, const char *path)
{
  const LbField *field = lb_field_find (path, NULL);
  bool required = list_has (parent, "required", key);

  if (g_strv_contains (other_paths, path))
    {
      g_hash_table_add (schema->seen, g_strdup (path));
      return;
    }
  if (field == NULL)
    fail_msg ("%s is in the schema and not in the table", path);
  g_hash_table_add (schema->seen, g_strdup (path));
  if (field->kind == LB_FIELD_NUMBER)
    check_number (field, property, path);
  else
    check_choice (field, property, path);
  /* A bed may stand for the depth; one of the ways of line_out is chosen; a law's material or its
   * roughness. */
  if (g_str_equal (path, "river.depth_m") || g_str_has_prefix (path, "mainline.line_out.")
      || g_str_equal (path, "river.profile.bed_material"))
    return;
  if (required != field->required)
    fail_msg ("%s: required %d in the schema, %d in the table", path, required, field->required);
}

/* ---- The walk ---- */

static void walk (Schema *schema, JsonObject *object, const char *path);

static void
walk_property (Schema *schema, JsonObject *parent, const char *key, const char *path)
{
  JsonObject *property = resolve (
      schema,
      json_object_get_object_member (json_object_get_object_member (parent, "properties"), key));
  const char *type = json_object_has_member (property, "type")
                             && JSON_NODE_HOLDS_VALUE (json_object_get_member (property, "type"))
                         ? json_object_get_string_member (property, "type")
                         : "";

  if (g_str_equal (path, "card") || g_str_equal (path, "pass"))
    return; /* no fields: see below */
  if (g_str_equal (type, "object") || json_object_has_member (property, "oneOf"))
    walk (schema, property, path);
  else if (g_str_equal (path, "leaders"))
    {
      assert_int_equal (json_object_get_int_member (property, "maxItems"), LB_MAX_LEADERS);
      walk (schema, resolve (schema, json_object_get_object_member (property, "items")),
            "leaders[]");
    }
  else
    check_property (schema, parent, key, property, path);
}

/* Every object of the schema is closed: what it does not name is not allowed. */
static void
walk (Schema *schema, JsonObject *object, const char *path)
{
  g_autoptr (GList) keys = NULL;

  if (json_object_has_member (object, "oneOf"))
    {
      JsonArray *ways = json_object_get_array_member (object, "oneOf");
      for (guint i = 0; i < json_array_get_length (ways); i++)
        walk (schema, json_array_get_object_element (ways, i), path);
      return;
    }
  assert_string_equal (json_object_get_string_member (object, "type"), "object");
  assert_true (json_object_has_member (object, "additionalProperties"));
  assert_false (json_object_get_boolean_member (object, "additionalProperties"));
  keys = json_object_get_members (json_object_get_object_member (object, "properties"));
  for (GList *l = keys; l; l = l->next)
    {
      g_autofree char *inner = *path ? g_strconcat (path, ".", l->data, NULL) : g_strdup (l->data);
      walk_property (schema, object, l->data, inner);
    }
}

static void
the_schema_says_what_the_table_says (void **state)
{
  Schema *schema = *state;
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  walk (schema, schema->top, "");
  for (size_t i = 0; i < n_fields; i++)
    if (!g_hash_table_contains (schema->seen, fields[i].path)
        && !g_str_equal (fields[i].path, "mainline.line_out"))
      fail_msg ("%s is in the table and not in the schema", fields[i].path);
  for (size_t i = 0; other_paths[i]; i++)
    if (!g_hash_table_contains (schema->seen, other_paths[i]))
      fail_msg ("%s is not in the schema", other_paths[i]);
}

static void
limits_of_lists_and_words_agree (void **state)
{
  Schema *schema = *state;
  JsonObject *defs = json_object_get_object_member (schema->top, "$defs");
  JsonObject *words = json_object_get_object_member (schema->top, "properties");
  JsonObject *river =
      json_object_get_object_member (json_object_get_object_member (defs, "river"), "properties");
  JsonObject *bed = json_object_get_object_member (river, "bed");

  assert_int_equal (json_object_get_int_member (bed, "maxItems"), LB_MAX_BED_POINTS);
  assert_int_equal (
      json_object_get_int_member (json_object_get_object_member (words, "title"), "maxLength"),
      LB_TITLE_LONGEST);
  assert_int_equal (
      json_object_get_int_member (json_object_get_object_member (words, "notes"), "maxLength"),
      LB_NOTES_LONGEST);
}

/* ---- Variants ---- */

/* What "#/a/b/0" points to. */
static JsonNode *
node_at (const Schema *schema, const char *pointer)
{
  g_auto (GStrv) keys = g_strsplit (pointer, "/", -1);
  JsonNode *node = json_parser_get_root (schema->parser);

  for (char **key = keys + 1; *key; key++)
    {
      node = JSON_NODE_HOLDS_ARRAY (node)
                 ? json_array_get_element (json_node_get_array (node), (guint) atoi (*key))
                 : json_object_get_member (json_node_get_object (node), *key);
      if (node == NULL)
        fail_msg ("%s points nowhere", pointer);
    }
  return node;
}

/* The property of a variant's "set" for `path`, or NULL. */
static JsonObject *
override_property (JsonObject *set, const char *path)
{
  JsonObject *patterns = json_object_get_object_member (set, "patternProperties");
  JsonObject *plain = json_object_get_object_member (set, "properties");
  g_autoptr (GList) keys = json_object_get_members (patterns);

  if (json_object_has_member (plain, path))
    return json_object_get_object_member (plain, path);
  for (GList *l = keys; l; l = l->next)
    if (g_regex_match_simple (l->data, path, 0, 0))
      return json_object_get_object_member (patterns, l->data);
  return NULL;
}

static void
variants_may_replace_every_field (void **state)
{
  Schema *schema = *state;
  JsonObject *set = json_node_get_object (node_at (schema, "#/$defs/variant_set"));
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  assert_false (json_object_get_boolean_member (set, "additionalProperties"));
  assert_int_equal (json_object_get_int_member (set, "maxProperties"), LB_MAX_OVERRIDES);
  assert_null (override_property (set, "mainline.line_out"));
  assert_null (override_property (set, "leaders[8].length_m"));
  assert_non_null (override_property (set, "mainline.line_out.touching"));
  for (size_t i = 0; i < n_fields; i++)
    for (size_t leader = 0; leader < (fields[i].stride ? LB_MAX_LEADERS : 1); leader++)
      {
        g_autofree char *path = lb_field_full_path (&fields[i], leader);
        JsonObject *property = override_property (set, path);

        if (g_str_equal (path, "mainline.line_out"))
          continue;
        if (property == NULL)
          fail_msg ("a variant may replace %s, by the table alone", path);
        while (json_object_has_member (property, "$ref"))
          property = json_node_get_object (
              node_at (schema, json_object_get_string_member (property, "$ref")));
        if (fields[i].kind == LB_FIELD_NUMBER)
          check_number (&fields[i], property, path);
        else
          check_choice (&fields[i], property, path);
      }
}

static void
limits_of_variants_agree (void **state)
{
  Schema *schema = *state;
  JsonObject *list = json_node_get_object (node_at (schema, "#/properties/variants"));
  JsonObject *name =
      json_node_get_object (node_at (schema, "#/properties/variants/items/properties/name"));

  assert_int_equal (json_object_get_int_member (list, "maxItems"), LB_MAX_VARIANTS);
  assert_int_equal (json_object_get_int_member (name, "maxLength"), LB_VARIANT_NAME_LONGEST);
}

/* ---- The card ---- */

static JsonObject *
property_of (Schema *schema, JsonObject *object, const char *key)
{
  return resolve (schema, json_object_get_object_member (
                              json_object_get_object_member (object, "properties"), key));
}

static void
assert_limits (JsonObject *property, double minimum, double maximum)
{
  assert_true (json_object_get_double_member (property, "minimum") == minimum);
  assert_true (json_object_get_double_member (property, "maximum") == maximum);
}

static void
assert_words (JsonObject *property, const char *(*name) (int), int n)
{
  JsonArray *words = json_object_get_array_member (property, "enum");

  assert_int_equal (json_array_get_length (words), n);
  for (int i = 0; i < n; i++)
    assert_string_equal (json_array_get_string_element (words, (guint) i), name (i));
}

static void
assert_keys (JsonObject *object, const char *(*name) (int), int n)
{
  JsonObject *properties = json_object_get_object_member (object, "properties");

  assert_int_equal (json_object_get_size (properties), n);
  for (int i = 0; i < n; i++)
    assert_true (json_object_has_member (properties, name (i)));
}

static const char *
size_name (int i)
{
  return lb_card_size_name ((LbCardSize) i);
}

static const char *
sheet_name (int i)
{
  return lb_card_sheet_name ((LbCardSheet) i);
}

static const char *
part_name (int i)
{
  return lb_card_part_name ((LbCardPart) i);
}

static const char *
joint_name (int i)
{
  return lb_card_joint_name ((LbCardJoint) i);
}

static void
check_series (JsonObject *series, LbCardSeriesOf of)
{
  JsonArray *ways = json_object_get_array_member (series, "oneOf");
  JsonObject *list = json_array_get_object_element (ways, 1);
  JsonObject *steps =
      json_object_get_object_member (json_array_get_object_element (ways, 2), "properties");
  double least = lb_card_series_least (of), most = lb_card_series_most (of);

  assert_int_equal (json_object_get_int_member (list, "maxItems"), LB_CARD_MOST_VALUES);
  assert_limits (json_object_get_object_member (list, "items"), least, most);
  assert_limits (json_object_get_object_member (steps, "from"), least, most);
  assert_limits (json_object_get_object_member (steps, "to"), least, most);
  assert_limits (json_object_get_object_member (steps, "step"), LB_CARD_LEAST_STEP, most);
}

static void
the_card_has_the_same_limits (void **state)
{
  Schema *schema = *state;
  JsonObject *card = property_of (schema, schema->top, "card");
  JsonObject *terminations = property_of (schema, card, "terminations");
  JsonObject *hardware = property_of (schema, card, "hardware");
  JsonObject *piece = json_object_get_object_member (hardware, "items");

  assert_words (property_of (schema, card, "size"), size_name, LB_N_CARD_SIZES);
  assert_words (property_of (schema, card, "sheet"), sheet_name, LB_N_CARD_SHEETS);
  assert_keys (property_of (schema, card, "prints"), part_name, LB_N_CARD_PARTS);
  assert_keys (terminations, joint_name, LB_N_CARD_JOINTS);
  assert_limits (property_of (schema, card, "width_m"), LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE);
  assert_limits (property_of (schema, card, "height_m"), LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE);
  assert_limits (
      property_of (schema, property_of (schema, terminations, "leader_to_lure"), "allowance_m"), 0,
      LB_CARD_MOST_ALLOWANCE);
  assert_int_equal (json_object_get_int_member (hardware, "maxItems"), LB_CARD_MOST_HARDWARE);
  assert_limits (property_of (schema, piece, "count"), 1, LB_CARD_MOST_COUNT);
  assert_int_equal (json_object_get_int_member (property_of (schema, piece, "what"), "maxLength"),
                    LB_CARD_WORDS_LONGEST);
  check_series (property_of (schema, card, "depths_m"), LB_CARD_SERIES_OF_DEPTHS);
  check_series (property_of (schema, card, "currents_m_s"), LB_CARD_SERIES_OF_CURRENTS);
}

/* ---- The pass ---- */

static const char *
motion_name (int i)
{
  return lb_hand_motion_name ((LbHandMotion) i);
}

static void
the_pass_has_the_same_limits (void **state)
{
  Schema *schema = *state;
  JsonObject *pass = property_of (schema, schema->top, "pass");
  JsonObject *course = property_of (schema, pass, "course");
  JsonObject *leg = resolve (schema, json_object_get_object_member (course, "items"));
  JsonObject *hand = property_of (schema, pass, "hand");

  assert_int_equal (json_object_get_int_member (course, "maxItems"), LB_MAX_COURSE_LEGS);
  assert_words (property_of (schema, hand, "motion"), motion_name, LB_N_HAND_MOTIONS);
  assert_limits (property_of (schema, hand, "stroke_m"), LB_HAND_LEAST_STROKE, LB_HAND_MOST_STROKE);
  assert_limits (property_of (schema, hand, "period_s"), LB_HAND_LEAST_PERIOD, LB_HAND_MOST_PERIOD);
  assert_limits (property_of (schema, pass, "duration_s"), LB_PASS_SHORTEST, LB_PASS_LONGEST);
  assert_limits (property_of (schema, pass, "start_m"), -LB_PASS_FARTHEST_START,
                 LB_PASS_FARTHEST_START);
  assert_limits (property_of (schema, pass, "tangle_warning_m"), 0, LB_PASS_MOST_TANGLE);
  assert_limits (property_of (schema, pass, "second_weight_kg"), LB_SECOND_LEAST_WEIGHT,
                 LB_SECOND_MOST_WEIGHT);
  assert_limits (property_of (schema, pass, "reels_apart_m"), LB_REELS_LEAST_APART,
                 LB_REELS_MOST_APART);
  assert_limits (property_of (schema, leg, "duration_s"), LB_PASS_SHORTEST, LB_PASS_LONGEST);
  assert_limits (property_of (schema, leg, "distance_m"), LB_LEG_LEAST_DISTANCE,
                 LB_LEG_MOST_DISTANCE);
  assert_limits (property_of (schema, leg, "speed_over_ground_m_s"), 0, LB_LEG_MOST_SPEED);
  assert_limits (property_of (schema, leg, "turn_deg"), -LB_LEG_MOST_TURN, LB_LEG_MOST_TURN);
  assert_limits (property_of (schema, leg, "turn_rate_deg_s"), -LB_LEG_MOST_TURN_RATE,
                 LB_LEG_MOST_TURN_RATE);
  assert_limits (property_of (schema, leg, "line_rate_m_s"), -LB_LEG_MOST_LINE_RATE,
                 LB_LEG_MOST_LINE_RATE);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (the_schema_says_what_the_table_says, set_up, tear_down),
    cmocka_unit_test_setup_teardown (limits_of_lists_and_words_agree, set_up, tear_down),
    cmocka_unit_test_setup_teardown (variants_may_replace_every_field, set_up, tear_down),
    cmocka_unit_test_setup_teardown (limits_of_variants_agree, set_up, tear_down),
    cmocka_unit_test_setup_teardown (the_card_has_the_same_limits, set_up, tear_down),
    cmocka_unit_test_setup_teardown (the_pass_has_the_same_limits, set_up, tear_down),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
