/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers as words in the user's language and units. All strings returned are freed with
 * g_free(). */
#pragma once

#include <glib.h>

#include "setup.h"
#include "units.h"

/* How the user wants to be told. */
typedef struct
{
  LbUnits units;
  int decimals;        /* < 0: each quantity's own; see lb_units_fit_decimals() */
  double level_within; /* m: lures no further apart in height than this count as level */
} LbWording;

/* 4 in; common practice, no source. */
#define LB_LEVEL_WITHIN 0.1016

/* Each number with its own decimals. */
LbWording lb_wording_default (LbUnits units);

/* The decimal sign of the locale, '.' or ','. */
char lb_words_decimal (void);

/* "20 ft 6 in", "2.5 mph"; `decimals` < 0 for the quantity's own, else see
 * lb_units_fit_decimals(); "-" for an unset value. */
char *lb_words_quantity (LbQuantity quantity, LbUnits units, double value, int decimals);

/* A height above the bed: in or cm while it is low, ft or m from HIGH up. */
#define LB_WORDS_HIGH 1.524 /* m: 5 ft */
char *lb_words_height (LbUnits units, double value, int decimals);

/* Reads the user's text into SI (see lb_units_parse()). FALSE when it is no such quantity;
 * `message` (may be NULL) then says why, in one translated line to be freed with g_free(). */
gboolean lb_words_parse (
    LbQuantity quantity, LbUnits units, const char *text, double *value, char **message);

/* A text that could be entered, as an example: "20 ft 6 in". Free with g_free(). */
char *lb_words_example (LbQuantity quantity, LbUnits units);

/* "upper leader", "lower leader", "middle leader", "leader 3": named by where it is attached. */
char *lb_words_leader (const LbSetup *setup, size_t leader);

/* "mainline", "shank", or the leader's name: of an LbPart. */
char *lb_words_part (const LbSetup *setup, int part);

/* "upper lure", and so on; "lure" when there is only one. */
char *lb_words_lure (const LbSetup *setup, size_t leader);
