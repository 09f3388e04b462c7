/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The card's page of the window: the preview and the choices. */
#include "one_card.h"

#include <string.h>

#include "line_entry.h"
#include "quantity_entry.h"

/* ---- Preview ---- */

static void
the_card_is_shown_page_by_page (void **state)
{
  gsize n = lb_card_drawing_n_sheets (drawing ());
  g_autofree char *first = g_strdup_printf ("Page 1 of %d", (int) n);

  assert_true (n > 1);
  assert_string_equal (lb_card_pane_bar_get_page (bar ()), first);
  activate ("win.previous-page");
  assert_int_equal (lb_card_pane_get_sheet (pane ()), 0);
  activate ("win.next-page");
  assert_int_equal (lb_card_pane_get_sheet (pane ()), 1);
  for (gsize i = 0; i < n + 2; i++)
    activate ("win.next-page");
  assert_int_equal (lb_card_pane_get_sheet (pane ()), n - 1);
  assert_false (gtk_widget_is_sensitive (named ("Next page of the card")));
  assert_true (gtk_widget_is_sensitive (named ("Previous page of the card")));
}

/* What is drawn is told to a screen reader. */
static void
the_preview_has_a_text_twin (void **state)
{
  for (gsize i = 0; i < lb_card_drawing_n_sheets (drawing ()); i++)
    {
      g_autofree char *words = lb_card_drawing_describe (drawing (), i);

      assert_true (strlen (words) > 20);
      assert_null (gtk_test_accessible_check_property (GTK_ACCESSIBLE (preview ()),
                                                       GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words));
      activate ("win.next-page");
    }
}

/* True size: a point is 1/72 in, and the screen of the tests tells how many pixels it has to the
 * inch, as the X server does. */
static void
true_size_is_that_of_the_screen (void **state)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (window));
  GdkMonitor *monitor =
      gdk_display_get_monitor_at_surface (gdk_surface_get_display (surface), surface);
  GdkRectangle geometry;
  double scale;

  gdk_monitor_get_geometry (monitor, &geometry);
  assert_true (lb_card_preview_is_fit (preview ()));
  activate ("win.scale-true");
  assert_true (lb_card_preview_is_true_size (preview ()));
  scale = lb_card_preview_get_scale (preview ());
  assert_relative (scale * 72, geometry.width / (gdk_monitor_get_width_mm (monitor) / 25.4), 1e-9);
  harness_frame (GTK_WIDGET (window));
  /* 4 in by 6 in, and the margin around it */
  assert_true (gtk_widget_get_width (GTK_WIDGET (preview ())) >= 4 * 72 * scale);
  assert_true (gtk_widget_get_height (GTK_WIDGET (preview ())) >= 6 * 72 * scale);
  activate ("win.zoom-in");
  assert_relative (lb_card_preview_get_scale (preview ()), 1.25 * scale, 1e-9);
  activate ("win.zoom-fit");
  assert_true (lb_card_preview_is_fit (preview ()));
}

/* The whole sheet is to be seen, in a small window as in a large one. */
static void
fit_shows_the_whole_sheet (void **state)
{
  double width, height;

  lb_card_drawing_sheet_size (drawing (), 0, &width, &height);
  harness_frame (GTK_WIDGET (window));
  assert_true (width * lb_card_preview_get_scale (preview ())
               <= gtk_widget_get_width (GTK_WIDGET (preview ())));
  assert_true (height * lb_card_preview_get_scale (preview ())
               <= gtk_widget_get_height (GTK_WIDGET (preview ())));
}

/* While a card is computed, the window answers: no turn of the main loop takes long. */
static void
computing_blocks_nothing (void **state)
{
  gint64 longest = 0;
  gint64 end = g_get_monotonic_time () + 30 * G_USEC_PER_SEC;
  GtkAdjustment *current =
      harness_adjustment (lb_controls_get_current (lb_window_get_controls (window)));

  gtk_adjustment_set_value (current, gtk_adjustment_get_value (current) * 1.2);
  assert_false (lb_card_maker_is_current (maker ()));
  assert_non_null (lb_card_pane_bar_get_text (bar ()));
  while (!lb_card_maker_is_current (maker ()) && g_get_monotonic_time () < end)
    {
      gint64 start = g_get_monotonic_time ();

      if (!g_main_context_iteration (NULL, FALSE))
        g_usleep (500);
      longest = MAX (longest, g_get_monotonic_time () - start);
    }
  assert_true (lb_card_maker_is_current (maker ()));
  assert_null (lb_card_pane_bar_get_text (bar ()));
  print_message ("longest turn %.1f ms\n", (double) longest / 1000);
  /* Half a second is far above what it takes on a busy machine, and far below the computation. */
  assert_true (longest < 500000);
}

