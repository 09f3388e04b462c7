/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rig files read and written: the corpus of good and bad files, random rigs there and back, and
 * what goes wrong on a disk. */
#include "model-support.h"

#include <locale.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>
#include <glib/gstdio.h>

#include "data_path.h"
#include "reader.h"
#include "writer.h"

/* ---- The corpus ---- */

/* The message for `name` from bad/messages.txt, or NULL. */
static const char *
message_of (char **lines, const char *name)
{
  size_t length = strlen (name);

  for (char **line = lines; *line; line++)
    if (g_str_has_prefix (*line, name) && g_str_has_prefix (*line + length, ": "))
      return *line + length + 2;
  return NULL;
}

static void
check_refused (const char *folder, const char *name, const char *expected)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *shown = g_file_get_parse_name (file);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbContents) contents = read_sample ("three-leaders.rig");
  g_autoptr (LbContents) before = lb_contents_dup (contents);

  if (expected == NULL)
    fail_msg ("bad/messages.txt has no line for %s", name);
  if (lb_reader_load (file, contents, &error))
    fail_msg ("%s was accepted", name);
  assert_true (error->domain == LB_FILE_ERROR);
  assert_true (g_str_has_prefix (error->message, shown));
  assert_string_equal (error->message + strlen (shown) + strlen (": "), expected);
  assert_null (strchr (error->message, '\n'));
  assert_true (g_utf8_validate (error->message, -1, NULL));
  assert_true (strlen (error->message + strlen (shown)) < 300);
  assert_same_contents (contents, before);
}

static void
bad_files_are_refused_with_their_message (void **state)
{
  g_autofree char *folder = source_path ("bad");
  g_autofree char *list = g_build_filename (folder, "messages.txt", NULL);
  g_autofree char *text = read_whole (list, NULL);
  g_auto (GStrv) lines = g_strsplit (g_strchomp (text), "\n", -1);
  g_auto (GStrv) names = files_in (folder, ".rig");

  assert_int_equal (g_strv_length (lines), g_strv_length (names));
  assert_true (g_strv_length (names) >= 150);
  for (char **name = names; *name; name++)
    check_refused (folder, *name, message_of (lines, *name));
}

/* Reads, writes, reads again: equal, and the second writing is the same text. */
static char *
check_round_trip (const char *text, gsize length)
{
  g_autoptr (LbContents) first = lb_contents_new ();
  g_autoptr (LbContents) second = lb_contents_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *again = NULL;
  char *written;
  gsize size;

  if (!lb_reader_parse (text, (gssize) length, first, &error))
    fail_msg ("%s", error->message);
  written = lb_writer_to_text (first, &size);
  assert_int_equal (size, strlen (written));
  if (!lb_reader_parse (written, (gssize) size, second, &error))
    fail_msg ("%s in\n%s", error->message, written);
  assert_same_contents (second, first);
  again = lb_writer_to_text (second, NULL);
  assert_string_equal (again, written);
  return written;
}

static void
good_files_go_there_and_back (void **state)
{
  g_autofree char *folder = source_path ("good");
  g_auto (GStrv) names = files_in (folder, ".rig");

  for (char **name = names; *name; name++)
    {
      g_autofree char *path = g_build_filename (folder, *name, NULL);
      gsize length;
      g_autofree char *text = read_whole (path, &length);
      g_autofree char *written = check_round_trip (text, length);
    }
}

static void
blanks_mean_nothing (void **state)
{
  gsize length;
  g_autofree char *path = lb_sample_path ("spring-run.rig");
  g_autofree char *text = read_whole (path, &length);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_autofree char *odd = g_strjoinv (" \t\r\n\n", lines);
  g_autofree char *written = check_round_trip (odd, strlen (odd));

  assert_string_equal (written, text);
}

/* The samples stand in the form the program writes. */
static void
samples_are_as_written (void **state)
{
  g_autofree char *folder = lb_sample_path (".");
  g_auto (GStrv) names = files_in (folder, ".rig");

  assert_true (g_strv_length (names) >= 6);
  for (char **name = names; *name; name++)
    {
      g_autofree char *path = lb_sample_path (*name);
      gsize length;
      g_autofree char *text = read_whole (path, &length);
      g_autofree char *written = check_round_trip (text, length);
      g_autoptr (LbContents) sample = read_sample (*name);

      assert_string_equal (written, text);
      assert_true (strlen (sample->title) > 0 && strlen (sample->notes) > 40);
    }
}

/* ---- Particular values ---- */

