/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A button that opens the list of rivers to start from. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

/* Choosing one replaces the document's river, as one step of the history. */
GtkWidget *lb_presets_button_new (LbSession *session);

/* The list in its popover, one row a preset in the order of lb_river_presets(). (transfer none) */
GtkListBox *lb_presets_button_get_list (GtkWidget *button);
