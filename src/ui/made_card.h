/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A card that is computed and laid out. It never changes, and any thread may read its contents. */
#pragma once

#include "card_drawing.h"

G_BEGIN_DECLS

/* What was computed, shared by all cards that differ in their paper alone. Takes `contents` over.
 * (transfer full) */
typedef struct LbComputedCard LbComputedCard;
LbComputedCard *lb_computed_card_new (LbCardContents *contents);
void lb_computed_card_unref (LbComputedCard *self); /* NULL is fine */

typedef struct LbMadeCard LbMadeCard;

/* Lays `computed` out by the choices of `card`. `decimals` as in LbWording. (transfer full) */
LbMadeCard *lb_made_card_new (LbComputedCard *computed, const LbCard *card, int decimals);

LbMadeCard *lb_made_card_ref (LbMadeCard *self);
void lb_made_card_unref (LbMadeCard *self); /* NULL is fine */

const LbCardContents *lb_made_card_get_contents (const LbMadeCard *self);
const LbCardDrawing *lb_made_card_get_drawing (const LbMadeCard *self); /* for the main thread */

/* Another drawing of the same, for another thread. Free with lb_card_drawing_free() before the last
 * reference goes. */
LbCardDrawing *lb_made_card_draw (const LbMadeCard *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbMadeCard, lb_made_card_unref)

G_END_DECLS
