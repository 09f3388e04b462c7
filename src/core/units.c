/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "units.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "units_table.h"

#define MOST_DECIMALS 12
#define LARGEST_WHOLE 9007199254740992.0 /* 2^53: from here on there is nothing after the point */
#define LONGEST_NUMBER 340               /* the digits of the largest double, and more */

const char *
lb_units_name (LbQuantity quantity, LbUnits units)
{
  return lb_units_shown (quantity, units)->name;
}

double
lb_units_size (LbQuantity quantity, LbUnits units)
{
  const LbUnitShown *shown = lb_units_shown (quantity, units);

  return shown->up / shown->down;
}

double
lb_units_from_si (LbQuantity quantity, LbUnits units, double value)
{
  const LbUnitShown *shown = lb_units_shown (quantity, units);

  return value * shown->down / shown->up - shown->offset;
}

double
lb_units_to_si (LbQuantity quantity, LbUnits units, double value)
{
  const LbUnitShown *shown = lb_units_shown (quantity, units);

  return (value + shown->offset) * shown->up / shown->down;
}

double
lb_units_step (LbQuantity quantity, LbUnits units)
{
  return lb_units_shown (quantity, units)->step * lb_units_size (quantity, units);
}

/* ---- Writing ---- */

static double
power_of_ten (int n)
{
  double power = 1;

  while (n-- > 0)
    power *= 10;
  return power;
}

/* How many 1 / 10^decimals a number comes to, rounded. */
static double
count_parts (double number, int decimals)
{
  return floor (number * power_of_ten (decimals) + 0.5);
}

/* Writes `parts` (>= 0) in units of 10^-decimals. No locale touches whole numbers. */
static void
write_parts (double parts, int decimals, bool trim, char decimal, char *out)
{
  char digits[LONGEST_NUMBER];
  int n = snprintf (digits, sizeof digits, "%0*.0f", decimals + 1, parts);
  int whole = n - decimals;

  while (trim && n > whole && digits[n - 1] == '0')
    n--;
  memcpy (out, digits, (size_t) whole);
  out += whole;
  if (n > whole)
    {
      *out++ = decimal;
      memcpy (out, digits + whole, (size_t) (n - whole));
      out += n - whole;
    }
  *out = '\0';
}

/* A number >= 0 with `decimals` decimals. Returns whether it came out as 0. */
static bool
write_number (double number, int decimals, bool trim, char decimal, char *out)
{
  if (number * power_of_ten (decimals) >= LARGEST_WHOLE)
    {
      write_parts (floor (number + 0.5), 0, false, decimal, out);
      return false;
    }
  double parts = count_parts (number, decimals);
  write_parts (parts, decimals, trim, decimal, out);
  return parts == 0;
}

/* "1¾", "½" if `number` > 0 is that many eighths as nearly as the decimals would tell; or
 * nothing. One sign for the fraction: a blank before "3/4" is too easily read over. Quarters have
 * decimals of their own and take all that rounds to them. The eighths take only what no written
 * decimals come to, so that writing what was read changes nothing. */
static bool
write_fraction (double number, int decimals, char *out)
{
  static const char *const signs[] = { "",       "\u215b", "\u00bc", "\u215c",
                                       "\u00bd", "\u215d", "\u00be", "\u215e" };
  double eighths = floor (8 * number + 0.5);
  double fraction = eighths / 8;
  double per_one = power_of_ten (decimals);

  if (eighths < 1 || eighths >= LARGEST_WHOLE)
    return false;
  if (count_parts (number, decimals) / per_one != fraction
      && fabs (number - fraction) > 0.2 / per_one)
    return false;

  double whole = floor (eighths / 8);
  const char *sign = signs[(int) (eighths - 8 * whole)];
  if (whole > 0)
    snprintf (out, LONGEST_NUMBER, "%.0f%s", whole, sign);
  else
    snprintf (out, LONGEST_NUMBER, "%s", sign);
  return true;
}

/* `feet` >= 0 in feet and inches; the inches are rounded before the feet are taken out, so that
 * there are never twelve of them. Returns whether it came out as 0. */
static bool
write_feet (double feet, int decimals, char decimal, char *out)
{
  int kept = decimals < 0 ? 0 : decimals;
  double per_foot = 12 * power_of_ten (kept);
  double parts = count_parts (12 * feet, kept);

  if (parts >= LARGEST_WHOLE)
    {
      snprintf (out, LONGEST_NUMBER, "%.0f ft", floor (feet + 0.5));
      return false;
    }
  double whole = floor (parts / per_foot);
  double rest = parts - whole * per_foot;
  int n = 0;
  if (whole > 0 || parts == 0)
    n = snprintf (out, LONGEST_NUMBER, "%.0f ft", whole);
  if (rest > 0 || (parts > 0 && kept > 0))
    {
      if (n > 0)
        out[n++] = ' ';
      write_parts (rest, kept, false, decimal, out + n);
      strcat (out, " in");
    }
  return parts == 0;
}

/* The number of a quantity without its sign, with its unit. Returns whether it came out as 0. */
static bool
write_quantity (const LbUnitShown *shown, double number, int decimals, char decimal, char *out)
{
  bool own = decimals < 0;
  bool zero = false;

  if (own)
    decimals = shown->decimals + (shown->more_below_1 && number < 1);
  if (!(own && shown->fractions && write_fraction (number, decimals, out)))
    zero = write_number (number, decimals, own, decimal, out);
  if (shown->name[0] != '\0' && strcmp (shown->name, "\u00b0") != 0)
    strcat (out, " ");
  strcat (out, shown->name);
  return zero;
}

int
lb_units_fit_decimals (LbQuantity quantity, LbUnits units, double value, int decimals)
{
  double number = fabs (lb_units_from_si (quantity, units, value));

  if (decimals < 0)
    return -1;
  if (quantity == LB_QUANTITY_LENGTH && units == LB_UNITS_US)
    number *= 12;
  if (!(number * power_of_ten (decimals) < LARGEST_WHOLE))
    return decimals;
  return fabs (count_parts (number, decimals) / power_of_ten (decimals) - number) <= number / 20
             ? decimals
             : -1;
}

size_t
lb_units_format (LbQuantity quantity,
                 LbUnits units,
                 double value,
                 int decimals,
                 char decimal,
                 char *text,
                 size_t size)
{
  const LbUnitShown *shown = lb_units_shown (quantity, units);
  double number = lb_units_from_si (quantity, units, value);
  char out[LONGEST_NUMBER + 64] = "-"; /* the sign, if there is to be one */
  bool zero;

  if (!isfinite (number))
    return (size_t) snprintf (text, size, "-");
  if (decimals > MOST_DECIMALS)
    decimals = MOST_DECIMALS;
  if (quantity == LB_QUANTITY_LENGTH && units == LB_UNITS_US)
    zero = write_feet (fabs (number), decimals, decimal, out + 1);
  else
    zero = write_quantity (shown, fabs (number), decimals, decimal, out + 1);
  return (size_t) snprintf (text, size, "%s", out + (number < 0 && !zero ? 0 : 1));
}
