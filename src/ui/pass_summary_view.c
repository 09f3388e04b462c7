/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_summary_view.h"

#include <glib/gi18n.h>

#include "page_parts.h"
#include "pass_words.h"

struct _LbPassSummaryView
{
  GtkBox parent;
  LbSession *session;
  LbPassPlayback *playback;
  GtkWidget *sentence;
  GtkWidget *table; /* box, made anew with each pass */
  LbReadingsTable *shown;
};

G_DEFINE_FINAL_TYPE (LbPassSummaryView, lb_pass_summary_view, GTK_TYPE_BOX)

static void
clear (LbPassSummaryView *self)
{
  gtk_label_set_text (GTK_LABEL (self->sentence), "");
  g_clear_pointer (&self->shown, lb_readings_table_free);
  lb_page_show_table (self->table, NULL);
}

static void
show (LbPassSummaryView *self, const LbPassRecord *record)
{
  LbWording wording = lb_session_get_wording (self->session);
  const LbContents *contents = lb_document_get_contents (lb_session_get_document (self->session));
  LbPassSummary *summary = g_new0 (LbPassSummary, 1);
  g_autofree char *sentence = NULL;

  lb_pass_summary_continue (summary, record);
  sentence = lb_pass_words_sentence (record, summary, &wording);
  gtk_label_set_text (GTK_LABEL (self->sentence), sentence);
  self->shown = lb_pass_words_table (record, summary, contents, &wording);
  lb_page_show_table (self->table, self->shown);
  g_free (summary);
}

static void
update (LbPassSummaryView *self)
{
  LbPassRunner *runner = lb_pass_playback_get_runner (self->playback);
  LbPassRecord *record = lb_pass_runner_get_record (runner);

  if (lb_pass_runner_get_state (runner) == LB_PASS_RUN_GOING)
    return;
  clear (self);
  if (record && lb_pass_record_count (record) > 0)
    show (self, record);
}

static void
lb_pass_summary_view_dispose (GObject *object)
{
  LbPassSummaryView *self = LB_PASS_SUMMARY_VIEW (object);

  if (self->playback)
    g_signal_handlers_disconnect_by_data (self->playback, self);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_pointer (&self->shown, lb_readings_table_free);
  g_clear_object (&self->sentence);
  g_clear_object (&self->playback);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_pass_summary_view_parent_class)->dispose (object);
}

static void
lb_pass_summary_view_class_init (LbPassSummaryViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_pass_summary_view_dispose;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_pass_summary_view_init (LbPassSummaryView *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-section");
  self->sentence = g_object_ref_sink (lb_page_label (NULL, NULL));
  self->table = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_add_css_class (self->table, "card-section");
  gtk_box_append (GTK_BOX (self), self->table);
}

GtkWidget *
lb_pass_summary_view_new (LbSession *session, LbPassPlayback *playback)
{
  LbPassSummaryView *self = g_object_new (LB_TYPE_PASS_SUMMARY_VIEW, NULL);

  self->session = g_object_ref (session);
  self->playback = g_object_ref (playback);
  g_signal_connect_swapped (playback, "grown", G_CALLBACK (update), self);
  g_signal_connect_swapped (playback, "restarted", G_CALLBACK (clear), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (update), self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_pass_summary_view_take_sentence (LbPassSummaryView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_add_css_class (box, "card-section");
  gtk_box_append (GTK_BOX (box), lb_page_heading (_ ("What came of it")));
  gtk_box_append (GTK_BOX (box), self->sentence);
  return box;
}

const char *
lb_pass_summary_view_get_sentence (LbPassSummaryView *self)
{
  g_return_val_if_fail (LB_IS_PASS_SUMMARY_VIEW (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->sentence));
}

char *
lb_pass_summary_view_dup_text (LbPassSummaryView *self)
{
  GString *text;

  g_return_val_if_fail (LB_IS_PASS_SUMMARY_VIEW (self), NULL);
  text = g_string_new (lb_pass_summary_view_get_sentence (self));
  lb_page_table_text (text, self->shown);
  return g_string_free (text, FALSE);
}
