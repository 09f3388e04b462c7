/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig page: every part editable, leaders made and moved, tackle chosen from the catalogue. */
#include "harness.h"

#include <glib/gstdio.h>
#include <string.h>

#include "catalogue_window.h"
#include "field_row.h"
#include "material_row.h"
#include "notes_view.h"
#include "own_catalogue.h"
#include "part_button.h"
#include "rules_label.h"
#include "text_entry.h"

static LbWindow *window;

static LbSession *
session (void)
{
  return lb_window_get_session (window);
}

static LbRigPage *
page (void)
{
  return lb_window_get_rig_page (window);
}

static const LbSetup *
setup (void)
{
  return lb_document_get_setup (lb_session_get_document (session ()));
}

static void
show_page (int width, int height)
{
  window = harness_window (width, height);
  lb_window_show_page (window, "rig");
  harness_frame (GTK_WIDGET (window));
}

static void
forget_own_parts (void)
{
  g_autofree char *path = lb_own_catalogue_dup_path ();

  g_unlink (path);
}

static int
set_up (void **state)
{
  forget_own_parts ();
  show_page (1280, 800);
  return 0;
}

static int
tear_down (void **state)
{
  harness_close (window);
  return 0;
}

static void
take_picture (const char *name)
{
  int width, height;

  harness_solved (window);
  harness_pause (250);
  g_free (harness_picture (window, name, 1, &width, &height));
}

static void
scroll_to_end (void)
{
  GtkAdjustment *adjustment = lb_rig_page_get_adjustment (page ());

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_upper (adjustment));
}

static LbCatalogueWindow *
catalogue_for (LbPickKind kind, int index)
{
  GtkWidget *child = gtk_widget_get_first_child (lb_rig_page_get_group (page (), kind, index));

  while (child && !LB_IS_PART_BUTTON (child))
    child = gtk_widget_get_next_sibling (child);
  assert_non_null (child);
  g_signal_emit_by_name (child, "clicked");
  child = harness_toplevel (LB_TYPE_CATALOGUE_WINDOW);
  assert_non_null (child);
  harness_frame (child);
  return LB_CATALOGUE_WINDOW (child);
}

/* The row of a field inside `widget`, or NULL. */
static LbFieldRow *
find_row (GtkWidget *widget, const LbField *field)
{
  if (LB_IS_FIELD_ROW (widget))
    return lb_field_row_get_field (LB_FIELD_ROW (widget)) == field ? LB_FIELD_ROW (widget) : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    {
      LbFieldRow *row = find_row (child, field);

      if (row)
        return row;
    }
  return NULL;
}

/* The first widget of that type inside `widget`, or NULL. */
static GtkWidget *
find_widget (GtkWidget *widget, GType type)
{
  GtkWidget *found = NULL;

  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child && !found;
       child = gtk_widget_get_next_sibling (child))
    found = find_widget (child, type);
  return found;
}

static void
open_all (GtkWidget *widget)
{
  if (GTK_IS_EXPANDER (widget))
    gtk_expander_set_expanded (GTK_EXPANDER (widget), TRUE);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    open_all (child);
}

static void
type (const char *path, GtkWidget *in, const char *text)
{
  LbFieldRow *row = find_row (in, lb_field (path));
  GtkWidget *entry;

  assert_non_null (row);
  entry = lb_field_row_get_control (row);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static void
press (gsize leader, LbLeaderAction action)
{
  LbLeaderCard *card = lb_rig_page_get_card (page (), leader);
  GtkWidget *button;

  assert_non_null (card);
  button = lb_leader_card_get_button (card, action);
  assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
}

static const char *
lure_name (gsize leader)
{
  return lb_document_get_lure_name (lb_session_get_document (session ()), leader);
}

static void
assert_selected (LbPickKind kind, int index)
{
  LbPickKind selected;
  int selected_index;

  lb_session_get_selected (session (), &selected, &selected_index);
  assert_int_equal (selected, kind);
  assert_int_equal (selected_index, index);
}

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

  open_all (GTK_WIDGET (page ()));
  for (gsize i = 0; i < n; i++)
    if (belongs_on_the_page (&fields[i]))
      {
        if (!find_row (GTK_WIDGET (page ()), &fields[i]))
          fail_msg ("no row for %s", fields[i].path);
        if (fields[i].stride)
          for (gsize leader = 0; leader < 2; leader++)
            assert_non_null (
                find_row (GTK_WIDGET (lb_rig_page_get_card (page (), leader)), &fields[i]));
        found++;
      }
  assert_true (found >= 38);
}

