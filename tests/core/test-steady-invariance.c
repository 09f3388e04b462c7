/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must not change the answer: where the origin is, which way is left, the order in which
 * leaders are listed, the units, how a line is cut up, and what was solved before. */
#include "test.h"

#include "rigs.h"
#include "steady-checks.h"
#include "steady.h"
#include "steady_solver.h"

#define N_RIGS 20

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

/* Where the bodies are and what the reel feels. */
typedef struct
{
  LbVec3 weight, shank_top, lure[LB_MAX_LEADERS], pull;
  double line_out;
} Places;

static Places
solve (const LbSetup *setup, const LbSteadyOptions *options)
{
  Places p = { .line_out = 0 };

  assert_false (lb_status_is_failure (lb_steady_solve (steady, setup, options)));
  const LbShape *shape = lb_steady_shape (steady);
  p.line_out = shape->line_out;
  p.weight = shape->nodes[shape->weight].position;
  p.shank_top = shape->nodes[shape->shank_top].position;
  p.pull = shape_reel_pull (shape);
  for (size_t i = 0; i < shape->n_leaders; i++)
    p.lure[i] = shape->nodes[shape->lure[i]].position;
  return p;
}

static Places
solve_cold (const LbSetup *setup)
{
  return solve (setup, &(LbSteadyOptions){ .cold = true });
}

static Places
solve_fine (const LbSetup *setup)
{
  return solve (setup, &(LbSteadyOptions){ .fine = true });
}

static void
assert_vec (LbVec3 found, LbVec3 expected, double tolerance)
{
  assert_near (lb_vec3_norm (lb_vec3_sub (found, expected)), 0, tolerance);
}

/* `b` is `a` shifted by `shift`. */
static void
assert_shifted (const Places *b, const Places *a, size_t n_leaders, LbVec3 shift, double tolerance)
{
  assert_vec (b->weight, lb_vec3_add (a->weight, shift), tolerance);
  assert_vec (b->shank_top, lb_vec3_add (a->shank_top, shift), tolerance);
  assert_vec (b->pull, a->pull, tolerance);
  assert_near (b->line_out, a->line_out, tolerance);
  for (size_t i = 0; i < n_leaders; i++)
    assert_vec (b->lure[i], lb_vec3_add (a->lure[i], shift), tolerance);
}

typedef void (*Check) (LbSetup *setup);

static void
on_random_rigs (Check check)
{
  RigSource *source = rig_source_new (RIG_CLEAR);

  for (int i = 0; i < N_RIGS; i++)
    {
      LbSetup setup;
      rig_source_next (source, &setup);
      check (&setup);
    }
  rig_source_free (source);
}

static void
check_position (LbSetup *setup)
{
  Places here = solve_cold (setup), there;
  double shift = 123.25;

  setup->boat.position += shift;
  for (size_t i = 0; i < setup->river.n_bed_points; i++)
    setup->river.bed_x[i] += shift;
  there = solve_cold (setup);
  assert_shifted (&there, &here, setup->rig.n_leaders, lb_vec3 (shift, 0, 0), 1e-7);
}

static void
test_position (void **state)
{
  on_random_rigs (check_position);
}

/* A straight run stays in its plane, and in still water a boat that goes the other way over a bed
 * turned round has the same rig behind it, turned round. */
static void
check_mirror (LbSetup *setup)
{
  LbRiver *river = &setup->river;
  size_t n = river->n_bed_points;
  LbRiver mirrored = *river;

  river->surface_current = 0;
  setup->boat.speed_over_ground = 0.9;
  setup->boat.position = 1;
  Places one = solve_cold (setup), other;
  mirrored.surface_current = 0;
  for (size_t i = 0; i < n; i++)
    {
      mirrored.bed_x[i] = -river->bed_x[n - 1 - i];
      mirrored.bed_depth[i] = river->bed_depth[n - 1 - i];
    }
  *river = mirrored;
  setup->boat.speed_over_ground = -0.9;
  setup->boat.position = -1;
  other = solve_cold (setup);
  assert_near (one.weight.x + other.weight.x, 0, 1e-7);
  assert_near (one.weight.z - other.weight.z, 0, 1e-7);
  assert_near (one.pull.x + other.pull.x, 0, 1e-7);
  assert_near (one.weight.y, 0, 1e-12);
  for (size_t i = 0; i < setup->rig.n_leaders; i++)
    {
      assert_near (one.lure[i].x + other.lure[i].x, 0, 1e-7);
      assert_near (one.lure[i].z - other.lure[i].z, 0, 1e-7);
    }
}

