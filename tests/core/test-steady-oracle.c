/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steady run against the oracle (oracle.h: shooting on GSL's integrators) on quasi-random rigs.
 *
 * The oracle knows no bed contact and nothing that floats: rigs whose answer comes near the bed or
 * the surface are left out, by the oracle's own answer, until 200 rigs have been compared. A rig
 * on which the oracle finds no answer by itself is tried again from the solver's: then it must find
 * one, or the solver must have reported contact. */
#include "test.h"

#include <stdio.h>

#include "oracle.h"
#include "rigs.h"
#include "steady-checks.h"
#include "steady.h"

#define COUNT 200
#define CLEARANCE 0.02 /* m from bed and surface; a lure also by half its length */

/* Of the fine mesh. */
#define FINE_LENGTH 1e-6
#define FINE_FORCE 1e-6
/* Of the default mesh, over all these rigs: leaders of up to 8 m, strummed lines, uneven beds, a
 * mainline of a few segments when there are eight leaders. */
#define DEFAULT_LENGTH 0.02
#define DEFAULT_FORCE 0.01 /* of the tension */

typedef struct
{
  double length; /* m, largest miss of a place or of the line out */
  double force;  /* N, of a tension */
  double share;  /* the same over the tension */
} Miss;

static void
add_place (Miss *miss, const LbShape *shape, size_t node, const double place[2])
{
  LbVec3 p = shape->nodes[node].position;

  miss->length = fmax (miss->length, hypot (p.x - place[0], p.z - place[1]));
}

static void
add_tension (Miss *miss, LbVec3 pull, double tension)
{
  double off = fabs (lb_vec3_norm (pull) - tension);

  miss->force = fmax (miss->force, off);
  miss->share = fmax (miss->share, off / tension);
}

static Miss
compare (const LbShape *shape, const OracleAnswer *a)
{
  Miss miss = { .length = fabs (shape->line_out - a->line_out) };
  LbVec3 pull = shape_reel_pull (shape);

  add_place (&miss, shape, shape->weight, a->weight);
  add_place (&miss, shape, shape->shank_top, a->shank_top);
  add_tension (&miss, pull, hypot (a->reel_pull[0], a->reel_pull[1]));
  miss.force = fmax (miss.force, hypot (pull.x - a->reel_pull[0], pull.z - a->reel_pull[1]));
  if (shape->shank_top != shape->weight)
    add_tension (&miss, shape_pull_above (shape, shape->shank_top), a->shank_top_tension);
  for (size_t i = 0; i < shape->n_leaders; i++)
    {
      add_place (&miss, shape, shape->attachment[i], a->attachment[i]);
      add_place (&miss, shape, shape->lure[i], a->lure[i]);
      add_tension (&miss, shape_pull_of_part (shape, LB_PART_LEADER_0 + (int) i),
                   a->attachment_tension[i]);
    }
  return miss;
}

static OracleAnswer
guess_from (const LbShape *shape)
{
  OracleAnswer a = { .line_out = shape->line_out };
  LbVec3 p = shape->nodes[shape->weight].position;

  a.weight[0] = p.x;
  a.weight[1] = p.z;
  for (size_t i = 0; i < shape->n_leaders; i++)
    {
      p = shape->nodes[shape->lure[i]].position;
      a.lure[i][0] = p.x;
      a.lure[i][1] = p.z;
    }
  return a;
}

static bool
touches_bed (const LbShape *shape)
{
  for (size_t i = 1; i < shape->n_nodes; i++)
    if (shape->nodes[i].bed_force > 0)
      return true;
  return false;
}

static bool
reaches_surface (const LbShape *shape)
{
  for (size_t i = 1; i < shape->n_nodes; i++)
    if (shape->nodes[i].part != LB_PART_MAINLINE && shape->nodes[i].position.z > -CLEARANCE)
      return true;
  return false;
}

static bool
is_clear (const LbSetup *setup, const OracleAnswer *a)
{
  bool clear = a->lowest > CLEARANCE && a->highest < -CLEARANCE;

  for (size_t i = 0; i < setup->rig.n_leaders; i++)
    clear = clear && a->lure[i][1] < -CLEARANCE - setup->rig.leaders[i].lure.length / 2;
  return clear;
}

/* The oracle's answer, by itself or else from the solver's. False when the rig is to be left out.
 */
static bool
find_answer (
    size_t index, const LbSetup *setup, const LbShape *shape, OracleAnswer *answer, size_t *helped)
{
  if (!oracle_solve (setup, NULL, answer))
    {
      OracleAnswer guess = guess_from (shape);
      if (!oracle_solve (setup, &guess, answer))
        {
          if (!touches_bed (shape) && !reaches_surface (shape))
            fail_msg ("rig %zu: the solver has an answer clear of everything, the oracle none",
                      index);
          return false;
        }
      (*helped)++;
    }
  return is_clear (setup, answer);
}

typedef struct
{
  LbSteady *steady, *fine;
  size_t compared, left_out, helped;
  size_t faults;
  Miss worst_default, worst_fine;
} Comparison;

static void
keep_worst (Miss *worst, Miss miss)
{
  worst->length = fmax (worst->length, miss.length);
  worst->force = fmax (worst->force, miss.force);
  worst->share = fmax (worst->share, miss.share);
}

static void
compare_rig (Comparison *c, size_t index, const LbSetup *setup)
{
  OracleAnswer answer;
  LbStatus status = lb_steady_solve (c->steady, setup, NULL);

  if (lb_status_is_failure (status))
    {
      printf ("rig %zu: %s\n", index, lb_status_name (status));
      c->faults++;
    }
  if (status != LB_STATUS_OK
      || !find_answer (index, setup, lb_steady_shape (c->steady), &answer, &c->helped))
    {
      c->left_out++;
      return;
    }
  c->compared++;
  Miss rough = compare (lb_steady_shape (c->steady), &answer);
  keep_worst (&c->worst_default, rough);
  if (!(rough.length <= DEFAULT_LENGTH) || !(rough.share <= DEFAULT_FORCE))
    {
      printf ("rig %zu, default mesh: %.3g m, %.3g N (%.2g %%) off\n", index, rough.length,
              rough.force, 100 * rough.share);
      c->faults++;
    }

  status = lb_steady_solve (c->fine, setup, &(LbSteadyOptions){ .fine = true });
  if (lb_status_is_failure (status))
    {
      printf ("rig %zu, fine mesh: %s\n", index, lb_status_name (status));
      c->faults++;
      return;
    }
  Miss fine = compare (lb_steady_shape (c->fine), &answer);
  keep_worst (&c->worst_fine, fine);
  if (!(fine.length <= FINE_LENGTH) || !(fine.force <= FINE_FORCE))
    {
      printf ("rig %zu, fine mesh: %.3g m, %.3g N off\n", index, fine.length, fine.force);
      c->faults++;
    }
}

static void
test_rigs (void **state)
{
  Comparison c = { .steady = lb_steady_new (), .fine = lb_steady_new () };
  RigSource *source = rig_source_new (RIG_CLEAR);
  size_t count = test_count (COUNT);

  for (size_t i = 0; c.compared < count && c.left_out < count + 20; i++)
    {
      LbSetup setup;
      rig_source_next (source, &setup);
      compare_rig (&c, i, &setup);
    }
  printf ("%zu rigs compared (oracle helped to a start in %zu), %zu left out\n"
          "default mesh: at most %.2e m, %.2e N, %.2f %%\nfine mesh: at most %.2e m, %.2e N\n",
          c.compared, c.helped, c.left_out, c.worst_default.length, c.worst_default.force,
          100 * c.worst_default.share, c.worst_fine.length, c.worst_fine.force);
  assert_int_equal (c.compared, count);
  assert_int_equal (c.faults, 0);
  rig_source_free (source);
  lb_steady_free (c.steady);
  lb_steady_free (c.fine);
}

int
main (void)
{
  const struct CMUnitTest tests[] = { cmocka_unit_test (test_rigs) };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
