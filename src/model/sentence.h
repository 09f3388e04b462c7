/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the readings mean, in one or a few plain sentences in the user's language. */
#pragma once

#include "result.h"
#include "words.h"

/* "Both lures run in the band, level within 2 in, the upper one 9 ft behind the lower. 3.1 lbf in
 * the hand." Says so when the solve failed. Free with g_free(). */
char *lb_sentence_of_result (const LbResult *result, const LbWording *wording);

/* Only what must be said before the numbers are believed: why there is no answer, or why the line
 * out or the rig is not quite what was asked for. NULL when there is nothing of the kind. Free with
 * g_free(). */
char *lb_sentence_of_remark (const LbResult *result, const LbWording *wording);
