/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes done, undone and redone; what the document and the history tell on the way. */
#include "model-support.h"

#include <glib/gstdio.h>

#include "document-fixture.h"

static double
value (Fixture *f, const char *path)
{
  size_t leader = 0;
  const LbField *field = lb_field_find (path, &leader);

  assert_non_null (field);
  return lb_document_get_value (f->document, field, leader);
}

static gboolean
do_value (Fixture *f, const char *path, double number)
{
  size_t leader = 0;
  const LbField *field = lb_field_find (path, &leader);

  assert_non_null (field);
  return lb_history_do (f->history, lb_change_new_value (field, leader, number));
}

static void
a_change_is_undone_and_redone (void **state)
{
  Fixture *f = *state;

  assert_false (lb_history_get_can_undo (f->history));
  assert_false (lb_history_undo (f->history));
  assert_true (do_value (f, "river.depth_m", 4));
  assert_true (value (f, "river.depth_m") == 4);
  assert_string_equal (lb_history_get_undo_label (f->history), "Change “Depth”");
  assert_null (lb_history_get_redo_label (f->history));
  assert_true (lb_history_undo (f->history));
  assert_true (value (f, "river.depth_m") == lb_setup_default ().river.depth);
  assert_string_equal (lb_history_get_redo_label (f->history), "Change “Depth”");
  assert_true (lb_history_redo (f->history));
  assert_true (value (f, "river.depth_m") == 4);
  assert_false (lb_history_redo (f->history));
  assert_int_equal (f->n_changed, 3);
}

static void
a_new_change_forgets_what_was_undone (void **state)
{
  Fixture *f = *state;

  do_value (f, "river.depth_m", 4);
  do_value (f, "river.depth_m", 5);
  lb_history_undo (f->history);
  assert_true (do_value (f, "weight.mass_kg", 1));
  assert_false (lb_history_get_can_redo (f->history));
  lb_history_undo (f->history);
  assert_true (value (f, "river.depth_m") == 4);
}

static void
a_gesture_is_one_step (void **state)
{
  Fixture *f = *state;
  guint gesture = lb_history_new_gesture (f->history);

  for (int i = 1; i <= 100; i++)
    {
      LbChange *change = lb_change_new_value (lb_field ("river.surface_current_m_s"), 0, i * 0.01);
      lb_change_set_gesture (change, gesture);
      assert_true (lb_history_do (f->history, change));
    }
  assert_int_equal (f->n_changed, 100);
  assert_true (value (f, "river.surface_current_m_s") == 1);
  assert_true (lb_history_undo (f->history));
  assert_true (value (f, "river.surface_current_m_s") == lb_setup_default ().river.surface_current);
  assert_false (lb_history_get_can_undo (f->history));
  assert_true (lb_history_redo (f->history));
  assert_true (value (f, "river.surface_current_m_s") == 1);
}

static void
gestures_do_not_run_together (void **state)
{
  Fixture *f = *state;
  guint first = lb_history_new_gesture (f->history), second = lb_history_new_gesture (f->history);
  const char *paths[] = { "river.depth_m", "river.depth_m", "weight.mass_kg", "weight.mass_kg" };
  guint gestures[] = { first, second, second, 0 };

  assert_int_not_equal (first, second);
  for (size_t i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      LbChange *change = lb_change_new_value (lb_field (paths[i]), 0, 3.0 + (double) i);
      lb_change_set_gesture (change, gestures[i]);
      assert_true (lb_history_do (f->history, change));
    }
  for (size_t i = 0; i < G_N_ELEMENTS (paths); i++)
    assert_true (lb_history_undo (f->history));
  assert_false (lb_history_undo (f->history));
}

static void
what_changes_nothing_is_no_step (void **state)
{
  Fixture *f = *state;

  assert_false (do_value (f, "river.depth_m", lb_setup_default ().river.depth));
  assert_false (lb_history_do (f->history, lb_change_new_title ("")));
  assert_false (lb_history_do (f->history, NULL));
  assert_false (lb_history_get_can_undo (f->history));
  assert_false (lb_document_get_modified (f->document));
  assert_int_equal (f->n_changed, 0);
}

static void
values_are_kept_in_range (void **state)
{
  Fixture *f = *state;

  assert_true (do_value (f, "river.depth_m", 1e9));
  assert_true (value (f, "river.depth_m") == lb_field ("river.depth_m")->maximum);
  assert_true (do_value (f, "mainline.normal_drag", 1.2));
  assert_true (do_value (f, "mainline.normal_drag", LB_UNSET));
  assert_false (lb_is_set (value (f, "mainline.normal_drag")));
}

