/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How far one reading is from another, in words. Internal to model. */
#pragma once

#include "readings.h"
#include "words.h"

typedef enum
{
  LB_DIFFERENCE_ANGLE,  /* rad from vertical: steeper, flatter */
  LB_DIFFERENCE_AMOUNT, /* m of line: less, more */
  LB_DIFFERENCE_PULL,   /* N: less, more */
  LB_DIFFERENCE_HEIGHT, /* m above the bed: lower, higher */
  LB_DIFFERENCE_BACK,   /* m behind the reel: nearer, further back */
  LB_DIFFERENCE_LEVEL,  /* m of height between lures: less, more */
} LbDifferenceKind;

/* "15° steeper"; NULL when `own` is not told from `first` by the decimals that are shown, or one of
 * them is unset. Free with g_free(). */
char *
lb_difference_words (LbDifferenceKind kind, double first, double own, const LbWording *wording);

/* An angle without a decimal that nobody can see on a wire, unless the user asks for decimals. */
char *lb_difference_angle (double angle, const LbWording *wording);

/* "in the band", "above the band", "below the band", "on the bed". (transfer none) */
const char *lb_difference_band (LbBandState band);
