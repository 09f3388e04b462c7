/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The choices of a card: measures of paper, mending, the values of a table. */
#include "model-support.h"

#include <string.h>

#include "card.h"

#define INCH 0.0254

/* ---- Paper ---- */

static void
paper_is_as_large_as_the_standards_say (void **state)
{
  /* ISO 216, mm: A4 210 x 297, A5 148 x 210, A6 105 x 148. ANSI Y14.1, in: size A 8.5 x 11. From
   * memory; the index cards are what their names say. */
  static const struct
  {
    LbCardSize size;
    double width, height; /* m */
  } expected[] = {
    { LB_CARD_3X5, 3 * INCH, 5 * INCH },
    { LB_CARD_4X6, 4 * INCH, 6 * INCH },
    { LB_CARD_HALF_LETTER, 5.5 * INCH, 8.5 * INCH },
    { LB_CARD_LETTER, 8.5 * INCH, 11 * INCH },
    { LB_CARD_A6, 0.105, 0.148 },
    { LB_CARD_A5, 0.148, 0.210 },
    { LB_CARD_A4, 0.210, 0.297 },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      LbCard card = lb_card_default ();
      double width, height;

      card.size = expected[i].size;
      lb_card_get_measures (&card, &width, &height);
      assert_near (width, expected[i].width, 1e-12);
      assert_near (height, expected[i].height, 1e-12);
      card.wide = true;
      lb_card_get_measures (&card, &width, &height);
      assert_near (width, expected[i].height, 1e-12);
      assert_near (height, expected[i].width, 1e-12);
    }
}

static void
a_sheet_holds_its_card (void **state)
{
  LbCard card = lb_card_default ();
  double width, height;

  lb_card_get_sheet_measures (&card, &width, &height);
  assert_near (width, 4 * INCH, 1e-12);
  card.sheet = LB_CARD_SHEET_A4;
  lb_card_get_sheet_measures (&card, &width, &height);
  assert_near (width, 0.210, 1e-12);
  assert_near (height, 0.297, 1e-12);

  /* A letter card is 5.9 mm wider than A4: the sheet is the card, whichever way it lies. */
  card.size = LB_CARD_LETTER;
  lb_card_get_sheet_measures (&card, &width, &height);
  assert_near (width, 8.5 * INCH, 1e-12);
  card.sheet = LB_CARD_SHEET_LETTER;
  card.wide = true;
  lb_card_get_sheet_measures (&card, &width, &height);
  assert_near (height, 11 * INCH, 1e-12);

  card.size = LB_CARD_OWN_SIZE;
  card.own_width = 0.6;
  card.own_height = 0.1;
  lb_card_get_sheet_measures (&card, &width, &height);
  assert_near (width, 0.6, 1e-12);
  assert_near (height, 0.1, 1e-12);
}

/* ---- Mending and equality ---- */

static void
anything_is_mended_into_what_a_file_can_hold (void **state)
{
  LbCard card = lb_card_default ();

  card.size = (LbCardSize) 77;
  card.own_width = NAN;
  card.own_height = 1e9;
  card.n_hardware = 2;
  card.hardware[0].count = -3;
  memset (card.hardware[1].what.text, 'x', sizeof card.hardware[1].what.text);
  card.hardware[1].count = 1000;
  card.terminations[LB_CARD_LEADER_TO_LURE].allowance = -1;
  strcpy (card.terminations[LB_CARD_LEADER_TO_LURE].how.text, "two\nlines \xff");
  card.series[0] =
      (LbCardSeries){ .kind = LB_CARD_SERIES_LIST, .n = 4, .values = { 9, 3, 900, 3 } };
  card.series[1] = (LbCardSeries){ .kind = LB_CARD_SERIES_STEPS, .from = 2, .to = 5, .step = 0.01 };
  lb_card_mend (&card);

  assert_int_equal (card.size, LB_CARD_4X6);
  assert_true (card.own_width == LB_CARD_LEAST_SIDE && card.own_height == LB_CARD_MOST_SIDE);
  assert_int_equal (card.hardware[0].count, 1);
  assert_int_equal (card.hardware[1].count, LB_CARD_MOST_COUNT);
  assert_int_equal (strlen (card.hardware[1].what.text), LB_CARD_WORDS_LONGEST);
  assert_true (card.terminations[LB_CARD_LEADER_TO_LURE].allowance == 0);
  assert_string_equal (card.terminations[LB_CARD_LEADER_TO_LURE].how.text,
                       "two lines \xef\xbf\xbd");
  assert_int_equal (card.series[0].n, 3);
  assert_true (card.series[0].values[0] == 3 && card.series[0].values[1] == 9
               && card.series[0].values[2] == 100);
  assert_near (card.series[1].to, 2.11, 1e-12);
}

