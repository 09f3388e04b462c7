/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Several windows: each on a rig of its own, none lost on the way out. */
#include "harness.h"

#include <string.h>

/* As window_files.c numbers them. */
#define RESPONSE_DISCARD 1
#define RESPONSE_SAVE 2

static LbWindow *first, *second;

static int
set_up (void **state)
{
  first = harness_window (960, 600);
  second = harness_window (960, 600);
  g_object_add_weak_pointer (G_OBJECT (first), (gpointer *) &first);
  g_object_add_weak_pointer (G_OBJECT (second), (gpointer *) &second);
  return 0;
}

static int
tear_down (void **state)
{
  if (first)
    harness_close (first);
  if (second)
    harness_close (second);
  assert_null (first);
  assert_null (second);
  return 0;
}

static LbDocument *
document (LbWindow *window)
{
  return lb_session_get_document (lb_window_get_session (window));
}

static double
current (LbWindow *window)
{
  return lb_document_get_setup (document (window))->river.surface_current;
}

static void
change (LbWindow *window, double value)
{
  assert_true (lb_session_set_value (lb_window_get_session (window),
                                     lb_field ("river.surface_current_m_s"), 0, value, 0));
}

static GFile *
saved (LbWindow *window, const char *name)
{
  GFile *file = harness_new_file (name);

  assert_true (lb_session_save (lb_window_get_session (window), file, NULL));
  return file;
}

static int
count_windows (void)
{
  return (int) g_list_length (
      gtk_application_get_windows (GTK_APPLICATION (harness_application ())));
}

static gboolean
question_is_there (gpointer data)
{
  return harness_toplevel (GTK_TYPE_MESSAGE_DIALOG) != NULL;
}

static gboolean
is_gone (gpointer window)
{
  return *(LbWindow **) window == NULL;
}

static gboolean
has_message (gpointer window)
{
  return lb_window_get_message (window) != NULL;
}

/* Answers the one question there is; returns the window it was about. */
static LbWindow *
answer (int response)
{
  GtkWidget *question;
  GtkWindow *about;

  harness_wait (question_is_there, NULL, "a question");
  question = harness_toplevel (GTK_TYPE_MESSAGE_DIALOG);
  about = gtk_window_get_transient_for (GTK_WINDOW (question));
  gtk_dialog_response (GTK_DIALOG (question), response);
  harness_pause (20);
  return (LbWindow *) about;
}

static void
quit (void)
{
  g_action_group_activate_action (G_ACTION_GROUP (harness_application ()), "quit", NULL);
  harness_pause (20);
}

static void
open_from_outside (GFile *file)
{
  g_application_open (G_APPLICATION (harness_application ()), &file, 1, "");
  harness_pause (20);
}

/* ---- Tests ---- */

static void
each_window_has_a_rig_and_a_history_of_its_own (void **state)
{
  double before = current (second);

  change (first, 0.9);
  assert_near (current (second), before, 0);
  assert_false (lb_document_get_modified (document (second)));
  change (second, 1.3);
  lb_session_undo (lb_window_get_session (first));
  assert_near (current (first), before, 0);
  assert_near (current (second), 1.3, 0);
  harness_solved (first);
  harness_solved (second);
}

static void
a_file_that_is_open_is_not_opened_again (void **state)
{
  g_autoptr (GFile) file = NULL;
  LbDocument *other = document (second);

  change (first, 0.8);
  file = saved (first, "windows/once.rig");
  change (first, 0.85);
  /* From outside, as a second start of the program does; and from within the other window. */
  open_from_outside (file);
  assert_int_equal (count_windows (), 2);
  lb_window_open_file (second, file);
  assert_ptr_equal (document (second), other);
  assert_near (current (first), 0.85, 0);
  assert_null (harness_toplevel (GTK_TYPE_MESSAGE_DIALOG));
  assert_ptr_equal (lb_window_with_file (GTK_APPLICATION (harness_application ()), file), first);
}

static void
a_file_from_outside_gets_a_window_when_the_one_there_is_in_use (void **state)
{
  g_autoptr (GFile) file = NULL;
  LbWindow *third;

  change (first, 0.8);
  file = saved (first, "windows/third.rig");
  lb_session_open_new (lb_window_get_session (first));
  change (first, 0.7);
  change (second, 0.75);
  open_from_outside (file);
  assert_int_equal (count_windows (), 3);
  third = lb_window_with_file (GTK_APPLICATION (harness_application ()), file);
  assert_true (third != first && third != second);
  assert_near (current (third), 0.8, 0);
  harness_close (third);
}

