/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The recorded pass: against rigs whose motion is worked out by hand, and against single steps of
 * the core's pass. */
#include "test.h"

#include <string.h>

#include "ideal-rig.h"
#include "pass_summary.h"
#include "rigs.h"

#define PI 3.14159265358979323846

static LbPassRecord *
recorded (const LbSetup *setup, const LbPassScript *script, double time)
{
  LbPassRecord *record;

  assert_int_equal (lb_pass_record_new (&record, setup, script, NULL, NULL), LB_STATUS_OK);
  assert_int_equal (lb_pass_record_run (record, time, NULL), LB_STATUS_OK);
  return record;
}

static LbPassScript
script_of (double duration)
{
  LbPassScript script = lb_pass_script_default ();

  script.duration = duration;
  return script;
}

/* ---- By hand ---- */

/* The boat drifts as fast as the water goes: the wire hangs straight down, and the weight goes up
 * and down with the hand, h = 0.2 + 0.3 (1 - cos 2 pi t / 6). It is above 0.5 m, the band's high
 * edge, just while cos < 0, half of the time; and never touches. */
static void
shares_of_a_lifted_weight (void **state)
{
  LbSetup setup = ideal_rig (0, 0.2);
  LbPassScript script = script_of (30);
  LbPassSummary summary = { 0 };

  setup.river.surface_current = 0;
  setup.boat.speed_over_ground = 0;
  script.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 0.6, 6 };
  LbPassRecord *record = recorded (&setup, &script, INFINITY);
  lb_pass_summary_continue (&summary, record);
  assert_near (summary.time, 30, 1e-9);
  /* The first half stroke swells up, and is above 0.374 s later, by its formula. A sample that hits
   * the edge is in the band, and stands for 0.05 s. */
  assert_near (summary.bodies[0].above, 15 - 0.374, 0.25);
  assert_near (summary.bodies[0].in_band, 15 + 0.374, 0.25);
  assert_near (summary.bodies[0].on_bed + summary.bodies[0].below, 0, 0);
  assert_near (lb_pass_share (summary.bodies[0].above, &summary), 0.5, 0.02);
  assert_near (summary.highest[0].value, 0.8, 2e-3);
  assert_near (summary.lowest[0].value, 0.2, 2e-3);
  assert_near (fmod (summary.highest[0].time, 6), 3, 0.06);
  assert_int_equal (lb_pass_record_touches (record, LB_PASS_WEIGHT, NULL, 0), 0);
  for (size_t i = 0; i < lb_pass_record_count (record); i++)
    {
      const LbPassSample *sample = lb_pass_record_sample (record, i);
      if (sample->time < 3)
        continue;
      assert_near (sample->readings.weight.height,
                   0.2 + 0.3 * (1 - cos (2 * PI * sample->time / 6)), 2e-3);
      /* Still water is taken to trickle, at a few mm/s. */
      assert_near (sample->readings.wire_angle, 0, 1e-5);
    }
  lb_pass_record_free (record);
}

/* Straight on with the weight held just at an edge of the band, it is in the band all the time,
 * though no two samples have it equally high to the last bit. */
static void
a_weight_at_the_edge_is_in_the_band (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript script = script_of (5);

  for (int edge = 0; edge < 2; edge++)
    {
      LbPassSummary summary = { 0 };
      double height = setup.rig.line_out.value;
      setup.band = edge == 0 ? (LbBand){ height, 0.5 } : (LbBand){ 0.5 * height, height };
      LbPassRecord *record = recorded (&setup, &script, INFINITY);
      lb_pass_summary_continue (&summary, record);
      assert_near (summary.bodies[LB_PASS_WEIGHT].in_band, 5, 1e-9);
      lb_pass_record_free (record);
    }
}

/* Let down through the bed: 0.2 m more line than the weight hangs on in still water leaves it on
 * the bed while 0.2 - 0.4 (1 - cos 2 pi t / 9) > 0, a sixth of the period before and after each 9
 * s. */
static void
touches_of_a_dipped_weight (void **state)
{
  LbSetup setup = rig_reference (0.79, 0, 0);
  LbPassScript script = script_of (18);
  LbPassTouch touches[16];

  setup.rig.n_leaders = 0;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, setup.river.depth + 0.2 - 1 };
  script.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 0.8, 9 };
  LbPassRecord *record = recorded (&setup, &script, INFINITY);
  size_t n = lb_pass_record_touches (record, LB_PASS_WEIGHT, touches, 16);
  assert_int_equal (n, 3);
  assert_near (touches[1].from, 9 - 1.5, 0.15);
  assert_near (touches[1].to, 9 + 1.5, 0.15);
  assert_near (touches[1].x_from, setup.boat.position, 0.5);
  assert_near (touches[0].from, 0, 0);
  assert_near (touches[2].to, 18, 0);
  assert_int_equal (lb_pass_record_touches (record, LB_PASS_WEIGHT, touches, 2), 3);
  lb_pass_record_free (record);
}

