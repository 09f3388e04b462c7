/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The Compare page: variants made, changed and taken away by its buttons and entries, undone by the
 * window's undo; what its drawings and its table then say. */
#include "one_window.h"

#include <string.h>

#include "compare_page.h"
#include "quantity_entry.h"
#include "variant_adder.h"

static LbComparePage *page;

static gboolean
is_done (gpointer data)
{
  return !lb_compare_page_get_busy (page);
}

static void
settle (void)
{
  harness_wait (is_done, NULL, "the comparison");
  harness_frame (GTK_WIDGET (page));
}

static void
open_page (void)
{
  lb_window_show_main_page (window, LB_MAIN_PAGE_COMPARE);
  page = LB_COMPARE_PAGE (lb_window_get_main_page_widget (window, LB_MAIN_PAGE_COMPARE));
  settle ();
}

static int
open_in_small (void **state)
{
  set_up_small (state);
  open_page ();
  return 0;
}

static int
open_in_large (void **state)
{
  set_up (state);
  open_page ();
  return 0;
}

static const LbVariants *
variants (void)
{
  return &lb_document_get_contents (lb_session_get_document (session ()))->variants;
}

static void
click (GtkWidget *button)
{
  assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
  settle ();
}

static const char *
cell (int row, int column)
{
  return lb_compare_table_get_text (lb_compare_page_get_table (page), row, column);
}

static char *
description (void)
{
  return lb_compare_drawings_describe (lb_compare_page_get_drawings (page));
}

static void
picture (const char *name)
{
  int width, height;
  g_autofree guchar *pixels = NULL;

  harness_pause (300);
  pixels = harness_picture (window, name, 1, &width, &height);
}

/* ---- Cases ---- */

static void
the_rig_stands_alone_at_first (void **state)
{
  g_autofree char *words = description ();

  assert_int_equal (variants ()->n, 0);
  assert_false (gtk_widget_get_visible (GTK_WIDGET (lb_compare_page_get_card (page, 0))));
  assert_non_null (strstr (words, "As it is, as a solid line: wire "));
  assert_non_null (cell (0, 0));
  assert_null (cell (0, 1));
  picture ("compare-none");
}

/* One click: four of the seven weights owned, about the rig's own. */
static void
one_click_compares_the_weights_owned (void **state)
{
  g_autofree char *words = NULL;

  click (lb_compare_page_get_weights_button (page));
  words = description ();
  assert_int_equal (variants ()->n, 4);
  for (gsize i = 0; i < 4; i++)
    {
      const char *line = lb_compare_table_get_line (lb_compare_page_get_table (page), (int) i);

      assert_true (g_str_has_prefix (line, variants ()->list[i].name));
      assert_non_null (strstr (words, variants ()->list[i].name));
      assert_true (gtk_widget_get_visible (GTK_WIDGET (lb_compare_page_get_card (page, i))));
    }
  assert_non_null (strstr (cell (0, 3), " steeper"));
  assert_non_null (strstr (cell (1, 3), " less"));
  assert_false (gtk_widget_is_sensitive (lb_compare_page_get_add_button (page)));
  picture ("compare-weights");
  lb_session_undo (session ());
  settle ();
  assert_int_equal (variants ()->n, 0);
}

static void
pictures_in_the_dark (void **state)
{
  g_object_set (lb_application_get_preferences (harness_application ()), "theme", "dark", NULL);
  click (lb_compare_page_get_weights_button (page));
  picture ("compare-dark");
}

static void
a_small_window_holds_it (void **state)
{
  int width, height;
  g_autofree guchar *pixels = NULL;

  click (lb_compare_page_get_weights_button (page));
  harness_pause (300);
  pixels = harness_picture (window, "compare-960x600", 1, &width, &height);
  assert_int_equal (width, 960);
  assert_int_equal (height, 600);
}

