/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The solver's thread: the latest request wins, results come on the main context, failures keep the
 * last good answer, and it ends when told. */
#include "model-support.h"

#include "solver.h"

typedef struct
{
  int n_solved;
  double last_depth;
  gboolean last_failed;
  GThread *thread;
} Seen;

static void
solved_cb (LbSolver *solver, LbResult *result, Seen *seen)
{
  seen->n_solved++;
  seen->last_depth = lb_result_get_setup (result)->river.depth;
  seen->last_failed = lb_result_get_failed (result);
  seen->thread = g_thread_self ();
  assert_ptr_equal (lb_solver_get_last_result (solver), result);
}

static void
wait_until_idle (LbSolver *solver)
{
  gint64 end = g_get_monotonic_time () + 60 * G_TIME_SPAN_SECOND;

  while (lb_solver_get_busy (solver))
    {
      if (g_get_monotonic_time () > end)
        fail_msg ("the solver does not come to rest");
      g_main_context_iteration (NULL, FALSE);
    }
}

static void
a_request_is_answered (void **state)
{
  g_autoptr (LbSolver) solver = lb_solver_new ();
  LbSetup setup = lb_setup_default ();
  Seen seen = { 0 };
  LbResult *result;

  g_signal_connect (solver, "solved", G_CALLBACK (solved_cb), &seen);
  assert_null (lb_solver_get_good_result (solver));
  lb_solver_request (solver, &setup);
  assert_true (lb_solver_get_busy (solver));
  wait_until_idle (solver);
  assert_int_equal (seen.n_solved, 1);
  assert_ptr_equal (seen.thread, g_thread_self ());
  result = lb_solver_get_good_result (solver);
  assert_non_null (result);
  assert_false (lb_result_get_failed (result));
  assert_true (lb_setup_equal (lb_result_get_setup (result), &setup));
  assert_true (lb_result_get_shape (result)->n_nodes > 20);
  assert_true (lb_result_get_readings (result)->hand_tension > 1);
  assert_true (lb_result_get_solve_time (result) > 0);
}

/* A thousand requests while the thread is busy: few solves, and the last one is the last asked. */
static void
the_latest_request_wins (void **state)
{
  g_autoptr (LbSolver) solver = lb_solver_new ();
  LbSetup setup = lb_setup_default ();
  Seen seen = { 0 };
  guint64 n_solves;

  g_signal_connect (solver, "solved", G_CALLBACK (solved_cb), &seen);
  for (int i = 0; i < 1000; i++)
    {
      setup.river.depth = 3 + i * 0.005;
      lb_solver_request (solver, &setup);
    }
  wait_until_idle (solver);
  n_solves = lb_solver_get_n_solves (solver);
  assert_true (n_solves >= 1 && n_solves < 1000);
  assert_true (seen.n_solved >= 1 && (guint64) seen.n_solved <= n_solves);
  assert_true (seen.last_depth == setup.river.depth);
}

/* With the owner asleep results replace one another: it hears of the last one alone. */
static void
results_do_not_queue_up (void **state)
{
  g_autoptr (LbSolver) solver = lb_solver_new ();
  LbSetup setup = lb_setup_default ();
  Seen seen = { 0 };

  g_signal_connect (solver, "solved", G_CALLBACK (solved_cb), &seen);
  for (int i = 1; i <= 5; i++)
    {
      setup.river.depth = 3 + i;
      lb_solver_request (solver, &setup);
      while (lb_solver_get_n_solves (solver) < (guint64) i)
        g_usleep (200);
    }
  assert_int_equal (seen.n_solved, 0);
  wait_until_idle (solver);
  assert_int_equal (seen.n_solved, 1);
  assert_true (seen.last_depth == 8);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  assert_int_equal (seen.n_solved, 1);
}

