/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything the program can do has a key, no two have the same, and the window of shortcuts shows
 * them all. */
#include "one_window.h"

#include <string.h>

static GtkApplication *
application (void)
{
  return GTK_APPLICATION (harness_application ());
}

static void
add_unique (GPtrArray *names, const char *name)
{
  if (!g_ptr_array_find_with_equal_func (names, name, g_str_equal, NULL))
    g_ptr_array_add (names, g_strdup (name));
}

/* ---- What there is ---- */

/* Parts of a menu, with all below it: (name, target) as detailed names. */
static void
collect_menu (GMenuModel *menu, GPtrArray *names)
{
  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autoptr (GMenuLinkIter) links = g_menu_model_iterate_item_links (menu, i);
      g_autoptr (GVariant) target =
          g_menu_model_get_item_attribute_value (menu, i, G_MENU_ATTRIBUTE_TARGET, NULL);
      g_autofree char *action = NULL;
      GMenuModel *link;

      if (g_menu_model_get_item_attribute (menu, i, G_MENU_ATTRIBUTE_ACTION, "s", &action))
        {
          g_autofree char *name =
              target ? g_action_print_detailed_name (action, target) : g_strdup (action);
          add_unique (names, name);
        }
      while (g_menu_link_iter_get_next (links, NULL, &link))
        {
          collect_menu (link, names);
          g_object_unref (link);
        }
    }
}

typedef void (*Visit) (GtkWidget *widget, gpointer data);

static void
walk (GtkWidget *widget, Visit visit, gpointer data)
{
  visit (widget, data);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    walk (child, visit, data);
}

static void
visit_menu_button (GtkWidget *widget, gpointer data)
{
  GMenuModel *menu = GTK_IS_MENU_BUTTON (widget)
                         ? gtk_menu_button_get_menu_model (GTK_MENU_BUTTON (widget))
                         : NULL;

  if (menu)
    collect_menu (menu, data);
}

/* Files are chosen in menus of files, which one key opens. */
static gboolean
takes_a_file (const char *name)
{
  return g_str_has_prefix (name, "win.open-uri") || g_str_has_prefix (name, "win.open-sample");
}

/* Detailed names of all that must have a key. */
static GPtrArray *
all_actions (void)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) of_app = g_action_group_list_actions (G_ACTION_GROUP (application ()));
  const GVariantType *type;
  const char *name, *property;
  GType owner;

  for (char **action = of_app; *action; action++)
    if (!g_action_group_get_action_parameter_type (G_ACTION_GROUP (application ()), *action))
      {
        g_autofree char *full = g_strconcat ("app.", *action, NULL);
        add_unique (names, full);
      }
  for (guint i = 0; gtk_widget_class_query_action (GTK_WIDGET_GET_CLASS (window), i, &owner, &name,
                                                   &type, &property);
       i++)
    if (owner == LB_TYPE_WINDOW && !type)
      add_unique (names, name);
  walk (GTK_WIDGET (window), visit_menu_button, names);
  add_unique (names, "window.close");
  for (guint i = names->len; i > 0; i--)
    if (takes_a_file (g_ptr_array_index (names, i - 1)))
      g_ptr_array_remove_index (names, i - 1);
  return names;
}

/* Every page of the column, as an action. */
static void
visit_stack (GtkWidget *widget, gpointer data)
{
  GtkWidget *page;

  if (!GTK_IS_STACK (widget)
      || gtk_stack_get_child_by_name (GTK_STACK (widget), "readings") == NULL)
    return;
  for (page = gtk_widget_get_first_child (widget); page; page = gtk_widget_get_next_sibling (page))
    {
      g_autofree char *name = NULL;

      g_object_get (gtk_stack_get_page (GTK_STACK (widget), page), "name", &name, NULL);
      g_ptr_array_add (data, g_strconcat ("win.show-page::", name, NULL));
    }
}

/* ---- What is shown ---- */

typedef struct
{
  GPtrArray *actions;      /* detailed names */
  GPtrArray *accelerators; /* keys of no action */
} Shown;

static void
visit_shortcut (GtkWidget *widget, gpointer data)
{
  Shown *shown = data;
  g_autofree char *action = NULL;
  g_autofree char *accelerator = NULL;
  g_autofree char *title = NULL;

  if (!GTK_IS_SHORTCUTS_SHORTCUT (widget))
    return;
  g_object_get (widget, "action-name", &action, "accelerator", &accelerator, "title", &title, NULL);
  assert_non_null (title);
  assert_string_not_equal (title, "");
  /* Each is there twice: for the search, too. */
  if (action)
    add_unique (shown->actions, action);
  else if (accelerator)
    add_unique (shown->accelerators, accelerator);
}

