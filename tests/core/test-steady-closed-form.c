/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steady run against cables that have a closed form (answers/cable-cases.csv). Every one is
 * a real setup: a uniform or a 1/7 stream, pinned density, the weight sized and its drag pinned so
 * that it pulls with the case's W and D; "weightless" is a line as dense as the water.
 *
 * Cases that do not fit: c, a catenary between two supports (a rig has one); f, f3, g, k, which
 * move (the terminal speeds of f are used turned round: the water moves, the ball hangs). The rods
 * d and d2 are hung as lines: over 1 m the line's own bow turns its chord by less than 0.005
 * degrees, so they are held to the 0.01 degrees alone. */
#include "test.h"

#include <string.h>

#include <gsl/gsl_math.h>

#include "answers.h"
#include "rigs.h"
#include "steady-checks.h"
#include "steady.h"

#define DEGREE (M_PI / 180)
#define STEEL_WEIGHT 0.01328617 /* N/m in water, 0.5 mm, 7900 kg/m3 */
#define SPEED 1.5               /* m/s, the usual stream */
#define RELATIVE 1e-4
#define ANGLE 0.01 /* degrees */
#define LEAST_ORDER 1.8

static Answers *answers;
static LbSteady *steady;

static int
set_up (void **state)
{
  steady = lb_steady_new ();
  answers = answers_read ("cable-cases.csv");
  return steady != NULL ? 0 : -1;
}

static int
tear_down (void **state)
{
  lb_steady_free (steady);
  answers_free (answers);
  return 0;
}

/* NAN when the file gives no such figure for the case. */
static double
case_answer (const char *name, const char *quantity)
{
  for (size_t row = 0; row < answers_rows (answers); row++)
    if (strcmp (answers_text (answers, row, "case"), name) == 0)
      return answers_has (answers, row, quantity) ? answers_number (answers, row, quantity) : NAN;
  fail_msg ("no case %s", name);
  return NAN;
}

/* ---- Measuring a shape ---- */

typedef struct
{
  const char *name;
  double value;
  bool is_angle; /* degrees */
} Quantity;

#define N_QUANTITIES 6
typedef void (*Measure) (const LbShape *shape, Quantity q[N_QUANTITIES]);

/* The mainline from the reel down to the weight. */
static void
measure_mainline (const LbShape *shape, Quantity q[N_QUANTITIES])
{
  LbVec3 span = lb_vec3_sub (shape->nodes[shape->weight].position, shape->nodes[0].position);
  LbVec3 top = shape_reel_pull (shape);
  LbVec3 low = shape_pull_above (shape, shape->weight);

  q[0] = (Quantity){ "x", span.x, false };
  q[1] = (Quantity){ "z", -span.z, false };
  q[2] = (Quantity){ "T", lb_vec3_norm (top), false };
  q[3] = (Quantity){ "phi", atan2 (-top.z, top.x) / DEGREE, true };
  q[4] = (Quantity){ "phi_low", atan2 (low.z, -low.x) / DEGREE, true };
  q[5] = (Quantity){ "s", shape->line_out, false };
}

/* The first leader from its attachment to its lure. */
static void
measure_leader (const LbShape *shape, Quantity q[N_QUANTITIES])
{
  LbVec3 span = lb_vec3_sub (shape->nodes[shape->lure[0]].position,
                             shape->nodes[shape->attachment[0]].position);
  LbVec3 pull = shape_pull_of_part (shape, LB_PART_LEADER_0);

  q[0] = (Quantity){ "x", span.x, false };
  q[1] = (Quantity){ "z", -span.z, false };
  q[2] = (Quantity){ "behind", span.x, false };
  q[3] = (Quantity){ "below", -span.z, false };
  q[4] = (Quantity){ "angle", atan2 (-pull.z, pull.x) / DEGREE, true };
  q[5] = (Quantity){ "T", lb_vec3_norm (pull), false };
}

/* What the mainline feels just above a junction below it. */
static void
measure_junction (const LbShape *shape, Quantity q[N_QUANTITIES])
{
  LbVec3 pull = shape_pull_above (shape, shape->shank_top);

  memset (q, 0, N_QUANTITIES * sizeof *q);
  q[0] = (Quantity){ "T", lb_vec3_norm (pull), false };
  q[1] = (Quantity){ "phi", atan2 (pull.z, -pull.x) / DEGREE, true };
}

