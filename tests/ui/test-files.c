/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Opening, saving, dragging in, and the question about unsaved changes. */
#include "harness.h"

#include <string.h>

#define RESPONSE_DISCARD 1
#define RESPONSE_SAVE 2

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
  if (window)
    harness_close (window);
  window = NULL;
  return 0;
}

static LbSession *
session (void)
{
  return lb_window_get_session (window);
}

static LbDocument *
document (void)
{
  return lb_session_get_document (session ());
}

static void
change (double current)
{
  assert_true (
      lb_session_set_value (session (), lb_field ("river.surface_current_m_s"), 0, current, 0));
}

static void
answer (int response)
{
  GtkWidget *question = harness_toplevel (GTK_TYPE_MESSAGE_DIALOG);

  assert_non_null (question);
  gtk_dialog_response (GTK_DIALOG (question), response);
  harness_pause (0);
}

/* Hands `file` to the window as if it had been dragged in. */
static gboolean
drop (GFile *file)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (window));
  g_auto (GValue) value = G_VALUE_INIT;
  GSList *list = g_slist_append (NULL, g_object_ref (file));
  gboolean taken = FALSE;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_take_boxed (&value, list);
  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !taken; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_DROP_TARGET (controller))
        g_signal_emit_by_name (controller, "drop", &value, 10.0, 10.0, &taken);
    }
  return taken;
}

/* ---- Tests ---- */

static void
a_rig_saved_and_opened_is_equal (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("saved.rig");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbContents) saved = NULL;

  change (1.37);
  lb_session_do (session (), lb_change_new_title ("Stony Bend, a test"));
  assert_true (lb_session_save (session (), file, &error));
  assert_false (lb_document_get_modified (document ()));
  saved = lb_contents_dup (lb_document_get_contents (document ()));

  lb_session_open_new (session ());
  assert_false (lb_contents_equal (saved, lb_document_get_contents (document ())));
  lb_window_open_file (window, file);
  assert_null (lb_window_get_message (window));
  assert_true (lb_contents_equal (saved, lb_document_get_contents (document ())));
  assert_false (lb_document_get_modified (document ()));
  harness_solved (window);
}

static void
refuse (const char *name, const char *text, const char *expected)
{
  g_autoptr (GFile) file = harness_file_with (name, text);
  LbDocument *before = document ();

  lb_window_open_file (window, file);
  assert_ptr_equal (document (), before);
  assert_non_null (lb_window_get_message (window));
  if (!strstr (lb_window_get_message (window), expected))
    fail_msg ("the message \"%s\" does not say \"%s\"", lb_window_get_message (window), expected);
}

static void
a_bad_file_is_refused_with_its_message (void **state)
{
  LbResult *result;

  harness_solved (window);
  result = lb_session_get_result (session ());
  refuse ("broken.rig", "{ \"format\": \"layback-rig\", ", "broken.rig");
  refuse ("no-json.rig", "not a rig at all", "no-json.rig");
  refuse ("newer.rig", "{ \"format\": \"layback-rig\", \"version\": 99 }", "99");
  refuse ("empty.rig", "", "empty.rig");
  /* The rig on the screen is untouched. */
  assert_ptr_equal (lb_session_get_result (session ()), result);
}

static void
a_missing_file_is_refused_with_its_message (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("not-there.rig");
  LbDocument *before = document ();

  lb_window_open_file (window, file);
  assert_ptr_equal (document (), before);
  assert_non_null (strstr (lb_window_get_message (window), "not-there.rig"));
}

static void
the_message_goes_when_a_good_file_is_opened (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("good.rig");

  assert_true (lb_session_save (session (), file, NULL));
  refuse ("broken.rig", "{", "broken.rig");
  lb_window_open_file (window, file);
  assert_null (lb_window_get_message (window));
}

static void
a_save_that_fails_says_so (void **state)
{
  /* A path below a file: nobody, not even root, can write there. */
  g_autoptr (GFile) plain = harness_file_with ("plain-file", "x");
  g_autoptr (GFile) file = g_file_get_child (plain, "rig.rig");
  g_autoptr (GFile) good = harness_new_file ("here.rig");
  g_autoptr (GError) error = NULL;

  change (1.1);
  assert_false (lb_session_save (session (), file, &error));
  assert_non_null (error);
  assert_true (lb_document_get_modified (document ()));
  assert_true (lb_session_save (session (), good, NULL));
  assert_false (lb_document_get_modified (document ()));
}

static void
a_file_dragged_in_is_opened (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("dragged.rig");

  change (0.77);
  assert_true (lb_session_save (session (), file, NULL));
  lb_session_open_new (session ());
  assert_true (drop (file));
  assert_near (lb_document_get_setup (document ())->river.surface_current, 0.77, 0);
  assert_true (g_file_equal (lb_document_get_file (document ()), file));
}

static void
a_bad_file_dragged_in_leaves_the_rig (void **state)
{
  g_autoptr (GFile) file = harness_file_with ("dragged-bad.rig", "[]");
  LbDocument *before = document ();

  assert_true (drop (file));
  assert_ptr_equal (document (), before);
  assert_non_null (lb_window_get_message (window));
}

