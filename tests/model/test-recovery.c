/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Unsaved work is kept, and found again after a program was killed in the middle of its edits. */
#include "model-support.h"

#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <glib/gstdio.h>

#include "history.h"
#include "reader.h"
#include "recovery.h"

#define NEWEST_MS 2000 /* what is older than this when the program dies must be in the copy */

static char *
recovery_root (void)
{
  return g_build_filename (g_get_user_state_dir (), "layback", "recovery", NULL);
}

static int
set_up (void **state)
{
  g_autofree char *root = recovery_root ();
  g_autofree char *command = g_strdup_printf ("rm -rf '%s'", root);

  assert_non_null (strstr (root, "tests")); /* never the user's own */
  return system (command);
}

static int
count_entries (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  int n = 0;

  while (dir && g_dir_read_name (dir))
    n++;
  return n;
}

/* Folders of programs. */
static int
count_folders (void)
{
  g_autofree char *root = recovery_root ();
  return count_entries (root);
}

static gboolean
stop_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
run_for (guint ms)
{
  gboolean stop = FALSE;

  g_timeout_add (ms, stop_cb, &stop);
  while (!stop)
    g_main_context_iteration (NULL, TRUE);
}

static void
set_depth (LbHistory *history, double depth)
{
  assert_true (lb_history_do (history, lb_change_new_value (lb_field ("river.depth_m"), 0, depth)));
}

static guint
count_lost (LbRecovery *recovery)
{
  g_autoptr (GPtrArray) list = lb_recovery_list_lost (recovery);
  return list->len;
}

static LbLost *
the_lost (LbRecovery *recovery)
{
  g_autoptr (GPtrArray) list = lb_recovery_list_lost (recovery);

  assert_int_equal (list->len, 1);
  return lb_lost_copy (g_ptr_array_index (list, 0));
}

/* A program that ends with an unsaved document of that depth, which has a file at `path` or none.
 */
static void
lose_one (double depth, const char *path)
{
  g_autoptr (LbRecovery) recovery = lb_recovery_new ();
  g_autoptr (LbDocument) document = lb_document_new ();
  g_autoptr (LbHistory) history = lb_history_new (document);
  g_autoptr (GFile) file = path ? g_file_new_for_path (path) : NULL;

  if (file)
    assert_true (lb_history_save (history, file, NULL));
  lb_recovery_watch (recovery, document);
  set_depth (history, depth);
}

/* ---- When there is a copy ---- */

static void
a_copy_is_there_soon_after_an_edit (void **state)
{
  g_autoptr (LbRecovery) recovery = lb_recovery_new ();
  g_autoptr (LbDocument) document = lb_document_new ();
  g_autoptr (LbHistory) history = lb_history_new (document);

  lb_recovery_watch (recovery, document);
  run_for (1500);
  assert_int_equal (count_folders (), 0); /* nothing is unsaved */
  set_depth (history, 3);
  run_for (NEWEST_MS);
  assert_int_equal (count_folders (), 1);
  /* Its owner lives. */
  assert_int_equal (count_lost (recovery), 0);
  {
    g_autoptr (LbRecovery) other = lb_recovery_new ();
    assert_int_equal (count_lost (other), 0);
  }
  assert_int_equal (count_folders (), 1);
  lb_recovery_forget (recovery, document);
}

/* The only copy there is. Free with g_free(); NULL when there is none. */
static char *
find_copy (void)
{
  g_autofree char *root = recovery_root ();
  g_autoptr (GDir) dir = g_dir_open (root, 0, NULL);
  const char *name = dir ? g_dir_read_name (dir) : NULL;
  g_autofree char *folder = name ? g_build_filename (root, name, NULL) : NULL;
  g_autoptr (GDir) inner = folder ? g_dir_open (folder, 0, NULL) : NULL;

  while (inner && (name = g_dir_read_name (inner)))
    if (g_str_has_suffix (name, ".unsaved"))
      return g_build_filename (folder, name, NULL);
  return NULL;
}

/* The depth in the copy, which is whole at every moment; `none` when there is no copy yet. */
static double
depth_in_copy (double none)
{
  g_autofree char *path = find_copy ();
  g_autofree char *text = path ? read_whole (path, NULL) : NULL;
  g_autoptr (LbContents) contents = lb_contents_new ();

  if (text == NULL)
    return none;
  assert_non_null (strchr (text, '\n'));
  assert_true (lb_reader_parse (strchr (text, '\n') + 1, -1, contents, NULL));
  return contents->setup.river.depth;
}

