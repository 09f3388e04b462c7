/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "recovery_bar.h"

#include <glib/gi18n.h>

#include "accessible.h"

/* More rows than fit in this scroll, px. */
#define ROWS_HIGHEST 126

enum
{
  RESPONSE_REMOVE = 1
};

struct _LbRecoveryBar
{
  GtkWidget parent;
  LbRecovery *recovery;
  GtkWidget *bar;
  GtkWidget *title;
  GtkWidget *rows;
  GtkWidget *question; /* while open */
};

G_DEFINE_FINAL_TYPE (LbRecoveryBar, lb_recovery_bar, GTK_TYPE_WIDGET)

enum
{
  RESTORED,
  FAILED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- One that was lost ---- */

static void
fail (LbRecoveryBar *self, const GError *error)
{
  g_signal_emit (self, signals[FAILED], 0, error->message);
}

static const LbLost *
lost_of (GtkWidget *button)
{
  return g_object_get_data (G_OBJECT (button), "lost");
}

static void
restore_cb (LbRecoveryBar *self, GtkWidget *button)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbDocument) document = lb_recovery_restore (self->recovery, lost_of (button), &error);

  if (document)
    g_signal_emit (self, signals[RESTORED], 0, document);
  else
    fail (self, error);
  lb_recovery_bar_show_lost (self);
}

static void
drop_question (LbRecoveryBar *self)
{
  GtkWidget *question = g_steal_pointer (&self->question);

  if (question)
    gtk_window_destroy (GTK_WINDOW (question));
}

static void
answered_cb (LbRecoveryBar *self, int response)
{
  g_autoptr (LbLost) lost = lb_lost_copy (lost_of (self->question));
  g_autoptr (GError) error = NULL;

  drop_question (self);
  if (response != RESPONSE_REMOVE)
    return;
  if (!lb_recovery_remove (self->recovery, lost, &error))
    fail (self, error);
  lb_recovery_bar_show_lost (self);
}

/* Nothing brings it back: asks. */
static void
remove_cb (LbRecoveryBar *self, GtkWidget *button)
{
  const LbLost *lost = lost_of (button);
  GtkWidget *remove = lb_accessible_button_new (_ ("_Remove for good"));
  g_autofree char *text = g_strdup_printf (_ ("Remove the unsaved changes to “%s”?"), lost->name);

  drop_question (self);
  self->question = gtk_message_dialog_new (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                                           GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                           GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s", text);
  lb_accessible_name (self->question, text);
  g_object_set_data_full (G_OBJECT (self->question), "lost", lb_lost_copy (lost),
                          (GDestroyNotify) lb_lost_free);
  gtk_dialog_add_action_widget (GTK_DIALOG (self->question), lb_accessible_button_new (_ ("_Keep")),
                                GTK_RESPONSE_CANCEL);
  gtk_dialog_add_action_widget (GTK_DIALOG (self->question), remove, RESPONSE_REMOVE);
  gtk_widget_add_css_class (remove, "destructive-action");
  gtk_dialog_set_default_response (GTK_DIALOG (self->question), GTK_RESPONSE_CANCEL);
  g_signal_connect_swapped (self->question, "response", G_CALLBACK (answered_cb), self);
  gtk_window_present (GTK_WINDOW (self->question));
}

/* ---- The list ---- */

/* "changed 25 November, 16:40; file Stony Bend.rig" */
static char *
details (const LbLost *lost)
{
  /* Translators: day and time of day, see strftime(3). */
  g_autofree char *time = g_date_time_format (lost->time, _ ("%e %B, %H:%M"));
  g_autofree char *name = lost->file ? g_file_get_basename (lost->file) : NULL;

  if (name)
    return g_strdup_printf (_ ("changed %s; file “%s”"), g_strchug (time), name);
  return g_strdup_printf (_ ("changed %s; never saved to a file"), g_strchug (time));
}

static GtkWidget *
make_button (LbRecoveryBar *self,
             const LbLost *lost,
             const char *label,
             const char *named,
             GCallback clicked_cb)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  g_autofree char *name = g_strdup_printf (named, lost->name);

  gtk_widget_set_tooltip_text (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_object_set_data_full (G_OBJECT (button), "lost", lb_lost_copy (lost),
                          (GDestroyNotify) lb_lost_free);
  g_signal_connect_swapped (button, "clicked", clicked_cb, self);
  return button;
}

static GtkWidget *
make_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (css_class)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
make_row (LbRecoveryBar *self, const LbLost *lost)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *more = details (lost);

  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), make_label (lost->name, "lost-name"));
  gtk_box_append (GTK_BOX (words), make_label (more, NULL));
  gtk_box_append (GTK_BOX (row), words);
  gtk_box_append (GTK_BOX (row),
                  make_button (self, lost, _ ("Restore"), _ ("Open “%s” as it was last"),
                               G_CALLBACK (restore_cb)));
  gtk_box_append (GTK_BOX (row),
                  make_button (self, lost, _ ("Remove…"), _ ("Delete the unsaved changes to “%s”"),
                               G_CALLBACK (remove_cb)));
  return row;
}

