/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scan of all lines out before a remark: an answer that it finds is one, on the coarse mesh and
 * on the fine one, and is kept while a slider moves; a leap is told with both of its sides; looking
 * twice costs nothing; and it can be called off. */
#include "test.h"

#include "rigs.h"
#include "steady-checks.h"
#include "steady-remarks.h"
#include "steady.h"

/* Of the quasi-random rigs: some whose weight is held, but not by a line out near the guess, and
 * some whose height leaps, which the search of steady-remarks.h confirms. */
static const size_t held_rigs[] = { 509, 691, 1790, 2169, 2853, 3018, 3807, 4193 };
static const size_t leaping_rigs[] = { 151, 1302, 2318, 2782 };

#define N_HELD (sizeof held_rigs / sizeof *held_rigs)
#define N_LEAPING (sizeof leaping_rigs / sizeof *leaping_rigs)

static LbSteady *steady;

static int
set_up (void **state)
{
  steady = lb_steady_new ();
  return steady != NULL ? 0 : -1;
}

static int
tear_down (void **state)
{
  lb_steady_free (steady);
  return 0;
}

static LbSetup
rig_number (size_t index)
{
  RigSource *source = rig_source_new (RIG_WILD);
  LbSetup setup;

  rig_source_skip_to (source, index);
  rig_source_next (source, &setup);
  rig_source_free (source);
  return setup;
}

static double
asked_height (const LbSetup *setup)
{
  const LbLineOut *line_out = &setup->rig.line_out;

  return line_out->mode == LB_LINE_OUT_TOUCHING ? 0 : line_out->value;
}

static void
assert_held (const LbSetup *setup)
{
  const LbShape *shape = lb_steady_shape (steady);

  assert_near (shape_height (setup, shape, shape->weight), asked_height (setup), 1e-6);
}

/* With that line out given the rig is the same one. */
static void
test_answer (void **state)
{
  for (size_t i = 0; i < N_HELD; i++)
    {
      LbSetup setup = rig_number (held_rigs[i]), given = setup;

      assert_int_equal (lb_steady_solve (steady, &setup, &(LbSteadyOptions){ .cold = true }),
                        LB_STATUS_OK);
      assert_held (&setup);
      double line_out = lb_steady_shape (steady)->line_out;
      assert_true (line_out > LB_STEADY_SHORTEST_LINE && line_out < LB_STEADY_LONGEST_LINE);
      given.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
      assert_int_equal (lb_steady_solve (steady, &given, NULL), LB_STATUS_OK);
      assert_held (&setup);
    }
}

/* The fine mesh follows the branch of the coarse one. */
static void
test_fine (void **state)
{
  for (size_t i = 0; i < N_HELD; i++)
    {
      LbSetup setup = rig_number (held_rigs[i]);

      lb_steady_solve (steady, &setup, NULL);
      double coarse = lb_steady_shape (steady)->line_out;
      assert_int_equal (lb_steady_solve (steady, &setup, &(LbSteadyOptions){ .fine = true }),
                        LB_STATUS_OK);
      assert_held (&setup);
      assert_near (lb_steady_shape (steady)->line_out, coarse, 0.02 * coarse);
    }
}

/* A slider that moves on from there does not lose the answer, nor look for it again. */
static void
test_slider (void **state)
{
  for (size_t i = 0; i < N_HELD; i++)
    {
      LbSetup setup = rig_number (held_rigs[i]);
      double current = setup.river.surface_current;

      lb_steady_solve (steady, &setup, &(LbSteadyOptions){ .cold = true });
      double line_out = lb_steady_shape (steady)->line_out;
      for (int k = 1; k <= 10; k++)
        {
          setup.river.surface_current = current * (1 + 1e-5 * k);
          assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_OK);
          assert_held (&setup);
          assert_true (lb_steady_statistics (steady).warm);
          assert_near (lb_steady_shape (steady)->line_out, line_out, 0.01 * line_out);
        }
    }
}

static bool
stop_at_cb (void *data, size_t iterations)
{
  size_t *stop_at = data;

  return iterations >= *stop_at;
}

static void
test_leap (void **state)
{
  for (size_t i = 0; i < N_LEAPING; i++)
    {
      LbSetup setup = rig_number (leaping_rigs[i]);
      double asked = asked_height (&setup);

      assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_HEIGHT_LEAPS);
      LbSteadyStatistics first = lb_steady_statistics (steady), second;
      assert_true (first.leap_high > asked && first.leap_low <= asked);
      assert_true (first.leap_high - first.leap_low > 1e-3);
      assert_false (remark_search (&setup, first.segments, 100).held);

      /* Nothing has changed: nothing is done. */
      size_t stop_at = 1;
      LbSteadyOptions options = { .cancel = stop_at_cb, .cancel_data = &stop_at };
      assert_int_equal (lb_steady_solve (steady, &setup, &options), LB_STATUS_HEIGHT_LEAPS);
      second = lb_steady_statistics (steady);
      assert_true (second.leap_high == first.leap_high && second.leap_low == first.leap_low);

      /* Called off in the middle of the scan. */
      options.cold = true;
      stop_at = first.iterations - 1;
      assert_int_equal (lb_steady_solve (steady, &setup, &options), LB_STATUS_CANCELLED);
      assert_int_equal (lb_steady_statistics (steady).iterations, stop_at);
    }
}

/* No leap, no sides. */
static void
test_no_leap (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.0);

  assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_OK);
  assert_false (lb_is_set (lb_steady_statistics (steady).leap_high));
  assert_false (lb_is_set (lb_steady_statistics (steady).leap_low));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_answer), cmocka_unit_test (test_fine),    cmocka_unit_test (test_slider),
    cmocka_unit_test (test_leap),   cmocka_unit_test (test_no_leap),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
