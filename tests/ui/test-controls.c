/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sliders and entries: they move the rig, and what they do can be undone. */
#include "fault_bubble.h"
#include "field_entry.h"
#include "one_window.h"

#include <string.h>

static LbControls *
controls (void)
{
  return lb_window_get_controls (window);
}

static const LbReadings *
readings (void)
{
  LbResult *result = lb_session_get_result (session ());

  assert_non_null (result);
  assert_false (lb_result_get_failed (result));
  return lb_result_get_readings (result);
}

static char *
described (void)
{
  return lb_canvas_describe (lb_drawings_get_side_view (lb_window_get_drawings (window)));
}

static gboolean
press_key (GtkWidget *widget, guint key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  gboolean handled = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !handled; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", key, 0, 0, &handled);
    }
  return handled;
}

/* ---- Tests ---- */

static void
a_window_begins_with_a_solved_rig (void **state)
{
  assert_non_null (readings ());
  assert_less (0, readings ()->line_out);
  assert_int_equal (readings ()->n_leaders, 2);
  assert_string_not_equal (lb_readings_page_get_sentence (lb_window_get_readings_page (window)),
                           "");
}

static void
move_and_compare (LbSlider *slider, const char *field)
{
  LbReadingsPage *page = lb_window_get_readings_page (window);
  g_autofree char *text_before = lb_readings_page_dup_text (page);
  g_autofree char *words_before = described ();
  g_autofree char *text_after = NULL;
  g_autofree char *words_after = NULL;
  GtkAdjustment *adjustment = harness_adjustment (slider);
  double before = gtk_adjustment_get_value (adjustment);
  double after = before + 0.2 * (gtk_adjustment_get_upper (adjustment) - before);

  assert_near (lb_session_get_value (session (), lb_field (field), 0), before, 1e-9);
  gtk_adjustment_set_value (adjustment, after);
  harness_solved (window);
  assert_near (lb_session_get_value (session (), lb_field (field), 0), after, 1e-9);

  text_after = lb_readings_page_dup_text (page);
  words_after = described ();
  assert_string_not_equal (text_after, text_before);
  assert_string_not_equal (words_after, words_before);
}

static void
each_slider_moves_solve_readings_and_description (void **state)
{
  move_and_compare (lb_controls_get_current (controls ()), "river.surface_current_m_s");
  move_and_compare (lb_controls_get_boat_speed (controls ()), "boat.speed_over_ground_m_s");
  move_and_compare (lb_controls_get_weight (controls ()), "weight.mass_kg");
}

static void
more_current_lays_the_wire_back (void **state)
{
  GtkAdjustment *adjustment = harness_adjustment (lb_controls_get_current (controls ()));
  double before = readings ()->wire_angle;

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + 0.3);
  harness_solved (window);
  assert_less (before, readings ()->wire_angle);
}

static void
a_heavier_weight_steepens_the_wire (void **state)
{
  GtkAdjustment *adjustment = harness_adjustment (lb_controls_get_weight (controls ()));
  double before = readings ()->wire_angle;

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + 0.3);
  harness_solved (window);
  assert_less (readings ()->wire_angle, before);
}

static void
a_row_of_moves_is_one_undo_step (void **state)
{
  GtkAdjustment *adjustment = harness_adjustment (lb_controls_get_current (controls ()));
  double before = gtk_adjustment_get_value (adjustment);
  g_autofree char *words_before = described ();
  g_autofree char *words_after = NULL;
  gboolean can_undo;

  for (int i = 1; i <= 20; i++)
    gtk_adjustment_set_value (adjustment, before + 0.01 * i);
  harness_solved (window);
  assert_near (setup ()->river.surface_current, before + 0.2, 1e-9);

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL));
  harness_solved (window);
  assert_near (setup ()->river.surface_current, before, 1e-9);
  assert_near (gtk_adjustment_get_value (adjustment), before, 1e-9);
  words_after = described ();
  assert_string_equal (words_after, words_before);
  g_object_get (session (), "can-undo", &can_undo, NULL);
  assert_false (can_undo);

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.redo", NULL));
  harness_solved (window);
  assert_near (setup ()->river.surface_current, before + 0.2, 1e-9);
}

