/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the user sets what holds for all windows. */
#pragma once

#include <gtk/gtk.h>

#include "preferences.h"

G_BEGIN_DECLS

/* Shows the preferences over `parent` (may be NULL). Returns the window, owned by GTK. */
GtkWindow *lb_preferences_window_show (GtkWindow *parent, LbPreferences *preferences);

/* The weights in `text` ("1 lb; 1 1/4 lb; 0.9 kg") as an array of double, kg. NULL with `message`
 * (free with g_free()) set when one of them is none. (transfer full) */
GArray *lb_preferences_parse_weights (LbUnits units, const char *text, char **message);

G_END_DECLS
