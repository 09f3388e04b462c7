/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of fields: every entry finds its own value in the setup and nothing else's. */
#include "current.h"
#include "data_path.h"
#include "model-support.h"

#include <string.h>

static void
every_path_is_found (void **state)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  assert_true (n_fields > 50);
  for (size_t i = 0; i < n_fields; i++)
    {
      assert_ptr_equal (lb_field_find (fields[i].path, NULL), &fields[i]);
      assert_ptr_equal (lb_field (fields[i].path), &fields[i]);
      for (size_t j = 0; j < i; j++)
        assert_string_not_equal (fields[i].path, fields[j].path);
    }
}

static void
a_leader_is_found_by_its_number (void **state)
{
  size_t leader = 99;
  const LbField *field = lb_field ("leaders[].lure.buoyancy_n");
  g_autofree char *path = lb_field_full_path (field, 7);

  assert_string_equal (path, "leaders[7].lure.buoyancy_n");
  assert_ptr_equal (lb_field_find (path, &leader), field);
  assert_int_equal (leader, 7);
  assert_ptr_equal (lb_field_find ("leaders.3.lure.buoyancy_n", &leader), field);
  assert_int_equal (leader, 3);
  assert_ptr_equal (lb_field_find ("leaders[].lure.buoyancy_n", &leader), field);
  assert_int_equal (leader, 0);
}

static void
wrong_paths_are_not_found (void **state)
{
  static const char *const wrong[] = {
    "",
    "river",
    "river.",
    "river.depth",
    "river.depth_m.",
    "River.depth_m",
    "leaders",
    "leaders[8].length_m",
    "leaders[-1].length_m",
    "leaders[1.length_m",
    "leaders[1]length_m",
    "leaders.length_m",
    "leaders..length_m",
    "leaders[99999999999999999999].length_m",
    "leaders[x].length_m",
    "leaders[0]",
    "leaders[0].colour",
  };

  for (size_t i = 0; i < G_N_ELEMENTS (wrong); i++)
    if (lb_field_find (wrong[i], NULL))
      fail_msg ("\"%s\" was found", wrong[i]);
}

/* Fields that another one may set along with itself. */
static bool
hang_together (const LbField *a, const LbField *b)
{
  return (g_str_has_prefix (a->path, "river.profile.")
          && g_str_has_prefix (b->path, "river.profile."))
         || (g_str_has_prefix (a->path, "mainline.line_out")
             && g_str_has_prefix (b->path, "mainline.line_out"));
}

static void
setting_one_changes_that_one_alone (void **state)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);
  TestRandom random = { 11 };

  for (size_t i = 0; i < n_fields; i++)
    for (size_t leader = 0; leader < (fields[i].stride ? LB_MAX_LEADERS : 1); leader++)
      {
        LbSetup setup = lb_setup_default (), before;
        double value = fields[i].kind == LB_FIELD_CHOICE
                           ? fields[i].choices[fields[i].n_choices - 1].value
                           : test_random (&random, fields[i].minimum, fields[i].maximum);

        setup.rig.n_leaders = LB_MAX_LEADERS;
        before = setup;
        lb_field_set (&fields[i], &setup, leader, value);
        assert_true (lb_field_get (&fields[i], &setup, leader) == value);
        for (size_t j = 0; j < n_fields; j++)
          for (size_t k = 0; k < (fields[j].stride ? LB_MAX_LEADERS : 1); k++)
            {
              double a = lb_field_get (&fields[j], &before, k);
              double b = lb_field_get (&fields[j], &setup, k);
              if ((i == j && k == leader) || hang_together (&fields[i], &fields[j]))
                continue;
              if (!(isnan (a) && isnan (b)) && a != b)
                fail_msg ("%s changed %s", fields[i].path, fields[j].path);
            }
      }
}

