/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Variants: what they replace, their names, their changes, and why one makes no rig. */
#include "model-support.h"

#include <string.h>

#include "document-fixture.h"
#include "reader.h"
#include "variants_weights.h"
#include "writer.h"

static const LbVariants *
variants_of (Fixture *f)
{
  return &lb_document_get_contents (f->document)->variants;
}

/* Does a change that must go through. */
static void
do_it (Fixture *f, LbChange *change)
{
  assert_non_null (change);
  assert_true (lb_history_do (f->history, change));
}

static void
assert_names (Fixture *f, const char *a, const char *b, const char *c)
{
  const char *names[] = { a, b, c };
  size_t n = a == NULL ? 0 : b == NULL ? 1 : c == NULL ? 2 : 3;

  assert_int_equal (variants_of (f)->n, n);
  for (size_t i = 0; i < n; i++)
    assert_string_equal (variants_of (f)->list[i].name, names[i]);
}

/* ---- The list ---- */

static void
variants_come_and_go (void **state)
{
  Fixture *f = *state;

  do_it (f, lb_change_new_add_variant (f->document, NULL));
  do_it (f, lb_change_new_add_variant (f->document, "heavy"));
  do_it (f, lb_change_new_duplicate_variant (f->document, 1));
  assert_names (f, "As it is", "heavy", "heavy (2)");
  do_it (f, lb_change_new_move_variant (f->document, 2, 0));
  assert_names (f, "heavy (2)", "As it is", "heavy");
  do_it (f, lb_change_new_remove_variant (f->document, 1));
  assert_names (f, "heavy (2)", "heavy", NULL);
  do_it (f, lb_change_new_rename_variant (f->document, 0, "light"));
  assert_names (f, "light", "heavy", NULL);
  assert_string_equal (lb_history_get_undo_label (f->history), "Rename a variant");
  lb_history_undo (f->history);
  lb_history_undo (f->history);
  assert_names (f, "heavy (2)", "As it is", "heavy");
  lb_history_redo (f->history);
  assert_names (f, "heavy (2)", "heavy", NULL);
  undo_all (f);
}

static void
what_cannot_be_done_is_no_change (void **state)
{
  Fixture *f = *state;
  const LbField *mass = lb_field ("weight.mass_kg");

  assert_null (lb_change_new_remove_variant (f->document, 0));
  assert_null (lb_change_new_set_override (f->document, 0, mass, 0, 1));
  for (int i = 0; i < LB_MAX_VARIANTS; i++)
    do_it (f, lb_change_new_add_variant (f->document, "v"));
  assert_null (lb_change_new_add_variant (f->document, "v"));
  assert_null (lb_change_new_duplicate_variant (f->document, 0));
  assert_null (lb_change_new_move_variant (f->document, 1, 1));
  assert_null (lb_change_new_move_variant (f->document, 1, 4));
  assert_null (lb_change_new_rename_variant (f->document, 0, "v (2)"));
  assert_null (lb_change_new_rename_variant (f->document, 0, " "));
  assert_null (lb_change_new_rename_variant (f->document, 0, "a\nb"));
  assert_null (lb_change_new_rename_variant (f->document, 0, "\xff"));
  assert_null (lb_change_new_unset_override (f->document, 0, mass, 0));
  assert_null (lb_change_new_variants_of_weights (f->document, NULL, 0, NULL));
}

static void
names_are_mended_and_kept_apart (void **state)
{
  static const struct
  {
    const char *asked, *given;
  } cases[] = {
    { "2 lb", "2 lb" },
    { "2 lb", "2 lb (2)" },
    { " a\nb\t", "a b" },
    { "", "?" },
    { "\xff", "\xef\xbf\xbd" },
    { "1234567890123456789012345678901234567890", "1234567890123456789012345678901234567890" },
    { "12345678901234567890123456789012345678901", "123456789012345678901234567890123456 (2)" },
    { "川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川",
      "川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川川" },
  };
  LbVariants variants = { 0 };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      LbVariant added = { 0 };

      lb_variant_set_new_name (&added, &variants, cases[i].asked);
      assert_string_equal (added.name, cases[i].given);
      assert_true (lb_variant_name_is_fine (added.name));
      /* The list is shorter than this one: the newest take turns at its end. */
      variants.list[MIN (variants.n, LB_MAX_VARIANTS - 1)] = added;
      variants.n = MIN (variants.n + 1, LB_MAX_VARIANTS);
    }
}

