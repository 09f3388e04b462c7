/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_summary_view.h"

#include <glib/gi18n.h>

#include "caution_list.h"
#include "page_parts.h"
#include "pass_words.h"
#include "sentence.h"

struct _LbPassSummaryView
{
  GtkBox parent;
  LbSession *session;
  LbPassPlayback *playback;
  GtkWidget *said; /* box: */
  GtkWidget *sentence;
  GtkWidget *remark; /* lb_page_caution() */
  GtkWidget *cautions;
  GPtrArray *shown_cautions; /* LbCaution */
  GtkWidget *table;          /* box, made anew with each pass */
  LbReadingsTable *shown;
};

G_DEFINE_FINAL_TYPE (LbPassSummaryView, lb_pass_summary_view, GTK_TYPE_BOX)

/* Of the start: why the rig is not quite what was asked for. */
static void
show_remark (LbPassSummaryView *self, const LbResult *start)
{
  LbWording wording = lb_session_get_wording (self->session);
  g_autofree char *remark = start ? lb_sentence_of_remark (start, &wording) : NULL;
  /* Translators: a sentence */
  g_autofree char *text = remark ? g_strdup_printf (_ ("At the start: %s"), remark) : NULL;

  gtk_label_set_text (GTK_LABEL (gtk_widget_get_last_child (self->remark)), text ? text : "");
  gtk_widget_set_visible (self->remark, text != NULL);
}

/* Takes `cautions`. */
static void
show_cautions (LbPassSummaryView *self, GPtrArray *cautions)
{
  g_clear_pointer (&self->shown_cautions, g_ptr_array_unref);
  self->shown_cautions = cautions;
  lb_caution_list_update (LB_CAUTION_LIST (self->cautions), cautions);
}

/* What holds whatever comes of the pass stays. */
static void
clear (LbPassSummaryView *self)
{
  LbWording wording = lb_session_get_wording (self->session);
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));

  gtk_label_set_text (GTK_LABEL (self->sentence), _ ("Told when the pass is computed."));
  show_remark (self, NULL);
  show_cautions (self, lb_cautions_new (setup, NULL, &wording));
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

  show_cautions (self, lb_pass_words_cautions (record, &wording));
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
    {
      show (self, record);
      show_remark (self, lb_pass_runner_get_start (runner));
    }
  else
    gtk_label_set_text (GTK_LABEL (self->sentence), "");
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
  g_clear_pointer (&self->shown_cautions, g_ptr_array_unref);
  g_clear_object (&self->said);
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
  self->said = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  gtk_widget_add_css_class (self->said, "card-section");
  gtk_box_append (GTK_BOX (self->said), lb_page_heading (_ ("What came of it")));
  self->sentence = lb_page_label (NULL, NULL);
  gtk_box_append (GTK_BOX (self->said), self->sentence);
  self->remark = lb_page_caution (NULL);
  gtk_widget_set_visible (self->remark, FALSE);
  gtk_box_append (GTK_BOX (self->said), self->remark);
  self->cautions = lb_caution_list_new ();
  lb_caution_list_keep_height (LB_CAUTION_LIST (self->cautions));
  gtk_box_append (GTK_BOX (self->said), self->cautions);
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
  clear (self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_pass_summary_view_get_said (LbPassSummaryView *self)
{
  g_return_val_if_fail (LB_IS_PASS_SUMMARY_VIEW (self), NULL);
  return self->said;
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
  if (gtk_widget_get_visible (self->remark))
    g_string_append_printf (
        text, "\n%s", gtk_label_get_text (GTK_LABEL (gtk_widget_get_last_child (self->remark))));
  for (guint i = 0; i < self->shown_cautions->len; i++)
    g_string_append_printf (text, "\n%s",
                            ((LbCaution *) g_ptr_array_index (self->shown_cautions, i))->text);
  lb_page_table_text (text, self->shown);
  return g_string_free (text, FALSE);
}
