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

/* ---- Parts of the rig ----
 *
 * Each replaces a part as a whole and leaves the rest alone. `label` is shown as it is: pass it
 * translated, or NULL for a plain one ("Change the weight"). Values out of range, or a leader that
 * the document does not have, are refused by lb_change_apply(). */

typedef enum
{
  LB_LINE_OF_MAINLINE,
  LB_LINE_OF_SHANK,
  LB_LINE_OF_LEADER,
} LbLineOf;

/* `leader` counts for LB_LINE_OF_LEADER only. The length is no part of it. */
LbChange *lb_change_new_line (LbLineOf of, size_t leader, const LbLine *line, const char *label);

LbChange *lb_change_new_weight (const LbWeight *weight, const char *label);

/* `name` NULL keeps the name; it is cut and mended as in lb_change_new_lure_name(). */
LbChange *
lb_change_new_lure (size_t leader, const LbLure *lure, const char *name, const char *label);

/* Each stands behind the present ones with its lure's name, and is attached a little higher up the
 * shank (as far as that goes): one like the last leader; one like leader `leader`, right behind it.
 * NULL when there are LB_MAX_LEADERS already, or no such leader. */
LbChange *lb_change_new_add_leader (LbDocument *document);
LbChange *lb_change_new_duplicate_leader (LbDocument *document, size_t leader);

/* Takes leader `leader` away. NULL when there is no such leader. */
LbChange *lb_change_new_remove_leader (LbDocument *document, size_t leader);

/* Puts leader `from` in the place of leader `to`, with the name of its lure; those between move up
 * or down by one. NULL when they are the same, or one of them is not there. */
LbChange *lb_change_new_move_leader (LbDocument *document, size_t from, size_t to);

/* ---- The river ---- */

/* Replaces all of the river, for presets and imports. */
LbChange *lb_change_new_river (const LbRiver *river, const char *label);

/* Replaces the bed by `n` surveyed points: `x` (m) rising downstream, `depth` (m). The depth that
 * the surface current belongs to stays. Refused by lb_change_apply() unless the points are in order
 * and range; 0 points make the bed plane, at the depth that the current belongs to. */
LbChange *lb_change_new_bed (const double *x, const double *depth, size_t n, const char *label);

/* The same bed, plane or not, as points that can be dragged: LB_BED_FIRST_POINTS of them around the
 * boat. NULL when it is made of points already. */
#define LB_BED_FIRST_POINTS 5
#define LB_BED_FIRST_SPACING 9.144 /* m: 30 ft; the first one is so far upstream of the boat */
LbChange *lb_change_new_bed_from_plane (LbDocument *document);

/* Neighbouring bed points are set no nearer to one another than this, m. */
#define LB_BED_LEAST_SPACING 0.1

/* Adds a point at `x`, on the present bed when `depth` is unset. On a plane bed the points of
 * lb_change_new_bed_from_plane() are made first. `index` (may be NULL) gets the new point's number.
 * NULL when there are LB_MAX_BED_POINTS already, or one is nearer than LB_BED_LEAST_SPACING. */
LbChange *lb_change_new_add_bed_point (LbDocument *document, double x, double depth, size_t *index);

/* Moves point `point`, within the limits of the fields and between its neighbours. NULL when there
 * is no such point. */
LbChange *lb_change_new_move_bed_point (LbDocument *document, size_t point, double x, double depth);

/* NULL when there is no such point, or only two are left. */
LbChange *lb_change_new_remove_bed_point (LbDocument *document, size_t point);

/* The current as measured: `n` points of the height above the bed as a share of the depth, rising,
 * and of the speed as a share of the surface's. `surface_current` (m/s) unset keeps the present
 * one. */
LbChange *lb_change_new_measured_current (LbDocument *document,
                                          double surface_current,
                                          const double *height_fraction,
                                          const double *speed_fraction,
                                          size_t n);

/* ---- Variants ----
 *
 * NULL for a variant that is not there, or when nothing would differ. */

/* Behind the present ones: one that replaces nothing; one like variant `variant`. `name` is mended,
 * and numbered when another has it; NULL for a plain one. NULL when there are LB_MAX_VARIANTS. */
LbChange *lb_change_new_add_variant (LbDocument *document, const char *name);
LbChange *lb_change_new_duplicate_variant (LbDocument *document, size_t variant);

LbChange *lb_change_new_remove_variant (LbDocument *document, size_t variant);

/* NULL also when the name is none (lb_variant_name_is_fine()) or another variant's. */
LbChange *lb_change_new_rename_variant (LbDocument *document, size_t variant, const char *name);

/* Puts variant `from` in the place of variant `to`. */
LbChange *lb_change_new_move_variant (LbDocument *document, size_t from, size_t to);

/* Replaces a value in a variant, moved into the field's range; see lb_variant_set(). */
LbChange *lb_change_new_set_override (
    LbDocument *document, size_t variant, const LbField *field, size_t leader, double value);

/* Lets a variant have the document's value again. */
LbChange *lb_change_new_unset_override (LbDocument *document,
                                        size_t variant,
                                        const LbField *field,
                                        size_t leader);

/* Puts one variant for each weight in the place of all variants, lightest first: of more than
 * LB_MAX_VARIANTS those nearest to the document's own weight. `kg` need not be in order. NULL when
 * `n` is 0. */
LbChange *lb_change_new_variants_of_weights (LbDocument *document,
                                             const double *kg,
                                             size_t n,
                                             const LbWording *wording);

/* ---- The card ---- */

/* Replaces the card by `card`, mended (lb_card_mend()). `label` is shown as it is: pass it
 * translated, or NULL for a plain one. */
LbChange *lb_change_new_card (const LbCard *card, const char *label);

/* ---- The pass ---- */

/* Replaces what boat and hand do on a pass by `script`, mended (lb_pass_script_mend()). `label` as
 * above. */
LbChange *lb_change_new_pass (const LbPassScript *script, const char *label);

/* ---- Doing and undoing ---- */

/* Marks the change (NULL does nothing) as part of a gesture (a number from
 * lb_history_new_gesture(); 0: of none). Successive changes of one gesture to the same thing make
 * one step of the history. */
void lb_change_set_gesture (LbChange *change, guint gesture);

void lb_change_free (LbChange *change);

/* What the change is called in "Undo ...", translated. */
const char *lb_change_get_label (const LbChange *change);

/* Carries the change out; the first time it also takes note of what was there before. Returns FALSE
 * and changes nothing when the outcome would not pass lb_setup_validate() (a shank shorter than an
 * attachment), or when nothing would differ. */
gboolean lb_change_apply (LbChange *change, LbDocument *document);

/* Takes an applied change back, and carries out again what was taken back. */
void lb_change_revert (LbChange *change, LbDocument *document);
void lb_change_repeat (LbChange *change, LbDocument *document);

/* If `next`, applied just after `change`, belongs to the same gesture and thing, `change` takes its
 * outcome over and TRUE is returned; `next` may then be freed. */
gboolean lb_change_merge (LbChange *change, const LbChange *next);

/* Whether an applied change makes no difference, as after a drag there and back. */
gboolean lb_change_is_idle (const LbChange *change);

guint lb_change_get_gesture (const LbChange *change);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbChange, lb_change_free)