/* As long as edits go on, the copy is never older than it may be. */
static void
the_copy_keeps_up_with_a_drag (void **state)
{
  g_autoptr (LbRecovery) recovery = lb_recovery_new ();
  g_autoptr (LbDocument) document = lb_document_new ();
  g_autoptr (LbHistory) history = lb_history_new (document);
  guint gesture = lb_history_new_gesture (history);
  const int step = 25; /* ms */
  double oldest = 0;

  lb_recovery_watch (recovery, document);
  for (int i = 1; i <= 5000 / step; i++)
    {
      LbChange *change = lb_change_new_value (lb_field ("river.depth_m"), 0, 1 + i * 0.01);
      double age;

      lb_change_set_gesture (change, gesture);
      assert_true (lb_history_do (history, change));
      run_for ((guint) step);
      age = (i - (depth_in_copy (1) - 1) * 100) * step;
      oldest = fmax (oldest, age);
    }
  assert_less (oldest, NEWEST_MS);
  lb_recovery_forget (recovery, document);
}

/* Saved, undone, discarded, or closed: after each there is nothing left to recover. */
static void
what_is_not_unsaved_leaves_nothing (void **state)
{
  g_autofree char *path = output_path ("recovery.rig");
  g_autoptr (GFile) file = g_file_new_for_path (path);

  for (int way = 0; way < 3; way++)
    {
      LbRecovery *recovery = lb_recovery_new ();
      g_autoptr (LbDocument) document = lb_document_new ();
      g_autoptr (LbHistory) history = lb_history_new (document);

      lb_recovery_watch (recovery, document);
      set_depth (history, 3);
      lb_recovery_flush (recovery);
      assert_int_equal (count_folders (), 1);
      if (way == 0)
        assert_true (lb_history_save (history, file, NULL));
      else if (way == 1)
        lb_history_undo (history);
      else
        lb_recovery_forget (recovery, document);
      g_object_unref (recovery);
      assert_int_equal (count_folders (), 0);
    }
  g_unlink (path);
}

static void
an_edit_after_a_save_is_unsaved_again (void **state)
{
  g_autofree char *path = output_path ("recovery.rig");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  LbRecovery *recovery = lb_recovery_new ();
  g_autoptr (LbDocument) document = lb_document_new ();
  g_autoptr (LbHistory) history = lb_history_new (document);
  g_autoptr (LbLost) lost = NULL;

  lb_recovery_watch (recovery, document);
  set_depth (history, 3);
  lb_recovery_flush (recovery);
  assert_true (lb_history_save (history, file, NULL));
  set_depth (history, 4);
  g_clear_object (&recovery);

  recovery = lb_recovery_new ();
  lost = the_lost (recovery);
  assert_true (g_file_equal (lost->file, file));
  assert_true (lb_recovery_remove (recovery, lost, NULL));
  g_object_unref (recovery);
  g_unlink (path);
}

/* ---- Restoring ---- */

static void
what_was_lost_is_restored_with_its_file (void **state)
{
  g_autofree char *path = output_path ("recovery.rig");
  g_autoptr (LbRecovery) recovery = NULL;
  g_autoptr (LbLost) lost = NULL;
  g_autoptr (LbDocument) document = NULL;
  g_autoptr (LbHistory) history = NULL;
  g_autofree char *saved = NULL;

  lose_one (3.25, path);
  recovery = lb_recovery_new ();
  lost = the_lost (recovery);
  assert_string_equal (lost->name, "recovery.rig");
  document = lb_recovery_restore (recovery, lost, NULL);
  assert_non_null (document);
  assert_true (lb_document_get_setup (document)->river.depth == 3.25);
  assert_true (lb_document_get_modified (document));
  assert_string_equal (g_file_peek_path (lb_document_get_file (document)), path);
  assert_int_equal (count_lost (recovery), 0);

  /* Undoing leads nowhere that is saved. */
  history = lb_history_new (document);
  set_depth (history, 4);
  assert_true (lb_history_undo (history));
  assert_true (lb_document_get_modified (document));
  assert_true (lb_history_save (history, lb_document_get_file (document), NULL));
  assert_false (lb_document_get_modified (document));
  lb_recovery_flush (recovery);
  g_clear_object (&recovery);
  assert_int_equal (count_folders (), 0);
  saved = read_whole (path, NULL);
  assert_non_null (strstr (saved, "\"depth_m\": 3.25"));
  g_unlink (path);
}

