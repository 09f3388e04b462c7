/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for one line of text. What is done with the text is up to who made it. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define LB_TYPE_LINE_ENTRY (lb_line_entry_get_type ())
G_DECLARE_FINAL_TYPE (LbLineEntry, lb_line_entry, LB, LINE_ENTRY, GtkEntry)

/* `name` is for a screen reader; `longest` in characters, 0: any length. Enter or leaving it emits
 * "entered" (string, without blanks around it) when the text is another than was set; Escape puts
 * that one back.
 *
 * Signals: "entered"; "fault-changed" when lb_line_entry_get_fault() did. */
GtkWidget *lb_line_entry_new (const char *name, int longest);

/* Shows `text` unless it is what was set last: then what is being typed stays. Takes a fault away
 * with the old text. Emits no "entered". */
void lb_line_entry_set_text (LbLineEntry *self, const char *text);

/* Why the text cannot be; NULL: it can. */
void lb_line_entry_set_fault (LbLineEntry *self, const char *fault);
const char *lb_line_entry_get_fault (LbLineEntry *self);

/* As Enter does. */
void lb_line_entry_commit (LbLineEntry *self);

G_END_DECLS
