/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Keeps the card of a session's document made: computed on a thread of its own, and laid out anew
 * after every change. Until a change is done, the last card stays.
 *
 * Signals: "made" when there is another card; "busy" when lb_card_maker_is_current() changed. */
#pragma once

#include "made_card.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_CARD_MAKER (lb_card_maker_get_type ())
G_DECLARE_FINAL_TYPE (LbCardMaker, lb_card_maker, LB, CARD_MAKER, GObject)

/* Makes nothing before lb_card_maker_set_active(). */
LbCardMaker *lb_card_maker_new (LbSession *session);

/* Whether changes are followed: while the card is looked at. */
void lb_card_maker_set_active (LbCardMaker *self, gboolean active);

/* The last card, NULL before the first. (transfer none) (nullable) */
LbMadeCard *lb_card_maker_get_card (LbCardMaker *self);

/* Whether the last card is that of the document as it is now. */
gboolean lb_card_maker_is_current (LbCardMaker *self);

G_END_DECLS
