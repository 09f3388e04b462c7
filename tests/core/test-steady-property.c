/* SPDX-License-Identifier: GPL-3.0-or-later */
/* No steady solve fails, and none leaves a body in the bed, whatever the sliders say: 100 000
 * quasi-random setups (times LB_TEST_SCALE), every answer checked for finite numbers, for the bed
 * and for the balance of forces; and the same along sliders that move from end to end. Of the
 * remarks that the height leaps some are held against a search through all lines out.
 *
 * The work is shared by two programs: --share 0 and --share 1.
 * With numbers as arguments, solves those setups only and prints them and what came of them:
 *
 *     test-steady-property 4711 4712
 */
#include "test.h"

#include <stdio.h>
#include <string.h>

#include "rigs.h"
#include "steady-checks.h"
#include "steady-remarks.h"
#include "steady.h"

#define COUNT 100000
#define N_SHARES 2 /* programs that share the work, one for each core */
#define PATHS 400  /* sliders moved from end to end */
#define PATH_STEPS 30
#define MOST_PRINTED 20
#define DEEPEST -1e-3      /* m: no body lies deeper in the bed */
#define BALANCE 1e-8       /* N, per newton of the largest tension above 1 N */
#define LENGTH_MISFIT 1e-9 /* m */
#define HEIGHT_MISFIT 1e-6 /* m, of a held weight */

/* Of the leaps remarked one in so many is held against a search of the test's own, as closely as
 * that: it takes half a second. */
#define LEAPS_PER_SEARCH 16
#define SEARCH_LENGTHS 100

/* A rig can hang on a branch that neither letting out nor taking in leads the solver to, or its
 * scan be cut short: of 51 searched at full scale 3 were held after all. More than one in ten, and
 * one, is a fault. */
#define MOST_FALSE_LEAPS(searched) (1 + (searched) / 10)

typedef enum
{
  FAULT_NONE,
  FAULT_NOT_SOLVED,
  FAULT_NOT_FINITE,
  FAULT_BODY_IN_BED,
  FAULT_LINE_IN_BED,
  FAULT_SIDEWAYS,
  FAULT_NODE_BALANCE,
  FAULT_REEL_BALANCE,
  FAULT_LENGTH,
  FAULT_HEIGHT,
  FAULT_REMARK,
  N_FAULTS,
} Fault;

static const char *const fault_names[N_FAULTS] = {
  "none",
  "not solved",
  "not finite",
  "body in the bed",
  "line in the bed",
  "off the plane",
  "forces left at a node",
  "reel does not carry all loads",
  "segment length",
  "held height",
  "remark that is not true",
};

static double
asked_height (const LbLineOut *line_out)
{
  return line_out->mode == LB_LINE_OUT_TOUCHING ? 0 : line_out->value;
}

/* A held weight is at its height, or the remark that it cannot be is true. */
static Fault
find_height_fault (const LbSetup *setup, LbStatus status, const LbShape *shape)
{
  double above;

  if (status == LB_STATUS_HELD_BY_FRICTION && setup->boat.speed_over_ground != 0)
    return FAULT_REMARK;
  if (setup->rig.line_out.mode == LB_LINE_OUT_GIVEN)
    return status == LB_STATUS_OK || status == LB_STATUS_HELD_BY_FRICTION ? FAULT_NONE
                                                                          : FAULT_REMARK;
  above = shape_height (setup, shape, shape->weight) - asked_height (&setup->rig.line_out);
  switch (status)
    {
    case LB_STATUS_OK:
    case LB_STATUS_HELD_BY_FRICTION:
      return fabs (above) <= HEIGHT_MISFIT ? FAULT_NONE : FAULT_HEIGHT;
    case LB_STATUS_LINE_AT_LONGEST:
      return above > 0 && shape->line_out >= LB_STEADY_LONGEST_LINE - 1e-9 ? FAULT_NONE
                                                                           : FAULT_REMARK;
    case LB_STATUS_LINE_AT_SHORTEST:
      return above < HEIGHT_MISFIT && shape->line_out <= LB_STEADY_SHORTEST_LINE + 1e-9
                 ? FAULT_NONE
                 : FAULT_REMARK;
    default:
      return FAULT_NONE;
    }
}

