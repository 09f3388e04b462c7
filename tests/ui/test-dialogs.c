/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The windows beside the main one: preferences, shortcuts, about, and saving under a new name. A
 * warning from GTK ends the test. */
#include "one_window.h"

#include <string.h>

static LbDocument *
document (void)
{
  return lb_session_get_document (lb_window_get_session (window));
}

static void
activate (const char *name)
{
  g_action_group_activate_action (G_ACTION_GROUP (harness_application ()), name, NULL);
}

/* The first widget of that type below `widget`, in the order of the screen, after `skip` others. */
static GtkWidget *
find (GtkWidget *widget, GType type, int *skip)
{
  if (g_type_is_a (G_OBJECT_TYPE (widget), type) && (*skip)-- == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, type, skip);

      if (found)
        return found;
    }
  return NULL;
}

static GtkWidget *
nth (GtkWidget *widget, GType type, int n)
{
  GtkWidget *found = find (widget, type, &n);

  assert_non_null (found);
  return found;
}

static gboolean
there_is_a_window_titled (gpointer title)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) item = g_list_model_get_item (windows, i);

      if (g_strcmp0 (gtk_window_get_title (item), title) == 0)
        return TRUE;
    }
  return FALSE;
}

static GtkWidget *
window_titled (const char *title)
{
  GListModel *windows = gtk_window_get_toplevels ();

  harness_wait (there_is_a_window_titled, (gpointer) title, title);
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) item = g_list_model_get_item (windows, i);

      if (g_strcmp0 (gtk_window_get_title (item), title) == 0)
        return GTK_WIDGET (item);
    }
  return NULL;
}

/* ---- Tests ---- */

static void
preferences_change_what_is_shown (void **state)
{
  LbPreferences *preferences = lb_application_get_preferences (harness_application ());
  GtkWidget *dialog;

  activate ("preferences");
  dialog = window_titled ("Preferences");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (nth (dialog, GTK_TYPE_DROP_DOWN, 0)), 1);
  assert_int_equal (lb_preferences_get_units (preferences), LB_UNITS_METRIC);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (nth (dialog, GTK_TYPE_DROP_DOWN, 1)), 2);
  assert_int_equal (lb_preferences_get_scheme (preferences), LB_SCHEME_DARK);
  gtk_switch_set_active (GTK_SWITCH (nth (dialog, GTK_TYPE_SWITCH, 0)), TRUE);
  assert_true (lb_preferences_get_show_timings (preferences));
  harness_frame (GTK_WIDGET (window));
  gtk_window_close (GTK_WINDOW (dialog));
  harness_pause (50);
}