static void
a_newcomer_sees_few_rows (void **state)
{
  /* Those of drag, stretch and strum are closed away. */
  assert_null (find_row (GTK_WIDGET (page ()), lb_field ("mainline.strum")));
  assert_null (find_row (GTK_WIDGET (page ()), lb_field ("leaders[].lure.drag_area_m2")));
  assert_non_null (find_row (GTK_WIDGET (page ()), lb_field ("leaders[].length_m")));
}

static void
rows_set_the_leader_they_stand_in (void **state)
{
  type ("leaders[].length_m", GTK_WIDGET (lb_rig_page_get_card (page (), 1)), "5 m");
  assert_near (setup ()->rig.leaders[1].length, 5, 1e-12);
  assert_near (setup ()->rig.leaders[0].length, 3.048, 1e-9);
  type ("shank.length_m", GTK_WIDGET (page ()), "4 ft");
  assert_near (setup ()->rig.shank_length, 4 * 0.3048, 1e-12);
}

static void
a_material_sets_the_density (void **state)
{
  GtkWidget *group = lb_rig_page_get_group (page (), LB_PICK_WEIGHT, 0);
  GtkWidget *child = gtk_widget_get_first_child (group);
  GtkDropDown *choice;

  while (child && !LB_IS_MATERIAL_ROW (child))
    child = gtk_widget_get_next_sibling (child);
  assert_non_null (child);
  choice = lb_material_row_get_choice (LB_MATERIAL_ROW (child));
  assert_int_equal (gtk_drop_down_get_selected (choice), 0);
  gtk_drop_down_set_selected (choice, 2);
  assert_near (setup ()->rig.weight.density, 7850, 0);
  lb_session_undo (session ());
  assert_int_equal (gtk_drop_down_get_selected (choice), 0);

  /* Another density is asked for where it can be given. */
  gtk_drop_down_set_selected (choice, 4);
  assert_int_equal (gtk_drop_down_get_selected (choice), 4);
  type ("weight.density_kg_m3", group, "10000");
  assert_near (setup ()->rig.weight.density, 10000, 0);
  assert_int_equal (gtk_drop_down_get_selected (choice), 4);
}

static void
what_is_typed_is_saved_without_enter (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("typed.rig");
  g_autoptr (LbDocument) saved = NULL;
  GtkWidget *entry =
      lb_field_row_get_control (find_row (GTK_WIDGET (page ()), lb_field ("shank.length_m")));

  assert_true (lb_session_save (session (), file, NULL));
  gtk_widget_grab_focus (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), "1.5 m");
  assert_near (setup ()->rig.shank_length, 1, 1e-12);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL));
  saved = lb_document_load (file, NULL);
  assert_non_null (saved);
  assert_near (lb_document_get_setup (saved)->rig.shank_length, 1.5, 1e-12);
}

static void
a_name_and_notes_are_steps_of_the_history (void **state)
{
  LbDocument *document = lb_session_get_document (session ());
  GtkWidget *title = find_widget (GTK_WIDGET (page ()), LB_TYPE_TEXT_ENTRY);
  GtkWidget *notes = find_widget (GTK_WIDGET (page ()), LB_TYPE_NOTES_VIEW);
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
  lb_session_undo (session ());
  assert_string_equal (lb_document_get_notes (document), "");
  assert_int_equal (gtk_text_buffer_get_char_count (buffer), 0);
  lb_session_undo (session ());
  assert_string_equal (lb_document_get_title (document), "");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (title)), "");
}

