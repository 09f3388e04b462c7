/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words.h"

#include <locale.h>
#include <glib/gi18n-lib.h>

LbWording
lb_wording_default (LbUnits units)
{
  return (LbWording){ units, -1, LB_LEVEL_WITHIN };
}

char
lb_words_decimal (void)
{
  const struct lconv *conventions = localeconv ();
  return conventions->decimal_point[0] == ',' ? ',' : '.';
}

char *
lb_words_quantity (LbQuantity quantity, LbUnits units, double value, int decimals)
{
  char decimal = lb_words_decimal ();
  char *text;
  size_t length;

  decimals = lb_units_fit_decimals (quantity, units, value, decimals);
  /* Cut to a fixed length, a number of sixty digits would end inside a letter. */
  length = lb_units_format (quantity, units, value, decimals, decimal, NULL, 0);
  text = g_malloc (length + 1);
  lb_units_format (quantity, units, value, decimals, decimal, text, length + 1);
  return text;
}

char *
lb_words_height (LbUnits units, double value, int decimals)
{
  bool high = fabs (value) >= LB_WORDS_HIGH;
  return lb_words_quantity (high ? LB_QUANTITY_LENGTH : LB_QUANTITY_HEIGHT, units, value, decimals);
}

/* Why a text is no number, with the unit that a bare number would have. */
static char *
explain (LbQuantity quantity, LbUnits units, LbParseResult result)
{
  const char *unit = lb_units_name (quantity, units);

  switch (result)
    {
    case LB_PARSE_EMPTY:
      return g_strdup (_ ("Nothing is entered here."));
    case LB_PARSE_UNKNOWN_UNIT:
      return *unit ? g_strdup_printf (_ ("This unit is not known; a number in %s will do."), unit)
                   : g_strdup (_ ("This is a plain number, with no unit."));
    case LB_PARSE_WRONG_UNIT:
      return g_strdup_printf (_ ("This unit measures something else; a number in %s will do."),
                              *unit ? unit : _ ("no unit"));
    case LB_PARSE_OUT_OF_RANGE:
      return g_strdup (_ ("This number is too large."));
    default:
      return g_strdup (_ ("This is no number."));
    }
}

gboolean
lb_words_parse (LbQuantity quantity, LbUnits units, const char *text, double *value, char **message)
{
  LbParseResult result = lb_units_parse (quantity, units, text, value);

  if (message)
    *message = result == LB_PARSE_OK ? NULL : explain (quantity, units, result);
  return result == LB_PARSE_OK;
}

/* ---- Which leader ---- */

typedef enum
{
  PLACE_ONLY,
  PLACE_LOWER,
  PLACE_MIDDLE,
  PLACE_UPPER,
  PLACE_NUMBERED,
} Place;

/* By where it is attached; of two at the same height the first counts as the lower. */
static Place
place_of (const LbSetup *setup, size_t leader)
{
  const LbRig *rig = &setup->rig;
  double own = rig->leaders[leader].attach_above_weight;
  size_t n_below = 0;

  if (rig->n_leaders == 1)
    return PLACE_ONLY;
  if (rig->n_leaders > 3)
    return PLACE_NUMBERED;
  for (size_t i = 0; i < rig->n_leaders; i++)
    if (rig->leaders[i].attach_above_weight < own
        || (i < leader && rig->leaders[i].attach_above_weight <= own))
      n_below++;
  if (n_below == 0)
    return PLACE_LOWER;
  return n_below + 1 < rig->n_leaders ? PLACE_MIDDLE : PLACE_UPPER;
}

char *
lb_words_leader (const LbSetup *setup, size_t leader)
{
  switch (place_of (setup, leader))
    {
    case PLACE_ONLY:
      return g_strdup (_ ("leader"));
    case PLACE_LOWER:
      return g_strdup (_ ("lower leader"));
    case PLACE_MIDDLE:
      return g_strdup (_ ("middle leader"));
    case PLACE_UPPER:
      return g_strdup (_ ("upper leader"));
    default:
      return g_strdup_printf (_ ("leader %zu"), leader + 1);
    }
}

char *
lb_words_lure (const LbSetup *setup, size_t leader)
{
  switch (place_of (setup, leader))
    {
    case PLACE_ONLY:
      return g_strdup (_ ("lure"));
    case PLACE_LOWER:
      return g_strdup (_ ("lower lure"));
    case PLACE_MIDDLE:
      return g_strdup (_ ("middle lure"));
    case PLACE_UPPER:
      return g_strdup (_ ("upper lure"));
    default:
      return g_strdup_printf (_ ("lure %zu"), leader + 1);
    }
}