static void
a_file_changed_after_the_crash_is_not_overwritten (void **state)
{
  g_autofree char *path = output_path ("recovery.rig");
  g_autoptr (LbRecovery) recovery = NULL;
  g_autoptr (LbLost) lost = NULL;
  g_autoptr (LbDocument) document = NULL;
  g_autoptr (GError) error = NULL;

  lose_one (3.25, path);
  assert_true (g_file_set_contents (path, "something else", -1, NULL));
  recovery = lb_recovery_new ();
  lost = the_lost (recovery);
  document = lb_recovery_restore (recovery, lost, NULL);
  assert_false (lb_document_save (document, lb_document_get_file (document), &error));
  assert_int_equal (error->code, LB_FILE_ERROR_CHANGED);
  lb_recovery_forget (recovery, document);
  g_unlink (path);
}

static void
what_is_restored_and_lost_again_is_there_again (void **state)
{
  for (int i = 0; i < 3; i++)
    {
      g_autoptr (LbRecovery) recovery = NULL;
      g_autoptr (LbLost) lost = NULL;
      g_autoptr (LbDocument) document = NULL;

      if (i == 0)
        lose_one (3.25, NULL);
      recovery = lb_recovery_new ();
      lost = the_lost (recovery);
      assert_null (lost->file);
      document = lb_recovery_restore (recovery, lost, NULL);
      assert_true (lb_document_get_setup (document)->river.depth == 3.25);
    }
  assert_int_equal (count_folders (), 1);
}

/* Not now: it is offered again, until it is removed. */
static void
what_is_declined_stays (void **state)
{
  lose_one (3, NULL);
  lose_one (4, NULL);
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (LbRecovery) recovery = lb_recovery_new ();
      g_autoptr (GPtrArray) list = lb_recovery_list_lost (recovery);
      LbLost *first, *second;

      assert_int_equal (list->len, 2);
      first = g_ptr_array_index (list, 0);
      second = g_ptr_array_index (list, 1);
      assert_true (g_date_time_compare (first->time, second->time) >= 0);
      assert_string_equal (first->name, "Untitled rig");
      if (i < 2)
        continue;
      assert_true (lb_recovery_remove (recovery, first, NULL));
      assert_true (lb_recovery_remove (recovery, second, NULL));
      assert_int_equal (count_lost (recovery), 0);
    }
  assert_int_equal (count_folders (), 0);
}

static void
one_copy_is_not_restored_twice (void **state)
{
  g_autoptr (LbRecovery) first = lb_recovery_new (), second = lb_recovery_new ();
  g_autoptr (LbLost) lost = NULL;
  g_autoptr (LbDocument) document = NULL;
  g_autoptr (GError) error = NULL;

  lose_one (3, NULL);
  lost = the_lost (first);
  document = lb_recovery_restore (first, lost, NULL);
  assert_non_null (document);
  assert_null (lb_recovery_restore (second, lost, &error));
  assert_int_equal (error->domain, LB_FILE_ERROR);
  lb_recovery_forget (first, document);
}

static void
a_damaged_copy_is_told_and_left_alone (void **state)
{
  static const char *const texts[] = {
    "",
    "{}",
    "{}\n{}",
    "not json\n{}",
    "{\"format\":\"layback-unsaved\",\"time\":\"now\"}\n{}",
    "{\"format\":\"layback-unsaved\",\"time\":\"2026-04-01T10:00:00Z\"}\n{\"format\": 3}",
  };
  g_autofree char *root = recovery_root ();
  g_autofree char *folder = g_build_filename (root, "dead", NULL);
  g_autofree char *path = g_build_filename (folder, "one.unsaved", NULL);
  g_autoptr (LbRecovery) recovery = lb_recovery_new ();

  for (size_t i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (LbLost) lost = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *found = NULL;

      g_mkdir_with_parents (folder, 0700);
      assert_true (g_file_set_contents (path, texts[i], -1, NULL));
      lost = the_lost (recovery);
      assert_string_equal (lost->name, "Damaged copy");
      assert_null (lb_recovery_restore (recovery, lost, &error));
      assert_int_equal (error->domain, LB_FILE_ERROR);
      assert_null (strchr (error->message, '\n'));
      found = read_whole (path, NULL);
      assert_string_equal (found, texts[i]);
      assert_true (lb_recovery_remove (recovery, lost, NULL));
    }
  assert_int_equal (count_folders (), 0);
}

/* ---- Killed ---- */

typedef struct
{
  int edit;    /* its number, from 1 */
  gint64 time; /* us, monotonic: when it was made */
} Report;

typedef struct
{
  LbHistory *history;
  guint gesture; /* 0: each edit is a step of its own */
  int report;    /* file descriptor */
  int n;
} Editor;

