/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for a number with a unit that is no field of the document by itself: a point of the bed,
 * the time a float took. It takes any unit, as LbFieldEntry does. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_QUANTITY_ENTRY (lb_quantity_entry_get_type ())
G_DECLARE_FINAL_TYPE (LbQuantityEntry, lb_quantity_entry, LB, QUANTITY_ENTRY, GtkEntry)

/* An empty entry; `name` is for a screen reader. Enter or leaving it, and Up, Down, Page Up and
 * Page Down, emit "entered" (double, SI) when the text is a value in the range, and hold it; Escape
 * puts the old text back. A time may also be "1:15" (minutes and seconds).
 *
 * Signals: "entered"; "fault-changed" when lb_quantity_entry_get_fault() did. */
GtkWidget *lb_quantity_entry_new (LbSession *session, LbQuantity quantity, const char *name);

void lb_quantity_entry_set_name (LbQuantityEntry *self, const char *name);

/* SI, inclusive. At first any number will do. */
void lb_quantity_entry_set_range (LbQuantityEntry *self, double minimum, double maximum);

/* An empty text then stands for unset, and "entered" comes with that; at first it is a fault. */
void lb_quantity_entry_set_optional (LbQuantityEntry *self, gboolean optional);

/* Shows `value` unless it is shown already; unset is an empty entry. Emits nothing. A text that is
 * being typed gives way only to another value. */
void lb_quantity_entry_set_value (LbQuantityEntry *self, double value);

/* Puts the value's text back, whatever stood there; as Escape does. */
void lb_quantity_entry_reset (LbQuantityEntry *self);

/* The value last set or entered; may be unset. */
double lb_quantity_entry_get_value (LbQuantityEntry *self);

/* A gesture (lb_session_new_gesture()) that lasts while the arrow keys are used; 0: none. */
guint lb_quantity_entry_get_gesture (LbQuantityEntry *self);

/* Why the text is no value; NULL when it is one. */
const char *lb_quantity_entry_get_fault (LbQuantityEntry *self);

/* As Enter does. */
void lb_quantity_entry_commit (LbQuantityEntry *self);

G_END_DECLS
