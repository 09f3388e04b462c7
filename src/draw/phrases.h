/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Quantities and parts in words; for the files of this folder only. */
#pragma once

#include "scene_build.h"

/* A short text by value, so that no one has to free it. */
typedef struct
{
  char text[160];
} LbPhrase;

/* `value` (SI) with its unit, as the picture wants it. */
LbPhrase lb_phrase_quantity (const LbPicture *picture, LbQuantity quantity, double value);

/* A number without unit, with `decimals` places. */
LbPhrase lb_phrase_number (const LbPicture *picture, double value, int decimals);

/* Fills in a translated format. Cuts off what is too long, at a whole character. */
LbPhrase lb_phrase_format (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* "9 in above the bed", "on the bed"; a height above 3 ft or 1 m is given as a length. */
LbPhrase lb_phrase_height (const LbPicture *picture, double height, bool on_bed);

/* "9 in" or "5 ft 2 in" alone. */
LbPhrase lb_phrase_height_value (const LbPicture *picture, double height);

/* The height near the bed at which the current is told: 6 in, or 15 cm. */
double lb_phrase_near_bed (const LbPicture *picture);

/* "in the band", "above the band" ... Static, translated. */
const char *lb_phrase_band (LbBandState state);

/* The same, shorter: "in band". */
const char *lb_phrase_band_short (LbBandState state);

/* "Lure 2", or "Lure 2: floating minnow, 7 cm" if it has a name. */
LbPhrase lb_phrase_lure (const LbPicture *picture, size_t leader);

/* The same with the name up to its first comma: "Lure 2: floating minnow". */
LbPhrase lb_phrase_lure_short (const LbPicture *picture, size_t leader);

/* Why there is no rig, or what to know of it; NULL if nothing. Static, translated. */
const char *lb_phrase_status (const LbScene *scene);
