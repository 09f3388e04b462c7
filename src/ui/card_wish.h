/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is to be done with the card as soon as it is made. */
#pragma once

#include <gtk/gtk.h>

#include "card_output.h"
#include "session.h"

typedef enum
{
  LB_CARD_WISH_NOTHING,
  LB_CARD_WISH_PRINT,
  LB_CARD_WISH_SAVE,
  LB_CARD_WISH_COPY,
} LbCardWish;

/* Does it with `card`, of the document of `session`; copies `sheet` of it. */
void lb_card_wish_fulfil (
    LbCardWish wish, LbCardOutput *output, LbMadeCard *card, gsize sheet, LbSession *session);
