/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the user sets what holds for all windows. */
#pragma once

#include <gtk/gtk.h>

#include "preferences.h"

G_BEGIN_DECLS

/* Shows the preferences over `parent` (may be NULL). Returns the window, owned by GTK. */
GtkWindow *lb_preferences_window_show (GtkWindow *parent, LbPreferences *preferences);

/* An LbPreferencesEntry for the weights owned. */
GtkWidget *lb_preferences_weights_entry_new (LbPreferences *preferences);

G_END_DECLS
