/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The import window: reading with progress, what it tells, its options, and the bed in the
 * document. The expected beds are worked by hand from the tables below. */
#include "one_window.h"

#include <string.h>

#include "import_window.h"

static LbImportWindow *
import_window (void)
{
  GtkWidget *found = harness_toplevel (LB_TYPE_IMPORT_WINDOW);

  return found ? LB_IMPORT_WINDOW (found) : NULL;
}

static gboolean
is_done (gpointer data)
{
  return import_window () && lb_import_window_get_state (import_window ()) != LB_IMPORT_READING;
}

static gboolean
is_gone (gpointer data)
{
  return !import_window ();
}

/* Drops a log of that text on the window and waits until it is read. */
static LbImportWindow *
drop (const char *name, const char *text)
{
  g_autoptr (GFile) file = harness_file_with (name, text);

  lb_window_take_file (window, file);
  harness_wait (is_done, NULL, "the log to be read");
  return import_window ();
}

/* 100 m in steps of half a metre: 4 m deep, 6 m from 50 m on; a spike of 12 m at 20 m. */
static char *
table_of_bed (void)
{
  GString *text = g_string_new ("distance;depth\n");

  for (int i = 0; i <= 200; i++)
    g_string_append_printf (text, "%d,%d;%s\n", i / 2, i % 2 * 5,
                            i == 40   ? "12,0"
                            : i < 100 ? "4,0"
                                      : "6,0");
  g_string_append (text, "not a line\n");
  return g_string_free (text, FALSE);
}

static void
press_use (LbImportWindow *import)
{
  g_signal_emit_by_name (lb_import_window_get_use_button (import), "clicked");
  harness_wait (is_gone, NULL, "the window to close");
}

