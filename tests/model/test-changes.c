/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes of whole parts: leaders, lines, weight, lure, bed and river. */
#include "model-support.h"

#include <string.h>

#include "bed.h"
#include "document-fixture.h"

/* ---- Parts of the rig ---- */

static void
name_leaders (Fixture *f, size_t n)
{
  while (setup_of (f)->rig.n_leaders < n)
    assert_true (lb_history_do (f->history, lb_change_new_add_leader (f->document)));
  for (size_t i = 0; i < n; i++)
    {
      char name[2] = { (char) ('a' + (int) i), '\0' };
      assert_true (lb_history_do (f->history, lb_change_new_lure_name (i, name)));
      assert_true (lb_history_do (
          f->history, lb_change_new_value (lb_field ("leaders[].length_m"), i, 20.0 + (double) i)));
    }
}

/* Every leader's length tells, as its lure's name does, which one it was. */
static void
assert_order (Fixture *f, const char *names)
{
  assert_int_equal (setup_of (f)->rig.n_leaders, strlen (names));
  for (size_t i = 0; names[i]; i++)
    {
      assert_int_equal (lb_document_get_lure_name (f->document, i)[0], names[i]);
      assert_true (setup_of (f)->rig.leaders[i].length == 20 + names[i] - 'a');
    }
}

static void
leaders_are_moved_with_their_lures (void **state)
{
  Fixture *f = *state;

  name_leaders (f, 4);
  assert_true (lb_history_do (f->history, lb_change_new_move_leader (f->document, 0, 2)));
  assert_order (f, "bcad");
  assert_true (lb_history_do (f->history, lb_change_new_move_leader (f->document, 3, 0)));
  assert_order (f, "dbca");
  assert_null (lb_change_new_move_leader (f->document, 1, 1));
  assert_null (lb_change_new_move_leader (f->document, 1, 4));
  assert_null (lb_change_new_move_leader (f->document, 4, 1));
  lb_history_undo (f->history);
  assert_order (f, "bcad");
  assert_string_equal (lb_history_get_undo_label (f->history), "Move a leader");
  lb_history_undo (f->history);
  assert_order (f, "abcd");
}

static void
a_leader_is_duplicated_behind_itself (void **state)
{
  Fixture *f = *state;
  double attached;

  name_leaders (f, 3);
  attached = setup_of (f)->rig.leaders[0].attach_above_weight;
  assert_true (lb_history_do (f->history, lb_change_new_duplicate_leader (f->document, 0)));
  assert_order (f, "aabc");
  assert_near (setup_of (f)->rig.leaders[1].attach_above_weight, attached + 0.1524, 1e-12);
  assert_true (lb_history_do (f->history, lb_change_new_duplicate_leader (f->document, 3)));
  assert_order (f, "aabcc");
  assert_true (setup_of (f)->rig.leaders[4].attach_above_weight <= setup_of (f)->rig.shank_length);
  assert_null (lb_change_new_duplicate_leader (f->document, 5));
  while (setup_of (f)->rig.n_leaders < LB_MAX_LEADERS)
    assert_true (lb_history_do (f->history, lb_change_new_duplicate_leader (f->document, 2)));
  assert_null (lb_change_new_duplicate_leader (f->document, 0));
}

static void
take_away_all (Fixture *f)
{
  while (setup_of (f)->rig.n_leaders > 0)
    assert_true (lb_history_do (f->history, lb_change_new_remove_leader (f->document, 0)));
}

static void
add_leader (Fixture *f, double length)
{
  size_t n = setup_of (f)->rig.n_leaders;

  assert_true (lb_history_do (f->history, lb_change_new_add_leader (f->document)));
  assert_near (setup_of (f)->rig.leaders[n].length, length, 1e-9);
}

/* Stacked leaders trail one behind the other, so that each is longer than the one before. */
static void
a_new_leader_carries_on (void **state)
{
  const double foot = 0.3048, inch = 0.0254;
  Fixture *f = *state;

  add_leader (f, 30 * foot);
  assert_near (setup_of (f)->rig.leaders[2].attach_above_weight, 36 * inch, 1e-9);
  take_away_all (f);
  add_leader (f, 10 * foot);
  add_leader (f, 20 * foot);
  assert_near (setup_of (f)->rig.leaders[1].attach_above_weight, 28 * inch, 1e-9);
  /* From the longest on where the last is shorter than the one before, */
  assert_true (lb_history_do (f->history, lb_change_new_move_leader (f->document, 0, 1)));
  add_leader (f, 30 * foot);
  /* and no longer than a leader can be. */
  assert_true (
      lb_history_do (f->history, lb_change_new_value (lb_field ("leaders[].length_m"), 2, 1e9)));
  add_leader (f, lb_field ("leaders[].length_m")->maximum);
  undo_all (f);
}

