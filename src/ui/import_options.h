/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a log is read and made into a bed, as fields. */
#pragma once

#include <gtk/gtk.h>

#include "import.h"
#include "quantity_entry.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_IMPORT_OPTIONS_BOX (lb_import_options_box_get_type ())
G_DECLARE_FINAL_TYPE (LbImportOptionsBox, lb_import_options_box, LB, IMPORT_OPTIONS_BOX, GtkWidget)

/* Signals: "changed" when the bed is to be made anew; "reread" when the file is to be read anew,
 * since a table is to be understood otherwise. */
GtkWidget *lb_import_options_box_new (LbSession *session);

/* Shows only what has a meaning for `import`. */
void lb_import_options_box_fit (LbImportOptionsBox *self, const LbImport *import);

/* Shows only how a table is read, for a file that no table was found in. */
void lb_import_options_box_fit_unread (LbImportOptionsBox *self);

LbImportOptions lb_import_options_box_get (LbImportOptionsBox *self);

GtkDropDown *lb_import_options_box_get_direction (LbImportOptionsBox *self); /* (transfer none) */
GtkDropDown *lb_import_options_box_get_unit (LbImportOptionsBox *self);      /* (transfer none) */
/* (transfer none); its first entry is "as found", then the columns from 1. */
GtkDropDown *lb_import_options_box_get_column (LbImportOptionsBox *self, LbCsvColumn column);
LbQuantityEntry *lb_import_options_box_get_transducer (LbImportOptionsBox *self);
LbQuantityEntry *lb_import_options_box_get_spike_limit (LbImportOptionsBox *self);

/* Where the stretch to use begins and ends, along the track. */
LbQuantityEntry *lb_import_options_box_get_from (LbImportOptionsBox *self);
LbQuantityEntry *lb_import_options_box_get_to (LbImportOptionsBox *self);

/* Why a number typed in is none, with its name; NULL when nothing is wrong. */
const char *lb_import_options_box_get_fault (LbImportOptionsBox *self);

G_END_DECLS