static const LbShape *
solve (const LbSetup *setup, size_t segments)
{
  LbSteadyOptions options = { .segments = segments, .cold = true };

  assert_int_equal (lb_steady_solve (steady, setup, &options), LB_STATUS_OK);
  return lb_steady_shape (steady);
}

static void
assert_quantity (const char *name, const Quantity *q, double answer)
{
  double limit = q->is_angle ? ANGLE : RELATIVE * fabs (answer);

  if (!(fabs (q->value - answer) <= limit))
    fail_msg ("case %s: %s is %.9g, not %.9g", name, q->name, q->value, answer);
}

/* Solves on a mesh of `segments` and twice halved; the answers must be met on the first, and the
 * changes must fall with the order of the scheme. */
static void
assert_case_from (size_t segments, const char *name, const LbSetup *setup, Measure measure)
{
  Quantity q[3][N_QUANTITIES];
  size_t met = 0;

  for (int k = 0; k < 3; k++)
    measure (solve (setup, segments << k), q[k]);
  for (int i = 0; i < N_QUANTITIES && q[0][i].name != NULL; i++)
    {
      double answer = case_answer (name, q[0][i].name);
      double first = fabs (q[0][i].value - q[1][i].value);
      double second = fabs (q[1][i].value - q[2][i].value);

      if (isnan (answer))
        continue;
      assert_quantity (name, &q[0][i], answer);
      met++;
      if (second > 1e-8 * fmax (1, fabs (answer)) && !(log2 (first / second) >= LEAST_ORDER))
        fail_msg ("case %s: %s converges with order %.2f only", name, q[0][i].name,
                  log2 (first / second));
    }
  assert_true (met > 0);
}

static void
assert_case (const char *name, const LbSetup *setup, Measure measure)
{
  assert_case_from (LB_STEADY_DEFAULT_SEGMENTS, name, setup, measure);
}

/* ---- The cases ---- */

static LbSetup
heavy (LbSetup setup)
{
  setup.rig.mainline.density = rig_line_density (&setup, 0.0005, STEEL_WEIGHT);
  return setup;
}

static void
test_weightless (void **state)
{
  LbSetup setup = rig_cable (20, 8, 1, SPEED);

  assert_case ("a", &setup, measure_mainline);
}

/* A leader of `length` and `line` on a weight too heavy to move, 50 m down. */
static LbSetup
leader_setup (double length, LbLine line, double drag, double down, double up)
{
  LbSetup setup = rig_cable (50, 1e4, 1, SPEED);
  LbLeader *leader = &setup.rig.leaders[0];

  setup.rig.n_leaders = 1;
  *leader = (LbLeader){ .length = length, .line = line };
  leader->lure.drag_area = drag / (0.5 * 1000 * SPEED * SPEED);
  leader->lure.down_force_ratio = down / drag;
  leader->lure.buoyancy = up;
  leader->lure.mass = 0.01;
  leader->lure.length = 0.07;
  return setup;
}

/* A reel is never below its rig, so the buoyant end is a lure with 8 N of buoyancy. */
static void
test_weightless_mirrored (void **state)
{
  LbSetup setup = rig_cable (20, 8, 1, SPEED);

  setup = leader_setup (20, setup.rig.mainline, 1, 0, 8);
  assert_case ("a-mirror", &setup, measure_leader);
}

/* Started at its own critical angle a heavy cable is straight all along. */
static void
test_critical_angle (void **state)
{
  static const struct
  {
    double speed;
    const char *name;
  } streams[] = { { 0.3, "b-0.3" }, { 0.5, "b-0.5" }, { 1.0, "b-1.0" }, { 1.5, "b-1.5" } };

  for (size_t k = 0; k < 4; k++)
    {
      double phi = case_answer (streams[k].name, "phi");
      LbSetup setup = heavy (rig_cable (20, 1, 1 / tan (phi * DEGREE), streams[k].speed));
      const LbShape *shape = solve (&setup, 0);
      for (size_t i = 1; i < shape->n_nodes; i++)
        {
          LbVec3 d =
              lb_vec3_sub (shape->nodes[shape->nodes[i].parent].position, shape->nodes[i].position);
          assert_near (atan2 (d.z, -d.x) / DEGREE, phi, ANGLE);
        }
    }
}

