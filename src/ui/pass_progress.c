/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_progress.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "page_parts.h"
#include "pass_words.h"

/* A computation is spoken of when it takes longer than this. */
#define SAY_AFTER_MS 250

struct _LbPassProgress
{
  GtkBox parent;
  LbSession *session;
  LbPassPlayback *playback;
  gboolean is_late; /* it takes long enough to be spoken of */
  guint late_id;
  GtkWidget *words;
  GtkWidget *progress;
  GtkWidget *cancel;
  GtkWidget *again;
};

G_DEFINE_FINAL_TYPE (LbPassProgress, lb_pass_progress, GTK_TYPE_BOX)

static char *
seconds (LbPassProgress *self, double time, int decimals)
{
  LbWording wording = lb_session_get_wording (self->session);

  return lb_words_quantity (LB_QUANTITY_TIME, wording.units, time, decimals);
}

static char *
failure_words (LbPassProgress *self)
{
  g_autofree char *end = seconds (self, lb_pass_playback_get_end (self->playback), 1);

  if (lb_pass_playback_get_end (self->playback) > 0)
    return g_strdup_printf (_ ("The computation did not settle after %s; what came before stands."),
                            end);
  return g_strdup (_ ("The pass could not be computed: the rig does not settle at its start."));
}

static char *
cancelled_words (LbPassProgress *self)
{
  g_autofree char *end = seconds (self, lb_pass_playback_get_end (self->playback), 1);

  return g_strdup_printf (_ ("Called off after %s, which can be played."), end);
}

static char *
dup_said (LbPassProgress *self)
{
  LbPassRunner *runner = lb_pass_playback_get_runner (self->playback);

  switch (lb_pass_runner_get_state (runner))
    {
    case LB_PASS_RUN_GOING:
      return self->is_late ? g_strdup (_ ("Computing ahead…")) : NULL;
    case LB_PASS_RUN_CANCELLED:
      return cancelled_words (self);
    case LB_PASS_RUN_FAILED:
      return failure_words (self);
    case LB_PASS_RUN_REFUSED:
      return g_strdup (lb_pass_words_fault (lb_pass_runner_get_fault (runner)));
    case LB_PASS_RUN_NOTHING:
    case LB_PASS_RUN_WHOLE:
      break;
    }
  return NULL;
}

static void
say (LbPassProgress *self)
{
  LbPassRunner *runner = lb_pass_playback_get_runner (self->playback);
  gboolean going = lb_pass_runner_get_state (runner) == LB_PASS_RUN_GOING;
  g_autofree char *text = dup_said (self);

  gtk_label_set_text (GTK_LABEL (self->words), text ? text : "");
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress),
                                 lb_pass_runner_get_done (runner));
  /* The bar gets the room that the words leave. */
  gtk_label_set_wrap (GTK_LABEL (self->words), !going);
  gtk_widget_set_hexpand (self->words, !going);
  gtk_widget_set_visible (self->progress, going);
  gtk_widget_set_visible (self->cancel, going);
  gtk_widget_set_visible (self->again, lb_pass_runner_get_state (runner) == LB_PASS_RUN_CANCELLED);
  gtk_widget_set_visible (GTK_WIDGET (self), text != NULL);
}

static gboolean
late_cb (gpointer user_data)
{
  LbPassProgress *self = user_data;

  self->late_id = 0;
  self->is_late = TRUE;
  say (self);
  return G_SOURCE_REMOVE;
}

static void
restarted_cb (LbPassProgress *self)
{
  self->is_late = FALSE;
  g_clear_handle_id (&self->late_id, g_source_remove);
  self->late_id = g_timeout_add (SAY_AFTER_MS, late_cb, self);
  say (self);
}

/* ---- The widget ---- */

static void
lb_pass_progress_dispose (GObject *object)
{
  LbPassProgress *self = LB_PASS_PROGRESS (object);

  g_clear_handle_id (&self->late_id, g_source_remove);
  if (self->playback)
    g_signal_handlers_disconnect_by_data (self->playback, self);
  g_clear_object (&self->playback);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_pass_progress_parent_class)->dispose (object);
}

static void
lb_pass_progress_class_init (LbPassProgressClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_pass_progress_dispose;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_pass_progress_init (LbPassProgress *self)
{
  gtk_box_set_spacing (GTK_BOX (self), 10);
  self->words = lb_page_label (NULL, NULL);
  self->progress = gtk_progress_bar_new ();
  gtk_widget_set_valign (self->progress, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (self->progress, TRUE);
  lb_accessible_name (self->progress, _ ("How much of the pass is computed"));
  self->cancel = gtk_button_new_with_label (_ ("Call off"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->cancel), "pass.cancel");
  gtk_widget_set_tooltip_text (self->cancel, _ ("Compute no further (Escape)"));
  self->again = gtk_button_new_with_label (_ ("Go on"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->again), "pass.go-on");
  gtk_widget_set_tooltip_text (self->again, _ ("Compute on from there (R)"));
  gtk_box_append (GTK_BOX (self), self->words);
  gtk_box_append (GTK_BOX (self), self->progress);
  gtk_box_append (GTK_BOX (self), self->cancel);
  gtk_box_append (GTK_BOX (self), self->again);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
lb_pass_progress_new (LbSession *session, LbPassPlayback *playback)
{
  LbPassProgress *self = g_object_new (LB_TYPE_PASS_PROGRESS, NULL);

  self->session = g_object_ref (session);
  self->playback = g_object_ref (playback);
  g_signal_connect_swapped (playback, "grown", G_CALLBACK (say), self);
  g_signal_connect_swapped (playback, "restarted", G_CALLBACK (restarted_cb), self);
  return GTK_WIDGET (self);
}

const char *
lb_pass_progress_get_said (LbPassProgress *self)
{
  g_return_val_if_fail (LB_IS_PASS_PROGRESS (self), NULL);
  return gtk_widget_get_visible (GTK_WIDGET (self)) ? gtk_label_get_text (GTK_LABEL (self->words))
                                                    : NULL;
}
