/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What becomes of it when the weight or a lure hangs up on the bed, in the user's language and
 * units. */
#pragma once

#include "hang_up.h"
#include "readings_table.h"

/* What comes first and what comes then, in one sentence. `result` is what `held` was made from.
 * Free with g_free(). */
char *
lb_snag_words_sentence (const LbResult *result, const LbHangUp *held, const LbWording *wording);

/* The boat, the pull now, and when hand and line give in. Free with lb_readings_table_free(). */
LbReadingsTable *
lb_snag_words_table (const LbResult *result, const LbHangUp *held, const LbWording *wording);