static void
closed_cb (LbRecoveryBar *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static void
lb_recovery_bar_dispose (GObject *object)
{
  LbRecoveryBar *self = LB_RECOVERY_BAR (object);

  if (self->question)
    g_signal_handlers_disconnect_by_data (self->question, self);
  drop_question (self);
  g_clear_pointer (&self->bar, gtk_widget_unparent);
  g_clear_object (&self->recovery);
  G_OBJECT_CLASS (lb_recovery_bar_parent_class)->dispose (object);
}

static void
lb_recovery_bar_class_init (LbRecoveryBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_recovery_bar_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[RESTORED] = g_signal_new ("restored", LB_TYPE_RECOVERY_BAR, G_SIGNAL_RUN_LAST, 0, NULL,
                                    NULL, NULL, G_TYPE_NONE, 1, LB_TYPE_DOCUMENT);
  signals[FAILED] = g_signal_new ("failed", LB_TYPE_RECOVERY_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkWidget *
make_scroller (LbRecoveryBar *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), ROWS_HIGHEST);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->rows);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), _ ("Unsaved rigs"));
  return scroller;
}

static void
lb_recovery_bar_init (LbRecoveryBar *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->bar = gtk_info_bar_new ();
  self->title = make_label (NULL, "heading");
  gtk_label_set_wrap (GTK_LABEL (self->title), TRUE);
  gtk_label_set_ellipsize (GTK_LABEL (self->title), PANGO_ELLIPSIZE_NONE);
  gtk_info_bar_set_show_close_button (GTK_INFO_BAR (self->bar), TRUE);
  gtk_info_bar_set_message_type (GTK_INFO_BAR (self->bar), GTK_MESSAGE_INFO);
  gtk_box_append (GTK_BOX (box), self->title);
  gtk_box_append (GTK_BOX (box), make_scroller (self));
  gtk_widget_set_hexpand (box, TRUE);
  gtk_info_bar_add_child (GTK_INFO_BAR (self->bar), box);
  lb_accessible_name_close (GTK_INFO_BAR (self->bar));
  g_signal_connect_swapped (self->bar, "response", G_CALLBACK (closed_cb), self);
  gtk_widget_set_parent (self->bar, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
lb_recovery_bar_new (LbRecovery *recovery)
{
  LbRecoveryBar *self = g_object_new (LB_TYPE_RECOVERY_BAR, NULL);

  self->recovery = g_object_ref (recovery);
  return GTK_WIDGET (self);
}

guint
lb_recovery_bar_show_lost (LbRecoveryBar *self)
{
  g_autoptr (GPtrArray) lost = NULL;
  g_autofree char *title = NULL;
  GtkWidget *child;

  g_return_val_if_fail (LB_IS_RECOVERY_BAR (self), 0);
  lost = lb_recovery_list_lost (self->recovery);
  while ((child = gtk_widget_get_first_child (self->rows)))
    gtk_box_remove (GTK_BOX (self->rows), child);
  for (guint i = 0; i < lost->len; i++)
    gtk_box_append (GTK_BOX (self->rows), make_row (self, g_ptr_array_index (lost, i)));
  title =
      g_strdup_printf (g_dngettext (NULL, "Layback ended before this rig was saved.",
                                    "Layback ended before these %u rigs were saved.", lost->len),
                       lost->len);
  gtk_label_set_text (GTK_LABEL (self->title), title);
  gtk_widget_set_visible (GTK_WIDGET (self), lost->len > 0);
  return lost->len;
}
