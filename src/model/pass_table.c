/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of a recorded pass. */
#include "pass_words.h"

#include <glib/gi18n-lib.h>

#include "readings_build.h"
#include "words.h"

/* What the table is made of. */
typedef struct
{
  const LbPassRecord *record;
  const LbPassSummary *summary;
  const LbSetup *setup;
  const LbWording *wording;
  LbReadingsBuilder table;
} Teller;

static char *
word (const Teller *t, LbQuantity quantity, double value)
{
  return lb_words_quantity (quantity, t->wording->units, value, t->wording->decimals);
}

static char *
height_word (const Teller *t, double value)
{
  return lb_words_height (t->wording->units, value, t->wording->decimals);
}

static char *
share_word (const Teller *t, double time)
{
  return lb_pass_words_share (lb_pass_share (time, t->summary));
}

/* ---- Rows ---- */

/* "at 41 s" */
static char *
when (double time)
{
  g_autofree char *at = lb_pass_words_time (time);

  return g_strdup_printf (_ ("at %s"), at);
}

static void
add (Teller *t, const char *label, char *value, char *note)
{
  lb_readings_builder_add (&t->table, label, value, note);
}

/* The most and the least of a value, which only differ when their words do: of a value that hardly
 * moves no one asks when it was where. */
static void
add_most_and_least (Teller *t,
                    const char *const labels[2],
                    char *most,
                    char *least,
                    const LbPassExtreme extremes[2])
{
  bool moves = !g_str_equal (most, least);

  add (t, labels[0], most, moves ? when (extremes[0].time) : NULL);
  add (t, labels[1], least, moves ? when (extremes[1].time) : NULL);
}

static void
add_extremes (Teller *t,
              const char *most_label,
              const char *least_label,
              LbQuantity quantity,
              LbPassExtreme most,
              LbPassExtreme least)
{
  add_most_and_least (t, (const char *const[]){ most_label, least_label },
                      word (t, quantity, most.value), word (t, quantity, least.value),
                      (const LbPassExtreme[]){ most, least });
}

/* The way of the boat over the ground, m. */
static double
way (const LbPassRecord *record)
{
  double sum = 0;

  for (size_t i = 1; i < lb_pass_record_count (record); i++)
    sum += lb_vec3_norm (lb_vec3_sub (lb_pass_record_sample (record, i)->boat,
                                      lb_pass_record_sample (record, i - 1)->boat));
  return sum;
}

/* "of 120 s", while it is not all recorded. */
static char *
of_the_whole (const LbPassRecord *record)
{
  g_autofree char *whole = lb_pass_words_time (lb_pass_record_duration (record));

  return lb_pass_record_is_complete (record) ? NULL : g_strdup_printf (_ ("of %s"), whole);
}

static void
add_course (Teller *t)
{
  lb_readings_builder_start (&t->table);
  add (t, _ ("Time"), lb_pass_words_time (t->summary->time), of_the_whole (t->record));
  add (t, _ ("Way over the ground"), word (t, LB_QUANTITY_LENGTH, way (t->record)), NULL);
  lb_readings_builder_end (&t->table, g_strdup (_ ("Pass")));
}

static void
add_line (Teller *t, const char *title)
{
  const LbPassSummary *s = t->summary;

  lb_readings_builder_start (&t->table);
  add_extremes (t, _ ("Most in the hand"), _ ("Least in the hand"), LB_QUANTITY_FORCE,
                s->most_tension, s->least_tension);
  add_extremes (t, _ ("Flattest wire angle"), _ ("Steepest wire angle"), LB_QUANTITY_ANGLE,
                s->flattest, s->steepest);
  add_extremes (t, _ ("Most line out"), _ ("Least line out"), LB_QUANTITY_LENGTH, s->most_line,
                s->least_line);
  lb_readings_builder_end (&t->table, g_strdup (title));
}

/* Takes `title` over. */
static void
add_body (Teller *t, size_t body, char *title)
{
  const LbPassTimes *times = &t->summary->bodies[body];
  const LbPassExtreme extremes[] = { t->summary->highest[body], t->summary->lowest[body] };
  const char *const heights[] = { _ ("Highest off the bed"), _ ("Lowest off the bed") };

  lb_readings_builder_start (&t->table);
  add (t, _ ("In the band"), share_word (t, times->in_band), g_strdup (_ ("of the time")));
  add (t, _ ("Above the band"), share_word (t, times->above), NULL);
  add (t, _ ("Below the band"), share_word (t, times->below), NULL);
  add (t, _ ("On the bed"), share_word (t, times->on_bed), NULL);
  add_most_and_least (t, heights, height_word (t, extremes[0].value),
                      height_word (t, extremes[1].value), extremes);
  lb_readings_builder_end (&t->table, title);
}