/* One edit of a row: the depth and the title tell which. */
static gboolean
edit_cb (gpointer data)
{
  Editor *editor = data;
  g_autofree char *title = NULL;
  LbChange *change;
  Report report = { ++editor->n, g_get_monotonic_time () };

  title = g_strdup_printf ("%d", editor->n);
  change = lb_change_new_value (lb_field ("river.depth_m"), 0, 1 + editor->n * 1e-3);
  lb_change_set_gesture (change, editor->gesture);
  if (!lb_history_do (editor->history, change)
      || (editor->gesture == 0 && !lb_history_do (editor->history, lb_change_new_title (title)))
      || write (editor->report, &report, sizeof report) != sizeof report)
    _exit (1);
  return G_SOURCE_CONTINUE;
}

/* A program that edits until it is killed. What it starts lives on for a while and must not keep
 * its copies from being found. */
static void
edit_for_ever (int report, gboolean drag, const char *path)
{
  LbRecovery *recovery = lb_recovery_new ();
  g_autoptr (GFile) file = g_file_new_for_path (path);
  LbDocument *document = lb_document_load (file, NULL);
  Editor editor = { lb_history_new (document), 0, report, 0 };
  char *helper[] = { (char *) "sleep", (char *) "3", NULL };

  /* The helper shall keep its hands off this at least, or the reader would wait for it. */
  if (fcntl (report, F_SETFD, FD_CLOEXEC) != 0)
    _exit (1);
  if (drag)
    editor.gesture = lb_history_new_gesture (editor.history);
  lb_recovery_watch (recovery, document);
  g_timeout_add (7, edit_cb, &editor);
  for (int i = 0;; i++)
    {
      g_main_context_iteration (NULL, TRUE);
      /* Once there is a lock that it could inherit. */
      if (i == 250)
        g_spawn_async (NULL, helper, NULL,
                       G_SPAWN_SEARCH_PATH | G_SPAWN_LEAVE_DESCRIPTORS_OPEN
                           | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                       NULL, NULL, NULL, NULL);
    }
}

/* This program anew, as another one: see main(). It writes its reports to `report`. */
static pid_t
start (const char *role, int report, const char *path)
{
  g_autofree char *descriptor = g_strdup_printf ("%d", report);
  pid_t child = fork ();

  assert_true (child >= 0);
  if (child == 0)
    {
      if (g_str_equal (role, "no-folder"))
        g_setenv ("XDG_STATE_HOME", path, TRUE);
      execl ("/proc/self/exe", "test-recovery", role, descriptor, path, NULL);
      _exit (127);
    }
  return child;
}

/* Lets a child edit for `seconds` and kills it; returns what it had reported by then, the newest
 * last. (element-type Report) */
static GArray *
kill_an_editor (double seconds, gboolean drag, const char *path)
{
  GArray *reports = g_array_new (FALSE, FALSE, sizeof (Report));
  gint64 end = g_get_monotonic_time () + (gint64) (seconds * 1e6);
  Report report;
  int ends[2], status;
  pid_t child;

  assert_int_equal (pipe (ends), 0);
  assert_int_equal (fcntl (ends[0], F_SETFD, FD_CLOEXEC), 0);
  child = start (drag ? "drag" : "edits", ends[1], path);
  close (ends[1]);
  while (g_get_monotonic_time () < end && read (ends[0], &report, sizeof report) == sizeof report)
    g_array_append_val (reports, report);
  assert_int_equal (kill (child, SIGKILL), 0);
  assert_int_equal (waitpid (child, &status, 0), child);
  assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);
  while (read (ends[0], &report, sizeof report) == sizeof report)
    g_array_append_val (reports, report);
  close (ends[0]);
  assert_true (reports->len > 10);
  return reports;
}

static void
assert_recovered (LbDocument *document, GArray *reports, gboolean drag)
{
  const Report *last = &g_array_index (reports, Report, reports->len - 1);
  int edit = (int) lround ((lb_document_get_setup (document)->river.depth - 1) * 1e3);
  int title = atoi (lb_document_get_title (document));

  /* A state that was there at one time: an edit and the title before or after it. */
  assert_true (edit >= 1 && edit <= last->edit + 1);
  assert_true (lb_document_get_setup (document)->river.depth == 1 + edit * 1e-3);
  if (!drag)
    assert_true (title == edit || title == edit - 1);
  if (edit > last->edit)
    return;
  assert_less ((double) (last->time - g_array_index (reports, Report, edit - 1).time) / 1000,
               NEWEST_MS);
}

