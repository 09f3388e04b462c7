/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The readings: geometry against brute force, forces against the oracle, and what people who run
 * such rigs see ("common practice, no source"). */
#include "test.h"

#include "oracle.h"
#include "readings.h"
#include "rigs.h"
#include "steady.h"

#define FOOT 0.3048
#define INCH 0.0254
#define POUND 0.45359237
#define DEGREE (M_PI / 180)

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

static LbReadings
read_setup (const LbSetup *setup, bool fine)
{
  LbReadings readings;

  assert_int_equal (lb_steady_solve (steady, setup, &(LbSteadyOptions){ .fine = fine }),
                    LB_STATUS_OK);
  lb_readings_compute (&readings, setup, lb_steady_shape (steady));
  return readings;
}

/* ---- The band ---- */

static void
test_band (void **state)
{
  LbBand band = { 0.1, 0.45 };

  assert_int_equal (lb_band_state (&band, 0.05, false), LB_BAND_BELOW);
  assert_int_equal (lb_band_state (&band, 0.1, false), LB_BAND_INSIDE);
  assert_int_equal (lb_band_state (&band, 0.3, false), LB_BAND_INSIDE);
  assert_int_equal (lb_band_state (&band, 0.45, false), LB_BAND_INSIDE);
  assert_int_equal (lb_band_state (&band, 0.46, false), LB_BAND_ABOVE);
  /* The edges belong to the band, and what rounding leaves of them; a tenth of a millimetre is
   * out. */
  assert_int_equal (lb_band_state (&band, 0.1 - 1e-7, false), LB_BAND_INSIDE);
  assert_int_equal (lb_band_state (&band, 0.1 - 1e-4, false), LB_BAND_BELOW);
  assert_int_equal (lb_band_state (&band, 0.45 + 1e-7, false), LB_BAND_INSIDE);
  assert_int_equal (lb_band_state (&band, 0.45 + 1e-4, false), LB_BAND_ABOVE);
  assert_int_equal (lb_band_state (&band, 0.3, true), LB_BAND_ON_BED);
}

/* ---- Places, forces and angles ---- */

static void
assert_point (const LbSetup *setup, const LbPointReading *p, const double place[2])
{
  assert_near (p->layback, place[0] - setup->boat.position, 2e-6);
  assert_near (p->depth, -place[1], 2e-6);
  assert_near (p->height, place[1] + setup->river.depth, 2e-6);
  assert_near (p->water_speed,
               setup->river.surface_current * pow (p->height / setup->river.depth, 1.0 / 6)
                   + setup->boat.speed_over_ground,
               /* The power law's floor of 1 cm. */
               0.003);
  assert_false (p->on_bed);
}

/* Everything that can be read off the oracle's answer. */
static void
test_against_oracle (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.0);
  OracleAnswer a;

  setup.boat.position = 17;
  LbReadings r = read_setup (&setup, true);
  assert_true (oracle_solve (&setup, NULL, &a));
  assert_point (&setup, &r.weight, a.weight);
  assert_point (&setup, &r.shank_top, a.shank_top);
  assert_int_equal (r.n_leaders, 2);
  for (int i = 0; i < 2; i++)
    {
      assert_point (&setup, &r.attachments[i], a.attachment[i]);
      assert_point (&setup, &r.lures[i].at, a.lure[i]);
      assert_near (r.lures[i].attachment_tension, a.attachment_tension[i], 1e-6);
      assert_int_equal (r.lures[i].band, lb_band_state (&setup.band, a.lure[i][1] + 6, false));
    }
  assert_near (r.shank_tension, a.shank_top_tension, 2e-6);
  assert_near (r.line_out, a.line_out, 1e-6);
  assert_near (r.hand_tension, hypot (a.reel_pull[0], a.reel_pull[1]), 2e-6);
  assert_near (r.wire_angle, atan2 (a.reel_pull[0], -a.reel_pull[1]), 1e-6);
  assert_near (r.level_difference, fabs (a.lure[1][1] - a.lure[0][1]), 4e-6);
  assert_near (r.spacing, fabs (a.lure[1][0] - a.lure[0][0]), 4e-6);
  assert_near (r.bed_depth_at_reel, 6, 1e-12);
}

