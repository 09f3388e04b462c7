/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "axes.h"
#include "test.h"

#define FOOT 0.3048 /* m, exact: the international foot */
#define INCH 0.0254

typedef struct
{
  LbQuantity quantity;
  LbUnits units;
  double per_metre;
  double major, minor; /* m */
} Case;

/* Worked by hand from the rule: the finest step whose numbers stand 34 apart, whose ticks 6. */
static const Case cases[] = {
  { LB_QUANTITY_LENGTH, LB_UNITS_US, 50, 5 * FOOT, 0.5 * FOOT },
  { LB_QUANTITY_LENGTH, LB_UNITS_US, 12, 10 * FOOT, 2 * FOOT },
  { LB_QUANTITY_LENGTH, LB_UNITS_US, 400, 0.5 * FOOT, 0.25 * FOOT },
  { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, 50, 1, 0.2 },
  { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, 8, 5, 1 },
  { LB_QUANTITY_HEIGHT, LB_UNITS_US, 250, 6 * INCH, 1 * INCH },
  { LB_QUANTITY_HEIGHT, LB_UNITS_US, 600, 3 * INCH, 1 * INCH },
  { LB_QUANTITY_HEIGHT, LB_UNITS_METRIC, 300, 0.20, 0.02 },
  { LB_QUANTITY_HEIGHT, LB_UNITS_METRIC, 2000, 0.02, 0.01 },
};

static void
test_steps (void **state)
{
  for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
    {
      const Case *c = &cases[i];
      LbTicks ticks = lb_ticks_choose (c->quantity, c->units, c->per_metre, 34, 6);

      assert_near (ticks.major, c->major, 1e-12);
      assert_near (ticks.minor, c->minor, 1e-12);
    }
}

static void
test_fine_steps_divide_coarse_ones (void **state)
{
  TestRandom random = { 11 };

  for (int i = 0; i < 2000; i++)
    {
      LbQuantity quantity = i % 2 ? LB_QUANTITY_LENGTH : LB_QUANTITY_HEIGHT;
      LbUnits units = i % 3 ? LB_UNITS_US : LB_UNITS_METRIC;
      double per_metre = test_random_log (&random, 2, 3000);
      LbTicks ticks = lb_ticks_choose (quantity, units, per_metre, 34, 6);
      double times = ticks.major / ticks.minor;

      assert_near (times, round (times), 1e-9);
      assert_true (ticks.minor == ticks.major || ticks.minor * per_metre >= 6);
    }
}

static void
test_decimals (void **state)
{
  assert_int_equal (lb_ticks_decimals (LB_QUANTITY_LENGTH, LB_UNITS_US, 5 * FOOT), 0);
  assert_int_equal (lb_ticks_decimals (LB_QUANTITY_LENGTH, LB_UNITS_US, 0.5 * FOOT), 1);
  assert_int_equal (lb_ticks_decimals (LB_QUANTITY_LENGTH, LB_UNITS_US, 0.25 * FOOT), 2);
  assert_int_equal (lb_ticks_decimals (LB_QUANTITY_LENGTH, LB_UNITS_METRIC, 0.05), 2);
  assert_int_equal (lb_ticks_decimals (LB_QUANTITY_HEIGHT, LB_UNITS_METRIC, 0.02), 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_steps),
    cmocka_unit_test (test_fine_steps_divide_coarse_ones),
    cmocka_unit_test (test_decimals),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
