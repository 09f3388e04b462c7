/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "harness.h"

#include <glib/gstdio.h>
#include <string.h>

#define LONGEST_WAIT_US (5 * G_USEC_PER_SEC)
#define SKIPPED 77

static LbApplication *application;

void
harness_start (void)
{
  g_autoptr (GError) error = NULL;

  if (!gtk_init_check ())
    exit (SKIPPED);
  g_set_prgname ("layback");
  g_set_application_name ("Layback");
  application = lb_application_new (G_APPLICATION_NON_UNIQUE);
  if (!g_application_register (G_APPLICATION (application), NULL, &error))
    g_error ("%s", error->message);
  g_application_set_default (G_APPLICATION (application));
}

LbApplication *
harness_application (void)
{
  return application;
}

static void
reset_preferences (void)
{
  const double weights[] = { 0.4536, 0.5670, 0.6804, 0.7938, 0.9072, 1.1340, 1.3608 };
  LbPreferences *preferences = lb_application_get_preferences (application);

  g_object_set (preferences, "units", "us", "theme", "light", "decimals", -1, "show-timings", FALSE,
                "band-low", 0.1016, "band-high", 0.4572, "level-within", 0.1016, "hold-height",
                0.1016, "text-size", "normal", "window-maximized", FALSE, NULL);
  lb_preferences_set_weights (preferences, weights, G_N_ELEMENTS (weights));
}

LbWindow *
harness_window (int width, int height)
{
  LbPreferences *preferences = lb_application_get_preferences (application);
  GtkWindow *window;

  reset_preferences ();
  g_object_set (preferences, "window-width", width, "window-height", height, NULL);
  g_action_group_activate_action (G_ACTION_GROUP (application), "new-window", NULL);
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  assert_true (LB_IS_WINDOW (window));
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  harness_frame (GTK_WIDGET (window));
  g_object_remove_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  return LB_WINDOW (window);
}

void
harness_close (LbWindow *window)
{
  gtk_window_destroy (GTK_WINDOW (window));
  harness_pause (0);
}

/* ---- Waiting ---- */

static gboolean
tick_cb (gpointer data)
{
  return G_SOURCE_CONTINUE;
}

void
harness_wait (HarnessDone done, gpointer data, const char *what)
{
  gint64 end = g_get_monotonic_time () + LONGEST_WAIT_US;
  /* So that the loop also turns while nothing happens. */
  guint ticks = g_timeout_add (5, tick_cb, NULL);

  while (!done (data) && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (ticks);
  if (!done (data))
    fail_msg ("waited in vain: %s", what);
}

static gboolean
time_is_up (gpointer data)
{
  return g_get_monotonic_time () >= *(gint64 *) data;
}

void
harness_pause (guint milliseconds)
{
  gint64 end = g_get_monotonic_time () + milliseconds * 1000;

  harness_wait (time_is_up, &end, "time");
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static void
painted_cb (gboolean *painted)
{
  *painted = TRUE;
}

static gboolean
is_set (gpointer data)
{
  return *(gboolean *) data;
}

void
harness_frame (GtkWidget *widget)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);
  gboolean painted = FALSE;
  gulong id;

  assert_non_null (clock);
  id = g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (painted_cb), &painted);
  gtk_widget_queue_draw (widget);
  harness_wait (is_set, &painted, "a frame");
  g_signal_handler_disconnect (clock, id);
}

static gboolean
is_solved (gpointer data)
{
  LbSession *session = data;
  LbResult *result = lb_session_get_result (session);

  return result
         && lb_setup_equal (lb_result_get_setup (result),
                            lb_document_get_setup (lb_session_get_document (session)));
}

void
harness_solved (LbWindow *window)
{
  harness_wait (is_solved, lb_window_get_session (window), "the solve");
}

/* ---- Pictures ---- */

static GdkTexture *
render (LbWindow *window, int scale)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (GTK_WIDGET (window));
  int width = gdk_paintable_get_intrinsic_width (paintable);
  int height = gdk_paintable_get_intrinsic_height (paintable);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  GskRenderNode *node;
  GdkTexture *texture;

  gtk_snapshot_scale (snapshot, scale, scale);
  gdk_paintable_snapshot (paintable, snapshot, width, height);
  node = gtk_snapshot_free_to_node (snapshot);
  assert_non_null (node);
  texture = gsk_renderer_render_texture (
      gtk_native_get_renderer (GTK_NATIVE (window)), node,
      &GRAPHENE_RECT_INIT (0, 0, (float) (width * scale), (float) (height * scale)));
  gsk_render_node_unref (node);
  return texture;
}

guchar *
harness_picture (LbWindow *window, const char *name, int scale, int *width, int *height)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *file = g_strconcat (name, ".png", NULL);
  g_autofree char *path = g_build_filename (folder ? folder : g_get_tmp_dir (), file, NULL);
  g_autoptr (GdkTexture) texture = NULL;
  guchar *pixels;

  harness_frame (GTK_WIDGET (window));
  texture = render (window, scale);
  assert_true (gdk_texture_save_to_png (texture, path));
  *width = gdk_texture_get_width (texture);
  *height = gdk_texture_get_height (texture);
  pixels = g_malloc ((gsize) *width * (gsize) *height * 4);
  gdk_texture_download (texture, pixels, (gsize) *width * 4);
  return pixels;
}

/* ---- Files ---- */

GFile *
harness_new_file (const char *name)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *path = g_build_filename (folder ? folder : g_get_tmp_dir (), name, NULL);
  g_autofree char *own_folder = g_path_get_dirname (path);

  assert_int_equal (g_mkdir_with_parents (own_folder, 0700), 0);
  g_unlink (path);
  return g_file_new_for_path (path);
}

GFile *
harness_file_with (const char *name, const char *text)
{
  g_autoptr (GFile) file = harness_new_file (name);

  assert_true (
      g_file_replace_contents (file, text, strlen (text), NULL, FALSE, 0, NULL, NULL, NULL));
  return g_steal_pointer (&file);
}

/* ---- Widgets ---- */

GtkWidget *
harness_toplevel (GType type)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      if (g_type_is_a (G_OBJECT_TYPE (window), type) && gtk_widget_get_visible (window))
        return window;
    }
  return NULL;
}

GtkAdjustment *
harness_adjustment (LbSlider *slider)
{
  return gtk_range_get_adjustment (GTK_RANGE (lb_slider_get_scale (slider)));
}