static void
lures_and_hooks_are_counted_against_the_limits (void **state)
{
  GtkWidget *widget = find_widget (GTK_WIDGET (page ()), LB_TYPE_RULES_LABEL);
  LbRulesLabel *label = LB_RULES_LABEL (widget);

  assert_null (lb_rules_label_get_excess (label));
  type ("rules.lures_per_line", GTK_WIDGET (page ()), "2");
  assert_null (lb_rules_label_get_excess (label));
  g_signal_emit_by_name (lb_rig_page_get_add_button (page ()), "clicked");
  assert_non_null (strstr (lb_rules_label_get_excess (label), "3 lures"));
  type ("rules.hooks_per_line", GTK_WIDGET (page ()), "5");
  assert_non_null (strstr (lb_rules_label_get_excess (label), "6 hooks"));
  type ("rules.lures_per_line", GTK_WIDGET (page ()), "");
  type ("rules.hooks_per_line", GTK_WIDGET (page ()), "");
  assert_null (lb_rules_label_get_excess (label));
}

/* ---- Leaders ---- */

static void
a_leader_is_added_and_taken_away (void **state)
{
  g_signal_emit_by_name (lb_rig_page_get_add_button (page ()), "clicked");
  assert_int_equal (setup ()->rig.n_leaders, 3);
  assert_true (gtk_widget_get_visible (GTK_WIDGET (lb_rig_page_get_card (page (), 2))));
  assert_selected (LB_PICK_ATTACHMENT, 2);

  press (0, LB_LEADER_REMOVE);
  assert_int_equal (setup ()->rig.n_leaders, 2);
  assert_false (gtk_widget_get_visible (GTK_WIDGET (lb_rig_page_get_card (page (), 2))));
  lb_session_undo (session ());
  lb_session_undo (session ());
  assert_int_equal (setup ()->rig.n_leaders, 2);
  assert_near (setup ()->rig.leaders[0].length, 3.048, 1e-9);
}

static void
the_last_leader_can_go_and_come_back (void **state)
{
  press (1, LB_LEADER_REMOVE);
  press (0, LB_LEADER_REMOVE);
  assert_int_equal (setup ()->rig.n_leaders, 0);
  assert_selected (LB_PICK_NOTHING, 0);
  harness_solved (window);
  g_signal_emit_by_name (lb_rig_page_get_add_button (page ()), "clicked");
  assert_int_equal (setup ()->rig.n_leaders, 1);
}

static void
eight_leaders_are_the_most (void **state)
{
  for (int i = 2; i < LB_MAX_LEADERS; i++)
    g_signal_emit_by_name (lb_rig_page_get_add_button (page ()), "clicked");
  assert_int_equal (setup ()->rig.n_leaders, LB_MAX_LEADERS);
  assert_false (gtk_widget_is_sensitive (lb_rig_page_get_add_button (page ())));
  assert_false (gtk_widget_is_sensitive (
      lb_leader_card_get_button (lb_rig_page_get_card (page (), 0), LB_LEADER_DUPLICATE)));
}

static void
a_leader_moves_with_its_lure_and_the_focus (void **state)
{
  lb_session_do (session (), lb_change_new_lure_name (0, "first"));
  lb_session_do (session (), lb_change_new_lure_name (1, "second"));
  press (0, LB_LEADER_DOWN);
  assert_string_equal (lure_name (0), "second");
  assert_string_equal (lure_name (1), "first");
  assert_near (setup ()->rig.leaders[1].length, 3.048, 1e-9);
  assert_selected (LB_PICK_LEADER, 1);
  press (1, LB_LEADER_UP);
  assert_string_equal (lure_name (0), "first");
  assert_selected (LB_PICK_LEADER, 0);
}

