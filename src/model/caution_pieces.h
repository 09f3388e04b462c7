/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pieces that lists of cautions are put together from: of a steady run, of a pass. Internal to
 * model. */
#pragma once

#include "hang_up.h"
#include "readings_table.h"

/* Takes `text` over. */
void lb_caution_add (GPtrArray *list, LbCautionKind kind, char *text);

/* A pull in the hand, N; `when` ("at 41 s", or NULL) says when it comes to that. */
void lb_caution_add_pull (GPtrArray *list, double pull, const char *when, const LbWording *wording);

/* The line of a setup that is nearest to parting. */
void lb_caution_add_strength (GPtrArray *list,
                              const LbSetup *setup,
                              LbWeakest weakest,
                              const char *when);

/* The weight hung up: `when` is "now" or "at 41 s". */
void lb_caution_add_hang_up (GPtrArray *list,
                             const LbHangUp *going,
                             const LbHangUp *stopped,
                             const char *when,
                             const LbWording *wording);

/* What the setup calls for by itself, then what is always so. */
void lb_caution_add_rest (GPtrArray *list, const LbSetup *setup, const LbWording *wording);