static void
words_of_any_script_keep_all_their_letters (void **state)
{
  LbCardWords words;
  g_autoptr (GString) longest = g_string_new (NULL);

  for (int i = 0; i < LB_CARD_WORDS_LONGEST; i++)
    g_string_append_unichar (longest, 0x1f3a3);
  lb_card_words_set (&words, longest->str);
  assert_string_equal (words.text, longest->str);
}

static void
what_does_not_count_does_not_make_a_difference (void **state)
{
  LbCard a = lb_card_default (), b = lb_card_default ();

  strcpy (b.date.text, "April");
  b.hardware[3].count = 5;
  b.series[0].from = 3;
  assert_true (lb_card_equal (&a, &b));
  b.dated_today = false;
  assert_false (lb_card_equal (&a, &b));
  b = a;
  b.n_hardware = 1;
  assert_false (lb_card_equal (&a, &b));
  b = a;
  b.terminations[2].allowance += 1e-9;
  assert_false (lb_card_equal (&a, &b));
  b = a;
  b.prints[LB_CARD_PART_TEMPLATE] = true;
  assert_false (lb_card_equal (&a, &b));
}

/* ---- The values of a table ---- */

static void
assert_values (
    LbCardSeries series, LbCardSeriesOf of, LbUnits units, double around, const char *expected)
{
  double values[LB_CARD_MOST_VALUES];
  size_t n = lb_card_series_get_values (&series, of, units, around, values);
  LbQuantity quantity = of == LB_CARD_SERIES_OF_DEPTHS ? LB_QUANTITY_LENGTH : LB_QUANTITY_SPEED;
  g_autoptr (GString) found = g_string_new (NULL);

  for (size_t i = 0; i < n; i++)
    g_string_append_printf (found, "%s%g", i ? " " : "",
                            round (lb_units_from_si (quantity, units, values[i]) * 1e6) / 1e6);
  assert_string_equal (found->str, expected);
}

static void
values_lie_round_about_the_documents (void **state)
{
  const LbCardSeries around = { LB_CARD_SERIES_AROUND };

  assert_values (around, LB_CARD_SERIES_OF_DEPTHS, LB_UNITS_US, 6.096, "16 18 20 22 24");
  assert_values (around, LB_CARD_SERIES_OF_DEPTHS, LB_UNITS_METRIC, 6.096, "5 5.5 6 6.5 7");
  assert_values (around, LB_CARD_SERIES_OF_DEPTHS, LB_UNITS_METRIC, 0.1, "0.1 0.11 0.12 0.13 0.14");
  assert_values (around, LB_CARD_SERIES_OF_DEPTHS, LB_UNITS_METRIC, 100, "80 90 100");
  assert_values (around, LB_CARD_SERIES_OF_CURRENTS, LB_UNITS_US, 1.2, "1.5 2 2.5 3 3.5");
  assert_values (around, LB_CARD_SERIES_OF_CURRENTS, LB_UNITS_METRIC, 1.2, "0.8 1 1.2 1.4 1.6");
  assert_values (around, LB_CARD_SERIES_OF_CURRENTS, LB_UNITS_METRIC, 0, "0 0.05 0.1 0.15 0.2");
}

static void
values_go_by_steps_or_by_a_list (void **state)
{
  const LbCardSeries steps = { LB_CARD_SERIES_STEPS, .from = 3, .to = 5, .step = 0.5 };
  const LbCardSeries odd = { LB_CARD_SERIES_STEPS, .from = 3, .to = 5, .step = 0.7 };
  const LbCardSeries fine = { LB_CARD_SERIES_STEPS, .from = 1, .to = 1.3, .step = 0.1 };
  const LbCardSeries list = { LB_CARD_SERIES_LIST, .n = 3, .values = { 1, 4, 5 } };

  assert_values (steps, LB_CARD_SERIES_OF_DEPTHS, LB_UNITS_METRIC, 6, "3 3.5 4 4.5 5");
  assert_values (odd, LB_CARD_SERIES_OF_DEPTHS, LB_UNITS_METRIC, 6, "3 3.7 4.4");
  assert_values (fine, LB_CARD_SERIES_OF_CURRENTS, LB_UNITS_METRIC, 6, "1 1.1 1.2 1.3");
  assert_values (list, LB_CARD_SERIES_OF_DEPTHS, LB_UNITS_METRIC, 6, "1 4 5");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (paper_is_as_large_as_the_standards_say),
    cmocka_unit_test (a_sheet_holds_its_card),
    cmocka_unit_test (anything_is_mended_into_what_a_file_can_hold),
    cmocka_unit_test (words_of_any_script_keep_all_their_letters),
    cmocka_unit_test (what_does_not_count_does_not_make_a_difference),
    cmocka_unit_test (values_lie_round_about_the_documents),
    cmocka_unit_test (values_go_by_steps_or_by_a_list),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
