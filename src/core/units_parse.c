/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Text to number. Bytes are looked at one by one and never as characters of a locale. */
#include <math.h>
#include <string.h>

#include "units.h"
#include "units_table.h"

/* ---- Characters ---- */

/* The blanks of typography beside those of ASCII: no-break, en to hair, narrow no-break, wide. */
static size_t
blank_length (const char *p)
{
  if (*p == ' ' || *p == '\t' || *p == '\n' || *p == '\r')
    return 1;
  if (p[0] == '\xc2' && p[1] == '\xa0')
    return 2;
  if (p[0] == '\xe2' && p[1] == '\x80'
      && (((unsigned char) p[2] >= 0x80 && (unsigned char) p[2] <= 0x8a) || p[2] == '\xaf'))
    return 3;
  if (p[0] == '\xe3' && p[1] == '\x80' && p[2] == '\x80')
    return 3;
  return 0;
}

static const char *
skip_blanks (const char *p)
{
  size_t length;

  while ((length = blank_length (p)) > 0)
    p += length;
  return p;
}

static bool
is_digit (char c)
{
  return c >= '0' && c <= '9';
}

static char
lower (char c)
{
  return c >= 'A' && c <= 'Z' ? (char) (c - 'A' + 'a') : c;
}

static bool
is_letter (char c)
{
  return lower (c) >= 'a' && lower (c) <= 'z';
}

static bool
starts_with (const char *p, const char *start)
{
  return strncmp (p, start, strlen (start)) == 0;
}

typedef struct
{
  const char *text;
  int top, bottom;
} VulgarFraction;

static const VulgarFraction *
vulgar_fraction (const char *p)
{
  static const VulgarFraction fractions[] = {
    { "\u00bc", 1, 4 }, { "\u00bd", 1, 2 }, { "\u00be", 3, 4 }, { "\u2153", 1, 3 },
    { "\u2154", 2, 3 }, { "\u2155", 1, 5 }, { "\u2156", 2, 5 }, { "\u2157", 3, 5 },
    { "\u2158", 4, 5 }, { "\u2159", 1, 6 }, { "\u215a", 5, 6 }, { "\u215b", 1, 8 },
    { "\u215c", 3, 8 }, { "\u215d", 5, 8 }, { "\u215e", 7, 8 },
  };

  for (size_t i = 0; i < sizeof fractions / sizeof *fractions; i++)
    if (starts_with (p, fractions[i].text))
      return &fractions[i];
  return NULL;
}

/* ---- Numbers ---- */

static double
power_of_ten (long n)
{
  double power = 1;

  while (n-- > 0 && isfinite (power))
    power *= 10;
  return power;
}

/* Up to 10^22 a power of ten is exact, so that what people type is rounded only once. */
static double
scale_by_ten (double value, long exponent)
{
  if (value == 0)
    return 0;
  return exponent >= 0 ? value * power_of_ten (exponent) : value / power_of_ten (-exponent);
}

static const char *
read_exponent (const char *p, long *exponent)
{
  long value = 0;

  if (*p != 'e' && *p != 'E')
    return p;
  const char *q = p + 1;
  bool minus = *q == '-';
  if (*q == '-' || *q == '+')
    q++;
  if (!is_digit (*q))
    return p;
  for (; is_digit (*q); q++)
    if (value < 10000)
      value = 10 * value + (*q - '0');
  *exponent += minus ? -value : value;
  return q;
}

/* Digits with at most one decimal sign. NULL when there is none; `whole` tells digits alone. */
static const char *
read_decimal (const char *p, double *value, bool *whole)
{
  bool any = false, point = false;
  long exponent = 0;

  *value = 0;
  for (;; p++)
    {
      if (is_digit (*p))
        {
          *value = 10 * *value + (*p - '0');
          any = true;
          exponent -= point;
        }
      else if ((*p == '.' || *p == ',') && !point && (is_digit (p[1]) || (any && *p == '.')))
        point = true;
      else
        break;
    }
  if (!any)
    return NULL;
  const char *end = read_exponent (p, &exponent);
  *whole = !point && end == p;
  *value = scale_by_ten (*value, exponent);
  return end;
}

/* "3/8", with a slash of any kind. NULL when there is none. */
static const char *
read_slashed (const char *p, double *value)
{
  double top = 0, bottom = 0;

  if (!is_digit (*p))
    return NULL;
  for (; is_digit (*p); p++)
    top = 10 * top + (*p - '0');
  if (*p == '/')
    p++;
  else if (starts_with (p, "\u2044"))
    p += strlen ("\u2044");
  else
    return NULL;
  if (!is_digit (*p))
    return NULL;
  for (; is_digit (*p); p++)
    bottom = 10 * bottom + (*p - '0');
  if (bottom == 0)
    return NULL;
  *value = top / bottom;
  return p;
}

