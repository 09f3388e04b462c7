/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sizes of cards as the command line has them. */
#pragma once

#include <glib.h>

#include "card.h"

/* "4x6in", "a5": a named size, in any case and with or without hyphens; or one of one's own, width
 * first: "100x70mm", "10x7cm", "3.5 x 5.5 in". FALSE when it is neither or out of the limits. */
gboolean lb_card_size_parse (const char *text, LbCard *card);

/* All names, for a message: "3x5in, 4x6in, ...". Free with g_free(). */
char *lb_card_size_names (void);
