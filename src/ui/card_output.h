/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a card goes to: a printer, files, the clipboard. What goes wrong is said in the window. */
#pragma once

#include <gtk/gtk.h>

#include "card_maker.h"

G_BEGIN_DECLS

#define LB_TYPE_CARD_OUTPUT (lb_card_output_get_type ())
G_DECLARE_FINAL_TYPE (LbCardOutput, lb_card_output, LB, CARD_OUTPUT, GObject)

/* For `page` of an LbWindow, which is not kept alive. */
LbCardOutput *lb_card_output_new (GtkWidget *page);

/* Opens the print dialog; it remembers what was chosen the last time. */
void lb_card_output_print (LbCardOutput *self, LbMadeCard *card);

/* Asks for a file. `name` is suggested, without an ending. */
void lb_card_output_choose_file (LbCardOutput *self, LbMadeCard *card, const char *name);

/* Writes to `file`, in the format that its name ends in: PDF when it has no ending. `resolution`:
 * pixels to the inch of a PNG. Says how it went in the window. */
void lb_card_output_save (LbCardOutput *self, LbMadeCard *card, GFile *file, double resolution);

/* Puts a sheet as a picture, and the whole card as text, on the clipboard. */
void lb_card_output_copy (LbCardOutput *self, LbMadeCard *card, gsize sheet);

/* The file dialog while it is open; for tests. (transfer none) (nullable) */
GtkFileChooser *lb_card_output_get_chooser (LbCardOutput *self);

G_END_DECLS