/* Moving a slider on and on asks for one card at the end, not for one at every step. */
static void
nothing_is_computed_while_it_is_not_looked_at (void **state)
{
  LbMadeCard *before = lb_made_card_ref (lb_card_maker_get_card (maker ()));
  GtkAdjustment *current;

  lb_window_show_main_page (window, LB_MAIN_PAGE_SIDE_VIEW);
  current = harness_adjustment (lb_controls_get_current (lb_window_get_controls (window)));
  gtk_adjustment_set_value (current, gtk_adjustment_get_value (current) * 1.1);
  harness_pause (400);
  assert_ptr_equal (lb_card_maker_get_card (maker ()), before);
  assert_false (lb_card_maker_is_current (maker ()));
  lb_window_show_main_page (window, LB_MAIN_PAGE_CARD);
  wait_for_card ();
  assert_ptr_not_equal (lb_card_maker_get_card (maker ()), before);
  lb_made_card_unref (before);
}

/* ---- Choices ---- */

/* Paper is laid out at once, without computing. */
static void
paper_changes_at_once_and_can_be_undone (void **state)
{
  GtkWidget *size = named ("Size of the card: 4 × 6 in");
  double width, height;

  gtk_drop_down_set_selected (GTK_DROP_DOWN (gtk_widget_get_ancestor (size, GTK_TYPE_DROP_DOWN)),
                              LB_CARD_A5);
  assert_int_equal (card ()->size, LB_CARD_A5);
  assert_true (lb_card_maker_is_current (maker ()));
  /* ISO 216: A5 is 148 mm by 210 mm. */
  lb_card_drawing_sheet_size (drawing (), 0, &width, &height);
  assert_near (width / 72 * 25.4, 148, 0.01);
  assert_near (height / 72 * 25.4, 210, 0.01);
  activate ("win.undo");
  assert_int_equal (card ()->size, LB_CARD_4X6);
  lb_card_drawing_sheet_size (drawing (), 0, &width, &height);
  assert_near (width, 4 * 72, 0.01);
  assert_near (height, 6 * 72, 0.01);
  assert_string_equal (lb_window_get_main_page (window), LB_MAIN_PAGE_CARD);
}

static void
a_size_of_ones_own (void **state)
{
  GtkWidget *size = named ("Size of the card: 4 × 6 in");
  double width, height;

  assert_false (gtk_widget_get_mapped (named ("Width of the card")));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (gtk_widget_get_ancestor (size, GTK_TYPE_DROP_DOWN)),
                              LB_CARD_OWN_SIZE);
  harness_frame (GTK_WIDGET (window));
  assert_true (gtk_widget_get_mapped (named ("Width of the card")));
  enter ("Width of the card", "10 cm");
  enter ("Height of the card", "5 1/2 in");
  lb_card_drawing_sheet_size (drawing (), 0, &width, &height);
  assert_near (width / 72 * 25.4, 100, 0.01);
  assert_near (height, 5.5 * 72, 0.01);
  enter ("Width of the card", "9 ft");
  assert_near (card ()->own_width, 0.1, 1e-12);
  assert_non_null (lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (named ("Width of the card"))));
}

static gboolean
is_said_on_a_sheet (const char *words)
{
  gboolean said = FALSE;

  for (gsize i = 0; i < lb_card_drawing_n_sheets (drawing ()); i++)
    {
      g_autofree char *all = lb_card_drawing_describe (drawing (), i);

      said |= strstr (all, words) != NULL;
    }
  return said;
}

static void
parts_are_printed_or_not (void **state)
{
  GtkCheckButton *gauge = GTK_CHECK_BUTTON (named ("Wire-angle gauge"));

  assert_true (gtk_check_button_get_active (gauge));
  gtk_check_button_set_active (gauge, FALSE);
  assert_false (card ()->prints[LB_CARD_PART_GAUGE]);
  assert_true (card ()->prints[LB_CARD_PART_TABLE]);
  wait_for_card ();
  activate ("win.undo");
  assert_true (gtk_check_button_get_active (gauge));
  assert_true (card ()->prints[LB_CARD_PART_GAUGE]);
}

