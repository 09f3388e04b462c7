/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one state object of a window: its document and history, the solver, the latest answer, and
 * how numbers are worded. Widgets ask it and change the document through it; it knows no widget.
 *
 * Signals:
 *  "edited"   a value of the document changed, or another document took its place;
 *  "solved"   there is another answer (good or failed);
 *  "reworded" the units, the number of decimals or a rule of thumb changed: every text is to be
 *             made anew;
 *  "selected" another part of the drawing is selected. */
#pragma once

#include "appearance.h"
#include "history.h"
#include "picture.h"
#include "preferences.h"
#include "readings_table.h"
#include "result.h"
#include "scene.h"

G_BEGIN_DECLS

#define LB_TYPE_SESSION (lb_session_get_type ())
G_DECLARE_FINAL_TYPE (LbSession, lb_session, LB, SESSION, GObject)

/* A session with the default rig. Properties (read only, notify): "name" (string, for a title),
 * "modified", "can-undo", "can-redo" (boolean), "undo-label", "redo-label" (string or NULL). */
LbSession *lb_session_new (LbPreferences *preferences, LbAppearance *appearance);

LbPreferences *lb_session_get_preferences (LbSession *self); /* (transfer none) */
LbAppearance *lb_session_get_appearance (LbSession *self);   /* (transfer none) */
LbUnits lb_session_get_units (LbSession *self);
LbWording lb_session_get_wording (LbSession *self);

/* ---- Document ---- */

LbDocument *lb_session_get_document (LbSession *self); /* (transfer none) */

/* Shows `document` from now on, with a history of its own, solved before this returns unless that
 * takes unusually long. */
void lb_session_set_document (LbSession *self, LbDocument *document);

/* Reads `file` and shows it. When it is refused the open document stays as it is; `error` then
 * says why. */
gboolean lb_session_open (LbSession *self, GFile *file, GError **error);

/* The same, as the start of a new document: it has no file, so that saving asks for one. */
gboolean lb_session_open_copy (LbSession *self, GFile *file, GError **error);

/* A new document with the default rig and the user's band. */
void lb_session_open_new (LbSession *self);

/* Writes the document to `file`, which becomes its own. Refuses with LB_FILE_ERROR_CHANGED to write
 * over what another program wrote to its own file meanwhile; lb_session_save_over() does it. */
gboolean lb_session_save (LbSession *self, GFile *file, GError **error);
gboolean lb_session_save_over (LbSession *self, GFile *file, GError **error);

/* ---- Changes, all of them undoable ---- */

/* Carries `change` out (transfer full; NULL does nothing). Returns whether it changed anything. */
gboolean lb_session_do (LbSession *self, LbChange *change);

/* Sets one value as part of `gesture` (0: of none). */
gboolean lb_session_set_value (
    LbSession *self, const LbField *field, gsize leader, double value, guint gesture);

double lb_session_get_value (LbSession *self, const LbField *field, gsize leader);

guint lb_session_new_gesture (LbSession *self);

/* Takes back what was done in `gesture`, as if it had never been. Returns whether there was
 * anything. */
gboolean lb_session_cancel_gesture (LbSession *self, guint gesture);

void lb_session_undo (LbSession *self);
void lb_session_redo (LbSession *self);

/* ---- Selection ---- */

/* The part that is selected in the drawings and opened on the pages: LB_PICK_NOTHING when none is.
 * `index` is the leader of a part that has one, or the bed's point, else 0. What the document no
 * longer has is never selected: an edit that takes the part away selects nothing. */
void lb_session_get_selected (LbSession *self, LbPickKind *kind, int *index);
void lb_session_select (LbSession *self, LbPickKind kind, int index);

/* ---- Answers ---- */

/* The latest answer, good or failed; NULL before the first. (transfer none) (nullable) */
LbResult *lb_session_get_result (LbSession *self);

/* Fills `picture` for a drawing of the latest answer. Its pointers live until the next change of
 * the session. */
void lb_session_get_picture (LbSession *self, LbPicture *picture);

/* The plain sentence, the table and the cautions of the latest answer; (transfer full) (nullable):
 * NULL before the first. */
char *lb_session_dup_sentence (LbSession *self);
LbReadingsTable *lb_session_dup_table (LbSession *self);
GPtrArray *lb_session_dup_cautions (LbSession *self);

/* A value in words, as the user has set. */
char *lb_session_dup_words (LbSession *self, LbQuantity quantity, double value);

G_END_DECLS
