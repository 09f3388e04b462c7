/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Courses said leg by leg: the way that a leg takes is worked out by hand. */
#include "test.h"

#include <string.h>

#include "ideal-rig.h"
#include "leg_times.h"
#include "pass_record.h"
#include "rigs.h"

#define PI 3.14159265358979323846

/* Where the boat is after it all, by recording the pass of a rig that costs little. */
static LbPassSample
last_of (const LbPassScript *script, const LbSetup *setup)
{
  LbPassOptions options = { .segments = 8, .step = 0.02 };
  LbPassRecord *record;
  LbPassSample last;

  assert_int_equal (lb_pass_record_new (&record, setup, script, &options, NULL), LB_STATUS_OK);
  assert_int_equal (lb_pass_record_run (record, INFINITY, NULL), LB_STATUS_OK);
  assert_true (lb_pass_record_is_complete (record));
  last = *lb_pass_record_sample (record, lb_pass_record_count (record) - 1);
  lb_pass_record_free (record);
  return last;
}

static LbCourseLeg
leg_of (double distance, double speed, double turn)
{
  LbCourseLeg leg = lb_course_leg_default ();

  leg.duration = LB_UNSET;
  leg.distance = distance;
  leg.speed = speed;
  leg.turn = turn;
  return leg;
}

/* 5 m at 0.4 m/s take 12.5 s. Getting from 0.4 to 0.8 m/s at 0.25 m/s2 takes 1.6 s and 0.96 m; the
 * other 9.04 m take 11.3 s. */
static void
a_distance_is_kept (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  LbPassScript script = lb_pass_script_default ();

  script.n_legs = 2;
  script.legs[0] = leg_of (5, 0.4, 0);
  script.legs[1] = leg_of (10, 0.8, 0);
  LbPassSample last = last_of (&script, &setup);
  assert_near (last.time, 12.5 + 1.6 + 11.3, 1e-9);
  assert_near (last.boat.x, setup.boat.position - 15, 1e-6);
  assert_near (last.speed, 0.8, 1e-9);
}

/* 30 s that begin with getting from 0.4 to 0.9 m/s in 2 s, at 0.65 in the mean: 26.5 m, and 28 s
 * for the turn. Half a metre with too little time for the change: at 0.65 all the way. */
static void
it_is_told_what_a_leg_comes_to (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  LbPassScript script = lb_pass_script_default ();
  LbLegTimes legs[LB_MAX_COURSE_LEGS];

  script.n_legs = 2;
  script.legs[0] = leg_of (5, 0.4, 0);
  script.legs[1] = leg_of (0.5, 0.9, 10);
  script.legs[1].duration = 30;
  lb_leg_times_find (&script, &setup, legs);
  assert_near (legs[0].time, 12.5, 1e-12);
  assert_near (legs[0].way, 5, 1e-12);
  assert_near (legs[0].turning, 12.5, 1e-12);
  assert_near (legs[1].time, 30, 1e-12);
  assert_near (legs[1].way, 26.5, 1e-12);
  assert_near (legs[1].turning, 28, 1e-12);
  script.legs[1].duration = LB_UNSET;
  script.legs[1].turn = 0;
  lb_leg_times_find (&script, &setup, legs);
  assert_near (legs[1].time, 0.5 / 0.65, 1e-12);
  assert_near (legs[1].way, 0.5, 1e-12);
  assert_near (legs[1].turning, legs[1].time, 1e-12);
  /* Never over. */
  script.legs[0].speed = 0;
  lb_leg_times_find (&script, &setup, legs);
  assert_near (legs[0].time, 0, 0);
}

/* A leg too short for its change of speed: half a metre, from 0.4 to 1.2 m/s, at 0.8 in the mean.
 */
static void
a_short_leg_is_kept (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);
  LbPassScript script = lb_pass_script_default ();

  script.n_legs = 2;
  script.legs[0] = leg_of (2, 0.4, 0);
  script.legs[1] = leg_of (0.5, 1.2, 0);
  LbPassSample last = last_of (&script, &setup);
  assert_near (last.time, 5 + 0.5 / 0.8, 1e-9);
  assert_near (last.boat.x, setup.boat.position - 2.5, 1e-6);
}