/* ---- Overrides ---- */

static void
values_are_replaced_and_let_go (void **state)
{
  Fixture *f = *state;
  const LbField *mass = lb_field ("weight.mass_kg"), *length = lb_field ("leaders[].length_m");
  LbSetup setup;

  do_it (f, lb_change_new_add_variant (f->document, "v"));
  do_it (f, lb_change_new_set_override (f->document, 0, length, 1, 4.5));
  do_it (f, lb_change_new_set_override (f->document, 0, mass, 0, 0.9));
  do_it (f, lb_change_new_set_override (f->document, 0, mass, 0, 1e9));
  assert_int_equal (variants_of (f)->list[0].n_overrides, 2);
  assert_ptr_equal (variants_of (f)->list[0].overrides[0].field, mass);
  assert_true (variants_of (f)->list[0].overrides[0].value == mass->maximum);
  lb_history_undo (f->history);
  setup = *setup_of (f);
  lb_variant_apply (&variants_of (f)->list[0], &setup);
  assert_true (setup.rig.weight.mass == 0.9);
  assert_true (setup.rig.leaders[1].length == 4.5);
  assert_true (setup.rig.leaders[0].length == setup_of (f)->rig.leaders[0].length);
  do_it (f, lb_change_new_unset_override (f->document, 0, mass, 0));
  assert_null (lb_variant_get_override (&variants_of (f)->list[0], mass, 0));
  undo_all (f);
}

/* A drag over many values is one step, and one that comes back leaves none. */
static void
a_gesture_is_one_step (void **state)
{
  Fixture *f = *state;
  const LbField *mass = lb_field ("weight.mass_kg");
  guint gesture = lb_history_new_gesture (f->history);

  do_it (f, lb_change_new_add_variant (f->document, "v"));
  for (int i = 0; i < 9; i++)
    {
      LbChange *change = lb_change_new_set_override (f->document, 0, mass, 0, 1 + 0.1 * i);

      lb_change_set_gesture (change, gesture);
      do_it (f, change);
    }
  lb_history_undo (f->history);
  assert_int_equal (variants_of (f)->list[0].n_overrides, 0);
  assert_names (f, "v", NULL, NULL);
  undo_all (f);
}

static void
what_excludes_another_takes_its_place (void **state)
{
  LbVariant variant = { 0 };
  const LbField *given = lb_field ("mainline.line_out.given_m");
  const LbField *touching = lb_field ("mainline.line_out");

  assert_true (lb_variant_set (&variant, given, 0, 5));
  assert_true (lb_variant_set (&variant, touching, 0, LB_LINE_OUT_TOUCHING));
  assert_int_equal (variant.n_overrides, 1);
  assert_ptr_equal (variant.overrides[0].field, touching);
  assert_false (lb_variant_set (&variant, touching, 0, LB_LINE_OUT_GIVEN));
  assert_true (lb_variant_set (&variant, lb_field ("river.profile.roughness_m"), 0, 0.1));
  assert_true (
      lb_variant_set (&variant, lb_field ("river.profile.bed_material"), 0, LB_BED_MATERIAL_SAND));
  assert_false (
      lb_variant_set (&variant, lb_field ("river.profile.bed_material"), 0, LB_BED_MATERIAL_NONE));
  assert_int_equal (variant.n_overrides, 2);
  assert_false (lb_variant_set (&variant, given, 0, -1));
  assert_false (lb_variant_set (&variant, given, 0, NAN));
  assert_false (lb_variant_set (&variant, lb_field ("leaders[].length_m"), LB_MAX_LEADERS, 1));
}

