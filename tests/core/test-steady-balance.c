/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Nothing is lost between the tips and the reel: the reel carries the sum of all loads, and every
 * node is at rest. (test-steady-property checks the same on 100 000 other rigs.) */
#include "test.h"

#include "rigs.h"
#include "steady-checks.h"
#include "steady.h"

#define BALANCE 1e-8 /* N */

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

static const LbShape *
solve (const LbSetup *setup)
{
  assert_int_equal (lb_steady_solve (steady, setup, NULL), LB_STATUS_OK);
  return lb_steady_shape (steady);
}

static ShapeCheck
assert_balanced (const LbSetup *setup)
{
  const LbShape *shape = solve (setup);
  ShapeCheck check = shape_check (setup, LB_STATUS_OK, shape);

  assert_true (check.finite);
  assert_near (check.node_force, 0, BALANCE);
  assert_near (check.reel_force, 0, BALANCE);
  assert_near (check.stretch, 0, 1e-9);
  assert_true (check.lowest_body > -1e-3);
  return check;
}

/* The usual rig at every current, held and given. */
static void
test_usual_rigs (void **state)
{
  LbSetup setup = lb_setup_default ();

  for (double current = 0; current <= 2.5; current += 0.25)
    {
      setup.river.surface_current = current;
      setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.1 };
      assert_balanced (&setup);
      setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5 };
      assert_balanced (&setup);
    }
}

static double
weight_in_water (const LbLine *line, double length, double g)
{
  return (line->density - 1000) * g * M_PI / 4 * line->diameter * line->diameter * length;
}

/* In still water the reel carries what everything weighs, counted by hand. Both leaders are far too
 * short to reach the bed or the surface. The model keeps a trickle of 5 mm/s, worth 1e-4 N across;
 * without a lip it does not pull down. */
static void
test_still_water (void **state)
{
  LbSetup setup = rig_reference (0.79, 0, 0);
  const LbRig *rig = &setup.rig;
  double g = setup.river.gravity, sum;

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 3 };
  setup.rig.leaders[0].length = 1;
  setup.rig.leaders[1].length = 2;
  setup.rig.leaders[1].lure.buoyancy = -0.05;
  for (int i = 0; i < 2; i++)
    setup.rig.leaders[i].lure.down_force_ratio = 0;
  sum = rig->weight.mass * g * (1 - 1000 / rig->weight.density)
        + weight_in_water (&rig->mainline, 3, g) + weight_in_water (&rig->shank, 1, g)
        + weight_in_water (&rig->leaders[0].line, 1, g)
        + weight_in_water (&rig->leaders[1].line, 2, g) - rig->leaders[0].lure.buoyancy
        - rig->leaders[1].lure.buoyancy;
  LbVec3 pull = shape_reel_pull (solve (&setup));
  assert_near (-pull.z, sum, 1e-7);
  assert_near (pull.x, 0, 2e-4);
}

/* Line in the air keeps its whole weight. */
static void
test_still_air (void **state)
{
  LbSetup setup = rig_reference (0.79, 0, 0);
  double g = setup.river.gravity;
  const LbLine *wire = &setup.rig.mainline;
  double in_air = wire->density * g * M_PI / 4 * wire->diameter * wire->diameter;

  setup.rig.n_leaders = 0;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 3 };
  double wet = -shape_reel_pull (solve (&setup)).z;
  setup.boat.reel_height = 1.2;
  double dry = -shape_reel_pull (solve (&setup)).z;
  double buoyancy = 1000 * g * M_PI / 4 * wire->diameter * wire->diameter;
  /* Of the unstretched line 1.2 m less its stretch is above water: 1e-4 of it. */
  assert_near (dry - wet, 1.2 * buoyancy, 2e-4 * 1.2 * buoyancy);
  assert_true (dry - wet < 1.2 * in_air);
}

/* Weight dragged along, with and without friction, on a plane and on a sloping bed. */
static void
test_on_bed (void **state)
{
  LbSetup setup = rig_reference (0.57, 0.4, 0.9);

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 9 };
  for (int slope = -1; slope <= 1; slope++)
    for (int rough = 0; rough < 2; rough++)
      {
        setup.river.bed_friction = 0.6 * rough;
        setup.river.n_bed_points = 2;
        setup.river.bed_x[0] = -30;
        setup.river.bed_x[1] = 30;
        setup.river.bed_depth[0] = 6 - slope;
        setup.river.bed_depth[1] = 6 + slope;
        assert_balanced (&setup);
        const LbShape *shape = lb_steady_shape (steady);
        assert_true (shape->nodes[shape->weight].bed_force > 1);
      }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_usual_rigs),
    cmocka_unit_test (test_still_water),
    cmocka_unit_test (test_still_air),
    cmocka_unit_test (test_on_bed),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
