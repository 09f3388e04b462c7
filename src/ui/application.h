/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program: its windows and what belongs to all of them. */
#pragma once

#include <gtk/gtk.h>

#include "preferences.h"

G_BEGIN_DECLS

#define LB_TYPE_APPLICATION (lb_application_get_type ())
G_DECLARE_FINAL_TYPE (LbApplication, lb_application, LB, APPLICATION, GtkApplication)

LbApplication *lb_application_new (GApplicationFlags flags);

/* Only once the application has started up. (transfer none) */
LbPreferences *lb_application_get_preferences (LbApplication *self);

G_END_DECLS