/* 0.8 m up, from 6 to 12 m upstream. */
static void
set_step_up (LbRiver *river)
{
  river->n_bed_points = 4;
  memcpy (river->bed_x, (double[]){ -40, -12, -6, 20 }, 4 * sizeof (double));
  memcpy (river->bed_depth, (double[]){ 5.2, 5.2, 6, 6 }, 4 * sizeof (double));
}

/* A step up in the bed, from 6 to 5.2 m: the weight that hung at 0.3 m goes over it dragging, and
 * the first touch is at the slope. */
static void
a_step_up_is_touched_where_it_is (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.5, 0.8);
  LbPassScript script = lb_pass_script_default ();
  LbPassTouch touch;

  setup.boat.position = 0;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.3 };
  set_step_up (&setup.river);
  script.start = 0;
  LbPassRecord *record = recorded (&setup, &script, INFINITY);
  assert_near (lb_pass_record_end (record), 80, 1e-9);
  assert_true (lb_pass_record_touches (record, LB_PASS_WEIGHT, &touch, 1) >= 1);
  assert_true (touch.x_from < -6 && touch.x_from > -12);
  assert_near (touch.x_from,
               lb_pass_record_sample (record, (size_t) lround (touch.from / 0.05))
                   ->readings.weight.position.x,
               1e-9);
  assert_true (lb_pass_record_sample (record, 0)->readings.weight.height > 0.29);
  lb_pass_record_free (record);
}

/* A line without any mass lets go of the weight all at once where the bed lifts it, and takes it up
 * again; over the edge above it drags on. */
static void
a_massless_line_is_dragged_up_a_step (void **state)
{
  for (size_t n_leaders = 0; n_leaders < 2; n_leaders++)
    {
      LbSetup setup = ideal_rig (n_leaders, 0.3);
      LbPassScript script = script_of (50);

      setup.boat.speed_over_ground = 0.5;
      set_step_up (&setup.river);
      script.start = 0;
      LbPassRecord *record = recorded (&setup, &script, INFINITY);
      assert_near (lb_pass_record_end (record), 50, 1e-9);
      const LbPassSample *last = lb_pass_record_sample (record, lb_pass_record_count (record) - 1);
      assert_true (last->readings.weight.on_bed);
      assert_near (last->readings.weight.depth, 5.2, 1e-3);
      lb_pass_record_free (record);
    }
}

/* A sample holds what the readings of the steady run do while nothing changes. */
static void
a_steady_run_stays (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript script = script_of (3);
  LbPassRecord *record = recorded (&setup, &script, INFINITY);
  const LbPassSample *first = lb_pass_record_sample (record, 0);
  const LbPassSample *last = lb_pass_record_sample (record, lb_pass_record_count (record) - 1);

  assert_int_equal (lb_pass_record_n_bodies (record), 3);
  assert_near (first->readings.weight.height, 0.1, 1e-6);
  assert_near (last->time, 3, 0);
  assert_near (last->boat.x - first->boat.x, -1.2, 1e-9);
  assert_near (last->readings.wire_angle, first->readings.wire_angle, 1e-7);
  for (size_t i = 0; i < 3; i++)
    {
      const LbPointReading *a = lb_pass_sample_body (first, i), *b = lb_pass_sample_body (last, i);
      assert_near (b->layback, a->layback, 1e-6);
      assert_near (b->height, a->height, 1e-6);
      assert_near (b->water_speed, a->water_speed, 1e-6);
      assert_near (last->velocity[i].x, -0.4, 1e-6);
    }
  lb_pass_record_free (record);
}

/* A weight that is dipped onto the bed for a few hundredths of a second, again and again (its lines
 * end 1 cm above it, and the shank stretches by that): no pull and no contact is missed that single
 * steps of the core's pass show. */
