/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river page: bed, current, water, rivers to start from; and pictures of it for people to look
 * at. */
#include "harness.h"

#include <string.h>

#include "bed.h"
#include "current.h"
#include "presets_button.h"
#include "river_presets.h"

static LbWindow *window;

static int
set_up (void **state)
{
  window = harness_window (1280, 800);
  lb_window_show_page (window, "river");
  harness_frame (GTK_WIDGET (window));
  return 0;
}

static int
tear_down (void **state)
{
  harness_close (window);
  return 0;
}

static LbSession *
session (void)
{
  return lb_window_get_session (window);
}

static const LbRiver *
river (void)
{
  return &lb_document_get_setup (lb_session_get_document (session ()))->river;
}

static LbRiverPage *
page (void)
{
  return lb_window_get_river_page (window);
}

static LbBedSection *
bed (void)
{
  return lb_river_page_get_bed (page ());
}

static LbPointTable *
bed_table (void)
{
  return lb_bed_section_get_table (bed ());
}

static LbCurrentSection *
current (void)
{
  return lb_river_page_get_current (page ());
}

static LbPointTable *
measured_table (void)
{
  return lb_measured_section_get_table (lb_current_section_get_measured (current ()));
}

static void
type (gpointer entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static void
press (gpointer button)
{
  g_signal_emit_by_name (button, "clicked");
}

static void
choose_known (LbKnownFrom known)
{
  gtk_drop_down_set_selected (lb_current_section_get_known (current ()), known);
}

/* ---- Bed ---- */

static void
the_switch_makes_points_and_remembers_them (void **state)
{
  gtk_toggle_button_set_active (lb_bed_section_get_profile_button (bed ()), TRUE);
  assert_int_equal (river ()->n_bed_points, LB_BED_FIRST_POINTS);
  type (lb_point_table_get_entry (bed_table (), 2, 1), "14 ft");
  assert_near (river ()->bed_depth[2], 14 * 0.3048, 1e-12);
  gtk_toggle_button_set_active (lb_bed_section_get_even_button (bed ()), TRUE);
  assert_int_equal (river ()->n_bed_points, 0);
  gtk_toggle_button_set_active (lb_bed_section_get_profile_button (bed ()), TRUE);
  assert_near (river ()->bed_depth[2], 14 * 0.3048, 1e-12);
  /* Four steps, four undos. */
  for (int i = 0; i < 4; i++)
    lb_session_undo (session ());
  assert_int_equal (river ()->n_bed_points, 0);
  assert_true (gtk_toggle_button_get_active (lb_bed_section_get_even_button (bed ())));
}

static void
points_are_added_moved_and_taken_away (void **state)
{
  gtk_toggle_button_set_active (lb_bed_section_get_profile_button (bed ()), TRUE);
  press (lb_bed_section_get_add_button (bed ()));
  assert_int_equal (river ()->n_bed_points, 6);
  assert_near (river ()->bed_x[5], river ()->bed_x[4] + LB_BED_FIRST_SPACING, 1e-9);
  type (lb_point_table_get_entry (bed_table (), 5, 0), "45 m");
  assert_near (river ()->bed_x[5], 45, 1e-12);
  lb_session_select (session (), LB_PICK_BED_POINT, 1);
  press (lb_bed_section_get_add_button (bed ()));
  assert_near (river ()->bed_x[2], (river ()->bed_x[1] + river ()->bed_x[3]) / 2, 1e-9);
  press (lb_point_table_get_remove_button (bed_table (), 2));
  assert_int_equal (river ()->n_bed_points, 6);
  while (river ()->n_bed_points > 2)
    press (lb_point_table_get_remove_button (bed_table (), 0));
  assert_false (gtk_widget_get_sensitive (lb_point_table_get_remove_button (bed_table (), 0)));
}

static void
a_point_beyond_its_neighbour_is_explained (void **state)
{
  double before;

  gtk_toggle_button_set_active (lb_bed_section_get_profile_button (bed ()), TRUE);
  before = river ()->bed_x[2];
  type (lb_point_table_get_entry (bed_table (), 2, 0), "900 ft");
  assert_near (river ()->bed_x[2], before, 0);
  assert_non_null (lb_point_table_get_fault (bed_table ()));
  assert_non_null (strstr (lb_point_table_get_fault (bed_table ()), "Point 3, Downstream"));
  type (lb_point_table_get_entry (bed_table (), 2, 1), "deep");
  assert_non_null (lb_point_table_get_fault (bed_table ()));
  lb_session_select (session (), LB_PICK_BED_POINT, 0);
}

static void
a_selected_point_is_marked_and_its_page_shown (void **state)
{
  double x[40], depth[40];
  LbPickKind kind;
  int index;

  for (int i = 0; i < 40; i++)
    {
      x[i] = 5 * i - 20;
      depth[i] = 5 + (i % 7) * 0.2;
    }
  lb_session_do (session (), lb_change_new_bed (x, depth, 40, NULL));
  assert_null (lb_point_table_get_entry (bed_table (), 29, 0));
  lb_session_select (session (), LB_PICK_BED_POINT, 29);
  assert_non_null (lb_point_table_get_entry (bed_table (), 29, 0));
  harness_frame (GTK_WIDGET (window));
  assert_true (lb_river_page_open_part (page (), LB_PICK_BED_POINT, 3));
  harness_pause (50);
  lb_session_get_selected (session (), &kind, &index);
  assert_int_equal (kind, LB_PICK_BED_POINT);
  assert_int_equal (index, 3);
  assert_true (lb_point_table_get_first (bed_table ()) <= 3);
}

/* ---- Current ---- */

/* 100 ft in 25 s: 4 ft/s = 1.2192 m/s, by the definition of the foot. */
static void
a_float_gives_the_surface_current (void **state)
{
  LbFloatTimer *timer = lb_current_section_get_float (current ());

  choose_known (LB_KNOWN_FLOAT);
  type (lb_float_timer_get_distance (timer), "100 ft");
  type (lb_float_timer_get_time (timer), "25 s");
  assert_near (river ()->surface_current, 1.2192, 1e-12);
  type (lb_float_timer_get_time (timer), "1:40");
  assert_near (river ()->surface_current, 1.2192 / 4, 1e-12);
  assert_non_null (strstr (lb_float_timer_get_words (timer), "0.7 mph"));
  type (lb_float_timer_get_time (timer), "1:61");
  assert_non_null (strstr (lb_float_timer_get_words (timer), "“1:61” is no time"));
  assert_non_null (strstr (lb_float_timer_get_words (timer), "seconds from 0 to 59"));
  type (lb_float_timer_get_time (timer), "1:40");
}

static void
a_float_too_fast_is_explained (void **state)
{
  LbFloatTimer *timer = lb_current_section_get_float (current ());
  double before = river ()->surface_current;

  choose_known (LB_KNOWN_FLOAT);
  type (lb_float_timer_get_distance (timer), "1000 ft");
  type (lb_float_timer_get_time (timer), "5 s");
  assert_near (river ()->surface_current, before, 0);
  assert_non_null (strstr (lb_float_timer_get_words (timer), "Check the distance"));
  type (lb_float_timer_get_time (timer), "3 lb");
  assert_non_null (strstr (lb_float_timer_get_words (timer), "Time:"));
}

/* Measuring starts from the present curve, and leaving it goes back to a law. */
static void
measured_points_start_on_the_curve (void **state)
{
  LbCurrent before, after;

  lb_current_init (&before, river ());
  choose_known (LB_KNOWN_MEASURED);
  assert_int_equal (river ()->profile.law, LB_PROFILE_POINTS);
  lb_current_init (&after, river ());
  for (double share = 0; share <= 0.8; share += 0.2)
    assert_near (lb_current_at (&after, 0, -share * river ()->depth).speed,
                 lb_current_at (&before, 0, -share * river ()->depth).speed, 0.03);
  choose_known (LB_KNOWN_SURFACE);
  assert_int_equal (river ()->profile.law, LB_PROFILE_POWER);
  lb_session_undo (session ());
  assert_int_equal (gtk_drop_down_get_selected (lb_current_section_get_known (current ())),
                    LB_KNOWN_MEASURED);
}

/* 1 m/s at 1 m and 0.5 m/s at 4 m of 5 m: shares by hand. */
static void
measured_speeds_become_shares (void **state)
{
  LbMeasuredSection *section = lb_current_section_get_measured (current ());

  lb_session_set_value (session (), lb_field ("river.depth_m"), 0, 5, 0);
  choose_known (LB_KNOWN_MEASURED);
  while (gtk_widget_get_sensitive (lb_point_table_get_remove_button (measured_table (), 0)))
    press (lb_point_table_get_remove_button (measured_table (), 0));
  type (lb_point_table_get_entry (measured_table (), 0, 0), "1 m");
  type (lb_point_table_get_entry (measured_table (), 0, 1), "1 m/s");
  type (lb_point_table_get_entry (measured_table (), 1, 0), "4 m");
  type (lb_point_table_get_entry (measured_table (), 1, 1), "0.5 m/s");
  assert_null (lb_measured_section_get_fault (section));
  assert_int_equal (river ()->profile.n_points, 2);
  assert_near (river ()->surface_current, 1, 1e-12);
  assert_near (river ()->profile.height_fraction[0], 0.2, 1e-12);
  assert_near (river ()->profile.height_fraction[1], 0.8, 1e-12);
  assert_near (river ()->profile.speed_fraction[0], 0.5, 1e-12);
  gtk_drop_down_set_selected (lb_measured_section_get_choice (section), 1);
  assert_string_equal (
      gtk_editable_get_text (GTK_EDITABLE (lb_point_table_get_entry (measured_table (), 1, 0))),
      "3 ft 3 in");
}

static void
measured_points_that_make_no_sense_are_explained (void **state)
{
  LbMeasuredSection *section = lb_current_section_get_measured (current ());
  LbProfile before;

  choose_known (LB_KNOWN_MEASURED);
  before = river ()->profile;
  type (lb_point_table_get_entry (measured_table (), 2, 0), "4 ft");
  type (lb_point_table_get_entry (measured_table (), 1, 0), "4 ft");
  assert_non_null (strstr (lb_measured_section_get_fault (section), "same depth"));
  type (lb_point_table_get_entry (measured_table (), 1, 0), "3 ft");
  assert_null (lb_measured_section_get_fault (section));
  before = river ()->profile;
  type (lb_point_table_get_entry (measured_table (), 3, 1), "13 mph");
  assert_non_null (strstr (lb_measured_section_get_fault (section), "twice as fast"));
  assert_memory_equal (&before, &river ()->profile, sizeof before);
  type (lb_point_table_get_entry (measured_table (), 3, 0), "99 ft");
  assert_non_null (strstr (lb_measured_section_get_fault (section), "Give a value"));
}

static void
a_new_row_waits_for_its_numbers (void **state)
{
  LbMeasuredSection *section = lb_current_section_get_measured (current ());

  choose_known (LB_KNOWN_MEASURED);
  press (lb_measured_section_get_add_button (section));
  assert_int_equal (river ()->profile.n_points, 5);
  type (lb_point_table_get_entry (measured_table (), 5, 0), "10 ft");
  assert_int_equal (river ()->profile.n_points, 5);
  type (lb_point_table_get_entry (measured_table (), 5, 1), "3 mph");
  assert_int_equal (river ()->profile.n_points, 6);
  assert_null (lb_measured_section_get_fault (section));
}

static void
the_law_is_told_and_set (void **state)
{
  GtkDropDown *law = lb_current_section_get_law (current ());
  g_autofree char *words = NULL;

  gtk_drop_down_set_selected (law, 0);
  assert_int_equal (river ()->profile.law, LB_PROFILE_LOG);
  gtk_drop_down_set_selected (law, 2);
  assert_int_equal (river ()->profile.law, LB_PROFILE_UNIFORM);
  words = lb_chart_image_describe (lb_current_section_get_chart (current ()));
  assert_non_null (strstr (words, "Speed curve"));
  lb_session_undo (session ());
  assert_int_equal (gtk_drop_down_get_selected (law), 0);
}

/* ---- Water, presets ---- */

static void
cold_water_is_cautioned (void **state)
{
  lb_session_set_value (session (), lb_field ("river.temperature_c"), 0, 4, 0);
  assert_non_null (lb_river_page_get_caution (page ()));
  lb_session_set_value (session (), lb_field ("river.temperature_c"), 0, 20, 0);
  assert_null (lb_river_page_get_caution (page ()));
}

static void
a_preset_is_one_step (void **state)
{
  GtkWidget *button = lb_river_page_get_presets_button (page ());
  GtkListBox *list = lb_presets_button_get_list (button);
  gsize n;
  const LbRiverPreset *presets = lb_river_presets (&n);
  LbRiver before = *river ();

  gtk_menu_button_popup (GTK_MENU_BUTTON (button));
  harness_pause (50);
  assert_non_null (gtk_list_box_get_row_at_index (list, (int) n - 1));
  assert_null (gtk_list_box_get_row_at_index (list, (int) n));
  g_signal_emit_by_name (list, "row-activated", gtk_list_box_get_row_at_index (list, 1));
  assert_near (river ()->depth, presets[1].depth, 0);
  assert_near (river ()->surface_current, presets[1].surface_current, 0);
  lb_session_undo (session ());
  assert_memory_equal (&before, river (), sizeof before);
}

/* ---- Pictures ---- */
static void
make_bed (void)
{
  static const double x[] = { -25, -12, -4, 6, 18, 30, 44 };
  static const double depth[] = { 5.2, 6.4, 6.1, 4.6, 5.5, 7.2, 6.6 };

  lb_session_do (session (), lb_change_new_bed (x, depth, 7, NULL));
  lb_session_select (session (), LB_PICK_BED_POINT, 3);
}

static void
take (const char *name, double scroll, int scale)
{
  GtkAdjustment *adjustment = lb_river_page_get_adjustment (page ());
  g_autofree guchar *pixels = NULL;
  int width, height;

  harness_solved (window);
  harness_pause (120);
  gtk_adjustment_set_value (adjustment, scroll * gtk_adjustment_get_upper (adjustment));
  harness_pause (250);
  pixels = harness_picture (window, name, scale, &width, &height);
  assert_true (width > 0 && height > 0);
}

/* The column must not grow beyond its share, whatever is shown. */
static void
pictures (void **state)
{
  take ("river-even", 0, 1);
  take ("river-even-low", 1, 1);
  make_bed ();
  take ("river-bed", 0, 1);
  choose_known (LB_KNOWN_MEASURED);
  take ("river-measured", 0.45, 1);
  assert_true (gtk_widget_get_width (GTK_WIDGET (page ())) <= 320);
  choose_known (LB_KNOWN_FLOAT);
  type (lb_float_timer_get_distance (lb_current_section_get_float (current ())), "100 ft");
  type (lb_float_timer_get_time (lb_current_section_get_float (current ())), "1 s");
  type (lb_point_table_get_entry (bed_table (), 2, 0), "900 ft");
  g_object_set (lb_application_get_preferences (harness_application ()), "theme", "dark", NULL);
  take ("river-dark", 0.3, 1);
}

static void
small_picture (void **state)
{
  harness_close (window);
  window = harness_window (960, 600);
  lb_window_show_page (window, "river");
  harness_frame (GTK_WIDGET (window));
  make_bed ();
  take ("river-960", 0, 1);
  take ("river-960-low", 0.5, 1);
  assert_true (gtk_widget_get_width (GTK_WIDGET (page ())) <= 320);
}

static void
large_picture (void **state)
{
  harness_close (window);
  window = harness_window (3840, 2160);
  lb_window_show_page (window, "river");
  harness_frame (GTK_WIDGET (window));
  make_bed ();
  take ("river-4k", 0, 1);
}

#define TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    TEST (the_switch_makes_points_and_remembers_them),
    TEST (points_are_added_moved_and_taken_away),
    TEST (a_point_beyond_its_neighbour_is_explained),
    TEST (a_selected_point_is_marked_and_its_page_shown),
    TEST (a_float_gives_the_surface_current),
    TEST (a_float_too_fast_is_explained),
    TEST (measured_points_start_on_the_curve),
    TEST (measured_speeds_become_shares),
    TEST (measured_points_that_make_no_sense_are_explained),
    TEST (a_new_row_waits_for_its_numbers),
    TEST (the_law_is_told_and_set),
    TEST (cold_water_is_cautioned),
    TEST (a_preset_is_one_step),
    TEST (pictures),
    TEST (small_picture),
    TEST (large_picture),
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