static void
limits_are_inclusive (void **state)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  for (size_t i = 0; i < n_fields; i++)
    {
      const LbField *field = &fields[i];

      assert_less (field->minimum, field->maximum);
      assert_true (lb_field_accepts (field, field->minimum));
      assert_true (lb_field_accepts (field, field->maximum));
      assert_false (lb_field_accepts (field, nextafter (field->minimum, -INFINITY)));
      assert_false (lb_field_accepts (field, nextafter (field->maximum, INFINITY)));
      assert_false (lb_field_accepts (field, INFINITY));
      if (field->kind == LB_FIELD_NUMBER)
        assert_int_equal (lb_field_accepts (field, field->minimum + 0.5),
                          !field->whole && field->minimum + 0.5 <= field->maximum);
      assert_int_equal (lb_field_accepts (field, NAN), field->nullable);
      assert_int_equal (field->nullable, field->unset_label != NULL);
      assert_true (lb_field_clamp (field, -INFINITY) == field->minimum);
      assert_true (lb_field_clamp (field, INFINITY) == field->maximum);
      assert_true (field->usual_low <= field->usual_high);
      if (field->usual_high > 0)
        assert_true (field->usual_low >= field->minimum && field->usual_high <= field->maximum);
    }
}

static void
every_field_can_be_shown (void **state)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  for (size_t i = 0; i < n_fields; i++)
    {
      g_autofree char *label = lb_field_full_label (&fields[i], 1);

      assert_true (g_unichar_isupper (g_utf8_get_char (label)));
      assert_true (fields[i].kind == LB_FIELD_CHOICE
                   || lb_field_step (&fields[i], LB_UNITS_US) > 0);
      for (size_t j = 0; j < fields[i].n_choices; j++)
        {
          const LbFieldChoice *choice = &fields[i].choices[j];
          assert_true (*choice->label != '\0');
          assert_ptr_equal (lb_field_choice (&fields[i], choice->value), choice);
          assert_ptr_equal (lb_field_choice_named (&fields[i], choice->name), choice);
        }
    }
}

static void
material_and_roughness_keep_in_step (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbProfile *profile = &setup.river.profile;

  lb_field_set (lb_field ("river.profile.law"), &setup, 0, LB_PROFILE_LOG);
  lb_field_set (lb_field ("river.profile.bed_material"), &setup, 0, LB_BED_MATERIAL_COBBLE);
  assert_true (profile->roughness == lb_bed_material_roughness (LB_BED_MATERIAL_COBBLE));
  assert_true (profile->roughness > 0);
  lb_field_set (lb_field ("river.profile.roughness_m"), &setup, 0, 0.123);
  assert_int_equal (profile->material, LB_BED_MATERIAL_NONE);
}

static void
line_out_follows_the_value_set (void **state)
{
  LbSetup setup = lb_setup_default ();

  lb_field_set (lb_field ("mainline.line_out.given_m"), &setup, 0, 7);
  assert_int_equal (setup.rig.line_out.mode, LB_LINE_OUT_GIVEN);
  assert_true (lb_field_applies (lb_field ("mainline.line_out.given_m"), &setup));
  assert_false (lb_field_applies (lb_field ("mainline.line_out.weight_above_bed_m"), &setup));
  lb_field_set (lb_field ("mainline.line_out.weight_above_bed_m"), &setup, 0, 0.2);
  assert_int_equal (setup.rig.line_out.mode, LB_LINE_OUT_WEIGHT_ABOVE_BED);
}

/* What every program starts with must be within what it accepts. */
static void
the_default_is_accepted (void **state)
{
  LbSetup setup = lb_setup_default ();
  g_autoptr (GError) error = NULL;

  if (!lb_setup_validate (&setup, &error))
    fail_msg ("%s", error->message);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_path_is_found),
    cmocka_unit_test (a_leader_is_found_by_its_number),
    cmocka_unit_test (wrong_paths_are_not_found),
    cmocka_unit_test (setting_one_changes_that_one_alone),
    cmocka_unit_test (limits_are_inclusive),
    cmocka_unit_test (every_field_can_be_shown),
    cmocka_unit_test (material_and_roughness_keep_in_step),
    cmocka_unit_test (line_out_follows_the_value_set),
    cmocka_unit_test (the_default_is_accepted),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
