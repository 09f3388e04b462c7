/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Saving never loses anything: not what another program wrote, not the old file when the disk is
 * full or the folder cannot be written to, not what is unsaved. */
#define _GNU_SOURCE /* setresuid() */
#include "model-support.h"

#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>
#include <glib/gstdio.h>

#include "document-fixture.h"
#include "reader.h"

#define NOBODY 65534

typedef struct
{
  char *folder; /* of this test alone */
  char *path;
  GFile *file;
  LbDocument *document; /* read from the file */
  LbHistory *history;
  int n_told; /* notifications of "file-changed" */
} Desk;

static void
count_cb (Desk *desk)
{
  desk->n_told++;
}

static int
set_up (void **state)
{
  Desk *desk = g_new0 (Desk, 1);
  g_autoptr (LbDocument) first = lb_document_new ();

  /* Not in the build folder: that may lie in a home which only its owner may enter. */
  desk->folder = g_dir_make_tmp (NULL, NULL);
  assert_non_null (desk->folder);
  desk->path = g_build_filename (desk->folder, "own.rig", NULL);
  desk->file = g_file_new_for_path (desk->path);
  assert_true (lb_document_save (first, desk->file, NULL));
  desk->document = lb_document_load (desk->file, NULL);
  assert_non_null (desk->document);
  desk->history = lb_history_new (desk->document);
  g_signal_connect_swapped (desk->document, "notify::file-changed", G_CALLBACK (count_cb), desk);
  *state = desk;
  return 0;
}

static int
tear_down (void **state)
{
  Desk *desk = *state;
  g_autofree char *command = g_strdup_printf ("rm -r '%s'", desk->folder);

  g_signal_handlers_disconnect_by_data (desk->document, desk);
  g_object_unref (desk->history);
  g_assert_finalize_object (desk->document);
  g_object_unref (desk->file);
  g_chmod (desk->folder, 0700);
  assert_int_equal (system (command), 0);
  g_free (desk->path);
  g_free (desk->folder);
  g_free (desk);
  return 0;
}

static void
edit (Desk *desk, double depth)
{
  assert_true (
      lb_history_do (desk->history, lb_change_new_value (lb_field ("river.depth_m"), 0, depth)));
}

/* What another program does. */
static void
write_elsewhere (const char *path, const char *text)
{
  assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
assert_file_is (const char *path, const char *text)
{
  g_autofree char *found = read_whole (path, NULL);
  assert_string_equal (found, text);
}

static double
depth_in (GFile *file)
{
  g_autoptr (LbContents) contents = lb_contents_new ();

  assert_true (lb_reader_load (file, contents, NULL));
  return contents->setup.river.depth;
}

static int
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  int n = 0;

  assert_non_null (dir);
  while (g_dir_read_name (dir))
    n++;
  return n;
}

static void
assert_one_clear_line (const GError *error, int code)
{
  assert_non_null (error);
  assert_int_equal (error->domain, LB_FILE_ERROR);
  assert_int_equal (error->code, code);
  assert_null (strchr (error->message, '\n'));
  assert_non_null (strstr (error->message, "own.rig: not written: "));
}

/* ---- Another program ---- */

static void
what_another_program_wrote_is_not_overwritten (void **state)
{
  Desk *desk = *state;
  g_autoptr (GError) error = NULL;

  edit (desk, 3);
  write_elsewhere (desk->path, "something else");
  assert_false (lb_history_save (desk->history, desk->file, &error));
  assert_one_clear_line (error, LB_FILE_ERROR_CHANGED);
  assert_non_null (strstr (error->message, "changed"));
  assert_file_is (desk->path, "something else");
  assert_true (lb_document_get_modified (desk->document));
  assert_true (lb_document_get_file_changed (desk->document));
  assert_int_equal (lb_document_get_file_state (desk->document), LB_FILE_CHANGED);
  assert_int_equal (desk->n_told, 1);

  assert_true (lb_history_save_over (desk->history, desk->file, NULL));
  assert_true (depth_in (desk->file) == 3);
  assert_false (lb_document_get_modified (desk->document));
  assert_false (lb_document_get_file_changed (desk->document));
  assert_int_equal (desk->n_told, 2);
}

static void
a_file_removed_meanwhile_is_asked_about (void **state)
{
  Desk *desk = *state;
  g_autoptr (GError) error = NULL;

  edit (desk, 3);
  assert_int_equal (g_unlink (desk->path), 0);
  assert_false (lb_history_save (desk->history, desk->file, &error));
  assert_one_clear_line (error, LB_FILE_ERROR_CHANGED);
  assert_non_null (strstr (error->message, "removed"));
  assert_false (g_file_query_exists (desk->file, NULL));
  assert_int_equal (lb_document_get_file_state (desk->document), LB_FILE_REMOVED);
  assert_true (lb_history_save_over (desk->history, desk->file, NULL));
  assert_true (depth_in (desk->file) == 3);
}

