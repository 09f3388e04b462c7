/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The depths and currents of a card's table. */
#include "card.h"

#include <math.h>

#include "fields.h"

/* Values around the document's own are a round number apart, at most this share of it: a fathom up
 * and down on 20 ft, a third up and down on a current. Estimates of what a day on a river brings.
 */
#define DEPTH_STEP_SHARE 0.12
#define CURRENT_STEP_SHARE 0.2
#define LEAST_OWN_CURRENT 0.25 /* m/s: in slower water the steps do not shrink further */

static const LbField *
field_of (LbCardSeriesOf of)
{
  return lb_field (of == LB_CARD_SERIES_OF_DEPTHS ? "river.depth_m" : "river.surface_current_m_s");
}

double
lb_card_series_least (LbCardSeriesOf of)
{
  return field_of (of)->minimum;
}

double
lb_card_series_most (LbCardSeriesOf of)
{
  return field_of (of)->maximum;
}

/* The largest of 1, 2, 5 times a power of ten that is not above `most`. */
static double
round_step (double most)
{
  double power = pow (10, floor (log10 (most)));

  return (most >= 5 * power ? 5 : most >= 2 * power ? 2 : 1) * power;
}

/* Round in the main unit that is shown: 16, 18, 20, 22, 24 ft. */
static size_t
values_around (LbCardSeriesOf of, LbUnits units, double around, double *values)
{
  LbQuantity quantity = field_of (of)->quantity;
  bool depths = of == LB_CARD_SERIES_OF_DEPTHS;
  double share = depths ? DEPTH_STEP_SHARE : CURRENT_STEP_SHARE;
  double widest = share * (depths ? around : fmax (around, LEAST_OWN_CURRENT));
  double step = round_step (lb_units_from_si (quantity, units, widest));
  double least = ceil (lb_units_from_si (quantity, units, lb_card_series_least (of)) / step - 1e-9);
  double first = round (lb_units_from_si (quantity, units, around) / step) - 2;
  size_t n = 0;

  first = fmax (first, least);
  for (int i = 0; i < LB_CARD_AROUND_VALUES; i++)
    {
      double value = lb_units_to_si (quantity, units, (first + i) * step);

      if (value <= lb_card_series_most (of))
        values[n++] = value;
    }
  return n;
}

static size_t
values_by_steps (const LbCardSeries *series, LbCardSeriesOf of, double *values)
{
  double most = fmin (series->to + LB_CARD_STEP_ROUNDING * series->step, lb_card_series_most (of));
  size_t n = 0;

  while (n < LB_CARD_MOST_VALUES && series->from + (double) n * series->step <= most)
    {
      values[n] = series->from + (double) n * series->step;
      n++;
    }
  return n;
}

size_t
lb_card_series_get_values (const LbCardSeries *series,
                           LbCardSeriesOf of,
                           LbUnits units,
                           double around,
                           double values[LB_CARD_MOST_VALUES])
{
  if (series->kind == LB_CARD_SERIES_STEPS)
    return values_by_steps (series, of, values);
  if (series->kind != LB_CARD_SERIES_LIST)
    return values_around (of, units, around, values);
  for (size_t i = 0; i < series->n; i++)
    values[i] = series->values[i];
  return series->n;
}
