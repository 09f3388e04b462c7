/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A window with one rig. */
#pragma once

#include <gtk/gtk.h>

#include "controls.h"
#include "drawings.h"
#include "main_page.h"
#include "readings_page.h"
#include "recovery.h"
#include "rig_page.h"
#include "river_page.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_WINDOW (lb_window_get_type ())
G_DECLARE_FINAL_TYPE (LbWindow, lb_window, LB, WINDOW, GtkApplicationWindow)

/* A window showing the default rig, solved. Property "main-page" (string): see
 * lb_window_get_main_page(). Signal "stayed": the user was asked about unsaved
 * changes when the window was to close, and it stays open. */
LbWindow *lb_window_new (GtkApplication *application,
                         LbPreferences *preferences,
                         LbAppearance *appearance,
                         LbRecovery *recovery);

/* Lists what an earlier program left unsaved in a bar over the drawings, if there is any. When the
 * user `asked` and there is none, a message says so. */
void lb_window_offer_lost (LbWindow *self, gboolean asked);

/* The copy of unsaved changes stays when the window goes: the program has to end at once. */
void lb_window_keep_copy (LbWindow *self);

/* Tells the application the keys of the windows' actions. */
void lb_window_set_accels (GtkApplication *application);

LbSession *lb_window_get_session (LbWindow *self);            /* (transfer none) */
LbDrawings *lb_window_get_drawings (LbWindow *self);          /* (transfer none) */
LbControls *lb_window_get_controls (LbWindow *self);          /* (transfer none) */
LbReadingsPage *lb_window_get_readings_page (LbWindow *self); /* (transfer none) */
LbRigPage *lb_window_get_rig_page (LbWindow *self);           /* (transfer none) */
LbRiverPage *lb_window_get_river_page (LbWindow *self);       /* (transfer none) */

/* The window of `application` that has `file` open, or NULL. (transfer none) */
LbWindow *lb_window_with_file (GtkApplication *application, GFile *file);

/* Takes over what is typed in an entry and not yet entered, as leaving the entry does. */
void lb_window_take_typed (LbWindow *self);

/* Opens `file`; asks first if there are unsaved changes. A file that is refused leaves the rig as
 * it was and shows why. When another window has the file open, that one comes to the front. */
void lb_window_open_file (LbWindow *self, GFile *file);

/* The same, as the start of a new rig without a file: a sample. */
void lb_window_open_sample (LbWindow *self, GFile *file);

/* Opens a window that reads a sounder's or receiver's log. */
void lb_window_import_log (LbWindow *self, GFile *file);

/* What becomes of a file that is dropped on the window: a rig is opened, anything else is read as a
 * log. */
void lb_window_take_file (LbWindow *self, GFile *file);

/* Shows a message over the drawings until it is closed or the next one comes. NULL hides it. */
void lb_window_show_message (LbWindow *self, GtkMessageType type, const char *text);

/* The message that is shown, or NULL. */
const char *lb_window_get_message (LbWindow *self);

/* The line of timings; NULL before the first figures. */
const char *lb_window_get_timings_text (LbWindow *self);

/* The page of the column that is shown: "readings", "rig" and so on; a name of no page changes
 * nothing. */
const char *lb_window_get_page (LbWindow *self);
void lb_window_show_page (LbWindow *self, const char *name);

/* The main page that is shown, and showing one; a name of no page changes nothing. */
const char *lb_window_get_main_page (LbWindow *self);
void lb_window_show_main_page (LbWindow *self, const char *name);

/* The widget of a main page: NULL while it was never shown. (transfer none) (nullable) */
GtkWidget *lb_window_get_main_page_widget (LbWindow *self, const char *name);

/* Adds a main page beside those of all windows. `kind` must outlive the window. */
void lb_window_add_main_page (LbWindow *self, const LbMainPageKind *kind);

/* Whether closing the window would lose anything. */
gboolean lb_window_has_unsaved (LbWindow *self);

/* Whether the window still holds the rig that it began with, untouched: then a file may be opened
 * in it rather than in another window. */
gboolean lb_window_is_pristine (LbWindow *self);

G_END_DECLS