/* What a label of the preferences says stands for the entry behind it. */
static GtkWidget *
entry_named (GtkWidget *widget, const char *name)
{
  if (GTK_IS_LABEL (widget) && g_strcmp0 (gtk_label_get_text (GTK_LABEL (widget)), name) == 0)
    return gtk_label_get_mnemonic_widget (GTK_LABEL (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = entry_named (child, name);

      if (found)
        return found;
    }
  return NULL;
}

static void
enter (GtkWidget *dialog, const char *name, const char *text)
{
  GtkWidget *entry = entry_named (dialog, name);

  assert_non_null (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static void
the_band_of_a_new_rig_is_kept_in_order (void **state)
{
  LbPreferences *preferences = lb_application_get_preferences (harness_application ());
  GtkWidget *dialog;
  double low, high;

  activate ("preferences");
  dialog = window_titled ("Preferences");
  enter (dialog, "Band of a new rig, from", "20 in");
  lb_preferences_get_band (preferences, &low, &high);
  assert_near (low, 0.1016, 0);
  assert_true (gtk_widget_has_css_class (entry_named (dialog, "Band of a new rig, from"), "error"));

  /* With an upper edge above it the lower one will do, without being typed again. */
  enter (dialog, "to", "1 m");
  lb_preferences_get_band (preferences, &low, &high);
  assert_near (low, 20 * 0.0254, 1e-12);
  assert_near (high, 1, 0);
  assert_false (
      gtk_widget_has_css_class (entry_named (dialog, "Band of a new rig, from"), "error"));
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.new", NULL));
  assert_near (lb_document_get_setup (document ())->band.low, 20 * 0.0254, 1e-12);
  enter (dialog, "to", "25 m");
  lb_preferences_get_band (preferences, &low, &high);
  assert_near (high, 1, 0);
  gtk_window_close (GTK_WINDOW (dialog));
  harness_pause (50);
}

/* The lures of the default rig hang within 4 in of one another, and not at the very same height. */
static void
the_rule_for_level_is_that_of_the_sentence (void **state)
{
  LbSession *session = lb_window_get_session (window);
  LbReadingsPage *page = lb_window_get_readings_page (window);
  const LbReadings *readings;
  GtkWidget *dialog;

  lb_session_set_value (session, lb_field ("river.surface_current_m_s"), 0, 0.8, 0);
  harness_solved (window);
  readings = lb_result_get_readings (lb_session_get_result (session));
  assert_less (0.0064, readings->level_difference);
  assert_less (readings->level_difference, 1);
  activate ("preferences");
  dialog = window_titled ("Preferences");
  enter (dialog, "Lures run level within", "1 m");
  assert_non_null (strstr (lb_readings_page_get_sentence (page), "level within"));
  enter (dialog, "Lures run level within", "0");
  assert_non_null (strstr (lb_readings_page_get_sentence (page), "apart in height"));
  gtk_window_close (GTK_WINDOW (dialog));
  harness_pause (50);
}

static void
a_weight_taken_up_from_the_bed_is_held_at_the_height_that_is_set (void **state)
{
  LbSession *session = lb_window_get_session (window);
  LbLineControl *line = lb_controls_get_line_control (lb_window_get_controls (window));

  g_object_set (lb_session_get_preferences (session), "hold-height", 0.3, NULL);
  lb_session_do (session, lb_change_new_line_out (LB_LINE_OUT_TOUCHING, 0));
  harness_solved (window);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (lb_line_control_get_choice (line)),
                              LB_LINE_OUT_WEIGHT_ABOVE_BED);
  assert_near (lb_document_get_setup (document ())->rig.line_out.value, 0.3, 0);
}

static void
larger_text_is_larger_in_letters_and_drawings (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));
  LbPreferences *preferences = lb_application_get_preferences (harness_application ());
  GtkWidget *label = lb_slider_get_label (lb_controls_get_weight (lb_window_get_controls (window)));
  double font = lb_viewport_get_style (viewport)->font_size[LB_FONT_PLAIN];
  int before, after;

  gtk_widget_measure (label, GTK_ORIENTATION_VERTICAL, -1, NULL, &before, NULL, NULL);
  g_object_set (preferences, "text-size", "largest", NULL);
  harness_pause (100);
  gtk_widget_measure (label, GTK_ORIENTATION_VERTICAL, -1, NULL, &after, NULL, NULL);
  assert_near (after, 1.5 * before, 0.1 * before);
  assert_true (lb_viewport_get_style (viewport)->font_size[LB_FONT_PLAIN] > 1.2 * font);
  g_object_set (preferences, "text-size", "normal", NULL);
  harness_pause (100);
  gtk_widget_measure (label, GTK_ORIENTATION_VERTICAL, -1, NULL, &after, NULL, NULL);
  assert_int_equal (after, before);
}

/* In the readings, the sentence, the entries and the drawing. */
static void
decimals_hold_everywhere_in_the_window (void **state)
{
  LbPreferences *preferences = lb_application_get_preferences (harness_application ());
  LbReadingsPage *page = lb_window_get_readings_page (window);
  LbSession *session = lb_window_get_session (window);
  g_autofree char *angle = NULL;
  g_autofree char *drawn = NULL;

  g_object_set (preferences, "units", "metric", "decimals", 3, NULL);
  lb_session_set_value (session, lb_field ("river.surface_current_m_s"), 0, 1.5, 0);
  harness_solved (window);
  angle = g_strdup_printf ("%.3f\302\260",
                           lb_result_get_readings (lb_session_get_result (session))->wire_angle
                               * 180 / G_PI);
  if (!g_str_has_prefix (lb_readings_page_get_value (page, 0, 1), angle))
    fail_msg ("%s is not %s", lb_readings_page_get_value (page, 0, 1), angle);
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (lb_slider_get_entry (
                           lb_controls_get_current (lb_window_get_controls (window))))),
                       "1.500 m/s");
  drawn = lb_canvas_describe (lb_drawings_get_side_view (lb_window_get_drawings (window)));
  assert_non_null (strstr (drawn, angle));
}

static void
weights_owned_are_the_ticks_of_the_slider (void **state)
{
  LbPreferences *preferences = lb_application_get_preferences (harness_application ());
  GtkWidget *dialog, *entry;
  const double *kg;
  gsize n;

  activate ("preferences");
  dialog = window_titled ("Preferences");
  entry = nth (dialog, GTK_TYPE_ENTRY, 0);
  gtk_editable_set_text (GTK_EDITABLE (entry), "1 lb; 2 lb; heavy");
  g_signal_emit_by_name (entry, "activate");
  assert_true (gtk_widget_has_css_class (entry, "error"));
  kg = lb_preferences_get_weights (preferences, &n);
  assert_int_equal (n, 7);

  gtk_editable_set_text (GTK_EDITABLE (entry), "2 lb; 1 lb");
  g_signal_emit_by_name (entry, "activate");
  assert_false (gtk_widget_has_css_class (entry, "error"));
  kg = lb_preferences_get_weights (preferences, &n);
  assert_int_equal (n, 2);
  assert_near (kg[0], 0.45359237, 1e-9);
  assert_near (kg[1], 2 * 0.45359237, 1e-9);
  gtk_window_close (GTK_WINDOW (dialog));
  harness_pause (50);
}

