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

/* "9 in off the bed", "on the bed"; a height above 3 ft or 1 m is given as a length. */
LbPhrase lb_phrase_height (const LbPicture *picture, double height, bool on_bed);

/* "9 in" or "5 ft 2 in" alone. */
LbPhrase lb_phrase_height_value (const LbPicture *picture, double height);

/* The height near the bed at which the current is told: 6 in, or 15 cm. */
double lb_phrase_near_bed (const LbPicture *picture);

/* "in the band", "above the band" ... Static, translated. */
const char *lb_phrase_band (LbBandState state);

/* The same, shorter: "in band". */
const char *lb_phrase_band_short (LbBandState state);

/* Up to so many lures are told apart by where they are attached, more by their numbers. */
#define LB_PHRASE_MOST_PLACES 3

/* "Lower lure", "Upper lure" ..., "Lure 4", or "Lure" for the only one; and its leader. */
LbPhrase lb_phrase_lure_place (const LbPicture *picture, size_t leader);
LbPhrase lb_phrase_leader_place (const LbPicture *picture, size_t leader);

/* The number that stands for it in a small mark; "" when it is told by its place. */
LbPhrase lb_phrase_lure_sign (const LbPicture *picture, size_t leader);

/* Its place and, if it has one, its name: "Upper lure: floating minnow, 7 cm". */
LbPhrase lb_phrase_lure (const LbPicture *picture, size_t leader);

/* The same with the name up to its first comma: "Upper lure: floating minnow". */
LbPhrase lb_phrase_lure_short (const LbPicture *picture, size_t leader);

/* Why there is no rig, or what to know of it; NULL if nothing. Static, translated. */
const char *lb_phrase_status (const LbScene *scene);
