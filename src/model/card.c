/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card.h"

#include <string.h>
#include <glib.h>

#include "change_private.h"

#define INCH 0.0254

#define USUAL_SIDE_SHORT (4 * INCH) /* of a size of one's own that nobody has set yet */
#define USUAL_SIDE_LONG (6 * INCH)
#define USUAL_ALLOWANCE (4 * INCH) /* common practice, no source */

LbCard
lb_card_default (void)
{
  LbCard card = {
    .size = LB_CARD_4X6,
    .own_width = USUAL_SIDE_SHORT,
    .own_height = USUAL_SIDE_LONG,
    .dated_today = true,
  };

  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    card.prints[i] = i != LB_CARD_PART_TEMPLATE;
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    card.terminations[i].allowance = USUAL_ALLOWANCE;
  return card;
}

/* ---- Equality ---- */

/* Bit for bit, as a file keeps them. */
static bool
same_number (double a, double b)
{
  return memcmp (&a, &b, sizeof a) == 0;
}

static bool
same_words (const LbCardWords *a, const LbCardWords *b)
{
  return strcmp (a->text, b->text) == 0;
}

static bool
same_series (const LbCardSeries *a, const LbCardSeries *b)
{
  if (a->kind != b->kind)
    return false;
  if (a->kind == LB_CARD_SERIES_STEPS)
    return same_number (a->from, b->from) && same_number (a->to, b->to)
           && same_number (a->step, b->step);
  if (a->kind == LB_CARD_SERIES_LIST)
    {
      if (a->n != b->n)
        return false;
      for (size_t i = 0; i < a->n; i++)
        if (!same_number (a->values[i], b->values[i]))
          return false;
    }
  return true;
}

static bool
same_hardware (const LbCard *a, const LbCard *b)
{
  if (a->n_hardware != b->n_hardware)
    return false;
  for (size_t i = 0; i < a->n_hardware; i++)
    if (a->hardware[i].count != b->hardware[i].count
        || !same_words (&a->hardware[i].what, &b->hardware[i].what))
      return false;
  return true;
}

static bool
same_paper (const LbCard *a, const LbCard *b)
{
  return a->size == b->size && same_number (a->own_width, b->own_width)
         && same_number (a->own_height, b->own_height) && a->wide == b->wide && a->sheet == b->sheet
         && a->several == b->several;
}

bool
lb_card_equal (const LbCard *a, const LbCard *b)
{
  if (!same_paper (a, b) || a->running_variants != b->running_variants || !same_hardware (a, b)
      || a->dated_today != b->dated_today || (!a->dated_today && !same_words (&a->date, &b->date)))
    return false;
  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    if (a->prints[i] != b->prints[i])
      return false;
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    if (!same_words (&a->terminations[i].how, &b->terminations[i].how)
        || !same_number (a->terminations[i].allowance, b->terminations[i].allowance))
      return false;
  for (int i = 0; i < LB_N_CARD_SERIES; i++)
    if (!same_series (&a->series[i], &b->series[i]))
      return false;
  return true;
}

/* ---- Mending ---- */

/* NAN becomes `low`. */
static double
within (double value, double low, double high)
{
  return value >= low ? MIN (value, high) : low;
}

void
lb_card_words_set (LbCardWords *words, const char *text)
{
  g_autofree char *mended = lb_change_mend_text (text, TRUE, LB_CARD_WORDS_LONGEST);

  G_STATIC_ASSERT (sizeof words->text > LB_CARD_WORDS_LONGEST * 4);
  g_strlcpy (words->text, mended, sizeof words->text);
}

static void
mend_words (LbCardWords *words)
{
  g_autofree char *text = g_strndup (words->text, sizeof words->text - 1);

  lb_card_words_set (words, text);
}

static int
compare_numbers (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;

  return (first > second) - (first < second);
}

/* In order, and each value once. */
static void
mend_list (LbCardSeries *series)
{
  size_t n = 0;

  qsort (series->values, series->n, sizeof *series->values, compare_numbers);
  for (size_t i = 0; i < series->n; i++)
    if (n == 0 || series->values[i] > series->values[n - 1])
      series->values[n++] = series->values[i];
  series->n = n;
}

static void
mend_series (LbCardSeries *series, LbCardSeriesOf of)
{
  double least = lb_card_series_least (of), most = lb_card_series_most (of);

  if (series->kind == LB_CARD_SERIES_LIST)
    {
      series->n = MIN (series->n, LB_CARD_MOST_VALUES);
      for (size_t i = 0; i < series->n; i++)
        series->values[i] = within (series->values[i], least, most);
      mend_list (series);
      if (series->n == 0)
        series->kind = LB_CARD_SERIES_AROUND;
    }
  else if (series->kind == LB_CARD_SERIES_STEPS)
    {
      series->from = within (series->from, least, most);
      series->to = within (series->to, series->from, most);
      series->step = within (series->step, LB_CARD_LEAST_STEP, most);
      /* Rather fewer values than wished than a table that does not end. */
      series->to = MIN (series->to, series->from + series->step * (LB_CARD_MOST_VALUES - 1));
    }
  else
    series->kind = LB_CARD_SERIES_AROUND;
}

void
lb_card_mend (LbCard *card)
{
  if ((unsigned) card->size >= LB_N_CARD_SIZES)
    card->size = LB_CARD_4X6;
  if ((unsigned) card->sheet >= LB_N_CARD_SHEETS)
    card->sheet = LB_CARD_SHEET_AS_CARD;
  card->own_width = within (card->own_width, LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE);
  card->own_height = within (card->own_height, LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE);
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    {
      LbCardTermination *termination = &card->terminations[i];

      mend_words (&termination->how);
      termination->allowance = within (termination->allowance, 0, LB_CARD_MOST_ALLOWANCE);
    }
  card->n_hardware = MIN (card->n_hardware, LB_CARD_MOST_HARDWARE);
  for (size_t i = 0; i < card->n_hardware; i++)
    {
      card->hardware[i].count = CLAMP (card->hardware[i].count, 1, LB_CARD_MOST_COUNT);
      mend_words (&card->hardware[i].what);
    }
  for (int i = 0; i < LB_N_CARD_SERIES; i++)
    mend_series (&card->series[i], (LbCardSeriesOf) i);
  mend_words (&card->date);
}
