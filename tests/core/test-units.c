/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sizes of units against their definitions (answers/unit-definitions.csv), and what is read and
 * written. */
#include "units.h"

#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "answers.h"
#include "test.h"

#define POUND 0.45359237
#define PI 3.14159265358979323846

static double
parse (LbQuantity quantity, LbUnits units, const char *text)
{
  double value = NAN;
  LbParseResult result = lb_units_parse (quantity, units, text, &value);

  if (result != LB_PARSE_OK)
    fail_msg ("\"%s\" is refused (%d)", text, (int) result);
  return value;
}

static void
units_have_their_defined_size (void **state)
{
  static const struct
  {
    const char *name;
    LbQuantity quantity;
  } kinds[] = { { "length", LB_QUANTITY_LENGTH },
                { "mass", LB_QUANTITY_MASS },
                { "speed", LB_QUANTITY_SPEED },
                { "force", LB_QUANTITY_FORCE },
                { "area", LB_QUANTITY_AREA } };
  Answers *table = answers_read ("unit-definitions.csv");
  size_t compared = 0;

  for (size_t i = 0; i < answers_rows (table); i++)
    for (size_t k = 0; k < sizeof kinds / sizeof *kinds; k++)
      if (strcmp (answers_text (table, i, "quantity"), kinds[k].name) == 0)
        {
          char text[32];
          snprintf (text, sizeof text, "1 %s", answers_text (table, i, "unit"));
          assert_relative (parse (kinds[k].quantity, LB_UNITS_METRIC, text),
                           answers_number (table, i, "size"), 3e-16);
          compared++;
        }
  assert_int_equal (compared, answers_rows (table));
  answers_free (table);
}

static void
main_units_have_their_defined_size (void **state)
{
  Answers *table = answers_read ("unit-definitions.csv");

  for (int q = 0; q < LB_N_QUANTITIES; q++)
    for (size_t i = 0; i < answers_rows (table); i++)
      {
        LbQuantity quantity = (LbQuantity) q;
        if (strcmp (lb_units_name (quantity, LB_UNITS_US), answers_text (table, i, "unit")) == 0)
          assert_relative (lb_units_size (quantity, LB_UNITS_US), answers_number (table, i, "size"),
                           3e-16);
      }
  answers_free (table);
  assert_relative (lb_units_size (LB_QUANTITY_ANGLE, LB_UNITS_US), PI / 180, 3e-16);
  assert_relative (lb_units_size (LB_QUANTITY_TEMPERATURE, LB_UNITS_US), 5.0 / 9, 3e-16);
  assert_relative (lb_units_size (LB_QUANTITY_VISCOSITY, LB_UNITS_US), 1e-6, 3e-16);
  assert_relative (lb_units_size (LB_QUANTITY_SMALL_FORCE, LB_UNITS_METRIC), 1e-3, 3e-16);
  assert_relative (lb_units_size (LB_QUANTITY_AREA, LB_UNITS_METRIC), 1e-4, 3e-16);
}

static void
temperatures (void **state)
{
  /* The fixed points of the two scales, and where they meet. */
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, "32"), 0, 0);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, "212 \u00b0F"), 100, 1e-13);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_METRIC, "-40 F"), -40, 1e-13);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, "-40 C"), -40, 0);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, "273.15 K"), 0, 1e-12);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, "4\u2103"), 4, 0);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_METRIC, "4\u00b0"), 4, 0);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_METRIC, "4 degrees"), 4, 0);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, "50 deg f"), 10, 1e-13);
  assert_near (parse (LB_QUANTITY_TEMPERATURE, LB_UNITS_METRIC, "50 Fahrenheit"), 10, 1e-13);
  assert_near (lb_units_from_si (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, 100), 212, 1e-12);
  assert_near (lb_units_to_si (LB_QUANTITY_TEMPERATURE, LB_UNITS_US, 212), 100, 1e-12);
}

