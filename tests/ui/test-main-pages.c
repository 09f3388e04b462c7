/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Switching between the main pages of a window, with a page of this test's own beside them. */
#include "one_window.h"

#include "page_switch.h"

/* ---- A page ---- */

typedef struct
{
  GtkBox parent;
  GtkWidget *entry;
  GtkWidget *button;
  double zoomed;
  int fitted;
  int moved;
} TrialPage;

typedef GtkBoxClass TrialPageClass;

static void trial_page_main_page_init (LbMainPageInterface *iface);

GType trial_page_get_type (void);

G_DEFINE_TYPE_WITH_CODE (TrialPage,
                         trial_page,
                         GTK_TYPE_BOX,
                         G_IMPLEMENT_INTERFACE (LB_TYPE_MAIN_PAGE, trial_page_main_page_init))

static void
trial_page_class_init (TrialPageClass *klass)
{
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
trial_page_init (TrialPage *self)
{
  self->zoomed = 1;
  self->entry = gtk_entry_new ();
  self->button = gtk_button_new_with_label ("Try");
  gtk_box_append (GTK_BOX (self), self->entry);
  gtk_box_append (GTK_BOX (self), self->button);
}

static void
trial_page_zoom (LbMainPage *page, double factor)
{
  ((TrialPage *) page)->zoomed *= factor;
}

static void
trial_page_fit (LbMainPage *page)
{
  ((TrialPage *) page)->fitted++;
}

static void
trial_page_move_page (LbMainPage *page, int direction)
{
  ((TrialPage *) page)->moved += direction;
}

static void
trial_page_main_page_init (LbMainPageInterface *iface)
{
  iface->zoom = trial_page_zoom;
  iface->fit = trial_page_fit;
  iface->move_page = trial_page_move_page;
}

static int made;
static LbSession *made_for;

static GtkWidget *
make_trial (LbSession *for_session)
{
  made++;
  made_for = for_session;
  return g_object_new (trial_page_get_type (), NULL);
}

static GtkWidget *
make_plain (LbSession *for_session)
{
  return gtk_button_new_with_label ("Plain");
}

static const LbMainPageKind trial = { "trial", "Trial", "F11", make_trial };
static const LbMainPageKind plain = { "plain", "Plain", NULL, make_plain };

static int
set_up_trial (void **state)
{
  made = 0;
  window = harness_window (1280, 800);
  lb_window_add_main_page (window, &trial);
  lb_window_add_main_page (window, &plain);
  harness_frame (GTK_WIDGET (window));
  return 0;
}

static TrialPage *
trial_page (void)
{
  return (TrialPage *) lb_window_get_main_page_widget (window, "trial");
}

/* ---- Help ---- */

/* The first widget of that type in `from`, or below it. */
static GtkWidget *
find (GtkWidget *from, GType type)
{
  GtkWidget *found = g_type_is_a (G_OBJECT_TYPE (from), type) ? from : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (from); child && !found;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, type);
  return found;
}

static GtkWidget *
the_switch (void)
{
  return find (gtk_window_get_titlebar (GTK_WINDOW (window)), LB_TYPE_PAGE_SWITCH);
}

/* The toggle buttons of the switch, in order. */
static GtkWidget *
switch_button (int n)
{
  GtkWidget *button = gtk_widget_get_first_child (gtk_widget_get_first_child (the_switch ()));

  for (; button && n > 0; n--)
    button = gtk_widget_get_next_sibling (button);
  return button;
}

static void
activate (const char *name)
{
  gtk_widget_activate_action (GTK_WIDGET (window), name, NULL);
}

static void
show (const char *name)
{
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.main-page", "s", name));
}

static gboolean
focus_is_in (GtkWidget *widget)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));

  return focus && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

static gboolean
is_on (GtkWidget *button)
{
  return gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (button));
}

/* ---- Tests ---- */

static void
the_switch_shows_with_a_second_page (void **state)
{
  gboolean several = lb_main_page_n_kinds > 1;

  assert_int_equal (gtk_widget_get_visible (the_switch ()), several);
  /* A laptop's window has room for a row of the program's own. */
  assert_true (lb_page_switch_is_row (LB_PAGE_SWITCH (the_switch ())));
  lb_window_add_main_page (window, &trial);
  assert_true (gtk_widget_get_visible (the_switch ()));
  assert_string_equal (lb_window_get_main_page (window), LB_MAIN_PAGE_SIDE_VIEW);
}

