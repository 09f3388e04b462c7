/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The user's own part of the catalogue: kept, renamed, taken away; damaged files are left alone. */
#include "model-support.h"

#include <glib/gstdio.h>
#include <string.h>

#include "catalogue_match.h"
#include "own_catalogue.h"

static void
remove_file (void)
{
  g_autofree char *path = lb_own_catalogue_dup_path ();

  g_unlink (path);
}

static int
set_up (void **state)
{
  remove_file ();
  return 0;
}

static int
tear_down (void **state)
{
  remove_file ();
  return 0;
}

static LbCatalogue *
load (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *fault = NULL;
  LbCatalogue *catalogue = lb_catalogue_load_with_own (&fault, &error);

  assert_non_null (catalogue);
  assert_null (fault);
  return catalogue;
}

static void
without_a_file_there_is_the_built_in_alone (void **state)
{
  g_autoptr (LbCatalogue) with = load ();
  g_autoptr (LbCatalogue) built_in = lb_catalogue_load (NULL);

  assert_int_equal (with->weights->len, built_in->weights->len);
  assert_int_equal (with->lures->len, built_in->lures->len);
}

static void
what_is_added_comes_back_to_the_bit (void **state)
{
  const LbWeight weight = { 0.1 + 0.2, 7850, LB_WEIGHT_PEAR, 0.47 };
  LbLine line = lb_setup_default ().rig.mainline;
  LbLure lure = lb_setup_default ().rig.leaders[0].lure;
  g_autofree char *weight_id = NULL;
  g_autofree char *line_id = NULL;
  g_autofree char *lure_id = NULL;
  g_autoptr (LbCatalogue) catalogue = NULL;
  const LbCatalogueWeight *w;
  const LbCatalogueLine *l;
  const LbCatalogueLure *u;

  line.diameter = 0.00047;
  line.breaking_load = LB_UNSET;
  lure.length = 1.0 / 13;
  lure.hooks = 3;
  assert_true (
      lb_own_catalogue_add_weight ("Großer \"Klotz\"\nvom Ufer", &weight, &weight_id, NULL));
  assert_true (lb_own_catalogue_add_line ("old wire", LB_LINE_USE_SHANK | LB_LINE_USE_LEADER, &line,
                                          &line_id, NULL));
  assert_true (lb_own_catalogue_add_lure ("my minnow", &lure, &lure_id, NULL));

  catalogue = load ();
  w = lb_catalogue_find_weight (catalogue, weight_id);
  l = lb_catalogue_find_line (catalogue, line_id);
  u = lb_catalogue_find_lure (catalogue, lure_id);
  assert_non_null (w);
  assert_non_null (l);
  assert_non_null (u);
  assert_true (w->is_own && l->is_own && u->is_own);
  assert_string_equal (w->name, "Großer \"Klotz\" vom Ufer");
  assert_true (w->weight.mass == weight.mass && w->weight.shape == LB_WEIGHT_PEAR);
  assert_true (w->weight.drag_coefficient == 0.47);
  assert_true (l->line.diameter == line.diameter);
  assert_false (lb_is_set (l->line.breaking_load));
  assert_int_equal (l->uses, LB_LINE_USE_SHANK | LB_LINE_USE_LEADER);
  assert_true (u->lure.length == lure.length && u->lure.hooks == 3);
  assert_true (u->drag_area.low == lure.drag_area && u->drag_area.high == lure.drag_area);
  assert_string_equal (lb_catalogue_match_lure (catalogue, &lure)->name, "my minnow");
}

static void
ids_are_never_given_twice (void **state)
{
  const LbWeight weight = lb_setup_default ().rig.weight;
  const LbLure lure = lb_setup_default ().rig.leaders[0].lure;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  g_autofree char *third = NULL;

  assert_true (lb_own_catalogue_add_weight ("a", &weight, &first, NULL));
  assert_true (lb_own_catalogue_add_weight ("b", &weight, &second, NULL));
  assert_true (lb_own_catalogue_add_lure ("a", &lure, &third, NULL));
  assert_string_not_equal (first, second);
  assert_string_not_equal (second, third);
  assert_string_not_equal (first, third);
}

