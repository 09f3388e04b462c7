/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Passes recorded on a thread: the latest request wins, the first second is told of before the rest
 * is known, what cannot be is refused, and it ends when told. */
#include "model-support.h"

#include <string.h>

#include "pass_runner.h"
#include "sentence.h"

typedef struct
{
  int n;
  double first_end; /* s, recorded when it was told of first */
  GThread *thread;
} Seen;

static void
progressed_cb (LbPassRunner *runner, Seen *seen)
{
  LbPassRecord *record = lb_pass_runner_get_record (runner);

  if (seen->n++ == 0 && record)
    seen->first_end = lb_pass_record_end (record);
  seen->thread = g_thread_self ();
}

static LbPassScript
script_of (double duration)
{
  LbPassScript script = lb_pass_script_default ();

  script.duration = duration;
  return script;
}

static void
wait_for (LbPassRunner *runner, const Seen *seen, int least)
{
  gint64 end = g_get_monotonic_time () + 60 * G_TIME_SPAN_SECOND;

  while (seen ? seen->n < least : lb_pass_runner_get_state (runner) == LB_PASS_RUN_GOING)
    {
      if (g_get_monotonic_time () > end)
        fail_msg ("the pass does not come to its end");
      g_main_context_iteration (NULL, FALSE);
    }
}

static void
a_pass_is_recorded_whole (void **state)
{
  g_autoptr (LbPassRunner) runner = lb_pass_runner_new ();
  LbSetup setup = lb_setup_default ();
  LbPassScript script = script_of (8);
  Seen seen = { 0 };

  g_signal_connect (runner, "progressed", G_CALLBACK (progressed_cb), &seen);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_NOTHING);
  assert_null (lb_pass_runner_get_record (runner));
  lb_pass_runner_request (runner, &setup, &script);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_GOING);
  wait_for (runner, NULL, 0);
  wait_for (runner, &seen, 1);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_WHOLE);
  assert_near (lb_pass_record_end (lb_pass_runner_get_record (runner)), 8, 1e-9);
  assert_near (lb_pass_runner_get_done (runner), 1, 0);
  assert_true (seen.first_end >= 1 - 1e-9);
  assert_ptr_equal (seen.thread, g_thread_self ());
}

/* What the steady run has a remark on, the pass has, too. */
static void
it_tells_of_its_start (void **state)
{
  g_autoptr (LbPassRunner) runner = lb_pass_runner_new ();
  LbSetup setup = lb_setup_default ();
  LbPassScript script = script_of (2);
  LbWording wording = lb_wording_default (LB_UNITS_US);
  g_autofree char *words = NULL;

  lb_pass_runner_request (runner, &setup, &script);
  wait_for (runner, NULL, 0);
  assert_null (lb_pass_runner_get_start (runner));
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, 50 };
  lb_pass_runner_request (runner, &setup, &script);
  assert_null (lb_pass_runner_get_start (runner));
  wait_for (runner, NULL, 0);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_WHOLE);
  assert_non_null (lb_pass_runner_get_start (runner));
  words = lb_sentence_of_remark (lb_pass_runner_get_start (runner), &wording);
  assert_non_null (strstr (words, "The weight cannot be held as high as"));
}

static void
the_latest_request_wins (void **state)
{
  g_autoptr (LbPassRunner) runner = lb_pass_runner_new ();
  LbSetup setup = lb_setup_default ();
  LbPassScript script = script_of (3600);

  for (int i = 0; i < 30; i++)
    lb_pass_runner_request (runner, &setup, &script);
  script = script_of (2);
  lb_pass_runner_request (runner, &setup, &script);
  wait_for (runner, NULL, 0);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_WHOLE);
  assert_near (lb_pass_record_duration (lb_pass_runner_get_record (runner)), 2, 0);
}

static void
it_is_called_off (void **state)
{
  g_autoptr (LbPassRunner) runner = lb_pass_runner_new ();
  LbSetup setup = lb_setup_default ();
  LbPassScript script = script_of (3600);
  Seen seen = { 0 };

  g_signal_connect (runner, "progressed", G_CALLBACK (progressed_cb), &seen);
  lb_pass_runner_request (runner, &setup, &script);
  wait_for (runner, &seen, 1);
  assert_true (seen.first_end >= 1 - 1e-9);
  lb_pass_runner_cancel (runner);
  wait_for (runner, NULL, 0);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_CANCELLED);
  assert_true (lb_pass_runner_get_done (runner) > 0 && lb_pass_runner_get_done (runner) < 1);
}

