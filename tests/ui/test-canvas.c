/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The drawings: what they tell a screen reader and the pointer, and that only what moved is painted
 * again. */
#include "one_window.h"

#include <string.h>

static void
set_current (double current)
{
  lb_session_set_value (session (), lb_field ("river.surface_current_m_s"), 0, current, 0);
  harness_solved (window);
  harness_frame (GTK_WIDGET (window));
}

/* ---- Tests ---- */

static void
a_screen_reader_is_told_role_name_and_description (void **state)
{
  g_autofree char *words = lb_canvas_describe (side_view ());

  assert_int_equal (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (side_view ())),
                    GTK_ACCESSIBLE_ROLE_IMG);
  assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (side_view ()),
                                                 GTK_ACCESSIBLE_PROPERTY_LABEL));
  assert_true (strlen (words) > 100);
  /* Not during a stream of changes, but soon after. */
  harness_pause (300);
  assert_null (gtk_test_accessible_check_property (GTK_ACCESSIBLE (side_view ()),
                                                   GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words));
}

static void
the_description_follows_the_rig (void **state)
{
  g_autofree char *before = lb_canvas_describe (side_view ());
  g_autofree char *after = NULL;

  set_current (1.6);
  harness_pause (300);
  after = lb_canvas_describe (side_view ());
  assert_string_not_equal (before, after);
  assert_null (gtk_test_accessible_check_property (GTK_ACCESSIBLE (side_view ()),
                                                   GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, after));
}

static void
the_pointer_finds_the_weight (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));
  const LbReadings *readings = lb_result_get_readings (lb_session_get_result (session ()));
  const LbView *view = lb_viewport_get_view (viewport);
  g_autofree char *words =
      lb_canvas_dup_words_at (side_view (), lb_view_x (view, readings->weight.position.x),
                              lb_view_y (view, readings->weight.position.z));
  g_autofree char *mass =
      lb_session_dup_words (session (), LB_QUANTITY_MASS,
                            lb_session_get_value (session (), lb_field ("weight.mass_kg"), 0));

  assert_non_null (words);
  assert_true (g_str_has_prefix (words, "Weight\n"));
  assert_non_null (strstr (words, mass));
}

static void
the_pointer_finds_each_lure (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));
  const LbReadings *readings = lb_result_get_readings (lb_session_get_result (session ()));
  const LbView *view = lb_viewport_get_view (viewport);

  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      LbVec3 at = readings->lures[i].at.position;
      g_autofree char *words =
          lb_canvas_dup_words_at (side_view (), lb_view_x (view, at.x), lb_view_y (view, at.z));
      const char *name = lb_document_get_lure_name (lb_session_get_document (session ()), i);

      assert_non_null (words);
      assert_true (g_ascii_isupper (words[0]));
      if (!strstr (words, name))
        fail_msg ("over lure %zu: %s", i, words);
    }
}

static void
a_frame_without_change_paints_nothing_anew (void **state)
{
  LbNodeCache *cache = lb_canvas_get_cache (side_view ());
  LbNodeCounts counts;

  set_current (1.21);
  gtk_widget_queue_draw (GTK_WIDGET (side_view ()));
  harness_frame (GTK_WIDGET (window));
  counts = lb_node_cache_get_counts (cache);
  assert_true (counts.cells > 0);
  assert_int_equal (counts.painted, 0);
}

static void
a_small_change_keeps_background_and_most_cells (void **state)
{
  LbNodeCache *cache = lb_canvas_get_cache (side_view ());
  guint backgrounds;
  LbNodeCounts counts;

  set_current (1.20);
  backgrounds = lb_node_cache_get_counts (cache).backgrounds;
  /* Weight in hand: the river stays as it is, only the rig moves. */
  lb_session_set_value (session (), lb_field ("weight.mass_kg"), 0,
                        1.001 * lb_session_get_value (session (), lb_field ("weight.mass_kg"), 0),
                        0);
  harness_frame (GTK_WIDGET (window));
  counts = lb_node_cache_get_counts (cache);
  assert_int_equal (lb_node_cache_get_counts (cache).backgrounds, backgrounds);
  assert_true (counts.painted > 0);
  assert_true (counts.painted < counts.cells);
}

static void
count_cb (int *count)
{
  (*count)++;
}

/* How much of the side view is repainted when the current goes from 1.0 to 1.1 m/s, once the
 * readings follow in the same frame (`with_readings`) or do not. They follow by the clock, so that
 * it may take more than one try. */
static double
area_of_a_step (gboolean with_readings)
{
  LbReadingsPage *page = lb_window_get_readings_page (window);
  LbNodeCache *cache = lb_canvas_get_cache (side_view ());

  for (int attempt = 0; attempt < 50; attempt++)
    {
      int updates = 0;
      gulong handler;

      set_current (1.0);
      if (with_readings)
        harness_pause (200);
      handler = g_signal_connect_swapped (page, "updated", G_CALLBACK (count_cb), &updates);
      set_current (1.1);
      g_signal_handler_disconnect (page, handler);
      if ((updates > 0) == with_readings)
        return lb_node_cache_get_counts (cache).painted_area;
    }
  if (with_readings)
    fail_msg ("the readings never follow");
  /* Every frame takes longer than the readings wait: nothing can be seen here. */
  print_message ("this machine is too slow\n");
  skip ();
  return 0;
}