static void
from_si_and_back (void **state)
{
  TestRandom random = { 17 };

  for (size_t i = 0; i < test_count (2000); i++)
    for (int q = 0; q < LB_N_QUANTITIES; q++)
      for (int units = 0; units < 2; units++)
        {
          double value = test_random (&random, -100, 100);
          double there = lb_units_from_si ((LbQuantity) q, (LbUnits) units, value);
          assert_near (lb_units_to_si ((LbQuantity) q, (LbUnits) units, there), value, 1e-13);
        }
}

static void
steps_are_handy (void **state)
{
  for (int q = 0; q < LB_N_QUANTITIES; q++)
    for (int units = 0; units < 2; units++)
      assert_less (0, lb_units_step ((LbQuantity) q, (LbUnits) units));
  assert_relative (lb_units_step (LB_QUANTITY_SPEED, LB_UNITS_US), 0.1 * 0.44704, 1e-14);
  assert_relative (lb_units_step (LB_QUANTITY_MASS, LB_UNITS_US), POUND / 8, 1e-14);
}

/* ---- Reading ---- */

typedef struct
{
  LbQuantity quantity;
  LbUnits units;
  const char *text;
  double value;
} Read;

static void
reads_what_people_write (void **state)
{
  static const Read cases[] = {
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "20 ft 6 in", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "20'6\"", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "20' 6", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "20'-6\"", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "20\u20326\u2033", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "20\u20196\u201d", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "20ft6in", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "20 FT. 6 IN.", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "20 feet, 6 inches", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "20 feet and 6 inches", 6.2484 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "1 foot 1 inch", 0.3302 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "5 ft 6 1/2 in", 1.6891 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "5 ft 6\u00bd\"", 1.6891 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "5 ft 6.5 in", 1.6891 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "5 ft 0.5 in", 1.5367 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "20", 6.096 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "20", 20 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "6 m", 6 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "6m", 6 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, " 6,5 Metres ", 6.5 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "1 m 20 cm", 1.2 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "-3 in", -0.0762 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US,
      "\u2212"
      "1 ft 6 in",
      -0.4572 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "- 3 in", -0.0762 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "+3 in", 0.0762 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "6\u00a0m", 6 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "6\u202fm", 6 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "6\u2009ft\u20096\u2009in", 1.9812 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "3 fathoms", 5.4864 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "2 yards", 1.8288 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "5.", 1.524 },
    { LB_QUANTITY_HEIGHT, LB_UNITS_US, "4", 0.1016 },
    { LB_QUANTITY_HEIGHT, LB_UNITS_METRIC, "10", 0.1 },
    { LB_QUANTITY_HEIGHT, LB_UNITS_US, "3/8\"", 0.009525 },
    { LB_QUANTITY_HEIGHT, LB_UNITS_US, "17 3/4", 0.45085 },
    { LB_QUANTITY_DIAMETER, LB_UNITS_US, "0.7 mm", 0.0007 },
    { LB_QUANTITY_DIAMETER, LB_UNITS_US, "28 thou", 0.0007112 },
    { LB_QUANTITY_DIAMETER, LB_UNITS_US, ".028", 0.0007112 },
    { LB_QUANTITY_DIAMETER, LB_UNITS_METRIC, "0,35", 0.00035 },
    { LB_QUANTITY_AREA, LB_UNITS_US, "3 cm\u00b2", 0.0003 },
    { LB_QUANTITY_AREA, LB_UNITS_US, "3 cm2", 0.0003 },
    { LB_QUANTITY_AREA, LB_UNITS_US, "3 cm^2", 0.0003 },
    { LB_QUANTITY_AREA, LB_UNITS_METRIC, "2 sq in", 0.00129032 },
    { LB_QUANTITY_AREA, LB_UNITS_METRIC, "2 square inches", 0.00129032 },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, "2.5 mph", 1.1176 },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, "2,5 MPH", 1.1176 },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, "2.5 miles per hour", 1.1176 },
    { LB_QUANTITY_SPEED, LB_UNITS_US, "1.2 m/s", 1.2 },
    { LB_QUANTITY_SPEED, LB_UNITS_US, "1.2 m / s", 1.2 },
    { LB_QUANTITY_SPEED, LB_UNITS_US, "3.6 km/h", 1 },
    { LB_QUANTITY_SPEED, LB_UNITS_US, "10 ft/s", 3.048 },
    { LB_QUANTITY_SPEED, LB_UNITS_US, "2.5", 1.1176 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "1 1/4 lb", 1.25 * POUND },
    { LB_QUANTITY_MASS, LB_UNITS_US, "1-1/4 lb", 1.25 * POUND },
    { LB_QUANTITY_MASS, LB_UNITS_US, "1\u00bc lb", 1.25 * POUND },
    { LB_QUANTITY_MASS, LB_UNITS_US, "1 \u00bc lbs", 1.25 * POUND },
    { LB_QUANTITY_MASS, LB_UNITS_US, "\u00be pound", 0.75 * POUND },
    { LB_QUANTITY_MASS, LB_UNITS_US, "1 1\u20444", 1.25 * POUND },
    { LB_QUANTITY_MASS, LB_UNITS_US, "7/4", 1.75 * POUND },
    { LB_QUANTITY_MASS, LB_UNITS_US, "2 lb 3 oz", 35 * POUND / 16 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "2lb3oz", 35 * POUND / 16 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "2 lbs. 3 oz.", 35 * POUND / 16 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "14 oz", 14 * POUND / 16 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "14 Ounces", 14 * POUND / 16 },
    { LB_QUANTITY_MASS, LB_UNITS_US, ".9kg", 0.9 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "0,9 KG", 0.9 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "900 grams", 0.9 },
    { LB_QUANTITY_SMALL_MASS, LB_UNITS_US, "1/4", POUND / 64 },
    { LB_QUANTITY_SMALL_MASS, LB_UNITS_METRIC, "6", 0.006 },
    { LB_QUANTITY_FORCE, LB_UNITS_METRIC, "1 lbf", 4.4482216152605 },
    { LB_QUANTITY_FORCE, LB_UNITS_METRIC, "1 lb", 4.4482216152605 },
    { LB_QUANTITY_FORCE, LB_UNITS_US, "12 N", 12 },
    { LB_QUANTITY_FORCE, LB_UNITS_US, "2 kgf", 19.6133 },
    { LB_QUANTITY_FORCE, LB_UNITS_US, "3 kN", 3000 },
    { LB_QUANTITY_SMALL_FORCE, LB_UNITS_US, "29.43 mN", 0.02943 },
    { LB_QUANTITY_SMALL_FORCE, LB_UNITS_METRIC, "3 g", 0.02941995 },
    { LB_QUANTITY_ANGLE, LB_UNITS_US, "90\u00b0", PI / 2 },
    { LB_QUANTITY_ANGLE, LB_UNITS_US, "90 degrees", PI / 2 },
    { LB_QUANTITY_ANGLE, LB_UNITS_US, "1 rad", 1 },
    { LB_QUANTITY_DENSITY, LB_UNITS_US, "11340", 11340 },
    { LB_QUANTITY_DENSITY, LB_UNITS_US, "11.34 g/cm\u00b3", 11340 },
    { LB_QUANTITY_DENSITY, LB_UNITS_US, "1140 kg/m3", 1140 },
    { LB_QUANTITY_DENSITY, LB_UNITS_US, "62.42796 lb/ft3", 1000 },
    { LB_QUANTITY_VISCOSITY, LB_UNITS_US, "1.567", 1.567e-6 },
    { LB_QUANTITY_VISCOSITY, LB_UNITS_US, "1.567e-6 m\u00b2/s", 1.567e-6 },
    { LB_QUANTITY_VISCOSITY, LB_UNITS_US, "1.567 cSt", 1.567e-6 },
    { LB_QUANTITY_STIFFNESS, LB_UNITS_METRIC, "57727", 57727 },
    { LB_QUANTITY_FREQUENCY, LB_UNITS_US, "600 hz", 600 },
    { LB_QUANTITY_TIME, LB_UNITS_US, "1 min 30 s", 90 },
    { LB_QUANTITY_TIME, LB_UNITS_US, "1 h 30", 5400 },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, "0.4", 0.4 },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, "2/5", 0.4 },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, "40 %", 0.4 },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, "4e-1", 0.4 },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, "0", 0 },
  };

  for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
    {
      double value = parse (cases[i].quantity, cases[i].units, cases[i].text);
      double tolerance = strstr (cases[i].text, "62.4") != NULL ? 1e-7 : 4e-16;
      if (!(fabs (value - cases[i].value) <= tolerance * fabs (cases[i].value)))
        fail_msg ("\"%s\" is read as %.17g, not %.17g", cases[i].text, value, cases[i].value);
    }
}