/* In as many pieces as one likes, told to go on at once or when it has stopped: what comes of it is
 * what comes of it in one go. */
static void
it_goes_on_where_it_was_called_off (void **state)
{
  g_autoptr (LbPassRunner) whole = lb_pass_runner_new (), pieces = lb_pass_runner_new ();
  LbSetup setup = lb_setup_default ();
  LbPassScript script = script_of (40);
  LbPassRecord *a, *b;

  lb_pass_runner_go_on (pieces);
  assert_int_equal (lb_pass_runner_get_state (pieces), LB_PASS_RUN_NOTHING);
  script.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 0.3, 4 };
  lb_pass_runner_request (whole, &setup, &script);
  wait_for (whole, NULL, 0);
  lb_pass_runner_request (pieces, &setup, &script);
  for (int i = 0; i < 40; i++)
    {
      g_usleep (1000);
      lb_pass_runner_cancel (pieces);
      if (i % 2)
        wait_for (pieces, NULL, 0);
      lb_pass_runner_go_on (pieces);
    }
  for (int i = 0; i < 100000 && lb_pass_runner_get_state (pieces) != LB_PASS_RUN_WHOLE; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (200);
    }
  assert_int_equal (lb_pass_runner_get_state (pieces), LB_PASS_RUN_WHOLE);
  a = lb_pass_runner_get_record (whole);
  b = lb_pass_runner_get_record (pieces);
  assert_int_equal (lb_pass_record_count (a), lb_pass_record_count (b));
  for (size_t i = 0; i < lb_pass_record_count (a); i++)
    assert_near (lb_pass_record_sample (b, i)->readings.hand_tension,
                 lb_pass_record_sample (a, i)->readings.hand_tension, 0);
  /* A pass that is whole has nothing to go on with. */
  lb_pass_runner_go_on (pieces);
  assert_int_equal (lb_pass_runner_get_state (pieces), LB_PASS_RUN_WHOLE);
}

static void
what_cannot_be_is_refused (void **state)
{
  g_autoptr (LbPassRunner) runner = lb_pass_runner_new ();
  LbSetup setup = lb_setup_default ();
  LbPassScript script = script_of (2);
  Seen seen = { 0 };

  g_signal_connect (runner, "progressed", G_CALLBACK (progressed_cb), &seen);
  setup.rig.weight.mass = -1;
  lb_pass_runner_request (runner, &setup, &script);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_REFUSED);
  assert_non_null (lb_pass_runner_get_fault (runner));
  assert_null (lb_pass_runner_get_record (runner));
  wait_for (runner, &seen, 1);
  /* It still serves. */
  setup = lb_setup_default ();
  lb_pass_runner_request (runner, &setup, &script);
  assert_null (lb_pass_runner_get_fault (runner));
  wait_for (runner, NULL, 0);
  assert_int_equal (lb_pass_runner_get_state (runner), LB_PASS_RUN_WHOLE);
}

static void
it_may_be_dropped_at_any_time (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbPassScript script = script_of (3600);

  for (int i = 0; i < 10; i++)
    {
      LbPassRunner *runner = lb_pass_runner_new ();

      for (int k = 0; k < i % 3; k++)
        lb_pass_runner_request (runner, &setup, &script);
      if (i > 5)
        g_usleep (3000 * (gulong) (i - 5));
      g_object_unref (runner);
      while (g_main_context_iteration (NULL, FALSE))
        ;
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_pass_is_recorded_whole),
    cmocka_unit_test (it_tells_of_its_start),
    cmocka_unit_test (the_latest_request_wins),
    cmocka_unit_test (it_is_called_off),
    cmocka_unit_test (it_goes_on_where_it_was_called_off),
    cmocka_unit_test (what_cannot_be_is_refused),
    cmocka_unit_test (it_may_be_dropped_at_any_time),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
