/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a frame of the window costs while a slider moves, and how long the program takes to its
 * first frame. Prints figures and asserts nothing.
 *
 * The processor time of the window's own thread is given beside the time on the clock: on a machine
 * that does other things too it is the steadier figure.
 *
 * A frame is all from "before-paint" to "after-paint" of GTK's frame clock: the change of the
 * document, the solve, readings and sentence, laying out, and painting. The slider is moved from a
 * tick callback, which runs inside that.
 *
 * On a display without a window manager, as Xvfb is, GTK asks the X server after each frame whether
 * there is one by now, and by that waits until the server has copied the picture. No desktop has
 * that wait, so the program leaves the mark of a window manager first; with LB_BENCH_UNMANAGED=1 it
 * leaves none. The display is held open over all starts: an X server that loses its last client
 * starts anew, and the next client would wait for that.
 *
 *   bench-frame               all figures
 *   bench-frame WIDTH HEIGHT  frames of a window of that size
 *   bench-frame --child       (for itself) one start; prints the time to the first frame */
#include <gdk/x11/gdkx.h>
#include <gtk/gtk.h>

#include <X11/Xatom.h>
#include <locale.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "application.h"
#include "pass_page.h"
#include "window.h"

#define START_VARIABLE "LB_BENCH_START"
#define FRAMES 240
#define WARM_UP 20
#define STARTS 7

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* ---- Frames ---- */

typedef struct
{
  LbWindow *window;
  GtkAdjustment *adjustment; /* NULL: a pass is played */
  LbPassPlayback *playback;
  int frame; /* moves made */
  int n;     /* frames measured */
  int stale; /* frames that showed an older answer than the slider's */
  gint64 start;
  double cpu_start;
  double times[FRAMES]; /* us */
  double cpu[FRAMES];   /* us */
  double solve[FRAMES]; /* us */
  double part[FRAMES];  /* of the drawings' area painted anew */
  guint backgrounds;    /* painted before */
  gboolean done;
} Run;

static double
thread_time (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return 1e6 * (double) now.tv_sec + 1e-3 * (double) now.tv_nsec;
}

/* Down and up the whole range, and never twice the same place. */
static double
position (const Run *run)
{
  double lower = gtk_adjustment_get_lower (run->adjustment);
  double upper = gtk_adjustment_get_upper (run->adjustment);
  double phase = 2.0 * run->frame / FRAMES;

  phase = phase < 1 ? phase : 2 - phase;
  return lower + (upper - lower) * (0.03 + 0.94 * phase) + 1e-4 * (run->frame % 7);
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Run *run = data;

  if (run->done)
    return G_SOURCE_REMOVE;
  if (run->adjustment)
    gtk_adjustment_set_value (run->adjustment, position (run));
  else
    lb_pass_playback_go_to (run->playback, (double) run->frame / 30);
  run->frame++;
  return G_SOURCE_CONTINUE;
}

static void
before_paint_cb (Run *run)
{
  run->start = g_get_monotonic_time ();
  run->cpu_start = thread_time ();
}

static double
painted_of_pass (LbWindow *window)
{
  LbPassPage *page = LB_PASS_PAGE (lb_window_get_main_page_widget (window, LB_MAIN_PAGE_PASS));
  const LbPassCanvasKind kinds[] = { LB_PASS_CANVAS_SIDE, LB_PASS_CANVAS_CHART };
  double area = 0, painted = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      LbPassCanvas *canvas =
          lb_pass_drawings_get_canvas (lb_pass_page_get_drawings (page), kinds[i]);

      area += (double) gtk_widget_get_width (GTK_WIDGET (canvas))
              * gtk_widget_get_height (GTK_WIDGET (canvas));
      painted += lb_node_cache_get_counts (lb_pass_canvas_get_cache (canvas)).painted_area;
    }
  return painted / area;
}

static double
painted_part (LbWindow *window)
{
  LbDrawings *drawings = lb_window_get_drawings (window);
  LbCanvas *canvases[] = { lb_drawings_get_side_view (drawings),
                           lb_drawings_get_bed_strip (drawings) };
  double area = 0, painted = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (canvases); i++)
    {
      GtkWidget *widget = GTK_WIDGET (canvases[i]);

      area += (double) gtk_widget_get_width (widget) * gtk_widget_get_height (widget);
      painted += lb_node_cache_get_counts (lb_canvas_get_cache (canvases[i])).painted_area;
    }
  return painted / area;
}

static guint
backgrounds_painted (LbWindow *window)
{
  LbDrawings *drawings = lb_window_get_drawings (window);
  LbNodeCache *side_view = lb_canvas_get_cache (lb_drawings_get_side_view (drawings));
  LbNodeCache *bed_strip = lb_canvas_get_cache (lb_drawings_get_bed_strip (drawings));

  return lb_node_cache_get_counts (side_view).backgrounds
         + lb_node_cache_get_counts (bed_strip).backgrounds;
}

