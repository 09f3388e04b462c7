/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for one of the preferences, with what is wrong with its text in words below it. */
#pragma once

#include <gtk/gtk.h>

#include "preferences.h"

G_BEGIN_DECLS

#define LB_TYPE_PREFERENCES_ENTRY (lb_preferences_entry_get_type ())
G_DECLARE_FINAL_TYPE (LbPreferencesEntry, lb_preferences_entry, LB, PREFERENCES_ENTRY, GtkWidget)

/* The text for the present value. (transfer full) */
typedef char *(*LbPreferencesShow) (LbPreferences *preferences, const char *property);

/* Sets what `text` says, or returns why it cannot be (transfer full). */
typedef char *(*LbPreferencesTake) (LbPreferences *preferences,
                                    const char *property,
                                    const char *text);

/* Enter or leaving the entry sets the value. A text that cannot be stays and is tried again when
 * another preference changes; the old value stays, too. */
GtkWidget *lb_preferences_entry_new (LbPreferences *preferences,
                                     const char *property,
                                     LbPreferencesShow show,
                                     LbPreferencesTake take);

/* The text field itself, for a label's mnemonic. (transfer none) */
GtkWidget *lb_preferences_entry_get_entry (LbPreferencesEntry *self);

/* What is wrong with the text; NULL when nothing is. */
const char *lb_preferences_entry_get_fault (LbPreferencesEntry *self);

/* As Enter does. */
void lb_preferences_entry_commit (LbPreferencesEntry *self);

G_END_DECLS