/* Weights laid over one another: drawn, and told in the text twin, until it is undone. */
static void
variants_are_drawn_over_one_another (void **state)
{
  const char *name = "Variants over one another in it";
  LbDocument *document = lb_session_get_document (session ());
  const LbCardContents *contents;
  g_autofree char *text = NULL;

  lb_session_do (session (), lb_change_new_add_variant (document, "Heavy one"));
  lb_session_do (session (), lb_change_new_add_variant (document, "Other one"));
  lb_session_do (session (),
                 lb_change_new_set_override (document, 0, lb_field ("weight.mass_kg"), 0, 0.9));
  wait_for_card ();
  assert_null (lb_made_card_get_contents (lb_card_maker_get_card (maker ()))->runs);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (named (name)), TRUE);
  assert_true (card ()->running_variants);
  wait_for_card ();
  contents = lb_made_card_get_contents (lb_card_maker_get_card (maker ()));
  assert_non_null (contents->runs);
  assert_int_equal (contents->runs->n, 2);
  assert_near (contents->runs->runs[0].setup->rig.weight.mass, 0.9, 1e-12);
  text = lb_card_contents_dup_text (contents);
  assert_non_null (strstr (text, "Heavy one: "));
  assert_true (is_said_on_a_sheet ("Heavy one"));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (named ("Running diagram")), FALSE);
  assert_false (gtk_widget_is_sensitive (named (name)));
  activate ("win.undo");
  activate ("win.undo");
  assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (named (name))));
  wait_for_card ();
  assert_false (is_said_on_a_sheet ("Heavy one"));
}

static void
terminations_are_the_users_words (void **state)
{
  enter ("Leader to lure: knot, crimp or the like", "  double crimp ");
  enter ("Leader to lure: line for each end", "6 in");
  assert_string_equal (card ()->terminations[LB_CARD_LEADER_TO_LURE].how.text, "double crimp");
  assert_near (card ()->terminations[LB_CARD_LEADER_TO_LURE].allowance, 0.1524, 1e-12);
  activate ("win.undo");
  activate ("win.undo");
  assert_string_equal (card ()->terminations[LB_CARD_LEADER_TO_LURE].how.text, "");
  assert_string_equal (
      gtk_editable_get_text (GTK_EDITABLE (named ("Leader to lure: knot, crimp or the like"))), "");
}

/* Words that are typed and not entered are taken over by printing, as by saving. */
static void
what_is_typed_is_on_the_card (void **state)
{
  GtkWidget *entry = named ("Shank to weight: knot, crimp or the like");

  gtk_widget_grab_focus (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), "split ring");
  activate ("win.copy-card");
  assert_string_equal (card ()->terminations[LB_CARD_SHANK_TO_WEIGHT].how.text, "split ring");
}

static void
hardware_is_listed (void **state)
{
  GtkWidget *add = find (GTK_WIDGET (pane ()), is_named, "Add hardware");

  if (!add)
    add = named ("Add hardware");
  press (add);
  press (add);
  assert_int_equal (card ()->n_hardware, 2);
  enter ("Hardware 1: what", "barrel swivel");
  enter ("Hardware 2: what", "sleeve");
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (named ("Hardware 2: how many")), 12);
  assert_string_equal (card ()->hardware[1].what.text, "sleeve");
  assert_int_equal (card ()->hardware[1].count, 12);
  press (named ("Hardware 2: up"));
  assert_string_equal (card ()->hardware[0].what.text, "sleeve");
  assert_int_equal (card ()->hardware[0].count, 12);
  assert_string_equal (card ()->hardware[1].what.text, "barrel swivel");
  press (named ("Hardware 1: take away"));
  assert_int_equal (card ()->n_hardware, 1);
  assert_string_equal (card ()->hardware[0].what.text, "barrel swivel");
  for (int i = 0; i < 7; i++)
    activate ("win.undo");
  assert_int_equal (card ()->n_hardware, 0);
  for (int i = 0; i < 7; i++)
    activate ("win.redo");
  assert_int_equal (card ()->n_hardware, 1);
}

static void
depths_and_currents_of_the_table (void **state)
{
  GtkWidget *kind = named ("Depths of the table: around the rig’s own");

  gtk_drop_down_set_selected (GTK_DROP_DOWN (gtk_widget_get_ancestor (kind, GTK_TYPE_DROP_DOWN)),
                              LB_CARD_SERIES_LIST);
  assert_int_equal (card ()->series[LB_CARD_SERIES_OF_DEPTHS].kind, LB_CARD_SERIES_LIST);
  /* It begins with what there was around the rig's own. */
  assert_int_equal (card ()->series[LB_CARD_SERIES_OF_DEPTHS].n, LB_CARD_AROUND_VALUES);
  enter ("Depths of the table, as listed", "20 ft; 10 ft; 4.5 m");
  assert_int_equal (card ()->series[LB_CARD_SERIES_OF_DEPTHS].n, 3);
  assert_near (card ()->series[LB_CARD_SERIES_OF_DEPTHS].values[0], 3.048, 1e-12);
  assert_near (card ()->series[LB_CARD_SERIES_OF_DEPTHS].values[1], 4.5, 1e-12);
  enter ("Depths of the table, as listed", "20 ft; nonsense");
  assert_int_equal (card ()->series[LB_CARD_SERIES_OF_DEPTHS].n, 3);
  assert_non_null (
      lb_line_entry_get_fault (LB_LINE_ENTRY (named ("Depths of the table, as listed"))));
  wait_for_card ();
}