/* At the lure the leader takes the lure's force: down-force 0.4 of the drag less the buoyancy. */
static void
test_leader_at_lure (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.0);
  LbReadings r = read_setup (&setup, false);

  for (int i = 0; i < 2; i++)
    {
      const LbLure *lure = &setup.rig.leaders[i].lure;
      double v = r.lures[i].at.water_speed;
      double drag = 0.5 * 1000 * lure->drag_area * v * v;
      double down = lure->down_force_ratio * drag - lure->buoyancy;
      assert_near (r.lures[i].leader_tension, hypot (drag, down), 1e-7);
      assert_near (r.lures[i].leader_angle, atan2 (down, drag), 1e-7);
    }
}

/* The weight pulls the shank with its weight in water and its drag, and the shank above it with no
 * leaders leans as both say: atan (drag / weight) at the weight. */
static void
test_weight_on_shank (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.0);
  const LbWeight *weight = &setup.rig.weight;

  setup.rig.n_leaders = 0;
  setup.rig.shank_length = 0.02;
  LbReadings r = read_setup (&setup, true);
  double v = r.weight.water_speed;
  double drag = 0.5 * 1000 * weight->drag_coefficient * lb_weight_frontal_area (weight) * v * v;
  double down = lb_weight_in_water (weight, 1000, setup.river.gravity);
  assert_near (r.weight_tension, hypot (drag, down), 1e-6);
  /* The water on 2 cm of shank adds a few millinewtons. */
  assert_near (r.shank_angle, atan2 (drag, down), 3e-3);
  assert_less (atan2 (drag, down), r.shank_angle);
  setup.rig.shank_length = 0;
  r = read_setup (&setup, true);
  assert_near (r.shank_angle, atan2 (drag, down), 1e-6);
}

/* In still water: the line hangs straight, a floating lure stands above its attachment. The model
 * keeps a trickle of 5 mm/s there, worth 1e-5 rad in the wire and 3e-4 in a leader. */
static void
test_still_water (void **state)
{
  LbSetup setup = rig_reference (0.91, 0, 0);

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 3 };
  setup.rig.leaders[0].length = 0.5;
  setup.rig.leaders[1].length = 1;
  LbReadings r = read_setup (&setup, false);
  assert_near (r.wire_angle, 0, 2e-5);
  assert_near (r.weight.layback, 0, 1e-4);
  assert_near (r.strum_frequency, 0, 1e-9);
  assert_near (r.lures[0].leader_angle, -90 * DEGREE, 1e-3);
  assert_near (r.lures[0].attachment_angle, -90 * DEGREE, 1e-3);
  /* Nylon stretches by less than 0.1 % here. */
  assert_near (r.lures[1].at.height - r.attachments[1].height, 1, 1e-3);
}

/* 0.2 v / d (Strouhal; textbook value) where the flow crosses the wire fastest. A short wire under
 * a heavy weight stands upright, so that is the surface speed. */
static void
test_strum (void **state)
{
  LbSetup setup = rig_reference (50, 0.4, 1.0);

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 2 };
  LbReadings r = read_setup (&setup, false);
  assert_near (r.strum_frequency, 0.2 * 1.4 / 0.0007, 0.01 * 400);
  assert_true (r.strum_frequency <= 0.2 * 1.4 / 0.0007);
}

static void
test_spare (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.0);
  LbReadings r = read_setup (&setup, false);

  assert_false (lb_is_set (r.mainline_spare));
  assert_false (lb_is_set (r.lures[0].leader_spare));
  assert_false (lb_is_set (r.shank_spare));
  assert_true (lb_readings_weakest (&r).spare == INFINITY);
  setup.rig.mainline.breaking_load = 700;
  setup.rig.leaders[0].line.breaking_load = 40;
  r = read_setup (&setup, false);
  assert_near (r.mainline_spare, 700 / r.largest_tension, 1e-9);
  assert_near (r.lures[0].leader_spare, 40 / r.lures[0].largest_tension, 1e-9);
  assert_true (r.largest_tension >= r.hand_tension);
  assert_true (r.lures[0].largest_tension >= r.lures[0].attachment_tension);
  assert_false (lb_is_set (r.lures[1].leader_spare));
  assert_int_equal (lb_readings_weakest (&r).part, LB_PART_MAINLINE);
  assert_near (lb_readings_weakest (&r).spare, r.mainline_spare, 0);
  setup.rig.leaders[0].line.breaking_load = 0.5;
  r = read_setup (&setup, false);
  assert_int_equal (lb_readings_weakest (&r).part, LB_PART_LEADER_0);
  assert_near (lb_readings_weakest (&r).spare, r.lures[0].leader_spare, 0);
}