static void
after_paint_cb (Run *run)
{
  LbSession *session = lb_window_get_session (run->window);
  LbResult *result = lb_session_get_result (session);

  if (run->done || run->frame <= WARM_UP)
    return;
  run->times[run->n] = (double) (g_get_monotonic_time () - run->start);
  run->cpu[run->n] = thread_time () - run->cpu_start;
  run->solve[run->n] = result ? lb_result_get_solve_time (result) : 0;
  run->part[run->n] = run->adjustment ? painted_part (run->window) : painted_of_pass (run->window);
  run->stale += !result
                || !lb_setup_equal (lb_result_get_setup (result),
                                    lb_document_get_setup (lb_session_get_document (session)));
  run->n++;
  run->done = run->n == FRAMES;
}

static void
print_run (const char *name, Run *run)
{
  qsort (run->times, FRAMES, sizeof run->times[0], compare_doubles);
  qsort (run->cpu, FRAMES, sizeof run->cpu[0], compare_doubles);
  qsort (run->solve, FRAMES, sizeof run->solve[0], compare_doubles);
  qsort (run->part, FRAMES, sizeof run->part[0], compare_doubles);
  g_print (
      "  %-11s frame: median %6.2f, p95 %6.2f ms; processor: median %6.2f, p95 %6.2f ms; "
      "solve: median %.3f ms\n"
      "              painted anew: median %.0f %% of the drawings, backgrounds %u times; older "
      "answer shown in %d of %d frames\n",
      name, run->times[FRAMES / 2] / 1000, run->times[FRAMES * 95 / 100] / 1000,
      run->cpu[FRAMES / 2] / 1000, run->cpu[FRAMES * 95 / 100] / 1000,
      run->solve[FRAMES / 2] / 1000, 100 * run->part[FRAMES / 2],
      backgrounds_painted (run->window) - run->backgrounds, run->stale, FRAMES);
}

static void
measure (Run *run, const char *name)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (run->window));

  run->backgrounds = backgrounds_painted (run->window);
  g_signal_connect_swapped (clock, "before-paint", G_CALLBACK (before_paint_cb), run);
  g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (after_paint_cb), run);
  gtk_widget_add_tick_callback (GTK_WIDGET (run->window), tick_cb, run, NULL);
  while (!run->done)
    g_main_context_iteration (NULL, TRUE);
  g_signal_handlers_disconnect_by_data (clock, run);
  print_run (name, run);
}

/* The tick callback ends at the next frame, and reads `run` once more. */
static void
free_run (Run *run)
{
  for (int i = 0; i < 200; i++)
    g_main_context_iteration (NULL, FALSE);
  g_usleep (50000);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_free (run);
}

static void
move_slider (LbWindow *window, const char *name, LbSlider *slider)
{
  Run *run = g_new0 (Run, 1);
  double old;

  run->window = window;
  run->adjustment = gtk_range_get_adjustment (GTK_RANGE (lb_slider_get_scale (slider)));
  old = gtk_adjustment_get_value (run->adjustment);
  measure (run, name);
  gtk_adjustment_set_value (run->adjustment, old);
  free_run (run);
}

/* The usual pass, moment by moment, 1/30 s apart. */
static void
play_pass (LbWindow *window)
{
  Run *run = g_new0 (Run, 1);
  LbPassPage *page;

  lb_window_show_main_page (window, LB_MAIN_PAGE_PASS);
  page = LB_PASS_PAGE (lb_window_get_main_page_widget (window, LB_MAIN_PAGE_PASS));
  run->window = window;
  run->playback = lb_pass_page_get_playback (page);
  lb_pass_playback_set_playing (run->playback, FALSE);
  while (lb_pass_runner_get_state (lb_pass_playback_get_runner (run->playback)) == LB_PASS_RUN_GOING
         || lb_pass_playback_get_end (run->playback) <= 0)
    g_main_context_iteration (NULL, TRUE);
  measure (run, "pass");
  free_run (run);
}

