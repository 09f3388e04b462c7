/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rows of the pages: one field each, its faults told beside it. */
#include "field_entry.h"
#include "field_row.h"
#include "one_window.h"

#include <string.h>

#include "words.h"

static LbFieldRow *
row_for (const char *path, gsize leader)
{
  LbFieldRow *row = LB_FIELD_ROW (lb_field_row_new (session (), lb_field (path), leader, NULL));

  return g_object_ref_sink (row);
}

static void
type (LbFieldRow *row, const char *text)
{
  GtkWidget *entry = lb_field_row_get_control (row);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static double
value_of (LbFieldRow *row, gsize leader)
{
  return lb_session_get_value (session (), lb_field_row_get_field (row), leader);
}

/* ---- Tests ---- */

static void
every_field_of_the_table_has_a_row_with_its_full_name (void **state)
{
  gsize n;
  const LbField *fields = lb_fields (&n);

  for (gsize i = 0; i < n; i++)
    {
      gsize leader = fields[i].stride ? 1 : 0;
      g_autofree char *name = lb_field_full_label (&fields[i], leader);
      g_autofree char *fault = NULL;
      g_autoptr (LbFieldRow) row = g_object_ref_sink (
          LB_FIELD_ROW (lb_field_row_new (session (), &fields[i], leader, NULL)));
      GtkAccessible *control = GTK_ACCESSIBLE (lb_field_row_get_control (row));

      fault = gtk_test_accessible_check_property (control, GTK_ACCESSIBLE_PROPERTY_LABEL, name);
      assert_null (fault);
      assert_true (gtk_widget_get_visible (GTK_WIDGET (row))
                   == lb_field_applies (
                       &fields[i], lb_document_get_setup (lb_session_get_document (session ()))));
    }
}

static void
a_fault_is_told_below_and_the_old_value_kept (void **state)
{
  g_autoptr (LbFieldRow) row = row_for ("shank.length_m", 0);
  double before = value_of (row, 0);
  g_autofree char *words = lb_words_quantity (LB_QUANTITY_HEIGHT, LB_UNITS_US, before, -1);
  const char *wrong[] = { "long", "3 lb", "", "900 ft" };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      type (row, wrong[i]);
      assert_near (value_of (row, 0), before, 0);
      assert_non_null (lb_field_row_get_fault (row));
      assert_non_null (strstr (lb_field_row_get_fault (row), words));
    }
  type (row, "1 m");
  assert_null (lb_field_row_get_fault (row));
  assert_near (value_of (row, 0), 1, 0);
}

static void
a_value_that_does_not_fit_says_with_what (void **state)
{
  g_autoptr (LbFieldRow) shank = row_for ("shank.length_m", 0);
  g_autoptr (LbFieldRow) attached = row_for ("leaders[].attach_above_weight_m", 1);

  type (shank, "1 m");
  type (attached, "0.9 m");
  type (shank, "0.5 m");
  assert_non_null (strstr (lb_field_row_get_fault (shank), "Leader 2"));
  assert_near (value_of (shank, 0), 1, 0);
  type (attached, "1.2 m");
  assert_non_null (strstr (lb_field_row_get_fault (attached), "shank"));
  assert_near (value_of (attached, 1), 0.9, 0);
}

static void
emptying_an_entry_unsets_what_may_be_unset (void **state)
{
  g_autoptr (LbFieldRow) row = row_for ("mainline.normal_drag", 0);
  GtkEditable *entry = GTK_EDITABLE (lb_field_row_get_control (row));

  assert_false (lb_is_set (value_of (row, 0)));
  assert_string_equal (gtk_editable_get_text (entry), "");
  type (row, "1.3");
  assert_near (value_of (row, 0), 1.3, 1e-12);
  type (row, " ");
  assert_false (lb_is_set (value_of (row, 0)));
  assert_null (lb_field_row_get_fault (row));
  assert_string_equal (gtk_editable_get_text (entry), "");
}

static void
a_choice_follows_and_sets (void **state)
{
  g_autoptr (LbFieldRow) row = row_for ("weight.shape", 0);
  GtkDropDown *choice = GTK_DROP_DOWN (lb_field_row_get_control (row));

  gtk_drop_down_set_selected (choice, 2);
  assert_near (value_of (row, 0), LB_WEIGHT_TORPEDO, 0);
  lb_session_undo (session ());
  assert_int_equal (gtk_drop_down_get_selected (choice), 0);
}

static void
a_row_without_effect_hides (void **state)
{
  g_autoptr (LbFieldRow) given = row_for ("mainline.line_out.given_m", 0);
  g_autoptr (LbFieldRow) held = row_for ("mainline.line_out.weight_above_bed_m", 0);

  lb_session_do (session (), lb_change_new_line_out (LB_LINE_OUT_GIVEN, 5));
  assert_true (gtk_widget_get_visible (GTK_WIDGET (given)));
  assert_false (gtk_widget_get_visible (GTK_WIDGET (held)));
  lb_session_do (session (), lb_change_new_line_out (LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.2));
  assert_false (gtk_widget_get_visible (GTK_WIDGET (given)));
  assert_true (gtk_widget_get_visible (GTK_WIDGET (held)));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up_small, tear_down)
    TEST (every_field_of_the_table_has_a_row_with_its_full_name),
    TEST (a_fault_is_told_below_and_the_old_value_kept),
    TEST (a_value_that_does_not_fit_says_with_what),
    TEST (emptying_an_entry_unsets_what_may_be_unset),
    TEST (a_choice_follows_and_sets),
    TEST (a_row_without_effect_hides),
#undef TEST
  };

  harness_start ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
