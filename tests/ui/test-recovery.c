/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What another program left unsaved is offered in the window. The other program is played by a
 * recovery of its own that lets go of its copies, as one that dies does. */
#include "one_window.h"

#include <glib/gstdio.h>
#include <string.h>

#include "recovery_bar.h"

/* As recovery_bar.c numbers it. */
#define RESPONSE_REMOVE 1

/* A rig with that current, changed and never saved by a program that is gone. */
static void
lose (GFile *file, double value)
{
  g_autoptr (LbRecovery) recovery = lb_recovery_new ();
  g_autoptr (LbDocument) document = file ? lb_document_load (file, NULL) : lb_document_new ();
  g_autoptr (LbHistory) history = lb_history_new (document);

  lb_recovery_watch (recovery, document);
  lb_history_do (history, lb_change_new_value (lb_field ("river.surface_current_m_s"), 0, value));
  lb_recovery_flush (recovery);
}

static double
current (LbWindow *of)
{
  return lb_document_get_setup (lb_session_get_document (lb_window_get_session (of)))
      ->river.surface_current;
}

/* The nth widget of that type below `widget` with that text, or NULL. */
static GtkWidget *
find (GtkWidget *widget, GType type, const char *text, int *skip)
{
  GtkWidget *found = NULL;

  if (g_type_is_a (G_OBJECT_TYPE (widget), type))
    {
      const char *own = GTK_IS_LABEL (widget)    ? gtk_label_get_text (GTK_LABEL (widget))
                        : GTK_IS_BUTTON (widget) ? gtk_button_get_label (GTK_BUTTON (widget))
                                                 : text;

      if (g_strcmp0 (own, text) == 0 && (*skip)-- == 0)
        return widget;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child && !found;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, type, text, skip);
  return found;
}

static GtkWidget *
bar (void)
{
  int skip = 0;

  return find (GTK_WIDGET (window), LB_TYPE_RECOVERY_BAR, NULL, &skip);
}

static void
click (const char *label, int n)
{
  GtkWidget *button = find (bar (), GTK_TYPE_BUTTON, label, &n);

  assert_non_null (button);
  g_signal_emit_by_name (button, "clicked");
  harness_pause (50);
}

static int
count (const char *label)
{
  int n = 0;

  while (n < 50)
    {
      int skip = n;

      if (!find (bar (), GTK_TYPE_BUTTON, label, &skip))
        break;
      n++;
    }
  return n;
}

static void
answer (int response)
{
  GtkWidget *question = harness_toplevel (GTK_TYPE_MESSAGE_DIALOG);

  assert_non_null (question);
  gtk_dialog_response (GTK_DIALOG (question), response);
  harness_pause (50);
}

/* ---- Tests ---- */

static void
nothing_lost_is_said_when_asked_for (void **state)
{
  lb_window_offer_lost (window, FALSE);
  assert_false (gtk_widget_get_visible (bar ()));
  assert_null (lb_window_get_message (window));
  g_action_group_activate_action (G_ACTION_GROUP (harness_application ()), "show-lost", NULL);
  assert_non_null (lb_window_get_message (window));
}

static void
a_lost_rig_is_restored_with_its_file (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("recovery/river.rig");
  LbDocument *document;

  assert_true (lb_session_save (lb_window_get_session (window), file, NULL));
  lb_session_open_new (lb_window_get_session (window));
  lose (file, 0.77);
  lb_window_offer_lost (window, FALSE);
  assert_true (gtk_widget_get_visible (bar ()));
  click ("Restore", 0);
  /* The window was on a new rig that nobody touched: it takes this one. */
  assert_near (current (window), 0.77, 0);
  document = lb_session_get_document (lb_window_get_session (window));
  assert_true (lb_document_get_modified (document));
  assert_true (g_file_equal (lb_document_get_file (document), file));
  assert_false (gtk_widget_get_visible (bar ()));
}

static void
a_window_in_use_keeps_its_rig (void **state)
{
  GtkApplication *application = GTK_APPLICATION (harness_application ());
  LbWindow *other;

  lb_session_set_value (lb_window_get_session (window), lb_field ("river.surface_current_m_s"), 0,
                        1.1, 0);
  lose (NULL, 0.66);
  lb_window_offer_lost (window, FALSE);
  click ("Restore", 0);
  assert_near (current (window), 1.1, 0);
  assert_int_equal (g_list_length (gtk_application_get_windows (application)), 2);
  other = LB_WINDOW (gtk_application_get_windows (application)->data);
  if (other == window)
    other = LB_WINDOW (gtk_application_get_windows (application)->next->data);
  assert_near (current (other), 0.66, 0);
  harness_close (other);
}

static void
what_is_not_wanted_is_removed_after_a_question (void **state)
{
  int width, height;
  g_autofree guchar *pixels = NULL;

  lose (NULL, 0.5);
  lose (NULL, 0.6);
  lb_window_offer_lost (window, FALSE);
  assert_int_equal (count ("Restore"), 2);
  pixels = harness_picture (window, "window-recovery", 1, &width, &height);
  click ("Remove…", 0);
  answer (GTK_RESPONSE_CANCEL);
  assert_int_equal (count ("Restore"), 2);
  click ("Remove…", 0);
  answer (RESPONSE_REMOVE);
  assert_int_equal (count ("Restore"), 1);
  click ("Remove…", 0);
  answer (RESPONSE_REMOVE);
  assert_false (gtk_widget_get_visible (bar ()));
}

/* Closing the window, changes discarded, leaves nothing behind. */
static void
what_is_discarded_is_not_offered (void **state)
{
  LbWindow *other = harness_window (960, 600);

  lb_session_set_value (lb_window_get_session (other), lb_field ("river.surface_current_m_s"), 0,
                        1.2, 0);
  harness_pause (2500);
  harness_close (other);
  lb_window_offer_lost (window, FALSE);
  assert_false (gtk_widget_get_visible (bar ()));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (nothing_lost_is_said_when_asked_for),
    TEST (a_lost_rig_is_restored_with_its_file),
    TEST (a_window_in_use_keeps_its_rig),
    TEST (what_is_not_wanted_is_removed_after_a_question),
    TEST (what_is_discarded_is_not_offered),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