/* Half a turn to the right, by its angle and by its rate, and back at the same speed: the boat is
 * where the turn has put it, abreast of where it began. */
static void
a_turn_leads_back (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.5, 0.6);
  LbPassScript script = lb_pass_script_default ();
  LbPassSample by_angle, by_rate;

  script.n_legs = 3;
  script.legs[0] = leg_of (4, 0.5, 0);
  script.legs[1] = leg_of (15, 0.5, 180);
  script.legs[2] = leg_of (4, 0.5, 0);
  by_angle = last_of (&script, &setup);
  assert_near (by_angle.heading, PI, 1e-12);
  assert_near (by_angle.boat.x, setup.boat.position, 1e-5);
  assert_true (by_angle.boat.y > 5); /* half of 15 m round a circle would be 9.5 m apart */
  script.legs[1].turn = 0;
  script.legs[1].turn_rate = 6;
  by_rate = last_of (&script, &setup);
  assert_near (by_rate.heading, PI, 1e-12);
  assert_near (by_rate.boat.y, by_angle.boat.y, 1e-9);
}

/* Line let out at 0.2 m/s for 10 s, the rate coming up over 1 s and going away over another: 0.5 *
 * 0.2 + 9 * 0.2 + 0.5 * 0.2. */
static void
line_is_let_out (void **state)
{
  LbSetup setup = ideal_rig (0, 3);
  LbPassScript script = lb_pass_script_default ();
  LbCourseLeg leg = lb_course_leg_default ();
  LbSetup start;

  leg.duration = 10;
  script.n_legs = 2;
  script.legs[0] = script.legs[1] = leg;
  script.legs[0].line_rate = 0.2;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 3 };
  start = setup;
  assert_near (last_of (&script, &start).readings.line_out, 3 + 2, 1e-6);
}

/* Nothing said: over the surveyed bed from its lower end to its upper, 60 m at 0.5 m/s; two minutes
 * from where the boat is over a plane one. */
static void
an_empty_script_goes_up_the_bed (void **state)
{
  LbSetup setup = ideal_rig (1, 0.3);
  LbPassScript script = lb_pass_script_default ();
  LbPassJob job;

  setup.boat.speed_over_ground = 0.5;
  assert_int_equal (lb_pass_script_plan (&script, &setup, &job, NULL), LB_STATUS_OK);
  assert_near (job.duration, 120, 0);
  assert_near (job.setup.boat.position, setup.boat.position, 0);
  setup.river.n_bed_points = 3;
  for (int i = 0; i < 3; i++)
    {
      setup.river.bed_x[i] = -20 + 30 * i;
      setup.river.bed_depth[i] = 6;
    }
  assert_int_equal (lb_pass_script_plan (&script, &setup, &job, NULL), LB_STATUS_OK);
  assert_near (job.setup.boat.position, 40, 0);
  assert_near (job.duration, 120, 0);
  script.start = 10;
  assert_int_equal (lb_pass_script_plan (&script, &setup, &job, NULL), LB_STATUS_OK);
  assert_near (job.setup.boat.position, 10, 0);
  assert_near (job.duration, 60, 0);
}

static const char *
fault_of (const LbPassScript *script)
{
  LbSetup setup = ideal_rig (0, 0.3);
  const char *what = "nothing";
  LbPassRecord *record;

  assert_int_equal (lb_pass_record_new (&record, &setup, script, NULL, &what), LB_STATUS_BAD_SETUP);
  assert_null (record);
  return what;
}

static void
what_cannot_be_is_refused (void **state)
{
  LbPassScript script = lb_pass_script_default ();

  script.n_legs = 1;
  script.legs[0] = leg_of (5, 0, 0);
  assert_string_equal (fault_of (&script),
                       "a leg of the course that is never over, as the boat does not move");
  script.legs[0] = leg_of (5000, 0.5, 0);
  assert_string_equal (fault_of (&script), "a pass of more than an hour");
  script.legs[0] = leg_of (1, 1, 170);
  assert_string_equal (fault_of (&script), "turn of the course");
  script = lb_pass_script_default ();
  script.hand.motion = LB_HAND_FOLLOW_BED;
  script.hand.stroke = 0;
  assert_string_equal (fault_of (&script), "stroke of the hand");
  script = lb_pass_script_default ();
  script.n_legs = LB_MAX_COURSE_LEGS + 1;
  assert_string_equal (fault_of (&script), "number of legs");
  script.n_legs = 0;
  script.duration = 0;
  assert_string_equal (fault_of (&script), "duration of the pass");
}