static void
a_file_written_again_as_it_was_is_no_matter (void **state)
{
  Desk *desk = *state;
  g_autofree char *text = read_whole (desk->path, NULL);

  edit (desk, 3);
  write_elsewhere (desk->path, "something else");
  assert_int_equal (lb_document_check_file (desk->document), LB_FILE_CHANGED);
  write_elsewhere (desk->path, text);
  assert_int_equal (lb_document_check_file (desk->document), LB_FILE_SAME);
  assert_true (lb_history_save (desk->history, desk->file, NULL));
  edit (desk, 4);
  assert_true (lb_history_save (desk->history, desk->file, NULL));
  assert_true (depth_in (desk->file) == 4);
}

static void
another_name_is_no_matter (void **state)
{
  Desk *desk = *state;
  g_autofree char *path = g_build_filename (desk->folder, "other.rig", NULL);
  g_autoptr (GFile) other = g_file_new_for_path (path);

  write_elsewhere (desk->path, "something else");
  write_elsewhere (path, "what the file dialog asked about");
  assert_true (lb_history_save (desk->history, other, NULL));
  assert_file_is (desk->path, "something else");
  edit (desk, 3);
  assert_true (lb_history_save (desk->history, other, NULL));
  write_elsewhere (path, "changed");
  assert_false (lb_history_save (desk->history, other, NULL));
}

/* ---- Told by the system ---- */

static gboolean
too_late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Runs the main loop until `n` notices have come; returns whether they came in time. */
static gboolean
wait_for (Desk *desk, int n, guint longest_ms)
{
  gboolean late = FALSE;
  guint timeout = g_timeout_add (longest_ms, too_late_cb, &late);

  while (desk->n_told < n && !late)
    g_main_context_iteration (NULL, TRUE);
  if (!late)
    g_source_remove (timeout);
  return !late;
}

static void
the_system_tells_of_changes_but_not_of_our_own (void **state)
{
  Desk *desk = *state;

  lb_document_watch_file (desk->document);
  edit (desk, 3);
  assert_true (lb_history_save (desk->history, desk->file, NULL));
  assert_false (wait_for (desk, 1, 700));
  write_elsewhere (desk->path, "something else");
  assert_true (wait_for (desk, 1, 10000));
  assert_int_equal (lb_document_get_file_state (desk->document), LB_FILE_CHANGED);
  write_elsewhere (desk->path, "and something else again");
  assert_true (wait_for (desk, 2, 10000));
  assert_int_equal (g_unlink (desk->path), 0);
  assert_true (wait_for (desk, 3, 10000));
  assert_int_equal (lb_document_get_file_state (desk->document), LB_FILE_REMOVED);
}

static void
a_new_name_is_watched_from_then_on (void **state)
{
  Desk *desk = *state;
  g_autofree char *path = g_build_filename (desk->folder, "other.rig", NULL);
  g_autoptr (GFile) other = g_file_new_for_path (path);

  lb_document_watch_file (desk->document);
  assert_true (lb_history_save (desk->history, other, NULL));
  write_elsewhere (desk->path, "no longer ours");
  assert_false (wait_for (desk, 1, 700));
  write_elsewhere (path, "something else");
  assert_true (wait_for (desk, 1, 10000));
}

/* ---- Links ---- */