/* GTK counts the rectangles of the whole window, see node_cache.h. */
static void
the_drawing_makes_way_for_the_readings (void **state)
{
  double alone, together;

  /* A small drawing never comes apart into so many. */
  harness_close (window);
  window = harness_window (3000, 1800);
  alone = area_of_a_step (FALSE);
  together = area_of_a_step (TRUE);
  assert_true (alone > 0);
  assert_less (alone, together);
}

/* What the window shows now is what it would show if all were painted anew. */
static void
compare_with_all_painted_anew (const char *name)
{
  int width, height, again_width, again_height;
  g_autofree char *anew_name = g_strconcat (name, "-anew", NULL);
  g_autofree guchar *kept = NULL, *anew = NULL;
  gsize different = 0;

  /* The words of cautions follow half a second later. */
  harness_pause (700);
  kept = harness_picture (window, name, 1, &width, &height);
  lb_node_cache_clear (lb_canvas_get_cache (side_view ()));
  lb_node_cache_clear (lb_canvas_get_cache (bed_strip ()));
  gtk_widget_queue_draw (GTK_WIDGET (side_view ()));
  gtk_widget_queue_draw (GTK_WIDGET (bed_strip ()));
  anew = harness_picture (window, anew_name, 1, &again_width, &again_height);
  assert_int_equal (width, again_width);
  assert_int_equal (height, again_height);
  for (gsize i = 0; i < (gsize) width * (gsize) height; i++)
    different += memcmp (kept + 4 * i, anew + 4 * i, 4) != 0;
  assert_int_equal (different, 0);
}

static void
what_is_kept_looks_like_what_is_painted_anew (void **state)
{
  for (int i = 0; i < 10; i++)
    set_current (1.0 + 0.05 * i);
  harness_pause (200); /* the readings follow a moving slider a little behind */
  compare_with_all_painted_anew ("kept");
}

static void
nothing_of_another_theme_is_kept (void **state)
{
  g_object_set (lb_session_get_preferences (session ()), "theme", "dark", NULL);
  harness_pause (300);
  compare_with_all_painted_anew ("kept-dark");
}

static void
zoom_and_fit (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));
  double before = lb_viewport_get_view (viewport)->per_metre_x;

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.zoom-in", NULL));
  assert_less (before, lb_viewport_get_view (viewport)->per_metre_x);
  assert_true (lb_viewport_get_moved (viewport));
  /* A view that the user chose stays while the rig moves. */
  set_current (1.5);
  assert_true (lb_viewport_get_moved (viewport));
  assert_less (before, lb_viewport_get_view (viewport)->per_metre_x);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.zoom-fit", NULL));
  assert_false (lb_viewport_get_moved (viewport));
  harness_frame (GTK_WIDGET (window));
}

static void
move_pointer (double x, double y)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (side_view ()));

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_MOTION (controller))
        g_signal_emit_by_name (controller, "motion", x, y);
    }
}

static void
turn_wheel (double notches, int times)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (side_view ()));

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      gboolean handled = FALSE;

      for (int k = 0; GTK_IS_EVENT_CONTROLLER_SCROLL (controller) && k < times; k++)
        {
          g_signal_emit_by_name (controller, "scroll", 0.0, notches, &handled);
          assert_true (handled);
          if (k % 20 == 0)
            harness_frame (GTK_WIDGET (window));
        }
    }
}

static void
the_wheel_zooms_and_knows_an_end (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));
  double before = lb_viewport_get_view (viewport)->per_metre_x;
  double x = lb_view_world_x (lb_viewport_get_view (viewport), 300);

  move_pointer (300, 200);
  turn_wheel (-1, 1);
  assert_less (before, lb_viewport_get_view (viewport)->per_metre_x);
  assert_near (lb_view_world_x (lb_viewport_get_view (viewport), 300), x, 1e-9);
  turn_wheel (-1, 100);
  assert_true (isfinite (lb_viewport_get_view (viewport)->x_left));
  turn_wheel (1, 200);
  assert_true (isfinite (lb_viewport_get_view (viewport)->x_left));
  assert_less (0.5, lb_viewport_get_view (viewport)->per_metre_x);
  harness_frame (GTK_WIDGET (window));
}

static void
the_view_holds_the_rig_for_every_current (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));

  for (int i = 0; i <= 20; i++)
    {
      LbPicture picture;
      LbExtents extents;

      set_current (2.5 * i / 20);
      lb_session_get_picture (session (), &picture);
      extents = lb_picture_extents (&picture);
      assert_true (lb_view_holds (lb_viewport_get_view (viewport), &extents));
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (a_screen_reader_is_told_role_name_and_description),
    TEST (the_description_follows_the_rig),
    TEST (the_pointer_finds_the_weight),
    TEST (the_pointer_finds_each_lure),
    TEST (a_frame_without_change_paints_nothing_anew),
    TEST (a_small_change_keeps_background_and_most_cells),
    TEST (the_drawing_makes_way_for_the_readings),
    TEST (what_is_kept_looks_like_what_is_painted_anew),
    TEST (nothing_of_another_theme_is_kept),
    TEST (zoom_and_fit),
    TEST (the_wheel_zooms_and_knows_an_end),
    TEST (the_view_holds_the_rig_for_every_current),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