/* The shank pulls hardest at its top, where the leaders below hang on it too. */
static void
test_spare_of_the_shank (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.0);

  setup.rig.mainline.breaking_load = 700;
  setup.rig.shank.breaking_load = 20;
  LbReadings r = read_setup (&setup, false);
  assert_near (r.shank_spare, 20 / r.shank_tension, 0.01 * r.shank_spare);
  assert_true (r.shank_spare <= 20 / r.shank_tension);
  assert_int_equal (lb_readings_weakest (&r).part, LB_PART_SHANK);
  assert_near (lb_readings_weakest (&r).spare, r.shank_spare, 0);
}

/* A line let out too far: the weight lies on the bed and says so, in every place. */
static void
test_on_bed (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 0.9);

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.6 };
  LbReadings r = read_setup (&setup, false);
  assert_true (r.weight.on_bed);
  assert_true (r.touches[LB_PART_SHANK]);
  assert_false (r.touches[LB_PART_MAINLINE]);
  assert_true (r.weight_bed_force > 0.1);
  assert_true (r.weight_bed_force < lb_weight_in_water (&setup.rig.weight, 1000, 9.81));
  assert_near (r.weight.height, 0, 1e-3);
  assert_true (r.weight.height >= 0);

  setup.rig.line_out.value = 4.5;
  r = read_setup (&setup, false);
  assert_false (r.weight.on_bed);
  assert_near (r.weight_bed_force, 0, 1e-9);
  for (int part = 0; part < LB_PART_LEADER_0 + 2; part++)
    assert_false (r.touches[part]);
}

static void
test_one_and_none (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 0.9);

  setup.rig.n_leaders = 1;
  LbReadings r = read_setup (&setup, false);
  assert_false (lb_is_set (r.level_difference));
  assert_false (lb_is_set (r.spacing));
  assert_true (lb_is_set (r.closest.distance));
  setup.rig.n_leaders = 0;
  r = read_setup (&setup, false);
  assert_int_equal (r.n_leaders, 0);
  assert_false (lb_is_set (r.closest.distance));
}

/* ---- Closest approach ---- */

/* A reel at the origin, a weight 4 m under it, and leaders of one straight segment each, beyond a
 * first one that is left out of the comparison as it leads away from the joint. */
typedef struct
{
  LbSetup setup;
  LbShape shape;
} Hand;

static void
put_node (LbShape *shape, size_t i, size_t parent, int part, double x, double y, double z)
{
  LbVec3 p = lb_vec3 (x, y, z);

  shape->nodes[i] = (LbShapeNode){ .parent = parent, .part = part, .position = p };
  if (i > 0)
    shape->nodes[i].rest_length = lb_vec3_norm (lb_vec3_sub (p, shape->nodes[parent].position));
}

static void
hand_init (Hand *hand, size_t n_leaders)
{
  hand->setup = rig_reference (0.9, 0.4, 1);
  hand->setup.rig.n_leaders = n_leaders;
  lb_shape_init (&hand->shape);
  assert_int_equal (lb_shape_resize (&hand->shape, 4 + 2 * n_leaders), LB_STATUS_OK);
  put_node (&hand->shape, 0, 0, LB_PART_MAINLINE, 0, 0, 0);
  put_node (&hand->shape, 1, 0, LB_PART_MAINLINE, 0, 0, -3);
  put_node (&hand->shape, 2, 1, LB_PART_SHANK, 0, 0, -3.5);
  put_node (&hand->shape, 3, 2, LB_PART_SHANK, 0, 0, -4);
  hand->shape.shank_top = 1;
  hand->shape.weight = 3;
  hand->shape.n_leaders = n_leaders;
}

/* Leader `i` from the middle of the shank by way of `a` to its lure at `b`. */
static void
hand_leader (Hand *hand, size_t i, LbVec3 a, LbVec3 b)
{
  size_t first = 4 + 2 * i;

  put_node (&hand->shape, first, 2, LB_PART_LEADER_0 + (int) i, a.x, a.y, a.z);
  put_node (&hand->shape, first + 1, first, LB_PART_LEADER_0 + (int) i, b.x, b.y, b.z);
  hand->shape.attachment[i] = 2;
  hand->shape.lure[i] = first + 1;
  hand->setup.rig.leaders[i].length =
      hand->shape.nodes[first].rest_length + hand->shape.nodes[first + 1].rest_length;
}

