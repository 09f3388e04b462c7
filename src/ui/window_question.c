/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one question that a window may have open. */
#include "window_private.h"

#include "accessible.h"

static void
destroy_question (LbWindow *self)
{
  GtkWidget *question = g_steal_pointer (&self->question);

  if (!question)
    return;
  /* Its last reference may outlive this window, and it would then look for it. */
  gtk_window_set_transient_for (GTK_WINDOW (question), NULL);
  gtk_window_destroy (GTK_WINDOW (question));
}

static void
response_cb (LbWindow *self, int response)
{
  LbWindowAnswered answered = self->answered;

  destroy_question (self);
  answered (self, response);
}

static void
add_button (GtkDialog *question, const LbWindowAnswer *answer)
{
  GtkWidget *button = lb_accessible_button_new (answer->mnemonic);

  gtk_dialog_add_action_widget (question, button, answer->response);
  if (answer->destructive)
    gtk_widget_add_css_class (button, "destructive-action");
}

void
lb_window_ask (LbWindow *self,
               const char *title,
               const char *detail,
               const LbWindowAnswer *answers,
               LbWindowAnswered answered)
{
  if (self->question)
    {
      gtk_window_present (GTK_WINDOW (self->question));
      return;
    }
  self->question =
      gtk_message_dialog_new (GTK_WINDOW (self), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s", title);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (self->question), "%s", detail);
  lb_accessible_name (self->question, title);
  for (; answers->mnemonic; answers++)
    {
      add_button (GTK_DIALOG (self->question), answers);
      if (!answers->destructive)
        gtk_dialog_set_default_response (GTK_DIALOG (self->question), answers->response);
    }
  self->answered = answered;
  g_signal_connect_swapped (self->question, "response", G_CALLBACK (response_cb), self);
  gtk_window_present (GTK_WINDOW (self->question));
}

void
lb_window_question_dispose (LbWindow *self)
{
  if (self->question)
    g_signal_handlers_disconnect_by_data (self->question, self);
  destroy_question (self);
}