static void
a_variant_holds_only_so_many (void **state)
{
  LbVariant variant = { 0 };

  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    {
      assert_true (lb_variant_set (&variant, lb_field ("leaders[].length_m"), i, 3));
      assert_true (lb_variant_set (&variant, lb_field ("leaders[].strum"), i, 2));
    }
  assert_int_equal (variant.n_overrides, LB_MAX_OVERRIDES);
  assert_false (lb_variant_set (&variant, lb_field ("weight.mass_kg"), 0, 1));
  assert_true (lb_variant_set (&variant, lb_field ("leaders[].strum"), 4, 1.5));
}

/* A law that the document never had begins with something to go by. */
static void
another_law_is_whole (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbVariant variant = { 0 };
  LbWording wording = lb_wording_default (LB_UNITS_US);

  assert_true (lb_variant_set (&variant, lb_field ("river.profile.law"), 0, LB_PROFILE_LOG));
  assert_null (lb_variant_explain (&variant, &setup, &wording));
  lb_variant_apply (&variant, &setup);
  assert_int_equal (setup.river.profile.law, LB_PROFILE_LOG);
  assert_true (setup.river.profile.roughness > 0);
  assert_true (lb_setup_validate (&setup, NULL));
}

/* ---- Leaders that move ---- */

static void
leaders_take_their_values_along (void **state)
{
  Fixture *f = *state;
  const LbField *length = lb_field ("leaders[].length_m");
  const LbVariant *v = &variants_of (f)->list[0];

  do_it (f, lb_change_new_add_leader (f->document));
  do_it (f, lb_change_new_add_variant (f->document, "v"));
  do_it (f, lb_change_new_set_override (f->document, 0, length, 0, 1));
  do_it (f, lb_change_new_set_override (f->document, 0, length, 2, 3));
  do_it (f, lb_change_new_move_leader (f->document, 0, 2));
  assert_true (lb_variant_get_override (v, length, 2)->value == 1);
  assert_true (lb_variant_get_override (v, length, 1)->value == 3);
  assert_null (lb_variant_get_override (v, length, 0));
  do_it (f, lb_change_new_remove_leader (f->document, 1));
  assert_int_equal (v->n_overrides, 1);
  assert_true (lb_variant_get_override (v, length, 1)->value == 1);
  lb_history_undo (f->history);
  assert_int_equal (v->n_overrides, 2);
  do_it (f, lb_change_new_duplicate_leader (f->document, 0));
  assert_true (lb_variant_get_override (v, length, 3)->value == 1);
  assert_true (lb_variant_get_override (v, length, 2)->value == 3);
  undo_all (f);
}

/* ---- What makes no rig ---- */

static char *
explain (const LbSetup *setup, const char *path, double value)
{
  LbVariant variant = { 0 };
  LbWording wording = lb_wording_default (LB_UNITS_US);
  const LbField *field;
  size_t leader;

  assert_true (lb_override_find (path, &field, &leader));
  assert_true (lb_variant_set (&variant, field, leader, value));
  return lb_variant_explain (&variant, setup, &wording);
}

static LbSetup
setup_with_band (double high)
{
  LbSetup setup = lb_setup_default ();

  setup.band.high = high;
  return setup;
}

static void
reasons_are_given_in_words (void **state)
{
  LbSetup setup = setup_with_band (18 * 0.0254);
  g_autofree char *fine = explain (&setup, "weight.mass_kg", 1);
  g_autofree char *leader = explain (&setup, "leaders[4].length_m", 1);
  g_autofree char *idle = explain (&setup, "river.profile.roughness_m", 0.1);
  g_autofree char *points = explain (&setup, "river.profile.law", LB_PROFILE_POINTS);
  g_autofree char *shank = explain (&setup, "shank.length_m", 0.254);
  g_autofree char *band = explain (&setup, "band.low_m", 2.54);

  assert_null (fine);
  assert_string_equal (leader, "The rig has no leader 5, which this variant changes.");
  assert_string_equal (idle,
                       "“Bed roughness” does not count in this rig, so it cannot be changed.");
  assert_string_equal (points,
                       "Current against depth: Measured points. Give 2 measured points first.");
  assert_true (g_str_has_prefix (shank, "Shank length: 10 in. Leader "));
  assert_true (g_str_has_prefix (band, "Band, low: "));
  assert_true (g_str_has_suffix (band, ". The band's high side is at 18 in."));
}