typedef struct
{
  LbQuantity quantity;
  const char *text;
  LbParseResult result;
} Refused;

static void
refuses_nonsense (void **state)
{
  static const Refused cases[] = {
    { LB_QUANTITY_LENGTH, "", LB_PARSE_EMPTY },
    { LB_QUANTITY_LENGTH, " \t\u00a0\u2009 ", LB_PARSE_EMPTY },
    { LB_QUANTITY_LENGTH, "ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "-", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, ".", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, ". ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "--3 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "nan", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "inf", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "0x10", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_LENGTH, "1.2.3", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1,200.5", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1.200,5", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1 200", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "5 6 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1/0 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1/ ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "/2 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1/2/3", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1 5/4 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "1.5 1/4 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "5 ft -6 in", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "6 in 5 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "5 ft 5 ft", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "5.5 ft 6 in", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "6 m 20", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "5 ft and", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "5 ft,", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_LENGTH, "5 foo", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_LENGTH, "5 ftt", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_LENGTH, "5 \xff\xfe", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_LENGTH, "5 m\u00e9", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_LENGTH, "5 \xe2\x80", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_LENGTH, "3 lb", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_LENGTH, "3 m/s", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_LENGTH, "3 m2", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_LENGTH, "5 ft 3 lb", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_MASS, "3 ft", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_MASS, "3 lbf", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_MASS, "3 Mg", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_FORCE, "3 MN", LB_PARSE_UNKNOWN_UNIT },
    { LB_QUANTITY_SPEED, "3 m", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_SPEED, "3 kg/m3", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_TEMPERATURE, "3 m", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_TEMPERATURE, "4 C 3 F", LB_PARSE_NOT_A_NUMBER },
    { LB_QUANTITY_NUMBER, "3 ft", LB_PARSE_WRONG_UNIT },
    { LB_QUANTITY_LENGTH, "1e400", LB_PARSE_OUT_OF_RANGE },
    { LB_QUANTITY_LENGTH, "1e308 km", LB_PARSE_OUT_OF_RANGE },
    { LB_QUANTITY_LENGTH, "1e99999999999999999999", LB_PARSE_OUT_OF_RANGE },
  };

  for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
    {
      double value = 12345;
      LbParseResult result = lb_units_parse (cases[i].quantity, LB_UNITS_US, cases[i].text, &value);
      if (result != cases[i].result || value != 12345)
        fail_msg ("\"%s\" gives %d, not %d (value %g)", cases[i].text, (int) result,
                  (int) cases[i].result, value);
    }
}

static void
any_bytes_are_safe (void **state)
{
  static const char alphabet[] = "0123456789.,/-+ '\"eftinlbozmkgs%\xc2\xe2\x80\xb2\xb0\xbd\xff";
  TestRandom random = { 23 };

  for (size_t i = 0; i < test_count (20000); i++)
    {
      size_t n = (size_t) test_random (&random, 0, 12);
      char *text = malloc (n + 1); /* of the exact size, so that a sanitizer sees a step too far */
      double value = 7;
      for (size_t k = 0; k < n; k++)
        text[k] = alphabet[(size_t) test_random (&random, 0, sizeof alphabet - 1)];
      text[n] = '\0';
      LbQuantity quantity = (LbQuantity) test_random (&random, 0, LB_N_QUANTITIES);
      LbParseResult result = lb_units_parse (quantity, LB_UNITS_US, text, &value);
      if (result == LB_PARSE_OK)
        assert_true (isfinite (value));
      else
        assert_near (value, 7, 0);
      free (text);
    }
}

/* ---- Writing ---- */

typedef struct
{
  LbQuantity quantity;
  LbUnits units;
  double value;
  int decimals;
  char decimal;
  const char *text;
} Written;

static void
writes_as_people_do (void **state)
{
  static const Written cases[] = {
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 6.096, -1, '.', "20 ft" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 6.2484, -1, '.', "20 ft 6 in" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 0.1524, -1, '.', "6 in" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, -0.4572, -1, '.', "-1 ft 6 in" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 0, -1, '.', "0 ft" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, -0.001, -1, '.', "0 ft" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 6.0959, -1, '.', "20 ft" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 20.99 * 0.3048, -1, '.', "21 ft" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 0.3047, -1, '.', "1 ft" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 6.26, 1, '.', "20 ft 6.5 in" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 6.26, 1, ',', "20 ft 6,5 in" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 6.0959, 1, '.', "20 ft 0.0 in" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, 6.096, -1, '.', "6.1 m" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, 6.096, 1, '.', "6.1 m" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, 6, 2, ',', "6,00 m" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, -0.004, -1, '.', "0 m" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, -0.004, 2, '.', "0.00 m" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, 0.996, -1, '.', "1 m" },
    { LB_QUANTITY_HEIGHT, LB_UNITS_US, 0.1016, -1, '.', "4 in" },
    { LB_QUANTITY_HEIGHT, LB_UNITS_US, 0.45, -1, '.', "17.7 in" },
    { LB_QUANTITY_HEIGHT, LB_UNITS_METRIC, 0.1016, -1, ',', "10,2 cm" },
    { LB_QUANTITY_HEIGHT, LB_UNITS_US, -0.0254, -1, ',', "-1 in" },
    { LB_QUANTITY_DIAMETER, LB_UNITS_US, 0.0007112, -1, '.', "0.028 in" },
    { LB_QUANTITY_DIAMETER, LB_UNITS_METRIC, 0.0007, -1, '.', "0.7 mm" },
    { LB_QUANTITY_AREA, LB_UNITS_METRIC, 0.0003, -1, '.', "3 cm\u00b2" },
    { LB_QUANTITY_SPEED, LB_UNITS_US, 1.1176, -1, '.', "2.5 mph" },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, 0.4, -1, '.', "0.4 m/s" },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, 0.4, 2, '.', "0.40 m/s" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.75 * POUND, -1, '.', "1\u00be lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.75 * POUND, 2, ',', "1,75 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 0.5 * POUND, -1, '.', "\u00bd lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 2 * POUND, -1, '.', "2 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 2.1875 * POUND, -1, '.', "2.19 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.998 * POUND, -1, '.', "2 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.254 * POUND, -1, '.', "1\u00bc lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.8745 * POUND, -1, '.', "1\u215e lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.871 * POUND, -1, '.', "1.87 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.70 * POUND, -1, '.', "1.7 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 1.97 * POUND, -1, ',', "1,97 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 0.001 * POUND, -1, '.', "0 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_METRIC, 0.9, -1, '.', "0.9 kg" },
    { LB_QUANTITY_SMALL_MASS, LB_UNITS_US, 0.25 / 16 * POUND, -1, '.', "\u00bc oz" },
    { LB_QUANTITY_SMALL_MASS, LB_UNITS_US, 0.006, -1, '.', "0.21 oz" },
    { LB_QUANTITY_SMALL_MASS, LB_UNITS_METRIC, 0.006, -1, '.', "6 g" },
    { LB_QUANTITY_FORCE, LB_UNITS_US, 7.6, -1, '.', "1.7 lbf" },
    { LB_QUANTITY_FORCE, LB_UNITS_METRIC, 0.15, -1, '.', "0.15 N" },
    { LB_QUANTITY_SMALL_FORCE, LB_UNITS_METRIC, 0.02943, -1, '.', "29.4 mN" },
    { LB_QUANTITY_TEMPERATURE, LB_UNITS_US, 4, -1, '.', "39.2 \u00b0F" },
    { LB_QUANTITY_TEMPERATURE, LB_UNITS_METRIC, 4, -1, '.', "4 \u00b0C" },
    { LB_QUANTITY_TEMPERATURE, LB_UNITS_US, -20, -1, '.', "-4 \u00b0F" },
    { LB_QUANTITY_ANGLE, LB_UNITS_US, PI / 4, -1, '.', "45\u00b0" },
    { LB_QUANTITY_ANGLE, LB_UNITS_METRIC, 0.7609, 1, ',', "43,6\u00b0" },
    { LB_QUANTITY_DENSITY, LB_UNITS_US, 11340, -1, '.', "11340 kg/m\u00b3" },
    { LB_QUANTITY_VISCOSITY, LB_UNITS_US, 1.567e-6, -1, '.', "1.567 mm\u00b2/s" },
    { LB_QUANTITY_STIFFNESS, LB_UNITS_METRIC, 57727, -1, '.', "57727 N" },
    { LB_QUANTITY_FREQUENCY, LB_UNITS_US, 342.9, -1, '.', "343 Hz" },
    { LB_QUANTITY_TIME, LB_UNITS_US, 2.5, -1, '.', "2.5 s" },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, 0.4, -1, '.', "0.4" },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, -1e-9, -1, '.', "0" },
    { LB_QUANTITY_NUMBER, LB_UNITS_US, 1e21, -1, '.', "1000000000000000000000" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, NAN, -1, '.', "-" },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, NAN, 2, '.', "-" },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, INFINITY, 2, '.', "-" },
  };

  for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
    {
      const Written *c = &cases[i];
      char text[64];
      size_t length = lb_units_format (c->quantity, c->units, c->value, c->decimals, c->decimal,
                                       text, sizeof text);
      assert_string_equal (text, c->text);
      assert_int_equal (length, strlen (c->text));
    }
}

