/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the user sets: kept where there is a schema, and worded back and forth. */
#include "preferences.h"
#include "preferences_window.h"
#include "variants_weights.h"
#include "test.h"
#include "words.h"

#include <glib/gstdio.h>

static void
count_cb (int *count)
{
  (*count)++;
}

static void
a_new_installation_has_the_defaults_of_the_schema (void **state)
{
  g_autoptr (LbPreferences) preferences = lb_preferences_new ();
  double low, high;
  gsize n;

  assert_int_equal (lb_preferences_get_units (preferences), LB_UNITS_US);
  assert_int_equal (lb_preferences_get_scheme (preferences), LB_SCHEME_FOLLOW);
  assert_int_equal (lb_preferences_get_decimals (preferences), -1);
  assert_false (lb_preferences_get_show_timings (preferences));
  assert_near (lb_preferences_get_text_scale (preferences), 1, 0);
  assert_near (lb_preferences_get_level_within (preferences), LB_LEVEL_WITHIN, 0);
  assert_near (lb_preferences_get_hold_height (preferences), 4 * 0.0254, 1e-12);
  lb_preferences_get_band (preferences, &low, &high);
  assert_near (low, 4 * 0.0254, 1e-12);
  assert_near (high, 18 * 0.0254, 1e-12);
  lb_preferences_get_weights (preferences, &n);
  assert_true (n > 0);
}

static void
what_is_set_is_there_the_next_time (void **state)
{
  const double kg[] = { 0.9, 0.4, -1, NAN, 1.8 };
  const double *kept;
  gsize n;

  {
    g_autoptr (LbPreferences) preferences = lb_preferences_new ();

    g_object_set (preferences, "units", "metric", "theme", "dark", "text-size", "large",
                  "level-within", 0.2, "decimals", 2, NULL);
    lb_preferences_set_weights (preferences, kg, G_N_ELEMENTS (kg));
  }
  {
    g_autoptr (LbPreferences) preferences = lb_preferences_new ();

    assert_int_equal (lb_preferences_get_units (preferences), LB_UNITS_METRIC);
    assert_int_equal (lb_preferences_get_scheme (preferences), LB_SCHEME_DARK);
    assert_int_equal (lb_preferences_get_decimals (preferences), 2);
    assert_near (lb_preferences_get_text_scale (preferences), 1.15, 0);
    assert_near (lb_preferences_get_level_within (preferences), 0.2, 0);
    kept = lb_preferences_get_weights (preferences, &n);
    assert_int_equal (n, 3);
    assert_near (kept[0], 0.4, 0);
    assert_near (kept[1], 0.9, 0);
    assert_near (kept[2], 1.8, 0);
    g_object_set (preferences, "units", "us", "theme", "follow", "text-size", "normal",
                  "level-within", 0.1016, "decimals", -1, NULL);
  }
}

static void
each_change_is_told_once_and_no_change_not_at_all (void **state)
{
  g_autoptr (LbPreferences) preferences = lb_preferences_new ();
  const double kg[] = { 0.5, 1.0 };
  int units = 0, weights = 0;

  g_signal_connect_swapped (preferences, "notify::units", G_CALLBACK (count_cb), &units);
  g_signal_connect_swapped (preferences, "weights-changed", G_CALLBACK (count_cb), &weights);
  g_object_set (preferences, "units", "metric", NULL);
  g_object_set (preferences, "units", "metric", NULL);
  g_object_set (preferences, "units", "furlongs", NULL);
  assert_int_equal (units, 1);
  assert_int_equal (lb_preferences_get_units (preferences), LB_UNITS_METRIC);
  lb_preferences_set_weights (preferences, kg, 2);
  lb_preferences_set_weights (preferences, kg, 2);
  assert_int_equal (weights, 1);
  g_object_set (preferences, "units", "us", NULL);
}

static void
weights_are_read_in_any_unit (void **state)
{
  g_autofree char *message = NULL;
  g_autoptr (GArray) weights =
      lb_weights_parse (LB_UNITS_US, "1 lb; 1 1/4 lb ;0.9 kg; 3", &message);
  const double pound = 0.45359237;
  const double expected[] = { pound, 1.25 * pound, 0.9, 3 * pound };

  assert_non_null (weights);
  assert_null (message);
  assert_int_equal (weights->len, G_N_ELEMENTS (expected));
  for (guint i = 0; i < weights->len; i++)
    assert_near (g_array_index (weights, double, i), expected[i], 1e-9);
}

static void
what_is_no_weight_is_refused_with_a_message (void **state)
{
  const char *wrong[] = { "1 lb; heavy", "2 ft", "900 kg", "1 lb; -2 lb", "1,2", "1 lb, 2 lb" };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autofree char *message = NULL;
      g_autoptr (GArray) weights = lb_weights_parse (LB_UNITS_US, wrong[i], &message);

      assert_null (weights);
      assert_non_null (message);
      assert_true (*message != '\0');
    }
}

/* A run before this one may have left settings. */
static void
forget_settings (void)
{
  g_autofree char *path =
      g_build_filename (g_get_user_config_dir (), "glib-2.0", "settings", "keyfile", NULL);

  g_unlink (path);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_new_installation_has_the_defaults_of_the_schema),
    cmocka_unit_test (what_is_set_is_there_the_next_time),
    cmocka_unit_test (each_change_is_told_once_and_no_change_not_at_all),
    cmocka_unit_test (weights_are_read_in_any_unit),
    cmocka_unit_test (what_is_no_weight_is_refused_with_a_message),
  };

  forget_settings ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