static void
type (GtkWidget *entry, const char *text)
{
  gtk_widget_grab_focus (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
  settle ();
}

static void
variants_are_made_by_hand (void **state)
{
  const LbField *mass = lb_field ("weight.mass_kg"), *length = lb_field ("leaders[].length_m");
  LbVariantCard *card;
  GtkWidget *entry;

  click (lb_compare_page_get_add_button (page));
  assert_int_equal (variants ()->n, 2);
  card = lb_compare_page_get_card (page, 1);
  type (lb_variant_card_get_name (card), "heavy");
  assert_string_equal (variants ()->list[1].name, "heavy");
  assert_true (lb_variant_adder_add (session (), 1, mass, 0));
  assert_true (lb_variant_adder_add (session (), 1, length, 1));
  entry = lb_variant_card_get_value (card, mass, 0);
  assert_non_null (entry);
  type (entry, "3 lb");
  /* The international pound of 1959. */
  assert_near (lb_variant_get_override (&variants ()->list[1], mass, 0)->value, 3 * 0.45359237,
               1e-12);
  type (lb_variant_card_get_value (card, length, 1), "12 ft");
  settle ();
  assert_non_null (strstr (cell (0, 1), " steeper"));
  picture ("compare-by-hand");
  /* What cannot be is told, and changes nothing. */
  type (entry, "90 lb");
  assert_non_null (lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (entry)));
  assert_near (lb_variant_get_override (&variants ()->list[1], mass, 0)->value, 3 * 0.45359237,
               1e-12);
  for (int i = 0; i < 6; i++)
    lb_session_undo (session ());
  settle ();
  assert_int_equal (variants ()->n, 0);
}

/* What a file may leave to the published curve a variant may, too: by an empty text, as in the rig.
 */
static void
a_value_can_be_emptied (void **state)
{
  const LbField *drag = lb_field ("weight.drag_coefficient"), *mass = lb_field ("weight.mass_kg");
  GtkWidget *entry;

  click (lb_compare_page_get_add_button (page));
  assert_true (lb_variant_adder_add (session (), 1, drag, 0));
  entry = lb_variant_card_get_value (lb_compare_page_get_card (page, 1), drag, 0);
  type (entry, "0.7");
  assert_near (lb_variant_get_override (&variants ()->list[1], drag, 0)->value, 0.7, 1e-12);
  type (entry, " ");
  assert_int_equal (variants ()->list[1].n_overrides, 1);
  assert_false (lb_is_set (lb_variant_get_override (&variants ()->list[1], drag, 0)->value));
  assert_null (lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (entry)));
  lb_session_undo (session ());
  settle ();
  assert_near (lb_variant_get_override (&variants ()->list[1], drag, 0)->value, 0.7, 1e-12);
  /* A weight has no such other way to be. */
  assert_true (lb_variant_adder_add (session (), 1, mass, 0));
  entry = lb_variant_card_get_value (lb_compare_page_get_card (page, 1), mass, 0);
  type (entry, "");
  assert_non_null (lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (entry)));
  assert_near (lb_variant_get_override (&variants ()->list[1], mass, 0)->value,
               setup ()->rig.weight.mass, 1e-12);
}

static void
activate (const char *action)
{
  gtk_widget_activate_action (GTK_WIDGET (window), action, NULL);
  harness_frame (GTK_WIDGET (page));
}

static LbView
view (void)
{
  LbViewport *viewport = lb_compare_drawings_get_viewport (lb_compare_page_get_drawings (page));

  return *lb_viewport_get_view (viewport);
}

static gboolean
key (guint value)
{
  GtkWidget *drawings = GTK_WIDGET (lb_compare_page_get_drawings (page));
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (drawings);
  gboolean taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (all) && !taken; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (all, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", value, 0, 0, &taken);
    }
  harness_frame (GTK_WIDGET (page));
  return taken;
}

/* Closer and moved by actions and keys; it stays so while values change, until all is shown again.
 */
static void
the_drawing_zooms_and_moves (void **state)
{
  LbView whole, near, moved;

  click (lb_compare_page_get_weights_button (page));
  whole = view ();
  activate ("win.zoom-in");
  near = view ();
  assert_relative (near.per_metre_x, 1.25 * whole.per_metre_x, 1e-9);
  assert_true (key (GDK_KEY_Right));
  assert_true (key (GDK_KEY_Up));
  moved = view ();
  assert_true (moved.x_left > near.x_left);
  assert_true (moved.z_top > near.z_top);
  assert_relative (moved.per_metre_x, near.per_metre_x, 1e-12);
  picture ("compare-near");
  lb_session_set_value (session (), lb_field ("river.surface_current_m_s"), 0, 1.3, 0);
  settle ();
  assert_memory_equal (&moved, &(LbView[]){ view () }, sizeof moved);
  assert_true (key (GDK_KEY_minus));
  assert_relative (view ().per_metre_x, moved.per_metre_x / 1.25, 1e-9);
  activate ("win.zoom-fit");
  assert_true (view ().per_metre_x < near.per_metre_x);
  activate ("win.scale-stretched");
  harness_frame (GTK_WIDGET (page));
  assert_true (view ().per_metre_z >= 2 * view ().per_metre_x);
  picture ("compare-stretched");
  activate ("win.scale-true");
  harness_frame (GTK_WIDGET (page));
  assert_true (view ().per_metre_z == view ().per_metre_x);
  assert_false (key (GDK_KEY_Tab));
}

