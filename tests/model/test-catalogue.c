/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The catalogue that comes with the program, and damaged ones. */
#include "model-support.h"

#include <string.h>

#include "catalogue_match.h"
#include "catalogue_words.h"
#include "data_path.h"
#include "document.h"
#include "reader.h"

static LbCatalogue *
load (void)
{
  g_autoptr (GError) error = NULL;
  LbCatalogue *catalogue = lb_catalogue_load (&error);

  if (catalogue == NULL)
    fail_msg ("%s", error->message);
  return catalogue;
}

/* A trade list: what must be there. */
static void
the_agreed_weights_are_there (void **state)
{
  static const double pounds[] = { 1, 1.25, 1.5, 1.75, 2, 2.5, 3 };
  static const char *const shapes[] = { "ball", "pear", "torpedo", "disc" };
  g_autoptr (LbCatalogue) catalogue = load ();

  for (size_t i = 0; i < G_N_ELEMENTS (pounds); i++)
    for (size_t j = 0; j < G_N_ELEMENTS (shapes); j++)
      {
        g_autofree char *id = g_strdup_printf ("lead-%s-%g-lb", shapes[j], pounds[i]);
        const LbCatalogueWeight *part = lb_catalogue_find_weight (catalogue, id);

        if (part == NULL)
          fail_msg ("%s is missing", id);
        /* The international pound of 1959 is 0.45359237 kg by definition. */
        assert_relative (part->weight.mass, pounds[i] * 0.45359237, 2e-4);
        assert_true (part->weight.density == 11340);
        assert_int_equal (part->weight.shape, j);
        assert_non_null (strstr (part->name, "lead"));
      }
  assert_non_null (lb_catalogue_find_weight (catalogue, "tungsten-ball-2-lb"));
  assert_null (lb_catalogue_find_weight (catalogue, "lead-ball-9-lb"));
}

/* Least tensile strengths, ksi, of hard-drawn stainless wire by diameter, in: a supplier's copy of
 * ASTM A313 (the standard itself was not read), on the area of the wire. */
static void
wires_break_where_the_table_says (void **state)
{
  static const struct
  {
    double inches, least, most;
  } table[] = { { 0.009, 325, 355 }, { 0.012, 316, 346 }, { 0.015, 310, 340 }, { 0.020, 300, 330 },
                { 0.024, 292, 322 }, { 0.028, 289, 318 }, { 0.034, 282, 310 } };
  const double ksi = 6.894757e6;
  g_autoptr (LbCatalogue) catalogue = load ();
  size_t n = 0;

  for (guint i = 0; i < catalogue->lines->len; i++)
    {
      const LbCatalogueLine *part = g_ptr_array_index (catalogue->lines, i);
      double area = G_PI / 4 * part->line.diameter * part->line.diameter;

      for (size_t j = 0; j < G_N_ELEMENTS (table); j++)
        if (g_str_has_prefix (part->id, "wire-")
            && fabs (part->line.diameter - table[j].inches * 0.0254) < 1e-6)
          {
            assert_relative (part->line.breaking_load, table[j].least * ksi * area, 0.006);
            assert_relative (part->breaking_load_high, table[j].most * ksi * area, 0.006);
            n++;
          }
    }
  assert_int_equal (n, G_N_ELEMENTS (table));
}

static void
lines_are_what_their_material_is (void **state)
{
  g_autoptr (LbCatalogue) catalogue = load ();
  guint uses = 0;

  for (guint i = 0; i < catalogue->lines->len; i++)
    {
      const LbCatalogueLine *part = g_ptr_array_index (catalogue->lines, i);
      double strength =
          part->line.breaking_load / (G_PI / 4 * part->line.diameter * part->line.diameter);

      assert_less (part->line.breaking_load, part->breaking_load_high);
      assert_less (1e8, strength);
      assert_less (strength, 3e9);
      if (g_str_has_prefix (part->id, "braid-"))
        assert_less (part->line.density, 1000); /* it floats */
      else
        assert_less (1000, part->line.density);
      uses |= part->uses;
    }
  assert_int_equal (uses, LB_LINE_USE_MAINLINE | LB_LINE_USE_SHANK | LB_LINE_USE_LEADER);
}