static void
test_mirror (void **state)
{
  on_random_rigs (check_mirror);
}

/* Leaders listed the other way round. */
static void
check_order (LbSetup *setup)
{
  size_t n = setup->rig.n_leaders;
  Places one = solve_cold (setup), other;
  LbSetup turned = *setup;

  for (size_t i = 0; i < n; i++)
    turned.rig.leaders[i] = setup->rig.leaders[n - 1 - i];
  other = solve_cold (&turned);
  for (size_t i = 0; i < n; i++)
    assert_vec (one.lure[i], other.lure[n - 1 - i], 1e-7);
  assert_vec (one.weight, other.weight, 1e-7);
  assert_vec (one.pull, other.pull, 1e-7);
}

static void
test_order (void **state)
{
  on_random_rigs (check_order);
}

static void
scale_line (LbLine *line, double length, double mass, double force)
{
  line->diameter *= length;
  line->density *= mass / (length * length * length);
  line->axial_stiffness *= force;
}

/* Tells the setup in other units of length and mass (time stays in seconds). */
static void
scale_setup (LbSetup *s, double length, double mass)
{
  double force = mass * length, density = mass / (length * length * length);
  LbRiver *r = &s->river;
  LbRig *rig = &s->rig;

  r->depth *= length;
  for (size_t i = 0; i < r->n_bed_points; i++)
    {
      r->bed_x[i] *= length;
      r->bed_depth[i] *= length;
    }
  r->surface_current *= length;
  r->density *= density;
  r->kinematic_viscosity *= length * length;
  r->gravity *= length;
  s->boat.speed_over_ground *= length;
  s->boat.reel_height *= length;
  s->boat.position *= length;
  scale_line (&rig->mainline, length, mass, force);
  scale_line (&rig->shank, length, mass, force);
  rig->line_out.value *= length;
  rig->shank_length *= length;
  rig->weight.mass *= mass;
  rig->weight.density *= density;
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      LbLeader *leader = &rig->leaders[i];
      leader->attach_above_weight *= length;
      leader->length *= length;
      scale_line (&leader->line, length, mass, force);
      leader->lure.drag_area *= length * length;
      leader->lure.buoyancy *= force;
      leader->lure.mass *= mass;
      leader->lure.length *= length;
    }
}

/* The same river and rig in units of 0.8 m and 0.6 kg: nothing in the model may have a size of its
 * own, but for what the solver needs to find its way, near the bed and in slack line. The power law
 * has a floor of 1 cm and an uneven bed levels out over 1 m beyond its ends, so the stream is
 * uniform and the bed plane; water pinned, as its formulas are in SI. The mesh is laid out for
 * common speeds in SI, so the meshes differ: two fine ones do by at most 2e-6 m; with hundreds of
 * metres of line nearly level in the water, whose length hardly matters to the height and so cannot
 * be told as closely, by 3e-7 of the line. */
static size_t n_units;

static void
check_units (LbSetup *setup)
{
  const double length = 1.25, mass = 1.7;
  LbSetup other = *setup;

  setup->river.profile.law = LB_PROFILE_UNIFORM;
  setup->river.n_bed_points = 0;
  setup->river.density = 999.7;
  setup->river.kinematic_viscosity = 1.3e-6;
  /* A uniform stream may carry a light weight so far that no line gets it down. */
  if (lb_steady_solve (steady, setup, NULL) != LB_STATUS_OK)
    return;
  n_units++;
  other = *setup;
  scale_setup (&other, length, mass);
  Places one = solve_fine (setup), two = solve_fine (&other);
  double within = one.line_out > 100 ? 3e-7 * one.line_out : 2e-6;
  assert_vec (two.weight, lb_vec3_scale (one.weight, length), within * length);
  assert_vec (two.pull, lb_vec3_scale (one.pull, length * mass), within * length * mass);
  assert_near (two.line_out, one.line_out * length, within * length);
  for (size_t i = 0; i < setup->rig.n_leaders; i++)
    assert_vec (two.lure[i], lb_vec3_scale (one.lure[i], length), within * length);
}

static void
test_units (void **state)
{
  on_random_rigs (check_units);
  assert_true (4 * n_units >= 3 * N_RIGS);
}

