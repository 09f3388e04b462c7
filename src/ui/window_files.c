/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Opening, saving, and the question about unsaved changes. */
#include "window_private.h"

#include <glib/gi18n.h>
#include <string.h>

#define ENDING ".rig"
#define MIME_TYPE "application/vnd.layback.rig+json"

enum
{
  RESPONSE_DISCARD = 1,
  RESPONSE_SAVE
};

/* ---- Doing it ---- */

static void
remember (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  char *groups[] = { NULL };
  GtkRecentData data = {
    .mime_type = (char *) MIME_TYPE,
    .app_name = (char *) LB_RECENT_APPLICATION,
    .app_exec = (char *) "layback %u",
    .groups = groups,
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

static void
open_now (LbWindow *self, GFile *file, gboolean sample)
{
  g_autoptr (GError) error = NULL;
  gboolean opened = sample ? lb_session_open_copy (self->session, file, &error)
                           : lb_session_open (self->session, file, &error);

  if (!opened)
    {
      lb_window_show_message (self, GTK_MESSAGE_ERROR, error->message);
      return;
    }
  lb_window_show_message (self, GTK_MESSAGE_OTHER, NULL);
  if (!sample)
    remember (file);
}

static void
do_pending (LbWindow *self)
{
  g_autoptr (GFile) file = g_steal_pointer (&self->pending_file);
  LbPending pending = self->pending;

  self->pending = LB_PENDING_NOTHING;
  switch (pending)
    {
    case LB_PENDING_CLOSE:
      self->closing = TRUE;
      gtk_window_close (GTK_WINDOW (self));
      break;
    case LB_PENDING_NEW:
      lb_window_show_message (self, GTK_MESSAGE_OTHER, NULL);
      lb_session_open_new (self->session);
      break;
    case LB_PENDING_OPEN:
      open_now (self, file, FALSE);
      break;
    case LB_PENDING_OPEN_SAMPLE:
      open_now (self, file, TRUE);
      break;
    case LB_PENDING_NOTHING:
      break;
    }
}

void
lb_window_drop_pending (LbWindow *self)
{
  gboolean stays = self->pending == LB_PENDING_CLOSE;

  self->pending = LB_PENDING_NOTHING;
  g_clear_object (&self->pending_file);
  if (stays)
    g_signal_emit_by_name (self, "stayed");
}

/* ---- Other windows ---- */

/* Another window that has `file` open, or NULL. */
static LbWindow *
other_window_with (LbWindow *self, GFile *file)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  LbWindow *found = application ? lb_window_with_file (application, file) : NULL;

  return found == self ? NULL : found;
}

LbWindow *
lb_window_with_file (GtkApplication *application, GFile *file)
{
  for (GList *l = gtk_application_get_windows (application); l; l = l->next)
    if (LB_IS_WINDOW (l->data))
      {
        GFile *own = lb_document_get_file (lb_session_get_document (LB_WINDOW (l->data)->session));

        if (own && g_file_equal (own, file))
          return l->data;
      }
  return NULL;
}

void
lb_window_open_file (LbWindow *self, GFile *file)
{
  LbWindow *other;

  g_return_if_fail (LB_IS_WINDOW (self));
  other = other_window_with (self, file);
  if (other)
    gtk_window_present (GTK_WINDOW (other));
  else
    lb_window_do_or_ask (self, LB_PENDING_OPEN, file);
}

void
lb_window_open_sample (LbWindow *self, GFile *file)
{
  g_return_if_fail (LB_IS_WINDOW (self));
  lb_window_do_or_ask (self, LB_PENDING_OPEN_SAMPLE, file);
}

/* ---- Saving ---- */

static void
refuse_to_save (LbWindow *self, const char *message)
{
  lb_window_show_message (self, GTK_MESSAGE_ERROR, message);
  lb_window_drop_pending (self);
}

static void
saved (LbWindow *self, GFile *file)
{
  self->kept_mine = FALSE;
  lb_window_show_message (self, GTK_MESSAGE_OTHER, NULL);
  remember (file);
  do_pending (self);
}

static void
save_to (LbWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;

  /* Two windows would overwrite each other's work. */
  if (other_window_with (self, file))
    {
      g_autofree char *name = g_file_get_basename (file);
      g_autofree char *message = g_strdup_printf (
          _ ("“%s” is open in another window. Nothing was saved; choose another name."), name);

      refuse_to_save (self, message);
      return;
    }
  if (lb_session_save (self->session, file, &error))
    saved (self, file);
  else if (g_error_matches (error, LB_FILE_ERROR, LB_FILE_ERROR_CHANGED))
    lb_window_ask_to_replace (self);
  else
    refuse_to_save (self, error->message);
}

void
lb_window_save_over (LbWindow *self)
{
  g_autoptr (GFile) file =
      g_object_ref (lb_document_get_file (lb_session_get_document (self->session)));
  g_autoptr (GError) error = NULL;

  if (lb_session_save_over (self->session, file, &error))
    saved (self, file);
  else
    refuse_to_save (self, error->message);
}

/* `file` with the ending, if its name has none. (transfer full) */
static GFile *
with_ending (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *full = NULL;
  g_autoptr (GFile) folder = g_file_get_parent (file);

  if (strchr (name, '.') || !folder)
    return g_object_ref (file);
  full = g_strconcat (name, ENDING, NULL);
  return g_file_get_child (folder, full);
}

static void
save_chosen_cb (LbWindow *self, int response, GtkFileChooser *chooser)
{
  g_autoptr (GFile) chosen = gtk_file_chooser_get_file (chooser);
  g_autoptr (GFile) file = chosen ? with_ending (chosen) : NULL;

  g_clear_object (&self->chooser);
  if (response != GTK_RESPONSE_ACCEPT || !file)
    {
      lb_window_drop_pending (self);
      return;
    }
  /* The dialog asked about the name as it was typed, not about the one with the ending. */
  if (!g_file_equal (file, chosen) && g_file_query_exists (file, NULL))
    {
      g_autofree char *name = g_file_get_basename (file);
      g_autofree char *text = g_strdup_printf (
          _ ("Not saved: “%s” exists already. Choose it by its full name to replace it."), name);

      lb_window_show_message (self, GTK_MESSAGE_WARNING, text);
      lb_window_drop_pending (self);
      return;
    }
  save_to (self, file);
}

static void
open_chosen_cb (LbWindow *self, int response, GtkFileChooser *chooser)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (chooser);

  g_clear_object (&self->chooser);
  if (response == GTK_RESPONSE_ACCEPT && file)
    lb_window_open_file (self, file);
}

