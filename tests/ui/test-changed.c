/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Another program writes to the file of an open rig, or takes it away; saving that cannot be. */
#include "harness.h"

#include <glib/gstdio.h>
#include <string.h>

/* As window_files.c and window_changed.c number them. */
#define RESPONSE_DISCARD 1
#define RESPONSE_RELOAD 1
#define RESPONSE_KEEP 2
#define RESPONSE_REPLACE 3

static LbWindow *window;
static GFile *file;

static int
set_up (void **state)
{
  window = harness_window (1280, 800);
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  file = harness_new_file ("changed/river.rig");
  assert_true (lb_session_save (lb_window_get_session (window), file, NULL));
  return 0;
}

static int
tear_down (void **state)
{
  if (window)
    harness_close (window);
  g_clear_object (&file);
  return 0;
}

static LbDocument *
document (void)
{
  return lb_session_get_document (lb_window_get_session (window));
}

static double
current (LbDocument *of)
{
  return lb_document_get_setup (of)->river.surface_current;
}

static void
change (double value)
{
  assert_true (lb_session_set_value (lb_window_get_session (window),
                                     lb_field ("river.surface_current_m_s"), 0, value, 0));
}

/* As another program does: a document of its own, and the file replaced. */
static void
write_from_outside (double value)
{
  g_autoptr (LbDocument) other = lb_document_load (file, NULL);
  g_autoptr (LbHistory) history = NULL;

  assert_non_null (other);
  history = lb_history_new (other);
  lb_history_do (history, lb_change_new_value (lb_field ("river.surface_current_m_s"), 0, value));
  assert_true (lb_history_save (history, file, NULL));
}

static double
on_disk (void)
{
  g_autoptr (LbDocument) document = lb_document_load (file, NULL);

  assert_non_null (document);
  return current (document);
}

/* The bar whose words contain `text`, or NULL while there is none. */
static GtkWidget *
find_bar (GtkWidget *widget, const char *text)
{
  GtkWidget *found = NULL;

  if (!gtk_widget_get_visible (widget))
    return NULL;
  if (GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text))
    return gtk_widget_get_ancestor (widget, GTK_TYPE_INFO_BAR);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child && !found;
       child = gtk_widget_get_next_sibling (child))
    found = find_bar (child, text);
  return found;
}

static gboolean
bar_is_there (gpointer text)
{
  return find_bar (GTK_WIDGET (window), text) != NULL;
}

static gboolean
bar_is_gone (gpointer text)
{
  return !bar_is_there (text);
}

static void
answer_bar (const char *text, int response)
{
  harness_wait (bar_is_there, (gpointer) text, text);
  gtk_info_bar_response (GTK_INFO_BAR (find_bar (GTK_WIDGET (window), text)), response);
  harness_pause (20);
}

static gboolean
question_is_there (gpointer data)
{
  return harness_toplevel (GTK_TYPE_MESSAGE_DIALOG) != NULL;
}

static void
answer (int response)
{
  harness_wait (question_is_there, NULL, "a question");
  gtk_dialog_response (GTK_DIALOG (harness_toplevel (GTK_TYPE_MESSAGE_DIALOG)), response);
  harness_pause (20);
}

static void
activate (const char *name)
{
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), name, NULL));
  harness_pause (20);
}

/* ---- Tests ---- */

static void
a_changed_file_is_told_and_reloaded (void **state)
{
  int width, height;
  g_autofree guchar *pixels = NULL;

  write_from_outside (0.55);
  harness_wait (bar_is_there, (gpointer) "Another program changed", "the bar");
  pixels = harness_picture (window, "window-changed-file", 1, &width, &height);
  answer_bar ("Another program changed", RESPONSE_RELOAD);
  assert_near (current (document ()), 0.55, 0);
  assert_true (bar_is_gone ((gpointer) "Another program changed"));
  assert_false (lb_document_get_modified (document ()));
  /* The reloaded one is looked after in turn. */
  write_from_outside (0.65);
  answer_bar ("Another program changed", RESPONSE_RELOAD);
  assert_near (current (document ()), 0.65, 0);
}

static void
reloading_over_changes_asks_first (void **state)
{
  change (1.7);
  write_from_outside (0.55);
  answer_bar ("changes of your own", RESPONSE_RELOAD);
  answer (GTK_RESPONSE_CANCEL);
  assert_near (current (document ()), 1.7, 0);
  answer_bar ("changes of your own", RESPONSE_RELOAD);
  answer (RESPONSE_RELOAD);
  assert_near (current (document ()), 0.55, 0);
}

static void
saving_over_a_changed_file_asks_first (void **state)
{
  change (1.7);
  write_from_outside (0.55);
  activate ("win.save");
  answer (GTK_RESPONSE_CANCEL);
  assert_near (on_disk (), 0.55, 0);
  assert_true (lb_document_get_modified (document ()));
  activate ("win.save");
  answer (RESPONSE_REPLACE);
  assert_near (on_disk (), 1.7, 0);
  assert_false (lb_document_get_modified (document ()));
  harness_wait (bar_is_gone, (gpointer) "Another program changed", "the bar to go");
}

/* What is kept is nowhere else: closing asks, though nothing was edited. */
static void
what_is_kept_is_not_lost_by_closing (void **state)
{
  write_from_outside (0.55);
  answer_bar ("Another program changed", RESPONSE_KEEP);
  assert_true (bar_is_gone ((gpointer) "Another program changed"));
  gtk_window_close (GTK_WINDOW (window));
  answer (GTK_RESPONSE_CANCEL);
  assert_non_null (window);
  gtk_window_close (GTK_WINDOW (window));
  answer (RESPONSE_DISCARD);
  assert_null (window);
  assert_near (on_disk (), 0.55, 0);
}

static void
a_file_that_is_gone_is_written_again (void **state)
{
  double before = current (document ());

  assert_true (g_file_delete (file, NULL, NULL));
  harness_wait (bar_is_there, (gpointer) "is gone", "the bar");
  assert_true (lb_window_has_unsaved (window));
  activate ("win.save");
  assert_null (harness_toplevel (GTK_TYPE_MESSAGE_DIALOG));
  assert_near (on_disk (), before, 0);
  harness_wait (bar_is_gone, (gpointer) "is gone", "the bar to go");
}

/* The folder of the file is taken away: nobody, not even root, can write there. */
static void
a_save_that_cannot_be_is_told_and_loses_nothing (void **state)
{
  g_autoptr (GFile) folder = harness_new_file ("changed/folder");
  g_autoptr (GFile) below = g_file_get_child (folder, "river.rig");
  g_autofree char *path = g_file_get_path (folder);

  assert_true (g_file_make_directory (folder, NULL, NULL));
  assert_true (lb_session_save (lb_window_get_session (window), below, NULL));
  change (1.6);
  assert_true (g_file_delete (below, NULL, NULL));
  assert_int_equal (g_rmdir (path), 0);
  assert_true (g_file_set_contents (path, "a plain file", -1, NULL));
  activate ("win.save");
  harness_pause (50);
  assert_non_null (lb_window_get_message (window));
  assert_null (strchr (lb_window_get_message (window), '\n'));
  assert_true (lb_document_get_modified (document ()));
  assert_near (current (document ()), 1.6, 0);
  assert_int_equal (g_unlink (path), 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (a_changed_file_is_told_and_reloaded),
    TEST (reloading_over_changes_asks_first),
    TEST (saving_over_a_changed_file_asks_first),
    TEST (what_is_kept_is_not_lost_by_closing),
    TEST (a_file_that_is_gone_is_written_again),
    TEST (a_save_that_cannot_be_is_told_and_loses_nothing),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
