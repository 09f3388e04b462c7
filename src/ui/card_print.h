/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A card on its way to a printer. */
#pragma once

#include <gtk/gtk.h>

#include "card_maker.h"

/* Prints all sheets of `card` at their true size, each page set up for its sheet's paper. Run it
 * with an action of your choice. `settings` (may be NULL) are those of the last time. (transfer
 * full) */
GtkPrintOperation *lb_card_print_new (LbMadeCard *card, GtkPrintSettings *settings);
