/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_private.h"

#include <string.h>
#include <glib/gi18n-lib.h>

#include "catalogue_words.h"
#include "contents.h"
#include "fields.h"
#include "strict_json.h"
#include "validate.h"

#define DEEPEST 6

/* Reads values of one entry; after the first fault all reads do nothing. */
typedef struct
{
  JsonObject *sources;
  JsonObject *entry;
  char *path; /* of the entry: "weights[3]" */
  gboolean own;
  GError **error;
  gboolean failed;
} Entry;

/* ---- Values ---- */

static void
fail (Entry *e, const char *key, const char *expected)
{
  if (!e->failed)
    g_set_error (e->error, LB_FILE_ERROR, LB_FILE_ERROR_TYPE, _ ("catalogue: %s.%s: expected %s"),
                 e->path, key, expected);
  e->failed = TRUE;
}

static JsonNode *
value_of (Entry *e, const char *key, GType type)
{
  JsonNode *node = json_object_get_member (e->entry, key);

  return node && JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type ? node
                                                                                         : NULL;
}

static const char *
read_text (Entry *e, const char *key)
{
  JsonNode *node = value_of (e, key, G_TYPE_STRING);

  if (node)
    return json_node_get_string (node);
  fail (e, key, _ ("a text"));
  return "";
}

static gboolean
is_null (Entry *e, const char *key)
{
  JsonNode *node = json_object_get_member (e->entry, key);
  return node && JSON_NODE_HOLDS_NULL (node);
}

/* A number that may stand in the rig's field of `path`. */
static double
read_number (Entry *e, const char *key, const char *path)
{
  const LbField *field = lb_field (path);
  JsonNode *node = value_of (e, key, G_TYPE_DOUBLE);
  double value = node ? json_node_get_double (node) : LB_UNSET;

  if (!(node || is_null (e, key)) || !lb_field_accepts (field, value))
    {
      g_autofree char *expected = lb_validate_expected (field);
      fail (e, key, expected);
    }
  return value;
}

/* [low, ..., high], rising, each within the rig's field of `path`. */
static void
read_rising (Entry *e, const char *key, const char *path, double *values, guint n)
{
  const LbField *field = lb_field (path);
  JsonNode *node = json_object_get_member (e->entry, key);
  JsonArray *array = node && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  gboolean fine = array && json_array_get_length (array) == n;

  for (guint i = 0; fine && i < n; i++)
    {
      JsonNode *element = json_array_get_element (array, i);
      fine = JSON_NODE_HOLDS_VALUE (element) && json_node_get_value_type (element) == G_TYPE_DOUBLE;
      values[i] = fine ? json_node_get_double (element) : LB_UNSET;
      fine = fine && lb_field_accepts (field, values[i]) && (i == 0 || values[i] >= values[i - 1]);
    }
  if (!fine)
    fail (e, key, _ ("a list of rising numbers in range"));
}

static LbCatalogueRange
read_range (Entry *e, const char *key, const char *path)
{
  double values[3] = { 0 };

  read_rising (e, key, path, values, G_N_ELEMENTS (values));
  return (LbCatalogueRange){ values[0], values[1], values[2] };
}

static char *
read_source (Entry *e)
{
  const char *name, *source;

  if (e->own)
    return g_strdup (_ ("Your own values."));
  name = read_text (e, "source");
  source = json_object_get_string_member_with_default (e->sources, name, NULL);
  if (source == NULL)
    fail (e, "source", _ ("one of the sources"));
  return g_strdup (source ? _ (source) : "");
}

/* The name that the user gave. */
static char *
read_own_name (Entry *e)
{
  const char *name = read_text (e, "name");

  if (!e->failed && (*name == '\0' || !lb_text_is_one_line (name)))
    fail (e, "name", _ ("a name of one line"));
  return g_strdup (name);
}

/* ---- Entries ---- */