static Shown
all_shown (void)
{
  GtkShortcutsWindow *overlay;
  Shown shown = { g_ptr_array_new_with_free_func (g_free),
                  g_ptr_array_new_with_free_func (g_free) };

  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.show-shortcuts", NULL));
  overlay = gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window));
  assert_non_null (overlay);
  walk (GTK_WIDGET (overlay), visit_shortcut, &shown);
  gtk_window_close (GTK_WINDOW (overlay));
  assert_true (shown.actions->len > 10);
  return shown;
}

static gboolean
has (GPtrArray *names, const char *name)
{
  return g_ptr_array_find_with_equal_func (names, name, g_str_equal, NULL);
}

/* ---- Tests ---- */

static void
every_action_has_a_key_and_is_shown (void **state)
{
  g_autoptr (GPtrArray) actions = all_actions ();
  Shown shown = all_shown ();
  int wrong = 0;

  walk (GTK_WIDGET (window), visit_stack, actions);
  assert_true (actions->len > 25);
  for (guint i = 0; i < actions->len; i++)
    {
      const char *name = g_ptr_array_index (actions, i);
      g_auto (GStrv) keys = gtk_application_get_accels_for_action (application (), name);

      if (!keys[0])
        {
          print_error ("%s has no key\n", name);
          wrong++;
        }
      if (!has (shown.actions, name))
        {
          print_error ("%s is not in the window of shortcuts\n", name);
          wrong++;
        }
    }
  assert_int_equal (wrong, 0);
  g_ptr_array_unref (shown.actions);
  g_ptr_array_unref (shown.accelerators);
}

/* A detailed name's action is there. */
static gboolean
is_there (const char *detailed)
{
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = NULL;
  const GVariantType *type;
  const char *of_class, *property;
  GType owner;

  if (!g_action_parse_detailed_name (detailed, &name, &target, NULL))
    return FALSE;
  if (g_str_has_prefix (name, "app."))
    return g_action_group_has_action (G_ACTION_GROUP (application ()), name + 4);
  if (g_str_has_prefix (name, "win.")
      && g_action_group_has_action (G_ACTION_GROUP (window), name + 4))
    return TRUE;
  for (guint i = 0; gtk_widget_class_query_action (GTK_WIDGET_GET_CLASS (window), i, &owner,
                                                   &of_class, &type, &property);
       i++)
    if (g_str_equal (of_class, name))
      return (target != NULL) == (type != NULL);
  return FALSE;
}

static void
what_is_shown_and_every_menu_entry_is_there (void **state)
{
  g_autoptr (GPtrArray) in_menus = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) with_keys = gtk_application_list_action_descriptions (application ());
  Shown shown = all_shown ();

  walk (GTK_WIDGET (window), visit_menu_button, in_menus);
  assert_true (in_menus->len > 15);
  for (guint i = 0; i < in_menus->len; i++)
    if (!is_there (g_ptr_array_index (in_menus, i)))
      fail_msg ("a menu has %s", (char *) g_ptr_array_index (in_menus, i));
  for (guint i = 0; i < shown.actions->len; i++)
    if (!is_there (g_ptr_array_index (shown.actions, i)))
      fail_msg ("the window of shortcuts has %s", (char *) g_ptr_array_index (shown.actions, i));
  for (char **name = with_keys; *name; name++)
    if (!is_there (*name) || !has (shown.actions, *name))
      fail_msg ("%s has a key and is not there or not shown", *name);
  g_ptr_array_unref (shown.actions);
  g_ptr_array_unref (shown.accelerators);
}

/* Key and modifiers as one text, to compare. */
static char *
key_text (const char *accelerator)
{
  guint key;
  GdkModifierType modifiers;

  assert_true (gtk_accelerator_parse (accelerator, &key, &modifiers));
  return gtk_accelerator_name (gdk_keyval_to_lower (key), modifiers);
}

static void
visit_mnemonic (GtkWidget *widget, gpointer data)
{
  guint key = GTK_IS_LABEL (widget) ? gtk_label_get_mnemonic_keyval (GTK_LABEL (widget))
                                    : GDK_KEY_VoidSymbol;

  if (key != GDK_KEY_VoidSymbol && gtk_widget_get_mapped (widget))
    g_ptr_array_add (data, gtk_accelerator_name (gdk_keyval_to_lower (key), GDK_ALT_MASK));
}

