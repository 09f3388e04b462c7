/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lures and hooks on the line, against the limits of the local rules as the user entered them. The
 * rules themselves decide, and whoever enforces them; this only counts. */
#pragma once

#include <glib.h>

#include "setup.h"

typedef struct
{
  size_t lures; /* on the line: one on each leader */
  size_t hooks; /* of all lures, as the user counts them */
  bool too_many_lures;
  bool too_many_hooks;
} LbRulesCount;

LbRulesCount lb_rules_count (const LbSetup *setup);

/* "2 lures and 4 hooks on the line." Free with g_free(). */
char *lb_rules_dup_count (const LbSetup *setup);

/* "3 lures on the line; your limit is 2. ..." for all limits that are passed, or NULL when none is.
 * Free with g_free(). */
char *lb_rules_dup_excess (const LbSetup *setup);

/* "Local rules decide; this only counts." To be shown beside the limits. (transfer none) */
const char *lb_rules_note (void);