/* ---- By keyboard ---- */

static void
the_keyboard_reaches_all (void **state)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));
  gboolean met_entry = FALSE, met_button = FALSE;
  GtkWidget *choices = gtk_widget_get_last_child (GTK_WIDGET (pane ()));

  /* It begins on the preview, whose own keys turn the pages. */
  assert_ptr_equal (focus, preview ());
  activate ("win.next-pane");
  focus = gtk_window_get_focus (GTK_WINDOW (window));
  assert_true (gtk_widget_is_ancestor (focus, choices));
  for (int i = 0; i < 60; i++)
    {
      gtk_widget_child_focus (GTK_WIDGET (window), GTK_DIR_TAB_FORWARD);
      focus = gtk_window_get_focus (GTK_WINDOW (window));
      met_entry |= focus && gtk_widget_get_ancestor (focus, LB_TYPE_LINE_ENTRY) != NULL;
      met_button |= focus && is_named (focus, "Next page of the card");
    }
  assert_true (met_entry);
  assert_true (met_button);
}

/* ---- Pictures ---- */

static void
give_all_choices (void)
{
  LbCard choice = *card ();

  choice.n_hardware = 2;
  choice.hardware[0].count = 2;
  lb_card_words_set (&choice.hardware[0].what, "barrel swivel");
  choice.hardware[1].count = 12;
  lb_card_words_set (&choice.hardware[1].what, "sleeve, 1.2 mm");
  choice.size = LB_CARD_OWN_SIZE;
  choice.series[LB_CARD_SERIES_OF_DEPTHS] =
      (LbCardSeries){ .kind = LB_CARD_SERIES_STEPS, .from = 3, .to = 6, .step = 1 };
  choice.series[LB_CARD_SERIES_OF_CURRENTS] =
      (LbCardSeries){ .kind = LB_CARD_SERIES_LIST, .n = 2, .values = { 1, 2 } };
  lb_session_do (session (), lb_change_new_card (&choice, NULL));
  wait_for_card ();
}

static void
take_pictures (const char *name, int width, int height)
{
  LbPreferences *preferences = lb_application_get_preferences (harness_application ());
  g_autofree char *dark_name = g_strconcat (name, "-dark", NULL);
  int real_width, real_height;
  g_autofree guchar *light = NULL;
  g_autofree guchar *dark = NULL;

  show_card (width, height);
  give_all_choices ();
  light = harness_picture (window, name, 1, &real_width, &real_height);
  assert_int_equal (real_width, width);
  assert_int_equal (real_height, height);
  g_object_set (preferences, "theme", "dark", NULL);
  harness_pause (400);
  dark = harness_picture (window, dark_name, 1, &real_width, &real_height);
  harness_close (window);
}

static void
pictures (void **state)
{
  take_pictures ("card-1280", 1280, 800);
  take_pictures ("card-960", 960, 600);
}

/* The lower half of the choices, and the largest letters. */
static void
more_pictures (void **state)
{
  GtkAdjustment *adjustment;
  int width, height;
  g_autofree guchar *low = NULL;
  g_autofree guchar *large = NULL;

  show_card (960, 600);
  give_all_choices ();
  adjustment = gtk_scrolled_window_get_vadjustment (
      GTK_SCROLLED_WINDOW (gtk_widget_get_last_child (GTK_WIDGET (pane ()))));
  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_upper (adjustment));
  low = harness_picture (window, "card-960-low", 1, &width, &height);
  g_object_set (lb_application_get_preferences (harness_application ()), "text-size", "largest",
                NULL);
  harness_pause (300);
  large = harness_picture (window, "card-960-largest", 1, &width, &height);
  assert_true (width <= 1100);
  harness_close (window);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up_card, tear_down)
    TEST (the_card_is_shown_page_by_page),
    TEST (the_preview_has_a_text_twin),
    TEST (true_size_is_that_of_the_screen),
    TEST (fit_shows_the_whole_sheet),
    TEST (computing_blocks_nothing),
    TEST (nothing_is_computed_while_it_is_not_looked_at),
    TEST (paper_changes_at_once_and_can_be_undone),
    TEST (a_size_of_ones_own),
    TEST (parts_are_printed_or_not),
    TEST (variants_are_drawn_over_one_another),
    TEST (terminations_are_the_users_words),
    TEST (what_is_typed_is_on_the_card),
    TEST (hardware_is_listed),
    TEST (depths_and_currents_of_the_table),
    TEST (the_keyboard_reaches_all),
    cmocka_unit_test (pictures),
    cmocka_unit_test (more_pictures),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