static void
the_file_of_another_window_is_not_written (void **state)
{
  g_autoptr (GFile) file = NULL;
  g_autoptr (LbDocument) on_disk = NULL;
  GtkWidget *dialog;

  change (first, 0.8);
  file = saved (first, "windows/mine.rig");
  change (second, 1.4);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (second), "win.save-as", NULL));
  harness_pause (100);
  dialog = harness_toplevel (GTK_TYPE_FILE_CHOOSER_DIALOG);
  assert_non_null (dialog);
  assert_true (gtk_file_chooser_set_file (GTK_FILE_CHOOSER (dialog), file, NULL));
  harness_pause (300);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), "mine.rig");
  gtk_dialog_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  /* GTK's own question whether to replace the file. */
  harness_wait (question_is_there, NULL, "the question about the file");
  gtk_dialog_response (GTK_DIALOG (harness_toplevel (GTK_TYPE_MESSAGE_DIALOG)),
                       GTK_RESPONSE_ACCEPT);
  harness_wait (has_message, second, "the message");
  assert_non_null (strstr (lb_window_get_message (second), "another window"));
  assert_true (lb_document_get_modified (document (second)));
  on_disk = lb_document_load (file, NULL);
  assert_near (lb_document_get_setup (on_disk)->river.surface_current, 0.8, 0);
}

static void
quitting_asks_for_one_window_after_the_other (void **state)
{
  LbWindow *asked;

  change (first, 0.8);
  change (second, 0.9);
  quit ();
  asked = answer (RESPONSE_DISCARD);
  assert_true (asked == first || asked == second || !first || !second);
  harness_wait (question_is_there, NULL, "the other question");
  assert_int_equal (count_windows (), 1);
  answer (RESPONSE_DISCARD);
  harness_wait (is_gone, &first, "the first window to go");
  harness_wait (is_gone, &second, "the second window to go");
}

static void
quitting_with_nothing_to_save_asks_nothing (void **state)
{
  quit ();
  harness_wait (is_gone, &first, "the first window to go");
  harness_wait (is_gone, &second, "the second window to go");
  assert_null (harness_toplevel (GTK_TYPE_MESSAGE_DIALOG));
}

/* The window without changes stays, too: the program goes on. */
static void
staying_in_one_window_stops_quitting (void **state)
{
  change (first, 0.8);
  quit ();
  assert_ptr_equal (answer (GTK_RESPONSE_CANCEL), first);
  harness_pause (50);
  assert_non_null (first);
  assert_non_null (second);
  assert_near (current (first), 0.8, 0);
  /* Closing one now is closing one. */
  gtk_window_close (GTK_WINDOW (first));
  answer (RESPONSE_DISCARD);
  harness_wait (is_gone, &first, "the first window to go");
  harness_pause (50);
  assert_non_null (second);
}

static void
quitting_saves_where_told (void **state)
{
  g_autoptr (GFile) file = NULL;
  g_autoptr (LbDocument) on_disk = NULL;

  change (first, 0.8);
  file = saved (first, "windows/on-the-way-out.rig");
  change (first, 0.6);
  quit ();
  answer (RESPONSE_SAVE);
  harness_wait (is_gone, &first, "the first window to go");
  harness_wait (is_gone, &second, "the second window to go");
  on_disk = lb_document_load (file, NULL);
  assert_near (lb_document_get_setup (on_disk)->river.surface_current, 0.6, 0);
}

static void
preferences_hold_for_both (void **state)
{
  g_object_set (lb_application_get_preferences (harness_application ()), "units", "metric", NULL);
  for (int i = 0; i < 2; i++)
    assert_non_null (
        strstr (gtk_editable_get_text (GTK_EDITABLE (lb_slider_get_entry (
                    lb_controls_get_weight (lb_window_get_controls (i ? first : second))))),
                "kg"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (each_window_has_a_rig_and_a_history_of_its_own),
    TEST (a_file_that_is_open_is_not_opened_again),
    TEST (a_file_from_outside_gets_a_window_when_the_one_there_is_in_use),
    TEST (the_file_of_another_window_is_not_written),
    TEST (quitting_asks_for_one_window_after_the_other),
    TEST (quitting_with_nothing_to_save_asks_nothing),
    TEST (staying_in_one_window_stops_quitting),
    TEST (quitting_saves_where_told),
    TEST (preferences_hold_for_both),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