static void
short_room_is_kept_to (void **state)
{
  char text[8] = "#######";

  assert_int_equal (lb_units_format (LB_QUANTITY_LENGTH, LB_UNITS_US, 6.2484, -1, '.', text, 5),
                    10);
  assert_string_equal (text, "20 f");
  assert_int_equal (text[5], '#');
  assert_int_equal (lb_units_format (LB_QUANTITY_LENGTH, LB_UNITS_US, 6.2484, -1, '.', NULL, 0),
                    10);
}

static void
the_largest_numbers_fit (void **state)
{
  char text[512];

  for (int q = 0; q < LB_N_QUANTITIES; q++)
    for (int decimals = -1; decimals < 40; decimals += 20)
      {
        size_t length = lb_units_format ((LbQuantity) q, LB_UNITS_US, -1.7e308, decimals, '.', text,
                                         sizeof text);
        assert_true (length < sizeof text);
        assert_int_equal (length, strlen (text));
      }
}

/* By how much, SI, a value may move when it is written and read. */
static double
rounding (LbQuantity quantity, LbUnits units, double value, int decimals)
{
  static const int own[LB_N_QUANTITIES][2] = {
    [LB_QUANTITY_NUMBER] = { 3, 3 },      [LB_QUANTITY_LENGTH] = { 0, 2 },
    [LB_QUANTITY_HEIGHT] = { 1, 1 },      [LB_QUANTITY_DIAMETER] = { 4, 3 },
    [LB_QUANTITY_AREA] = { 3, 2 },        [LB_QUANTITY_SPEED] = { 1, 2 },
    [LB_QUANTITY_MASS] = { 2, 2 },        [LB_QUANTITY_SMALL_MASS] = { 2, 1 },
    [LB_QUANTITY_FORCE] = { 1, 1 },       [LB_QUANTITY_SMALL_FORCE] = { 2, 1 },
    [LB_QUANTITY_TEMPERATURE] = { 1, 1 }, [LB_QUANTITY_ANGLE] = { 1, 1 },
    [LB_QUANTITY_DENSITY] = { 1, 1 },     [LB_QUANTITY_VISCOSITY] = { 3, 3 },
    [LB_QUANTITY_STIFFNESS] = { 0, 0 },   [LB_QUANTITY_FREQUENCY] = { 0, 0 },
    [LB_QUANTITY_TIME] = { 1, 1 },
  };
  double size = lb_units_size (quantity, units);

  if (quantity == LB_QUANTITY_LENGTH && units == LB_UNITS_US)
    size /= 12;
  if (decimals < 0)
    decimals = own[quantity][units == LB_UNITS_METRIC];
  return 0.5 * size * pow (10, -decimals) + 1e-12 * size + 1e-14 * fabs (value);
}

