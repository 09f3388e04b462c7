/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Text for a terminal. */
#pragma once

#include <glib.h>

#include "readings_table.h"

/* Adds `text`, broken into lines at blanks, each after `indent` blanks, the first after `start`. */
void lb_text_add_wrapped (GString *out, const char *start, int indent, const char *text);

/* Adds `text` and blanks up to `width` characters (not bytes). */
void lb_text_add_padded (GString *out, const char *text, glong width);

/* Adds the sections of `table`, each under its title, their columns in line. */
void lb_text_add_table (GString *out, const LbReadingsTable *table);

/* Adds the cautions (element-type LbCaution) under a heading. */
void lb_text_add_cautions (GString *out, const GPtrArray *cautions);