static void
add_filters (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) rigs = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();

  gtk_file_filter_set_name (rigs, _ ("Rig files"));
  gtk_file_filter_add_pattern (rigs, "*" ENDING);
  gtk_file_chooser_add_filter (chooser, rigs);
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, all);
}

static GtkFileChooser *
make_chooser (LbWindow *self,
              const char *title,
              GtkFileChooserAction action,
              const char *accept,
              GCallback response_cb)
{
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, accept, _ ("_Cancel"));

  g_clear_object (&self->chooser);
  self->chooser = GTK_NATIVE_DIALOG (native);
  gtk_native_dialog_set_modal (self->chooser, TRUE);
  add_filters (GTK_FILE_CHOOSER (native));
  g_signal_connect_object (native, "response", response_cb, self, G_CONNECT_SWAPPED);
  return GTK_FILE_CHOOSER (native);
}

/* A file name made from the document's name: "Stony Bend, April" -> "Stony Bend, April.rig" */
static char *
suggested_name (LbWindow *self)
{
  g_autofree char *name = lb_document_dup_display_name (lb_session_get_document (self->session));

  g_strdelimit (name, "/\\", '-');
  if (g_str_has_suffix (name, ENDING))
    return g_steal_pointer (&name);
  return g_strconcat (name, ENDING, NULL);
}

void
lb_window_save_as (LbWindow *self)
{
  GtkFileChooser *chooser = make_chooser (self, _ ("Save rig"), GTK_FILE_CHOOSER_ACTION_SAVE,
                                          _ ("_Save"), G_CALLBACK (save_chosen_cb));
  GFile *file = lb_document_get_file (lb_session_get_document (self->session));

  if (file)
    gtk_file_chooser_set_file (chooser, file, NULL);
  else
    {
      g_autofree char *name = suggested_name (self);

      gtk_file_chooser_set_current_name (chooser, name);
    }
  gtk_native_dialog_show (self->chooser);
}

void
lb_window_save (LbWindow *self)
{
  GFile *file = lb_document_get_file (lb_session_get_document (self->session));

  if (file)
    {
      g_autoptr (GFile) own = g_object_ref (file);

      save_to (self, own);
    }
  else
    lb_window_save_as (self);
}

void
lb_window_choose_open (LbWindow *self)
{
  make_chooser (self, _ ("Open rig"), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"),
                G_CALLBACK (open_chosen_cb));
  gtk_native_dialog_show (self->chooser);
}

/* ---- The question ---- */

static void
answered (LbWindow *self, int response)
{
  if (response == RESPONSE_SAVE)
    lb_window_save (self);
  else if (response == RESPONSE_DISCARD)
    do_pending (self);
  else
    lb_window_drop_pending (self);
}

static void
ask (LbWindow *self)
{
  const LbWindowAnswer answers[] = {
    { _ ("_Cancel"), GTK_RESPONSE_CANCEL, FALSE },
    { _ ("_Discard"), RESPONSE_DISCARD, TRUE },
    { _ ("_Save"), RESPONSE_SAVE, FALSE },
    { NULL, 0, FALSE },
  };
  g_autofree char *name = lb_document_dup_display_name (lb_session_get_document (self->session));
  g_autofree char *title = g_strdup_printf (_ ("Save the changes to “%s”?"), name);

  lb_window_ask (self, title, _ ("Changes that are not saved are lost."), answers, answered);
}

gboolean
lb_window_has_unsaved (LbWindow *self)
{
  LbDocument *document;

  g_return_val_if_fail (LB_IS_WINDOW (self), FALSE);
  document = lb_session_get_document (self->session);
  /* What is in the window is then nowhere else. */
  return lb_document_get_modified (document) || self->kept_mine
         || lb_document_get_file_state (document) == LB_FILE_REMOVED;
}

void
lb_window_do_or_ask (LbWindow *self, LbPending pending, GFile *file)
{
  self->pending = pending;
  g_set_object (&self->pending_file, file);
  if (lb_window_has_unsaved (self))
    ask (self);
  else
    do_pending (self);
}

void
lb_window_files_dispose (LbWindow *self)
{
  lb_window_drop_pending (self);
  g_clear_object (&self->chooser);
}