static void
a_leader_is_duplicated_beside_itself (void **state)
{
  lb_session_do (session (), lb_change_new_lure_name (0, "first"));
  press (0, LB_LEADER_DUPLICATE);
  assert_int_equal (setup ()->rig.n_leaders, 3);
  assert_string_equal (lure_name (1), "first");
  assert_near (setup ()->rig.leaders[1].length, setup ()->rig.leaders[0].length, 0);
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

      assert_true (lb_rig_page_open_part (page (), kinds[i], index));
      assert_selected (kinds[i], index);
      group = lb_rig_page_get_group (page (), kinds[i], index);
      assert_true (gtk_widget_has_css_class (group, "selected"));
    }
  assert_false (lb_rig_page_open_part (page (), LB_PICK_BED, 0));
  assert_false (lb_rig_page_open_part (page (), LB_PICK_LURE, 5));
}

static gboolean
is_in_sight (gpointer data)
{
  graphene_rect_t bounds;
  GtkWidget *group = data;

  return gtk_widget_compute_bounds (group, GTK_WIDGET (page ()), &bounds) && bounds.origin.y >= 0
         && bounds.origin.y + bounds.size.height <= gtk_widget_get_height (GTK_WIDGET (page ()));
}

static void
what_is_selected_comes_into_sight (void **state)
{
  GtkWidget *lure = lb_rig_page_get_group (page (), LB_PICK_LURE, 1);
  GtkWidget *weight = lb_rig_page_get_group (page (), LB_PICK_WEIGHT, 0);

  assert_false (is_in_sight (lure));
  lb_session_select (session (), LB_PICK_LURE, 1);
  harness_wait (is_in_sight, lure, "the lure in sight");
  lb_session_select (session (), LB_PICK_WEIGHT, 0);
  harness_wait (is_in_sight, weight, "the weight in sight");
}

static void
nothing_is_wider_than_the_column (void **state)
{
  const LbPickKind kinds[] = { LB_PICK_WEIGHT, LB_PICK_SHANK, LB_PICK_MAINLINE, LB_PICK_BAND_LOW };
  int width;

  harness_close (window);
  show_page (960, 600);
  open_all (GTK_WIDGET (page ()));
  harness_pause (100);
  width = gtk_widget_get_width (GTK_WIDGET (page ()));
  assert_true (width <= 300);
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      graphene_rect_t bounds;

      assert_true (gtk_widget_compute_bounds (lb_rig_page_get_group (page (), kinds[i], 0),
                                              GTK_WIDGET (page ()), &bounds));
      assert_true (bounds.origin.x >= 0 && bounds.origin.x + bounds.size.width <= width);
    }
}

static void
tab_reaches_everything (void **state)
{
  g_autoptr (GHashTable) reached = g_hash_table_new (NULL, NULL);
  gsize n;
  const LbField *fields = lb_fields (&n);

  open_all (GTK_WIDGET (page ()));
  harness_pause (50);
  assert_true (lb_rig_page_open_part (page (), LB_PICK_WEIGHT, 0));
  for (int i = 0; i < 200; i++)
    {
      GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));

      for (; focus; focus = gtk_widget_get_parent (focus))
        g_hash_table_add (reached, focus);
      if (!gtk_widget_child_focus (GTK_WIDGET (page ()), GTK_DIR_TAB_FORWARD))
        break;
    }
  for (gsize i = 0; i < n; i++)
    if (belongs_on_the_page (&fields[i]))
      {
        LbFieldRow *row = find_row (GTK_WIDGET (page ()), &fields[i]);

        if (!g_hash_table_contains (reached, lb_field_row_get_control (row)))
          fail_msg ("Tab passes over %s", fields[i].path);
      }
  assert_true (g_hash_table_contains (reached, lb_rig_page_get_add_button (page ())));
  assert_true (g_hash_table_contains (
      reached, lb_leader_card_get_button (lb_rig_page_get_card (page (), 1), LB_LEADER_REMOVE)));
}

