/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sentence.h"

#include <glib/gi18n-lib.h>

#include "words.h"

/* Less than this (a quarter of an inch) is not worth a number. */
#define LEVEL_BELOW 0.00635 /* m */

typedef struct
{
  const LbSetup *setup;
  const LbReadings *readings;
  const LbWording *wording;
  GString *text;
} Teller;

static void add (Teller *t, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* One more sentence. */
static void
add (Teller *t, const char *format, ...)
{
  va_list arguments;

  if (t->text->len > 0)
    g_string_append_c (t->text, ' ');
  va_start (arguments, format);
  g_string_append_vprintf (t->text, format, arguments);
  va_end (arguments);
}

static char *
height (const Teller *t, double value)
{
  return lb_words_height (t->wording->units, value, t->wording->decimals);
}

static char *
length (const Teller *t, double value)
{
  return lb_words_quantity (LB_QUANTITY_LENGTH, t->wording->units, value, t->wording->decimals);
}

/* ---- Weight and line ---- */

/* No line out was found that brings the weight to the height asked for; on extreme rigs one may
   still exist on a branch that the search does not come to. */
static void
tell_leap (Teller *t, LbSteadyStatistics statistics, const char *at, const char *out)
{
  g_autofree char *high = height (t, statistics.leap_high);
  g_autofree char *low = height (t, statistics.leap_low);

  if (!lb_is_set (statistics.leap_high))
    add (t,
         _ ("No line out was found that holds the weight just where it should be: it leaps past "
            "that height. Here it is %s above the bed, with %s of line out."),
         at, out);
  else if (statistics.leap_low <= 0)
    add (t,
         _ ("No line out was found that holds the weight just where it should be: it leaps from %s "
            "above the bed onto the bed. Here it is %s above the bed, with %s of line out."),
         high, at, out);
  else
    add (t,
         _ ("No line out was found that holds the weight just where it should be: it leaps between "
            "%s and %s above the bed. Here it is %s above the bed, with %s of line out."),
         high, low, at, out);
}

static void
tell_line_limit (Teller *t, const LbResult *result)
{
  LbStatus status = lb_result_get_status (result);
  g_autofree char *out = length (t, t->readings->line_out);
  g_autofree char *at = height (t, t->readings->weight.height);

  if (status == LB_STATUS_LINE_AT_LONGEST)
    add (t,
         _ ("The weight cannot get down to where it should be: with %s of line out, the most that "
            "is tried, it hangs %s above the bed."),
         out, at);
  else if (status == LB_STATUS_LINE_AT_SHORTEST && t->readings->weight.on_bed)
    add (t, _ ("The weight cannot be held as high as asked: with the line all in it is still on "
               "the bed."));
  else if (status == LB_STATUS_LINE_AT_SHORTEST)
    add (t,
         _ ("The weight cannot be held as high as asked: with the line all in it hangs %s above "
            "the bed."),
         at);
  else if (status == LB_STATUS_HELD_BY_FRICTION)
    add (t,
         _ ("The boat is at rest over the ground: friction on the bed holds the rig, and is taken "
            "at its most."));
  else if (status == LB_STATUS_HEIGHT_LEAPS)
    tell_leap (t, lb_result_get_statistics (result), at, out);
}

/* Held at the bed itself, and that was possible: the bed carries next to nothing. */
static bool
just_touches (const LbLineOut *line_out, LbStatus status)
{
  return (line_out->mode == LB_LINE_OUT_TOUCHING
          || (line_out->mode == LB_LINE_OUT_WEIGHT_ABOVE_BED && line_out->value == 0))
         && (status == LB_STATUS_OK || status == LB_STATUS_HELD_BY_FRICTION);
}

static void
tell_weight (Teller *t, LbStatus status)
{
  if (!t->readings->weight.on_bed)
    return;
  if (just_touches (&t->setup->rig.line_out, status))
    add (t, _ ("The weight just touches the bed."));
  else if (t->setup->boat.speed_over_ground > 0)
    add (t, _ ("The weight drags on the bed."));
  else if (status == LB_STATUS_HELD_BY_FRICTION)
    add (t, _ ("The weight lies on the bed."));
  else
    /* How much friction there is at rest cannot be told: it is taken as none. */
    add (t,
         _ ("The weight lies on the bed, the boat at rest over the ground: friction is left out."));
}

/* Lines that lie on the bed though what hangs on them does not. */
static void
tell_lines_on_bed (Teller *t)
{
  const LbReadings *r = t->readings;

  if (r->touches[LB_PART_MAINLINE])
    add (t, _ ("Some of the mainline lies on the bed."));
  if (r->touches[LB_PART_SHANK] && !r->weight.on_bed)
    add (t, _ ("Some of the shank lies on the bed."));
  for (size_t i = 0; i < r->n_leaders; i++)
    if (r->touches[LB_PART_LEADER_0 + i] && !r->lures[i].at.on_bed)
      {
        g_autofree char *name = lb_words_leader (t->setup, i);
        add (t, _ ("Some of the %s lies on the bed."), name);
      }
}

/* ---- Lures ---- */

static bool
all_alike (const LbReadings *r)
{
  for (size_t i = 1; i < r->n_leaders; i++)
    if (r->lures[i].band != r->lures[0].band)
      return false;
  return true;
}

/* Nothing drags while the boat is at rest over the ground. */
static const char *
all_on_bed (const Teller *t)
{
  bool two = t->readings->n_leaders == 2;

  if (t->setup->boat.speed_over_ground == 0)
    return two ? _ ("Both lures lie on the bed") : _ ("All lures lie on the bed");
  return two ? _ ("Both lures drag on the bed") : _ ("All lures drag on the bed");
}

static const char *
alike_start (const Teller *t, LbBandState band)
{
  size_t n = t->readings->n_leaders;

  switch (band)
    {
    case LB_BAND_INSIDE:
      return n == 2 ? _ ("Both lures run in the band") : _ ("All lures run in the band");
    case LB_BAND_ABOVE:
      return n == 2 ? _ ("Both lures run above the band") : _ ("All lures run above the band");
    case LB_BAND_BELOW:
      return n == 2 ? _ ("Both lures run below the band") : _ ("All lures run below the band");
    default:
      return all_on_bed (t);
    }
}

static char *
lure_alone (const Teller *t, size_t lure)
{
  const LbLureReading *reading = &t->readings->lures[lure];
  g_autofree char *name = lb_words_lure (t->setup, lure);
  g_autofree char *at = height (t, reading->at.height);

  switch (reading->band)
    {
    case LB_BAND_INSIDE:
      return g_strdup_printf (_ ("The %s runs in the band, %s off the bed"), name, at);
    case LB_BAND_ABOVE:
      return g_strdup_printf (_ ("The %s runs above the band, %s off the bed"), name, at);
    case LB_BAND_BELOW:
      return g_strdup_printf (_ ("The %s runs below the band, %s off the bed"), name, at);
    default:
      return g_strdup_printf (t->setup->boat.speed_over_ground == 0 ? _ ("The %s lies on the bed")
                                                                    : _ ("The %s drags on the bed"),
                              name);
    }
}

/* "level", "level within 2 in", or "15 in apart in height". */
static char *
levels (const Teller *t)
{
  g_autofree char *difference = height (t, t->readings->level_difference);

  if (t->readings->level_difference < LEVEL_BELOW)
    return g_strdup (_ ("level"));
  if (t->readings->level_difference <= t->wording->level_within)
    return g_strdup_printf (_ ("level within %s"), difference);
  return g_strdup_printf (_ ("%s apart in height"), difference);
}

/* "the upper lure 9 ft behind the lower lure", or "9 ft from the first to the last". */
static char *
spacing (const Teller *t)
{
  const LbReadings *r = t->readings;
  g_autofree char *distance = length (t, r->spacing);
  size_t rear = r->lures[1].at.layback >= r->lures[0].at.layback ? 1 : 0;
  g_autofree char *rear_name = NULL;
  g_autofree char *front_name = NULL;

  if (r->n_leaders > 2)
    return g_strdup_printf (_ ("%s from the foremost to the rearmost"), distance);
  rear_name = lb_words_lure (t->setup, rear);
  front_name = lb_words_lure (t->setup, 1 - rear);
  return g_strdup_printf (_ ("the %s %s behind the %s"), rear_name, distance, front_name);
}

static void
tell_lures (Teller *t)
{
  size_t n = t->readings->n_leaders;
  g_autofree char *level = NULL;
  g_autofree char *apart = NULL;

  if (n == 0)
    {
      add (t, _ ("No leader is attached."));
      return;
    }
  if (n == 1 || !all_alike (t->readings))
    {
      for (size_t i = 0; i < n; i++)
        {
          g_autofree char *alone = lure_alone (t, i);
          add (t, "%s.", alone);
        }
      if (n == 1)
        return;
    }
  level = levels (t);
  apart = spacing (t);
  if (all_alike (t->readings) && t->readings->lures[0].band == LB_BAND_ON_BED)
    /* Translators: "Both lures drag on the bed, the upper lure 9 ft behind the lower lure." */
    add (t, _ ("%s, %s."), alike_start (t, LB_BAND_ON_BED), apart);
  else if (all_alike (t->readings))
    /* Translators: "Both lures run in the band, level within 2 in, the upper lure 9 ft behind the
     * lower lure." */
    add (t, _ ("%s, %s, %s."), alike_start (t, t->readings->lures[0].band), level, apart);
  else
    /* Translators: "They run level within 2 in, the upper lure 9 ft behind the lower lure." */
    add (t, _ ("They are %s, %s."), level, apart);
}

/* ---- All of it ---- */

static const char *
failure (LbStatus status)
{
  switch (status)
    {
    case LB_STATUS_BAD_SETUP:
      return _ ("This rig cannot be computed: a value is one that no rig or river can have.");
    case LB_STATUS_OUT_OF_MEMORY:
      return _ ("There was not enough memory to compute this rig.");
    default:
      return _ ("No answer was found for this rig: the computation did not settle.");
    }
}

char *
lb_sentence_of_result (const LbResult *result, const LbWording *wording)
{
  Teller t = { lb_result_get_setup (result), lb_result_get_readings (result), wording, NULL };
  g_autofree char *hand = NULL;

  if (lb_result_get_failed (result))
    return g_strdup (failure (lb_result_get_status (result)));

  t.text = g_string_new (NULL);
  tell_line_limit (&t, result);
  tell_lures (&t);
  tell_weight (&t, lb_result_get_status (result));
  tell_lines_on_bed (&t);
  hand = lb_words_quantity (LB_QUANTITY_FORCE, wording->units, t.readings->hand_tension,
                            wording->decimals);
  add (&t, _ ("%s in the hand."), hand);
  return g_string_free (t.text, FALSE);
}

char *
lb_sentence_of_remark (const LbResult *result, const LbWording *wording)
{
  Teller t = { lb_result_get_setup (result), lb_result_get_readings (result), wording, NULL };

  if (lb_result_get_failed (result))
    return g_strdup (failure (lb_result_get_status (result)));
  t.text = g_string_new (NULL);
  tell_line_limit (&t, result);
  return g_string_free (t.text, t.text->len == 0);
}