static void
type (LbQuantityEntry *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

/* ---- Tests ---- */

/* The boat went upstream: what was logged last, 6 m deep, lies upstream at 0. */
static void
a_table_becomes_a_bed_in_one_step (void **state)
{
  g_autofree char *text = table_of_bed ();
  LbImportWindow *import = drop ("bed.csv", text);
  LbRiver before = setup ()->river;
  const LbRiver *river;

  assert_int_equal (lb_import_window_get_state (import), LB_IMPORT_READ);
  assert_non_null (strstr (lb_import_window_get_outcome (import), "1 depth taken out as a spike"));
  assert_non_null (strstr (lb_import_window_get_summary (import), "1 line that is cut off"));
  press_use (import);
  river = &setup ()->river;
  assert_near (river->bed_x[0], 0, 1e-9);
  assert_near (river->bed_x[river->n_bed_points - 1], 100, 1e-9);
  assert_near (river->bed_depth[0], 6, 1e-9);
  assert_near (river->bed_depth[river->n_bed_points - 1], 4, 1e-9);
  for (size_t i = 0; i < river->n_bed_points; i++)
    assert_true (river->bed_depth[i] >= 4 - 1e-9 && river->bed_depth[i] <= 6 + 1e-9);
  /* 50 m of 6 m, 49.5 m of 4 m, half a metre between: 5.005 m on average. */
  assert_near (river->depth, 5.005, 0.03);
  assert_string_equal (lb_window_get_page (window), "river");
  lb_session_undo (session ());
  assert_memory_equal (&before, &setup ()->river, sizeof before);
}

static void
the_direction_turns_the_bed_about (void **state)
{
  g_autofree char *text = table_of_bed ();
  LbImportWindow *import = drop ("bed.csv", text);

  gtk_drop_down_set_selected (
      lb_import_options_box_get_direction (lb_import_window_get_options (import)), 1);
  press_use (import);
  assert_near (setup ()->river.bed_depth[0], 4, 1e-9);
  assert_near (setup ()->river.bed_depth[setup ()->river.n_bed_points - 1], 6, 1e-9);
}

static void
the_spike_limit_is_the_users (void **state)
{
  g_autofree char *text = table_of_bed ();
  LbImportWindow *import = drop ("bed.csv", text);
  LbImportOptionsBox *options = lb_import_window_get_options (import);
  double deepest = 0;

  type (lb_import_options_box_get_spike_limit (options), "deep");
  assert_non_null (lb_import_options_box_get_fault (options));
  type (lb_import_options_box_get_spike_limit (options), "0");
  assert_null (lb_import_options_box_get_fault (options));
  assert_non_null (strstr (lb_import_window_get_outcome (import), "0 depths taken out"));
  press_use (import);
  for (size_t i = 0; i < setup ()->river.n_bed_points; i++)
    deepest = fmax (deepest, setup ()->river.bed_depth[i]);
  assert_near (deepest, 12, 1e-9);
}

/* 6 feet are 1.8288 m, by definition. */
static void
a_table_can_be_read_otherwise (void **state)
{
  g_autofree char *text = table_of_bed ();
  LbImportWindow *import = drop ("bed.csv", text);

  gtk_drop_down_set_selected (
      lb_import_options_box_get_unit (lb_import_window_get_options (import)), LB_CSV_UNIT_FEET);
  harness_wait (is_done, NULL, "the log to be read again");
  press_use (import);
  assert_near (setup ()->river.bed_depth[0], 1.8288, 1e-9);
}

/* Four columns with headings that say nothing: the user says which is which. */
static void
a_table_that_is_not_understood_can_be_explained (void **state)
{
  LbImportWindow *import =
      drop ("odd.csv", "a,b,c,d\n7,0,4.5,1\n7,10,5.5,1\n7,20,6.5,1\n7,30,7.5,1\n");
  LbImportOptionsBox *options = lb_import_window_get_options (import);

  assert_int_equal (lb_import_window_get_state (import), LB_IMPORT_FAILED);
  assert_string_equal (lb_import_window_get_first_lines (import),
                       "a,b,c,d\n7,0,4.5,1\n7,10,5.5,1\n7,20,6.5,1\n7,30,7.5,1");
  assert_true (gtk_widget_get_visible (GTK_WIDGET (options)));
  gtk_drop_down_set_selected (lb_import_options_box_get_column (options, LB_CSV_DISTANCE), 2);
  harness_wait (is_done, NULL, "the log to be read again");
  gtk_drop_down_set_selected (lb_import_options_box_get_column (options, LB_CSV_DEPTH), 3);
  harness_wait (is_done, NULL, "the log to be read again");
  assert_int_equal (lb_import_window_get_state (import), LB_IMPORT_READ);
  assert_null (lb_import_window_get_first_lines (import));
  press_use (import);
  assert_near (setup ()->river.bed_x[setup ()->river.n_bed_points - 1], 30, 1e-9);
  assert_near (setup ()->river.bed_depth[0], 7.5, 1e-9);
}

/* The first 40 m of the track alone: 4 m deep. */
static void
a_stretch_can_be_chosen (void **state)
{
  g_autofree char *text = table_of_bed ();
  LbImportWindow *import = drop ("bed.csv", text);

  type (lb_import_options_box_get_to (lb_import_window_get_options (import)), "40 m");
  press_use (import);
  assert_near (setup ()->river.bed_x[setup ()->river.n_bed_points - 1], 40, 1e-9);
  assert_near (setup ()->river.bed_depth[0], 4, 1e-9);
}

static void
what_is_no_log_is_told (void **state)
{
  LbRiver before = setup ()->river;
  LbImportWindow *import = drop ("letter.txt", "Dear reader,\nthere is no depth in here.\n");

  assert_int_equal (lb_import_window_get_state (import), LB_IMPORT_FAILED);
  assert_true (strlen (lb_import_window_get_summary (import)) > 10);
  assert_false (gtk_widget_get_visible (lb_import_window_get_use_button (import)));
  gtk_window_close (GTK_WINDOW (import));
  harness_wait (is_gone, NULL, "the window to close");
  assert_memory_equal (&before, &setup ()->river, sizeof before);
}

/* What no choice of columns can make a table of is offered none. */
static void
what_is_no_table_is_offered_no_columns (void **state)
{
  const char *const texts[] = { "\x7f\x01\x02\x03\x04 program", "<gpx><trk></trk></gpx>",
                                "$GPRMC,1,2,3*00\n" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      LbImportWindow *import = drop ("other.bin", texts[i]);

      assert_int_equal (lb_import_window_get_state (import), LB_IMPORT_FAILED);
      assert_null (lb_import_window_get_first_lines (import));
      assert_false (gtk_widget_get_visible (GTK_WIDGET (lb_import_window_get_options (import))));
      gtk_window_close (GTK_WINDOW (import));
      harness_wait (is_gone, NULL, "the window to close");
    }
}

/* Closed in the middle of a long log: nothing happens to the document, then or later. */
static void
closing_stops_the_reading (void **state)
{
  GString *text = g_string_new ("distance,depth\n");
  g_autoptr (GFile) file = NULL;
  LbRiver before = setup ()->river;

  for (int i = 0; i < 400000; i++)
    g_string_append_printf (text, "%d.%d,5.%d\n", i / 100, i % 100, i % 10);
  file = harness_file_with ("long.csv", text->str);
  g_string_free (text, TRUE);
  lb_window_import_log (window, file);
  harness_pause (30);
  assert_int_equal (lb_import_window_get_state (import_window ()), LB_IMPORT_READING);
  gtk_window_close (GTK_WINDOW (import_window ()));
  harness_wait (is_gone, NULL, "the window to close");
  harness_pause (600);
  assert_memory_equal (&before, &setup ()->river, sizeof before);
}

static void
a_dropped_rig_is_opened (void **state)
{
  g_autoptr (GFile) rig = harness_file_with ("broken.json", "{ \"format\": \"other\" }");

  lb_window_take_file (window, rig);
  harness_pause (50);
  assert_null (import_window ());
  assert_non_null (lb_window_get_message (window));
}

/* ---- Pictures ---- */

static void
take (GtkWidget *widget, const char *name)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *file = g_strconcat (name, ".png", NULL);
  g_autofree char *path = g_build_filename (folder ? folder : g_get_tmp_dir (), file, NULL);
  GdkPaintable *paintable;
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  g_autoptr (GdkTexture) texture = NULL;
  GskRenderNode *node;
  int w, h;

  harness_pause (300);
  paintable = gtk_widget_paintable_new (widget);
  gtk_widget_queue_draw (widget);
  harness_frame (widget);
  w = gdk_paintable_get_intrinsic_width (paintable);
  h = gdk_paintable_get_intrinsic_height (paintable);
  gdk_paintable_snapshot (paintable, snapshot, w, h);
  node = gtk_snapshot_free_to_node (snapshot);
  assert_non_null (node);
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (widget)),
                                         node, &GRAPHENE_RECT_INIT (0, 0, (float) w, (float) h));
  assert_true (gdk_texture_save_to_png (texture, path));
  gsk_render_node_unref (node);
  g_object_unref (paintable);
}

