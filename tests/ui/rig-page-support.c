/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rig-page-support.h"

#include <glib/gstdio.h>

#include "own_catalogue.h"
#include "part_button.h"

LbWindow *rig_window;

LbSession *
rig_session (void)
{
  return lb_window_get_session (rig_window);
}

LbRigPage *
rig_page (void)
{
  return lb_window_get_rig_page (rig_window);
}

const LbSetup *
rig_setup (void)
{
  return lb_document_get_setup (lb_session_get_document (rig_session ()));
}

void
rig_show (int width, int height)
{
  rig_window = harness_window (width, height);
  lb_window_show_page (rig_window, "rig");
  harness_frame (GTK_WIDGET (rig_window));
}

void
rig_forget_own_parts (void)
{
  g_autofree char *path = lb_own_catalogue_dup_path ();

  g_unlink (path);
}

int
rig_set_up (void **state)
{
  rig_forget_own_parts ();
  rig_show (1280, 800);
  return 0;
}

int
rig_tear_down (void **state)
{
  harness_close (rig_window);
  return 0;
}

LbCatalogueWindow *
rig_catalogue_for (LbPickKind kind, int index)
{
  GtkWidget *child = gtk_widget_get_first_child (lb_rig_page_get_group (rig_page (), kind, index));

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
LbFieldRow *
rig_find_row (GtkWidget *widget, const LbField *field)
{
  if (LB_IS_FIELD_ROW (widget))
    return lb_field_row_get_field (LB_FIELD_ROW (widget)) == field ? LB_FIELD_ROW (widget) : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    {
      LbFieldRow *row = rig_find_row (child, field);

      if (row)
        return row;
    }
  return NULL;
}

/* The first widget of that type inside `widget`, or NULL. */
GtkWidget *
rig_find_widget (GtkWidget *widget, GType type)
{
  GtkWidget *found = NULL;

  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child && !found;
       child = gtk_widget_get_next_sibling (child))
    found = rig_find_widget (child, type);
  return found;
}

void
rig_open_all (GtkWidget *widget)
{
  if (GTK_IS_EXPANDER (widget))
    gtk_expander_set_expanded (GTK_EXPANDER (widget), TRUE);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    rig_open_all (child);
}

void
rig_type (const char *path, GtkWidget *in, const char *text)
{
  LbFieldRow *row = rig_find_row (in, lb_field (path));
  GtkWidget *entry;

  assert_non_null (row);
  entry = lb_field_row_get_control (row);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

void
rig_press (gsize leader, LbLeaderAction action)
{
  LbLeaderCard *card = lb_rig_page_get_card (rig_page (), leader);
  GtkWidget *button;

  assert_non_null (card);
  button = lb_leader_card_get_button (card, action);
  assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
}

const char *
rig_lure_name (gsize leader)
{
  return lb_document_get_lure_name (lb_session_get_document (rig_session ()), leader);
}

void
rig_assert_selected (LbPickKind kind, int index)
{
  LbPickKind selected;
  int selected_index;

  lb_session_get_selected (rig_session (), &selected, &selected_index);
  assert_int_equal (selected, kind);
  assert_int_equal (selected_index, index);
}

/* The name on the button of a part. */
const char *
rig_part_name (LbPickKind kind, int index)
{
  GtkWidget *child = gtk_widget_get_first_child (lb_rig_page_get_group (rig_page (), kind, index));

  while (child && !LB_IS_PART_BUTTON (child))
    child = gtk_widget_get_next_sibling (child);
  assert_non_null (child);
  return lb_part_button_get_name (LB_PART_BUTTON (child));
}

int
rig_run (const struct CMUnitTest *tests, gsize n_tests, const char *name)
{
  const char *output = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *folder = g_build_filename (output ? output : g_get_tmp_dir (), name, NULL);

  /* Before GLib asks for it: other programs of the tests keep parts of their own. */
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return _cmocka_run_group_tests (name, tests, n_tests, NULL, NULL);
}
