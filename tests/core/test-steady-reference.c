/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steady run, and the oracle, against the answers of an independent solver
 * (answers/steady-cases.csv). */
#include "test.h"

#include <string.h>

#include "answers.h"
#include "oracle.h"
#include "rigs.h"
#include "steady-checks.h"
#include "steady.h"

#define N_CASES 4
#define N_PLACES 6

static const char *const places[N_PLACES] = { "W", "A1", "A2", "S", "Lure1", "Lure2" };

typedef struct
{
  int number;
  double mass, boat_speed, current, line_out;
  bool given;
  double place[N_PLACES][2]; /* x from the reel, z above the bed */
  double reel_tension, angle, shank_top_tension, leader_tension[2];
} ReferenceCase;

static ReferenceCase cases[N_CASES];

static void
read_case (const Answers *a, size_t row, ReferenceCase *c)
{
  char column[16];

  c->number = (int) answers_number (a, row, "case");
  c->mass = answers_number (a, row, "mw_kg");
  c->boat_speed = answers_number (a, row, "Vb_mps");
  c->current = answers_number (a, row, "us_mps");
  c->given = strcmp (answers_text (a, row, "mode"), "fixedL") == 0;
  c->line_out = answers_number (a, row, "L_main_m");
  for (int i = 0; i < N_PLACES; i++)
    for (int k = 0; k < 2; k++)
      {
        snprintf (column, sizeof column, "%c%s", "xz"[k], places[i]);
        c->place[i][k] = answers_number (a, row, column);
      }
  c->reel_tension = answers_number (a, row, "T_boat_N");
  c->angle = answers_number (a, row, "angle_boat_deg");
  c->shank_top_tension = answers_number (a, row, "T_shank_top_N");
  c->leader_tension[0] = answers_number (a, row, "T_leader1_attach_N");
  c->leader_tension[1] = answers_number (a, row, "T_leader2_attach_N");
}

static int
read_cases (void **state)
{
  Answers *a = answers_read ("steady-cases.csv");

  assert_int_equal (answers_rows (a), N_CASES);
  for (size_t i = 0; i < N_CASES; i++)
    read_case (a, i, &cases[i]);
  answers_free (a);
  return 0;
}

static LbSetup
case_setup (const ReferenceCase *c)
{
  LbSetup setup = rig_reference (c->mass, c->boat_speed, c->current);

  if (c->given)
    setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, c->line_out };
  return setup;
}

/* What is compared, from either solver: positions, line out, tensions and angle. */
typedef struct
{
  double place[N_PLACES][2];
  double line_out;
  double reel_tension, angle, shank_top_tension, leader_tension[2];
} Found;

static void
assert_case (
    const ReferenceCase *c, const Found *f, double length, double hard, double share, double force)
{
  double worst = 0, pull[4][2] = { { f->reel_tension, c->reel_tension },
                                   { f->shank_top_tension, c->shank_top_tension },
                                   { f->leader_tension[0], c->leader_tension[0] },
                                   { f->leader_tension[1], c->leader_tension[1] } };
  double limit = c->number == 7 ? hard : length;

  for (int i = 0; i < N_PLACES; i++)
    {
      double miss = hypot (f->place[i][0] - c->place[i][0], f->place[i][1] - c->place[i][1]);
      worst = fmax (worst, miss);
      if (!(miss <= limit))
        fail_msg ("case %d: %s is %.3g m off (limit %g)", c->number, places[i], miss, limit);
    }
  if (!(fabs (f->line_out - c->line_out) <= limit))
    fail_msg ("case %d: line out is %.3g m off", c->number, f->line_out - c->line_out);
  for (int i = 0; i < 4; i++)
    if (!(fabs (pull[i][0] - pull[i][1]) <= share * pull[i][1] + force))
      fail_msg ("case %d: tension %d is %.9g N, not %.9g", c->number, i, pull[i][0], pull[i][1]);
  /* Half a digit of the printed angle, or what the shift of the tension's direction may be. */
  assert_near (f->angle, c->angle, 1e-5 + share * 60);
  print_message ("case %d: largest miss %.2e m, reel tension %.2e N\n", c->number, worst,
                 fabs (f->reel_tension - c->reel_tension));
}

static Found
found_by_steady (const LbSetup *setup, const LbShape *shape)
{
  Found f = { .line_out = shape->line_out };
  size_t nodes[N_PLACES] = { shape->weight,    shape->attachment[0], shape->attachment[1],
                             shape->shank_top, shape->lure[0],       shape->lure[1] };
  LbVec3 pull = shape_reel_pull (shape);

  for (int i = 0; i < N_PLACES; i++)
    {
      LbVec3 p = shape->nodes[nodes[i]].position;
      f.place[i][0] = p.x - setup->boat.position;
      f.place[i][1] = p.z + setup->river.depth;
    }
  f.reel_tension = lb_vec3_norm (pull);
  f.angle = atan2 (pull.x, -pull.z) * 180 / M_PI;
  f.shank_top_tension = lb_vec3_norm (shape_pull_above (shape, shape->shank_top));
  for (int i = 0; i < 2; i++)
    f.leader_tension[i] = lb_vec3_norm (shape_pull_of_part (shape, LB_PART_LEADER_0 + i));
  return f;
}

static void
solve_and_assert (
    const LbSteadyOptions *options, double length, double hard, double share, double force)
{
  LbSteady *steady = lb_steady_new ();

  for (size_t i = 0; i < N_CASES; i++)
    {
      LbSetup setup = case_setup (&cases[i]);
      assert_int_equal (lb_steady_solve (steady, &setup, options), LB_STATUS_OK);
      Found found = found_by_steady (&setup, lb_steady_shape (steady));
      assert_case (&cases[i], &found, length, hard, share, force);
    }
  lb_steady_free (steady);
}

/* 1 mm, 3 mm in the hard corner of case 7 (a lure 6 cm above the bed), 0.5 % in tension. */
static void
test_default_mesh (void **state)
{
  solve_and_assert (NULL, 1e-3, 3e-3, 5e-3, 0);
}

static void
test_fine_mesh (void **state)
{
  solve_and_assert (&(LbSteadyOptions){ .fine = true }, 1e-6, 1e-6, 0, 1e-6);
}

/* The oracle starts from its own first guess and must give every printed digit. */
static void
test_oracle (void **state)
{
  for (size_t i = 0; i < N_CASES; i++)
    {
      LbSetup setup = case_setup (&cases[i]);
      OracleAnswer a;
      Found f = { .line_out = 0 };

      assert_true (oracle_solve (&setup, NULL, &a));
      const double *found[N_PLACES] = { a.weight,    a.attachment[0], a.attachment[1],
                                        a.shank_top, a.lure[0],       a.lure[1] };
      for (int k = 0; k < N_PLACES; k++)
        {
          f.place[k][0] = found[k][0] - setup.boat.position;
          f.place[k][1] = found[k][1] + setup.river.depth;
        }
      f.line_out = a.line_out;
      f.reel_tension = hypot (a.reel_pull[0], a.reel_pull[1]);
      f.angle = atan2 (a.reel_pull[0], -a.reel_pull[1]) * 180 / M_PI;
      f.shank_top_tension = a.shank_top_tension;
      memcpy (f.leader_tension, a.attachment_tension, sizeof f.leader_tension);
      assert_case (&cases[i], &f, 1.5e-8, 1.5e-8, 0, 1.1e-7);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_oracle),
    cmocka_unit_test (test_default_mesh),
    cmocka_unit_test (test_fine_mesh),
  };

  return cmocka_run_group_tests (tests, read_cases, NULL);
}
