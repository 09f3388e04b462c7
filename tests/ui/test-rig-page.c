/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig page: every part editable, leaders made and moved, the selection followed. */
#include "rig-page-support.h"

#include <string.h>

#include "material_row.h"
#include "notes_view.h"
#include "rules_label.h"
#include "text_entry.h"

/* ---- Fields ---- */

static gboolean
belongs_on_the_page (const LbField *field)
{
  const char *prefixes[] = { "mainline.", "shank.", "weight.",  "leaders",
                             "band.",     "rules.", "boat.reel" };

  /* How line is given stands under the drawings. */
  if (g_str_has_prefix (field->path, "mainline.line_out"))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (prefixes); i++)
    if (g_str_has_prefix (field->path, prefixes[i]))
      return TRUE;
  return FALSE;
}

static void
every_value_of_the_rig_has_its_row (void **state)
{
  gsize n, found = 0;
  const LbField *fields = lb_fields (&n);

  rig_open_all (GTK_WIDGET (rig_page ()));
  for (gsize i = 0; i < n; i++)
    if (belongs_on_the_page (&fields[i]))
      {
        if (!rig_find_row (GTK_WIDGET (rig_page ()), &fields[i]))
          fail_msg ("no row for %s", fields[i].path);
        if (fields[i].stride)
          for (gsize leader = 0; leader < 2; leader++)
            assert_non_null (
                rig_find_row (GTK_WIDGET (lb_rig_page_get_card (rig_page (), leader)), &fields[i]));
        found++;
      }
  assert_true (found >= 38);
}

static void
a_newcomer_sees_few_rows (void **state)
{
  /* Those of drag, stretch and strum are closed away. */
  assert_null (rig_find_row (GTK_WIDGET (rig_page ()), lb_field ("mainline.strum")));
  assert_null (rig_find_row (GTK_WIDGET (rig_page ()), lb_field ("leaders[].lure.drag_area_m2")));
  assert_non_null (rig_find_row (GTK_WIDGET (rig_page ()), lb_field ("leaders[].length_m")));
}

static void
rows_set_the_leader_they_stand_in (void **state)
{
  rig_type ("leaders[].length_m", GTK_WIDGET (lb_rig_page_get_card (rig_page (), 1)), "5 m");
  assert_near (rig_setup ()->rig.leaders[1].length, 5, 1e-12);
  assert_near (rig_setup ()->rig.leaders[0].length, 3.048, 1e-9);
  rig_type ("shank.length_m", GTK_WIDGET (rig_page ()), "4 ft");
  assert_near (rig_setup ()->rig.shank_length, 4 * 0.3048, 1e-12);
}

static void
a_material_sets_the_density (void **state)
{
  GtkWidget *group = lb_rig_page_get_group (rig_page (), LB_PICK_WEIGHT, 0);
  GtkWidget *child = gtk_widget_get_first_child (group);
  GtkDropDown *choice;

  while (child && !LB_IS_MATERIAL_ROW (child))
    child = gtk_widget_get_next_sibling (child);
  assert_non_null (child);
  choice = lb_material_row_get_choice (LB_MATERIAL_ROW (child));
  assert_int_equal (gtk_drop_down_get_selected (choice), 0);
  gtk_drop_down_set_selected (choice, 2);
  assert_near (rig_setup ()->rig.weight.density, 7850, 0);
  lb_session_undo (rig_session ());
  assert_int_equal (gtk_drop_down_get_selected (choice), 0);

  /* Another density is asked for where it can be given. */
  gtk_drop_down_set_selected (choice, 4);
  assert_int_equal (gtk_drop_down_get_selected (choice), 4);
  rig_type ("weight.density_kg_m3", group, "10000");
  assert_near (rig_setup ()->rig.weight.density, 10000, 0);
  assert_int_equal (gtk_drop_down_get_selected (choice), 4);
}

