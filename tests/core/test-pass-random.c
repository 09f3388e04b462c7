/* SPDX-License-Identifier: GPL-3.0-or-later */
/* No pass fails, none comes to a number that is not finite, and none leaves a part of the rig more
 * than a millimetre under the bed: 10 000 quasi-random rigs (times LB_TEST_SCALE) of every kind the
 * sliders allow, each with a boat that changes speed, three in four turning, and a hand that holds,
 * lets out, takes in, lifts and drops or follows the bed. Each pass is 0.4 s long, every 25th 6 s,
 * so that what goes on, lands or comes taut later is seen too; on 24 segments or what so many
 * leaders need at the least.
 *
 * The work is shared by two programs: --share 0 and --share 1.
 * With numbers as arguments, runs those passes only and prints what came of them:
 *
 *     test-pass-random 4711 4712
 */
#include "test.h"

#include <stdio.h>
#include <string.h>

#include "pass-support.h"
#include "rigs.h"

#define COUNT 10000
#define N_SHARES 2
#define SEGMENTS 24
#define LENGTH 0.4 /* s */
#define LONG 6.0   /* s, of every LONG_EVERYth */
#define LONG_EVERY 25
#define LOOK 0.05    /* s */
#define DEEPEST 1e-3 /* m */
#define MOST_PRINTED 20

static size_t own_share;

/* What boat and hand do in pass number `index`. */
static LbPassPlan
random_plan (size_t index, const LbSetup *setup)
{
  TestRandom random = { 88172645463325252ULL + 7919 * index };
  LbPassPlan plan = { 0 };

  for (int k = 0; k < 8; k++)
    test_random (&random, 0, 1);
  double start = test_random (&random, 0, 0.1), end = start + test_random (&random, 0.2, 0.5);
  plan = pass_ramp (setup->boat.speed_over_ground, test_random (&random, -0.3, 1.5), start, end);
  if (test_random (&random, 0, 4) > 1)
    {
      double sharpest = 1.8 * (end - start); /* a sharper turn is refused */
      double heading = test_random (&random, -0.4, 0.4);
      plan.course.points[1].heading = fmin (fmax (heading, -sharpest), sharpest);
    }
  plan.course.reel_across = test_random (&random, -1.5, 1.5);
  switch ((int) test_random (&random, 0, 4))
    {
    case 0:
      plan.course.points[1].line_rate = test_random (&random, -1, 1);
      break;
    case 1:
      plan.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, test_random (&random, 0.05, 0.6),
                            test_random (&random, 0.5, 2) };
      break;
    case 2:
      plan.hand = (LbHand){ LB_HAND_FOLLOW_BED, test_random (&random, 0.05, 0.5),
                            test_random (&random, 0.1, 1) };
      break;
    default:
      break;
    }
  return plan;
}

typedef struct
{
  const char *fault; /* NULL: none */
  double time;       /* s, when it came */
  double depth;      /* m, of the deepest node */
  double pull;       /* N, the largest */
} Outcome;

static bool
all_finite (LbPass *pass, const LbShape *shape, double *pull)
{
  double sum = 0;

  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      LbVec3 p = shape->nodes[i].position, v = lb_pass_velocity (pass, i);
      *pull = fmax (*pull, shape->nodes[i].tension);
      sum += fabs (p.x) + fabs (p.y) + fabs (p.z) + fabs (v.x) + fabs (v.y) + fabs (v.z);
      sum += fabs (shape->nodes[i].tension);
    }
  return isfinite (sum);
}

static Outcome
run (LbPass *pass, const LbSetup *setup, const LbPassPlan *plan, double length)
{
  Outcome outcome = { .depth = -INFINITY };
  LbPassOptions options = { .segments = SEGMENTS };
  LbStatus status = lb_pass_start (pass, setup, plan, &options);

  for (int k = 1; !lb_status_is_failure (status); k++)
    {
      outcome.time = lb_pass_time (pass);
      if (!all_finite (pass, lb_pass_shape (pass), &outcome.pull))
        outcome.fault = "not finite";
      outcome.depth = fmax (outcome.depth, pass_depth (pass, setup));
      if (!(outcome.depth <= DEEPEST))
        outcome.fault = "under the bed";
      if (outcome.fault != NULL || k * LOOK > length + 1e-9)
        return outcome;
      status = lb_pass_advance (pass, k * LOOK);
    }
  outcome.time = lb_pass_time (pass);
  outcome.fault = lb_status_name (status);
  return outcome;
}

static double
length_of (size_t index)
{
  return index % LONG_EVERY == 0 ? LONG : LENGTH;
}

static void
print_outcome (LbPass *pass, size_t index, Outcome outcome)
{
  LbPassStatistics s = lb_pass_statistics (pass);

  printf ("pass %zu: %s at %.3f s; deepest %.3g m, largest pull %.3g N; %zu steps, %zu refused, "
          "%zu iterations, %zu factors\n",
          index, outcome.fault != NULL ? outcome.fault : "fine", outcome.time, outcome.depth,
          outcome.pull, s.steps, s.refused, s.iterations, s.factors);
}

static void
test_any_pass (void **state)
{
  size_t count = test_count (COUNT / N_SHARES), n_faults = 0;
  RigSource *source = rig_source_new (RIG_WILD);
  LbPass *pass = lb_pass_new ();

  for (size_t k = 0; k < N_SHARES * count; k++)
    {
      LbSetup setup;
      rig_source_next (source, &setup);
      if (k % N_SHARES != own_share)
        continue;
      LbPassPlan plan = random_plan (k, &setup);
      Outcome outcome = run (pass, &setup, &plan, length_of (k));
      if (outcome.fault != NULL && n_faults++ < MOST_PRINTED)
        print_outcome (pass, k, outcome);
    }
  lb_pass_free (pass);
  rig_source_free (source);
  printf ("%zu passes\n", count);
  assert_int_equal (n_faults, 0);
}

static int
run_alone (int n, char **numbers)
{
  RigSource *source = rig_source_new (RIG_WILD);
  LbPass *pass = lb_pass_new ();
  int n_faults = 0;

  for (int i = 0; i < n; i++)
    {
      LbSetup setup;
      size_t index = strtoul (numbers[i], NULL, 10);
      rig_source_skip_to (source, index);
      rig_source_next (source, &setup);
      LbPassPlan plan = random_plan (index, &setup);
      Outcome outcome = run (pass, &setup, &plan, length_of (index));
      rig_print (stdout, &setup);
      print_outcome (pass, index, outcome);
      n_faults += outcome.fault != NULL;
    }
  lb_pass_free (pass);
  rig_source_free (source);
  return n_faults;
}

int
main (int argc, char **argv)
{
  const struct CMUnitTest tests[] = { cmocka_unit_test (test_any_pass) };

  if (argc > 2 && strcmp (argv[1], "--share") == 0)
    own_share = strtoul (argv[2], NULL, 10);
  else if (argc > 1)
    return run_alone (argc - 1, argv + 1);
  return cmocka_run_group_tests (tests, NULL, NULL);
}
