/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An open rig document. It is read through const getters and changed by change objects only (see
 * change.h and history.h).
 *
 * Signals: "changed" after every change, undo and redo.
 * Properties (read only): "file" (GFile or NULL), "modified" (boolean), "title" (string),
 * "file-changed" (boolean; notifies each time the file is found to hold something else again). */
#pragma once

#include <gio/gio.h>

#include "contents.h"
#include "fields.h"
#include "file_error.h"

G_BEGIN_DECLS

#define LB_TYPE_DOCUMENT (lb_document_get_type ())
G_DECLARE_FINAL_TYPE (LbDocument, lb_document, LB, DOCUMENT, GObject)

/* A new document with the default rig, no file, not modified. (transfer full) */
LbDocument *lb_document_new (void);

/* A new document with a copy of `contents`. (transfer full) */
LbDocument *lb_document_new_with (const LbContents *contents);

/* Reads `file`. NULL with an LB_FILE_ERROR when it is refused. (transfer full) */
LbDocument *lb_document_load (GFile *file, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes to `file`, which becomes the document's own; it then counts as not modified. To have the
 * undo history know, use lb_history_save(). When it is its own already and no longer holds what the
 * document last read or wrote there, nothing is written and the error is LB_FILE_ERROR_CHANGED: ask
 * the user, then lb_document_save_over(). On any fault the file stays as it was, and the document
 * modified. */
gboolean lb_document_save (LbDocument *self, GFile *file, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same, whatever the file holds now. */
gboolean
lb_document_save_over (LbDocument *self, GFile *file, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ---- The file on the disk ---- */

typedef enum
{
  LB_FILE_SAME,    /* as the document last read or wrote it; also: it has no file */
  LB_FILE_CHANGED, /* another program wrote to it */
  LB_FILE_REMOVED, /* another program deleted or renamed it */
} LbFileState;

/* As of the last look; LB_FILE_SAME right after reading and writing. */
LbFileState lb_document_get_file_state (LbDocument *self);
gboolean lb_document_get_file_changed (LbDocument *self); /* whether it is not LB_FILE_SAME */

/* Looks now: reads the file and compares. */
LbFileState lb_document_check_file (LbDocument *self);

/* From now on the system tells when the file changes (needs a running main loop), which the
 * property "file-changed" passes on. */
void lb_document_watch_file (LbDocument *self);

/* ---- Reading ---- */

/* Everything; valid until the next change. (transfer none) */
const LbContents *lb_document_get_contents (LbDocument *self);
const LbSetup *lb_document_get_setup (LbDocument *self);
const char *lb_document_get_title (LbDocument *self);
const char *lb_document_get_notes (LbDocument *self);
const LbCard *lb_document_get_card (LbDocument *self);
const LbPassScript *lb_document_get_pass (LbDocument *self);
const char *lb_document_get_lure_name (LbDocument *self, size_t leader);

/* One value by its field (fields.h). */
double lb_document_get_value (LbDocument *self, const LbField *field, size_t leader);

GFile *lb_document_get_file (LbDocument *self); /* (transfer none) (nullable) */
gboolean lb_document_get_modified (LbDocument *self);

/* A name for a title bar: the title, else the file's name, else "Untitled rig". Free with
 * g_free(). */
char *lb_document_dup_display_name (LbDocument *self);

G_END_DECLS