static void
what_is_typed_is_saved_without_enter (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("typed.rig");
  g_autoptr (LbDocument) saved = NULL;
  GtkWidget *entry = lb_field_row_get_control (
      rig_find_row (GTK_WIDGET (rig_page ()), lb_field ("shank.length_m")));

  assert_true (lb_session_save (rig_session (), file, NULL));
  gtk_widget_grab_focus (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), "1.5 m");
  assert_near (rig_setup ()->rig.shank_length, lb_setup_default ().rig.shank_length, 1e-12);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (rig_window), "win.save", NULL));
  saved = lb_document_load (file, NULL);
  assert_non_null (saved);
  assert_near (lb_document_get_setup (saved)->rig.shank_length, 1.5, 1e-12);
}

static void
a_name_and_notes_are_steps_of_the_history (void **state)
{
  LbDocument *document = lb_session_get_document (rig_session ());
  GtkWidget *title = rig_find_widget (GTK_WIDGET (rig_page ()), LB_TYPE_TEXT_ENTRY);
  GtkWidget *notes = rig_find_widget (GTK_WIDGET (rig_page ()), LB_TYPE_NOTES_VIEW);
  GtkTextBuffer *buffer;

  assert_non_null (title);
  assert_non_null (notes);
  buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (notes));
  gtk_editable_set_text (GTK_EDITABLE (title), "Stony Bend");
  g_signal_emit_by_name (title, "activate");
  assert_string_equal (lb_document_get_title (document), "Stony Bend");
  for (int i = 0; i < 5; i++)
    gtk_text_buffer_insert_at_cursor (buffer, "ab ", -1);
  assert_string_equal (lb_document_get_notes (document), "ab ab ab ab ab ");
  lb_session_undo (rig_session ());
  assert_string_equal (lb_document_get_notes (document), "");
  assert_int_equal (gtk_text_buffer_get_char_count (buffer), 0);
  lb_session_undo (rig_session ());
  assert_string_equal (lb_document_get_title (document), "");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (title)), "");
}

static void
lures_and_hooks_are_counted_against_the_limits (void **state)
{
  GtkWidget *widget = rig_find_widget (GTK_WIDGET (rig_page ()), LB_TYPE_RULES_LABEL);
  LbRulesLabel *label = LB_RULES_LABEL (widget);

  assert_null (lb_rules_label_get_excess (label));
  rig_type ("rules.lures_per_line", GTK_WIDGET (rig_page ()), "2");
  assert_null (lb_rules_label_get_excess (label));
  g_signal_emit_by_name (lb_rig_page_get_add_button (rig_page ()), "clicked");
  assert_non_null (strstr (lb_rules_label_get_excess (label), "3 lures"));
  rig_type ("rules.hooks_per_line", GTK_WIDGET (rig_page ()), "5");
  assert_non_null (strstr (lb_rules_label_get_excess (label), "6 hooks"));
  rig_type ("rules.lures_per_line", GTK_WIDGET (rig_page ()), "");
  rig_type ("rules.hooks_per_line", GTK_WIDGET (rig_page ()), "");
  assert_null (lb_rules_label_get_excess (label));
}

/* ---- Leaders ---- */

static void
a_leader_is_added_and_taken_away (void **state)
{
  g_signal_emit_by_name (lb_rig_page_get_add_button (rig_page ()), "clicked");
  assert_int_equal (rig_setup ()->rig.n_leaders, 3);
  assert_true (gtk_widget_get_visible (GTK_WIDGET (lb_rig_page_get_card (rig_page (), 2))));
  rig_assert_selected (LB_PICK_ATTACHMENT, 2);

  rig_press (0, LB_LEADER_REMOVE);
  assert_int_equal (rig_setup ()->rig.n_leaders, 2);
  assert_false (gtk_widget_get_visible (GTK_WIDGET (lb_rig_page_get_card (rig_page (), 2))));
  lb_session_undo (rig_session ());
  lb_session_undo (rig_session ());
  assert_int_equal (rig_setup ()->rig.n_leaders, 2);
  assert_near (rig_setup ()->rig.leaders[0].length, 3.048, 1e-9);
}

static void
the_last_leader_can_go_and_come_back (void **state)
{
  rig_press (1, LB_LEADER_REMOVE);
  rig_press (0, LB_LEADER_REMOVE);
  assert_int_equal (rig_setup ()->rig.n_leaders, 0);
  rig_assert_selected (LB_PICK_NOTHING, 0);
  harness_solved (rig_window);
  g_signal_emit_by_name (lb_rig_page_get_add_button (rig_page ()), "clicked");
  assert_int_equal (rig_setup ()->rig.n_leaders, 1);
}