static Fault
find_fault (const LbSetup *setup, LbStatus status, const LbShape *shape, ShapeCheck *check)
{
  double force;

  if (lb_status_is_failure (status))
    return FAULT_NOT_SOLVED;
  *check = shape_check (setup, status, shape);
  /* At rest friction may have been called in, but a status says one thing only. */
  if (setup->boat.speed_over_ground == 0 && status > LB_STATUS_OK
      && check->node_force > BALANCE * fmax (1, check->largest_load))
    *check = shape_check (setup, LB_STATUS_HELD_BY_FRICTION, shape);
  force = BALANCE * fmax (1, check->largest_load);
  if (!check->finite)
    return FAULT_NOT_FINITE;
  if (!(check->lowest_body >= DEEPEST))
    return FAULT_BODY_IN_BED;
  if (!(check->lowest_node >= DEEPEST))
    return FAULT_LINE_IN_BED;
  if (!(check->sideways <= 1e-9))
    return FAULT_SIDEWAYS;
  if (!(check->stretch <= LENGTH_MISFIT))
    return FAULT_LENGTH;
  if (!(check->node_force <= force))
    return FAULT_NODE_BALANCE;
  if (!(check->reel_force <= force))
    return FAULT_REEL_BALANCE;
  return find_height_fault (setup, status, shape);
}

static void
print_fault (size_t index, Fault fault, LbStatus status, const ShapeCheck *c)
{
  printf ("setup %zu: %s (status %s); lowest body %.3g m, lowest node %.3g m, forces left %.3g N, "
          "at the reel %.3g N, length %.3g m\n",
          index, fault_names[fault], lb_status_name (status), c->lowest_body, c->lowest_node,
          c->node_force, c->reel_force, c->stretch);
}

/* This program takes every N_SHARES-th setup from this one on. */
static size_t own_share;

typedef struct
{
  size_t met, searched, not_true;
} Leaps;

/* The remark tells both sides of the leap, and they are on either side of the height. */
static bool
sides_fit (const LbSetup *setup, const LbSteadyStatistics *statistics)
{
  double asked = asked_height (&setup->rig.line_out);

  return !lb_is_set (statistics->leap_high)
         || (statistics->leap_high > asked && statistics->leap_low <= asked);
}

static void
check_leap (Leaps *leaps, size_t index, const LbSetup *setup, size_t segments)
{
  if (leaps->met++ % LEAPS_PER_SEARCH != 0)
    return;
  leaps->searched++;
  RemarkSearch found = remark_search (setup, segments, SEARCH_LENGTHS);
  if (!found.held)
    return;
  leaps->not_true++;
  printf ("setup %zu: the height does not leap: it is held by %.9g m of line\n", index,
          found.line_out);
}

static void
test_any_setting (void **state)
{
  size_t count = test_count (COUNT / N_SHARES), faults[N_FAULTS] = { 0 }, n_faults = 0;
  size_t remarks = 0;
  Leaps leaps = { 0 };
  RigSource *source = rig_source_new (RIG_WILD);
  LbSteady *steady = lb_steady_new ();

  for (size_t k = 0; k < N_SHARES * count; k++)
    {
      LbSetup setup;
      ShapeCheck check = { 0 };
      rig_source_next (source, &setup);
      if (k % N_SHARES != own_share)
        continue;
      LbStatus status = lb_steady_solve (steady, &setup, NULL);
      Fault fault = find_fault (&setup, status, lb_steady_shape (steady), &check);
      LbSteadyStatistics statistics = lb_steady_statistics (steady);

      if (status == LB_STATUS_HEIGHT_LEAPS && fault == FAULT_NONE
          && !sides_fit (&setup, &statistics))
        fault = FAULT_REMARK;
      faults[fault]++;
      remarks += status > 0;
      if (status == LB_STATUS_HEIGHT_LEAPS)
        check_leap (&leaps, k, &setup, statistics.segments);
      if (fault != FAULT_NONE && n_faults++ < MOST_PRINTED)
        print_fault (k, fault, status, &check);
    }
  lb_steady_free (steady);
  rig_source_free (source);
  printf ("%zu setups, %zu of them with a remark; %zu leaps, %zu searched, %zu not true\n", count,
          remarks, leaps.met, leaps.searched, leaps.not_true);
  for (int k = 1; k < N_FAULTS; k++)
    if (faults[k] > 0)
      printf ("%zu times: %s\n", faults[k], fault_names[k]);
  assert_int_equal (n_faults, 0);
  assert_true (leaps.not_true <= MOST_FALSE_LEAPS (leaps.searched));
}