static void
a_line_is_replaced_as_a_whole (void **state)
{
  Fixture *f = *state;
  LbRig before = setup_of (f)->rig;
  LbLine line = before.leaders[1].line;

  line.diameter = 0.0005;
  line.breaking_load = LB_UNSET;
  assert_true (
      lb_history_do (f->history, lb_change_new_line (LB_LINE_OF_MAINLINE, 0, &line, NULL)));
  assert_string_equal (lb_history_get_undo_label (f->history), "Change the mainline");
  assert_true (lb_history_do (f->history, lb_change_new_line (LB_LINE_OF_SHANK, 0, &line, NULL)));
  assert_true (
      lb_history_do (f->history, lb_change_new_line (LB_LINE_OF_LEADER, 1, &line, "Mine")));
  assert_string_equal (lb_history_get_undo_label (f->history), "Mine");
  assert_true (setup_of (f)->rig.mainline.density == line.density);
  assert_true (setup_of (f)->rig.shank.diameter == 0.0005);
  assert_true (setup_of (f)->rig.leaders[1].line.diameter == 0.0005);
  assert_false (lb_is_set (setup_of (f)->rig.leaders[1].line.breaking_load));
  assert_true (setup_of (f)->rig.leaders[0].line.diameter == before.leaders[0].line.diameter);
  line.diameter = -1;
  assert_false (lb_history_do (f->history, lb_change_new_line (LB_LINE_OF_SHANK, 0, &line, NULL)));
  assert_false (
      lb_history_do (f->history, lb_change_new_line (LB_LINE_OF_LEADER, 5, &before.shank, NULL)));
  undo_all (f);
}

static void
weight_and_lure_are_replaced_as_a_whole (void **state)
{
  Fixture *f = *state;
  LbWeight weight = { 1.5, 17500, LB_WEIGHT_TORPEDO, LB_UNSET };
  LbLure lure = setup_of (f)->rig.leaders[1].lure;

  assert_true (lb_history_do (f->history, lb_change_new_weight (&weight, NULL)));
  assert_int_equal (setup_of (f)->rig.weight.shape, LB_WEIGHT_TORPEDO);
  assert_true (setup_of (f)->rig.weight.mass == 1.5);
  lure.length = 0.11;
  assert_true (lb_history_do (f->history, lb_change_new_lure (1, &lure, "a\nb", NULL)));
  assert_true (setup_of (f)->rig.leaders[1].lure.length == 0.11);
  assert_string_equal (lb_document_get_lure_name (f->document, 1), "a b");
  lure.length = 0.12;
  assert_true (lb_history_do (f->history, lb_change_new_lure (1, &lure, NULL, NULL)));
  assert_string_equal (lb_document_get_lure_name (f->document, 1), "a b");
  lb_history_undo (f->history);
  assert_true (setup_of (f)->rig.leaders[1].lure.length == 0.11);
  undo_all (f);
}

/* ---- The bed ---- */

static void
a_plane_bed_becomes_points (void **state)
{
  Fixture *f = *state;
  const LbRiver *river = &setup_of (f)->river;
  double depth = river->depth;

  assert_true (lb_history_do (f->history, lb_change_new_bed_from_plane (f->document)));
  assert_int_equal (river->n_bed_points, LB_BED_FIRST_POINTS);
  for (size_t i = 0; i < river->n_bed_points; i++)
    assert_true (river->bed_depth[i] == depth);
  assert_true (river->bed_x[0] < setup_of (f)->boat.position);
  assert_true (river->bed_x[4] > setup_of (f)->boat.position);
  assert_null (lb_change_new_bed_from_plane (f->document));
  assert_true (lb_history_do (f->history, lb_change_new_bed (NULL, NULL, 0, NULL)));
  assert_int_equal (river->n_bed_points, 0);
  undo_all (f);
}