static void
eight_leaders_are_the_most (void **state)
{
  for (int i = 2; i < LB_MAX_LEADERS; i++)
    g_signal_emit_by_name (lb_rig_page_get_add_button (rig_page ()), "clicked");
  assert_int_equal (rig_setup ()->rig.n_leaders, LB_MAX_LEADERS);
  assert_false (gtk_widget_is_sensitive (lb_rig_page_get_add_button (rig_page ())));
  assert_false (gtk_widget_is_sensitive (
      lb_leader_card_get_button (lb_rig_page_get_card (rig_page (), 0), LB_LEADER_DUPLICATE)));
}

static void
a_leader_moves_with_its_lure_and_the_focus (void **state)
{
  lb_session_do (rig_session (), lb_change_new_lure_name (0, "first"));
  lb_session_do (rig_session (), lb_change_new_lure_name (1, "second"));
  rig_press (0, LB_LEADER_DOWN);
  assert_string_equal (rig_lure_name (0), "second");
  assert_string_equal (rig_lure_name (1), "first");
  assert_near (rig_setup ()->rig.leaders[1].length, 3.048, 1e-9);
  rig_assert_selected (LB_PICK_LEADER, 1);
  rig_press (1, LB_LEADER_UP);
  assert_string_equal (rig_lure_name (0), "first");
  rig_assert_selected (LB_PICK_LEADER, 0);
}

static void
a_leader_is_duplicated_beside_itself (void **state)
{
  lb_session_do (rig_session (), lb_change_new_lure_name (0, "first"));
  rig_press (0, LB_LEADER_DUPLICATE);
  assert_int_equal (rig_setup ()->rig.n_leaders, 3);
  assert_string_equal (rig_lure_name (1), "first");
  assert_near (rig_setup ()->rig.leaders[1].length, rig_setup ()->rig.leaders[0].length, 0);
}

/* ---- Selection ---- */

static void
the_focus_in_a_part_selects_it (void **state)
{
  const LbPickKind kinds[] = { LB_PICK_WEIGHT,     LB_PICK_SHANK,    LB_PICK_REEL,
                               LB_PICK_MAINLINE,   LB_PICK_BAND_LOW, LB_PICK_BAND_HIGH,
                               LB_PICK_ATTACHMENT, LB_PICK_LEADER,   LB_PICK_LURE };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      int index = i >= 6 ? 1 : 0;
      GtkWidget *group;

      assert_true (lb_rig_page_open_part (rig_page (), kinds[i], index));
      rig_assert_selected (kinds[i], index);
      group = lb_rig_page_get_group (rig_page (), kinds[i], index);
      assert_true (gtk_widget_has_css_class (group, "selected"));
    }
  assert_false (lb_rig_page_open_part (rig_page (), LB_PICK_BED, 0));
  assert_false (lb_rig_page_open_part (rig_page (), LB_PICK_LURE, 5));
}

static gboolean
is_in_sight (gpointer data)
{
  graphene_rect_t bounds;
  GtkWidget *group = data;

  return gtk_widget_compute_bounds (group, GTK_WIDGET (rig_page ()), &bounds)
         && bounds.origin.y >= 0
         && bounds.origin.y + bounds.size.height
                <= gtk_widget_get_height (GTK_WIDGET (rig_page ()));
}

static void
what_is_selected_comes_into_sight (void **state)
{
  GtkWidget *lure = lb_rig_page_get_group (rig_page (), LB_PICK_LURE, 1);
  GtkWidget *weight = lb_rig_page_get_group (rig_page (), LB_PICK_WEIGHT, 0);

  assert_false (is_in_sight (lure));
  lb_session_select (rig_session (), LB_PICK_LURE, 1);
  harness_wait (is_in_sight, lure, "the lure in sight");
  lb_session_select (rig_session (), LB_PICK_WEIGHT, 0);
  harness_wait (is_in_sight, weight, "the weight in sight");
}