/* All that there is of a page before it is shown is its button. */
static void
a_page_is_made_when_it_is_first_shown (void **state)
{
  assert_int_equal (made, 0);
  assert_null (trial_page ());
  show ("trial");
  assert_int_equal (made, 1);
  assert_ptr_equal (made_for, session ());
  assert_true (gtk_widget_get_mapped (GTK_WIDGET (trial_page ())));
  assert_false (gtk_widget_get_mapped (GTK_WIDGET (lb_window_get_drawings (window))));
  show (LB_MAIN_PAGE_SIDE_VIEW);
  assert_true (gtk_widget_get_mapped (GTK_WIDGET (lb_window_get_drawings (window))));
  show ("trial");
  assert_int_equal (made, 1);
}

static void
a_name_of_no_page_changes_nothing (void **state)
{
  show ("nowhere");
  assert_string_equal (lb_window_get_main_page (window), LB_MAIN_PAGE_SIDE_VIEW);
}

static void
the_buttons_switch_and_follow (void **state)
{
  int n = (int) lb_main_page_n_kinds;

  assert_true (is_on (switch_button (0)));
  g_signal_emit_by_name (switch_button (n), "clicked");
  assert_string_equal (lb_window_get_main_page (window), "trial");
  assert_true (is_on (switch_button (n)));
  assert_false (is_on (switch_button (0)));
  /* A page that is shown stays when its button is pressed again. */
  g_signal_emit_by_name (switch_button (n), "clicked");
  assert_true (is_on (switch_button (n)));
  assert_string_equal (lb_window_get_main_page (window), "trial");
  show (LB_MAIN_PAGE_SIDE_VIEW);
  assert_true (is_on (switch_button (0)));
  assert_false (is_on (switch_button (n)));
  assert_string_equal (gtk_widget_get_tooltip_text (switch_button (n)), "Trial (F11)");
  assert_string_equal (gtk_widget_get_tooltip_text (switch_button (n + 1)), "Plain");
}

/* Each window is on its own page. */
static void
windows_do_not_share_it (void **state)
{
  LbWindow *first = window;
  LbWindow *other = harness_window (960, 600);

  lb_window_add_main_page (other, &trial);
  lb_window_show_main_page (other, "trial");
  assert_string_equal (lb_window_get_main_page (first), LB_MAIN_PAGE_SIDE_VIEW);
  assert_string_equal (lb_window_get_main_page (other), "trial");
  harness_close (other);
}

static void
the_focus_goes_along_and_comes_back (void **state)
{
  GtkWidget *before = gtk_window_get_focus (GTK_WINDOW (window));

  assert_non_null (before);
  show ("trial");
  assert_true (focus_is_in (GTK_WIDGET (trial_page ())));
  gtk_widget_grab_focus (trial_page ()->button);
  show (LB_MAIN_PAGE_SIDE_VIEW);
  assert_ptr_equal (gtk_window_get_focus (GTK_WINDOW (window)), before);
  show ("trial");
  assert_ptr_equal (gtk_window_get_focus (GTK_WINDOW (window)), trial_page ()->button);
  /* Who goes through the switch by Tab stays there. */
  gtk_widget_grab_focus (switch_button (0));
  show (LB_MAIN_PAGE_SIDE_VIEW);
  assert_true (focus_is_in (the_switch ()));
}

/* What is typed is taken over by leaving the page, as by leaving the entry. */
static void
what_is_typed_is_not_lost (void **state)
{
  LbSlider *slider = lb_controls_get_current (lb_window_get_controls (window));
  GtkWidget *entry = lb_slider_get_entry (slider);
  double before = setup ()->river.surface_current;

  gtk_widget_grab_focus (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), "1.2 m/s");
  show ("trial");
  assert_float_equal (setup ()->river.surface_current, 1.2, 1e-12);
  activate ("win.undo");
  assert_float_equal (setup ()->river.surface_current, before, 0);
  assert_string_equal (lb_window_get_main_page (window), "trial");
  activate ("win.redo");
  assert_float_equal (setup ()->river.surface_current, 1.2, 1e-12);
}

static gboolean
can (const char *action)
{
  GtkWidget *button = gtk_button_new ();
  gboolean sensitive;

  /* A button tells whether its action can be chosen. */
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (trial_page ()->entry)), button);
  sensitive = gtk_widget_get_sensitive (button);
  gtk_box_remove (GTK_BOX (gtk_widget_get_parent (trial_page ()->entry)), button);
  return sensitive;
}

