/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The head of a card, its cautions, and what the files that word a card share. */
#include "card_wording.h"

#include <math.h>
#include <glib/gi18n-lib.h>

#include "fields.h"
#include "readings_table.h"
#include "rules.h"

/* ---- Shared ---- */

char *
lb_card_quantity (const LbCardWriter *writer, LbQuantity quantity, double value)
{
  return lb_words_quantity (quantity, writer->wording->units, value, writer->wording->decimals);
}

char *
lb_card_height (const LbCardWriter *writer, double value)
{
  return lb_words_height (writer->wording->units, value, writer->wording->decimals);
}

void
lb_card_facts_add (
    LbCardFacts *facts, const char *label, char *value, char *note, bool estimate, LbCardRank rank)
{
  facts->facts = g_renew (LbCardFact, facts->facts, facts->n + 1);
  facts->facts[facts->n++] = (LbCardFact){
    g_strdup (label), value ? value : g_strdup (""), note ? note : g_strdup (""), estimate, rank,
  };
}

char *
lb_card_capital (char *text)
{
  g_autofree char *all = text;
  g_autofree char *first = g_utf8_substring (all, 0, 1);
  g_autofree char *capital = g_utf8_strup (first, -1);

  return g_strconcat (capital, all + strlen (first), NULL);
}

/* The decimals that a speed is told with. */
static int
speed_decimals (LbUnits units)
{
  return units == LB_UNITS_US ? 1 : 2;
}

/* `value` (m/s), rounded up or down to what is printed, in the unit that is shown. */
static double
round_speed (LbUnits units, double value, bool up)
{
  double parts = pow (10, speed_decimals (units));
  double number = lb_units_from_si (LB_QUANTITY_SPEED, units, value) * parts;

  return (up ? ceil (number - 1e-3) : floor (number + 1e-3)) / parts;
}

static char *
speed_words (LbUnits units, double number)
{
  double value = lb_units_to_si (LB_QUANTITY_SPEED, units, number);

  return lb_words_quantity (LB_QUANTITY_SPEED, units, value, speed_decimals (units));
}

char *
lb_card_speed_range (const LbCardWriter *writer, const LbRunWindow *window)
{
  LbUnits units = writer->wording->units;
  bool has_low = window->below != LB_RUN_IN_BAND, has_high = window->above != LB_RUN_IN_BAND;
  double low, high;
  g_autofree char *low_words = NULL;
  g_autofree char *high_words = NULL;

  if (!lb_is_set (window->low))
    return NULL;
  low = round_speed (units, window->low, true);
  high = round_speed (units, window->high, false);
  /* A stretch within one step of what is printed. */
  if (low > high)
    low = high = round_speed (units, 0.5 * (window->low + window->high), true);
  has_low = has_low && low > 0;
  low_words = has_high ? lb_words_quantity (LB_QUANTITY_NUMBER, units, low, speed_decimals (units))
                       : speed_words (units, low);
  high_words = speed_words (units, high);
  if (has_low && has_high)
    /* Translators: "1.6 to 3.4 mph" */
    return g_strdup_printf (_ ("%s to %s"), low_words, high_words);
  if (has_high)
    return g_strdup_printf (_ ("up to %s"), high_words);
  if (has_low)
    return g_strdup_printf (_ ("%s or more"), low_words);
  /* Translators: any speed */
  return g_strdup (_ ("any"));
}

/* ---- The head ---- */

static char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  /* Translators: a date as g_date_time_format() writes it: "April 3, 2026". */
  /* xgettext: no-c-format */
  return g_date_time_format (now, _ ("%B %-d, %Y"));
}

static char *
title_of (const LbCardRequest *request)
{
  const char *title = request->contents->title;
  g_autofree char *mended = NULL;

  if (*title)
    return g_strdup (title);
  if (request->name && *request->name)
    {
      mended = g_utf8_make_valid (request->name, -1);
      return lb_text_to_one_line (mended);
    }
  return g_strdup (_ ("Untitled rig"));
}

static void
write_head (LbCardContents *card, const LbCardRequest *request)
{
  card->title = title_of (request);
  if (!card->card.dated_today)
    card->date = g_strdup (card->card.date.text);
  else
    card->date = request->today ? g_strdup (request->today) : today ();
  card->calibration = g_strdup (_ ("Not calibrated on the water."));
  card->estimate_mark = g_strdup (LB_CARD_ESTIMATE_MARK);
  card->estimate_note = g_strdup_printf (_ ("%s computed or estimated; the river may differ."),
                                         LB_CARD_ESTIMATE_MARK);
  /* Translators: the mark of an estimate stands before it. */
  card->computed_note = g_strdup_printf (_ ("%s computed"), LB_CARD_ESTIMATE_MARK);
  card->notes = g_strdup (card->card.prints[LB_CARD_PART_NOTES] ? request->contents->notes : "");
}

/* ---- Cautions ---- */

/* "Your limits on a line: 2 lures, 6 hooks." with a blank before it; "" when there are none. */
static char *
limits_words (const LbRules *rules)
{
  g_autoptr (GPtrArray) limits = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;

  if (lb_is_set (rules->lures_per_line))
    g_ptr_array_add (limits,
                     g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%.0f lure", "%.0f lures",
                                                   (gulong) rules->lures_per_line),
                                      rules->lures_per_line));
  if (lb_is_set (rules->hooks_per_line))
    g_ptr_array_add (limits,
                     g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%.0f hook", "%.0f hooks",
                                                   (gulong) rules->hooks_per_line),
                                      rules->hooks_per_line));
  if (limits->len == 0)
    return g_strdup ("");
  g_ptr_array_add (limits, NULL);
  list = g_strjoinv (", ", (char **) limits->pdata);
  return g_strdup_printf (_ (" Your limits on a line: %s."), list);
}

static void
write_cautions (const LbCardWriter *w)
{
  const LbSetup *setup = &w->contents->setup;
  g_autoptr (GPtrArray) list = lb_cautions_new (setup, w->numbers->result, w->wording);
  g_autofree char *count = lb_rules_dup_count (setup);
  g_autofree char *limits = limits_words (&setup->rules);

  w->card->cautions = g_new0 (char *, list->len + 1);
  for (guint i = 0; i < list->len; i++)
    w->card->cautions[i] = g_strdup (((LbCaution *) g_ptr_array_index (list, i))->text);
  w->card->n_cautions = list->len;
  w->card->rules = g_strconcat (count, limits, " ", lb_rules_note (), NULL);
}

/* ---- All of it ---- */

LbCardContents *
lb_card_wording_write (const LbCardRequest *request, const LbCardNumbers *numbers)
{
  LbCardContents *card = g_new0 (LbCardContents, 1);
  const LbCardWriter writer = { card, request->contents, numbers, &request->wording };

  card->card = request->contents->card;
  card->setup = request->contents->setup;
  card->units = request->wording.units;
  write_head (card, request);
  lb_card_write_rig (&writer);
  lb_card_write_running (&writer);
  lb_card_write_table (&writer);
  lb_card_write_speeds (&writer);
  lb_card_write_gauge (&writer);
  write_cautions (&writer);
  return card;
}
