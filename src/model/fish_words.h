/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the hand holds with a fish on, in the user's language and units. */
#pragma once

#include "fish_loads.h"
#include "readings_table.h"

/* The pull in the hand, mouth closed and open, and what cautions it calls for; a few sentences.
 * Free with g_free(). */
char *lb_fish_words_sentence (const LbSetup *setup, const LbFishOn *on, const LbWording *wording);

/* For the mouth closed and open: drag, and the hand at both speeds; then the leader. Free with
 * lb_readings_table_free(). */
LbReadingsTable *
lb_fish_words_table (const LbSetup *setup, const LbFishOn *on, const LbWording *wording);

/* What the hardest of `n` loads of a setup call for: a pull beyond the hand's limits, lines near to
 * parting. (element-type LbCaution); free with g_ptr_array_unref(). */
GPtrArray *lb_fish_words_cautions (const LbSetup *setup,
                                   const LbFishLoad *loads,
                                   size_t n,
                                   const LbWording *wording);

/* What none of these numbers tells. Static, translated. */
const char *lb_fish_words_note (void);
