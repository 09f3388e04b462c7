/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "snag_words.h"

#include <glib/gi18n-lib.h>

#include "readings_build.h"
#include "words.h"

static char *
time_words (double time)
{
  return lb_words_quantity (LB_QUANTITY_TIME, LB_UNITS_METRIC, time, time < 20 ? 1 : 0);
}

static char *
limit_words (const LbWording *wording)
{
  return lb_words_quantity (LB_QUANTITY_FORCE, wording->units, LB_HAND_LIMIT, 0);
}

/* Nothing comes of it that is worth telling. */
static char *
rest_words (const LbHangUp *held, const char *limit)
{
  if (fabs (held->speed) < LB_HANG_UP_AT_REST)
    return g_strdup (_ ("The boat stays where it is: the line comes no tauter."));
  return g_strdup_printf (
      _ ("The boat goes so slowly that the line would not pull harder than most "
         "people can hold (%s) within the next ten minutes."),
      limit);
}

char *
lb_snag_words_sentence (const LbResult *result, const LbHangUp *held, const LbWording *wording)
{
  LbSnagTimes times = held->times;
  gboolean breaks = lb_hang_up_comes (times.until_breaks);
  gboolean breaks_first = breaks && !(times.until_hand < times.until_breaks);
  g_autofree char *hand = time_words (times.until_hand);
  g_autofree char *breaking = time_words (times.until_breaks);
  g_autofree char *part = lb_words_part (lb_result_get_setup (result), times.breaks);
  g_autofree char *limit = limit_words (wording);

  if (held->snag.pull_now >= LB_HAND_LIMIT)
    return g_strdup_printf (_ ("The line pulls harder than most people can hold (%s) as it is."),
                            limit);
  if (breaks_first)
    /* Translators: the mainline, shank or a leader; then a time */
    return g_strdup_printf (_ ("The %s would part after %s."), part, breaking);
  if (!lb_hang_up_comes (times.until_hand))
    return rest_words (held, limit);
  if (breaks)
    return g_strdup_printf (_ ("The line would pull harder than most people can hold (%s) after "
                               "%s; the %s would part after %s."),
                            limit, hand, part, breaking);
  return g_strdup_printf (_ ("The line would pull harder than most people can hold (%s) after %s."),
                          limit, hand);
}

/* ---- Table ---- */

static char *
boat_words (double speed, const LbWording *wording)
{
  g_autofree char *shown =
      lb_words_quantity (LB_QUANTITY_SPEED, wording->units, fabs (speed), wording->decimals);

  if (fabs (speed) < LB_HANG_UP_AT_REST)
    return g_strdup (_ ("on the spot"));
  return g_strdup_printf (speed > 0 ? _ ("%s up the river") : _ ("%s down the river"), shown);
}

static char *
when_words (double time)
{
  g_autofree char *about = NULL;

  if (!lb_hang_up_comes (time))
    return g_strdup (_ ("not reached"));
  if (time == 0)
    return g_strdup (_ ("at once"));
  about = time_words (time);
  return g_strdup_printf (_ ("after %s"), about);
}

LbReadingsTable *
lb_snag_words_table (const LbResult *result, const LbHangUp *held, const LbWording *wording)
{
  const LbSetup *setup = lb_result_get_setup (result);
  LbSnagTimes times = held->times;
  g_autofree char *limit = limit_words (wording);
  g_autofree char *hand = g_strdup_printf (_ ("Hand limit, %s"), limit);
  LbReadingsBuilder table;

  lb_readings_builder_init (&table);
  lb_readings_builder_start (&table);
  lb_readings_builder_add (&table, _ ("The boat goes"), boat_words (held->speed, wording), NULL);
  lb_readings_builder_add (
      &table, _ ("In the hand now"),
      lb_words_quantity (LB_QUANTITY_FORCE, wording->units, held->snag.pull_now, wording->decimals),
      NULL);
  lb_readings_builder_add (&table, hand, when_words (times.until_hand), NULL);
  if (lb_is_set (times.until_breaks))
    {
      g_autofree char *part = lb_words_part (setup, times.breaks);
      /* Translators: the mainline, shank or a leader */
      g_autofree char *label = g_strdup_printf (_ ("The %s parts"), part);
      lb_readings_builder_add (&table, label, when_words (times.until_breaks), NULL);
    }
  else
    lb_readings_builder_add (&table, _ ("The line parts"),
                             g_strdup (fabs (held->speed) < LB_HANG_UP_AT_REST
                                           ? _ ("not reached")
                                           : _ ("no breaking load known")),
                             NULL);
  lb_readings_builder_end (&table, g_strdup (_ ("In numbers")));
  return lb_readings_builder_finish (&table);
}