static void
a_part_of_the_same_name_gets_new_values (void **state)
{
  LbWeight weight = lb_setup_default ().rig.weight;
  LbLine line = lb_setup_default ().rig.shank;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  g_autoptr (LbCatalogue) catalogue = NULL;
  const LbCatalogueLine *found;

  assert_true (lb_own_catalogue_add_weight ("stone", &weight, &first, NULL));
  weight.mass = 1.5;
  assert_true (lb_own_catalogue_add_weight (" stone ", &weight, &second, NULL));
  assert_string_equal (first, second);
  assert_true (lb_own_catalogue_add_line ("cord", LB_LINE_USE_SHANK, &line, NULL, NULL));
  line.diameter = 0.0008;
  assert_true (lb_own_catalogue_add_line ("cord", LB_LINE_USE_LEADER, &line, NULL, NULL));
  catalogue = lb_catalogue_load_with_own (NULL, NULL);
  assert_true (lb_catalogue_find_weight (catalogue, first)->weight.mass == 1.5);
  found = lb_catalogue_match_line (catalogue, &line, LB_LINE_USE_LEADER);
  assert_string_equal (found->name, "cord");
  assert_int_equal (found->uses, LB_LINE_USE_SHANK | LB_LINE_USE_LEADER);
}

/* In a file edited by hand two parts may have one id, or that of a built-in part. */
static void
ids_of_a_file_edited_by_hand_are_made_unique (void **state)
{
  static const char text[] =
      "{ \"format\": \"layback-catalogue\", \"version\": 1, \"weights\": ["
      "{\"id\": \"own-1\", \"name\": \"a\", \"mass_kg\": 1, \"density_kg_m3\": 11340,"
      " \"shape\": \"ball\", \"drag_coefficient\": null},"
      "{\"id\": \"own-1\", \"name\": \"b\", \"mass_kg\": 2, \"density_kg_m3\": 11340,"
      " \"shape\": \"ball\", \"drag_coefficient\": null},"
      "{\"id\": \"lead-ball-1-lb\", \"name\": \"c\", \"mass_kg\": 3, \"density_kg_m3\": 11340,"
      " \"shape\": \"ball\", \"drag_coefficient\": null}], \"lines\": [], \"lures\": [] }";
  g_autofree char *path = lb_own_catalogue_dup_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (LbCatalogue) catalogue = NULL;
  g_autoptr (LbCatalogue) renamed = NULL;

  assert_int_equal (g_mkdir_with_parents (folder, 0700), 0);
  assert_true (g_file_set_contents (path, text, -1, NULL));
  catalogue = load ();
  assert_true (lb_catalogue_find_weight (catalogue, "own-1")->weight.mass == 1);
  assert_true (lb_catalogue_find_weight (catalogue, "own-2")->weight.mass == 2);
  assert_true (lb_catalogue_find_weight (catalogue, "own-3")->weight.mass == 3);
  assert_false (lb_catalogue_find_weight (catalogue, "lead-ball-1-lb")->is_own);
  assert_true (lb_own_catalogue_rename ("own-3", "d", NULL));
  renamed = load ();
  assert_string_equal (lb_catalogue_find_weight (renamed, "own-3")->name, "d");
  assert_string_equal (lb_catalogue_find_weight (renamed, "own-1")->name, "a");
}

static void
a_part_is_renamed_and_taken_away (void **state)
{
  const LbWeight weight = lb_setup_default ().rig.weight;
  g_autofree char *keep = NULL;
  g_autofree char *id = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (LbCatalogue) renamed = NULL;
  g_autoptr (LbCatalogue) removed = NULL;

  assert_true (lb_own_catalogue_add_weight ("keep", &weight, &keep, NULL));
  assert_true (lb_own_catalogue_add_weight ("old", &weight, &id, NULL));
  assert_true (lb_own_catalogue_rename (id, "new", NULL));
  renamed = load ();
  assert_string_equal (lb_catalogue_find_weight (renamed, id)->name, "new");
  assert_string_equal (lb_catalogue_find_weight (renamed, keep)->name, "keep");
  assert_true (lb_own_catalogue_remove (id, NULL));
  removed = load ();
  assert_null (lb_catalogue_find_weight (removed, id));
  assert_non_null (lb_catalogue_find_weight (removed, keep));

  assert_false (lb_own_catalogue_remove (id, &error));
  assert_true (g_error_matches (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY));
  /* The built-in ones are not the user's to take away. */
  assert_false (lb_own_catalogue_remove ("lead-ball-1-lb", NULL));
  assert_false (lb_own_catalogue_rename ("lead-ball-1-lb", "mine", NULL));
}