static void
nothing_short_is_missed (void **state)
{
  LbSetup setup = rig_reference (0.79, 0, 0);
  LbPassScript script = script_of (12);
  LbPassSummary summary = { 0 };
  LbPassJob job;
  double most = 0, last = -1;
  size_t n_touches = 0;
  LbPass *pass = lb_pass_new ();

  setup.rig.n_leaders = 0;
  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, setup.river.depth - 0.0104 - 1 };
  script.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 0.6, 1.93 };
  LbPassRecord *record = recorded (&setup, &script, INFINITY);
  lb_pass_summary_continue (&summary, record);
  assert_int_equal (lb_pass_script_plan (&script, &setup, &job, NULL), LB_STATUS_OK);
  assert_int_equal (lb_pass_start (pass, &job.setup, &job.plan, NULL), LB_STATUS_OK);
  for (int k = 0; k <= 2400; k++)
    {
      double time = 0.005 * k;
      LbReadings readings;

      assert_int_equal (lb_pass_advance (pass, time), LB_STATUS_OK);
      lb_pass_readings (pass, &readings);
      most = fmax (most, readings.hand_tension);
      if (!readings.weight.on_bed)
        continue;
      n_touches += last < 0 || time - last > LB_PASS_TOUCH_GAP;
      last = time;
    }
  assert_true (n_touches >= 5);
  assert_int_equal (lb_pass_record_touches (record, LB_PASS_WEIGHT, NULL, 0), n_touches);
  assert_near (summary.most_tension.value, most, 0.02 * most);
  lb_pass_free (pass);
  lb_pass_record_free (record);
}

/* ---- Two rigs ---- */

/* Two rigs of the same weight, straight upstream: they are each other's picture, as far apart as
 * their reels, and each is the rig that goes alone. */
static void
two_equal_rigs_go_abreast (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript alone = script_of (4), script = alone;
  LbPassSummary summary = { 0 };

  script.second_weight = 0.79;
  script.reels_apart = 1.7;
  LbPassRecord *record = recorded (&setup, &script, INFINITY);
  LbPassRecord *single = recorded (&setup, &alone, INFINITY);
  const LbPassRecord *second = lb_pass_record_second (record);
  assert_null (lb_pass_record_second (single));
  assert_int_equal (lb_pass_record_count (second), lb_pass_record_count (record));
  for (size_t i = 0; i < lb_pass_record_count (record); i++)
    {
      const LbPassSample *a = lb_pass_record_sample (record, i);
      const LbPassSample *b = lb_pass_record_sample (second, i);
      const LbPassSample *c = lb_pass_record_sample (single, i);
      assert_near (a->boat.y, 0.85, 1e-12);
      assert_near (b->readings.weight.position.y, -0.85, 1e-9);
      assert_near (a->between.distance, 1.7, 1e-6);
      assert_false (lb_is_set (c->between.distance) || lb_is_set (b->between.distance));
      assert_near (a->readings.weight.position.x, c->readings.weight.position.x, 1e-9);
      assert_near (b->readings.hand_tension, c->readings.hand_tension, 1e-9);
    }
  lb_pass_summary_continue (&summary, record);
  assert_near (summary.between.distance, 1.7, 1e-6);
  assert_true (summary.tangle_time == 0);
  lb_pass_record_free (record);
  lb_pass_record_free (single);
}

/* On a turn the one on the outside goes the longer way: half a turn to the right of two reels 2 m
 * apart takes the left one 2 pi m farther than the right one. Given up on the way and gone on with,
 * both still hold the same moments. */
static void
two_rigs_turn (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.5, 0.6);
  LbPassScript script = lb_pass_script_default ();
  double way[2] = { 0, 0 };
  LbPassRecord *record;

  script.n_legs = 2;
  script.legs[0] = script.legs[1] = lb_course_leg_default ();
  script.legs[0].duration = 2;
  script.legs[1].duration = 40;
  script.legs[1].turn = 180;
  script.second_weight = 0.9;
  script.reels_apart = 2;
  assert_int_equal (lb_pass_record_new (&record, &setup, &script, NULL, NULL), LB_STATUS_OK);
  for (double time = 0; time < 42; time += 3.3)
    assert_int_equal (lb_pass_record_run (record, time, NULL), LB_STATUS_OK);
  assert_int_equal (lb_pass_record_run (record, INFINITY, NULL), LB_STATUS_OK);
  const LbPassRecord *both[] = { record, lb_pass_record_second (record) };
  for (int k = 0; k < 2; k++)
    for (size_t i = 1; i < lb_pass_record_count (both[k]); i++)
      way[k] += lb_vec3_norm (lb_vec3_sub (lb_pass_record_sample (both[k], i)->boat,
                                           lb_pass_record_sample (both[k], i - 1)->boat));
  assert_near (way[1] - way[0], 2 * PI, 0.01);
  assert_near (lb_pass_record_setup (both[1])->rig.weight.mass, 0.9, 0);
  lb_pass_record_free (record);
}

/* ---- Running on ---- */

