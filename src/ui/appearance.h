/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Light or dark, as the user set it or as the system has it, and how large letters are. */
#pragma once

#include <glib-object.h>

#include "preferences.h"

G_BEGIN_DECLS

#define LB_TYPE_APPEARANCE (lb_appearance_get_type ())
G_DECLARE_FINAL_TYPE (LbAppearance, lb_appearance, LB, APPEARANCE, GObject)

/* Keeps GTK's theme and the size of its letters in step with `preferences` and with the desktop, as
 * long as it lives. The properties "dark" (boolean) and "text-scale" (double; 1 is normal), both
 * read only, say what they are now. The desktop is asked through the
 * settings portal, without waiting for it; where there is none, GTK's own setting holds. */
LbAppearance *lb_appearance_new (LbPreferences *preferences);

gboolean lb_appearance_get_dark (LbAppearance *self);
double lb_appearance_get_text_scale (LbAppearance *self);

G_END_DECLS
