/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pulling at the parts of the drawing with the pointer. */
#include "hand.h"
#include "one_window.h"

#include <string.h>

static LbViewport *
viewport (void)
{
  return lb_drawings_get_viewport (lb_window_get_drawings (window));
}

static gboolean
can (const char *property)
{
  gboolean can;

  g_object_get (session (), property, &can, NULL);
  return can;
}

static void
assert_selected (LbPickKind kind, int index)
{
  LbPickKind found;
  int found_index;

  lb_session_get_selected (session (), &found, &found_index);
  assert_int_equal (found, kind);
  assert_int_equal (found_index, index);
}

/* A whole number of steps of `step` (m). */
static void
assert_on_step (double value, double step)
{
  assert_near (value / step, round (value / step), 1e-9);
}

/* The part of a drawing pulled by (dx, dy). */
static void
pull (LbCanvas *canvas, LbPickKind kind, int index, double dx, double dy)
{
  double x, y;

  hand_find (canvas, kind, index, &x, &y);
  hand_pull (canvas, x, y, dx, dy);
  harness_solved (window);
}

/* Undone once, all is as it was. */
static void
assert_one_step (const LbSetup *before)
{
  assert_true (can ("can-undo"));
  lb_session_undo (session ());
  assert_memory_equal (setup (), before, sizeof *before);
  assert_false (can ("can-undo"));
}

/* ---- Single parts ---- */