/* Whoever takes a step of the history sees what it brought. */
static void
a_leader_that_comes_back_is_selected (void **state)
{
  g_signal_emit_by_name (lb_rig_page_get_add_button (rig_page ()), "clicked");
  lb_session_undo (rig_session ());
  rig_assert_selected (LB_PICK_NOTHING, 0);
  lb_session_redo (rig_session ());
  rig_assert_selected (LB_PICK_LEADER, 2);
  harness_wait (is_in_sight, lb_rig_page_get_group (rig_page (), LB_PICK_LEADER, 2), "the leader");
  rig_press (0, LB_LEADER_REMOVE);
  lb_session_undo (rig_session ());
  rig_assert_selected (LB_PICK_LEADER, 0);
  harness_wait (is_in_sight, lb_rig_page_get_group (rig_page (), LB_PICK_LEADER, 0), "the first");
}

static void
nothing_is_wider_than_the_column (void **state)
{
  const LbPickKind kinds[] = { LB_PICK_WEIGHT, LB_PICK_SHANK, LB_PICK_MAINLINE, LB_PICK_BAND_LOW };
  int width;

  harness_close (rig_window);
  rig_show (960, 600);
  rig_open_all (GTK_WIDGET (rig_page ()));
  harness_pause (100);
  width = gtk_widget_get_width (GTK_WIDGET (rig_page ()));
  assert_true (width <= 300);
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      graphene_rect_t bounds;

      assert_true (gtk_widget_compute_bounds (lb_rig_page_get_group (rig_page (), kinds[i], 0),
                                              GTK_WIDGET (rig_page ()), &bounds));
      assert_true (bounds.origin.x >= 0 && bounds.origin.x + bounds.size.width <= width);
    }
}

static void
tab_reaches_everything (void **state)
{
  g_autoptr (GHashTable) reached = g_hash_table_new (NULL, NULL);
  gsize n;
  const LbField *fields = lb_fields (&n);

  rig_open_all (GTK_WIDGET (rig_page ()));
  harness_pause (50);
  assert_true (lb_rig_page_open_part (rig_page (), LB_PICK_WEIGHT, 0));
  for (int i = 0; i < 200; i++)
    {
      GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (rig_window));

      for (; focus; focus = gtk_widget_get_parent (focus))
        g_hash_table_add (reached, focus);
      if (!gtk_widget_child_focus (GTK_WIDGET (rig_page ()), GTK_DIR_TAB_FORWARD))
        break;
    }
  for (gsize i = 0; i < n; i++)
    if (belongs_on_the_page (&fields[i]))
      {
        LbFieldRow *row = rig_find_row (GTK_WIDGET (rig_page ()), &fields[i]);

        if (!g_hash_table_contains (reached, lb_field_row_get_control (row)))
          fail_msg ("Tab passes over %s", fields[i].path);
      }
  assert_true (g_hash_table_contains (reached, lb_rig_page_get_add_button (rig_page ())));
  assert_true (g_hash_table_contains (
      reached,
      lb_leader_card_get_button (lb_rig_page_get_card (rig_page (), 1), LB_LEADER_REMOVE)));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, rig_set_up, rig_tear_down)
    TEST (every_value_of_the_rig_has_its_row),
    TEST (a_newcomer_sees_few_rows),
    TEST (rows_set_the_leader_they_stand_in),
    TEST (a_material_sets_the_density),
    TEST (what_is_typed_is_saved_without_enter),
    TEST (a_name_and_notes_are_steps_of_the_history),
    TEST (lures_and_hooks_are_counted_against_the_limits),
    TEST (a_leader_is_added_and_taken_away),
    TEST (the_last_leader_can_go_and_come_back),
    TEST (eight_leaders_are_the_most),
    TEST (a_leader_moves_with_its_lure_and_the_focus),
    TEST (a_leader_is_duplicated_beside_itself),
    TEST (the_focus_in_a_part_selects_it),
    TEST (what_is_selected_comes_into_sight),
    TEST (a_leader_that_comes_back_is_selected),
    TEST (nothing_is_wider_than_the_column),
    TEST (tab_reaches_everything),
#undef TEST
  };

  return rig_run (tests, G_N_ELEMENTS (tests), "rig-page");
}
