/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The windows beside the main one: preferences, shortcuts, about, and saving under a new name. A
 * warning from GTK ends the test. */
#include "harness.h"

#include <string.h>

static LbWindow *window;

static int
set_up (void **state)
{
  window = harness_window (1280, 800);
  return 0;
}

static int
tear_down (void **state)
{
  harness_close (window);
  return 0;
}

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

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.show-help-overlay", NULL));
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