/* ---- The catalogue ---- */

static void
the_catalogue_is_searched (void **state)
{
  LbCatalogueWindow *catalogue = catalogue_for (LB_PICK_LURE, 0);
  guint all = lb_catalogue_window_get_n_listed (catalogue);
  g_autofree char *details = NULL;

  lb_catalogue_window_search (catalogue, "DEEP 9 cm");
  assert_int_equal (lb_catalogue_window_get_n_listed (catalogue), 1);
  details = lb_catalogue_window_dup_details (catalogue);
  assert_non_null (strstr (details, "floating minnow, 9 cm, deep lip"));
  /* The range of the estimate and where it comes from. */
  assert_non_null (strstr (details, "0.5"));
  assert_non_null (strstr (details, "0.9"));
  assert_non_null (strstr (details, "Estimate"));
  lb_catalogue_window_search (catalogue, "nothing of the kind");
  assert_int_equal (lb_catalogue_window_get_n_listed (catalogue), 0);
  lb_catalogue_window_search (catalogue, "");
  assert_int_equal (lb_catalogue_window_get_n_listed (catalogue), all);
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
a_lure_of_the_catalogue_goes_into_the_rig (void **state)
{
  LbCatalogueWindow *catalogue = catalogue_for (LB_PICK_LURE, 1);
  const char *name = "floating minnow, 9 cm, deep lip";
  double before = setup ()->rig.leaders[1].lure.length;
  g_autofree char *old_name = g_strdup (lure_name (1));

  assert_true (lb_catalogue_window_select (catalogue, name));
  lb_catalogue_window_use (catalogue);
  harness_pause (20);
  assert_null (harness_toplevel (LB_TYPE_CATALOGUE_WINDOW));
  assert_near (setup ()->rig.leaders[1].lure.length, 0.09, 1e-12);
  assert_near (setup ()->rig.leaders[1].lure.down_force_ratio, 0.7, 1e-12);
  assert_near (setup ()->rig.leaders[0].lure.length, before, 0);
  assert_string_equal (lure_name (1), name);
  lb_session_undo (session ());
  assert_near (setup ()->rig.leaders[1].lure.length, before, 0);
  assert_string_equal (lure_name (1), old_name);
}

static void
a_line_of_the_catalogue_keeps_what_was_calibrated (void **state)
{
  LbCatalogueWindow *catalogue;

  lb_session_set_value (session (), lb_field ("mainline.strum"), 0, 1.6, 0);
  catalogue = catalogue_for (LB_PICK_MAINLINE, 0);
  assert_true (lb_catalogue_window_select (catalogue, "stainless wire, 0.51 mm"));
  lb_catalogue_window_use (catalogue);
  assert_near (setup ()->rig.mainline.diameter, 0.000508, 1e-9);
  assert_near (setup ()->rig.mainline.breaking_load, 419, 1e-9);
  assert_near (setup ()->rig.mainline.strum, 1.6, 0);
}

/* The name on the button of a part. */
static const char *
part_name (LbPickKind kind, int index)
{
  GtkWidget *child = gtk_widget_get_first_child (lb_rig_page_get_group (page (), kind, index));

  while (child && !LB_IS_PART_BUTTON (child))
    child = gtk_widget_get_next_sibling (child);
  assert_non_null (child);
  return lb_part_button_get_name (LB_PART_BUTTON (child));
}

static void
a_part_is_known_by_its_values (void **state)
{
  assert_string_equal (part_name (LB_PICK_WEIGHT, 0), "1 3/4 lb lead ball");
  lb_session_set_value (session (), lb_field ("weight.mass_kg"), 0, 0.9072, 0);
  assert_string_equal (part_name (LB_PICK_WEIGHT, 0), "2 lb lead ball");
  lb_session_set_value (session (), lb_field ("weight.shape"), 0, LB_WEIGHT_DISC, 0);
  assert_string_equal (part_name (LB_PICK_WEIGHT, 0), "2 lb lead disc");
  lb_session_set_value (session (), lb_field ("weight.mass_kg"), 0, 0.95, 0);
  assert_null (strstr (part_name (LB_PICK_WEIGHT, 0), "lead"));
  assert_string_equal (part_name (LB_PICK_SHANK, 0), "nylon, 0.70 mm");
}

static void
values_of_ones_own_are_kept_renamed_and_deleted (void **state)
{
  LbCatalogueWindow *catalogue;
  LbKeepRow *keep;
  LbOwnRow *own;

  lb_session_set_value (session (), lb_field ("weight.mass_kg"), 0, 0.95, 0);
  catalogue = catalogue_for (LB_PICK_WEIGHT, 0);
  keep = lb_catalogue_window_get_keep_row (catalogue);
  own = lb_catalogue_window_get_own_row (catalogue);
  lb_keep_row_keep (keep, "  ");
  assert_non_null (lb_keep_row_get_fault (keep));
  lb_keep_row_keep (keep, "river stone");
  assert_null (lb_keep_row_get_fault (keep));
  assert_string_equal (part_name (LB_PICK_WEIGHT, 0), "river stone");

  lb_own_row_rename (own, "old anchor");
  assert_string_equal (part_name (LB_PICK_WEIGHT, 0), "old anchor");
  assert_false (lb_catalogue_window_select (catalogue, "river stone"));
  assert_true (lb_catalogue_window_select (catalogue, "old anchor"));
  lb_own_row_delete (own);
  assert_false (lb_catalogue_window_select (catalogue, "old anchor"));
  assert_string_not_equal (part_name (LB_PICK_WEIGHT, 0), "old anchor");
  lb_own_row_put_back (own);
  assert_true (lb_catalogue_window_select (catalogue, "old anchor"));

  /* It is there to be used in another rig. */
  lb_session_set_value (session (), lb_field ("weight.mass_kg"), 0, 0.5, 0);
  lb_catalogue_window_use (catalogue);
  assert_near (setup ()->rig.weight.mass, 0.95, 0);
}

static void
a_line_of_ones_own_is_offered_where_it_was_kept (void **state)
{
  LbCatalogueWindow *catalogue;

  lb_session_set_value (session (), lb_field ("shank.diameter_m"), 0, 0.00083, 0);
  catalogue = catalogue_for (LB_PICK_SHANK, 0);
  lb_keep_row_keep (lb_catalogue_window_get_keep_row (catalogue), "stiff nylon");
  assert_string_equal (part_name (LB_PICK_SHANK, 0), "stiff nylon");
  gtk_window_destroy (GTK_WINDOW (catalogue));
  catalogue = catalogue_for (LB_PICK_MAINLINE, 0);
  assert_false (lb_catalogue_window_select (catalogue, "stiff nylon"));
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
a_damaged_own_catalogue_is_told (void **state)
{
  g_autofree char *path = lb_own_catalogue_dup_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  LbCatalogueWindow *catalogue;
  int width, height;

  assert_int_equal (g_mkdir_with_parents (folder, 0700), 0);
  assert_true (g_file_set_contents (path, "{ \"weights\": 3 }", -1, NULL));
  catalogue = catalogue_for (LB_PICK_WEIGHT, 0);
  assert_true (lb_catalogue_window_get_n_listed (catalogue) > 20);
  lb_keep_row_keep (lb_catalogue_window_get_keep_row (catalogue), "mine");
  assert_non_null (strstr (lb_keep_row_get_fault (lb_catalogue_window_get_keep_row (catalogue)),
                           "catalogue.json"));
  g_free (harness_picture ((LbWindow *) catalogue, "catalogue-damaged", 1, &width, &height));
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
a_catalogue_window_goes_with_its_leader (void **state)
{
  catalogue_for (LB_PICK_LURE, 1);
  lb_session_do (session (), lb_change_new_remove_leader (lb_session_get_document (session ()), 1));
  harness_pause (20);
  assert_null (harness_toplevel (LB_TYPE_CATALOGUE_WINDOW));
}

/* ---- Pictures for people to look at ---- */

static void
take_catalogue_picture (LbPickKind kind, int index, const char *search, const char *name)
{
  LbCatalogueWindow *catalogue = catalogue_for (kind, index);
  int width, height;

  lb_catalogue_window_search (catalogue, search);
  harness_pause (200);
  g_free (harness_picture ((LbWindow *) catalogue, name, 1, &width, &height));
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
pictures (void **state)
{
  forget_own_parts ();
  show_page (1280, 800);
  take_picture ("rig-page");
  scroll_to_end ();
  take_picture ("rig-page-end");
  harness_close (window);

  show_page (960, 600);
  take_picture ("rig-page-960x600");
  open_all (GTK_WIDGET (page ()));
  type ("shank.length_m", GTK_WIDGET (page ()), "10 in");
  type ("weight.density_kg_m3", GTK_WIDGET (page ()), "3 ft");
  take_picture ("rig-page-faults");
  g_object_set (lb_session_get_preferences (session ()), "text-size", "largest", "units", "metric",
                NULL);
  lb_session_select (session (), LB_PICK_LURE, 0);
  take_picture ("rig-page-largest");
  harness_close (window);

  show_page (1280, 800);
  g_object_set (lb_session_get_preferences (session ()), "theme", "dark", NULL);
  lb_session_select (session (), LB_PICK_LURE, 1);
  take_picture ("rig-page-dark");
  harness_close (window);

  show_page (1280, 800);
  take_catalogue_picture (LB_PICK_WEIGHT, 0, "", "catalogue-weights");
  take_catalogue_picture (LB_PICK_LEADER, 0, "", "catalogue-lines");
  {
    LbCatalogueWindow *catalogue = catalogue_for (LB_PICK_LURE, 0);
    int width, height;

    lb_keep_row_keep (lb_catalogue_window_get_keep_row (catalogue), "the red one from the shed");
    harness_pause (200);
    g_free (harness_picture ((LbWindow *) catalogue, "catalogue-own", 1, &width, &height));
    gtk_window_destroy (GTK_WINDOW (catalogue));
  }
  take_catalogue_picture (LB_PICK_LURE, 1, "deep", "catalogue-lures");
  g_object_set (lb_session_get_preferences (session ()), "theme", "dark", "units", "metric", NULL);
  take_catalogue_picture (LB_PICK_MAINLINE, 0, "", "catalogue-lines-dark");
  harness_close (window);

  show_page (3840, 2160);
  take_picture ("rig-page-4k");
  harness_close (window);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
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
    TEST (nothing_is_wider_than_the_column),
    TEST (tab_reaches_everything),
    TEST (the_catalogue_is_searched),
    TEST (a_lure_of_the_catalogue_goes_into_the_rig),
    TEST (a_line_of_the_catalogue_keeps_what_was_calibrated),
    TEST (a_part_is_known_by_its_values),
    TEST (values_of_ones_own_are_kept_renamed_and_deleted),
    TEST (a_line_of_ones_own_is_offered_where_it_was_kept),
    TEST (a_damaged_own_catalogue_is_told),
    TEST (a_catalogue_window_goes_with_its_leader),
    cmocka_unit_test (pictures),
#undef TEST
  };
  const char *output;
  g_autofree char *folder = NULL;

  /* Before GLib asks for it: other programs of the tests keep parts of their own. */
  output = g_getenv ("LB_TEST_OUTPUT_DIR");
  folder = g_build_filename (output ? output : g_get_tmp_dir (), "rig-page", NULL);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