/* A shank shorter than an attachment is no rig: refused as a whole. */
static void
what_does_not_fit_together_is_refused (void **state)
{
  Fixture *f = *state;

  assert_false (do_value (f, "shank.length_m", 0.2));
  assert_false (do_value (f, "leaders[1].attach_above_weight_m", 1.5));
  assert_false (do_value (f, "band.low_m", 5));
  assert_int_equal (f->n_changed, 0);
  assert_true (value (f, "shank.length_m") == lb_setup_default ().rig.shank_length);
}

static void
line_out_is_changed_as_a_whole (void **state)
{
  Fixture *f = *state;
  LbLineOut before = lb_document_get_setup (f->document)->rig.line_out;
  const LbLineOut *now = &lb_document_get_setup (f->document)->rig.line_out;

  assert_true (lb_history_do (f->history, lb_change_new_line_out (LB_LINE_OUT_GIVEN, 7)));
  assert_int_equal (now->mode, LB_LINE_OUT_GIVEN);
  assert_true (lb_history_do (f->history, lb_change_new_line_out (LB_LINE_OUT_TOUCHING, 7)));
  assert_true (do_value (f, "mainline.line_out.weight_above_bed_m", 0.3));
  assert_int_equal (now->mode, LB_LINE_OUT_WEIGHT_ABOVE_BED);
  lb_history_undo (f->history);
  assert_int_equal (now->mode, LB_LINE_OUT_TOUCHING);
  lb_history_undo (f->history);
  assert_true (now->mode == LB_LINE_OUT_GIVEN && now->value == 7);
  lb_history_undo (f->history);
  assert_true (now->mode == before.mode && now->value == before.value);
}

/* As the reader has them: what is written must be read again. */
static void
titles_and_names_are_one_line (void **state)
{
  Fixture *f = *state;
  const LbContents *contents = lb_document_get_contents (f->document);

  assert_true (lb_history_do (f->history, lb_change_new_title ("two\nlines \x1b[31m\xef\xbf\xbf")));
  assert_string_equal (contents->title, "two lines  [31m ");
  assert_true (lb_history_do (f->history, lb_change_new_lure_name (1, "a\tname\xc2\x9b")));
  assert_string_equal (contents->lure_names[1], "a name ");
  assert_true (lb_history_do (f->history, lb_change_new_notes ("two\nlines")));
  assert_string_equal (contents->notes, "two\nlines");
}

static void
leaders_come_and_go (void **state)
{
  Fixture *f = *state;
  const LbContents *contents = lb_document_get_contents (f->document);
  g_autoptr (LbContents) before = lb_contents_dup (contents);

  assert_true (lb_history_do (f->history, lb_change_new_lure_name (0, "first")));
  while (lb_history_do (f->history, lb_change_new_add_leader (f->document)))
    assert_true (lb_setup_validate (&contents->setup, NULL));
  assert_int_equal (contents->setup.rig.n_leaders, LB_MAX_LEADERS);
  assert_true (lb_history_do (f->history, lb_change_new_remove_leader (f->document, 0)));
  assert_int_equal (contents->setup.rig.n_leaders, LB_MAX_LEADERS - 1);
  assert_string_not_equal (contents->lure_names[0], "first");
  assert_true (contents->setup.rig.leaders[0].length == before->setup.rig.leaders[1].length);
  assert_null (lb_change_new_remove_leader (f->document, LB_MAX_LEADERS - 1));
  while (contents->setup.rig.n_leaders > 0)
    assert_true (lb_history_do (f->history, lb_change_new_remove_leader (f->document, 0)));
  assert_true (lb_history_do (f->history, lb_change_new_add_leader (f->document)));
  while (lb_history_undo (f->history))
    ;
  assert_same_contents (contents, before);
}

static void
a_wrong_setup_makes_no_change (void **state)
{
  LbSetup setup = lb_setup_default ();

  setup.river.depth = -1;
  assert_null (lb_change_new_setup (&setup, NULL, "Nothing"));
}

static void
words_are_cut_and_mended (void **state)
{
  Fixture *f = *state;
  g_autofree char *longest = g_strnfill (LB_TITLE_LONGEST + 50, 'x');

  assert_true (lb_history_do (f->history, lb_change_new_title (longest)));
  assert_int_equal (g_utf8_strlen (lb_document_get_title (f->document), -1), LB_TITLE_LONGEST);
  assert_true (lb_history_do (f->history, lb_change_new_notes ("broken \xff here")));
  assert_true (g_utf8_validate (lb_document_get_notes (f->document), -1, NULL));
  lb_history_undo (f->history);
  assert_string_equal (lb_document_get_notes (f->document), "");
}

/* ---- Saved or not ---- */

