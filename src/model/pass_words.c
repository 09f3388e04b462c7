/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_words.h"

#include <glib/gi18n-lib.h>

#include "readings_build.h"
#include "words.h"

/* What the words are made of. */
typedef struct
{
  const LbPassRecord *record;
  const LbPassSummary *summary;
  const LbSetup *setup;
  const LbWording *wording;
} Teller;

/* ---- Why there is none ---- */

const char *
lb_pass_words_fault (const char *what)
{
  static const struct
  {
    const char *what, *words;
  } known[] = {
    { LB_PASS_ENDLESS_LEG, N_ ("A leg of the course is never over, as the boat does not move.") },
    { LB_PASS_TOO_LONG, N_ ("The pass takes more than an hour.") },
    { "change of boat speed of the course",
      N_ ("The boat would change its speed too quickly: a leg is too short for it.") },
    { "turn of the course", N_ ("The boat would turn too quickly: a leg is too short for it.") },
    { "change of line rate of the course",
      N_ ("Line would be let out too suddenly: a leg is too short for it.") },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (known); i++)
    if (g_str_equal (known[i].what, what))
      return _ (known[i].words);
  return what;
}

/* ---- Numbers ---- */

static char *
word (const Teller *t, LbQuantity quantity, double value)
{
  return lb_words_quantity (quantity, t->wording->units, value, t->wording->decimals);
}

char *
lb_pass_words_time (double time)
{
  return lb_words_quantity (LB_QUANTITY_TIME, LB_UNITS_METRIC, time, time < 10 ? 1 : 0);
}

char *
lb_pass_words_share (double share)
{
  double percent = 100 * share;

  /* A sum of many times is all of it but for rounding. */
  if (percent > 100 - 1e-6)
    percent = 100;
  if (percent > 0 && percent < 0.5)
    return g_strdup (_ ("< 1 %"));
  if (percent < 100 && percent > 99.5)
    return g_strdup (_ ("> 99 %"));
  return g_strdup_printf (_ ("%.0f %%"), percent);
}

/* Below this, m, lines are told in inches or centimetres. */
#define NEAR 0.3048

char *
lb_pass_words_nearness (double distance, const LbWording *wording)
{
  return lb_words_quantity (distance < NEAR ? LB_QUANTITY_HEIGHT : LB_QUANTITY_LENGTH,
                            wording->units, distance, wording->decimals);
}

static char *
share_word (const Teller *t, double time)
{
  return lb_pass_words_share (lb_pass_share (time, t->summary));
}

/* ---- Sentences ---- */

static void tell (GString *text, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* One more sentence. */
static void
tell (GString *text, const char *format, ...)
{
  va_list arguments;

  if (text->len > 0)
    g_string_append_c (text, ' ');
  va_start (arguments, format);
  g_string_append_vprintf (text, format, arguments);
  va_end (arguments);
}

/* "The upper lure 82 %, the lower lure 64 %", for the sentence about the band. */
static void
tell_lures (Teller *t, GString *text)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (size_t i = 0; i < t->setup->rig.n_leaders; i++)
    {
      g_autofree char *lure = lb_words_lure (t->setup, i);
      g_autofree char *share = share_word (t, t->summary->bodies[LB_PASS_LURE_0 + i].in_band);

      /* Translators: "upper lure 82 %", in a list */
      g_string_append_printf (list, _ ("%s%s %s"), i > 0 ? ", " : "", lure, share);
    }
  if (list->len > 0)
    tell (text, _ ("Of the time in the band: %s."), list->str);
}

static void
tell_touches (Teller *t, GString *text)
{
  LbPassTouch first;
  size_t n = lb_pass_record_touches (t->record, LB_PASS_WEIGHT, &first, 1);
  g_autofree char *share = share_word (t, t->summary->bodies[LB_PASS_WEIGHT].on_bed);
  g_autofree char *from = NULL;

  if (n == 0)
    {
      tell (text, "%s", _ ("The weight never touches the bed."));
      return;
    }
  from = lb_pass_words_time (first.from);
  if (n == 1)
    {
      /* Translators: a time ("41 s"), a share ("3 %") */
      tell (text, _ ("The weight touches the bed once, at %s, and lies on it for %s of the time."),
            from, share);
      return;
    }
  /* Translators: a number, a time ("41 s"), a share ("3 %") */
  tell (text,
        g_dngettext (GETTEXT_PACKAGE,
                     "The weight touches the bed %zu time, first at %s, and lies on it for %s of "
                     "the time.",
                     "The weight touches the bed %zu times, first at %s, and lies on it for %s of "
                     "the time.",
                     n),
        n, from, share);
}

static void
tell_near_lines (Teller *t, GString *text)
{
  const LbPassSummary *s = t->summary;
  g_autofree char *lines = lb_readings_between (t->setup, &s->closest);
  g_autofree char *distance = lb_pass_words_nearness (s->closest.distance, t->wording);
  g_autofree char *time = lb_pass_words_time (s->closest_time);

  if (lines && s->closest.distance < lb_pass_record_script (t->record)->tangle_distance)
    /* Translators: "upper leader and mainline", "4 in", "41 s" */
    tell (text, _ ("Lines may tangle: %s come within %s of each other at %s."), lines, distance,
          time);
}

static void
tell_near_rigs (Teller *t, GString *text)
{
  const LbPassSummary *s = t->summary;
  g_autofree char *distance = lb_pass_words_nearness (s->between.distance, t->wording);
  g_autofree char *time = lb_pass_words_time (s->between_time);

  if (s->between.distance < lb_pass_record_script (t->record)->tangle_distance)
    /* Translators: "4 in", "41 s" */
    tell (text, _ ("Lines may tangle: the two rigs come within %s of each other at %s."), distance,
          time);
}

/* All that is a rig's own. */
static void
tell_rig (Teller *t, GString *text)
{
  g_autofree char *pull = word (t, LB_QUANTITY_FORCE, t->summary->most_tension.value);

  tell_lures (t, text);
  tell_touches (t, text);
  tell (text, _ ("At most %s in the hand."), pull);
  tell_near_lines (t, text);
}

char *
lb_pass_words_sentence (const LbPassRecord *record,
                        const LbPassSummary *summary,
                        const LbWording *wording)
{
  const LbPassRecord *other = lb_pass_record_second (record);
  Teller t = { record, summary, lb_pass_record_setup (record), wording };
  LbPassSummary of_second = { 0 };
  GString *text = g_string_new (NULL);

  if (other)
    tell (text, "%s", _ ("First rig:"));
  tell_rig (&t, text);
  if (other)
    {
      Teller second = { other, &of_second, lb_pass_record_setup (other), wording };

      lb_pass_summary_continue (&of_second, other);
      tell (text, "%s", _ ("Second rig:"));
      tell_rig (&second, text);
      tell_near_rigs (&t, text);
    }
  return g_string_free (text, FALSE);
}