static void
at_the_end_of_the_axis_there_are_points_too (void **state)
{
  Fixture *f = *state;

  for (int sign = -1; sign <= 1; sign += 2)
    {
      lb_history_do (f->history, lb_change_new_value (lb_field ("boat.position_m"), 0, sign * 1e9));
      assert_true (lb_history_do (f->history, lb_change_new_bed_from_plane (f->document)));
      lb_history_undo (f->history);
    }
}

static void
bed_points_are_added_where_the_bed_is (void **state)
{
  Fixture *f = *state;
  const LbRiver *river = &setup_of (f)->river;
  const double x[] = { 0, 10, 20 }, depth[] = { 4, 6, 5 };
  size_t index = 99;
  LbBed bed;

  assert_true (lb_history_do (f->history, lb_change_new_bed (x, depth, 3, NULL)));
  assert_true (
      lb_history_do (f->history, lb_change_new_add_bed_point (f->document, 5, 3.5, &index)));
  assert_int_equal (index, 1);
  assert_true (river->bed_x[1] == 5 && river->bed_depth[1] == 3.5 && river->bed_x[3] == 20);
  lb_bed_init (&bed, river);
  assert_true (
      lb_history_do (f->history, lb_change_new_add_bed_point (f->document, 30, LB_UNSET, &index)));
  assert_int_equal (index, 4);
  assert_near (river->bed_depth[4], lb_bed_at (&bed, 30).depth, 1e-12);
  assert_null (lb_change_new_add_bed_point (f->document, 10.05, LB_UNSET, NULL));
  assert_null (lb_change_new_add_bed_point (f->document, 9.95, LB_UNSET, NULL));
  while (lb_history_undo (f->history))
    ;
  assert_true (lb_history_do (f->history, lb_change_new_add_bed_point (f->document, 3, 7, &index)));
  assert_int_equal (river->n_bed_points, LB_BED_FIRST_POINTS + 1);
  assert_true (river->bed_x[index] == 3 && river->bed_depth[index] == 7);
}

static void
a_bed_holds_so_many_points_and_no_more (void **state)
{
  Fixture *f = *state;
  size_t n = 0;

  while (lb_history_do (
      f->history, lb_change_new_add_bed_point (f->document, 1000.0 - (double) n, LB_UNSET, NULL)))
    n++;
  assert_int_equal (setup_of (f)->river.n_bed_points, LB_MAX_BED_POINTS);
  assert_int_equal (n, LB_MAX_BED_POINTS - LB_BED_FIRST_POINTS);
}

static void
bed_points_stay_between_their_neighbours (void **state)
{
  Fixture *f = *state;
  const LbRiver *river = &setup_of (f)->river;
  const double x[] = { 0, 10, 20 }, depth[] = { 4, 6, 5 };
  guint gesture = lb_history_new_gesture (f->history);

  assert_true (lb_history_do (f->history, lb_change_new_bed (x, depth, 3, NULL)));
  for (int i = 0; i < 30; i++)
    {
      LbChange *change = lb_change_new_move_bed_point (f->document, 1, 10 + i, 6 + i * 0.1);
      lb_change_set_gesture (change, gesture);
      lb_history_do (f->history, change);
    }
  assert_near (river->bed_x[1], 20 - LB_BED_LEAST_SPACING, 1e-12);
  assert_near (river->bed_depth[1], 8.9, 1e-12);
  assert_true (lb_setup_validate (setup_of (f), NULL));
  assert_true (lb_history_undo (f->history));
  assert_true (river->bed_x[1] == 10 && river->bed_depth[1] == 6);
  assert_true (lb_history_do (f->history, lb_change_new_move_bed_point (f->document, 1, -5, -5)));
  assert_near (river->bed_x[1], LB_BED_LEAST_SPACING, 1e-12);
  assert_true (river->bed_depth[1] == lb_field ("river.depth_m")->minimum);
  assert_null (lb_change_new_move_bed_point (f->document, 3, 1, 1));
}

static void
bed_points_are_taken_away_down_to_two (void **state)
{
  Fixture *f = *state;
  const LbRiver *river = &setup_of (f)->river;
  const double x[] = { 0, 10, 20 }, depth[] = { 4, 6, 5 };

  assert_null (lb_change_new_remove_bed_point (f->document, 0));
  assert_true (lb_history_do (f->history, lb_change_new_bed (x, depth, 3, NULL)));
  assert_null (lb_change_new_remove_bed_point (f->document, 3));
  assert_true (lb_history_do (f->history, lb_change_new_remove_bed_point (f->document, 1)));
  assert_true (river->bed_x[1] == 20 && river->bed_depth[1] == 5);
  assert_null (lb_change_new_remove_bed_point (f->document, 0));
  undo_all (f);
}

