/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of the rig page and of the catalogue's window share: one window with the page
 * shown, and what a user does on it. */
#pragma once

#include "catalogue_window.h"
#include "field_row.h"
#include "harness.h"

extern LbWindow *rig_window;

LbSession *rig_session (void);
LbRigPage *rig_page (void);
const LbSetup *rig_setup (void);

/* A window of that size with the page. */
void rig_show (int width, int height);

/* For each test: such a window, and none of the user's own parts. */
int rig_set_up (void **state);
int rig_tear_down (void **state);
void rig_forget_own_parts (void);

/* The row of a field inside `widget`, or NULL; the first widget of that type, or NULL. */
LbFieldRow *rig_find_row (GtkWidget *widget, const LbField *field);
GtkWidget *rig_find_widget (GtkWidget *widget, GType type);

/* Opens all that is closed away. */
void rig_open_all (GtkWidget *widget);

/* Types a text into the row of the field at `path` inside `in`, and Enter. */
void rig_type (const char *path, GtkWidget *in, const char *text);

/* Presses a button of a leader's card. */
void rig_press (gsize leader, LbLeaderAction action);

const char *rig_lure_name (gsize leader);
void rig_assert_selected (LbPickKind kind, int index);

/* Presses the button that says what the part is; returns the window that opens. */
LbCatalogueWindow *rig_catalogue_for (LbPickKind kind, int index);

/* The name on the button of a part. */
const char *rig_part_name (LbPickKind kind, int index);

/* Runs the tests of the program `name` (a folder's name, too). */
int rig_run (const struct CMUnitTest *tests, gsize n_tests, const char *name);
