/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Logs: chosen in a dialog, or dropped on the window. */
#include "window_private.h"

#include <glib/gi18n.h>
#include <string.h>

#include "import_window.h"

/* Enough to see what a file begins with. */
#define LOOK_AT 512

static void
used_cb (LbWindow *self)
{
  lb_window_show_page (self, "river");
}

void
lb_window_import_log (LbWindow *self, GFile *file)
{
  GtkWidget *window;

  g_return_if_fail (LB_IS_WINDOW (self));
  window = lb_import_window_new (GTK_WINDOW (self), self->session, file);
  g_signal_connect_object (window, "used", G_CALLBACK (used_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (window));
}

/* ---- Dropped files ---- */

/* A rig file is a JSON object. No log begins so. */
static gboolean
begins_as_rig (GFile *file)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, NULL);
  char text[LOOK_AT];
  gsize n = 0, i = 0;

  if (!stream
      || !g_input_stream_read_all (G_INPUT_STREAM (stream), text, sizeof text, &n, NULL, NULL))
    return TRUE;
  while (i < n && g_ascii_isspace (text[i]))
    i++;
  return i < n && text[i] == '{';
}

void
lb_window_take_file (LbWindow *self, GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);

  g_return_if_fail (LB_IS_WINDOW (self));
  /* What cannot be read is opened too, which tells why. */
  if ((name && g_str_has_suffix (name, ".rig")) || begins_as_rig (file))
    lb_window_open_file (self, file);
  else
    lb_window_import_log (self, file);
}

/* ---- Choosing ---- */

static void
chosen_cb (LbWindow *self, int response, GtkFileChooser *chooser)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (chooser);

  g_clear_object (&self->chooser);
  if (response == GTK_RESPONSE_ACCEPT && file)
    lb_window_import_log (self, file);
}

static void
add_filter (GtkFileChooser *chooser, const char *name, const char *const *suffixes)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, name);
  for (gsize i = 0; suffixes[i]; i++)
    gtk_file_filter_add_suffix (filter, suffixes[i]);
  if (!suffixes[0])
    gtk_file_filter_add_pattern (filter, "*");
  gtk_file_chooser_add_filter (chooser, filter);
}

void
lb_window_choose_log (LbWindow *self)
{
  static const char *const logs[] = { "nmea", "nma", "log", "txt", "gpx",
                                      "csv",  "tsv", "xyz", "dat", NULL };
  static const char *const none[] = { NULL };
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (_ ("Import a log"), GTK_WINDOW (self),
                                   GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Import"), _ ("_Cancel"));

  g_clear_object (&self->chooser);
  self->chooser = GTK_NATIVE_DIALOG (native);
  gtk_native_dialog_set_modal (self->chooser, TRUE);
  add_filter (GTK_FILE_CHOOSER (native), _ ("Logs: NMEA 0183, GPX, tables"), logs);
  add_filter (GTK_FILE_CHOOSER (native), _ ("All files"), none);
  g_signal_connect_object (native, "response", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (self->chooser);
}