static void
a_failure_keeps_the_last_good_answer (void **state)
{
  g_autoptr (LbSolver) solver = lb_solver_new ();
  LbSetup setup = lb_setup_default (), wrong = setup;
  Seen seen = { 0 };
  LbResult *good;

  g_signal_connect (solver, "solved", G_CALLBACK (solved_cb), &seen);
  assert_true (lb_solver_request_and_wait (solver, &setup, -1));
  good = lb_solver_get_good_result (solver);
  wrong.river.depth = -1;
  assert_true (lb_solver_request_and_wait (solver, &wrong, -1));
  assert_int_equal (seen.n_solved, 2);
  assert_true (seen.last_failed);
  assert_ptr_equal (lb_solver_get_good_result (solver), good);
  assert_int_equal (lb_result_get_status (lb_solver_get_last_result (solver)), LB_STATUS_BAD_SETUP);
  assert_null (lb_result_get_shape (lb_solver_get_last_result (solver)));
  assert_null (lb_result_get_readings (lb_solver_get_last_result (solver)));
  assert_true (lb_solver_request_and_wait (solver, &setup, -1));
  assert_false (seen.last_failed);
}

static void
waiting_answers_before_it_returns (void **state)
{
  g_autoptr (LbSolver) solver = lb_solver_new ();
  LbSetup setup = lb_setup_default ();
  Seen seen = { 0 };

  g_signal_connect (solver, "solved", G_CALLBACK (solved_cb), &seen);
  for (int i = 1; i <= 50; i++)
    {
      setup.river.depth = 4 + i * 0.01;
      assert_true (lb_solver_request_and_wait (solver, &setup, 30 * G_TIME_SPAN_SECOND));
      assert_int_equal (seen.n_solved, i);
      assert_true (seen.last_depth == setup.river.depth);
    }
  while (g_main_context_iteration (NULL, FALSE))
    ;
  assert_int_equal (seen.n_solved, 50);
}

static void
results_outlive_the_solver (void **state)
{
  LbSolver *solver = lb_solver_new ();
  LbSetup setup = lb_setup_default ();
  g_autoptr (LbResult) result = NULL;

  assert_true (lb_solver_request_and_wait (solver, &setup, -1));
  result = g_object_ref (lb_solver_get_good_result (solver));
  lb_solver_request (solver, &setup);
  g_assert_finalize_object (solver);
  assert_true (lb_result_get_readings (result)->line_out > 1);
}

/* Dropped at any moment, with a solve under way or a result on its way. */
static void
it_ends_cleanly_at_any_moment (void **state)
{
  TestRandom random = { 9 };

  for (size_t i = 0; i < test_count (200); i++)
    {
      LbSolver *solver = lb_solver_new ();
      LbSetup setup = lb_setup_default ();

      for (int j = 0; j < 5; j++)
        {
          setup.river.depth = test_random (&random, 2, 8);
          lb_solver_request (solver, &setup);
        }
      g_usleep ((gulong) test_random (&random, 0, 1500));
      g_assert_finalize_object (solver);
      while (g_main_context_iteration (NULL, FALSE))
        ;
    }
}

static void
solving_here_and_there_is_the_same (void **state)
{
  g_autoptr (LbSolver) solver = lb_solver_new ();
  LbSetup setup = lb_setup_default ();
  g_autoptr (LbResult) here = lb_result_solve (NULL, &setup, NULL);
  const LbReadings *there;

  assert_true (lb_solver_request_and_wait (solver, &setup, -1));
  there = lb_result_get_readings (lb_solver_get_good_result (solver));
  assert_true (there->line_out == lb_result_get_readings (here)->line_out);
  assert_true (there->lures[1].at.height == lb_result_get_readings (here)->lures[1].at.height);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_request_is_answered),
    cmocka_unit_test (the_latest_request_wins),
    cmocka_unit_test (results_do_not_queue_up),
    cmocka_unit_test (a_failure_keeps_the_last_good_answer),
    cmocka_unit_test (waiting_answers_before_it_returns),
    cmocka_unit_test (results_outlive_the_solver),
    cmocka_unit_test (it_ends_cleanly_at_any_moment),
    cmocka_unit_test (solving_here_and_there_is_the_same),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
