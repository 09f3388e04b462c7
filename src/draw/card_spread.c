/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_spread.h"

#include <math.h>

double
lb_card_spans_room (const LbCardSpan *spans, size_t n)
{
  double room = 0;

  for (size_t i = 0; i < n; i++)
    room += spans[i].above + spans[i].below;
  return room;
}

void
lb_card_spans_spread (LbCardSpan *spans, size_t n, double top, double low)
{
  for (size_t i = 0; i < n; i++)
    {
      spans[i].y = fmax (spans[i].wanted, top + spans[i].above);
      top = spans[i].y + spans[i].below;
    }
  for (size_t i = n; i-- > 0;)
    {
      spans[i].y = fmin (spans[i].y, low - spans[i].below);
      low = spans[i].y - spans[i].above;
    }
}