static const char *
read_fraction (const char *p, double *value)
{
  const VulgarFraction *vulgar = vulgar_fraction (p);

  if (vulgar == NULL)
    return read_slashed (p, value);
  *value = (double) vulgar->top / vulgar->bottom;
  return p + strlen (vulgar->text);
}

/* A number, a fraction, or both: "2.5", "3/8", "1 1/4", "1-1/4". NULL when there is none. */
static const char *
read_magnitude (const char *p, double *value, bool *whole)
{
  double fraction;
  const char *end = read_fraction (p, value);

  *whole = false;
  if (end != NULL)
    return end;
  end = read_decimal (p, value, whole);
  if (end == NULL || !*whole)
    return end;

  const char *next = skip_blanks (end);
  if (next == end && *next == '-')
    next++;
  next = read_fraction (next, &fraction);
  if (next == NULL || fraction >= 1)
    return end;
  *value += fraction;
  *whole = false;
  return next;
}

/* ---- Units ---- */

/* Whether a unit that ended before `p` has really ended. */
static bool
is_boundary (const char *p)
{
  unsigned char c = (unsigned char) *p;

  if (c < 0x80)
    return !is_letter (*p) && c != '/' && c != '^';
  return blank_length (p) > 0 || vulgar_fraction (p) != NULL;
}

/* Length of `text` up to the end of the spelling (which ends at "|" or at the end of the string),
 * or 0. */
static size_t
match_spelling (const char *text, const char *spelling, bool exact_case)
{
  const char *p = text;
  char last = 0;

  for (; *spelling != '\0' && *spelling != '|'; spelling++)
    {
      last = *spelling;
      if (*spelling == ' ' || *spelling == '/')
        p = skip_blanks (p);
      if (*spelling == ' ')
        continue;
      if ((*spelling == '2' || *spelling == '3') && *p == '^')
        p++;
      if (*spelling == '2' && starts_with (p, "\u00b2"))
        p += 2;
      else if (*spelling == '3' && starts_with (p, "\u00b3"))
        p += 2;
      else if (exact_case ? *p == *spelling : lower (*p) == lower (*spelling))
        p++;
      else
        return 0;
      if (*spelling == '/')
        p = skip_blanks (p);
    }
  if ((is_letter (last) || is_digit (last)) && !is_boundary (p))
    return 0;
  return (size_t) (p - text);
}

static size_t
match_unit (const char *text, const LbUnit *unit)
{
  const char *spelling = unit->spellings;
  size_t longest = 0;

  for (;;)
    {
      size_t length = match_spelling (text, spelling, unit->exact_case);
      if (length > longest)
        longest = length;
      spelling = strchr (spelling, '|');
      if (spelling == NULL)
        return longest;
      spelling++;
    }
}

/* The unit at the start of `text`: the longest spelling of `dimension` unless another dimension has
 * a longer one. NULL if there is none; `result` then says why. */
static const LbUnit *
find_unit (const char *text, LbDimension dimension, size_t *length, LbParseResult *result)
{
  const LbUnit *own = NULL;
  size_t other = 0;

  *length = 0;
  for (size_t i = 0; i < lb_unit_table_size; i++)
    {
      const LbUnit *unit = &lb_unit_table[i];
      size_t n = match_unit (text, unit);
      if (unit->dimension == dimension && n > *length)
        {
          own = unit;
          *length = n;
        }
      else if (unit->dimension != dimension && n > other)
        other = n;
    }
  if (own != NULL && *length >= other)
    return own;
  *result = other > 0 ? LB_PARSE_WRONG_UNIT : LB_PARSE_UNKNOWN_UNIT;
  return NULL;
}

/* The unit that a bare number after `unit` is in. */
static const LbUnit *
smaller_unit (const LbUnit *unit)
{
  LbParseResult ignored;
  size_t length;

  if (unit == NULL || unit->smaller == NULL)
    return NULL;
  return find_unit (unit->smaller, unit->dimension, &length, &ignored);
}

/* ---- The whole ---- */

typedef struct
{
  LbQuantity quantity;
  LbUnits units;
  const char *p;
  double sign;
  const LbUnit *last; /* unit of the part before, NULL at the first one */
  bool whole;         /* the part before was a whole number */
  double sum;         /* SI */
} Parser;