/* `before` stands before the name of each. */
static void
add_bodies (Teller *t, const LbContents *contents, const char *before)
{
  g_autofree char *weight = word (t, LB_QUANTITY_MASS, t->setup->rig.weight.mass);
  g_autofree char *name = g_strdup_printf (_ ("Weight: %s"), weight);

  add_body (t, LB_PASS_WEIGHT, g_strconcat (before, name, NULL));
  for (size_t i = 0; i < t->setup->rig.n_leaders; i++)
    {
      g_autofree char *lure =
          lb_readings_lure_title (t->setup, i, contents ? contents->lure_names[i] : "");

      add_body (t, LB_PASS_LURE_0 + i, g_strconcat (before, lure, NULL));
    }
}

/* The second rig's own pulls and shares, if there is one. */
static void
add_second (Teller *t, const LbContents *contents)
{
  const LbPassRecord *record = lb_pass_record_second (t->record);
  LbPassSummary summary = { 0 };

  if (record == NULL)
    return;
  lb_pass_summary_continue (&summary, record);
  Teller second = { record, &summary, lb_pass_record_setup (record), t->wording, t->table };
  add_line (&second, _ ("Second rig, on the left: line"));
  /* Translators: before "Weight: 2 lb", "Upper lure: floating minnow, 7 cm" */
  add_bodies (&second, contents, _ ("Second rig: "));
  t->table = second.table;
}

static void
add_touch (Teller *t, size_t number, const LbPassTouch *touch)
{
  g_autofree char *label = g_strdup_printf (_ ("Contact %zu"), number);
  g_autofree char *from = lb_pass_words_time (touch->from);
  g_autofree char *length = lb_pass_words_time (touch->to - touch->from);

  add (t, label, word (t, LB_QUANTITY_LENGTH, touch->x_from),
       g_strdup_printf (_ ("along the reach, at %s for %s"), from, length));
}

static void
add_touches (Teller *t)
{
  LbPassTouch touches[LB_PASS_WORDS_MOST_TOUCHES];
  size_t n = lb_pass_record_touches (t->record, LB_PASS_WEIGHT, touches, G_N_ELEMENTS (touches));

  if (n == 0)
    return;
  lb_readings_builder_start (&t->table);
  add (t, _ ("Contacts"), g_strdup_printf ("%zu", n), NULL);
  for (size_t i = 0; i < MIN (n, G_N_ELEMENTS (touches)); i++)
    add_touch (t, i + 1, &touches[i]);
  lb_readings_builder_end (&t->table, g_strdup (_ ("The weight on the bed")));
}

static void
add_lines_together (Teller *t)
{
  const LbPassSummary *s = t->summary;
  double warning = lb_pass_record_script (t->record)->tangle_distance;
  g_autofree char *distance = height_word (t, warning);
  g_autofree char *label = g_strdup_printf (_ ("Within %s"), distance);

  if (!lb_is_set (s->closest.distance) && !lb_is_set (s->between.distance))
    return;
  lb_readings_builder_start (&t->table);
  if (lb_is_set (s->closest.distance))
    {
      add (t, _ ("Lines come within"), word (t, LB_QUANTITY_LENGTH, s->closest.distance),
           when (s->closest_time));
      add (t, _ ("Nearest"), lb_readings_between (t->setup, &s->closest), NULL);
    }
  if (lb_is_set (s->between.distance))
    add (t, _ ("Two rigs come within"), word (t, LB_QUANTITY_LENGTH, s->between.distance),
         when (s->between_time));
  add (t, label, share_word (t, s->tangle_time),
       g_strdup (s->tangle_time > 0 ? _ ("of the time: may tangle") : _ ("of the time")));
  lb_readings_builder_end (&t->table, g_strdup (_ ("Lines together")));
}

LbReadingsTable *
lb_pass_words_table (const LbPassRecord *record,
                     const LbPassSummary *summary,
                     const LbContents *contents,
                     const LbWording *wording)
{
  Teller t = { record, summary, lb_pass_record_setup (record), wording, { NULL } };

  lb_readings_builder_init (&t.table);
  add_course (&t);
  add_line (&t, _ ("Line"));
  add_bodies (&t, contents, "");
  add_second (&t, contents);
  add_touches (&t);
  add_lines_together (&t);
  return lb_readings_builder_finish (&t.table);
}
