/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drop-down of one word of its own ("none", "the weight") and the rig's lures. */
#pragma once

#include <gtk/gtk.h>

#include "setup.h"

/* `first` (translated) comes before the lures; `name` is what a screen reader calls it. */
GtkWidget *lb_lure_choice_new (const char *first, const char *name);

/* Follows the rig. What is chosen stays, unless the rig no longer has it: then `first` is.
 * "notify::selected" comes at the end of it, if at all: who follows it by calling this may do so.
 */
void lb_lure_choice_update (GtkWidget *choice, const LbSetup *setup);

/* The leader of the chosen lure; -1: the first word. */
int lb_lure_choice_get (GtkWidget *choice);
