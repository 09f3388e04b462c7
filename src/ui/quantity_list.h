/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Several values in one entry: "1 lb; 1 1/4 lb; 0.9 kg". A semicolon stands between them, since a
 * comma may be the decimal sign. */
#pragma once

#include <glib.h>

#include "words.h"

/* The text for `n` values. (transfer full) */
char *lb_quantity_list_words (LbQuantity quantity, LbUnits units, const double *values, gsize n);

/* Reads at most `most` values into `values`, in the order of the text. Returns how many, or 0 with
 * `fault` (transfer full) saying why the text cannot be: none, too many, or one that is no value
 * from `low` to `high`. */
gsize lb_quantity_list_parse (LbQuantity quantity,
                              LbUnits units,
                              double low,
                              double high,
                              const char *text,
                              double *values,
                              gsize most,
                              char **fault);