/* Shank and mainline of one wire: where one ends and the other begins does not matter. */
static void
test_line_split (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.2);
  Places whole, split;

  setup.rig.shank = setup.rig.mainline;
  setup.rig.leaders[0].attach_above_weight = setup.rig.leaders[1].attach_above_weight = 0.2;
  setup.rig.shank_length = 0.3;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.2 };
  whole = solve_fine (&setup);
  setup.rig.shank_length = 2.7;
  setup.rig.line_out.value = 2.8;
  split = solve_fine (&setup);
  assert_vec (split.weight, whole.weight, 1e-6);
  assert_vec (split.pull, whole.pull, 1e-6);
  assert_vec (split.lure[0], whole.lure[0], 1e-6);
  assert_vec (split.lure[1], whole.lure[1], 1e-6);
}

/* A leader that neither weighs nor drags cuts the shank in two, and changes nothing. */
static void
test_idle_leader (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.2);
  Places without = solve_fine (&setup), with;
  LbLeader *idle = &setup.rig.leaders[2];

  setup.rig.n_leaders = 3;
  *idle = (LbLeader){ 0.7, 0.3, rig_ideal_line (&setup.river), { 0, 0, 1e-8, 0.001, 0.05 } };
  with = solve_fine (&setup);
  assert_shifted (&with, &without, 2, lb_vec3 (0, 0, 0), 1e-6);
}

/* A leader of two equal ones at one place behaves as it did alone. */
static void
test_twins (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.2);
  Places p;

  setup.rig.leaders[1] = setup.rig.leaders[0];
  p = solve_cold (&setup);
  assert_vec (p.lure[1], p.lure[0], 1e-9);
}

/* Warm from a neighbour, warm along a slider there and back, and cold: one answer. */
static void
test_history (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);

  for (int held = 0; held < 2; held++)
    {
      if (!held)
        setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 5.5 };
      else
        setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.1 };
      setup.river.surface_current = 1.2;
      Places cold = solve_cold (&setup), warm;
      for (int k = -20; k <= 20; k++)
        {
          setup.river.surface_current = 1.2 + 0.02 * (20 - abs (k));
          warm = solve (&setup, NULL);
        }
      assert_shifted (&warm, &cold, 2, lb_vec3 (0, 0, 0), 1e-7);
      setup.rig.weight.mass = 3;
      solve (&setup, NULL);
      setup.rig.weight.mass = 0.79;
      warm = solve (&setup, NULL);
      assert_shifted (&warm, &cold, 2, lb_vec3 (0, 0, 0), 1e-7);
    }
}

/* A straight run is solved in its plane; in space it must come out the same, and a rig that starts
 * off the plane must come back to it. */
static void
check_space (LbSetup *setup)
{
  Places plane = solve_cold (setup), space;
  LbTree *tree = &steady->tree;

  tree->spatial = true;
  space = solve_cold (setup);
  assert_shifted (&space, &plane, setup->rig.n_leaders, lb_vec3 (0, 0, 0), 1e-7);
  for (size_t i = 1; i < tree->n_nodes; i++)
    tree->nodes[i].position.y = 0.02 * sin ((double) i);
  space = solve (setup, NULL);
  tree->spatial = false;
  assert_shifted (&space, &plane, setup->rig.n_leaders, lb_vec3 (0, 0, 0), 1e-7);
}

static void
test_space (void **state)
{
  on_random_rigs (check_space);
}

static bool
stop_at_cb (void *data, size_t iterations)
{
  size_t *stop_at = data;

  return iterations >= *stop_at;
}

/* A solve that is called off says so, and the next one is as good as any. */
static void
test_called_off (void **state)
{
  LbSetup setup = rig_reference (0.91, 0.4, 1.0);
  size_t stop_at = 1;
  LbSteadyOptions options = { .cold = true, .cancel = stop_at_cb, .cancel_data = &stop_at };

  assert_int_equal (lb_steady_solve (steady, &setup, &options), LB_STATUS_CANCELLED);
  stop_at = 1000;
  assert_int_equal (lb_steady_solve (steady, &setup, &options), LB_STATUS_OK);
  assert_true (lb_steady_statistics (steady).iterations < 1000);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_position),   cmocka_unit_test (test_mirror),
    cmocka_unit_test (test_order),      cmocka_unit_test (test_units),
    cmocka_unit_test (test_line_split), cmocka_unit_test (test_idle_leader),
    cmocka_unit_test (test_twins),      cmocka_unit_test (test_history),
    cmocka_unit_test (test_called_off), cmocka_unit_test (test_space),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
