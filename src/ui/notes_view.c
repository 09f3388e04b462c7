/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "notes_view.h"

#include <glib/gi18n.h>

#include "dispose.h"

#define HEIGHT 88

struct _LbNotesView
{
  GtkTextView parent;
  LbSession *session;
  guint gesture; /* 0: none under way */
  gboolean following;
};

G_DEFINE_FINAL_TYPE (LbNotesView, lb_notes_view, GTK_TYPE_TEXT_VIEW)

static char *
dup_text (LbNotesView *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
follow (LbNotesView *self)
{
  const char *notes = lb_document_get_notes (lb_session_get_document (self->session));
  g_autofree char *text = dup_text (self);

  if (g_str_equal (notes, text))
    return;
  self->following = TRUE;
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self)), notes, -1);
  self->following = FALSE;
}

static void
typed_cb (LbNotesView *self)
{
  g_autofree char *text = NULL;
  LbChange *change;

  if (self->following || !self->session)
    return;
  text = dup_text (self);
  if (!self->gesture)
    self->gesture = lb_session_new_gesture (self->session);
  change = lb_change_new_notes (text);
  lb_change_set_gesture (change, self->gesture);
  lb_session_do (self->session, change);
}

static void
leave_cb (LbNotesView *self)
{
  self->gesture = 0;
}

static void
lb_notes_view_dispose (GObject *object)
{
  LbNotesView *self = LB_NOTES_VIEW (object);

  lb_dispose_session (&self->session, self);
  G_OBJECT_CLASS (lb_notes_view_parent_class)->dispose (object);
}

static void
lb_notes_view_class_init (LbNotesViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_notes_view_dispose;
}

static void
lb_notes_view_init (LbNotesView *self)
{
  GtkTextView *view = GTK_TEXT_VIEW (self);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_text_view_set_wrap_mode (view, GTK_WRAP_WORD_CHAR);
  /* Tab goes on to what is next; the window undoes. */
  gtk_text_view_set_accepts_tab (view, FALSE);
  gtk_text_buffer_set_enable_undo (gtk_text_view_get_buffer (view), FALSE);
  gtk_widget_set_size_request (GTK_WIDGET (self), -1, HEIGHT);
  gtk_widget_add_css_class (GTK_WIDGET (self), "notes");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Notes"),
                                  -1);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

GtkWidget *
lb_notes_view_new (LbSession *session)
{
  LbNotesView *self = g_object_new (LB_TYPE_NOTES_VIEW, NULL);

  self->session = g_object_ref (session);
  follow (self);
  g_signal_connect_object (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self)), "changed",
                           G_CALLBACK (typed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  return GTK_WIDGET (self);
}