static void
test_heavy (void **state)
{
  LbSetup setup = heavy (rig_cable (20, 8, 1, SPEED));

  assert_case ("b2", &setup, measure_mainline);
  setup.rig.mainline.tangential_drag = 0.02;
  assert_case ("b3", &setup, measure_mainline);
  /* Of these 200 m all the bend is in the lowest one: the default mesh has but a node there. */
  setup = heavy (rig_cable (200, 0.2, 0.1, SPEED));
  assert_case_from (1600, "b4", &setup, measure_mainline);
}

static LbSetup
catenary (double axial_stiffness)
{
  LbSetup setup = heavy (rig_cable (50, 0.5, 0.2, SPEED));

  setup.rig.mainline.normal_drag = 0;
  setup.rig.mainline.axial_stiffness = axial_stiffness;
  return setup;
}

static void
test_catenary (void **state)
{
  LbSetup stiff = catenary (1e9);
  LbSetup elastic = catenary (37895.461);
  Quantity a[N_QUANTITIES], b[N_QUANTITIES];

  assert_case ("c2", &stiff, measure_mainline);
  measure_mainline (solve (&stiff, 400), a);
  measure_mainline (solve (&elastic, 400), b);
  /* The answer is the first-order stretch: T / EA, 3e-5, is what it leaves out. */
  assert_near (b[0].value - a[0].value, case_answer ("c3", "dx"),
               RELATIVE * case_answer ("c3", "dx"));
  assert_near (b[1].value - a[1].value, case_answer ("c3", "dz"),
               RELATIVE * case_answer ("c3", "dz"));
}

static void
assert_chord (const char *name, const LbSetup *setup)
{
  const LbShape *shape = solve (setup, 0);
  LbVec3 p = shape->nodes[shape->weight].position;

  assert_near (atan2 (p.x, -p.z) / DEGREE, case_answer (name, "theta"), ANGLE);
}

static void
test_rod (void **state)
{
  LbSetup setup = heavy (rig_cable (1, 8, 1, SPEED));

  assert_chord ("d2", &setup);
  setup.rig.mainline.normal_drag = 0;
  assert_chord ("d", &setup);
}

/* Still water, boat at rest; the trickle of 5 mm/s that the model keeps there pushes 20 m of wire
 * downstream by 0.2 mm. */
static void
test_stretch (void **state)
{
  LbSetup setup = heavy (rig_cable (20, 8, 0, 0));
  Quantity q[N_QUANTITIES];

  setup.rig.mainline.axial_stiffness = 193e9 * M_PI * 0.0005 * 0.0005 / 4;
  measure_mainline (solve (&setup, 0), q);
  assert_near (q[1].value - 20, case_answer ("e", "stretch"),
               RELATIVE * case_answer ("e", "stretch"));
  assert_near (q[0].value, 0, 3e-4);

  setup = rig_cable (6.096, 5, 0, 0);
  setup.rig.mainline.diameter = 0.0004;
  setup.rig.mainline.axial_stiffness = 2.5e9 * M_PI * 0.0004 * 0.0004 / 4;
  measure_mainline (solve (&setup, 0), q);
  assert_near (q[1].value - 6.096, case_answer ("e2", "stretch"),
               RELATIVE * case_answer ("e2", "stretch"));
}

/* Shank and leader are ideal lines that hand their forces on unchanged. */
static void
test_junction (void **state)
{
  LbSetup setup = rig_cable (20, 8, 1, SPEED);
  LbLeader *leader = &setup.rig.leaders[0];

  *leader = leader_setup (1, rig_ideal_line (&setup.river), 0.6, 0, 0.2).rig.leaders[0];
  setup.rig.n_leaders = 1;
  setup.rig.shank_length = 1;
  leader->attach_above_weight = 0.5;
  assert_case ("i", &setup, measure_junction);
}

static void
test_leader (void **state)
{
  LbLine line = { 0.0004, 1000, 1e9, LB_UNSET, 1.2, 0, 1 };
  LbSetup setup = leader_setup (3.048, line, 0.6, 0.5, 0);

  /* Twice the default mesh, of which a leader has a quarter. */
  assert_case_from (2 * LB_STEADY_DEFAULT_SEGMENTS, "i2-3.048", &setup, measure_leader);
  setup = leader_setup (6.096, line, 0.6, 0.5, 0);
  assert_case_from (2 * LB_STEADY_DEFAULT_SEGMENTS, "i2-6.096", &setup, measure_leader);
}