static void
links_are_followed (void **state)
{
  Desk *desk = *state;
  g_autofree char *link = g_build_filename (desk->folder, "link.rig", NULL);
  g_autofree char *far = g_build_filename (desk->folder, "far.rig", NULL);
  g_autofree char *dangling = g_build_filename (desk->folder, "dangling.rig", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (link);
  g_autoptr (GFile) new_file = g_file_new_for_path (dangling);
  g_autoptr (LbDocument) document = NULL;

  assert_int_equal (symlink ("own.rig", link), 0);
  assert_int_equal (symlink ("far.rig", dangling), 0);
  document = lb_document_load (file, NULL);
  assert_true (lb_document_save (document, file, NULL));
  assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_true (lb_document_save (document, new_file, NULL));
  assert_true (g_file_test (dangling, G_FILE_TEST_IS_SYMLINK));
  assert_true (g_file_test (far, G_FILE_TEST_IS_REGULAR));
  write_elsewhere (far, "something else");
  assert_false (lb_document_save (document, new_file, NULL));
}

static void
what_a_link_leads_to_is_watched (void **state)
{
  Desk *desk = *state;
  g_autofree char *link = g_build_filename (desk->folder, "link.rig", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (link);

  assert_int_equal (symlink ("own.rig", link), 0);
  assert_true (lb_history_save (desk->history, file, NULL));
  lb_document_watch_file (desk->document);
  write_elsewhere (desk->path, "something else");
  assert_true (wait_for (desk, 1, 10000));
}

/* ---- No room, no right ---- */

/* Runs `body` in a process of its own; its checks end that one, and this test with it. */
static void
in_a_child (void (*body) (Desk *desk), Desk *desk)
{
  pid_t child = fork ();
  int status;

  assert_true (child >= 0);
  if (child == 0)
    {
      body (desk);
      _exit (0);
    }
  assert_int_equal (waitpid (child, &status, 0), child);
  if (!WIFEXITED (status) || WEXITSTATUS (status) != 0)
    fail_msg ("the child ended with status %#x", (unsigned int) status);
}

static void
check (bool fine, const char *what)
{
  if (fine)
    return;
  fprintf (stderr, "%s\n", what);
  _exit (1);
}

/* The child saves, which must fail with `reason` in its one line and leave the document modified.
 */
static void
save_in_vain (Desk *desk, GFile *file, const char *reason)
{
  GError *error = NULL;

  check (!lb_history_save (desk->history, file, &error), "it was saved");
  check (error && error->domain == LB_FILE_ERROR && error->code == LB_FILE_ERROR_WRITE,
         "another error");
  check (strchr (error->message, '\n') == NULL, "more than one line");
  check (strstr (error->message, "own.rig: not written: ") != NULL, error->message);
  check (strstr (error->message, reason) != NULL, error->message);
  check (lb_document_get_modified (desk->document), "the document counts as saved");
}

static void
save_on_a_full_disk (Desk *desk)
{
  struct rlimit limit = { 8192, 8192 };

  signal (SIGXFSZ, SIG_IGN);
  check (setrlimit (RLIMIT_FSIZE, &limit) == 0, "no limit");
  save_in_vain (desk, desk->file, "File too large");
}

static void
a_full_disk_leaves_the_old_file (void **state)
{
  Desk *desk = *state;
  g_autofree char *notes = g_strnfill (LB_NOTES_LONGEST, 'n');
  g_autofree char *before = read_whole (desk->path, NULL);

  assert_true (lb_history_do (desk->history, lb_change_new_notes (notes)));
  in_a_child (save_on_a_full_disk, desk);
  assert_file_is (desk->path, before);
  assert_int_equal (count_files (desk->folder), 1);
}

/* A superuser may write anywhere. */
static void
become_nobody (void)
{
  if (geteuid () == 0)
    check (setresgid (NOBODY, NOBODY, NOBODY) == 0 && setresuid (NOBODY, NOBODY, NOBODY) == 0,
           "still the superuser");
}

static void
save_into_a_closed_folder (Desk *desk)
{
  become_nobody ();
  save_in_vain (desk, desk->file, "you may not write into this folder");
}

static void
save_over_a_protected_file (Desk *desk)
{
  become_nobody ();
  save_in_vain (desk, desk->file, "this file is write-protected");
}

static void
a_read_only_folder_leaves_the_old_file (void **state)
{
  Desk *desk = *state;
  g_autofree char *before = read_whole (desk->path, NULL);

  edit (desk, 3);
  g_chmod (desk->path, 0666);
  g_chmod (desk->folder, 0555);
  in_a_child (save_into_a_closed_folder, desk);
  assert_file_is (desk->path, before);
  assert_int_equal (count_files (desk->folder), 1);
}

static void
a_read_only_file_is_left_alone (void **state)
{
  Desk *desk = *state;
  g_autofree char *before = read_whole (desk->path, NULL);

  edit (desk, 3);
  g_chmod (desk->path, 0444);
  g_chmod (desk->folder, 0777);
  in_a_child (save_over_a_protected_file, desk);
  assert_file_is (desk->path, before);
}

static void
no_folder_is_told_in_words (void **state)
{
  Desk *desk = *state;
  g_autofree char *below_file = g_build_filename (desk->path, "own.rig", NULL);
  g_autofree char *nowhere = g_build_filename (desk->folder, "none", "own.rig", NULL);
  g_autoptr (GFile) below = g_file_new_for_path (below_file);
  g_autoptr (GFile) missing = g_file_new_for_path (nowhere);
  g_autoptr (GError) first = NULL, second = NULL;

  edit (desk, 3);
  assert_false (lb_history_save (desk->history, below, &first));
  assert_one_clear_line (first, LB_FILE_ERROR_WRITE);
  assert_non_null (strstr (first->message, "this is no folder"));
  assert_false (lb_history_save (desk->history, missing, &second));
  assert_one_clear_line (second, LB_FILE_ERROR_WRITE);
  assert_non_null (strstr (second->message, "the folder is not there"));
  assert_true (lb_document_get_modified (desk->document));
  assert_true (g_file_equal (lb_document_get_file (desk->document), desk->file));
}

int
main (void)
{
#define with_desk(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    with_desk (what_another_program_wrote_is_not_overwritten),
    with_desk (a_file_removed_meanwhile_is_asked_about),
    with_desk (a_file_written_again_as_it_was_is_no_matter),
    with_desk (another_name_is_no_matter),
    with_desk (the_system_tells_of_changes_but_not_of_our_own),
    with_desk (a_new_name_is_watched_from_then_on),
    with_desk (links_are_followed),
    with_desk (what_a_link_leads_to_is_watched),
    with_desk (a_full_disk_leaves_the_old_file),
    with_desk (a_read_only_folder_leaves_the_old_file),
    with_desk (a_read_only_file_is_left_alone),
    with_desk (no_folder_is_told_in_words),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
