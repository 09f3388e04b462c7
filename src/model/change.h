/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One change to a document: what it was, what it becomes, and what it is called. The only way to
 * change a document; hand it to lb_history_do(), which owns it from then on. */
#pragma once

#include "document.h"

typedef struct LbChange LbChange;

/* Sets one number or choice. `value` is moved into the field's range. The label is made from the
 * field ("Change surface current"). */
LbChange *lb_change_new_value (const LbField *field, size_t leader, double value);

/* Sets the title, the notes, or the name of a leader's lure. Text too long is cut; text that is not
 * UTF-8 is made so, and a title or name one line. */
LbChange *lb_change_new_title (const char *title);
LbChange *lb_change_new_notes (const char *notes);
LbChange *lb_change_new_lure_name (size_t leader, const char *name);

/* How line out is given, with its value (m; no meaning when touching). */
LbChange *lb_change_new_line_out (LbLineOutMode mode, double value);

/* Replaces the whole setup and, unless `lure_names` is NULL, the names of all LB_MAX_LEADERS lures;
 * for changes that touch many values at once. `label` is shown as it is: pass it translated. The
 * setup must pass lb_setup_validate(): NULL when it does not. */
LbChange *
lb_change_new_setup (const LbSetup *setup, const char *const *lure_names, const char *label);

/* Adds a leader like the last one a little higher up the shank, or takes leader `leader` away. NULL
 * when there are LB_MAX_LEADERS already, or no such leader. */
LbChange *lb_change_new_add_leader (LbDocument *document);
LbChange *lb_change_new_remove_leader (LbDocument *document, size_t leader);

/* Marks the change as part of a gesture (a number from lb_history_new_gesture(); 0: of none).
 * Successive changes of one gesture to the same thing make one step of the history. */
void lb_change_set_gesture (LbChange *change, guint gesture);

void lb_change_free (LbChange *change);

/* What the change is called in "Undo ...", translated. */
const char *lb_change_get_label (const LbChange *change);

/* Carries the change out; the first time it also takes note of what was there before. Returns FALSE
 * and changes nothing when the outcome would not pass lb_setup_validate() (a shank shorter than an
 * attachment), or when nothing would differ. */
gboolean lb_change_apply (LbChange *change, LbDocument *document);

/* Takes an applied change back. */
void lb_change_revert (LbChange *change, LbDocument *document);

/* If `next`, applied just after `change`, belongs to the same gesture and thing, `change` takes its
 * outcome over and TRUE is returned; `next` may then be freed. */
gboolean lb_change_merge (LbChange *change, const LbChange *next);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbChange, lb_change_free)