static void
every_position_of_every_slider_is_solved (void **state)
{
  LbSlider *sliders[] = { lb_controls_get_current (controls ()),
                          lb_controls_get_boat_speed (controls ()),
                          lb_controls_get_weight (controls ()),
                          lb_line_control_get_slider (lb_controls_get_line_control (controls ())) };

  for (gsize s = 0; s < G_N_ELEMENTS (sliders); s++)
    {
      GtkAdjustment *adjustment = harness_adjustment (sliders[s]);
      double lower = gtk_adjustment_get_lower (adjustment);
      double upper = gtk_adjustment_get_upper (adjustment);
      double start = gtk_adjustment_get_value (adjustment);

      for (int i = 0; i <= 40; i++)
        {
          gtk_adjustment_set_value (adjustment, lower + (upper - lower) * i / 40);
          harness_solved (window);
          assert_false (lb_result_get_failed (lb_session_get_result (session ())));
        }
      gtk_adjustment_set_value (adjustment, start);
    }
}

static void
arrow_keys_make_steps (void **state)
{
  LbSlider *slider = lb_controls_get_boat_speed (controls ());
  GtkWidget *scale = lb_slider_get_scale (slider);
  double before = setup ()->boat.speed_over_ground;
  double step = lb_field_step (lb_field ("boat.speed_over_ground_m_s"), LB_UNITS_US);

  assert_true (press_key (scale, GDK_KEY_Up));
  assert_near (setup ()->boat.speed_over_ground, before + step, 1e-12);
  assert_true (press_key (scale, GDK_KEY_Down));
  assert_true (press_key (scale, GDK_KEY_Down));
  assert_near (setup ()->boat.speed_over_ground, before - step, 1e-12);
}

static void
page_keys_go_from_weight_to_weight_owned (void **state)
{
  const double owned[] = { 0.5, 1.0, 1.5 };
  LbSlider *slider = lb_controls_get_weight (controls ());
  GtkWidget *scale = lb_slider_get_scale (slider);

  lb_preferences_set_weights (lb_session_get_preferences (session ()), owned, 3);
  lb_session_set_value (session (), lb_field ("weight.mass_kg"), 0, 0.7, 0);
  assert_true (press_key (scale, GDK_KEY_Page_Up));
  assert_near (setup ()->rig.weight.mass, 1.0, 1e-12);
  assert_true (press_key (scale, GDK_KEY_Page_Up));
  assert_near (setup ()->rig.weight.mass, 1.5, 1e-12);
  assert_true (press_key (scale, GDK_KEY_Page_Up));
  assert_near (setup ()->rig.weight.mass, 1.5, 1e-12);
  assert_true (press_key (scale, GDK_KEY_Page_Down));
  assert_true (press_key (scale, GDK_KEY_Page_Down));
  assert_near (setup ()->rig.weight.mass, 0.5, 1e-12);
}

static void
type (LbSlider *slider, const char *text)
{
  GtkWidget *entry = lb_slider_get_entry (slider);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static void
entries_take_any_unit (void **state)
{
  LbSlider *weight = lb_controls_get_weight (controls ());
  LbSlider *current = lb_controls_get_current (controls ());

  type (weight, "1 1/4 lb");
  assert_near (setup ()->rig.weight.mass, 1.25 * 0.45359237, 1e-9);
  type (weight, "0.9 kg");
  assert_near (setup ()->rig.weight.mass, 0.9, 1e-9);
  type (current, "2.5");
  assert_near (setup ()->river.surface_current, 2.5 * 0.44704, 1e-9);
  type (current, "1 m/s");
  assert_near (setup ()->river.surface_current, 1.0, 1e-9);
}

static void
a_text_that_is_no_value_is_marked_and_changes_nothing (void **state)
{
  LbSlider *weight = lb_controls_get_weight (controls ());
  GtkWidget *entry = lb_slider_get_entry (weight);
  const char *wrong[] = { "heavy", "3 ft", "", "900 kg", "-1 lb" };
  double before = setup ()->rig.weight.mass;

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      type (weight, wrong[i]);
      assert_near (setup ()->rig.weight.mass, before, 0);
      assert_non_null (lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)));
      assert_true (gtk_widget_has_css_class (entry, "error"));
      assert_string_equal (gtk_widget_get_tooltip_text (entry),
                           lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)));
      /* Beside the entry, too. */
      assert_string_equal (lb_fault_bubble_get_text (LB_FIELD_ENTRY (entry)),
                           lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)));
    }
  assert_true (press_key (entry, GDK_KEY_Escape));
  assert_null (lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)));
  assert_null (lb_fault_bubble_get_text (LB_FIELD_ENTRY (entry)));
  assert_false (gtk_widget_has_css_class (entry, "error"));
}

