/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the user has set for the whole program: units, light or dark, the weights in the box.
 *
 * Kept in GSettings where the schema is installed; where it is not, the built-in defaults hold and
 * changes last until the program ends. */
#pragma once

#include <glib-object.h>

#include "units.h"

G_BEGIN_DECLS

#define LB_TYPE_PREFERENCES (lb_preferences_get_type ())
G_DECLARE_FINAL_TYPE (LbPreferences, lb_preferences, LB, PREFERENCES, GObject)

typedef enum
{
  LB_SCHEME_FOLLOW, /* as the system has it */
  LB_SCHEME_LIGHT,
  LB_SCHEME_DARK,
} LbScheme;

/* Properties (each with the name of its key in the schema): "units" and "theme" (strings, the nicks
 * in the schema), "text-size" (string, likewise), "band-low", "band-high", "level-within",
 * "hold-height" (double, m), "decimals" (int), "show-timings" (boolean), "window-width",
 * "window-height" (int), "window-maximized" (boolean). Another string than a nick is ignored.
 * Notifies only of changes. */
LbPreferences *lb_preferences_new (void);

LbUnits lb_preferences_get_units (LbPreferences *self);
LbScheme lb_preferences_get_scheme (LbPreferences *self);
int lb_preferences_get_decimals (LbPreferences *self);

/* How many times their normal size letters and drawings are: 1 for "normal". */
double lb_preferences_get_text_scale (LbPreferences *self);

/* Lures no further apart in height than this count as level, m. */
double lb_preferences_get_level_within (LbPreferences *self);

/* Where a weight is held that is taken up from the bed, m above it. */
double lb_preferences_get_hold_height (LbPreferences *self);

gboolean lb_preferences_get_show_timings (LbPreferences *self);

/* m above the bed. */
void lb_preferences_get_band (LbPreferences *self, double *low, double *high);

/* The weights owned, kg, rising; `n` their number. Owned by `self`, valid until they change. */
const double *lb_preferences_get_weights (LbPreferences *self, gsize *n);

/* Sets the weights owned; they are sorted, and what is no weight is left out. Emits
 * "weights-changed". */
void lb_preferences_set_weights (LbPreferences *self, const double *kg, gsize n);

G_END_DECLS