static void *
read_weight (Entry *e)
{
  LbCatalogueWeight *part = g_new0 (LbCatalogueWeight, 1);
  const LbFieldChoice *shape =
      lb_field_choice_named (lb_field ("weight.shape"), read_text (e, "shape"));

  if (shape == NULL)
    fail (e, "shape", _ ("the shape of a weight"));
  part->id = g_strdup (read_text (e, "id"));
  part->weight.shape = shape ? (LbWeightShape) shape->value : LB_WEIGHT_BALL;
  part->weight.mass = read_number (e, "mass_kg", "weight.mass_kg");
  part->weight.density = read_number (e, "density_kg_m3", "weight.density_kg_m3");
  part->weight.drag_coefficient = read_number (e, "drag_coefficient", "weight.drag_coefficient");
  part->is_own = e->own;
  part->source = read_source (e);
  part->name = e->own ? read_own_name (e)
                      : lb_catalogue_words_weight (read_text (e, "material"), part->weight.shape,
                                                   read_text (e, "size"));
  if (part->name == NULL)
    fail (e, "material", _ ("the material of a weight"));
  return part;
}

static guint
read_uses (Entry *e)
{
  static const char *const names[] = { "mainline", "shank", "leader" };
  JsonNode *node = json_object_get_member (e->entry, "uses");
  JsonArray *array = node && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  guint uses = 0;

  for (guint i = 0; array && i < json_array_get_length (array); i++)
    {
      JsonNode *element = json_array_get_element (array, i);
      for (guint j = 0; j < G_N_ELEMENTS (names); j++)
        if (JSON_NODE_HOLDS_VALUE (element)
            && g_strcmp0 (json_node_get_string (element), names[j]) == 0)
          uses |= 1u << j;
    }
  if (uses == 0)
    fail (e, "uses", _ ("a list of mainline, shank or leader"));
  return uses;
}

static void
read_line_names (Entry *e, LbCatalogueLine *part)
{
  const char *material = e->own ? NULL : read_text (e, "material");
  double diameter = part->line.diameter;

  if (e->own)
    {
      part->name = read_own_name (e);
      return;
    }
  part->name = lb_catalogue_words_line (material, diameter, LB_UNITS_METRIC);
  part->us_name = lb_catalogue_words_line (material, diameter, LB_UNITS_US);
}

static void *
read_line (Entry *e)
{
  LbCatalogueLine *part = g_new0 (LbCatalogueLine, 1);
  double load[2] = { 0 };

  part->id = g_strdup (read_text (e, "id"));
  part->line = lb_setup_default ().rig.mainline;
  part->line.diameter = read_number (e, "diameter_m", "mainline.diameter_m");
  part->line.density = read_number (e, "density_kg_m3", "mainline.density_kg_m3");
  part->line.axial_stiffness = read_number (e, "axial_stiffness_n", "mainline.axial_stiffness_n");
  if (e->own && is_null (e, "breaking_load_n"))
    load[0] = load[1] = LB_UNSET;
  else
    read_rising (e, "breaking_load_n", "mainline.breaking_load_n", load, G_N_ELEMENTS (load));
  part->line.breaking_load = load[0];
  part->breaking_load_high = load[1];
  part->uses = read_uses (e);
  part->is_own = e->own;
  part->source = read_source (e);
  read_line_names (e, part);
  if (part->name == NULL)
    fail (e, "material", _ ("the material of a line"));
  return part;
}

static void *
read_lure (Entry *e)
{
  LbCatalogueLure *part = g_new0 (LbCatalogueLure, 1);
  LbLure *lure = &part->lure;

  part->id = g_strdup (read_text (e, "id"));
  part->drag_area = read_range (e, "drag_area_m2", "leaders[].lure.drag_area_m2");
  part->down_force_ratio = read_range (e, "down_force_ratio", "leaders[].lure.down_force_ratio");
  part->buoyancy = read_range (e, "buoyancy_n", "leaders[].lure.buoyancy_n");
  part->mass = read_range (e, "mass_kg", "leaders[].lure.mass_kg");
  *lure = lb_setup_default ().rig.leaders[0].lure;
  lure->drag_area = part->drag_area.value;
  lure->down_force_ratio = part->down_force_ratio.value;
  lure->buoyancy = part->buoyancy.value;
  lure->mass = part->mass.value;
  lure->length = read_number (e, "length_m", "leaders[].lure.length_m");
  if (e->own)
    lure->hooks = read_number (e, "hooks", "leaders[].lure.hooks");
  part->is_own = e->own;
  part->source = read_source (e);
  part->name =
      e->own ? read_own_name (e) : lb_catalogue_words_lure (read_text (e, "lip"), lure->length);
  if (part->name == NULL)
    fail (e, "lip", _ ("the lip of a lure"));
  return part;
}

