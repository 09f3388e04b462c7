/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The catalogue's window: searched, used, and the user's own parts kept in it. */
#include "rig-page-support.h"

#include <string.h>

#include "own_catalogue.h"

static void
the_catalogue_is_searched (void **state)
{
  LbCatalogueWindow *catalogue = rig_catalogue_for (LB_PICK_LURE, 0);
  guint all = lb_catalogue_window_get_n_listed (catalogue);
  g_autofree char *details = NULL;

  lb_catalogue_window_search (catalogue, "DEEP 9 cm");
  assert_int_equal (lb_catalogue_window_get_n_listed (catalogue), 1);
  details = lb_catalogue_window_dup_details (catalogue);
  assert_non_null (strstr (details, "floating minnow, 9 cm, deep lip"));
  /* The range of the estimate and where it comes from. */
  assert_non_null (strstr (details, "0.5"));
  assert_non_null (strstr (details, "0.9"));
  assert_non_null (strstr (details, "Estimate"));
  lb_catalogue_window_search (catalogue, "nothing of the kind");
  assert_int_equal (lb_catalogue_window_get_n_listed (catalogue), 0);
  lb_catalogue_window_search (catalogue, "");
  assert_int_equal (lb_catalogue_window_get_n_listed (catalogue), all);
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
a_lure_of_the_catalogue_goes_into_the_rig (void **state)
{
  LbCatalogueWindow *catalogue = rig_catalogue_for (LB_PICK_LURE, 1);
  const char *name = "floating minnow, 9 cm, deep lip";
  double before = rig_setup ()->rig.leaders[1].lure.length;
  g_autofree char *old_name = g_strdup (rig_lure_name (1));

  assert_true (lb_catalogue_window_select (catalogue, name));
  lb_catalogue_window_use (catalogue);
  harness_pause (20);
  assert_null (harness_toplevel (LB_TYPE_CATALOGUE_WINDOW));
  assert_near (rig_setup ()->rig.leaders[1].lure.length, 0.09, 1e-12);
  assert_near (rig_setup ()->rig.leaders[1].lure.down_force_ratio, 0.7, 1e-12);
  assert_near (rig_setup ()->rig.leaders[0].lure.length, before, 0);
  assert_string_equal (rig_lure_name (1), name);
  lb_session_undo (rig_session ());
  assert_near (rig_setup ()->rig.leaders[1].lure.length, before, 0);
  assert_string_equal (rig_lure_name (1), old_name);
}

static void
a_line_of_the_catalogue_keeps_what_was_calibrated (void **state)
{
  LbCatalogueWindow *catalogue;

  lb_session_set_value (rig_session (), lb_field ("mainline.strum"), 0, 1.6, 0);
  catalogue = rig_catalogue_for (LB_PICK_MAINLINE, 0);
  assert_true (lb_catalogue_window_select (catalogue, "stainless wire, 0.020 in"));
  lb_catalogue_window_use (catalogue);
  assert_near (rig_setup ()->rig.mainline.diameter, 0.000508, 1e-9);
  assert_near (rig_setup ()->rig.mainline.breaking_load, 419, 1e-9);
  assert_near (rig_setup ()->rig.mainline.strum, 1.6, 0);
}

static void
a_part_is_known_by_its_values (void **state)
{
  assert_string_equal (rig_part_name (LB_PICK_WEIGHT, 0), "1 3/4 lb lead ball");
  lb_session_set_value (rig_session (), lb_field ("weight.mass_kg"), 0, 0.9072, 0);
  assert_string_equal (rig_part_name (LB_PICK_WEIGHT, 0), "2 lb lead ball");
  lb_session_set_value (rig_session (), lb_field ("weight.shape"), 0, LB_WEIGHT_DISC, 0);
  assert_string_equal (rig_part_name (LB_PICK_WEIGHT, 0), "2 lb lead disc");
  lb_session_set_value (rig_session (), lb_field ("weight.mass_kg"), 0, 0.95, 0);
  assert_null (strstr (rig_part_name (LB_PICK_WEIGHT, 0), "lead"));
  assert_string_equal (rig_part_name (LB_PICK_SHANK, 0), "nylon, 0.028 in");
}

static void
assert_opens_on (LbPickKind kind, const char *name)
{
  LbCatalogueWindow *catalogue = rig_catalogue_for (kind, 0);
  g_autofree char *details = lb_catalogue_window_dup_details (catalogue);

  if (!strstr (details, name))
    fail_msg ("not “%s”: %s", name, details);
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

/* What the rig has, else what is most like it. */
static void
the_catalogue_opens_on_what_is_in_the_rig (void **state)
{
  assert_opens_on (LB_PICK_MAINLINE, "stainless wire, 0.028 in");
  assert_opens_on (LB_PICK_LURE, "floating minnow, 9 cm, medium lip");
  lb_session_set_value (rig_session (), lb_field ("mainline.diameter_m"), 0, 0.00048, 0);
  lb_session_set_value (rig_session (), lb_field ("leaders[].lure.length_m"), 0, 0.105, 0);
  lb_session_set_value (rig_session (), lb_field ("leaders[].lure.down_force_ratio"), 0, 0.75, 0);
  lb_session_set_value (rig_session (), lb_field ("weight.mass_kg"), 0, 1.2, 0);
  lb_session_set_value (rig_session (), lb_field ("weight.shape"), 0, LB_WEIGHT_DISC, 0);
  assert_opens_on (LB_PICK_MAINLINE, "stainless wire, 0.020 in");
  assert_opens_on (LB_PICK_LURE, "floating minnow, 11 cm, deep lip");
  assert_opens_on (LB_PICK_WEIGHT, "2 1/2 lb lead disc");
}

static void
values_of_ones_own_are_kept_renamed_and_deleted (void **state)
{
  LbCatalogueWindow *catalogue;
  LbKeepRow *keep;
  LbOwnRow *own;

  lb_session_set_value (rig_session (), lb_field ("weight.mass_kg"), 0, 0.95, 0);
  catalogue = rig_catalogue_for (LB_PICK_WEIGHT, 0);
  keep = lb_catalogue_window_get_keep_row (catalogue);
  own = lb_catalogue_window_get_own_row (catalogue);
  lb_keep_row_keep (keep, "  ");
  assert_non_null (lb_keep_row_get_fault (keep));
  lb_keep_row_keep (keep, "river stone");
  assert_null (lb_keep_row_get_fault (keep));
  assert_string_equal (rig_part_name (LB_PICK_WEIGHT, 0), "river stone");

  lb_own_row_rename (own, "old anchor");
  assert_string_equal (rig_part_name (LB_PICK_WEIGHT, 0), "old anchor");
  assert_false (lb_catalogue_window_select (catalogue, "river stone"));
  assert_true (lb_catalogue_window_select (catalogue, "old anchor"));
  lb_own_row_delete (own);
  assert_false (lb_catalogue_window_select (catalogue, "old anchor"));
  assert_string_not_equal (rig_part_name (LB_PICK_WEIGHT, 0), "old anchor");
  lb_own_row_put_back (own);
  assert_true (lb_catalogue_window_select (catalogue, "old anchor"));

  /* It is there to be used in another rig. */
  lb_session_set_value (rig_session (), lb_field ("weight.mass_kg"), 0, 0.5, 0);
  lb_catalogue_window_use (catalogue);
  assert_near (rig_setup ()->rig.weight.mass, 0.95, 0);
}

/* Under a name that is there already the first press asks, and the second replaces. */
static void
a_part_of_ones_own_is_replaced_when_asked (void **state)
{
  LbCatalogueWindow *catalogue;
  LbKeepRow *keep;
  guint listed;

  lb_session_set_value (rig_session (), lb_field ("weight.mass_kg"), 0, 0.83, 0);
  catalogue = rig_catalogue_for (LB_PICK_WEIGHT, 0);
  keep = lb_catalogue_window_get_keep_row (catalogue);
  lb_keep_row_keep (keep, "twice kept");
  listed = lb_catalogue_window_get_n_listed (catalogue);
  lb_session_set_value (rig_session (), lb_field ("weight.mass_kg"), 0, 0.77, 0);
  lb_keep_row_keep (keep, "twice kept");
  assert_non_null (strstr (lb_keep_row_get_fault (keep), "“twice kept” already"));
  assert_string_not_equal (rig_part_name (LB_PICK_WEIGHT, 0), "twice kept");
  lb_keep_row_keep (keep, "twice kept");
  assert_null (lb_keep_row_get_fault (keep));
  assert_int_equal (lb_catalogue_window_get_n_listed (catalogue), listed);
  assert_string_equal (rig_part_name (LB_PICK_WEIGHT, 0), "twice kept");
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
a_line_of_ones_own_is_offered_where_it_was_kept (void **state)
{
  LbCatalogueWindow *catalogue;

  lb_session_set_value (rig_session (), lb_field ("shank.diameter_m"), 0, 0.00083, 0);
  catalogue = rig_catalogue_for (LB_PICK_SHANK, 0);
  lb_keep_row_keep (lb_catalogue_window_get_keep_row (catalogue), "stiff nylon");
  assert_string_equal (rig_part_name (LB_PICK_SHANK, 0), "stiff nylon");
  gtk_window_destroy (GTK_WINDOW (catalogue));
  catalogue = rig_catalogue_for (LB_PICK_MAINLINE, 0);
  assert_false (lb_catalogue_window_select (catalogue, "stiff nylon"));
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
a_damaged_own_catalogue_is_told (void **state)
{
  g_autofree char *path = lb_own_catalogue_dup_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  LbCatalogueWindow *catalogue;
  int width, height;

  assert_int_equal (g_mkdir_with_parents (folder, 0700), 0);
  assert_true (g_file_set_contents (path, "{ \"weights\": 3 }", -1, NULL));
  catalogue = rig_catalogue_for (LB_PICK_WEIGHT, 0);
  assert_true (lb_catalogue_window_get_n_listed (catalogue) > 20);
  lb_keep_row_keep (lb_catalogue_window_get_keep_row (catalogue), "mine");
  assert_non_null (strstr (lb_keep_row_get_fault (lb_catalogue_window_get_keep_row (catalogue)),
                           "catalogue.json"));
  g_free (harness_picture ((LbWindow *) catalogue, "catalogue-damaged", 1, &width, &height));
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
a_catalogue_window_goes_with_its_leader (void **state)
{
  rig_catalogue_for (LB_PICK_LURE, 1);
  lb_session_do (rig_session (),
                 lb_change_new_remove_leader (lb_session_get_document (rig_session ()), 1));
  harness_pause (20);
  assert_null (harness_toplevel (LB_TYPE_CATALOGUE_WINDOW));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, rig_set_up, rig_tear_down)
    TEST (the_catalogue_is_searched),
    TEST (a_lure_of_the_catalogue_goes_into_the_rig),
    TEST (a_line_of_the_catalogue_keeps_what_was_calibrated),
    TEST (a_part_is_known_by_its_values),
    TEST (the_catalogue_opens_on_what_is_in_the_rig),
    TEST (values_of_ones_own_are_kept_renamed_and_deleted),
    TEST (a_part_of_ones_own_is_replaced_when_asked),
    TEST (a_line_of_ones_own_is_offered_where_it_was_kept),
    TEST (a_damaged_own_catalogue_is_told),
    TEST (a_catalogue_window_goes_with_its_leader),
#undef TEST
  };

  return rig_run (tests, G_N_ELEMENTS (tests), "catalogue-window");
}