static void
actions_are_those_of_the_page (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));
  const char *column_page = lb_window_get_page (window);
  gboolean stretched = lb_viewport_get_stretched (viewport);

  show ("trial");
  activate ("win.zoom-in");
  assert_less (1, trial_page ()->zoomed);
  activate ("win.zoom-out");
  assert_float_equal (trial_page ()->zoomed, 1, 1e-12);
  activate ("win.zoom-fit");
  assert_int_equal (trial_page ()->fitted, 1);
  activate ("win.next-page");
  activate ("win.next-page");
  activate ("win.previous-page");
  assert_int_equal (trial_page ()->moved, 1);
  assert_string_equal (lb_window_get_page (window), column_page);
  assert_true (can ("win.zoom-in"));
  assert_true (can ("win.save"));
  assert_false (can ("win.scale-true"));
  activate ("win.scale-true");
  activate ("win.scale-stretched");
  assert_int_equal (lb_viewport_get_stretched (viewport), stretched);
  show ("plain");
  assert_false (can ("win.zoom-in"));
  assert_false (can ("win.next-page"));
  show (LB_MAIN_PAGE_SIDE_VIEW);
  assert_true (can ("win.scale-true"));
  assert_true (can ("win.next-page"));
}

/* The column and the sliders are beside the side view. */
static void
what_is_on_the_side_view_brings_it_back (void **state)
{
  show ("trial");
  assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.show-page", "s", "river"));
  assert_string_equal (lb_window_get_main_page (window), LB_MAIN_PAGE_SIDE_VIEW);
  assert_string_equal (lb_window_get_page (window), "river");
  assert_true (focus_is_in (GTK_WIDGET (lb_window_get_river_page (window))));
  show ("trial");
  activate ("win.focus-line");
  assert_string_equal (lb_window_get_main_page (window), LB_MAIN_PAGE_SIDE_VIEW);
  assert_true (focus_is_in (GTK_WIDGET (lb_window_get_controls (window))));
}

/* F6: the parts of the page, then the bar of buttons, and round again. */
static void
panes_are_those_of_the_page (void **state)
{
  GtkWidget *bar = gtk_window_get_titlebar (GTK_WINDOW (window));

  show ("trial");
  assert_true (focus_is_in (trial_page ()->entry));
  activate ("win.next-pane");
  assert_true (focus_is_in (trial_page ()->button));
  activate ("win.next-pane");
  assert_true (focus_is_in (bar));
  activate ("win.next-pane");
  assert_true (focus_is_in (trial_page ()->entry));
  activate ("win.previous-pane");
  assert_true (focus_is_in (bar));
}

static void
an_opened_file_stays_on_the_page (void **state)
{
  show ("trial");
  lb_session_open_new (session ());
  harness_solved (window);
  assert_string_equal (lb_window_get_main_page (window), "trial");
}

/* A small window has no room for a row of the program's own pages beside the name of the rig. */
static void
a_narrow_window_has_a_menu (void **state)
{
  int width, height;
  g_autofree guchar *wide = NULL;
  g_autofree guchar *narrow = NULL;

  harness_pause (100);
  wide = harness_picture (window, "main-pages-960", 1, &width, &height);
  assert_int_equal (width, 960);
  assert_false (lb_page_switch_is_row (LB_PAGE_SWITCH (the_switch ())));
  lb_window_add_main_page (window, &trial);
  lb_window_add_main_page (window, &plain);
  g_object_set (lb_application_get_preferences (harness_application ()), "text-size", "largest",
                NULL);
  show ("trial");
  harness_pause (300);
  narrow = harness_picture (window, "main-pages-largest", 1, &width, &height);
  assert_true (width <= 1100);
  assert_false (lb_page_switch_is_row (LB_PAGE_SWITCH (the_switch ())));
  assert_string_equal (
      gtk_menu_button_get_label (GTK_MENU_BUTTON (find (the_switch (), GTK_TYPE_MENU_BUTTON))),
      "Trial");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up_trial, tear_down)
    cmocka_unit_test_setup_teardown (the_switch_shows_with_a_second_page, set_up, tear_down),
    TEST (a_page_is_made_when_it_is_first_shown),
    TEST (a_name_of_no_page_changes_nothing),
    TEST (the_buttons_switch_and_follow),
    cmocka_unit_test_setup_teardown (windows_do_not_share_it, set_up_trial, tear_down),
    TEST (the_focus_goes_along_and_comes_back),
    TEST (what_is_typed_is_not_lost),
    TEST (actions_are_those_of_the_page),
    TEST (what_is_on_the_side_view_brings_it_back),
    TEST (panes_are_those_of_the_page),
    TEST (an_opened_file_stays_on_the_page),
    cmocka_unit_test_setup_teardown (a_narrow_window_has_a_menu, set_up_small, tear_down),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