static void
no_key_is_taken_twice (void **state)
{
  g_autoptr (GHashTable) taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GPtrArray) mnemonics = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) names = gtk_application_list_action_descriptions (application ());

  for (char **name = names; *name; name++)
    {
      g_auto (GStrv) keys = gtk_application_get_accels_for_action (application (), *name);

      for (char **key = keys; *key; key++)
        {
          char *text = key_text (*key);

          if (g_hash_table_contains (taken, text))
            fail_msg ("%s is of %s and of %s", text, (char *) g_hash_table_lookup (taken, text),
                      *name);
          g_hash_table_insert (taken, text, g_strdup (*name));
        }
    }
  walk (GTK_WIDGET (window), visit_mnemonic, mnemonics);
  for (guint i = 0; i < mnemonics->len; i++)
    {
      const char *text = g_ptr_array_index (mnemonics, i);

      if (g_hash_table_contains (taken, text))
        fail_msg ("%s is of %s and of a label", text, (char *) g_hash_table_lookup (taken, text));
      g_hash_table_insert (taken, g_strdup (text), g_strdup ("a label"));
    }
}

/* The Alt keys of the sliders are those of their labels. */
static void
shown_keys_of_no_action_are_those_of_labels (void **state)
{
  g_autoptr (GPtrArray) mnemonics = g_ptr_array_new_with_free_func (g_free);
  Shown shown = all_shown ();
  int n = 0;

  walk (GTK_WIDGET (window), visit_mnemonic, mnemonics);
  for (guint i = 0; i < shown.accelerators->len; i++)
    {
      const char *accelerator = g_ptr_array_index (shown.accelerators, i);
      g_autofree char *text = NULL;

      /* Several keys in one are those of the drawing; test-handling presses them. */
      if (!g_str_has_prefix (accelerator, "<Alt>") || strchr (accelerator, ' '))
        continue;
      text = key_text (accelerator);
      if (!has (mnemonics, text))
        fail_msg ("%s is shown and is of no label", accelerator);
      n++;
    }
  assert_int_equal (n, 3);
  g_ptr_array_unref (shown.actions);
  g_ptr_array_unref (shown.accelerators);
}

static gboolean
focus_is_in (GtkWidget *pane)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));

  return focus && (focus == pane || gtk_widget_is_ancestor (focus, pane));
}

static void
activate (const char *name)
{
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), name, NULL));
}

/* Goes round once; the controls, the column and the bar of buttons are all met, and backwards leads
 * back. */
static void
panes_are_gone_through (void **state)
{
  GtkWidget *controls = GTK_WIDGET (lb_window_get_controls (window));
  GtkWidget *bar = gtk_window_get_titlebar (GTK_WINDOW (window));
  gboolean met_bar = FALSE;
  int round = 0;

  assert_true (focus_is_in (controls));
  do
    {
      activate ("win.next-pane");
      met_bar |= focus_is_in (bar);
      round++;
    }
  while (!focus_is_in (controls) && round < 10);
  assert_true (met_bar);
  assert_true (round >= 2 && round < 10);
  activate ("win.next-pane");
  assert_false (focus_is_in (controls));
  activate ("win.previous-pane");
  assert_true (focus_is_in (controls));
}

static void
pages_are_gone_through (void **state)
{
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func (g_free);

  walk (GTK_WIDGET (window), visit_stack, pages);
  assert_string_equal (lb_window_get_page (window), "readings");
  for (guint i = 0; i < pages->len; i++)
    {
      const char *expected = g_ptr_array_index (pages, (i + 1) % pages->len);

      activate ("win.next-page");
      assert_string_equal (lb_window_get_page (window), strrchr (expected, ':') + 1);
    }
  activate ("win.previous-page");
  assert_string_equal (lb_window_get_page (window),
                       strrchr (g_ptr_array_index (pages, pages->len - 1), ':') + 1);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.show-page", "s", "readings"));
  assert_string_equal (lb_window_get_page (window), "readings");
  assert_true (focus_is_in (GTK_WIDGET (lb_window_get_readings_page (window))));
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.show-page", "s", "nowhere"));
  assert_string_equal (lb_window_get_page (window), "readings");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (every_action_has_a_key_and_is_shown),
    TEST (what_is_shown_and_every_menu_entry_is_there),
    TEST (no_key_is_taken_twice),
    TEST (shown_keys_of_no_action_are_those_of_labels),
    TEST (panes_are_gone_through),
    TEST (pages_are_gone_through),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