/* ---- Sliders moved from end to end, each answer the start of the next ---- */

typedef enum
{
  SLIDER_CURRENT,
  SLIDER_BOAT_SPEED,
  SLIDER_WEIGHT,
  SLIDER_LINE,
  N_SLIDERS,
} Slider;

static void
set_slider (LbSetup *setup, Slider slider, double share)
{
  LbLineOut *line_out = &setup->rig.line_out;

  switch (slider)
    {
    case SLIDER_CURRENT:
      setup->river.surface_current = 3 * share;
      break;
    case SLIDER_BOAT_SPEED:
      setup->boat.speed_over_ground = 1.5 * share;
      break;
    case SLIDER_WEIGHT:
      setup->rig.weight.mass = 0.1 + 2.9 * share;
      break;
    default:
      line_out->value = line_out->mode == LB_LINE_OUT_GIVEN ? 0.1 + 29.9 * share
                                                            : 0.9 * setup->river.depth * share;
    }
}

static void
test_slider_paths (void **state)
{
  size_t count = test_count (PATHS / N_SHARES), n_faults = 0;
  RigSource *source = rig_source_new (RIG_WILD);
  LbSteady *steady = lb_steady_new ();

  for (size_t i = 0; i < N_SHARES * count; i++)
    {
      LbSetup setup;
      rig_source_next (source, &setup);
      if (i / N_SLIDERS % N_SHARES != own_share)
        continue;
      for (int k = 0; k <= PATH_STEPS; k++)
        {
          ShapeCheck check = { 0 };
          set_slider (&setup, (Slider) (i % N_SLIDERS), (double) k / PATH_STEPS);
          LbStatus status = lb_steady_solve (steady, &setup, NULL);
          Fault fault = find_fault (&setup, status, lb_steady_shape (steady), &check);
          if (fault != FAULT_NONE && n_faults++ < MOST_PRINTED)
            {
              printf ("slider %zu at step %d: ", i % N_SLIDERS, k);
              print_fault (i, fault, status, &check);
            }
        }
    }
  lb_steady_free (steady);
  rig_source_free (source);
  assert_int_equal (n_faults, 0);
}

static int
replay (int n, char **numbers)
{
  RigSource *source = rig_source_new (RIG_WILD);
  LbSteady *steady = lb_steady_new ();
  int n_faults = 0;

  for (int k = 0; k < n; k++)
    {
      size_t index = strtoul (numbers[k], NULL, 10);
      LbSetup setup;
      ShapeCheck check = { 0 };
      rig_source_skip_to (source, index);
      rig_source_next (source, &setup);
      rig_print (stdout, &setup);
      LbStatus status = lb_steady_solve (steady, &setup, &(LbSteadyOptions){ .cold = true });
      Fault fault = find_fault (&setup, status, lb_steady_shape (steady), &check);
      LbSteadyStatistics s = lb_steady_statistics (steady);
      print_fault (index, fault, status, &check);
      printf ("%zu segments, %zu iterations, residual %g N\n\n", s.segments, s.iterations,
              s.residual);
      n_faults += fault != FAULT_NONE;
    }
  lb_steady_free (steady);
  rig_source_free (source);
  return n_faults;
}

int
main (int argc, char **argv)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_any_setting),
    cmocka_unit_test (test_slider_paths),
  };

  if (argc == 3 && strcmp (argv[1], "--share") == 0)
    own_share = strtoul (argv[2], NULL, 10) % N_SHARES;
  else if (argc > 1)
    return replay (argc - 1, argv + 1) > 0;
  return cmocka_run_group_tests (tests, NULL, NULL);
}