static void
the_shortcuts_window_opens (void **state)
{
  GtkWidget *shortcuts;

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.show-shortcuts", NULL));
  shortcuts = harness_toplevel (GTK_TYPE_SHORTCUTS_WINDOW);
  assert_non_null (shortcuts);
  harness_frame (shortcuts);
  gtk_window_close (GTK_WINDOW (shortcuts));
  harness_pause (50);
}

static void
the_about_window_opens (void **state)
{
  GtkWidget *about;

  activate ("about");
  about = harness_toplevel (GTK_TYPE_ABOUT_DIALOG);
  assert_non_null (about);
  harness_frame (about);
  gtk_window_close (GTK_WINDOW (about));
  harness_pause (50);
}

static gboolean
message_is_there (gpointer data)
{
  return lb_window_get_message (window) != NULL;
}

static void
help_without_a_viewer_says_so (void **state)
{
  g_autoptr (GAppInfo) viewer = g_app_info_get_default_for_uri_scheme ("help");

  if (viewer)
    skip (); /* it would open */
  activate ("help");
  harness_wait (message_is_there, NULL, "a message about the help");
  assert_non_null (strstr (lb_window_get_message (window), "help"));
}

static gboolean
file_is_there (gpointer file)
{
  return g_file_query_exists (file, NULL);
}

static void
saving_under_a_new_name_makes_it_the_document_s_own (void **state)
{
  /* A folder of its own: GTK's dialog leaks a little for every file that goes while it is open. */
  g_autoptr (GFile) file = harness_new_file ("dialogs/under-a-new-name.rig");
  GtkWidget *dialog;

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.save-as", NULL));
  harness_pause (100);
  dialog = harness_toplevel (GTK_TYPE_FILE_CHOOSER_DIALOG);
  assert_non_null (dialog);
  assert_true (gtk_file_chooser_set_file (GTK_FILE_CHOOSER (dialog), file, NULL));
  harness_pause (300);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), "under-a-new-name");
  gtk_dialog_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  harness_wait (file_is_there, file, "the saved file");
  harness_pause (0);
  assert_non_null (lb_document_get_file (document ()));
  assert_true (g_file_equal (lb_document_get_file (document ()), file));
  assert_null (lb_window_get_message (window));
}

static void
timings_are_shown_when_wanted (void **state)
{
  g_object_set (lb_application_get_preferences (harness_application ()), "show-timings", TRUE,
                NULL);
  for (int i = 0; i < 3; i++)
    {
      lb_session_set_value (lb_window_get_session (window), lb_field ("river.surface_current_m_s"),
                            0, 1.0 + 0.1 * i, 0);
      harness_frame (GTK_WIDGET (window));
      harness_pause (300);
    }
  assert_non_null (strstr (lb_window_get_timings_text (window), "ms"));
}

static void
copying_the_readings_puts_them_on_the_clipboard (void **state)
{
  g_autofree char *text = lb_readings_page_dup_text (lb_window_get_readings_page (window));
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (window));
  g_auto (GValue) value = G_VALUE_INIT;

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.copy-readings", NULL));
  g_value_init (&value, G_TYPE_STRING);
  assert_true (
      gdk_content_provider_get_value (gdk_clipboard_get_content (clipboard), &value, NULL));
  assert_string_equal (g_value_get_string (&value), text);
  assert_non_null (
      strstr (text, lb_readings_page_get_sentence (lb_window_get_readings_page (window))));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (preferences_change_what_is_shown),
    TEST (the_band_of_a_new_rig_is_kept_in_order),
    TEST (the_rule_for_level_is_that_of_the_sentence),
    TEST (a_weight_taken_up_from_the_bed_is_held_at_the_height_that_is_set),
    TEST (larger_text_is_larger_in_letters_and_drawings),
    TEST (decimals_hold_everywhere_in_the_window),
    TEST (weights_owned_are_the_ticks_of_the_slider),
    TEST (the_shortcuts_window_opens),
    TEST (the_about_window_opens),
    TEST (help_without_a_viewer_says_so),
    TEST (saving_under_a_new_name_makes_it_the_document_s_own),
    TEST (timings_are_shown_when_wanted),
    TEST (copying_the_readings_puts_them_on_the_clipboard),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
