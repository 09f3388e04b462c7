/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rail of a slider: its knob is where the value is, and moves without a layout of the window.
 */
#include "slider_rail.h"

#include "harness.h"

#define WIDTH 400

typedef struct
{
  GtkWidget *window;
  GtkAdjustment *adjustment;
  GtkWidget *rail;
} Fixture;

static Fixture fixture;

static int
set_up (void **state)
{
  fixture.window = gtk_window_new ();
  fixture.adjustment = gtk_adjustment_new (2, 0, 10, 0.5, 2, 0);
  fixture.rail = lb_slider_rail_new (fixture.adjustment);
  gtk_window_set_default_size (GTK_WINDOW (fixture.window), WIDTH, 100);
  gtk_window_set_child (GTK_WINDOW (fixture.window), fixture.rail);
  gtk_window_present (GTK_WINDOW (fixture.window));
  harness_frame (fixture.rail);
  harness_frame (fixture.rail);
  return 0;
}

static int
tear_down (void **state)
{
  gtk_window_destroy (GTK_WINDOW (fixture.window));
  return 0;
}

/* The trough that is to be seen. */
static GtkWidget *
trough (void)
{
  GtkWidget *child = gtk_widget_get_first_child (fixture.rail);

  while (child && !gtk_widget_get_visible (child))
    child = gtk_widget_get_next_sibling (child);
  assert_non_null (child);
  return child;
}

static GtkWidget *
part (const char *css_name)
{
  GtkWidget *child = gtk_widget_get_first_child (trough ());

  while (child && g_strcmp0 (gtk_widget_get_css_name (child), css_name) != 0)
    child = gtk_widget_get_next_sibling (child);
  assert_non_null (child);
  return child;
}

static graphene_rect_t
bounds (GtkWidget *widget)
{
  graphene_rect_t rect;

  assert_true (gtk_widget_compute_bounds (widget, trough (), &rect));
  return rect;
}

static double
knob (void)
{
  graphene_rect_t rect = bounds (part ("slider"));

  return rect.origin.x + rect.size.width / 2.0;
}

static double
width (void)
{
  return gtk_widget_get_width (trough ());
}

static void
the_knob_stands_where_the_value_is (void **state)
{
  const double values[] = { 0, 2, 5, 7.25, 10 };

  assert_true (width () > WIDTH / 2);
  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    {
      gtk_adjustment_set_value (fixture.adjustment, values[i]);
      /* Its middle stops short of the ends by a pixel or two, and stands on a whole one. */
      assert_near (knob (), width () * values[i] / 10, 2.5);
    }
}

static void
a_new_range_moves_the_knob (void **state)
{
  gtk_adjustment_set_value (fixture.adjustment, 5);
  gtk_adjustment_set_upper (fixture.adjustment, 20);
  assert_near (knob (), width () / 4, 2.5);
  gtk_adjustment_set_upper (fixture.adjustment, 0);
  assert_near (knob (), 0, 2.5);
}

static void
it_is_turned_round_where_text_runs_to_the_left (void **state)
{
  gtk_widget_set_direction (fixture.rail, GTK_TEXT_DIR_RTL);
  harness_frame (fixture.rail);
  gtk_adjustment_set_value (fixture.adjustment, 2);
  assert_near (knob (), width () * 0.8, 2.5);
  assert_near (bounds (part ("highlight")).origin.x, width () * 0.8, 12);
}

static void
count_cb (int *count)
{
  (*count)++;
}

static void
moving_the_knob_lays_out_nothing (void **state)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (fixture.rail);
  int layouts = 0;
  gulong id = g_signal_connect_swapped (clock, "layout", G_CALLBACK (count_cb), &layouts);

  for (int i = 0; i < 5; i++)
    {
      gtk_adjustment_set_value (fixture.adjustment, i + 1.5);
      harness_frame (fixture.rail);
    }
  assert_int_equal (layouts, 0);
  /* The count can rise. */
  gtk_widget_queue_allocate (fixture.rail);
  harness_frame (fixture.rail);
  assert_int_equal (layouts, 1);
  g_signal_handler_disconnect (clock, id);
}

static void
it_is_filled_up_to_its_level_if_asked (void **state)
{
  assert_false (gtk_widget_get_visible (part ("fill")));
  gtk_range_set_show_fill_level (GTK_RANGE (fixture.rail), TRUE);
  gtk_range_set_fill_level (GTK_RANGE (fixture.rail), 6);
  harness_frame (fixture.rail);
  assert_true (gtk_widget_get_visible (part ("fill")));
  assert_near (bounds (part ("fill")).size.width, width () * 0.6, 12);
  gtk_range_set_fill_level (GTK_RANGE (fixture.rail), 8);
  assert_near (bounds (part ("fill")).size.width, width () * 0.8, 12);
}

static void
keys_and_screen_readers_find_a_scale (void **state)
{
  g_autofree char *fault = NULL;

  assert_int_equal (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (fixture.rail)),
                    GTK_ACCESSIBLE_ROLE_SLIDER);
  g_signal_emit_by_name (fixture.rail, "move-slider", GTK_SCROLL_STEP_RIGHT);
  assert_near (gtk_adjustment_get_value (fixture.adjustment), 2.5, 1e-9);
  g_signal_emit_by_name (fixture.rail, "move-slider", GTK_SCROLL_END);
  assert_near (gtk_adjustment_get_value (fixture.adjustment), 10, 1e-9);
  assert_near (knob (), width (), 2.5);
  fault = gtk_test_accessible_check_property (GTK_ACCESSIBLE (fixture.rail),
                                              GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, 10.0);
  assert_null (fault);
}

/* GTK's own gestures would look for GTK's knob, which is hidden. */
static void
one_gesture_alone_takes_the_pointer (void **state)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (fixture.rail);
  int n = 0;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      n += GTK_IS_GESTURE (controller)
           && gtk_event_controller_get_propagation_phase (controller) != GTK_PHASE_NONE;
    }
  assert_int_equal (n, 1);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (the_knob_stands_where_the_value_is),
    TEST (a_new_range_moves_the_knob),
    TEST (it_is_turned_round_where_text_runs_to_the_left),
    TEST (moving_the_knob_lays_out_nothing),
    TEST (it_is_filled_up_to_its_level_if_asked),
    TEST (one_gesture_alone_takes_the_pointer),
    TEST (keys_and_screen_readers_find_a_scale),
#undef TEST
  };

  harness_start ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
