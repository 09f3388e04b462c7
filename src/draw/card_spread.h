/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Things that want their place along a line and must stand clear of one another. Pure arithmetic;
 * for the files of this folder only. */
#pragma once

#include <stddef.h>

typedef struct
{
  double wanted;       /* where it would best be */
  double above, below; /* what it takes on either side */
  double y;            /* where it is */
} LbCardSpan;

/* The room that all take together. */
double lb_card_spans_room (const LbCardSpan *spans, size_t n);

/* Sets `y` of all, in their order, as near to what each wants as one pass there and one back give,
 * without overlap and between `top` and `low`; where there is too little room the first stand over
 * `top`. */
void lb_card_spans_spread (LbCardSpan *spans, size_t n, double top, double low);
