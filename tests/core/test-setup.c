/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The setup a new document starts from, what no setup may be, and the geometry of weights. */
#include "setup.h"

#include <gsl/gsl_interp.h>
#include <string.h>

#include "answers.h"
#include "readings.h"
#include "steady.h"
#include "test.h"

#define PI 3.14159265358979323846

/* ---- The default ---- */

static void
default_is_a_setup (void **state)
{
  LbSetup setup = lb_setup_default ();
  const char *what = NULL;

  assert_int_equal (lb_setup_check (&setup, &what), LB_STATUS_OK);
  assert_null (what);
  assert_int_equal (lb_setup_check (&setup, NULL), LB_STATUS_OK);
  assert_near (setup.river.depth, 20 * 0.3048, 1e-12);
  assert_near (setup.rig.leaders[0].length, 10 * 0.3048, 1e-12);
  assert_near (setup.rig.leaders[1].length, 20 * 0.3048, 1e-12);
  assert_near (setup.rig.weight.mass, 1.75 * 0.45359237, 1e-8);
  assert_int_equal (setup.rig.n_leaders, 2);
}

static void
default_runs_level_in_the_band (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbSteady *steady = lb_steady_new ();
  LbReadings readings;

  assert_non_null (steady);
  assert_int_equal (lb_steady_solve (steady, &setup, NULL), LB_STATUS_OK);
  lb_readings_compute (&readings, &setup, lb_steady_shape (steady));
  assert_near (readings.weight.height, 0.1, 2e-3);
  assert_less (fabs (readings.level_difference), 4 * 0.0254);
  for (size_t i = 0; i < 2; i++)
    assert_int_equal (readings.lures[i].band, LB_BAND_INSIDE);
  lb_steady_free (steady);
}

static void
default_wire_is_as_strong_as_the_table (void **state)
{
  Answers *table = answers_read ("wire-strength.csv");
  LbLine wire = lb_setup_default ().rig.mainline;
  double d[16], mpa[16];
  size_t n = answers_rows (table);

  assert_true (n <= 16);
  for (size_t i = 0; i < n; i++)
    {
      d[i] = 0.0254 * answers_number (table, i, "d_in");
      /* 1 ksi is 6.894757 MPa, by definition of the inch, the pound and g. */
      mpa[i] = 6.894757 * answers_number (table, i, "ksi");
      assert_near (mpa[i], answers_number (table, i, "mpa"), 0.6);
      assert_near (mpa[i] * 1e6 * PI / 4 * d[i] * d[i], answers_number (table, i, "n"), 0.6);
    }
  gsl_interp *between = gsl_interp_alloc (gsl_interp_linear, n);
  gsl_interp_init (between, d, mpa, n);
  double strength = 1e6 * gsl_interp_eval (between, d, mpa, wire.diameter, NULL);
  assert_relative (wire.breaking_load, strength * PI / 4 * wire.diameter * wire.diameter, 0.005);
  gsl_interp_free (between);
  answers_free (table);
}

/* ---- What no setup may be ---- */

typedef struct
{
  size_t offset;
  double value;
  const char *what;
} BadValue;

#define AT(field) offsetof (LbSetup, field)

