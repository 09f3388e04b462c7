/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rivers to start from are rivers that a file may hold and in which the default rig can be
 * computed. */
#include "model-support.h"

#include <string.h>

#include "current.h"
#include "history.h"
#include "river_presets.h"
#include "steady.h"

static LbSetup
setup_in (const LbRiverPreset *preset)
{
  LbSetup setup = lb_setup_default ();

  lb_river_preset_apply (preset, &setup.river);
  return setup;
}

static void
every_preset_is_a_river (void **state)
{
  size_t n;
  const LbRiverPreset *presets = lb_river_presets (&n);

  assert_true (n >= 5);
  for (size_t i = 0; i < n; i++)
    {
      LbSetup setup = setup_in (&presets[i]);
      LbCurrent current;
      g_autoptr (GError) error = NULL;

      if (!lb_setup_validate (&setup, &error))
        fail_msg ("%s: %s", presets[i].id, error->message);
      lb_current_init (&current, &setup.river);
      assert_near (lb_current_at (&current, 0, 0).speed, presets[i].surface_current, 1e-12);
      assert_true (setup.river.depth == presets[i].depth && setup.river.n_bed_points == 0);
      assert_true (strlen (presets[i].sentence) > 20);
      for (size_t j = 0; j < i; j++)
        assert_string_not_equal (presets[j].id, presets[i].id);
    }
}

static void
they_go_from_slow_to_fast (void **state)
{
  size_t n;
  const LbRiverPreset *presets = lb_river_presets (&n);

  for (size_t i = 1; i < n; i++)
    assert_less (presets[i - 1].surface_current, presets[i].surface_current);
  assert_string_equal (presets[0].id, "slow-pool");
  assert_string_equal (presets[n - 1].id, "spring-flood");
}

static void
the_default_rig_is_solved_in_all (void **state)
{
  size_t n;
  const LbRiverPreset *presets = lb_river_presets (&n);
  LbSteady *steady = lb_steady_new ();

  for (size_t i = 0; i < n; i++)
    {
      LbSetup setup = setup_in (&presets[i]);
      LbStatus status = lb_steady_solve (steady, &setup, NULL);

      if (status != LB_STATUS_OK)
        fail_msg ("%s: status %d", presets[i].id, status);
    }
  lb_steady_free (steady);
}

static void
a_preset_is_one_step (void **state)
{
  g_autoptr (LbDocument) document = lb_document_new ();
  g_autoptr (LbHistory) history = lb_history_new (document);
  LbRiver river;

  lb_river_preset_apply (&lb_river_presets (NULL)[0], &river);
  assert_true (lb_history_do (history, lb_change_new_river (&river, "Slow pool")));
  /* 0.7 mph; the mile is 1609.344 m by definition. */
  assert_near (lb_document_get_setup (document)->river.surface_current, 0.7 * 1609.344 / 3600,
               1e-9);
  assert_non_null (strstr (lb_river_presets_note (), "estimate"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_preset_is_a_river),
    cmocka_unit_test (they_go_from_slow_to_fast),
    cmocka_unit_test (the_default_rig_is_solved_in_all),
    cmocka_unit_test (a_preset_is_one_step),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
