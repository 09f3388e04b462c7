/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers of a card, computed before any word is written. Internal to model. */
#pragma once

#include "angle_scale.h"
#include "card_compute.h"
#include "comparison.h"
#include "line_table.h"
#include "result.h"
#include "speed_window.h"

#define LB_CARD_MOST_WEIGHTS 12

typedef struct
{
  LbResult *result;         /* (owned) of the document's setup; may have failed */
  LbComparison *comparison; /* (owned) of its variants; NULL: the card does not show them */

  size_t n_weights, n_depths, n_currents; /* no weights: no table is wanted */
  double weights[LB_CARD_MOST_WEIGHTS];   /* kg, rising */
  double depths[LB_CARD_MOST_VALUES];     /* m */
  double currents[LB_CARD_MOST_VALUES];   /* m/s */
  LbLineOut hold;                         /* how the table holds its weights */
  LbLineCell *cells;                      /* (owned) see lb_line_table_compute() */
  LbRunWindow *limits;                    /* (owned) */

  LbRunWindow speeds; /* of no use when the result has failed; nor is the scale */
  LbAngleScale scale;
} LbCardNumbers;

/* Solves all that the card needs, on this thread. NULL with G_IO_ERROR_CANCELLED. (transfer full)
 */
LbCardNumbers *lb_card_numbers_compute (const LbCardRequest *request,
                                        LbCardProgress progress,
                                        void *progress_data,
                                        GCancellable *cancellable,
                                        GError **error);
void lb_card_numbers_free (LbCardNumbers *numbers);

/* All the words around them. (transfer full) */
LbCardContents *lb_card_wording_write (const LbCardRequest *request, const LbCardNumbers *numbers);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbCardNumbers, lb_card_numbers_free)