static void
impossible_values_are_named (void **state)
{
  static const BadValue cases[] = {
    { AT (river.depth), 0, "river depth" },
    { AT (river.depth), NAN, "river depth" },
    { AT (river.surface_current), -0.1, "surface current" },
    { AT (river.surface_current), INFINITY, "surface current" },
    { AT (river.profile.exponent), 0, "profile exponent" },
    { AT (river.bed_friction), -1, "bed friction" },
    { AT (river.temperature), NAN, "water temperature" },
    { AT (river.temperature), 200, "water temperature" },
    { AT (river.density), 0, "water density" },
    { AT (river.kinematic_viscosity), -1e-6, "water viscosity" },
    { AT (river.gravity), 0, "gravity" },
    { AT (boat.speed_over_ground), NAN, "boat speed" },
    { AT (boat.reel_height), -0.1, "reel height" },
    { AT (boat.position), INFINITY, "boat position" },
    { AT (rig.line_out.value), -1, "height of the weight above the bed" },
    { AT (rig.mainline.diameter), 0, "mainline" },
    { AT (rig.mainline.density), NAN, "mainline" },
    { AT (rig.mainline.axial_stiffness), 0, "mainline" },
    { AT (rig.mainline.breaking_load), 0, "mainline" },
    { AT (rig.mainline.normal_drag), -1, "mainline" },
    { AT (rig.mainline.tangential_drag), NAN, "mainline" },
    { AT (rig.mainline.strum), NAN, "mainline" },
    { AT (rig.shank_length), -1, "length of the shank" },
    { AT (rig.shank_length), 0.5, "attachment of a leader" },
    { AT (rig.shank.diameter), -1, "line of the shank" },
    { AT (rig.weight.mass), 0, "mass of the weight" },
    { AT (rig.weight.density), 0, "density of the weight" },
    { AT (rig.weight.drag_coefficient), -1, "drag coefficient of the weight" },
    { AT (rig.leaders[1].attach_above_weight), 1.01, "attachment of a leader" },
    { AT (rig.leaders[1].attach_above_weight), -0.01, "attachment of a leader" },
    { AT (rig.leaders[1].length), 0, "length of a leader" },
    { AT (rig.leaders[1].line.diameter), NAN, "line of a leader" },
    { AT (rig.leaders[1].lure.drag_area), -1, "drag area of a lure" },
    { AT (rig.leaders[1].lure.down_force_ratio), NAN, "down-force ratio of a lure" },
    { AT (rig.leaders[1].lure.buoyancy), INFINITY, "buoyancy of a lure" },
    { AT (rig.leaders[1].lure.mass), -1, "mass of a lure" },
    { AT (rig.leaders[1].lure.length), NAN, "length of a lure" },
    { AT (band.low), 0.5, "band" },
    { AT (band.high), NAN, "band" },
  };

  for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
    {
      LbSetup setup = lb_setup_default ();
      const char *what = "nothing";
      memcpy ((char *) &setup + cases[i].offset, &cases[i].value, sizeof (double));
      assert_int_equal (lb_setup_check (&setup, &what), LB_STATUS_BAD_SETUP);
      assert_string_equal (what, cases[i].what);
      assert_int_equal (lb_setup_check (&setup, NULL), LB_STATUS_BAD_SETUP);
    }
}

static void
open_values_may_stay_open (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.rig.mainline.breaking_load = LB_UNSET;
  setup.rig.mainline.normal_drag = 1.2;
  setup.rig.weight.drag_coefficient = 0.5;
  setup.river.density = 1000;
  setup.river.kinematic_viscosity = 1.3e-6;
  setup.river.surface_current = 0;
  setup.boat.speed_over_ground = -0.3; /* drifting down */
  setup.rig.line_out.mode = LB_LINE_OUT_TOUCHING;
  setup.rig.line_out.value = NAN; /* no meaning then */
  setup.rig.leaders[1].attach_above_weight = setup.rig.shank_length;
  setup.rig.leaders[0].attach_above_weight = 0;
  assert_int_equal (lb_setup_check (&setup, NULL), LB_STATUS_OK);
  setup.rig.n_leaders = 0;
  setup.rig.shank_length = 0;
  assert_int_equal (lb_setup_check (&setup, NULL), LB_STATUS_OK);
}

static void
assert_bad (const LbSetup *setup, const char *expected)
{
  const char *what = "nothing";

  assert_int_equal (lb_setup_check (setup, &what), LB_STATUS_BAD_SETUP);
  assert_string_equal (what, expected);
}

static void
lists_must_be_in_order (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.river.n_bed_points = 3;
  for (int i = 0; i < 3; i++)
    {
      setup.river.bed_x[i] = 10 * i;
      setup.river.bed_depth[i] = 5;
    }
  assert_int_equal (lb_setup_check (&setup, NULL), LB_STATUS_OK);
  setup.river.bed_x[2] = 10;
  assert_bad (&setup, "order of the bed points");
  setup.river.bed_x[2] = NAN;
  assert_bad (&setup, "distance of a bed point");
  setup.river.bed_depth[1] = 0;
  assert_bad (&setup, "depth of a bed point");
  setup.river.n_bed_points = LB_MAX_BED_POINTS + 1;
  assert_bad (&setup, "number of bed points");
  setup.river.n_bed_points = 0;

  LbProfile *profile = &setup.river.profile;
  profile->law = LB_PROFILE_POINTS;
  profile->n_points = 0;
  assert_bad (&setup, "number of profile points");
  profile->n_points = LB_MAX_PROFILE_POINTS + 1;
  assert_bad (&setup, "number of profile points");
  profile->n_points = 2;
  profile->height_fraction[0] = 0.2;
  profile->height_fraction[1] = 0.8;
  profile->speed_fraction[0] = 0.7;
  profile->speed_fraction[1] = 1;
  assert_int_equal (lb_setup_check (&setup, NULL), LB_STATUS_OK);
  profile->height_fraction[1] = 0.2;
  assert_bad (&setup, "order of the profile points");
  profile->height_fraction[1] = 1.1;
  assert_bad (&setup, "height of a profile point");
  profile->height_fraction[1] = 0.8;
  profile->speed_fraction[1] = -1;
  assert_bad (&setup, "speed of a profile point");
  profile->law = LB_PROFILE_LOG;
  assert_bad (&setup, "bed roughness");
}