static void
file_values_land_where_they_belong (void **state)
{
  g_autoptr (LbContents) pool = read_sample ("deep-pool.rig");
  g_autoptr (LbContents) chute = read_sample ("fast-chute.rig");
  const LbSetup *setup = &pool->setup;

  assert_int_equal (setup->river.n_bed_points, 14);
  assert_true (setup->river.bed_x[3] == -12 && setup->river.bed_depth[3] == 8.1);
  assert_true (setup->boat.position == 4);
  assert_int_equal (setup->river.profile.law, LB_PROFILE_LOG);
  assert_int_equal (setup->river.profile.material, LB_BED_MATERIAL_GRAVEL);
  assert_false (lb_is_set (setup->river.density));
  assert_false (lb_is_set (setup->rig.mainline.normal_drag));
  assert_int_equal (setup->rig.line_out.mode, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  assert_true (setup->rig.leaders[1].length == 6.096);
  assert_string_equal (pool->lure_names[1], "floating minnow, 9 cm, deep lip");
  assert_int_equal (chute->setup.rig.weight.shape, LB_WEIGHT_TORPEDO);
}

static LbContents *
read_good (const char *name)
{
  g_autofree char *path = g_build_filename ("good", name, NULL);
  g_autofree char *full = source_path (path);
  gsize length;
  g_autofree char *text = read_whole (full, &length);
  LbContents *contents = lb_contents_new ();

  assert_true (lb_reader_parse (text, (gssize) length, contents, NULL));
  return contents;
}

static void
what_is_left_out_has_its_default (void **state)
{
  g_autoptr (LbContents) least = read_good ("least-keys.rig");
  g_autoptr (LbContents) bed = read_good ("bed-alone.rig");

  assert_true (least->setup.river.bed_friction == lb_setup_default ().river.bed_friction);
  assert_true (least->setup.boat.position == 0);
  assert_false (lb_is_set (least->setup.rig.mainline.normal_drag));
  assert_false (lb_is_set (least->setup.rig.mainline.breaking_load));
  assert_false (lb_is_set (least->setup.rig.weight.drag_coefficient));
  assert_int_equal (least->setup.rig.n_leaders, 0);
  assert_string_equal (least->notes, "");
  assert_true (bed->setup.river.depth == 4);
}

static void
awkward_numbers_are_exact (void **state)
{
  g_autoptr (LbContents) contents = read_good ("awkward-numbers.rig");
  const LbSetup *setup = &contents->setup;

  assert_true (setup->river.depth == 0.1 + 0.2);
  assert_true (setup->river.surface_current == 1.0 / 3);
  assert_true (setup->river.temperature == 2.2250738585072014e-308);
  assert_true (setup->rig.leaders[0].lure.down_force_ratio == 5e-324);
  assert_true (setup->rig.leaders[0].lure.buoyancy == 0);
  assert_true (signbit (setup->rig.leaders[0].lure.buoyancy));
}

/* ---- Random rigs ---- */

static void
check_random_rigs (uint64_t seed, size_t n)
{
  TestRandom random = { seed };
  g_autoptr (LbContents) contents = lb_contents_new ();

  for (size_t i = 0; i < n; i++)
    {
      g_autoptr (LbContents) back = lb_contents_new ();
      g_autofree char *text = NULL;
      g_autofree char *again = NULL;
      g_autoptr (GError) error = NULL;

      random_contents (&random, contents);
      text = lb_writer_to_text (contents, NULL);
      if (!lb_reader_parse (text, -1, back, &error))
        fail_msg ("%s in\n%s", error->message, text);
      assert_same_contents (back, contents);
      again = lb_writer_to_text (back, NULL);
      assert_string_equal (again, text);
    }
}

static void
random_rigs_go_there_and_back (void **state)
{
  check_random_rigs (1, test_count (2000));
}

static void
so_they_do_under_a_decimal_comma (void **state)
{
  char text[16];

  if (!setlocale (LC_ALL, "de_DE.UTF-8"))
    {
      skip ();
      return;
    }
  g_snprintf (text, sizeof text, "%.1f", 0.5);
  assert_string_equal (text, "0,5");
  check_random_rigs (2, test_count (500));
  samples_are_as_written (state);
  awkward_numbers_are_exact (state);
  setlocale (LC_ALL, "C.UTF-8");
}

/* Any damage to a good file is either refused with one clean line, or still a rig. */
static void
damaged_files_do_no_harm (void **state)
{
  TestRandom random = { 3 };
  g_autofree char *path = lb_sample_path ("deep-pool.rig");
  gsize length;
  g_autofree char *text = read_whole (path, &length);

  for (size_t i = 0; i < test_count (20000); i++)
    {
      g_autofree char *damaged = g_memdup2 (text, length + 1);
      gsize cut = test_random (&random, 0, 1) < 0.3
                      ? (gsize) test_random (&random, 0, (double) length)
                      : length;
      g_autoptr (LbContents) contents = lb_contents_new ();
      g_autoptr (GError) error = NULL;

      for (int j = 0; j < 3; j++)
        damaged[(gsize) test_random (&random, 0, (double) length)] =
            j == 0 ? (char) test_random (&random, 0, 256) : "{}[],:\"0-.e\\ntf"[i % 15];
      if (lb_reader_parse (damaged, (gssize) cut, contents, &error))
        assert_true (lb_setup_validate (&contents->setup, NULL));
      else
        {
          assert_true (error->domain == LB_FILE_ERROR);
          assert_null (strchr (error->message, '\n'));
          assert_true (g_utf8_validate (error->message, -1, NULL));
        }
    }
}

/* ---- The disk ---- */

static void
check_load_fails (const char *path, LbFileError code, const char *part)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autoptr (GError) error = NULL;

  assert_false (lb_reader_load (file, contents, &error));
  assert_true (g_error_matches (error, LB_FILE_ERROR, (int) code));
  if (!strstr (error->message, part))
    fail_msg ("\"%s\" is not in \"%s\"", part, error->message);
  assert_null (strchr (error->message, '\n'));
}

