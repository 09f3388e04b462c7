/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Names of the catalogue's parts in the user's language. Internal to model. All are freed with
 * g_free(), and NULL for a word that is not known. */
#pragma once

#include <glib.h>

#include "setup.h"
#include "units.h"

/* "1 1/4 lb lead ball" */
char *lb_catalogue_words_weight (const char *material, LbWeightShape shape, const char *size);

/* "stainless wire, 0.71 mm", "stainless wire, 0.028 in" */
char *lb_catalogue_words_line (const char *material, double diameter, LbUnits units);

/* "floating minnow, 7 cm, medium lip" */
char *lb_catalogue_words_lure (const char *lip, double length);

/* All texts that the sources in the data file may be, for translation; ends with NULL. */
const char *const *lb_catalogue_words_sources (void);