/* The sign in front, ASCII or typographic. */
static void
take_sign (Parser *parser)
{
  parser->sign = 1;
  if (*parser->p == '-')
    {
      parser->sign = -1;
      parser->p++;
    }
  else if (starts_with (parser->p, "\u2212"))
    {
      parser->sign = -1;
      parser->p += strlen ("\u2212");
    }
  else if (*parser->p == '+')
    parser->p++;
  parser->p = skip_blanks (parser->p);
}

/* Steps over what may stand between two parts: "20 ft, 6 in", "2 lb and 3 oz", "20'-6\"". */
static const char *
skip_joint (const char *p)
{
  if (*p == '-' && (is_digit (p[1]) || vulgar_fraction (p + 1) != NULL))
    return p + 1;
  p = skip_blanks (p);
  if (*p == ',' && !is_digit (p[1]))
    return skip_blanks (p + 1);
  if (lower (p[0]) == 'a' && lower (p[1]) == 'n' && lower (p[2]) == 'd' && !is_letter (p[3]))
    return skip_blanks (p + 3);
  return p;
}

/* Steps over a degree sign or word without a letter, which is of the degrees that are shown. */
static void
take_bare_degree (Parser *parser)
{
  size_t length = 0;

  for (size_t i = 0; i < lb_unit_table_size; i++)
    if (lb_unit_table[i].dimension == LB_DIMENSION_ANGLE && lb_unit_table[i].down == 180)
      length = match_unit (parser->p, &lb_unit_table[i]);
  if (length > 0 && *skip_blanks (parser->p + length) == '\0')
    parser->p = skip_blanks (parser->p + length);
}

/* The unit of the part whose number was just read; NULL with LB_PARSE_OK for the main unit of the
 * setting. */
static LbParseResult
take_unit (Parser *parser, const LbUnit **unit)
{
  LbParseResult result = LB_PARSE_OK;
  size_t length;

  *unit = NULL;
  parser->p = skip_blanks (parser->p);
  if (parser->quantity == LB_QUANTITY_TEMPERATURE && parser->last == NULL)
    take_bare_degree (parser);
  if (*parser->p == '\0')
    {
      *unit = smaller_unit (parser->last);
      return parser->last == NULL || *unit != NULL ? LB_PARSE_OK : LB_PARSE_NOT_A_NUMBER;
    }
  if (is_digit (*parser->p) || strchr (".,-+/", *parser->p) != NULL)
    return LB_PARSE_NOT_A_NUMBER;

  *unit = find_unit (parser->p, lb_units_dimension (parser->quantity), &length, &result);
  if (*unit == NULL)
    return result;
  parser->p += length;
  if (*parser->p == '.' && is_letter (parser->p[-1]) && !is_digit (parser->p[1]))
    parser->p++;
  return LB_PARSE_OK;
}

/* Several parts go from the large unit to the small, and only the last may be broken. */
static bool
may_follow (const Parser *parser, const LbUnit *unit)
{
  return parser->last == NULL
         || (parser->whole && unit->up / unit->down < parser->last->up / parser->last->down
             && unit->dimension != LB_DIMENSION_TEMPERATURE);
}

static LbParseResult
read_part (Parser *parser)
{
  const LbUnit *unit;
  double number;
  bool whole;

  parser->p = read_magnitude (parser->p, &number, &whole);
  if (parser->p == NULL)
    return LB_PARSE_NOT_A_NUMBER;
  number *= parser->sign;
  LbParseResult result = take_unit (parser, &unit);
  if (result != LB_PARSE_OK)
    return result;
  if (unit == NULL)
    {
      parser->sum = lb_units_to_si (parser->quantity, parser->units, number);
      return LB_PARSE_OK;
    }
  if (!may_follow (parser, unit))
    return LB_PARSE_NOT_A_NUMBER;
  parser->sum += (number + unit->offset) * unit->up / unit->down;
  parser->last = unit;
  parser->whole = whole;
  return LB_PARSE_OK;
}

LbParseResult
lb_units_parse (LbQuantity quantity, LbUnits units, const char *text, double *value)
{
  Parser parser = { .quantity = quantity, .units = units, .p = skip_blanks (text) };

  if (*parser.p == '\0')
    return LB_PARSE_EMPTY;
  take_sign (&parser);
  for (;;)
    {
      LbParseResult result = read_part (&parser);
      if (result != LB_PARSE_OK)
        return result;
      if (*skip_blanks (parser.p) == '\0')
        break;
      parser.p = skip_joint (parser.p);
    }
  if (!isfinite (parser.sum))
    return LB_PARSE_OUT_OF_RANGE;
  *value = parser.sum == 0 ? 0 : parser.sum; /* no minus before a zero */
  return LB_PARSE_OK;
}