static void
what_is_written_is_read_back (void **state)
{
  TestRandom random = { 29 };

  for (size_t i = 0; i < test_count (100000); i++)
    {
      LbQuantity quantity = (LbQuantity) (i % LB_N_QUANTITIES);
      LbUnits units = i & 1 ? LB_UNITS_US : LB_UNITS_METRIC;
      char decimal = i & 2 ? '.' : ',';
      int decimals = (int) test_random (&random, -3, 7);
      double size = lb_units_size (quantity, units);
      double value = size * test_random_log (&random, 1e-3, 1e5) * (i & 4 ? 1 : -1), again = NAN;
      char text[128];

      lb_units_format (quantity, units, value, decimals, decimal, text, sizeof text);
      /* Whatever the setting: the text carries its unit. A plain number has none. */
      LbParseResult result = lb_units_parse (quantity, units, text, &again);
      if (result != LB_PARSE_OK
          || !(fabs (again - value) <= rounding (quantity, units, value, decimals)))
        fail_msg ("%.17g is written \"%s\" and read as %.17g (%d)", value, text, again,
                  (int) result);
      LbUnits others = units == LB_UNITS_US ? LB_UNITS_METRIC : LB_UNITS_US;
      double with_others = NAN;
      lb_units_parse (quantity, others, text, &with_others);
      assert_near (with_others, again, 0);

      if (quantity == LB_QUANTITY_LENGTH && units == LB_UNITS_US)
        {
          assert_null (strstr (text, "ft 12"));
          assert_false (abs (atoi (text)) == 12 && strstr (text, "ft") == NULL);
        }
      assert_false (text[0] == '-' && !(again < 0)); /* no "-0" */
    }
}

