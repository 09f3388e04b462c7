/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Weights, as a list of them is written, and the variants that they make. */
#pragma once

#include "variants.h"

/* The weights in `text` ("1 lb; 1 1/4 lb; 0.9 kg") as an array of double, kg. NULL when one of them
 * is no weight, with `message` in the user's language (free with g_free()). (transfer full) */
GArray *lb_weights_parse (LbUnits units, const char *text, char **message);

/* One variant for each of the `n` weights (kg), lightest first, named by them. Those that a field
 * refuses, and doubles, are left out. Of more than LB_MAX_VARIANTS those stay that are nearest to
 * `own`, kg, by their ratio to it. */
LbVariants
lb_variants_of_weights (const double *kg, size_t n, double own, const LbWording *wording);
