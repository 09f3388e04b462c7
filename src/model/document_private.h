/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How change objects and the history write to a document. Internal to model. */
#pragma once

#include "document.h"

/* The contents, to be changed in place; call lb_document_emit_changed() afterwards. */
LbContents *lb_document_edit (LbDocument *self);

/* A document with unsaved changes (see recovery.h): `file` (nullable) held what has the mark `mark`
 * (file_watch.h) when it was last read or written. (transfer full) */
LbDocument *lb_document_restore (const LbContents *contents, GFile *file, const char *mark);
const char *lb_document_get_file_mark (LbDocument *self); /* (nullable) */

/* The document's file is `file`, which holds what has that mark. */
void lb_document_set_file (LbDocument *self, GFile *file, const char *mark);

void lb_document_emit_changed (LbDocument *self);
void lb_document_set_modified (LbDocument *self, gboolean modified);
void lb_document_notify_title (LbDocument *self);
