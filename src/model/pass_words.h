/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a recorded pass comes to, in the user's language and units: for the window and the command
 * line. */
#pragma once

#include "pass_summary.h"
#include "readings_table.h"
#include "result.h"

/* Why there can be no such pass: a sentence for the `what` of lb_pass_record_new(). Never NULL. */
const char *lb_pass_words_fault (const char *what);

/* Two to five sentences: how much of the pass each lure spent in the band, whether and where the
 * weight touched, the highest pull in the hand, and whether lines may have tangled; of two rigs one
 * after the other. Free with g_free(). */
char *lb_pass_words_sentence (const LbPassRecord *record,
                              const LbPassSummary *summary,
                              const LbWording *wording);

/* The same and more as a table: the course, the line, then weight and lures with their shares of
 * time, the contacts of the weight with the bed, the same of a second rig, and the lines' closest
 * approach. `contents` gives
 * the names of the lures. Free with lb_readings_table_free(). */
LbReadingsTable *lb_pass_words_table (const LbPassRecord *record,
                                      const LbPassSummary *summary,
                                      const LbContents *contents,
                                      const LbWording *wording);

/* The cautions for all that is recorded of the pass, each with its worst moment: the hardest pull,
 * the line that comes nearest to its breaking load, the first touch of the bed, and the weight hung
 * up where it would pull too hard soonest. (element-type LbCaution) (transfer full): free with
 * g_ptr_array_unref(). */
GPtrArray *lb_pass_words_cautions (const LbPassRecord *record, const LbWording *wording);

/* "41 s"; below 10 s with a decimal. Free with g_free(). */
char *lb_pass_words_time (double time);

/* How near two lines come: "4 in", "6 ft 2 in". Free with g_free(). */
char *lb_pass_words_nearness (double distance, const LbWording *wording);

/* "82 %", "< 1 %". Free with g_free(). */
char *lb_pass_words_share (double share);

/* Contacts that the table lists; more are counted only. */
#define LB_PASS_WORDS_MOST_TOUCHES 20