static void
a_value_beyond_the_slider_makes_room (void **state)
{
  LbSlider *weight = lb_controls_get_weight (controls ());

  type (weight, "12 lb");
  assert_near (setup ()->rig.weight.mass, 12 * 0.45359237, 1e-9);
  assert_near (gtk_adjustment_get_value (harness_adjustment (weight)), 12 * 0.45359237, 1e-9);
}

static void
line_out_follows_from_the_weight_held (void **state)
{
  LbLineControl *line = lb_controls_get_line_control (controls ());
  GtkDropDown *choice = GTK_DROP_DOWN (lb_line_control_get_choice (line));
  GtkAdjustment *adjustment = harness_adjustment (lb_line_control_get_slider (line));

  gtk_drop_down_set_selected (choice, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  harness_solved (window);
  assert_int_equal (setup ()->rig.line_out.mode, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  gtk_adjustment_set_value (adjustment, 0.5);
  harness_solved (window);
  assert_near (readings ()->weight.height, 0.5, 1e-3);

  gtk_drop_down_set_selected (choice, LB_LINE_OUT_TOUCHING);
  harness_solved (window);
  assert_int_equal (setup ()->rig.line_out.mode, LB_LINE_OUT_TOUCHING);
  assert_near (readings ()->weight.height, 0, 2e-3);
}

static void
giving_line_out_keeps_the_rig_where_it_is (void **state)
{
  LbLineControl *line = lb_controls_get_line_control (controls ());
  GtkDropDown *choice = GTK_DROP_DOWN (lb_line_control_get_choice (line));
  double height;

  gtk_drop_down_set_selected (choice, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  gtk_adjustment_set_value (harness_adjustment (lb_line_control_get_slider (line)), 0.3);
  harness_solved (window);
  height = readings ()->weight.height;
  gtk_drop_down_set_selected (choice, LB_LINE_OUT_GIVEN);
  harness_solved (window);
  assert_int_equal (setup ()->rig.line_out.mode, LB_LINE_OUT_GIVEN);
  assert_near (readings ()->weight.height, height, 2e-3);
  assert_near (gtk_adjustment_get_value (harness_adjustment (lb_line_control_get_slider (line))),
               setup ()->rig.line_out.value, 1e-9);
}

static void
units_change_every_text (void **state)
{
  LbReadingsPage *page = lb_window_get_readings_page (window);
  GtkWidget *entry = lb_slider_get_entry (lb_controls_get_current (controls ()));
  g_autofree char *us = lb_readings_page_dup_text (page);
  g_autofree char *us_words = described ();
  g_autofree char *us_entry = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
  g_autofree char *metric = NULL;
  g_autofree char *metric_words = NULL;
  double current = setup ()->river.surface_current;

  g_action_group_activate_action (G_ACTION_GROUP (harness_application ()), "units",
                                  g_variant_new_string ("metric"));
  metric = lb_readings_page_dup_text (page);
  metric_words = described ();
  assert_non_null (strstr (us_entry, "mph"));
  assert_non_null (strstr (gtk_editable_get_text (GTK_EDITABLE (entry)), "m/s"));
  assert_non_null (strstr (us, " lbf"));
  assert_null (strstr (metric, " lbf"));
  assert_non_null (strstr (metric, " N"));
  assert_string_not_equal (us_words, metric_words);
  /* Only the words change, not the rig. */
  assert_near (setup ()->river.surface_current, current, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (a_window_begins_with_a_solved_rig),
    TEST (each_slider_moves_solve_readings_and_description),
    TEST (more_current_lays_the_wire_back),
    TEST (a_heavier_weight_steepens_the_wire),
    TEST (a_row_of_moves_is_one_undo_step),
    TEST (every_position_of_every_slider_is_solved),
    TEST (arrow_keys_make_steps),
    TEST (page_keys_go_from_weight_to_weight_owned),
    TEST (entries_take_any_unit),
    TEST (a_text_that_is_no_value_is_marked_and_changes_nothing),
    TEST (a_value_beyond_the_slider_makes_room),
    TEST (line_out_follows_from_the_weight_held),
    TEST (giving_line_out_keeps_the_rig_where_it_is),
    TEST (units_change_every_text),
#undef TEST
  };

  harness_start ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