/* Weight held 0.5 m above the bed; the drag of 1 N is at the speed there. The floor of 0.01 m in
 * the profile changes the speed by 1e-5 at the most. */
static void
test_power_law (void **state)
{
  static const char *const names[] = { "h", "h2", "h3", "h4" };

  for (int k = 0; k < 4; k++)
    {
      double boat = k % 2 == 0 ? 0 : 0.3;
      LbSetup setup = rig_cable (5, 8, 1, SPEED);
      setup.river.depth = 6;
      setup.river.profile = (LbProfile){ .law = LB_PROFILE_POWER, .exponent = 7 };
      setup.boat.speed_over_ground = boat;
      setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.5 };
      rig_set_weight (&setup, 8, 1, boat + SPEED * pow (0.5 / 6, 1.0 / 7));
      if (k >= 2)
        setup = heavy (setup);
      assert_case (names[k], &setup, measure_mainline);
    }
}

/* An ideal line as long as a straight one at 20 degrees to the bed. The bed gives way a little, so
 * the force is held to the formula at the angle the line then has, the angle to 0.01 degrees. */
static void
test_dragged_weight (void **state)
{
  static const double friction[] = { 0.3, 0.5, 0.8 };
  static const char *const names[] = { "j-0.3", "j-0.5", "j-0.8" };

  for (int k = 0; k < 3; k++)
    {
      double mu = friction[k];
      LbSetup setup = rig_cable (6 / sin (20 * DEGREE), 8, 1, SPEED);
      setup.river.depth = 6;
      setup.river.bed_friction = mu;
      setup.river.surface_current = 1.0;
      setup.boat.speed_over_ground = 0.5;
      setup.rig.mainline = rig_ideal_line (&setup.river);
      const LbShape *shape = solve (&setup, 0);
      LbVec3 p = shape->nodes[shape->weight].position;
      double angle = atan2 (-p.z, p.x);
      double tension = lb_vec3_norm (shape_reel_pull (shape));

      assert_near (angle / DEGREE, 20, ANGLE);
      assert_near (tension, (mu * 8 + 1) / (cos (angle) + mu * sin (angle)), 1e-6);
      assert_near (tension, case_answer (names[k], "T"), RELATIVE * tension);
      assert_near (shape->nodes[shape->weight].bed_force, case_answer (names[k], "N"),
                   RELATIVE * 8);
    }
}

/* Lead balls towed at a terminal speed of theirs by Clift and Gauvin's curve hang at 45 degrees;
 * with the drag of Brown and Lawler's curve pinned, as that table says. Water of 10 C by its
 * formulas. */
static void
test_towed_balls (void **state)
{
  Answers *balls = answers_read ("towed-balls.csv");

  for (size_t row = 0; row < answers_rows (balls); row++)
    {
      double speed = answers_number (balls, row, "speed");
      double drag = answers_number (balls, row, "drag");
      LbSetup setup = rig_cable (2, 8, 1, speed);
      LbWeight *weight = &setup.rig.weight;
      setup.river.density = LB_UNSET;
      weight->mass = answers_number (balls, row, "mass_kg");
      weight->drag_coefficient = LB_UNSET;
      if (strcmp (answers_text (balls, row, "case"), "bl") == 0)
        weight->drag_coefficient =
            drag / (0.5 * 999.6996 * lb_weight_frontal_area (weight) * speed * speed);
      const LbShape *shape = solve (&setup, 0);
      LbVec3 pull = shape_pull_above (shape, shape->weight);
      assert_near (-pull.x, drag, RELATIVE * drag);
      assert_near (atan2 (-pull.x, pull.z) / DEGREE, answers_number (balls, row, "angle"), ANGLE);
    }
  answers_free (balls);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_weightless),     cmocka_unit_test (test_weightless_mirrored),
    cmocka_unit_test (test_critical_angle), cmocka_unit_test (test_heavy),
    cmocka_unit_test (test_catenary),       cmocka_unit_test (test_rod),
    cmocka_unit_test (test_stretch),        cmocka_unit_test (test_junction),
    cmocka_unit_test (test_leader),         cmocka_unit_test (test_power_law),
    cmocka_unit_test (test_dragged_weight), cmocka_unit_test (test_towed_balls),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