static LbApproach
hand_closest (Hand *hand)
{
  LbReadings r;

  lb_readings_compute (&r, &hand->setup, &hand->shape);
  lb_shape_clear (&hand->shape);
  return r.closest;
}

/* Two leaders that pass each other crosswise, 0.3 m apart, 5 m back. */
static void
test_crossing (void **state)
{
  Hand hand;

  hand_init (&hand, 2);
  hand_leader (&hand, 0, lb_vec3 (3, -2, -3), lb_vec3 (7, 2, -3));
  hand_leader (&hand, 1, lb_vec3 (3, 2, -3.3), lb_vec3 (7, -2, -3.3));
  LbApproach c = hand_closest (&hand);
  assert_near (c.distance, 0.3, 1e-12);
  assert_near (c.at.x, 5, 1e-12);
  assert_near (c.at.y, 0, 1e-12);
  assert_near (c.at.z, -3.15, 1e-12);
  assert_true ((c.part_a == LB_PART_LEADER_0 && c.part_b == LB_PART_LEADER_0 + 1)
               || (c.part_b == LB_PART_LEADER_0 && c.part_a == LB_PART_LEADER_0 + 1));
}

/* Side by side, 0.2 m apart; the first segments leave the joint together but are no approach. */
static void
test_side_by_side (void **state)
{
  Hand hand;

  hand_init (&hand, 2);
  hand_leader (&hand, 0, lb_vec3 (0.4, 0.1, -3.5), lb_vec3 (8, 0.1, -3.5));
  hand_leader (&hand, 1, lb_vec3 (0.4, -0.1, -3.5), lb_vec3 (6, -0.1, -3.5));
  LbApproach c = hand_closest (&hand);
  assert_near (c.distance, 0.2, 1e-12);
}

/* A lure that has come back round to the mainline. */
static void
test_round_the_wire (void **state)
{
  Hand hand;

  hand_init (&hand, 1);
  hand_leader (&hand, 0, lb_vec3 (2, 0, -3), lb_vec3 (0.25, 0, -1.5));
  LbApproach c = hand_closest (&hand);
  assert_near (c.distance, 0.25, 1e-12);
  assert_near (c.at.z, -1.5, 1e-12);
  assert_true (c.part_a == LB_PART_MAINLINE || c.part_b == LB_PART_MAINLINE);
}

enum
{
  STEPS = 24
};

/* Sampled points of a part beyond `keep_off` m of unstretched line from its upper end. */
static size_t
sample_part (const LbShape *shape, int part, double keep_off, LbVec3 *points)
{
  size_t line[128], n = lb_shape_line (shape, part, line, 128), n_points = 0;
  double along = 0;

  for (size_t i = 1; i < n; i++)
    {
      const LbShapeNode *node = &shape->nodes[line[i]];
      for (int s = 0; s <= STEPS; s++)
        if (along + node->rest_length * s / STEPS >= keep_off)
          points[n_points++] = lb_vec3_lerp (shape->nodes[node->parent].position, node->position,
                                             (double) s / STEPS);
      along += node->rest_length;
    }
  return n_points;
}

static double
sampled_distance (const LbShape *shape, int a, int b, double keep_a, double keep_b)
{
  static LbVec3 p[128 * (STEPS + 1)], q[128 * (STEPS + 1)];
  size_t n_p = sample_part (shape, a, keep_a, p), n_q = sample_part (shape, b, keep_b, q);
  double closest = INFINITY;

  for (size_t i = 0; i < n_p; i++)
    for (size_t j = 0; j < n_q; j++)
      closest = fmin (closest, lb_vec3_norm (lb_vec3_sub (p[i], q[j])));
  return closest;
}

/* Brute force over quasi-random rigs: the reading is the least sampled distance, or a little less.
 * Near a joint, lines are not compared within a quarter of the leader or 0.5 m. */