static void
kill_and_recover (double seconds, gboolean drag)
{
  g_autofree char *path = output_path ("recovery.rig");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (LbDocument) first = lb_document_new ();
  g_autoptr (LbRecovery) recovery = NULL;
  g_autoptr (GArray) reports = NULL;
  g_autoptr (LbLost) lost = NULL;
  g_autoptr (LbDocument) document = NULL;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  assert_true (lb_document_save (first, file, NULL));
  before = read_whole (path, NULL);
  reports = kill_an_editor (seconds, drag, path);
  after = read_whole (path, NULL);
  assert_string_equal (after, before);

  recovery = lb_recovery_new ();
  lost = the_lost (recovery);
  assert_true (g_file_equal (lost->file, file));
  document = lb_recovery_restore (recovery, lost, NULL);
  assert_non_null (document);
  assert_recovered (document, reports, drag);
  lb_recovery_forget (recovery, document);
  g_clear_object (&recovery);
  assert_int_equal (count_folders (), 0);
  g_unlink (path);
}

static void
a_program_killed_in_a_row_of_edits_loses_little (void **state)
{
  TestRandom random = { 4711 };

  for (size_t i = 0; i < test_count (6); i++)
    kill_and_recover (test_random (&random, 2, 4), FALSE);
}

static void
a_program_killed_in_a_drag_loses_little (void **state)
{
  kill_and_recover (3.3, TRUE);
}

/* ---- No room ---- */

static void
count_fault_cb (LbRecovery *recovery, const char *message, int *n)
{
  if (strstr (message, "No copy of unsaved work can be kept: ") && !strchr (message, '\n'))
    (*n)++;
}

/* A program that cannot write its copies; ends with 0 when that was told once, and its work goes
 * on. */
static void
edit_in_vain (gboolean full_disk)
{
  LbRecovery *recovery = lb_recovery_new ();
  LbDocument *document = lb_document_new ();
  LbHistory *history = lb_history_new (document);
  struct rlimit limit = { 512, 512 };
  int n_faults = 0;

  g_signal_connect (recovery, "failed", G_CALLBACK (count_fault_cb), &n_faults);
  signal (SIGXFSZ, SIG_IGN);
  if (full_disk && setrlimit (RLIMIT_FSIZE, &limit) != 0)
    _exit (1);
  lb_recovery_watch (recovery, document);
  for (int i = 0; i < 2; i++)
    {
      lb_history_do (history, lb_change_new_value (lb_field ("river.depth_m"), 0, 3 + i));
      lb_recovery_flush (recovery);
      while (g_main_context_iteration (NULL, FALSE))
        ;
    }
  _exit (n_faults == 1 && lb_document_get_modified (document) ? 0 : 2);
}

static void
assert_told_once (const char *role, const char *path)
{
  pid_t child = start (role, 0, path);
  int status;

  assert_int_equal (waitpid (child, &status, 0), child);
  assert_true (WIFEXITED (status));
  assert_int_equal (WEXITSTATUS (status), 0);
}

static void
a_full_disk_is_told_once (void **state)
{
  assert_told_once ("full-disk", "");
}

/* A plain file is where the folder should be. */
static void
no_folder_for_copies_is_told_once (void **state)
{
  g_autofree char *path = output_path ("recovery-no-folder");

  assert_true (g_file_set_contents (path, "", -1, NULL));
  assert_told_once ("no-folder", path);
  g_unlink (path);
}

int
main (int argc, char **argv)
{
#define afresh(test) cmocka_unit_test_setup (test, set_up)
  const struct CMUnitTest tests[] = {
    afresh (a_copy_is_there_soon_after_an_edit),
    afresh (the_copy_keeps_up_with_a_drag),
    afresh (what_is_not_unsaved_leaves_nothing),
    afresh (an_edit_after_a_save_is_unsaved_again),
    afresh (what_was_lost_is_restored_with_its_file),
    afresh (a_file_changed_after_the_crash_is_not_overwritten),
    afresh (what_is_restored_and_lost_again_is_there_again),
    afresh (what_is_declined_stays),
    afresh (one_copy_is_not_restored_twice),
    afresh (a_damaged_copy_is_told_and_left_alone),
    afresh (a_program_killed_in_a_row_of_edits_loses_little),
    afresh (a_program_killed_in_a_drag_loses_little),
    afresh (a_full_disk_is_told_once),
    afresh (no_folder_for_copies_is_told_once),
  };

  if (argc == 4 && (g_str_equal (argv[1], "full-disk") || g_str_equal (argv[1], "no-folder")))
    edit_in_vain (g_str_equal (argv[1], "full-disk"));
  else if (argc == 4)
    edit_for_ever (atoi (argv[2]), g_str_equal (argv[1], "drag"), argv[3]);
  return cmocka_run_group_tests (tests, NULL, NULL);
}
