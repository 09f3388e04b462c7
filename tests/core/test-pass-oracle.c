/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pass against another integrator with the equations written anew (pass-oracle.h, CVODE of
 * SUNDIALS). */
#include "test.h"

#include <gsl/gsl_math.h>

#include "pass-oracle.h"
#include "pass-support.h"
#include "rigs.h"
#include "steady.h"

static LbPass *pass;

static int
set_up (void **state)
{
  pass = lb_pass_new ();
  return pass != NULL ? 0 : -1;
}

static int
tear_down (void **state)
{
  lb_pass_free (pass);
  return 0;
}

typedef struct
{
  const char *name;
  double mass, current, depth; /* kg, m/s, m */
  size_t leaders;
  double from, to;  /* m/s, of the boat */
  double heading;   /* rad, at the end of the ramp */
  double line_rate; /* m/s, then */
  double line;      /* m out; 0: held 0.1 m off the bed */
  LbHand hand;
  bool uniform;      /* stream, else the 1/6 law */
  double stiffness;  /* N, of the mainline; 0: steel wire */
  double move, pull; /* allowed, m and N */
  size_t segments;   /* 0: 24 */
} Case;

/* The ramp goes from 0.1 to 0.8 s. In the usual steps of 5 ms the goals of the program hold: where
 * nothing lands 1e-4 m and 0.01 N, for a landing 5e-4 m and 0.1 N, at every step. */
static const Case cases[] = {
  { .name = "faster",
    .mass = 0.79,
    .current = 1.2,
    .depth = 6,
    .leaders = 2,
    .from = 0.4,
    .to = 0.9,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "slower, lands",
    .mass = 0.79,
    .current = 1.2,
    .depth = 6,
    .leaders = 2,
    .from = 0.9,
    .to = 0.3,
    .move = 5e-4,
    .pull = 0.1,
    .segments = 50 },
  { .name = "stops in a fast stream",
    .mass = 1.36,
    .current = 2,
    .depth = 4,
    .leaders = 1,
    .from = 0.5,
    .to = 0,
    .line = 3.5,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "no leaders",
    .mass = 0.57,
    .current = 1,
    .depth = 8,
    .from = 0.3,
    .to = 0.8,
    .line = 7,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "three leaders",
    .mass = 0.9,
    .current = 1.4,
    .depth = 7,
    .leaders = 3,
    .from = 0.6,
    .to = 0.2,
    .line = 5.5,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "turns",
    .mass = 0.79,
    .current = 1.2,
    .depth = 6,
    .leaders = 2,
    .from = 0.4,
    .to = 0.6,
    .heading = 0.8,
    .line = 5.2,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "turns the other way, line let out",
    .mass = 0.5,
    .current = 0.8,
    .depth = 9,
    .leaders = 1,
    .from = 0.5,
    .to = 0.5,
    .heading = -1,
    .line_rate = 0.3,
    .line = 7,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "line taken in",
    .mass = 0.9,
    .current = 1.2,
    .depth = 6,
    .leaders = 2,
    .from = 0.4,
    .to = 0.4,
    .line_rate = -0.4,
    .line = 6,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "lift and drop",
    .mass = 0.79,
    .current = 1.2,
    .depth = 6,
    .leaders = 2,
    .from = 0.4,
    .to = 0.4,
    .line = 5.2,
    .hand = { LB_HAND_LIFT_AND_DROP, 0.25, 2 },
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "uniform stream, soft line",
    .mass = 0.6,
    .current = 0.9,
    .depth = 10,
    .leaders = 1,
    .from = 0.4,
    .to = 0.8,
    .line = 8,
    .uniform = true,
    .stiffness = 600,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "backs downstream",
    .mass = 1,
    .current = 1.5,
    .depth = 6,
    .leaders = 2,
    .from = 0.3,
    .to = -0.3,
    .line = 5,
    .move = 1e-4,
    .pull = 0.01 },
  { .name = "drags along the bed",
    .mass = 0.9,
    .current = 0.9,
    .depth = 6,
    .leaders = 2,
    .from = 0.8,
    .to = 0.5,
    .line = 6.2,
    .move = 1e-4,
    .pull = 0.01 },
};

static LbSetup
setup_of (const Case *c)
{
  LbSetup setup = rig_reference (c->mass, c->from, c->current);

  setup.river.depth = c->depth;
  if (c->uniform)
    setup.river.profile.law = LB_PROFILE_UNIFORM;
  if (c->stiffness > 0)
    setup.rig.mainline.axial_stiffness = c->stiffness;
  setup.rig.n_leaders = c->leaders;
  for (size_t i = 2; i < c->leaders; i++)
    {
      setup.rig.leaders[i] = setup.rig.leaders[0];
      setup.rig.leaders[i].attach_above_weight = 0.2 * (double) i;
      setup.rig.leaders[i].length = 1.5;
    }
  if (c->line > 0)
    setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, c->line };
  return setup;
}

static void
compare (const Case *c)
{
  LbSetup setup = setup_of (c);
  LbPassPlan plan = pass_ramp (c->from, c->to, 0.1, 0.8);
  LbPassOptions options = { .segments = c->segments > 0 ? c->segments : 24 };
  PassDifference worst = { 0 };

  plan.course.points[1].heading = c->heading;
  plan.course.points[1].line_rate = c->line_rate;
  plan.hand = c->hand;
  pass_run (pass, &setup, &plan, &options, 0);
  PassOracle *oracle = pass_oracle_new (lb_pass_shape (pass), &setup, &plan, 1e-7);
  for (int k = 1; k <= 240; k++)
    {
      assert_int_equal (lb_pass_advance (pass, 0.005 * k), LB_STATUS_OK);
      assert_true (pass_oracle_advance (oracle, 0.005 * k));
      const LbShape *shape = lb_pass_shape (pass);
      for (size_t i = 1; i < shape->n_nodes; i++)
        {
          LbVec3 off = lb_vec3_sub (shape->nodes[i].position, pass_oracle_position (oracle, i));
          worst.move = fmax (worst.move, lb_vec3_norm (off));
          worst.pull =
              fmax (worst.pull, fabs (shape->nodes[i].tension - pass_oracle_tension (oracle, i)));
        }
    }
  print_message ("%-34s %8.2e m %8.2e N\n", c->name, worst.move, worst.pull);
  pass_oracle_free (oracle);
  assert_less (worst.move, c->move);
  assert_less (worst.pull, c->pull);
}

static void
test_twelve_rigs (void **state)
{
  for (size_t i = 0; i < test_count (sizeof cases / sizeof cases[0]); i++)
    compare (&cases[i]);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_twelve_rigs),
  };

  return cmocka_run_group_tests (tests, set_up, tear_down);
}
