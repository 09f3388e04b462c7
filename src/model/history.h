/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was done to a document, and how to go back and forth in it.
 *
 * Properties (read only, notify): "can-undo", "can-redo" (boolean), "undo-label", "redo-label"
 * (string or NULL). */
#pragma once

#include "change.h"

G_BEGIN_DECLS

#define LB_TYPE_HISTORY (lb_history_get_type ())
G_DECLARE_FINAL_TYPE (LbHistory, lb_history, LB, HISTORY, GObject)

#define LB_HISTORY_LONGEST 1000 /* steps; older ones are forgotten */

/* A history for `document`, of which it keeps a reference. (transfer full) */
LbHistory *lb_history_new (LbDocument *document);

/* Carries `change` out (transfer full; NULL does nothing) and remembers it. Returns FALSE when the
 * change was refused or changed nothing (see lb_change_apply()). */
gboolean lb_history_do (LbHistory *self, LbChange *change);

/* One step back or forth; FALSE when there is none. */
gboolean lb_history_undo (LbHistory *self);
gboolean lb_history_redo (LbHistory *self);

gboolean lb_history_get_can_undo (LbHistory *self);
gboolean lb_history_get_can_redo (LbHistory *self);
const char *lb_history_get_undo_label (LbHistory *self); /* (nullable) */
const char *lb_history_get_redo_label (LbHistory *self); /* (nullable) */

/* A number no other gesture has; for lb_change_set_gesture(). */
guint lb_history_new_gesture (LbHistory *self);

/* Takes back what was done in `gesture`, when that was done last, as though it had never been: a
 * drag that is broken off. Returns FALSE when there is nothing of it. */
gboolean lb_history_cancel_gesture (LbHistory *self, guint gesture);

/* Notes that the document is now as in its file; the document's "modified" follows from it. */
void lb_history_mark_saved (LbHistory *self);

/* lb_document_save() or lb_document_save_over(), and lb_history_mark_saved(). */
gboolean lb_history_save (LbHistory *self, GFile *file, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean
lb_history_save_over (LbHistory *self, GFile *file, GError **error) G_GNUC_WARN_UNUSED_RESULT;

LbDocument *lb_history_get_document (LbHistory *self); /* (transfer none) */

G_END_DECLS
