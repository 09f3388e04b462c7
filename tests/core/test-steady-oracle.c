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

/* Of the fine mesh. A curve through measured points, of the profile or of the bed, has jumps in its
 * curvature at every point, that of the profile also one in its slope above the highest: where one
 * falls within a segment the error has no clean series in the segment length, and extrapolation
 * gains less. */
#define FINE_LENGTH 1e-6
#define FINE_FORCE 1e-6
#define FINE_LENGTH_POINTS 1e-5
#define FINE_FORCE_POINTS 3e-5

/* Of the default mesh, over all these rigs, which go far beyond the usual: eight leaders of up to
 * 8 m, lines that strum, lures that hardly pull. Miss in m, and of a long bowed line as a share of
 * the line out; tension as a share. */
#define DEFAULT_LENGTH 0.02
#define DEFAULT_SHARE 0.005
#define DEFAULT_FORCE 0.005
/* Three rigs in four are within this, m. */
#define DEFAULT_MOSTLY 0.003
#define BALANCE 1e-8 /* N */

/* A line flatter than this at the reel floats at the surface by the model. */
#define FLATTEST 0.11
#define LONGEST_LINE 60 /* m, that the sliders know */

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
  bool clear = a->lowest > CLEARANCE && a->highest < -CLEARANCE && a->line_out <= LONGEST_LINE
               && -a->reel_pull[1] > FLATTEST * hypot (a->reel_pull[0], a->reel_pull[1]);

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
  size_t mostly; /* rigs within DEFAULT_MOSTLY on the default mesh */
  Miss worst_default, worst_fine, worst_fine_points;
} Comparison;

static void
keep_worst (Miss *worst, Miss miss)
{
  worst->length = fmax (worst->length, miss.length);
  worst->force = fmax (worst->force, miss.force);
  worst->share = fmax (worst->share, miss.share);
}

static void
compare_default (Comparison *c, size_t index, const LbSetup *setup, const OracleAnswer *answer)
{
  const LbShape *shape = lb_steady_shape (c->steady);
  Miss miss = compare (shape, answer);
  ShapeCheck check = shape_check (setup, LB_STATUS_OK, shape);
  double force = BALANCE * fmax (1, check.largest_load);

  keep_worst (&c->worst_default, miss);
  c->mostly += miss.length <= DEFAULT_MOSTLY;
  if (!(check.node_force <= force) || !(check.reel_force <= force))
    {
      printf ("rig %zu: %.3g N left at a node, %.3g N at the reel\n", index, check.node_force,
              check.reel_force);
      c->faults++;
    }
  if (!(miss.length <= fmax (DEFAULT_LENGTH, DEFAULT_SHARE * answer->line_out))
      || !(miss.share <= DEFAULT_FORCE))
    {
      printf ("rig %zu, default mesh: %.3g m, %.3g N (%.2g %%) off\n", index, miss.length,
              miss.force, 100 * miss.share);
      c->faults++;
    }
}

static void
compare_fine (Comparison *c, size_t index, const LbSetup *setup, const OracleAnswer *answer)
{
  bool points = setup->river.profile.law == LB_PROFILE_POINTS || setup->river.n_bed_points > 0;
  LbStatus status = lb_steady_solve (c->fine, setup, &(LbSteadyOptions){ .fine = true });

  if (lb_status_is_failure (status))
    {
      printf ("rig %zu, fine mesh: %s\n", index, lb_status_name (status));
      c->faults++;
      return;
    }
  Miss miss = compare (lb_steady_shape (c->fine), answer);
  keep_worst (points ? &c->worst_fine_points : &c->worst_fine, miss);
  if (!(miss.length <= (points ? FINE_LENGTH_POINTS : FINE_LENGTH))
      || !(miss.force <= (points ? FINE_FORCE_POINTS : FINE_FORCE)))
    {
      printf ("rig %zu, fine mesh: %.3g m, %.3g N off\n", index, miss.length, miss.force);
      c->faults++;
    }
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
  compare_default (c, index, setup, &answer);
  compare_fine (c, index, setup, &answer);
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
  printf (
      "%zu rigs compared (oracle helped to a start in %zu), %zu left out; %zu within 3 mm on the "
      "default mesh\n"
      "default mesh: at most %.2e m, %.2e N, %.2f %%\nfine mesh: at most %.2e m, %.2e N; "
      "measured points: %.2e m, %.2e N\n",
      c.compared, c.helped, c.left_out, c.mostly, c.worst_default.length, c.worst_default.force,
      100 * c.worst_default.share, c.worst_fine.length, c.worst_fine.force,
      c.worst_fine_points.length, c.worst_fine_points.force);
  assert_int_equal (c.compared, count);
  assert_int_equal (c.faults, 0);
  assert_true (4 * c.mostly >= 3 * c.compared || count < 50);
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
