/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Copies of unsaved work, for the day the program dies.
 *
 * Every watched document that is modified has a copy in the user's state folder
 * ($XDG_STATE_HOME/layback/recovery/), no older than about two seconds, also in the middle of a
 * drag. It is written and synced by a thread of its own. Saving the document, undoing back to what
 * is saved, and lb_recovery_forget() remove it.
 *
 * Each program has a folder there, held by a lock that the system gives back when the program ends,
 * however it ends. A folder that nobody holds is what a dead program left.
 *
 * Signals: "failed" (string, one translated line): a copy could not be written, for instance as the
 * disk is full. Told once, until one succeeds again.
 *
 * Needs a running main loop; use it from the main thread only. */
#pragma once

#include "document.h"

G_BEGIN_DECLS

#define LB_TYPE_RECOVERY (lb_recovery_get_type ())
G_DECLARE_FINAL_TYPE (LbRecovery, lb_recovery, LB, RECOVERY, GObject)

/* One for the whole program. Its last reference waits for what is being written; copies of modified
 * documents that are still watched then stay, and the next start finds them. (transfer full) */
LbRecovery *lb_recovery_new (void);

/* Starts to keep a copy of `document` whenever it is modified. Keeps a reference. */
void lb_recovery_watch (LbRecovery *self, LbDocument *document);

/* Stops, and removes the copy: for a document that is closed, or whose changes the user discards.
 */
void lb_recovery_forget (LbRecovery *self, LbDocument *document);

/* Writes what is due now and waits for it: before the program has to end at once. */
void lb_recovery_flush (LbRecovery *self);

/* ---- What was lost ---- */

/* A copy that a program left which is no longer there. */
typedef struct
{
  char *name;      /* for a list: the title, else the file's name, else "Untitled rig" */
  GFile *file;     /* the document's file, NULL when it had none */
  GDateTime *time; /* of the last copy, local time */
  char *path;      /* of the copy */
} LbLost;

LbLost *lb_lost_copy (const LbLost *lost);
void lb_lost_free (LbLost *lost);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbLost, lb_lost_free)

/* All of them, the latest first; empty when there is none. (transfer container)
 * (element-type LbLost) */
GPtrArray *lb_recovery_list_lost (LbRecovery *self);

/* Opens a copy as a document: modified, with its old file (if it had one), and watched. It is no
 * longer lost then; should this program die too, it is again. NULL with an LB_FILE_ERROR, and the
 * copy stays, when it cannot be read or another program has it by now. (transfer full) */
LbDocument *lb_recovery_restore (LbRecovery *self,
                                 const LbLost *lost,
                                 GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Deletes a copy for good. One that is not deleted is listed again at the next start. */
gboolean lb_recovery_remove (LbRecovery *self, const LbLost *lost, GError **error);

G_END_DECLS