static void
pictures (void **state)
{
  GString *text = g_string_new ("lat,lon,depth_ft\n");
  LbImportWindow *import;

  for (int i = 0; i < 4000; i++)
    g_string_append_printf (text, i % 400 == 7 ? "oops\n" : "%.7f,%.7f,%.1f\n", 45 + i * 1.1e-6,
                            -120 - i * 0.4e-6,
                            i % 61 == 0 ? 70.0 : 18 + 5 * sin (i / 350.0) + 0.4 * (i % 5));
  import = drop ("stony-bend.csv", text->str);
  g_string_free (text, TRUE);
  harness_frame (GTK_WIDGET (import));
  take (GTK_WIDGET (import), "import-table");
  g_object_set (lb_application_get_preferences (harness_application ()), "theme", "dark", NULL);
  take (GTK_WIDGET (import), "import-dark");
  press_use (import);
  take (GTK_WIDGET (window), "import-used");
  import = drop ("letter.txt", "Dear reader,\nthere is no depth in here.\n");
  take (GTK_WIDGET (import), "import-failed");
  gtk_window_close (GTK_WINDOW (import));
  harness_wait (is_gone, NULL, "the window to close");
}

#define TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    TEST (a_table_becomes_a_bed_in_one_step),
    TEST (the_direction_turns_the_bed_about),
    TEST (the_spike_limit_is_the_users),
    TEST (a_table_can_be_read_otherwise),
    TEST (a_table_that_is_not_understood_can_be_explained),
    TEST (a_stretch_can_be_chosen),
    TEST (what_is_no_log_is_told),
    TEST (what_is_no_table_is_offered_no_columns),
    TEST (closing_stops_the_reading),
    TEST (a_dropped_rig_is_opened),
    TEST (pictures),
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