static void
bench_window (LbApplication *application, int width, int height)
{
  LbWindow *window;
  LbControls *controls;

  g_object_set (lb_application_get_preferences (application), "window-width", width,
                "window-height", height, "show-timings", FALSE, NULL);
  g_action_group_activate_action (G_ACTION_GROUP (application), "new-window", NULL);
  window = LB_WINDOW (gtk_application_get_windows (GTK_APPLICATION (application))->data);
  for (gint64 end = g_get_monotonic_time () + 500000; g_get_monotonic_time () < end;)
    g_main_context_iteration (NULL, FALSE);
  controls = lb_window_get_controls (window);

  g_print ("%d x %d, drawing %d x %d\n", width, height,
           gtk_widget_get_width (GTK_WIDGET (lb_window_get_drawings (window))),
           gtk_widget_get_height (GTK_WIDGET (lb_window_get_drawings (window))));
  move_slider (window, "current", lb_controls_get_current (controls));
  move_slider (window, "boat speed", lb_controls_get_boat_speed (controls));
  move_slider (window, "weight", lb_controls_get_weight (controls));
  move_slider (window, "line out",
               lb_line_control_get_slider (lb_controls_get_line_control (controls)));
  play_pass (window);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* ---- Start ---- */

static void
first_frame_cb (gboolean *painted)
{
  *painted = TRUE;
}

/* One start, in a process of its own: from before the program is loaded to its first frame. */
static int
child (void)
{
  const char *start = g_getenv (START_VARIABLE);
  LbApplication *application = lb_application_new (G_APPLICATION_NON_UNIQUE);
  gboolean painted = FALSE;
  GtkWindow *window;

  if (!g_application_register (G_APPLICATION (application), NULL, NULL))
    return 1;
  g_application_activate (G_APPLICATION (application));
  window = gtk_application_get_active_window (GTK_APPLICATION (application));
  g_signal_connect_swapped (gtk_widget_get_frame_clock (GTK_WIDGET (window)), "after-paint",
                            G_CALLBACK (first_frame_cb), &painted);
  while (!painted)
    g_main_context_iteration (NULL, TRUE);
  g_print ("%.1f\n", (double) (g_get_monotonic_time () - g_ascii_strtoll (start, NULL, 10)) / 1000);
  exit (0);
}

static void
bench_start (const char *program)
{
  double times[STARTS];
  int n = 0;

  for (int i = 0; i < STARTS; i++)
    {
      const char *argv[] = { program, "--child", NULL };
      g_autofree char *now = g_strdup_printf ("%" G_GINT64_FORMAT, g_get_monotonic_time ());
      g_autofree char *out = NULL;
      int status;

      g_setenv (START_VARIABLE, now, TRUE);
      if (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &out, NULL,
                        &status, NULL)
          && g_spawn_check_wait_status (status, NULL))
        times[n++] = g_ascii_strtod (out, NULL);
    }
  if (n == 0)
    {
      g_print ("start: the program did not start\n");
      return;
    }
  qsort (times, (size_t) n, sizeof times[0], compare_doubles);
  g_print ("start to first frame: median %.0f ms, worst %.0f ms, of %d starts\n", times[n / 2],
           times[n - 1], n);
}

/* ---- Display ---- */

/* The property by which programs find the window manager, as the Extended Window Manager Hints have
 * it. */
static void
mark_as_managed (void)
{
  GdkDisplay *display = gdk_display_get_default ();
  Display *xdisplay;
  Window root, window;
  Atom atom;

  if (!GDK_IS_X11_DISPLAY (display))
    return;
  xdisplay = gdk_x11_display_get_xdisplay (display);
  root = DefaultRootWindow (xdisplay);
  atom = XInternAtom (xdisplay, "_NET_SUPPORTING_WM_CHECK", False);
  window = XCreateSimpleWindow (xdisplay, root, -1, -1, 1, 1, 0, 0, 0);
  XChangeProperty (xdisplay, window, atom, XA_WINDOW, 32, PropModeReplace, (guchar *) &window, 1);
  XChangeProperty (xdisplay, root, atom, XA_WINDOW, 32, PropModeReplace, (guchar *) &window, 1);
  XSync (xdisplay, False);
}

int
main (int argc, char **argv)
{
  LbApplication *application;

  setlocale (LC_ALL, "");
  if (argc > 1 && strcmp (argv[1], "--child") == 0)
    return child ();
  if (!gtk_init_check ())
    {
      g_print ("no display\n");
      return 77;
    }
  if (!g_getenv ("LB_BENCH_UNMANAGED"))
    mark_as_managed ();
  if (argc < 3)
    bench_start (argv[0]);
  application = lb_application_new (G_APPLICATION_NON_UNIQUE);
  if (!g_application_register (G_APPLICATION (application), NULL, NULL))
    return 1;
  g_application_hold (G_APPLICATION (application));
  g_print ("renderer %s, segments and mesh as the window has them%s\n",
           g_getenv ("GSK_RENDERER") ? g_getenv ("GSK_RENDERER") : "by default",
           g_getenv ("LB_BENCH_UNMANAGED") ? ", no window manager marked" : "");
  if (argc == 3)
    {
      bench_window (application, atoi (argv[1]), atoi (argv[2]));
      return 0;
    }
  bench_window (application, 1280, 800);
  bench_window (application, 3840, 2160);
  return 0;
}
