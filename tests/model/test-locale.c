/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every number of the table of fields in a locale with a decimal comma: written, read back, and
 * stepped, in both systems of units. What the C library prints in the locale is the yardstick. */
#include "fields.h"
#include "test.h"
#include "words.h"

#include <glib.h>
#include <locale.h>
#include <string.h>

#define MOST_STEPS 24

static int
go_to_comma (void **state)
{
  /* The build makes this locale; without the C library's sources of locales it cannot. */
  return setlocale (LC_ALL, "de_DE.UTF-8") ? 0 : -1;
}

static int
come_back (void **state)
{
  setlocale (LC_ALL, "C");
  return 0;
}

typedef void (*Check) (const LbField *field, LbUnits units, double value);

/* Values over the usual range of every number, in both systems; returns how many. */
static int
for_all_values (Check check)
{
  gsize n;
  const LbField *fields = lb_fields (&n);
  TestRandom random = { 20260104 };
  int count = 0;

  for (gsize i = 0; i < n; i++)
    {
      const LbField *field = &fields[i];
      bool usual = field->usual_high > field->usual_low;
      double low = usual ? field->usual_low : field->minimum;
      double high = usual ? field->usual_high : field->maximum;

      if (field->kind != LB_FIELD_NUMBER)
        continue;
      for (int k = 0; k < 12; k++)
        for (int units = LB_UNITS_US; units <= LB_UNITS_METRIC; units++, count++)
          check (field, units, k == 0 ? low : k == 1 ? high : test_random (&random, low, high));
    }
  return count;
}

static void
check_read_back (const LbField *field, LbUnits units, double value)
{
  g_autofree char *words = lb_words_quantity (field->quantity, units, value, -1);
  g_autofree char *message = NULL;
  double back, resolution = 0.5 * lb_units_size (field->quantity, units);

  if (strchr (words, '.'))
    fail_msg ("%s is shown as \"%s\"", field->path, words);
  if (!lb_words_parse (field->quantity, units, words, &back, &message))
    fail_msg ("%s is shown as \"%s\", which is not read: %s", field->path, words, message);
  /* Feet are shown to the inch, everything else to a digit of its own. */
  if (field->quantity == LB_QUANTITY_LENGTH && units == LB_UNITS_US)
    resolution = 0.5 * 0.0254;
  assert_near (back, value, resolution * (1 + 1e-9));
  {
    g_autofree char *again = lb_words_quantity (field->quantity, units, back, -1);
    assert_string_equal (again, words);
  }
}

static void
every_number_is_read_back_as_it_is_shown (void **state)
{
  assert_true (for_all_values (check_read_back) > 500);
}

/* With three decimals the C library must write the same digits and the same sign. */
static void
check_digits (const LbField *field, LbUnits units, double value)
{
  g_autofree char *words = lb_words_quantity (field->quantity, units, value, 3);
  double number = lb_units_from_si (field->quantity, units, value);
  g_autofree char *printed = g_strdup_printf ("%.3f", number);
  double back;

  if (field->quantity == LB_QUANTITY_LENGTH && units == LB_UNITS_US)
    return; /* feet and inches */
  /* Too small for three decimals, or halfway between two. */
  if (lb_units_fit_decimals (field->quantity, units, value, 3) < 0
      || fabs (fabs (number * 1000 - floor (number * 1000)) - 0.5) < 1e-6)
    return;
  if (!g_str_has_prefix (words, printed))
    fail_msg ("%s is shown as \"%s\" and printed as \"%s\"", field->path, words, printed);
  assert_non_null (strchr (words, ','));
  /* Bare, as printed in the locale, it is read in the unit that is shown. */
  assert_true (lb_words_parse (field->quantity, units, printed, &back, NULL));
  assert_near (lb_units_from_si (field->quantity, units, back), number, 0.0005 * (1 + 1e-9));
}

static void
every_number_has_the_digits_that_the_locale_prints (void **state)
{
  assert_true (for_all_values (check_digits) > 500);
}

/* A step changes what is shown, by the same amount each time, and the sums stay round: what is
 * shown after some steps is exactly what those steps come to. */
static void
check_steps (const LbField *field, LbUnits units, double value)
{
  double step = lb_field_step (field, units);
  g_autofree char *before = NULL;

  assert_true (step > 0);
  for (int k = 1; k <= MOST_STEPS; k++)
    {
      double sum = lb_field_clamp (field, k * step);
      g_autofree char *words = lb_words_quantity (field->quantity, units, sum, -1);
      double back;

      if (sum != k * step)
        break;
      if (before && g_str_equal (before, words))
        fail_msg ("%s: a step of %g changes nothing in \"%s\"", field->path, step, words);
      assert_true (lb_words_parse (field->quantity, units, words, &back, NULL));
      if (!(fabs (back - sum) <= 1e-9 * fabs (sum)))
        fail_msg ("%s: %d steps of %g come to %.12g and are shown as \"%s\"", field->path, k, step,
                  sum, words);
      g_free (before);
      before = g_steal_pointer (&words);
    }
}

static void
every_step_is_seen_and_stays_round (void **state)
{
  for_all_values (check_steps);
}

/* Both signs are read, wherever the sign of the locale is a comma. */
static void
point_and_comma_are_both_read (void **state)
{
  static const struct
  {
    LbQuantity quantity;
    LbUnits units;
    const char *text;
    double value;
  } cases[] = {
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, "1,25 m/s", 1.25 },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, "1.25 m/s", 1.25 },
    { LB_QUANTITY_SPEED, LB_UNITS_US, "2,5", 2.5 * 0.44704 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "1 1/4 lb", 1.25 * 0.45359237 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "0,9 kg", 0.9 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "20 ft 6,5 in", 20 * 0.3048 + 6.5 * 0.0254 },
    { LB_QUANTITY_TEMPERATURE, LB_UNITS_US, "3,5 \302\260C", 3.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double value;

      assert_true (lb_words_parse (cases[i].quantity, cases[i].units, cases[i].text, &value, NULL));
      assert_near (value, cases[i].value, 1e-12);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_number_is_read_back_as_it_is_shown),
    cmocka_unit_test (every_number_has_the_digits_that_the_locale_prints),
    cmocka_unit_test (every_step_is_seen_and_stays_round),
    cmocka_unit_test (point_and_comma_are_both_read),
  };

  if (go_to_comma (NULL) != 0)
    return 77;
  come_back (NULL);
  return cmocka_run_group_tests (tests, go_to_comma, come_back);
}