static void
the_title_names_the_rig_and_marks_changes (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("Brackle River.rig");

  assert_true (lb_session_save (session (), file, NULL));
  assert_non_null (strstr (gtk_window_get_title (GTK_WINDOW (window)), "Brackle River"));
  assert_null (strstr (gtk_window_get_title (GTK_WINDOW (window)), "•"));
  change (0.9);
  assert_non_null (strstr (gtk_window_get_title (GTK_WINDOW (window)), "•"));
  lb_session_undo (session ());
  assert_null (strstr (gtk_window_get_title (GTK_WINDOW (window)), "•"));
}

static void
an_unchanged_window_closes_at_once (void **state)
{
  LbWindow *gone = window;

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &gone);
  gtk_window_close (GTK_WINDOW (window));
  harness_pause (0);
  assert_null (gone);
  window = NULL;
}

static void
closing_with_changes_asks_and_cancel_stays (void **state)
{
  change (0.9);
  gtk_window_close (GTK_WINDOW (window));
  answer (GTK_RESPONSE_CANCEL);
  assert_null (harness_toplevel (GTK_TYPE_MESSAGE_DIALOG));
  assert_true (gtk_widget_get_visible (GTK_WIDGET (window)));
  assert_near (lb_document_get_setup (document ())->river.surface_current, 0.9, 0);
}

static void
closing_with_changes_discards_when_told (void **state)
{
  LbWindow *gone = window;

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &gone);
  change (0.9);
  gtk_window_close (GTK_WINDOW (window));
  answer (RESPONSE_DISCARD);
  assert_null (gone);
  window = NULL;
}

static void
closing_with_changes_saves_when_told (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("closing.rig");
  g_autoptr (LbDocument) again = NULL;
  LbWindow *gone = window;

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &gone);
  assert_true (lb_session_save (session (), file, NULL));
  change (0.66);
  gtk_window_close (GTK_WINDOW (window));
  answer (RESPONSE_SAVE);
  assert_null (gone);
  window = NULL;
  again = lb_document_load (file, NULL);
  assert_non_null (again);
  assert_near (lb_document_get_setup (again)->river.surface_current, 0.66, 0);
}

static void
opening_over_changes_asks_first (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("other.rig");
  LbDocument *before;

  change (0.5);
  assert_true (lb_session_save (session (), file, NULL));
  change (0.9);
  before = document ();
  lb_window_open_file (window, file);
  assert_ptr_equal (document (), before);
  answer (RESPONSE_DISCARD);
  assert_ptr_not_equal (document (), before);
  assert_near (lb_document_get_setup (document ())->river.surface_current, 0.5, 0);
}

static void
a_new_rig_is_the_default_with_the_band_that_is_set (void **state)
{
  g_object_set (lb_session_get_preferences (session ()), "band-low", 0.2, "band-high", 0.6, NULL);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.new", NULL));
  assert_near (lb_document_get_setup (document ())->band.low, 0.2, 0);
  assert_near (lb_document_get_setup (document ())->band.high, 0.6, 0);
  assert_false (lb_document_get_modified (document ()));
  assert_null (lb_document_get_file (document ()));
}

static GFile *
any_sample (void)
{
  const char *folder = g_getenv ("LAYBACK_SAMPLES_DIR");
  g_autoptr (GDir) dir = folder ? g_dir_open (folder, 0, NULL) : NULL;
  const char *name;

  while (dir && (name = g_dir_read_name (dir)))
    if (g_str_has_suffix (name, ".rig"))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);

        return g_file_new_for_path (path);
      }
  return NULL;
}

static void
a_sample_opens_as_a_rig_without_a_file (void **state)
{
  g_autoptr (GFile) sample = any_sample ();
  g_autofree char *uri = NULL;

  assert_non_null (sample);
  uri = g_file_get_uri (sample);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.open-sample", "s", uri));
  assert_null (lb_window_get_message (window));
  assert_string_not_equal (lb_document_get_title (document ()), "");
  assert_null (lb_document_get_file (document ()));
  assert_false (lb_document_get_modified (document ()));
}

static void
cancelling_the_file_dialog_changes_nothing (void **state)
{
  LbDocument *before = document ();
  GtkWidget *chooser;

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.open", NULL));
  harness_pause (50);
  chooser = harness_toplevel (GTK_TYPE_FILE_CHOOSER_DIALOG);
  assert_non_null (chooser);
  gtk_dialog_response (GTK_DIALOG (chooser), GTK_RESPONSE_CANCEL);
  harness_pause (0);
  assert_ptr_equal (document (), before);
  assert_null (lb_window_get_message (window));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (a_rig_saved_and_opened_is_equal),
    TEST (a_bad_file_is_refused_with_its_message),
    TEST (a_missing_file_is_refused_with_its_message),
    TEST (the_message_goes_when_a_good_file_is_opened),
    TEST (a_save_that_fails_says_so),
    TEST (a_file_dragged_in_is_opened),
    TEST (a_bad_file_dragged_in_leaves_the_rig),
    TEST (the_title_names_the_rig_and_marks_changes),
    TEST (an_unchanged_window_closes_at_once),
    TEST (closing_with_changes_asks_and_cancel_stays),
    TEST (closing_with_changes_discards_when_told),
    TEST (closing_with_changes_saves_when_told),
    TEST (opening_over_changes_asks_first),
    TEST (a_new_rig_is_the_default_with_the_band_that_is_set),
    TEST (a_sample_opens_as_a_rig_without_a_file),
    TEST (cancelling_the_file_dialog_changes_nothing),
#undef TEST
  };

  harness_start ();
  /* The application ends with its last window unless it is held. */
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