/* In the user's units, and no two alike in either. */
static void
lines_are_named_in_both_units (void **state)
{
  g_autoptr (LbCatalogue) catalogue = load ();
  const LbCatalogueLine *wire = lb_catalogue_find_line (catalogue, "wire-0.508-mm");

  assert_string_equal (lb_catalogue_line_name (wire, LB_UNITS_METRIC), "stainless wire, 0.51 mm");
  assert_string_equal (lb_catalogue_line_name (wire, LB_UNITS_US), "stainless wire, 0.020 in");
  for (int units = LB_UNITS_US; units <= LB_UNITS_METRIC; units++)
    {
      g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);

      for (guint i = 0; i < catalogue->lines->len; i++)
        assert_true (g_hash_table_add (
            names, (gpointer) lb_catalogue_line_name (g_ptr_array_index (catalogue->lines, i),
                                                      (LbUnits) units)));
    }
}

static void
lures_lie_within_their_ranges (void **state)
{
  static const int lengths[] = { 5, 7, 9, 11 };
  static const char *const lips[] = { "shallow", "medium", "deep" };
  g_autoptr (LbCatalogue) catalogue = load ();

  for (size_t i = 0; i < G_N_ELEMENTS (lengths); i++)
    for (size_t j = 0; j < G_N_ELEMENTS (lips); j++)
      {
        g_autofree char *id = g_strdup_printf ("minnow-%d-cm-%s", lengths[i], lips[j]);
        const LbCatalogueLure *part = lb_catalogue_find_lure (catalogue, id);

        if (part == NULL)
          fail_msg ("%s is missing", id);
        assert_near (part->lure.length, lengths[i] * 0.01, 1e-12);
        assert_true (part->drag_area.low < part->lure.drag_area
                     && part->lure.drag_area < part->drag_area.high);
        assert_true (part->down_force_ratio.low < part->lure.down_force_ratio
                     && part->lure.down_force_ratio < part->down_force_ratio.high);
        assert_true (part->lure.buoyancy > 0 && part->buoyancy.high <= 0.04);
        /* It floats: the water it displaces weighs more than it does, but not by half. */
        assert_less (part->lure.buoyancy, 0.5 * part->lure.mass * 9.80665);
        assert_true (part->down_force_ratio.high <= 1.2);
        assert_non_null (strstr (part->source, "stimate"));
      }
}

static void
every_part_makes_a_rig (void **state)
{
  g_autoptr (LbCatalogue) catalogue = load ();

  for (guint i = 0; i < catalogue->weights->len; i++)
    for (guint j = 0; j < catalogue->lures->len; j++)
      {
        LbSetup setup = lb_setup_default ();
        const LbCatalogueWeight *weight = g_ptr_array_index (catalogue->weights, i);
        const LbCatalogueLure *lure = g_ptr_array_index (catalogue->lures, j);
        const LbCatalogueLine *line =
            g_ptr_array_index (catalogue->lines, (i + j) % catalogue->lines->len);

        setup.rig.weight = weight->weight;
        setup.rig.leaders[0].lure = lure->lure;
        setup.rig.mainline = line->line;
        setup.rig.leaders[0].line = line->line;
        assert_true (lb_setup_validate (&setup, NULL));
        assert_true (strlen (lure->name) <= LB_NAME_LONGEST);
      }
}

static void
assert_known (const LbCatalogue *catalogue, const LbRig *rig)
{
  assert_non_null (lb_catalogue_match_weight (catalogue, &rig->weight));
  assert_non_null (lb_catalogue_match_line (catalogue, &rig->mainline, LB_LINE_USE_MAINLINE));
  assert_non_null (lb_catalogue_match_line (catalogue, &rig->shank, LB_LINE_USE_SHANK));
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      assert_non_null (
          lb_catalogue_match_line (catalogue, &rig->leaders[i].line, LB_LINE_USE_LEADER));
      assert_non_null (lb_catalogue_match_lure (catalogue, &rig->leaders[i].lure));
    }
}

/* Whoever opens the catalogue for a part of these finds that part in it. */
static void
rigs_to_start_from_are_made_of_it (void **state)
{
  g_autoptr (LbCatalogue) catalogue = load ();
  const char *folder = g_getenv ("LAYBACK_SAMPLES_DIR");
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  LbSetup setup = lb_setup_default ();
  const char *name;
  int n = 0;

  assert_known (catalogue, &setup.rig);
  assert_non_null (dir);
  while ((name = g_dir_read_name (dir)))
    if (g_str_has_suffix (name, ".rig"))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);
        g_autoptr (GFile) file = g_file_new_for_path (path);
        g_autoptr (LbDocument) document = lb_document_load (file, NULL);

        assert_non_null (document);
        assert_known (catalogue, &lb_document_get_setup (document)->rig);
        n++;
      }
  assert_true (n >= 6);
}

