/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for a text of the document: the rig's title, or the name of a lure. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_TEXT_ENTRY (lb_text_entry_get_type ())
G_DECLARE_FINAL_TYPE (LbTextEntry, lb_text_entry, LB, TEXT_ENTRY, GtkEntry)

/* Enter or leaving the entry sets the text, as one step of the history; Escape puts the old text
 * back. */
GtkWidget *lb_text_entry_new_title (LbSession *session);
GtkWidget *lb_text_entry_new_lure_name (LbSession *session, gsize leader);

G_END_DECLS
