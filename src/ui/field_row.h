/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One field of the document as a row of a page: its name, an entry with units or a list of
 * choices, and below it what an empty entry means and why a text is no value. The row hides itself
 * while the field has no effect (lb_field_applies()). */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_FIELD_ROW (lb_field_row_get_type ())
G_DECLARE_FINAL_TYPE (LbFieldRow, lb_field_row, LB, FIELD_ROW, GtkWidget)

/* A row for `field` of leader `leader` (0 for a field that is not a leader's). `label` is the name
 * as it is shown, translated; NULL: the field's own. A screen reader is told the full name
 * ("Leader 2: length") in any case. A fault in what is typed is told below the entry, with the
 * value that still holds; an entry of a field that may be unset is emptied to unset it. */
GtkWidget *
lb_field_row_new (LbSession *session, const LbField *field, gsize leader, const char *label);

const LbField *lb_field_row_get_field (LbFieldRow *self);

/* The entry (LbFieldEntry), or the drop-down of a choice. The row itself takes the focus to it.
 * (transfer none) */
GtkWidget *lb_field_row_get_control (LbFieldRow *self);

/* The fault as shown below the entry; NULL while there is none. */
const char *lb_field_row_get_fault (LbFieldRow *self);

G_END_DECLS
