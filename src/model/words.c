/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words.h"

#include <locale.h>
#include <glib/gi18n-lib.h>

#include "shape.h"

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

/* What a text could have been, in both systems of units (SI). */
static const double examples[][2] = {
  [LB_QUANTITY_NUMBER] = { 0.5, 0.5 },
  [LB_QUANTITY_LENGTH] = { 6.2484, 6.25 },
  [LB_QUANTITY_HEIGHT] = { 0.1016, 0.1 },
  [LB_QUANTITY_DIAMETER] = { 0.0007112, 0.0007 },
  [LB_QUANTITY_AREA] = { 0.000258064, 0.0002 },
  [LB_QUANTITY_SPEED] = { 1.207008, 1.2 },
  [LB_QUANTITY_MASS] = { 0.79378665, 0.8 },
  [LB_QUANTITY_SMALL_MASS] = { 0.0085048569, 0.008 },
  [LB_QUANTITY_FORCE] = { 88.9644323, 90 },
  [LB_QUANTITY_SMALL_FORCE] = { 0.139006925, 0.1 },
  [LB_QUANTITY_TEMPERATURE] = { 40 / 9.0, 5 },
  [LB_QUANTITY_ANGLE] = { G_PI / 6, G_PI / 6 },
  [LB_QUANTITY_DENSITY] = { 1000, 1000 },
  [LB_QUANTITY_VISCOSITY] = { 1.5e-6, 1.5e-6 },
  [LB_QUANTITY_STIFFNESS] = { 44482.2162, 50000 },
  [LB_QUANTITY_FREQUENCY] = { 10, 10 },
  [LB_QUANTITY_TIME] = { 75, 75 },
};

G_STATIC_ASSERT (G_N_ELEMENTS (examples) == LB_N_QUANTITIES);

#define SHOWN_LENGTH 24 /* letters of a text that is no number */

char *
lb_words_example (LbQuantity quantity, LbUnits units)
{
  return lb_words_quantity (quantity, units, examples[quantity][units], -1);
}

/* Enough of a text to know it again. */
static char *
cut (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *start = NULL;

  g_strstrip (valid);
  if (g_utf8_strlen (valid, -1) <= SHOWN_LENGTH)
    return g_steal_pointer (&valid);
  start = g_utf8_substring (valid, 0, SHOWN_LENGTH);
  return g_strconcat (start, "…", NULL);
}

/* Why a text is no number: what was read, and what would do. */
static char *
explain (LbQuantity quantity, LbUnits units, const char *text, LbParseResult result)
{
  g_autofree char *example = lb_words_example (quantity, units);
  g_autofree char *read = cut (text);

  switch (result)
    {
    case LB_PARSE_EMPTY:
      /* Translators: %s is a number with its unit, as "20 ft 6 in"; in those below, too */
      return g_strdup_printf (_ ("Nothing is entered here; write it like “%s”."), example);
    case LB_PARSE_UNKNOWN_UNIT:
    case LB_PARSE_WRONG_UNIT:
      if (quantity == LB_QUANTITY_NUMBER)
        return g_strdup_printf (_ ("“%s”: this is a plain number with no unit, like “%s”."), read,
                                example);
      return g_strdup_printf (
          result == LB_PARSE_WRONG_UNIT
              ? _ ("“%s”: this unit measures something else; write it like “%s”.")
              : _ ("“%s”: this unit is not known; write it like “%s”."),
          read, example);
    case LB_PARSE_OUT_OF_RANGE:
      return g_strdup_printf (_ ("“%s” is too large a number."), read);
    default:
      return g_strdup_printf (_ ("“%s” is no number; write it like “%s”."), read, example);
    }
}

gboolean
lb_words_parse (LbQuantity quantity, LbUnits units, const char *text, double *value, char **message)
{
  LbParseResult result = lb_units_parse (quantity, units, text, value);

  if (message)
    *message = result == LB_PARSE_OK ? NULL : explain (quantity, units, text, result);
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
lb_words_part (const LbSetup *setup, int part)
{
  if (part == LB_PART_MAINLINE)
    return g_strdup (_ ("mainline"));
  if (part == LB_PART_SHANK)
    return g_strdup (_ ("shank"));
  return lb_words_leader (setup, (size_t) (part - LB_PART_LEADER_0));
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
