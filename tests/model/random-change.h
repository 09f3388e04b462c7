/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes of every kind, drawn at random. */
#pragma once

#include "history.h"
#include "test.h"

/* One of any kind, fit for the document as it is; NULL now and then, and often one that will be
 * refused. */
LbChange *random_change (TestRandom *random, LbDocument *document);

/* One of a row that a drag makes: all changes of the same `kind` (0 to N_DRAGS - 1) on the same
 * thing merge. NULL when the document has no such thing. */
#define N_DRAGS 6
LbChange *random_drag (TestRandom *random, LbDocument *document, int kind);