static void
what_is_no_file_is_refused (void **state)
{
  g_autofree char *pipe = output_path ("a-pipe.rig");
  g_autofree char *folder = output_path ("");

  check_load_fails ("/nowhere/at-all.rig", LB_FILE_ERROR_READ, "No such file");
  check_load_fails (folder, LB_FILE_ERROR_READ, "found a folder, expected a rig file");
  check_load_fails ("/dev/zero", LB_FILE_ERROR_READ, "found a device or pipe");
  g_unlink (pipe);
  assert_int_equal (mkfifo (pipe, 0600), 0);
  check_load_fails (pipe, LB_FILE_ERROR_READ, "found a device or pipe");
  g_unlink (pipe);
}

/* The size alone is enough: nothing of the file is read. */
static void
huge_files_are_refused (void **state)
{
  g_autofree char *path = output_path ("huge.rig");
  FILE *file = g_fopen (path, "wb");

  assert_non_null (file);
  assert_int_equal (ftruncate (fileno (file), 100 * 1000 * 1000), 0);
  fclose (file);
  check_load_fails (path, LB_FILE_ERROR_TOO_LARGE,
                    "found 100000000 bytes, expected at most 4194304");
  g_unlink (path);
}

static void
save_over (const char *path, const LbContents *contents)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  if (!lb_writer_save (contents, file, &error))
    fail_msg ("%s", error->message);
}

static void
saving_keeps_permissions_and_links (void **state)
{
  g_autofree char *path = output_path ("saved.rig");
  g_autofree char *link = output_path ("saved-link.rig");
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autofree char *text = NULL;
  g_autofree char *expected = lb_writer_to_text (contents, NULL);
  mode_t mask = umask (077);
  GStatBuf status;

  g_unlink (path);
  g_unlink (link);
  assert_true (g_file_set_contents (path, "old", -1, NULL));
  assert_int_equal (g_chmod (path, 0664), 0);
  assert_int_equal (symlink ("saved.rig", link), 0);
  save_over (link, contents);
  umask (mask);

  assert_int_equal (g_lstat (link, &status), 0);
  assert_true (S_ISLNK (status.st_mode));
  assert_int_equal (g_lstat (path, &status), 0);
  assert_true (S_ISREG (status.st_mode));
  assert_int_equal (status.st_mode & 0777, 0664);
  text = read_whole (path, NULL);
  assert_string_equal (text, expected);
  g_unlink (link);
  g_unlink (path);
}

static void
a_failed_save_loses_nothing (void **state)
{
  g_autofree char *blocker = output_path ("blocker");
  g_autofree char *below = output_path ("blocker/below.rig");
  g_autofree char *folder = output_path ("a-folder.rig");
  g_autoptr (LbContents) contents = lb_contents_new ();
  const char *paths[] = { below, folder, "/proc/layback.rig" };
  g_autofree char *kept = NULL;

  assert_true (g_file_set_contents (blocker, "kept", -1, NULL));
  assert_int_equal (g_mkdir_with_parents (folder, 0700), 0);
  for (size_t i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (paths[i]);
      g_autoptr (GError) error = NULL;

      assert_false (lb_writer_save (contents, file, &error));
      assert_true (g_error_matches (error, LB_FILE_ERROR, LB_FILE_ERROR_WRITE));
      assert_null (strchr (error->message, '\n'));
    }
  kept = read_whole (blocker, NULL);
  assert_string_equal (kept, "kept");
  assert_true (g_file_test (folder, G_FILE_TEST_IS_DIR));
  g_rmdir (folder);
  g_unlink (blocker);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (bad_files_are_refused_with_their_message),
    cmocka_unit_test (good_files_go_there_and_back),
    cmocka_unit_test (blanks_mean_nothing),
    cmocka_unit_test (samples_are_as_written),
    cmocka_unit_test (file_values_land_where_they_belong),
    cmocka_unit_test (what_is_left_out_has_its_default),
    cmocka_unit_test (awkward_numbers_are_exact),
    cmocka_unit_test (random_rigs_go_there_and_back),
    cmocka_unit_test (so_they_do_under_a_decimal_comma),
    cmocka_unit_test (damaged_files_do_no_harm),
    cmocka_unit_test (what_is_no_file_is_refused),
    cmocka_unit_test (huge_files_are_refused),
    cmocka_unit_test (saving_keeps_permissions_and_links),
    cmocka_unit_test (a_failed_save_loses_nothing),
  };

  setlocale (LC_ALL, "");
  return cmocka_run_group_tests (tests, NULL, NULL);
}
