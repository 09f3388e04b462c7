/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tells the fault of an entry in a bubble beside it, where there is no room for words: under the
 * drawings. The rows of the pages have a line for it (field_row.h). */
#pragma once

#include "field_entry.h"

/* From now on the bubble shows while `entry` has a fault and the entry is in sight. */
void lb_fault_bubble_attach (LbFieldEntry *entry);

/* The words in the bubble; NULL while it does not show. */
const char *lb_fault_bubble_get_text (LbFieldEntry *entry);