static void
writing_twice_changes_nothing (void **state)
{
  TestRandom random = { 31 };

  for (size_t i = 0; i < test_count (50000); i++)
    {
      LbQuantity quantity = (LbQuantity) (i % LB_N_QUANTITIES);
      LbUnits units = i & 1 ? LB_UNITS_US : LB_UNITS_METRIC;
      double size = lb_units_size (quantity, units);
      char once[128], twice[128];

      lb_units_format (quantity, units, size * test_random (&random, -300, 300), -1, '.', once,
                       sizeof once);
      lb_units_format (quantity, units, parse (quantity, units, once), -1, '.', twice,
                       sizeof twice);
      assert_string_equal (twice, once);
    }
}

static void
no_locale_gets_in (void **state)
{
  char text[64];

  /* The build makes this locale; without the C library's sources of locales it cannot. */
  if (setlocale (LC_ALL, "de_DE.UTF-8") == NULL)
    skip ();
  snprintf (text, sizeof text, "%.1f", 0.5);
  assert_string_equal (text, "0,5");
  lb_units_format (LB_QUANTITY_SPEED, LB_UNITS_US, 1.1176, -1, '.', text, sizeof text);
  assert_string_equal (text, "2.5 mph");
  assert_near (parse (LB_QUANTITY_SPEED, LB_UNITS_METRIC, "1.5"), 1.5, 0);
  setlocale (LC_ALL, "C");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (units_have_their_defined_size),
    cmocka_unit_test (main_units_have_their_defined_size),
    cmocka_unit_test (temperatures),
    cmocka_unit_test (from_si_and_back),
    cmocka_unit_test (steps_are_handy),
    cmocka_unit_test (reads_what_people_write),
    cmocka_unit_test (refuses_nonsense),
    cmocka_unit_test (any_bytes_are_safe),
    cmocka_unit_test (writes_as_people_do),
    cmocka_unit_test (short_room_is_kept_to),
    cmocka_unit_test (the_largest_numbers_fit),
    cmocka_unit_test (what_is_written_is_read_back),
    cmocka_unit_test (writing_twice_changes_nothing),
    cmocka_unit_test (no_locale_gets_in),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
