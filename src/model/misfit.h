/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Why a value that is in its field's range still cannot stand: it does not fit another value. */
#pragma once

#include "fields.h"
#include "words.h"

/* One sentence in the user's language, or NULL when `value` in `field` of leader `leader` fits the
 * rest of `setup`. Free with g_free(). */
char *lb_misfit_explain (const LbSetup *setup,
                         const LbField *field,
                         size_t leader,
                         double value,
                         const LbWording *wording);

/* The same for a setup that holds the value already: the reason, or NULL when none is known for
 * this field. */
char *lb_misfit_explain_known (const LbSetup *setup,
                               const LbField *field,
                               size_t leader,
                               const LbWording *wording);