/* The most legs there can be, each with a change of speed and a turn, fit into a course. */
static void
all_legs_fit (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);
  LbPassScript script = lb_pass_script_default ();
  LbPassJob job;

  script.n_legs = LB_MAX_COURSE_LEGS;
  for (size_t i = 0; i < LB_MAX_COURSE_LEGS; i++)
    script.legs[i] = leg_of (20, i % 2 ? 0.4 : 0.6, 6);
  assert_int_equal (lb_pass_script_plan (&script, &setup, &job, NULL), LB_STATUS_OK);
  assert_int_equal (job.plan.course.n_points, 2 * LB_MAX_COURSE_LEGS);
}

static void
equal_is_what_says_the_same (void **state)
{
  LbPassScript a = lb_pass_script_default (), b = a;

  assert_true (lb_pass_script_equal (&a, &b));
  b.hand.motion = LB_HAND_LIFT_AND_DROP;
  assert_false (lb_pass_script_equal (&a, &b));
  b = a;
  b.duration = 5;
  assert_false (lb_pass_script_equal (&a, &b));
  a.n_legs = b.n_legs = 1;
  b.duration = a.duration;
  a.legs[0] = b.legs[0] = lb_course_leg_default ();
  b.legs[0].distance = 7; /* of a leg that lasts */
  assert_true (lb_pass_script_equal (&a, &b));
  b.legs[0].speed = 0.4;
  assert_false (lb_pass_script_equal (&a, &b));
}

static void
anything_is_mended (void **state)
{
  LbPassScript script = lb_pass_script_default (), usual = script;

  lb_pass_script_mend (&script);
  assert_true (lb_pass_script_equal (&script, &usual));
  script.n_legs = 100;
  for (size_t i = 0; i < LB_MAX_COURSE_LEGS; i++)
    script.legs[i] = (LbCourseLeg){ NAN, NAN, NAN, NAN, NAN, NAN };
  script.legs[1] = (LbCourseLeg){ 1e9, 1e9, -1, 1e9, -1e9, 1e9 };
  script.hand = (LbHand){ (LbHandMotion) 7, NAN, INFINITY };
  script.duration = -1;
  script.start = -INFINITY;
  script.tangle_distance = NAN;
  lb_pass_script_mend (&script);
  assert_int_equal (script.n_legs, LB_MAX_COURSE_LEGS);
  assert_true (script.legs[0].distance == LB_LEG_LEAST_DISTANCE);
  assert_false (lb_is_set (script.legs[0].speed) || lb_is_set (script.legs[0].turn_rate));
  assert_true (script.legs[0].turn == 0 && script.legs[0].line_rate == 0);
  assert_true (script.legs[1].duration == LB_PASS_LONGEST && script.legs[1].speed == 0);
  assert_true (script.legs[1].turn_rate == -LB_LEG_MOST_TURN_RATE);
  assert_true (script.legs[1].line_rate == LB_LEG_MOST_LINE_RATE);
  assert_int_equal (script.hand.motion, LB_HAND_HOLD);
  assert_true (script.hand.stroke == LB_HAND_LEAST_STROKE);
  assert_true (script.hand.period == LB_HAND_MOST_PERIOD);
  assert_true (script.duration == LB_PASS_SHORTEST && script.tangle_distance == 0);
  assert_true (script.start == -LB_PASS_FARTHEST_START);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_distance_is_kept),
    cmocka_unit_test (it_is_told_what_a_leg_comes_to),
    cmocka_unit_test (a_short_leg_is_kept),
    cmocka_unit_test (a_turn_leads_back),
    cmocka_unit_test (line_is_let_out),
    cmocka_unit_test (an_empty_script_goes_up_the_bed),
    cmocka_unit_test (what_cannot_be_is_refused),
    cmocka_unit_test (all_legs_fit),
    cmocka_unit_test (equal_is_what_says_the_same),
    cmocka_unit_test (anything_is_mended),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
