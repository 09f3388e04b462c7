/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window that reads a sounder's or receiver's log: how far it is, what was read and what was
 * not, how the bed will look before and after cleaning, and the bed into the document. */
#pragma once

#include <gtk/gtk.h>

#include "import.h"
#include "import_options.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_IMPORT_WINDOW (lb_import_window_get_type ())
G_DECLARE_FINAL_TYPE (LbImportWindow, lb_import_window, LB, IMPORT_WINDOW, GtkWindow)

typedef enum
{
  LB_IMPORT_READING,
  LB_IMPORT_FAILED,
  LB_IMPORT_READ, /* there is a bed to use */
} LbImportState;

/* A window over `parent` that begins to read `file` at once. Closing it stops the reading and
 * leaves the document alone. Signal "used" when the bed went into the document. */
GtkWidget *lb_import_window_new (GtkWindow *parent, LbSession *session, GFile *file);

LbImportState lb_import_window_get_state (LbImportWindow *self);

/* What was read, or why it could not be. */
const char *lb_import_window_get_summary (LbImportWindow *self);

/* What the cleaning did, or why there is no bed. */
const char *lb_import_window_get_outcome (LbImportWindow *self);

/* The first lines of a table that was not understood; NULL when none are shown. (transfer none) */
const char *lb_import_window_get_first_lines (LbImportWindow *self);

LbImportOptionsBox *lb_import_window_get_options (LbImportWindow *self); /* (transfer none) */
GtkWidget *lb_import_window_get_use_button (LbImportWindow *self);       /* (transfer none) */

G_END_DECLS
