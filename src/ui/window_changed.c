/* SPDX-License-Identifier: GPL-3.0-or-later */
/* When another program changed or removed the file of the rig: a bar with what can be done, and a
 * question before it is written over. */
#include "window_private.h"

#include <glib/gi18n.h>

#include "accessible.h"

enum
{
  RESPONSE_RELOAD = 1,
  RESPONSE_KEEP,
  RESPONSE_REPLACE,
  RESPONSE_SAVE_AS
};

static LbDocument *
document_of (LbWindow *self)
{
  return lb_session_get_document (self->session);
}

static char *
file_name (LbWindow *self)
{
  GFile *file = lb_document_get_file (document_of (self));

  return file ? g_file_get_basename (file) : g_strdup ("");
}

/* ---- The bar ---- */

static void
hide_bar (LbWindow *self)
{
  gtk_widget_set_visible (self->changed_bar, FALSE);
}

static void
show_bar (LbWindow *self, LbFileState state)
{
  gboolean modified = lb_document_get_modified (document_of (self));
  g_autofree char *name = file_name (self);
  g_autofree char *text = NULL;

  if (state == LB_FILE_REMOVED)
    text = g_strdup_printf (
        _ ("The file “%s” is gone: another program removed or renamed it. Save writes it again."),
        name);
  else if (modified)
    text = g_strdup_printf (
        _ ("Another program changed the file “%s”. You have changes of your own, too."), name);
  else
    text = g_strdup_printf (_ ("Another program changed the file “%s”."), name);
  gtk_label_set_text (GTK_LABEL (self->changed_label), text);
  gtk_widget_set_visible (self->reload_button, state == LB_FILE_CHANGED);
  gtk_widget_set_visible (self->changed_bar, TRUE);
}

static void
file_changed_cb (LbWindow *self)
{
  LbFileState state = lb_document_get_file_state (document_of (self));

  self->kept_mine = FALSE;
  if (state == LB_FILE_SAME)
    hide_bar (self);
  else
    show_bar (self, state);
}

static void
reload (LbWindow *self)
{
  g_autoptr (GFile) file = g_object_ref (lb_document_get_file (document_of (self)));
  g_autoptr (GError) error = NULL;

  if (lb_session_open (self->session, file, &error))
    lb_window_show_message (self, GTK_MESSAGE_OTHER, NULL);
  else
    lb_window_show_message (self, GTK_MESSAGE_ERROR, error->message);
}

static void
reload_answered (LbWindow *self, int response)
{
  if (response == RESPONSE_RELOAD)
    reload (self);
}

static void
reload_or_ask (LbWindow *self)
{
  const LbWindowAnswer answers[] = {
    { _ ("_Keep mine"), GTK_RESPONSE_CANCEL, FALSE },
    { _ ("_Reload"), RESPONSE_RELOAD, TRUE },
    { NULL, 0, FALSE },
  };
  g_autofree char *name = file_name (self);
  g_autofree char *title = g_strdup_printf (_ ("Read “%s” again?"), name);

  if (lb_document_get_modified (document_of (self)))
    lb_window_ask (self, title, _ ("Your own changes that are not saved are then lost."), answers,
                   reload_answered);
  else
    reload (self);
}

static void
response_cb (LbWindow *self, int response)
{
  if (response == RESPONSE_RELOAD)
    {
      reload_or_ask (self);
      return;
    }
  self->kept_mine = TRUE;
  hide_bar (self);
}

static void
add_bar (LbWindow *self)
{
  GtkWidget *bar = gtk_info_bar_new ();
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  g_object_set (label, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, NULL);
  gtk_info_bar_set_message_type (GTK_INFO_BAR (bar), GTK_MESSAGE_WARNING);
  gtk_info_bar_add_child (GTK_INFO_BAR (bar), label);
  self->reload_button = lb_accessible_button_new (_ ("_Reload"));
  gtk_info_bar_add_action_widget (GTK_INFO_BAR (bar), self->reload_button, RESPONSE_RELOAD);
  gtk_info_bar_add_action_widget (GTK_INFO_BAR (bar), lb_accessible_button_new (_ ("_Keep mine")),
                                  RESPONSE_KEEP);
  g_signal_connect_swapped (bar, "response", G_CALLBACK (response_cb), self);
  self->changed_bar = bar;
  self->changed_label = label;
  gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (self->message_bar)), bar,
                              self->message_bar);
  hide_bar (self);
}

/* ---- Saving over it ---- */

static void
replace_answered (LbWindow *self, int response)
{
  if (response == RESPONSE_REPLACE)
    lb_window_save_over (self);
  else if (response == RESPONSE_SAVE_AS)
    lb_window_save_as (self);
  else
    lb_window_drop_pending (self);
}

void
lb_window_ask_to_replace (LbWindow *self)
{
  const LbWindowAnswer answers[] = {
    { _ ("_Cancel"), GTK_RESPONSE_CANCEL, FALSE },
    { _ ("_Replace"), RESPONSE_REPLACE, TRUE },
    { _ ("Save _as…"), RESPONSE_SAVE_AS, FALSE },
    { NULL, 0, FALSE },
  };
  LbFileState state = lb_document_get_file_state (document_of (self));
  g_autofree char *name = file_name (self);
  g_autofree char *title = NULL;

  /* Nothing is in the way of a file that is gone. */
  if (state == LB_FILE_REMOVED)
    {
      lb_window_save_over (self);
      return;
    }
  title = g_strdup_printf (_ ("Replace “%s” with yours?"), name);
  lb_window_ask (self, title,
                 _ ("Another program changed the file since you opened or saved it. What it wrote "
                    "is lost when you replace it."),
                 answers, replace_answered);
}

/* ---- Which file ---- */

static void
unfollow (LbWindow *self)
{
  if (self->followed)
    g_signal_handlers_disconnect_by_data (self->followed, self);
  g_clear_object (&self->followed);
}

static void
edited_cb (LbWindow *self)
{
  LbDocument *document = document_of (self);

  if (document == self->followed)
    return;
  unfollow (self);
  self->followed = g_object_ref (document);
  lb_document_watch_file (document);
  g_signal_connect_swapped (document, "notify::file-changed", G_CALLBACK (file_changed_cb), self);
  file_changed_cb (self);
}

void
lb_window_changed_start (LbWindow *self)
{
  add_bar (self);
  g_signal_connect_swapped (self->session, "edited", G_CALLBACK (edited_cb), self);
  edited_cb (self);
}

void
lb_window_changed_dispose (LbWindow *self)
{
  unfollow (self);
}
