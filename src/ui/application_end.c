/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the program ends, when it is asked to and when it is not, and what it left the last time. */
#include "application_private.h"

#include <glib-unix.h>
#include <signal.h>

#include "window.h"

/* ---- Quitting ---- */

static gboolean
has_changes (gpointer window)
{
  return LB_IS_WINDOW (window) && lb_window_has_unsaved (LB_WINDOW (window));
}

/* Asks about one window with unsaved changes after the other; once none is left all windows close.
 * Staying in one of them keeps all that are still open. */
static void
quit_next (LbApplication *self)
{
  GList *windows = gtk_application_get_windows (GTK_APPLICATION (self));
  g_autoptr (GList) all = NULL;

  for (GList *l = windows; l; l = l->next)
    if (has_changes (l->data))
      {
        gtk_window_present (l->data);
        gtk_window_close (l->data);
        return;
      }
  self->quitting = FALSE;
  all = g_list_copy (windows);
  for (GList *l = all; l; l = l->next)
    gtk_window_close (l->data);
}

static gboolean
quit_next_cb (gpointer user_data)
{
  LbApplication *self = user_data;

  self->quit_id = 0;
  quit_next (self);
  return G_SOURCE_REMOVE;
}

void
lb_application_stay (LbApplication *self)
{
  self->quitting = FALSE;
}

void
lb_application_go_on_quitting (LbApplication *self)
{
  if (self->quitting && !self->quit_id)
    self->quit_id = g_idle_add (quit_next_cb, self);
}

static void
take_typed (LbApplication *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l; l = l->next)
    if (LB_IS_WINDOW (l->data))
      lb_window_take_typed (l->data);
}

void
lb_application_quit (LbApplication *self)
{
  take_typed (self);
  self->quitting = TRUE;
  quit_next (self);
}

/* ---- What was not saved ---- */

static gboolean
offer_lost_cb (gpointer user_data)
{
  LbApplication *self = user_data;
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (self));

  self->offer_id = 0;
  if (LB_IS_WINDOW (window))
    lb_window_offer_lost (LB_WINDOW (window), FALSE);
  return G_SOURCE_REMOVE;
}

/* Once, after the first frame: it reads files. */
void
lb_application_offer_lost (LbApplication *self)
{
  if (!self->offered)
    self->offer_id = g_idle_add_full (G_PRIORITY_LOW, offer_lost_cb, self, NULL);
  self->offered = TRUE;
}

/* Told to end at once, as at the end of a session: nobody could answer a question. The copies of
 * what is unsaved are brought up to date, and the next start offers them. */
static gboolean
terminated_cb (gpointer user_data)
{
  LbApplication *self = user_data;

  take_typed (self);
  lb_recovery_flush (self->recovery);
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l; l = l->next)
    if (LB_IS_WINDOW (l->data))
      lb_window_keep_copy (l->data);
  g_application_quit (G_APPLICATION (self));
  return G_SOURCE_CONTINUE;
}

void
lb_application_watch_signals (LbApplication *self)
{
  static const int numbers[N_SIGNALS_WATCHED] = { SIGTERM, SIGHUP, SIGINT };

  for (int i = 0; i < N_SIGNALS_WATCHED; i++)
    self->signal_ids[i] = g_unix_signal_add (numbers[i], terminated_cb, self);
}

void
lb_application_end_dispose (LbApplication *self)
{
  g_clear_handle_id (&self->quit_id, g_source_remove);
  g_clear_handle_id (&self->offer_id, g_source_remove);
  for (int i = 0; i < N_SIGNALS_WATCHED; i++)
    g_clear_handle_id (&self->signal_ids[i], g_source_remove);
}
