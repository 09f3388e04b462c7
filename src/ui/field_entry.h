/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for one number of the document, in words with a unit. It takes any unit ("6 m",
 * "20 ft 6 in", "1 1/4 lb"), whatever the setting. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_FIELD_ENTRY (lb_field_entry_get_type ())
G_DECLARE_FINAL_TYPE (LbFieldEntry, lb_field_entry, LB, FIELD_ENTRY, GtkEntry)

/* Enter or leaving the entry sets the value, as one step of the history; Escape puts the old text
 * back; Up and Down change it by a step, Page Up and Page Down by ten. A text that is no value of
 * the field stays, marked, with the reason as its tooltip. A value that is unset is an empty entry,
 * and emptying it unsets the value, where the field allows that.
 *
 * Property (read only, notify): "fault" (string or NULL), see lb_field_entry_get_fault(). */
GtkWidget *lb_field_entry_new (LbSession *session, const LbField *field, gsize leader);

/* Makes it an entry for another field. */
void lb_field_entry_set_field (LbFieldEntry *self,
                               LbSession *session,
                               const LbField *field,
                               gsize leader);

/* Why the text is no value; NULL when it is one. */
const char *lb_field_entry_get_fault (LbFieldEntry *self);

G_END_DECLS