static void
a_bed_out_of_order_is_refused (void **state)
{
  Fixture *f = *state;
  const double x[] = { 0, 10, 10 }, depth[] = { 4, 6, 5 }, deep[] = { 4, 6, 500 };
  const double rising[] = { 0, 10, 20 };

  assert_false (lb_history_do (f->history, lb_change_new_bed (x, depth, 3, NULL)));
  assert_false (lb_history_do (f->history, lb_change_new_bed (rising, deep, 3, NULL)));
  assert_false (lb_history_do (f->history, lb_change_new_bed (rising, depth, 1, NULL)));
}

/* ---- The river ---- */

static void
a_river_is_replaced_as_a_whole (void **state)
{
  Fixture *f = *state;
  LbRiver river = setup_of (f)->river;
  LbRig rig = setup_of (f)->rig;

  river.depth = 3;
  river.profile.law = LB_PROFILE_LOG;
  river.profile.material = LB_BED_MATERIAL_GRAVEL;
  river.profile.roughness = 0.016;
  river.temperature = 12;
  assert_true (lb_history_do (f->history, lb_change_new_river (&river, "Spring flood")));
  assert_string_equal (lb_history_get_undo_label (f->history), "Spring flood");
  assert_true (setup_of (f)->river.depth == 3);
  assert_int_equal (setup_of (f)->river.profile.law, LB_PROFILE_LOG);
  assert_memory_equal (&setup_of (f)->rig, &rig, sizeof rig);
  river.surface_current = 99;
  assert_false (lb_history_do (f->history, lb_change_new_river (&river, NULL)));
  undo_all (f);
}

static void
a_measured_current_is_set_with_its_surface_speed (void **state)
{
  Fixture *f = *state;
  const double height[] = { 0.2, 0.9 }, speed[] = { 0.6, 1 }, falling[] = { 0.9, 0.2 };

  assert_true (lb_history_do (f->history,
                              lb_change_new_measured_current (f->document, 0.8, height, speed, 2)));
  assert_int_equal (setup_of (f)->river.profile.law, LB_PROFILE_POINTS);
  assert_true (setup_of (f)->river.surface_current == 0.8);
  assert_true (setup_of (f)->river.profile.speed_fraction[0] == 0.6);
  assert_false (lb_history_do (
      f->history, lb_change_new_measured_current (f->document, LB_UNSET, height, speed, 2)));
  assert_false (lb_history_do (
      f->history, lb_change_new_measured_current (f->document, LB_UNSET, falling, speed, 2)));
  undo_all (f);
}

/* ---- Gestures ---- */

/* ---- The card ---- */

static void
a_card_is_replaced_as_a_whole (void **state)
{
  Fixture *f = *state;
  LbCard card = *lb_document_get_card (f->document);
  guint gesture = lb_history_new_gesture (f->history);

  assert_false (lb_history_do (f->history, lb_change_new_card (&card, NULL)));
  card.size = LB_CARD_A6;
  assert_true (lb_history_do (f->history, lb_change_new_card (&card, NULL)));
  assert_string_equal (lb_history_get_undo_label (f->history), "Change the card");
  for (int i = 1; i <= 3; i++)
    {
      LbChange *change;

      card.terminations[LB_CARD_LEADER_TO_LURE].allowance = i * 0.9; /* the last is mended */
      change = lb_change_new_card (&card, "Change an allowance");
      lb_change_set_gesture (change, gesture);
      assert_true (lb_history_do (f->history, change));
    }
  assert_true (lb_document_get_card (f->document)->terminations[3].allowance
               == LB_CARD_MOST_ALLOWANCE);
  assert_true (lb_history_undo (f->history));
  assert_true (lb_document_get_card (f->document)->terminations[3].allowance == 0.1016);
  assert_int_equal (lb_document_get_card (f->document)->size, LB_CARD_A6);
  assert_true (lb_history_redo (f->history));
  undo_all (f);
}

