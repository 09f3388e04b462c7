/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dialog that asks where a card is to be saved. */
#pragma once

#include <gtk/gtk.h>

#define LB_CARD_ENDING ".pdf" /* of a name that has none */

/* `name` is suggested, without an ending. Not yet shown. (transfer full) */
GtkNativeDialog *lb_card_chooser_new (GtkWindow *parent, const char *name);

/* Pixels to the inch of a PNG, as chosen in the dialog. */
double lb_card_chooser_get_resolution (GtkFileChooser *chooser);
