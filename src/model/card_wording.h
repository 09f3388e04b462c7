/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files that word a card share. Internal to model. */
#pragma once

#include "card_numbers.h"

#define LB_CARD_ESTIMATE_MARK "≈"

typedef struct
{
  LbCardContents *card; /* to be filled */
  const LbContents *contents;
  const LbCardNumbers *numbers;
  const LbWording *wording;
} LbCardWriter;

void lb_card_write_rig (const LbCardWriter *writer);
void lb_card_write_running (const LbCardWriter *writer);
void lb_card_write_table (const LbCardWriter *writer);
void lb_card_write_speeds (const LbCardWriter *writer);
void lb_card_write_gauge (const LbCardWriter *writer);

/* A number with its unit, and a height near the bed or a length along the rig, which is told in
 * small units while it is short. Free with g_free(). */
char *lb_card_quantity (const LbCardWriter *writer, LbQuantity quantity, double value);
char *lb_card_height (const LbCardWriter *writer, double value);

/* Adds a fact; takes `value` and `note` over (NULL: ""). */
void lb_card_facts_add (
    LbCardFacts *facts, const char *label, char *value, char *note, bool estimate, LbCardRank rank);

/* "Upper lure", with a capital. Takes `text` over. */
char *lb_card_capital (char *text);

/* "1.6 to 3.4 mph", "up to 3.4 mph", "1.6 mph or more", "any", each rounded so that what is said
 * lies within; an end that was not tried is not told. NULL when there is nothing between. */
char *lb_card_speed_range (const LbCardWriter *writer, const LbRunWindow *window);