static void
a_drag_there_and_back_is_no_step (void **state)
{
  Fixture *f = *state;
  guint gesture = lb_history_new_gesture (f->history);
  const double depths[] = { 6.5, 7, 6.5, 6.096 };

  for (size_t i = 0; i < G_N_ELEMENTS (depths); i++)
    {
      LbChange *change = lb_change_new_value (lb_field ("river.depth_m"), 0, depths[i]);
      lb_change_set_gesture (change, gesture);
      assert_true (lb_history_do (f->history, change));
    }
  assert_false (lb_history_get_can_undo (f->history));
  assert_false (lb_document_get_modified (f->document));
}

static void
a_drag_broken_off_leaves_nothing (void **state)
{
  Fixture *f = *state;
  guint gesture = lb_history_new_gesture (f->history);

  assert_true (lb_history_do (f->history, lb_change_new_title ("before")));
  for (size_t i = 0; i < 3; i++)
    {
      LbChange *change = i < 2 ? lb_change_new_add_bed_point (f->document, i + 1.5, 5, NULL)
                               : lb_change_new_value (lb_field ("river.along"), 0, 1);
      lb_change_set_gesture (change, gesture);
      assert_true (lb_history_do (f->history, change));
    }
  assert_true (lb_history_cancel_gesture (f->history, gesture));
  assert_int_equal (setup_of (f)->river.n_bed_points, 0);
  assert_int_equal (setup_of (f)->river.along, 0);
  assert_false (lb_history_get_can_redo (f->history));
  assert_string_equal (lb_document_get_title (f->document), "before");
  assert_false (lb_history_cancel_gesture (f->history, gesture));
  assert_false (lb_history_cancel_gesture (f->history, 0));
  assert_string_equal (lb_document_get_title (f->document), "before");
}

/* ---- The pass ---- */

static void
a_pass_is_replaced_as_a_whole (void **state)
{
  Fixture *f = *state;
  LbPassScript pass = *lb_document_get_pass (f->document);
  guint gesture = lb_history_new_gesture (f->history);

  assert_false (lb_history_do (f->history, lb_change_new_pass (&pass, NULL)));
  pass.hand.motion = LB_HAND_LIFT_AND_DROP;
  assert_true (lb_history_do (f->history, lb_change_new_pass (&pass, NULL)));
  assert_string_equal (lb_history_get_undo_label (f->history), "Change the pass");
  pass.n_legs = 1;
  for (int i = 1; i <= 3; i++)
    {
      LbChange *change;

      pass.legs[0] = lb_course_leg_default ();
      pass.legs[0].speed = 2.0 * i; /* the last is mended */
      change = lb_change_new_pass (&pass, "Change a leg");
      lb_change_set_gesture (change, gesture);
      assert_true (lb_history_do (f->history, change));
    }
  assert_true (lb_document_get_pass (f->document)->legs[0].speed == LB_LEG_MOST_SPEED);
  assert_true (lb_history_undo (f->history));
  assert_int_equal (lb_document_get_pass (f->document)->n_legs, 0);
  assert_int_equal (lb_document_get_pass (f->document)->hand.motion, LB_HAND_LIFT_AND_DROP);
  assert_true (lb_history_redo (f->history));
  undo_all (f);
}

int
main (void)
{
#define with_fixture(test) cmocka_unit_test_setup_teardown (test, fixture_set_up, fixture_tear_down)
  const struct CMUnitTest tests[] = {
    with_fixture (leaders_are_moved_with_their_lures),
    with_fixture (a_leader_is_duplicated_behind_itself),
    with_fixture (a_new_leader_carries_on),
    with_fixture (a_line_is_replaced_as_a_whole),
    with_fixture (weight_and_lure_are_replaced_as_a_whole),
    with_fixture (a_plane_bed_becomes_points),
    with_fixture (at_the_end_of_the_axis_there_are_points_too),
    with_fixture (bed_points_are_added_where_the_bed_is),
    with_fixture (a_bed_holds_so_many_points_and_no_more),
    with_fixture (bed_points_stay_between_their_neighbours),
    with_fixture (bed_points_are_taken_away_down_to_two),
    with_fixture (a_bed_out_of_order_is_refused),
    with_fixture (a_river_is_replaced_as_a_whole),
    with_fixture (a_measured_current_is_set_with_its_surface_speed),
    with_fixture (a_card_is_replaced_as_a_whole),
    with_fixture (a_pass_is_replaced_as_a_whole),
    with_fixture (a_drag_there_and_back_is_no_step),
    with_fixture (a_drag_broken_off_leaves_nothing),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