static LbPassScript
busy_script (void)
{
  LbPassScript script = lb_pass_script_default ();
  LbCourseLeg leg = lb_course_leg_default ();

  leg.duration = 3;
  script.n_legs = 2;
  script.legs[0] = script.legs[1] = leg;
  script.legs[1].speed = 0.7;
  script.legs[1].turn = 0.3;
  script.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 0.3, 2 };
  return script;
}

/* In small pieces, as a thread does it, or at once: the same numbers. */
static void
pieces_make_the_whole (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript script = busy_script ();
  LbPassRecord *whole = recorded (&setup, &script, INFINITY);
  LbPassRecord *pieces = recorded (&setup, &script, 0);
  LbPassSummary at_once = { 0 }, going_on = { 0 };

  assert_int_equal (lb_pass_record_count (pieces), 1);
  for (double time = 0.33; !lb_pass_record_is_complete (pieces); time += 0.33)
    {
      assert_int_equal (lb_pass_record_run (pieces, time, NULL), LB_STATUS_OK);
      assert_true (lb_pass_record_end (pieces) >= fmin (time, 6) - 1e-12);
      lb_pass_summary_continue (&going_on, pieces);
    }
  lb_pass_summary_continue (&at_once, whole);
  assert_int_equal (lb_pass_record_count (whole), 6 / LB_PASS_RECORD_INTERVAL + 1);
  assert_int_equal (lb_pass_record_count (pieces), lb_pass_record_count (whole));
  for (size_t i = 0; i < lb_pass_record_count (whole); i++)
    {
      const LbPassSample *a = lb_pass_record_sample (whole, i);
      const LbPassSample *b = lb_pass_record_sample (pieces, i);
      assert_true (a->time == b->time && a->readings.hand_tension == b->readings.hand_tension
                   && memcmp (&a->readings.lures[1].at.position, &b->readings.lures[1].at.position,
                              sizeof (LbVec3))
                          == 0);
    }
  assert_true (at_once.most_tension.value == going_on.most_tension.value);
  assert_true (at_once.bodies[1].above == going_on.bodies[1].above);
  assert_true (at_once.closest.distance == going_on.closest.distance);
  lb_pass_record_free (whole);
  lb_pass_record_free (pieces);
}

typedef struct
{
  double stop_at;
  double done;
  size_t calls;
} Watch;

static bool
watch_cb (void *data, double done)
{
  Watch *watch = data;

  assert_true (done >= watch->done && done <= 1);
  watch->done = done;
  watch->calls++;
  return done >= watch->stop_at;
}

static void
it_can_be_given_up_and_gone_on_with (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript script = busy_script ();
  Watch watch = { .stop_at = 0.5 };
  LbPlanTask task = { watch_cb, &watch };
  LbPassRecord *record;

  assert_int_equal (lb_pass_record_new (&record, &setup, &script, NULL, NULL), LB_STATUS_OK);
  assert_int_equal (lb_pass_record_count (record), 0);
  assert_int_equal (lb_pass_record_run (record, INFINITY, &task), LB_STATUS_CANCELLED);
  assert_near (watch.done, 0.5, 0.002);
  assert_true (watch.calls > 500);
  assert_near (lb_pass_record_end (record), 3, 0.051);
  watch.stop_at = 2;
  assert_int_equal (lb_pass_record_run (record, INFINITY, &task), LB_STATUS_OK);
  assert_near (watch.done, 1, 1e-12);
  assert_true (lb_pass_record_is_complete (record));
  lb_pass_record_free (record);
}

/* Given up while the steady run at its start is being solved, nothing is there yet, and it starts
 * anew. */
static void
it_can_be_given_up_at_its_start (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript script = busy_script ();
  Watch watch = { .stop_at = 0 };
  LbPlanTask task = { watch_cb, &watch };
  LbPassRecord *record;

  assert_int_equal (lb_pass_record_new (&record, &setup, &script, NULL, NULL), LB_STATUS_OK);
  assert_int_equal (lb_pass_record_run (record, INFINITY, &task), LB_STATUS_CANCELLED);
  assert_int_equal (watch.calls, 1);
  assert_int_equal (lb_pass_record_count (record), 0);
  assert_int_equal (lb_pass_record_run (record, 0.5, NULL), LB_STATUS_OK);
  assert_near (lb_pass_record_end (record), 0.5, 1e-9);
  lb_pass_record_free (record);
}

/* ---- Moments ---- */