static void
the_weight_is_pulled_up (void **state)
{
  LbSetup before = *setup ();
  double per_metre = lb_viewport_get_view (viewport ())->per_metre_z;
  const LbReadings *readings;

  pull (side_view (), LB_PICK_WEIGHT, 0, 3, -100);
  assert_int_equal (setup ()->rig.line_out.mode, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  /* Under the pointer, to half of the step, which is an inch. */
  assert_near (setup ()->rig.line_out.value, before.rig.line_out.value + 100 / per_metre, 0.0127);
  assert_on_step (setup ()->rig.line_out.value, 0.0254);
  readings = lb_result_get_readings (lb_session_get_result (session ()));
  assert_near (readings->weight.height, setup ()->rig.line_out.value, 1e-6);
  assert_selected (LB_PICK_WEIGHT, 0);
  assert_one_step (&before);
}

static void
a_weight_on_given_line_becomes_held (void **state)
{
  LbSetup before;
  double height;

  lb_session_do (session (), lb_change_new_line_out (LB_LINE_OUT_GIVEN, 6.4));
  harness_solved (window);
  before = *setup ();
  height = lb_result_get_readings (lb_session_get_result (session ()))->weight.height;
  pull (side_view (), LB_PICK_WEIGHT, 0, 0, -60);
  assert_int_equal (setup ()->rig.line_out.mode, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  assert_near (setup ()->rig.line_out.value,
               height + 60 / lb_viewport_get_view (viewport ())->per_metre_z, 0.0127);
  lb_session_undo (session ());
  assert_memory_equal (setup (), &before, sizeof before);
}

static void
pulling_the_mainline_lets_line_out (void **state)
{
  LbSetup before = *setup ();
  double out = lb_result_get_readings (lb_session_get_result (session ()))->line_out;

  pull (side_view (), LB_PICK_MAINLINE, 0, -40, -60);
  assert_int_equal (setup ()->rig.line_out.mode, LB_LINE_OUT_GIVEN);
  assert_less (setup ()->rig.line_out.value, out - 0.3);
  assert_on_step (setup ()->rig.line_out.value, 0.1524);
  assert_one_step (&before);
}

static void
an_attachment_goes_along_the_shank_and_not_off_it (void **state)
{
  LbSetup before = *setup ();

  pull (side_view (), LB_PICK_ATTACHMENT, 0, 0, -12);
  assert_less (before.rig.leaders[0].attach_above_weight + 0.02,
               setup ()->rig.leaders[0].attach_above_weight);
  assert_on_step (setup ()->rig.leaders[0].attach_above_weight, 0.0254);
  assert_one_step (&before);
  pull (side_view (), LB_PICK_ATTACHMENT, 0, 0, -500);
  assert_near (setup ()->rig.leaders[0].attach_above_weight, before.rig.shank_length, 1e-12);
  assert_one_step (&before);
  pull (side_view (), LB_PICK_ATTACHMENT, 1, 0, 500);
  assert_near (setup ()->rig.leaders[1].attach_above_weight, 0, 1e-12);
  assert_one_step (&before);
}

static void
a_lure_pulled_back_makes_its_leader_longer (void **state)
{
  LbSetup before = *setup ();
  double per_metre = lb_viewport_get_view (viewport ())->per_metre_x;

  for (int i = 0; i < 2; i++)
    {
      pull (side_view (), LB_PICK_LURE, i, 60, 0);
      assert_near (setup ()->rig.leaders[i].length, before.rig.leaders[i].length + 60 / per_metre,
                   0.1524 / 2 + 0.05 * 60 / per_metre);
      assert_on_step (setup ()->rig.leaders[i].length, 0.1524);
      assert_one_step (&before);
    }
  pull (bed_strip (), LB_PICK_LURE, 0, -40, 0);
  assert_less (setup ()->rig.leaders[0].length, before.rig.leaders[0].length - 0.1);
  assert_one_step (&before);
}

static void
the_reel_is_raised (void **state)
{
  LbSetup before = *setup ();

  pull (side_view (), LB_PICK_REEL, 0, 0, -20);
  assert_near (setup ()->boat.reel_height,
               before.boat.reel_height + 20 / lb_viewport_get_view (viewport ())->per_metre_z,
               0.0127);
  assert_one_step (&before);
}

static void
edges_of_the_band_do_not_cross (void **state)
{
  LbSetup before = *setup ();

  pull (bed_strip (), LB_PICK_BAND_HIGH, 0, 0, 300);
  assert_less (setup ()->band.low, setup ()->band.high);
  assert_near (setup ()->band.high, setup ()->band.low, 0.0101);
  assert_one_step (&before);
  pull (bed_strip (), LB_PICK_BAND_LOW, 0, 0, -20);
  assert_less (before.band.low, setup ()->band.low);
  assert_on_step (setup ()->band.low, 0.0254);
  assert_one_step (&before);
}

/* In metric, the steps are metric. */
static void
steps_are_those_of_the_units (void **state)
{
  g_object_set (lb_session_get_preferences (session ()), "units", "metric", NULL);
  pull (side_view (), LB_PICK_WEIGHT, 0, 0, -77);
  assert_on_step (setup ()->rig.line_out.value, 0.01);
  pull (side_view (), LB_PICK_LURE, 1, -77, 0);
  assert_on_step (setup ()->rig.leaders[1].length, 0.1);
}

/* ---- The bed ---- */

static void
a_point_on_the_bed_line (double x, double *y)
{
  *y = lb_scene_bed_line (lb_canvas_get_scene (side_view ()), x);
}

static void
a_plane_bed_is_pulled_deeper (void **state)
{
  LbSetup before = *setup ();
  double y, per_metre = lb_viewport_get_view (viewport ())->per_metre_z;

  a_point_on_the_bed_line (900, &y);
  hand_pull (side_view (), 900, y, 0, 30);
  harness_solved (window);
  assert_near (setup ()->river.depth, before.river.depth + 30 / per_metre, 0.1524 / 2);
  assert_on_step (setup ()->river.depth, 0.1524);
  assert_one_step (&before);
}

static void
a_double_click_makes_the_bed_of_points (void **state)
{
  LbSetup before = *setup ();
  LbPickKind kind;
  int index;
  double y, x = 900;

  a_point_on_the_bed_line (x, &y);
  hand_click (side_view (), x, y, 2);
  harness_solved (window);
  assert_true (setup ()->river.n_bed_points > LB_BED_FIRST_POINTS);
  lb_session_get_selected (session (), &kind, &index);
  assert_int_equal (kind, LB_PICK_BED_POINT);
  assert_near (lb_view_x (lb_viewport_get_view (viewport ()), setup ()->river.bed_x[index]), x, 1);
  assert_near (setup ()->river.bed_depth[index], before.river.depth, 1e-9);
  assert_one_step (&before);
}

static void
bed_points_are_pulled_and_stay_in_order (void **state)
{
  const double x[] = { -10, 2, 6, 10, 30 }, depth[] = { 6, 6, 6.3, 6, 6 };
  LbSetup before;
  const LbView *view;

  lb_session_do (session (), lb_change_new_bed (x, depth, 5, NULL));
  harness_solved (window);
  before = *setup ();
  view = lb_viewport_get_view (viewport ());
  pull (side_view (), LB_PICK_BED_POINT, 2, 25, -40);
  assert_selected (LB_PICK_BED_POINT, 2);
  assert_near (setup ()->river.bed_x[2], 6 + 25 / view->per_metre_x, 0.1524 / 2 + 1e-9);
  assert_near (setup ()->river.bed_depth[2], 6.3 - 40 / view->per_metre_z, 0.1524 / 2 + 1e-9);
  lb_session_undo (session ());
  assert_memory_equal (setup (), &before, sizeof before);
  harness_solved (window);
  /* Not past its neighbour. */
  pull (side_view (), LB_PICK_BED_POINT, 2, 600, 0);
  assert_less (setup ()->river.bed_x[2], setup ()->river.bed_x[3]);
}

/* ---- The drag itself ---- */

/* Escape, with the button still down, is as if nothing had been. */
static void
escape_takes_a_drag_back (void **state)
{
  LbSetup before = *setup ();
  double x, y;

  hand_find (side_view (), LB_PICK_WEIGHT, 0, &x, &y);
  hand_press (side_view (), x, y);
  hand_drag (side_view (), 0, -80, 5);
  assert_true (memcmp (setup (), &before, sizeof before) != 0);
  assert_true (hand_key (side_view (), GDK_KEY_Escape, 0));
  assert_memory_equal (setup (), &before, sizeof before);
  hand_drag (side_view (), 0, -120, 5);
  hand_release (side_view (), 0, -120);
  assert_memory_equal (setup (), &before, sizeof before);
  assert_false (can ("can-undo"));
  assert_false (can ("can-redo"));
  assert_false (can ("modified"));
}

static void
a_trembling_click_changes_nothing (void **state)
{
  LbSetup before = *setup ();

  pull (side_view (), LB_PICK_LURE, 0, 2, -2);
  assert_memory_equal (setup (), &before, sizeof before);
  assert_selected (LB_PICK_LURE, 0);
}

static void
empty_water_moves_the_drawing (void **state)
{
  LbSetup before = *setup ();
  LbView view = *lb_viewport_get_view (viewport ());

  lb_session_select (session (), LB_PICK_WEIGHT, 0);
  hand_pull (side_view (), 800, 240, 50, 20);
  assert_memory_equal (setup (), &before, sizeof before);
  assert_near (lb_view_x (lb_viewport_get_view (viewport ()), 0), lb_view_x (&view, 0) + 50, 1e-6);
  assert_near (lb_view_y (lb_viewport_get_view (viewport ()), 0), lb_view_y (&view, 0) + 20, 1e-6);
  assert_selected (LB_PICK_WEIGHT, 0);
  hand_click (side_view (), 800, 240, 1);
  assert_selected (LB_PICK_NOTHING, 0);
  hand_click (side_view (), 800, 240, 2);
  assert_false (lb_viewport_get_moved (viewport ()));
}

/* The view keeps still under a part that is pulled, even where it would follow the rig. */
static void
the_view_stays_during_a_drag (void **state)
{
  LbView before = *lb_viewport_get_view (viewport ());
  double x, y;

  hand_find (side_view (), LB_PICK_LURE, 1, &x, &y);
  hand_press (side_view (), x, y);
  for (int i = 1; i <= 10; i++)
    {
      hand_drag (side_view (), 50 * i, 0, 1);
      harness_solved (window);
      assert_memory_equal (lb_viewport_get_view (viewport ()), &before, sizeof before);
    }
  hand_release (side_view (), 500, 0);
  harness_solved (window);
  assert_true (memcmp (lb_viewport_get_view (viewport ()), &before, sizeof before) != 0);
}

static void
another_document_ends_the_drag (void **state)
{
  LbSetup fresh;
  double x, y;

  hand_find (side_view (), LB_PICK_WEIGHT, 0, &x, &y);
  hand_press (side_view (), x, y);
  hand_drag (side_view (), 0, -60, 3);
  lb_session_open_new (session ());
  fresh = *setup ();
  hand_drag (side_view (), 0, -90, 3);
  hand_release (side_view (), 0, -90);
  assert_memory_equal (setup (), &fresh, sizeof fresh);
}

/* After each move of a drag the answer is good, whichever part is pulled and however far. */
static void
every_drag_is_solved (void **state)
{
  static const LbPickKind kinds[] = { LB_PICK_WEIGHT,     LB_PICK_MAINLINE, LB_PICK_REEL,
                                      LB_PICK_ATTACHMENT, LB_PICK_LEADER,   LB_PICK_LURE,
                                      LB_PICK_SHANK,      LB_PICK_BED_POINT };
  TestRandom random = { 20 };
  size_t n = 2 + test_count (100);

  for (size_t i = 0; i < n; i++)
    {
      LbPickKind kind = kinds[i % G_N_ELEMENTS (kinds)];
      int index = kind == LB_PICK_BED_POINT ? (int) test_random (&random, 0, 5) : (int) (i % 2);
      double dx = test_random (&random, -300, 300), dy = test_random (&random, -300, 300), x, y;

      if (kind == LB_PICK_BED_POINT && setup ()->river.n_bed_points == 0)
        lb_session_do (session (),
                       lb_change_new_bed_from_plane (lb_session_get_document (session ())));
      if (kind == LB_PICK_WEIGHT || kind == LB_PICK_MAINLINE || kind == LB_PICK_SHANK
          || kind == LB_PICK_REEL)
        index = 0;
      harness_solved (window);
      lb_viewport_fit (viewport ());
      if (!lb_scene_part_place (lb_canvas_get_scene (side_view ()), kind, index, &x, &y))
        continue;
      hand_press (side_view (), x, y);
      for (int k = 1; k <= 6; k++)
        {
          hand_drag (side_view (), dx * k / 6, dy * k / 6, 1);
          harness_solved (window);
          if (lb_status_is_failure (lb_result_get_status (lb_session_get_result (session ()))))
            fail_msg ("drag %zu, of part %d by %g, %g: no answer", i, (int) kind, dx, dy);
        }
      hand_release (side_view (), dx, dy);
      if (i % 3 == 0)
        lb_session_undo (session ());
    }
}

/* ---- What is shown ---- */

static void
the_part_under_the_pointer_is_shown (void **state)
{
  LbNodeCache *cache = lb_canvas_get_cache (side_view ());
  double x, y;
  LbNodeCounts counts;

  harness_frame (GTK_WIDGET (window));
  hand_find (side_view (), LB_PICK_LURE, 1, &x, &y);
  hand_move (side_view (), x, y);
  harness_frame (GTK_WIDGET (window));
  counts = lb_node_cache_get_counts (cache);
  assert_true (counts.painted > 0);
  /* A glow round one lure is no reason to paint much. */
  assert_less (counts.painted_area, 0.1 * 985 * 450);
  assert_non_null (gtk_widget_get_cursor (GTK_WIDGET (side_view ())));
  assert_string_equal (gdk_cursor_get_name (gtk_widget_get_cursor (GTK_WIDGET (side_view ()))),
                       "ew-resize");
  hand_move (side_view (), 800, 240);
  assert_string_equal (gdk_cursor_get_name (gtk_widget_get_cursor (GTK_WIDGET (side_view ()))),
                       "grab");
}

static void
a_double_click_opens_the_field (void **state)
{
  double x, y;
  GtkWidget *focus;

  hand_find (side_view (), LB_PICK_WEIGHT, 0, &x, &y);
  hand_click (side_view (), x, y, 2);
  harness_frame (GTK_WIDGET (window));
  assert_string_equal (lb_window_get_page (window), "rig");
  focus = gtk_window_get_focus (GTK_WINDOW (window));
  assert_non_null (focus);
  assert_true (gtk_widget_is_ancestor (
      focus, lb_rig_page_get_group (lb_window_get_rig_page (window), LB_PICK_WEIGHT, 0)));
  assert_selected (LB_PICK_WEIGHT, 0);
}

static void
heights_can_be_stretched (void **state)
{
  g_autofree char *words = NULL;
  LbPicture picture;
  LbExtents extents;
  double stretch;

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.scale-stretched", NULL));
  stretch = lb_view_stretch (lb_viewport_get_view (viewport ()));
  assert_true (stretch >= LB_VIEW_LEAST_STRETCH && stretch == round (stretch));
  words = lb_canvas_describe (side_view ());
  assert_non_null (strstr (words, "stretched"));
  lb_session_get_picture (session (), &picture);
  extents = lb_picture_extents (&picture);
  assert_true (lb_view_holds (lb_viewport_get_view (viewport ()), &extents));
  /* A pull goes with the pointer there, too. */
  the_weight_is_pulled_up (state);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.scale-true", NULL));
  assert_near (lb_view_stretch (lb_viewport_get_view (viewport ())), 1, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (the_weight_is_pulled_up),
    TEST (a_weight_on_given_line_becomes_held),
    TEST (pulling_the_mainline_lets_line_out),
    TEST (an_attachment_goes_along_the_shank_and_not_off_it),
    TEST (a_lure_pulled_back_makes_its_leader_longer),
    TEST (the_reel_is_raised),
    TEST (edges_of_the_band_do_not_cross),
    TEST (steps_are_those_of_the_units),
    TEST (a_plane_bed_is_pulled_deeper),
    TEST (a_double_click_makes_the_bed_of_points),
    TEST (bed_points_are_pulled_and_stay_in_order),
    TEST (escape_takes_a_drag_back),
    TEST (a_trembling_click_changes_nothing),
    TEST (empty_water_moves_the_drawing),
    TEST (the_view_stays_during_a_drag),
    TEST (another_document_ends_the_drag),
    TEST (every_drag_is_solved),
    TEST (the_part_under_the_pointer_is_shown),
    TEST (a_double_click_opens_the_field),
    TEST (heights_can_be_stretched),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