static void
choices_must_exist (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.river.profile.law = (LbProfileLaw) 99;
  assert_bad (&setup, "profile law");
  setup = lb_setup_default ();
  setup.river.along = (LbAlong) 99;
  assert_bad (&setup, "rule along the river");
  setup = lb_setup_default ();
  setup.rig.line_out.mode = (LbLineOutMode) 99;
  assert_bad (&setup, "way the line out is given");
  setup = lb_setup_default ();
  setup.rig.weight.shape = (LbWeightShape) 99;
  assert_bad (&setup, "shape of the weight");
  setup = lb_setup_default ();
  setup.rig.n_leaders = LB_MAX_LEADERS + 1;
  assert_bad (&setup, "number of leaders");
  setup = lb_setup_default ();
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 0 };
  assert_bad (&setup, "line out");
}

/* ---- The weight ---- */

static void
lead_in_water (void **state)
{
  Answers *balls = answers_read ("sinking-balls.csv");

  for (size_t i = 0; i < answers_rows (balls); i++)
    if (answers_has (balls, i, "mass"))
      {
        LbWeight ball = { answers_number (balls, i, "mass"), 11340, LB_WEIGHT_BALL, LB_UNSET };
        double d = answers_number (balls, i, "d");
        assert_relative (lb_weight_in_water (&ball, 999.6996, 9.80665),
                         answers_number (balls, i, "weight"), 1e-6);
        assert_relative (lb_weight_frontal_area (&ball), PI / 4 * d * d, 1e-6);
      }
  answers_free (balls);

  /* 1 kg of lead at 1000 kg/m3: g (1 - 1000/11340). */
  LbWeight kilo = { 1, 11340, LB_WEIGHT_BALL, LB_UNSET };
  assert_near (lb_weight_in_water (&kilo, 1000, 9.80665), 8.941866, 1e-6);
}

/* The areas that the shapes' descriptions give for a body of unit diameter. */
static void
areas_of_the_other_shapes (void **state)
{
  /* Volume of the unit shape, and the area it shows. */
  const struct
  {
    LbWeightShape shape;
    double volume, area;
  } shapes[] = {
    { LB_WEIGHT_BALL, PI / 6, PI / 4 },
    { LB_WEIGHT_PEAR, PI / 12 + PI / 12, PI / 8 + 0.5 }, /* half ball and cone, both PI/12 */
    { LB_WEIGHT_TORPEDO, 4 * PI / 4, PI / 4 },
    { LB_WEIGHT_DISC, PI / 4 / 6, PI / 4 },
  };
  double density = 7850;

  for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++)
    for (double d = 0.02; d < 0.2; d += 0.03)
      {
        LbWeight weight = { density * shapes[i].volume * d * d * d, density, shapes[i].shape,
                            LB_UNSET };
        assert_relative (lb_weight_frontal_area (&weight), shapes[i].area * d * d, 1e-12);
      }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (default_is_a_setup),
    cmocka_unit_test (default_runs_level_in_the_band),
    cmocka_unit_test (default_wire_is_as_strong_as_the_table),
    cmocka_unit_test (impossible_values_are_named),
    cmocka_unit_test (open_values_may_stay_open),
    cmocka_unit_test (lists_must_be_in_order),
    cmocka_unit_test (choices_must_exist),
    cmocka_unit_test (lead_in_water),
    cmocka_unit_test (areas_of_the_other_shapes),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