static void
moments_lie_between_samples (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript script = busy_script ();
  LbPassRecord *record;
  LbPassSample moment;

  assert_int_equal (lb_pass_record_new (&record, &setup, &script, NULL, NULL), LB_STATUS_OK);
  assert_false (lb_pass_record_at (record, 1, &moment));
  assert_int_equal (lb_pass_record_run (record, INFINITY, NULL), LB_STATUS_OK);
  for (size_t i = 0; i + 1 < lb_pass_record_count (record); i++)
    {
      const LbPassSample *a = lb_pass_record_sample (record, i), *b = a + 1;
      assert_true (lb_pass_record_at (record, a->time, &moment));
      assert_near (moment.readings.hand_tension, a->readings.hand_tension, 1e-9);
      assert_true (lb_pass_record_at (record, 0.25 * a->time + 0.75 * b->time, &moment));
      assert_near (moment.readings.hand_tension,
                   0.25 * a->readings.hand_tension + 0.75 * b->readings.hand_tension, 1e-9);
      assert_near (moment.readings.lures[0].at.height,
                   0.25 * a->readings.lures[0].at.height + 0.75 * b->readings.lures[0].at.height,
                   1e-9);
      assert_near (moment.boat.y, 0.25 * a->boat.y + 0.75 * b->boat.y, 1e-9);
    }
  assert_true (lb_pass_record_at (record, -5, &moment));
  assert_near (moment.time, 0, 0);
  assert_true (lb_pass_record_at (record, 1000, &moment));
  assert_near (moment.time, 6, 0);
  lb_pass_record_free (record);
}

/* The shape of any moment has the rig's parts where the samples have them, and its readings are the
 * samples' but for the pull of a segment, told at its middle. */
static void
shapes_are_the_samples (void **state)
{
  LbSetup setup = rig_reference (0.79, 0.4, 1.2);
  LbPassScript script = busy_script ();
  LbPassRecord *record = recorded (&setup, &script, INFINITY);
  LbShape shape;

  lb_shape_init (&shape);
  for (double time = 0; time <= 6; time += 0.37)
    {
      LbSetup now = lb_pass_record_setup_at (record, time);
      LbPassSample moment;
      LbReadings readings;

      assert_int_equal (lb_pass_record_shape_at (record, time, &shape), LB_STATUS_OK);
      assert_true (lb_pass_record_at (record, time, &moment));
      lb_readings_compute (&readings, &now, &shape);
      assert_near (readings.line_out, moment.readings.line_out, 1e-12);
      assert_near (readings.hand_tension, moment.readings.hand_tension, 0.05);
      /* The wire bends by 0.4 rad over a dozen segments; the first is half of one away. */
      assert_near (readings.wire_angle, moment.readings.wire_angle, 0.03);
      assert_near (now.boat.position, moment.boat.x, 1e-12);
      for (size_t i = 0; i < 2; i++)
        {
          LbVec3 apart =
              lb_vec3_sub (readings.lures[i].at.position, moment.readings.lures[i].at.position);
          assert_near (lb_vec3_norm (apart), 0, 1e-5);
        }
      double out = 0;
      for (size_t i = 1; i <= shape.shank_top; i++)
        out += shape.nodes[i].rest_length;
      assert_near (out, shape.line_out, 1e-4);
    }
  lb_shape_clear (&shape);
  lb_pass_record_free (record);
}

/* An hour is recorded at wider intervals, into no more than the most samples. */
static void
an_hour_has_room (void **state)
{
  LbSetup setup = ideal_rig (0, 0.3);
  LbPassScript script = script_of (LB_PASS_LONGEST);
  LbPassRecord *record = recorded (&setup, &script, 1);

  assert_near (lb_pass_record_interval (record), 0.18, 0.001);
  assert_near (lb_pass_record_end (record), 1.08, 0.01);
  lb_pass_record_free (record);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (shares_of_a_lifted_weight),
    cmocka_unit_test (a_weight_at_the_edge_is_in_the_band),
    cmocka_unit_test (touches_of_a_dipped_weight),
    cmocka_unit_test (a_step_up_is_touched_where_it_is),
    cmocka_unit_test (a_massless_line_is_dragged_up_a_step),
    cmocka_unit_test (a_steady_run_stays),
    cmocka_unit_test (nothing_short_is_missed),
    cmocka_unit_test (two_equal_rigs_go_abreast),
    cmocka_unit_test (two_rigs_turn),
    cmocka_unit_test (pieces_make_the_whole),
    cmocka_unit_test (it_can_be_given_up_and_gone_on_with),
    cmocka_unit_test (it_can_be_given_up_at_its_start),
    cmocka_unit_test (moments_lie_between_samples),
    cmocka_unit_test (shapes_are_the_samples),
    cmocka_unit_test (an_hour_has_room),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