static void
names_are_told_apart (void **state)
{
  GtkWidget *name;

  click (lb_compare_page_get_add_button (page));
  name = lb_variant_card_get_name (lb_compare_page_get_card (page, 1));
  type (name, "As it is");
  assert_string_equal (variants ()->list[1].name, "Variant 2");
  type (name, "   ");
  assert_string_equal (variants ()->list[1].name, "Variant 2");
  type (name, "  fast ");
  assert_string_equal (variants ()->list[1].name, "fast");
}

/* Choosing in the list adds the value that the document has, and the list is ready for another. */
static void
the_list_of_values_adds_one (void **state)
{
  GtkDropDown *list;

  click (lb_compare_page_get_add_button (page));
  list = GTK_DROP_DOWN (lb_variant_card_get_adder (lb_compare_page_get_card (page, 1)));
  assert_true (g_list_model_get_n_items (gtk_drop_down_get_model (list)) > 50);
  gtk_drop_down_set_selected (list, 1);
  settle ();
  assert_int_equal (gtk_drop_down_get_selected (list), 0);
  assert_int_equal (variants ()->list[1].n_overrides, 1);
  assert_string_equal (variants ()->list[1].overrides[0].field->path, "weight.mass_kg");
  assert_true (variants ()->list[1].overrides[0].value == setup ()->rig.weight.mass);
}

/* Every value of the list can be added to a variant and solved or explained. */
static void
every_value_can_be_chosen (void **state)
{
  GtkDropDown *list;
  guint n;

  click (lb_compare_page_get_add_button (page));
  list = GTK_DROP_DOWN (lb_variant_card_get_adder (lb_compare_page_get_card (page, 1)));
  n = g_list_model_get_n_items (gtk_drop_down_get_model (list));
  for (guint i = 1; i < n; i++)
    {
      gtk_drop_down_set_selected (list, i);
      if (variants ()->list[1].n_overrides != 1)
        fail_msg ("value %u is not added", i);
      settle ();
      lb_session_undo (session ());
    }
}

static void
what_has_no_answer_says_so (void **state)
{
  const char *line;
  g_autofree char *words = NULL;

  click (lb_compare_page_get_add_button (page));
  lb_session_do (session (), lb_change_new_set_override (lb_session_get_document (session ()), 1,
                                                         lb_field ("shank.length_m"), 0, 0.1));
  settle ();
  words = description ();
  line = lb_compare_table_get_line (lb_compare_page_get_table (page), 1);
  assert_non_null (strstr (line, "Leader "));
  assert_non_null (strstr (words, "Variant 2 is not drawn: "));
  assert_string_equal (cell (0, 1), "-");
  picture ("compare-no-answer");
}

/* While another page is shown nothing is solved; coming back shows the document as it is now. */
static void
the_page_follows_the_document (void **state)
{
  const LbField *depth = lb_field ("river.depth_m");
  g_autofree char *before = g_strdup (cell (1, 0));

  lb_window_show_main_page (window, LB_MAIN_PAGE_SIDE_VIEW);
  lb_session_set_value (session (), depth, 0, 9, 0);
  harness_solved (window);
  assert_string_equal (cell (1, 0), before);
  lb_window_show_main_page (window, LB_MAIN_PAGE_COMPARE);
  settle ();
  assert_string_not_equal (cell (1, 0), before);
  g_object_set (lb_application_get_preferences (harness_application ()), "units", "metric", NULL);
  harness_frame (GTK_WIDGET (page));
  assert_non_null (strstr (cell (1, 0), " m"));
}

#define IN_LARGE(f) cmocka_unit_test_setup_teardown (f, open_in_large, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    IN_LARGE (the_rig_stands_alone_at_first),
    IN_LARGE (one_click_compares_the_weights_owned),
    IN_LARGE (pictures_in_the_dark),
    cmocka_unit_test_setup_teardown (a_small_window_holds_it, open_in_small, tear_down),
    IN_LARGE (variants_are_made_by_hand),
    IN_LARGE (a_value_can_be_emptied),
    IN_LARGE (the_drawing_zooms_and_moves),
    IN_LARGE (names_are_told_apart),
    IN_LARGE (the_list_of_values_adds_one),
    IN_LARGE (every_value_can_be_chosen),
    IN_LARGE (what_has_no_answer_says_so),
    IN_LARGE (the_page_follows_the_document),
  };

  harness_start ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
