/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs the program's windows inside a test: an application of its own, turns of the main loop, and
 * pictures of windows. */
#pragma once

#include <gtk/gtk.h>

#include "application.h"
#include "test.h"
#include "window.h"

/* Starts GTK and an application that has started up; the test program ends as skipped (77) when
 * there is no display. Call once, first thing in main(). */
void harness_start (void);

LbApplication *harness_application (void);

/* A window with the default rig, shown at that size, its first frame drawn. Close it with
 * harness_close(). The settings are as in a new installation. */
LbWindow *harness_window (int width, int height);

/* Lets go of the window, whatever is not saved in it. */
void harness_close (LbWindow *window);

/* Turns the main loop until `done` says so; fails the test after five seconds. */
typedef gboolean (*HarnessDone) (gpointer data);
void harness_wait (HarnessDone done, gpointer data, const char *what);

/* Turns the main loop for that long. */
void harness_pause (guint milliseconds);

/* Turns the main loop until another frame of the widget's window is on the screen. */
void harness_frame (GtkWidget *widget);

/* The answer of the window's session is that of its document. */
void harness_solved (LbWindow *window);

/* Writes a picture of the window, `scale` pixels for a unit, to NAME.png in the output folder.
 * Returns its pixels (owned by the caller): width x height, 4 bytes each (BGRA). */
guchar *harness_picture (LbWindow *window, const char *name, int scale, int *width, int *height);

/* A new path in the output folder, or in a folder below it, that nothing is at. (transfer full) */
GFile *harness_new_file (const char *name);

/* A file with that text. (transfer full) */
GFile *harness_file_with (const char *name, const char *text);

/* The first top-level window of that type, or NULL. */
GtkWidget *harness_toplevel (GType type);

/* The adjustment of a slider. */
GtkAdjustment *harness_adjustment (LbSlider *slider);
