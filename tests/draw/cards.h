/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What cards say, made up for the tests without the model: any rig, any words. */
#pragma once

#include "card_drawing.h"
#include "drawings.h"

/* Words to stand for every name and note of a card. */
typedef struct
{
  const char *title;
  const char *lure;
  const char *hardware;
  const char *notes;
} CardWords;

extern const CardWords card_plain_words;

/* The contents of a card of `setup`, solved. Every number in the words is what the setup or the
 * answer holds, in `units`. Free with card_free(). */
LbCardContents *card_new (const LbSetup *setup, LbUnits units, const CardWords *words);
void card_free (LbCardContents *contents);

/* A settings table of that size and a gauge with so many ticks, with made-up numbers; card_new()
 * gives 3 weights, 4 depths, 5 currents and 10 ticks. */
void card_fill_numbers (
    LbCardContents *contents, size_t weights, size_t depths, size_t currents, size_t ticks);
void card_free_numbers (LbCardContents *contents);
