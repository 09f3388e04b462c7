/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the entries of numbers have in common: keys that step, how a fault shows, and its words. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

/* Connects an entry, with its figures set right: `key_pressed_cb` as for "key-pressed" of a
 * GtkEventControllerKey, `leave_cb` and `activate_cb` (void (*) (entry)) for when it is left and
 * for Enter. */
void lb_entry_watch (GtkEntry *entry,
                     GCallback key_pressed_cb,
                     GCallback leave_cb,
                     GCallback activate_cb);

/* How many steps a key asks for: one by the arrows, ten by Page Up and Page Down, 0 by others and
 * with Shift, Control or Alt. */
double lb_entry_steps_of_key (guint key, GdkModifierType state);

/* Shows by colour, and tells a screen reader, that the text is no value. */
void lb_entry_show_invalid (GtkEntry *entry, gboolean invalid);

/* "Give a value from 3 ft to 30 ft."; `whole`: of numbers that are counted. (transfer full) */
char *lb_entry_range_fault (
    LbSession *session, LbQuantity quantity, double minimum, double maximum, gboolean whole);
