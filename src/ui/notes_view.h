/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The notes of the document, as a text to write in. All that is written between coming and leaving
 * is one step of the history. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_NOTES_VIEW (lb_notes_view_get_type ())
G_DECLARE_FINAL_TYPE (LbNotesView, lb_notes_view, LB, NOTES_VIEW, GtkTextView)

GtkWidget *lb_notes_view_new (LbSession *session);

G_END_DECLS