static void
test_brute_force (void **state)
{
  RigSource *source = rig_source_new (RIG_CLEAR);
  size_t compared = 0;

  for (int k = 0; k < 12; k++)
    {
      LbSetup setup;
      rig_source_next (source, &setup);
      LbReadings r = read_setup (&setup, false);
      const LbShape *shape = lb_steady_shape (steady);
      double least = INFINITY, coarse = 0;

      for (size_t i = 0; i < r.n_leaders; i++)
        {
          double keep_i = fmin (0.5, 0.25 * setup.rig.leaders[i].length);
          int part = LB_PART_LEADER_0 + (int) i;
          least = fmin (least, sampled_distance (shape, part, LB_PART_MAINLINE, keep_i, 0));
          least = fmin (least, sampled_distance (shape, part, LB_PART_SHANK, keep_i, 0));
          for (size_t j = 0; j < i; j++)
            least = fmin (least, sampled_distance (shape, part, LB_PART_LEADER_0 + (int) j, keep_i,
                                                   fmin (0.5, 0.25 * setup.rig.leaders[j].length)));
        }
      for (size_t i = 1; i < shape->n_nodes; i++)
        coarse = fmax (coarse, shape->nodes[i].rest_length / STEPS);
      if (r.n_leaders == 0)
        continue;
      compared++;
      assert_true (r.closest.distance <= least + 1e-12);
      assert_true (r.closest.distance >= least - 1.01 * coarse);
    }
  rig_source_free (source);
  assert_true (compared >= 8);
}

/* ---- Trade facts: common practice, no source ---- */

/* At the default flow going from 1 1/4 to 2 lb steepens the wire by 10 to 20 degrees. */
static void
test_heavier_is_steeper (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.rig.weight.mass = 1.25 * POUND;
  double light = read_setup (&setup, false).wire_angle / DEGREE;
  setup.rig.weight.mass = 2 * POUND;
  double heavy = read_setup (&setup, false).wire_angle / DEGREE;
  assert_less (10, light - heavy);
  assert_less (light - heavy, 20);
}

/* The default rig runs both lures within 4 in of the same height, one 8 to 12 ft behind the other,
 * the rear one on the upper leader. */
static void
test_stacked_lures_run_level (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbReadings r = read_setup (&setup, false);

  assert_int_equal (r.n_leaders, 2);
  assert_less (r.level_difference, 4 * INCH);
  assert_less (8 * FOOT, r.lures[1].at.layback - r.lures[0].at.layback);
  assert_less (r.lures[1].at.layback - r.lures[0].at.layback, 12 * FOOT);
  assert_less (setup.rig.leaders[0].attach_above_weight, setup.rig.leaders[1].attach_above_weight);
}

/* Tension in the hand is close to the weight's weight in water, 5 to 13 N over 1 1/4 to 3 lb; a
 * leader carries 0.1 to 0.6 N. */
static void
test_in_the_hand (void **state)
{
  LbSetup setup = lb_setup_default ();

  for (double mass = 1.25; mass <= 3; mass += 0.25)
    {
      setup.rig.weight.mass = mass * POUND;
      LbReadings r = read_setup (&setup, false);
      double weight = lb_weight_in_water (&setup.rig.weight, 1000, setup.river.gravity);
      assert_less (weight, r.hand_tension);
      assert_less (r.hand_tension, 1.15 * weight);
      assert_less (5, r.hand_tension);
      assert_less (r.hand_tension, 13);
      for (int i = 0; i < 2; i++)
        {
          assert_less (0.1, r.lures[i].attachment_tension);
          assert_less (r.lures[i].attachment_tension, 0.6);
        }
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_band),
    cmocka_unit_test (test_against_oracle),
    cmocka_unit_test (test_leader_at_lure),
    cmocka_unit_test (test_weight_on_shank),
    cmocka_unit_test (test_still_water),
    cmocka_unit_test (test_strum),
    cmocka_unit_test (test_spare),
    cmocka_unit_test (test_spare_of_the_shank),
    cmocka_unit_test (test_on_bed),
    cmocka_unit_test (test_one_and_none),
    cmocka_unit_test (test_crossing),
    cmocka_unit_test (test_side_by_side),
    cmocka_unit_test (test_round_the_wire),
    cmocka_unit_test (test_brute_force),
    cmocka_unit_test (test_heavier_is_steeper),
    cmocka_unit_test (test_stacked_lures_run_level),
    cmocka_unit_test (test_in_the_hand),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