static void
the_saved_mark_follows_the_steps (void **state)
{
  Fixture *f = *state;
  g_autofree char *path = output_path ("history.rig");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (LbDocument) loaded = NULL;

  do_value (f, "river.depth_m", 4);
  assert_true (lb_document_get_modified (f->document));
  assert_true (lb_history_save (f->history, file, NULL));
  assert_false (lb_document_get_modified (f->document));
  assert_ptr_equal (lb_document_get_file (f->document), file);
  do_value (f, "river.depth_m", 5);
  assert_true (lb_document_get_modified (f->document));
  lb_history_undo (f->history);
  assert_false (lb_document_get_modified (f->document));
  lb_history_undo (f->history);
  assert_true (lb_document_get_modified (f->document));
  do_value (f, "river.depth_m", 3);
  lb_history_undo (f->history);
  assert_true (lb_document_get_modified (f->document));
  assert_int_equal (f->n_modified, 5);

  loaded = lb_document_load (file, NULL);
  assert_non_null (loaded);
  assert_true (lb_document_get_setup (loaded)->river.depth == 4);
  g_unlink (path);
}

static void
saving_ends_a_gesture (void **state)
{
  Fixture *f = *state;
  guint gesture = lb_history_new_gesture (f->history);

  for (int i = 0; i < 2; i++)
    {
      LbChange *change = lb_change_new_value (lb_field ("river.depth_m"), 0, 3 + i);
      lb_change_set_gesture (change, gesture);
      assert_true (lb_history_do (f->history, change));
      if (i == 0)
        lb_history_mark_saved (f->history);
    }
  assert_true (lb_document_get_modified (f->document));
  lb_history_undo (f->history);
  assert_false (lb_document_get_modified (f->document));
  assert_true (value (f, "river.depth_m") == 3);
}

static void
a_failed_save_leaves_the_mark (void **state)
{
  Fixture *f = *state;
  g_autoptr (GFile) file = g_file_new_for_path ("/proc/none/rig.rig");
  g_autoptr (GError) error = NULL;

  do_value (f, "river.depth_m", 4);
  assert_false (lb_history_save (f->history, file, &error));
  assert_non_null (error);
  assert_true (lb_document_get_modified (f->document));
  assert_null (lb_document_get_file (f->document));
}

static void
old_steps_are_forgotten (void **state)
{
  Fixture *f = *state;
  int n = 0;

  for (int i = 0; i < LB_HISTORY_LONGEST + 50; i++)
    assert_true (do_value (f, "river.depth_m", 1 + i * 0.01));
  while (lb_history_undo (f->history))
    n++;
  assert_int_equal (n, LB_HISTORY_LONGEST);
  assert_true (lb_document_get_modified (f->document));
}

/* Another law of the current is chosen in one go, though it needs a value that the rig never had.
 */
static void
a_law_never_chosen_before_begins_with_usual_values (void **state)
{
  Fixture *f = *state;
  const LbField *law = lb_field ("river.profile.law");
  g_autoptr (LbContents) start = lb_contents_dup (lb_document_get_contents (f->document));
  const LbProfile *profile = &lb_document_get_setup (f->document)->river.profile;

  assert_true (lb_history_do (f->history, lb_change_new_value (law, 0, LB_PROFILE_LOG)));
  assert_int_equal (profile->law, LB_PROFILE_LOG);
  assert_int_equal (profile->material, LB_BED_MATERIAL_GRAVEL);
  assert_near (profile->roughness, 0.016, 0); /* gravel; EST, see DEVELOPERS.md */
  assert_true (lb_history_undo (f->history));
  assert_same_contents (lb_document_get_contents (f->document), start);
  assert_true (lb_history_redo (f->history));
  assert_int_equal (profile->material, LB_BED_MATERIAL_GRAVEL);
}

int
main (void)
{
#define with_fixture(test) cmocka_unit_test_setup_teardown (test, fixture_set_up, fixture_tear_down)
  const struct CMUnitTest tests[] = {
    with_fixture (a_law_never_chosen_before_begins_with_usual_values),
    with_fixture (a_change_is_undone_and_redone),
    with_fixture (a_new_change_forgets_what_was_undone),
    with_fixture (a_gesture_is_one_step),
    with_fixture (gestures_do_not_run_together),
    with_fixture (what_changes_nothing_is_no_step),
    with_fixture (values_are_kept_in_range),
    with_fixture (what_does_not_fit_together_is_refused),
    with_fixture (line_out_is_changed_as_a_whole),
    with_fixture (titles_and_names_are_one_line),
    with_fixture (leaders_come_and_go),
    cmocka_unit_test (a_wrong_setup_makes_no_change),
    with_fixture (words_are_cut_and_mended),
    with_fixture (the_saved_mark_follows_the_steps),
    with_fixture (saving_ends_a_gesture),
    with_fixture (a_failed_save_leaves_the_mark),
    with_fixture (old_steps_are_forgotten),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
