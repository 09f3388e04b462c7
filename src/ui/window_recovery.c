/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Copies of the window's unsaved work, and what an earlier program left of its own. */
#include "window_private.h"

#include <glib/gi18n.h>

#include "recovery_bar.h"

/* The document that is watched is the session's; a document that makes room for another was saved,
 * or its changes were given up. */
static void
watch (LbWindow *self, LbDocument *document)
{
  if (document == self->watched)
    return;
  if (self->watched)
    lb_recovery_forget (self->recovery, self->watched);
  g_set_object (&self->watched, document);
}

static void
edited_cb (LbWindow *self)
{
  LbDocument *document = lb_session_get_document (self->session);

  if (document == self->watched)
    return;
  watch (self, document);
  lb_recovery_watch (self->recovery, document);
}

/* In this window if nothing is in it, else in another. */
static void
restored_cb (LbWindow *self, LbDocument *document)
{
  LbWindow *window = self;

  if (!lb_window_is_pristine (self))
    window = lb_window_new (gtk_window_get_application (GTK_WINDOW (self)), self->preferences,
                            lb_session_get_appearance (self->session), self->recovery);
  /* It is watched already. */
  watch (window, document);
  lb_session_set_document (window->session, document);
  gtk_window_present (GTK_WINDOW (window));
}

static void
failed_cb (LbWindow *self, const char *message)
{
  lb_window_show_message (self, GTK_MESSAGE_ERROR, message);
}

void
lb_window_recovery_start (LbWindow *self, LbRecovery *recovery)
{
  GtkWidget *box = gtk_widget_get_parent (self->message_bar);

  self->recovery = g_object_ref (recovery);
  self->recovery_bar = lb_recovery_bar_new (recovery);
  gtk_box_insert_child_after (GTK_BOX (box), self->recovery_bar, self->message_bar);
  g_signal_connect_swapped (self->recovery_bar, "restored", G_CALLBACK (restored_cb), self);
  g_signal_connect_swapped (self->recovery_bar, "failed", G_CALLBACK (failed_cb), self);
  g_signal_connect_object (recovery, "failed", G_CALLBACK (failed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_swapped (self->session, "edited", G_CALLBACK (edited_cb), self);
  edited_cb (self);
}

void
lb_window_recovery_dispose (LbWindow *self)
{
  if (self->recovery)
    watch (self, NULL);
  g_clear_object (&self->recovery);
}

void
lb_window_keep_copy (LbWindow *self)
{
  g_return_if_fail (LB_IS_WINDOW (self));
  g_clear_object (&self->watched);
}

void
lb_window_offer_lost (LbWindow *self, gboolean asked)
{
  guint n;

  g_return_if_fail (LB_IS_WINDOW (self));
  n = lb_recovery_bar_show_lost (LB_RECOVERY_BAR (self->recovery_bar));
  if (n == 0 && asked)
    lb_window_show_message (self, GTK_MESSAGE_INFO, _ ("No rig was left unsaved."));
}