/* ---- Lists ---- */

static gboolean
read_list (JsonObject *top,
           const char *key,
           void *(*read_entry) (Entry *),
           GPtrArray *list,
           gboolean own,
           GError **error)
{
  JsonArray *array =
      json_object_has_member (top, key) ? json_object_get_array_member (top, key) : NULL;

  for (guint i = 0; array && i < json_array_get_length (array); i++)
    {
      JsonNode *node = json_array_get_element (array, i);
      g_autofree char *path = g_strdup_printf ("%s[%u]", key, i);
      Entry entry = { .sources = own ? NULL : json_object_get_object_member (top, "sources"),
                      .path = path,
                      .own = own,
                      .error = error };

      if (!JSON_NODE_HOLDS_OBJECT (node))
        break;
      entry.entry = json_node_get_object (node);
      g_ptr_array_add (list, read_entry (&entry));
      if (entry.failed)
        return FALSE;
    }
  if (array && (list->len > 0 || own) && list->len == json_array_get_length (array))
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_TYPE,
               _ ("catalogue: %s: expected a list of objects"), key);
  return FALSE;
}

static gboolean
check_top (JsonNode *tree, gboolean own, GError **error)
{
  static const char *const lists[] = { "weights", "lines", "lures" };
  JsonObject *top = JSON_NODE_HOLDS_OBJECT (tree) ? json_node_get_object (tree) : NULL;
  JsonNode *sources = top ? json_object_get_member (top, "sources") : NULL;
  gboolean fine = own ? top != NULL : sources && JSON_NODE_HOLDS_OBJECT (sources);

  for (size_t i = 0; fine && i < G_N_ELEMENTS (lists); i++)
    {
      JsonNode *list = json_object_get_member (top, lists[i]);
      fine = list && JSON_NODE_HOLDS_ARRAY (list);
    }
  if (!fine)
    g_set_error_literal (
        error, LB_FILE_ERROR, LB_FILE_ERROR_TYPE,
        own ? _ ("catalogue: expected an object with weights, lines and lures")
            : _ ("catalogue: expected an object with sources, weights, lines and lures"));
  return fine;
}

/* A catalogue of a later version may hold what this program would lose when it writes. */
static gboolean
check_format (JsonObject *top, GError **error)
{
  JsonNode *format = json_object_get_member (top, "format");
  JsonNode *version = json_object_get_member (top, "version");

  if (format && version && JSON_NODE_HOLDS_VALUE (format) && JSON_NODE_HOLDS_VALUE (version)
      && g_strcmp0 (json_node_get_string (format), LB_CATALOGUE_FORMAT) == 0
      && json_node_get_double (version) == LB_CATALOGUE_VERSION)
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_VERSION,
               _ ("catalogue: expected the format \"%s\", version %d"), LB_CATALOGUE_FORMAT,
               LB_CATALOGUE_VERSION);
  return FALSE;
}

static LbCatalogue *
parse (const char *text, gssize length, gboolean own, GError **error)
{
  gsize size = length < 0 ? strlen (text) : (gsize) length;
  g_autoptr (JsonNode) tree = lb_strict_json_parse (text, size, DEEPEST, error);
  g_autoptr (LbCatalogue) catalogue = lb_catalogue_new ();
  JsonObject *top;

  if (tree == NULL || !check_top (tree, own, error))
    return NULL;
  top = json_node_get_object (tree);
  if (!check_format (top, error)
      || !read_list (top, "weights", read_weight, catalogue->weights, own, error)
      || !read_list (top, "lines", read_line, catalogue->lines, own, error)
      || !read_list (top, "lures", read_lure, catalogue->lures, own, error))
    return NULL;
  return g_steal_pointer (&catalogue);
}

LbCatalogue *
lb_catalogue_parse (const char *text, gssize length, GError **error)
{
  return parse (text, length, FALSE, error);
}

LbCatalogue *
lb_catalogue_parse_own (const char *text, gssize length, GError **error)
{
  return parse (text, length, TRUE, error);
}