static void
ids_are_used_once (void **state)
{
  g_autoptr (LbCatalogue) catalogue = load ();
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < catalogue->weights->len; i++)
    assert_true (g_hash_table_add (
        seen, ((LbCatalogueWeight *) g_ptr_array_index (catalogue->weights, i))->id));
  for (guint i = 0; i < catalogue->lines->len; i++)
    assert_true (
        g_hash_table_add (seen, ((LbCatalogueLine *) g_ptr_array_index (catalogue->lines, i))->id));
  for (guint i = 0; i < catalogue->lures->len; i++)
    assert_true (
        g_hash_table_add (seen, ((LbCatalogueLure *) g_ptr_array_index (catalogue->lures, i))->id));
}

/* The sources stand in the data file and, for translators, in the program. */
static void
sources_can_be_translated (void **state)
{
  g_autofree char *path = lb_data_path ("catalogue.json");
  g_autofree char *text = read_whole (path, NULL);
  const char *const *sources = lb_catalogue_words_sources ();
  g_autoptr (LbCatalogue) catalogue = load ();

  for (size_t i = 0; sources[i]; i++)
    if (!strstr (text, sources[i]))
      fail_msg ("not in the catalogue: %s", sources[i]);
  for (guint i = 0; i < catalogue->lines->len; i++)
    assert_true (g_strv_contains (
        sources, ((LbCatalogueLine *) g_ptr_array_index (catalogue->lines, i))->source));
  for (guint i = 0; i < catalogue->weights->len; i++)
    assert_true (g_strv_contains (
        sources, ((LbCatalogueWeight *) g_ptr_array_index (catalogue->weights, i))->source));
  for (guint i = 0; i < catalogue->lures->len; i++)
    assert_true (g_strv_contains (
        sources, ((LbCatalogueLure *) g_ptr_array_index (catalogue->lures, i))->source));
}

static void
a_damaged_catalogue_is_refused (void **state)
{
  static const char *const faults[][2] = {
    { "\"shape\": \"ball\"", "\"shape\": \"cube\"" },
    { "\"mass_kg\": 0.4536", "\"mass_kg\": -1" },
    { "\"source\": \"lead\"", "\"source\": \"hearsay\"" },
    { "\"material\": \"wire\"", "\"material\": \"rope\"" },
    { "\"uses\": [\"leader\"]", "\"uses\": [7]" },
    { "\"lip\": \"deep\"", "\"lip\": \"none\"" },
    { "[0.1, 0.25, 0.4]", "[0.4, 0.25, 0.1]" },
    { "[0.1, 0.25, 0.4]", "[0.1, 0.4]" },
    { "\"weights\"", "\"loads\"" },
    { "\"sources\"", "\"origins\"" },
    { "\"diameter_m\": 0.000381", "\"diameter_m\": null" },
    { "\"id\"", "\"name\"" },
    { "{", "[" },
  };
  g_autofree char *path = lb_data_path ("catalogue.json");
  g_autofree char *text = read_whole (path, NULL);

  for (size_t i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autoptr (GString) damaged = g_string_new (text);
      g_autoptr (GError) error = NULL;
      guint n = g_string_replace (damaged, faults[i][0], faults[i][1], 1);

      assert_int_equal (n, 1);
      if (lb_catalogue_parse (damaged->str, -1, &error))
        fail_msg ("accepted with %s", faults[i][1]);
      assert_true (error->domain == LB_FILE_ERROR);
    }
  for (gsize cut = 0; cut < strlen (text); cut += 97)
    assert_null (lb_catalogue_parse (text, (gssize) cut, NULL));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (the_agreed_weights_are_there),
    cmocka_unit_test (wires_break_where_the_table_says),
    cmocka_unit_test (lines_are_what_their_material_is),
    cmocka_unit_test (lines_are_named_in_both_units),
    cmocka_unit_test (lures_lie_within_their_ranges),
    cmocka_unit_test (every_part_makes_a_rig),
    cmocka_unit_test (rigs_to_start_from_are_made_of_it),
    cmocka_unit_test (ids_are_used_once),
    cmocka_unit_test (sources_can_be_translated),
    cmocka_unit_test (a_damaged_catalogue_is_refused),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
