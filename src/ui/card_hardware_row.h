/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One kind of hardware on the card's list: how many, and what. */
#pragma once

#include <gtk/gtk.h>

#include "card.h"

G_BEGIN_DECLS

#define LB_TYPE_CARD_HARDWARE_ROW (lb_card_hardware_row_get_type ())
G_DECLARE_FINAL_TYPE (LbCardHardwareRow, lb_card_hardware_row, LB, CARD_HARDWARE_ROW, GtkWidget)

/* Row `index` of the list.
 *
 * Signals: "count" (int) and "what" (string) when they are entered; "move" (int: 1 down, -1 up),
 * also by Alt with an arrow key; "remove". */
GtkWidget *lb_card_hardware_row_new (int index);

/* Shows `hardware`, one of `n`. */
void lb_card_hardware_row_show (LbCardHardwareRow *self, const LbCardHardware *hardware, int n);

/* Puts the focus into the words. */
void lb_card_hardware_row_focus (LbCardHardwareRow *self);

GtkSpinButton *lb_card_hardware_row_get_count (LbCardHardwareRow *self); /* (transfer none) */
GtkEntry *lb_card_hardware_row_get_what (LbCardHardwareRow *self);       /* (transfer none) */

G_END_DECLS