/* ---- Weights owned ---- */

static void
weights_become_variants (void **state)
{
  const double kg[] = { 1.3608, 0.4536, 0.907, NAN, 0.4536, -1, 0.567, 0.6804, 0.7938, 1.134 };
  LbWording wording = lb_wording_default (LB_UNITS_US);
  LbVariants near = lb_variants_of_weights (kg, G_N_ELEMENTS (kg), 0.7938, &wording);
  LbVariants heavy = lb_variants_of_weights (kg, G_N_ELEMENTS (kg), 20, &wording);
  LbVariants two = lb_variants_of_weights (kg, 2, 0.7938, &wording);
  static const char *const names[] = { "1¼ lb", "1½ lb", "1¾ lb", "2 lb" };

  assert_int_equal (near.n, 4);
  for (size_t i = 0; i < near.n; i++)
    assert_string_equal (near.list[i].name, names[i]);
  assert_true (near.list[3].overrides[0].value == 0.907);
  assert_string_equal (heavy.list[0].name, "1¾ lb");
  assert_int_equal (two.n, 2);
  assert_true (two.list[0].overrides[0].value == 0.4536);
}

static void
weights_are_read_as_they_are_written (void **state)
{
  char *message = NULL;
  g_autoptr (GArray) weights = lb_weights_parse (LB_UNITS_US, "1 lb; ;0.9 kg", &message);

  assert_int_equal (weights->len, 2);
  /* 1 lb is 0.45359237 kg by definition (international pound, 1959). */
  assert_true (g_array_index (weights, double, 0) == 0.45359237);
  assert_null (lb_weights_parse (LB_UNITS_US, "1 lb; 3 ft", &message));
  assert_string_equal (message,
                       "“3 ft”: this unit measures something else; write it like “1¾ lb”.");
  g_free (message);
}

/* ---- The file ---- */

static void
a_file_without_variants_has_no_key (void **state)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autofree char *text = lb_writer_to_text (contents, NULL);

  assert_null (strstr (text, "variants"));
}

static void
values_land_where_they_belong (void **state)
{
  g_autofree char *path = source_path ("good/variants.rig");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (LbContents) contents = lb_contents_new ();
  const LbVariant *v = contents->variants.list;

  assert_true (lb_reader_load (file, contents, NULL));
  assert_int_equal (contents->variants.n, 4);
  assert_int_equal (v[0].n_overrides, 0);
  assert_string_equal (v[1].name, "2 lb 川");
  assert_int_equal (v[1].n_overrides, 5);
  assert_true (lb_variant_get_override (&v[1], lb_field ("weight.mass_kg"), 0)->value
               == 0.90718474);
  assert_true (lb_variant_get_override (&v[1], lb_field ("leaders[].lure.hooks"), 7)->value == 3);
  assert_true (lb_variant_get_override (&v[1], lb_field ("mainline.line_out"), 0)->value
               == LB_LINE_OUT_TOUCHING);
  assert_false (
      lb_is_set (lb_variant_get_override (&v[2], lb_field ("mainline.normal_drag"), 0)->value));
}

#define WITH_DOCUMENT(f) cmocka_unit_test_setup_teardown (f, fixture_set_up, fixture_tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    WITH_DOCUMENT (variants_come_and_go),
    WITH_DOCUMENT (what_cannot_be_done_is_no_change),
    cmocka_unit_test (names_are_mended_and_kept_apart),
    WITH_DOCUMENT (values_are_replaced_and_let_go),
    WITH_DOCUMENT (a_gesture_is_one_step),
    cmocka_unit_test (what_excludes_another_takes_its_place),
    cmocka_unit_test (a_variant_holds_only_so_many),
    cmocka_unit_test (another_law_is_whole),
    WITH_DOCUMENT (leaders_take_their_values_along),
    cmocka_unit_test (reasons_are_given_in_words),
    cmocka_unit_test (weights_become_variants),
    cmocka_unit_test (weights_are_read_as_they_are_written),
    cmocka_unit_test (a_file_without_variants_has_no_key),
    cmocka_unit_test (values_land_where_they_belong),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