static void
what_no_rig_could_have_is_refused (void **state)
{
  LbWeight heavy = lb_setup_default ().rig.weight;
  const LbWeight fine = heavy;
  g_autoptr (GError) error = NULL;

  heavy.mass = 500;
  assert_false (lb_own_catalogue_add_weight ("heavy", &heavy, NULL, NULL));
  assert_false (lb_own_catalogue_add_weight (" \n ", &fine, NULL, &error));
  assert_string_equal (error->message, "Give it a name first.");
}

static void
a_damaged_file_is_told_and_left_alone (void **state)
{
  static const char *const texts[] = {
    "{ \"weights\": [",
    "[]",
    "{ \"format\": \"layback-catalogue\", \"version\": 1, \"weights\": [], \"lines\": [] }",
    "{ \"weights\": [], \"lines\": [], \"lures\": [] }",
    "{ \"format\": \"layback-catalogue\", \"version\": 2, \"weights\": [], \"lines\": [], "
    "\"lures\": [] }",
    "{ \"format\": 1, \"version\": \"1\", \"weights\": [], \"lines\": [], \"lures\": [] }",
    "{ \"format\": \"layback-catalogue\", \"version\": 1, \"weights\": [{\"id\": \"own-1\", "
    "\"name\": \"x\", \"mass_kg\": -1, \"density_kg_m3\": "
    "11340,"
    " \"shape\": \"ball\", \"drag_coefficient\": null}], \"lines\": [], \"lures\": [] }",
    "{ \"format\": \"layback-catalogue\", \"version\": 1, \"weights\": [{\"id\": \"own-1\", "
    "\"name\": \"\", \"mass_kg\": 1, \"density_kg_m3\": 11340,"
    " \"shape\": \"ball\", \"drag_coefficient\": null}], \"lines\": [], \"lures\": [] }",
  };
  const LbWeight weight = lb_setup_default ().rig.weight;
  g_autofree char *path = lb_own_catalogue_dup_path ();
  g_autofree char *folder = g_path_get_dirname (path);

  assert_int_equal (g_mkdir_with_parents (folder, 0700), 0);
  for (size_t i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *fault = NULL;
      g_autofree char *after = NULL;
      g_autoptr (LbCatalogue) catalogue = NULL;

      assert_true (g_file_set_contents (path, texts[i], -1, NULL));
      catalogue = lb_catalogue_load_with_own (&fault, NULL);
      assert_non_null (catalogue);
      assert_true (catalogue->weights->len > 0);
      assert_non_null (fault);
      assert_non_null (strstr (fault, path));
      assert_null (strchr (fault, '\n'));
      assert_false (lb_own_catalogue_add_weight ("mine", &weight, NULL, NULL));
      assert_false (lb_own_catalogue_remove ("own-1", NULL));
      assert_true (g_file_get_contents (path, &after, NULL, NULL));
      assert_string_equal (after, texts[i]);
    }
}

/* Other programs of the tests keep a catalogue of their own at the same time. */
static void
use_own_folder (void)
{
  const char *output = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *folder =
      g_build_filename (output ? output : g_get_tmp_dir (), "own-catalogue", NULL);

  g_setenv ("XDG_DATA_HOME", folder, TRUE);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (without_a_file_there_is_the_built_in_alone),
    TEST (what_is_added_comes_back_to_the_bit),
    TEST (ids_are_never_given_twice),
    TEST (a_part_of_the_same_name_gets_new_values),
    TEST (ids_of_a_file_edited_by_hand_are_made_unique),
    TEST (a_part_is_renamed_and_taken_away),
    TEST (what_no_rig_could_have_is_refused),
    TEST (a_damaged_file_is_told_and_left_alone),
#undef TEST
  };

  use_own_folder ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
