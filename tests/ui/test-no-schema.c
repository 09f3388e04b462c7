/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the schema is not installed the program runs all the same, with its built-in defaults. */
#include "preferences.h"
#include "test.h"

#include <gio/gio.h>

static void
defaults_hold_and_changes_last_for_the_run (void **state)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (LbPreferences) preferences = NULL;

  /* Or this test would show nothing. */
  if (source)
    assert_null (g_settings_schema_source_lookup (source, "org.layback.Layback", TRUE));
  preferences = lb_preferences_new ();
  assert_int_equal (lb_preferences_get_units (preferences), LB_UNITS_US);
  g_object_set (preferences, "units", "metric", NULL);
  assert_int_equal (lb_preferences_get_units (preferences), LB_UNITS_METRIC);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (defaults_hold_and_changes_last_for_the_run),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
