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
  const char *rig; /* stands before its titles: which of two it is */
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

/* Takes `title` over. */
static void
end_section (Teller *t, char *title)
{
  lb_readings_builder_end (&t->table, g_strconcat (t->rig, title, NULL));
  g_free (title);
}

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
  if (lb_pass_record_second (t->record))
    {
      add (t, _ ("First rig"), g_strdup (_ ("on the right")), NULL);
      add (t, _ ("Second rig"), g_strdup (_ ("on the left")), NULL);
    }
  lb_readings_builder_end (&t->table, g_strdup (_ ("Pass")));
}

static void
add_line (Teller *t)
{
  const LbPassSummary *s = t->summary;

  lb_readings_builder_start (&t->table);
  add_extremes (t, _ ("Most in the hand"), _ ("Least in the hand"), LB_QUANTITY_FORCE,
                s->most_tension, s->least_tension);
  add_extremes (t, _ ("Flattest wire angle"), _ ("Steepest wire angle"), LB_QUANTITY_ANGLE,
                s->flattest, s->steepest);
  add_extremes (t, _ ("Most line out"), _ ("Least line out"), LB_QUANTITY_LENGTH, s->most_line,
                s->least_line);
  end_section (t, g_strdup (_ ("Line")));
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
  end_section (t, title);
}

static void
add_bodies (Teller *t, const LbContents *contents)
{
  g_autofree char *weight = word (t, LB_QUANTITY_MASS, t->setup->rig.weight.mass);

  add_body (t, LB_PASS_WEIGHT, g_strdup_printf (_ ("Weight: %s"), weight));
  for (size_t i = 0; i < t->setup->rig.n_leaders; i++)
    add_body (t, LB_PASS_LURE_0 + i,
              lb_readings_lure_title (t->setup, i, contents ? contents->lure_names[i] : ""));
}

/* As the drawings count: from where the boat starts, up the river. */
static void
add_touch (Teller *t, size_t number, const LbPassTouch *touch)
{
  double up = t->setup->boat.position - touch->x_from;
  g_autofree char *label = g_strdup_printf (_ ("Contact %zu"), number);
  g_autofree char *from = lb_pass_words_time (touch->from);
  g_autofree char *length = lb_pass_words_time (touch->to - touch->from);

  /* Translators: after a distance: two times ("41 s") */
  add (t, label, word (t, LB_QUANTITY_LENGTH, fabs (up)),
       g_strdup_printf (up < 0 ? _ ("down from the start, at %s for %s")
                               : _ ("up from the start, at %s for %s"),
                        from, length));
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
  end_section (t, g_strdup (_ ("The weight on the bed")));
}

/* All that is a rig's own. */
static void
add_rig (Teller *t, const LbContents *contents)
{
  add_line (t);
  add_bodies (t, contents);
  add_touches (t);
}

static void
add_second (Teller *t, const LbContents *contents, const LbPassSummary *summary)
{
  const LbPassRecord *record = lb_pass_record_second (t->record);
  Teller second = { record, summary, lb_pass_record_setup (record), t->wording, t->rig, t->table };

  /* Translators: before a title: "Line", "Weight: 2 lb", "Upper lure: floating minnow, 7 cm" */
  second.rig = _ ("Second rig: ");
  add_rig (&second, contents);
  t->table = second.table;
}

/* Lines of one rig. */
static void
add_closest (Teller *t, const char *label, const LbPassSummary *s)
{
  if (!lb_is_set (s->closest.distance))
    return;
  add (t, label, lb_pass_words_nearness (s->closest.distance, t->wording), when (s->closest_time));
  add (t, _ ("Nearest"), lb_readings_between (t->setup, &s->closest), NULL);
}

/* `second` is NULL when there is one rig alone. */
static void
add_lines_together (Teller *t, const LbPassSummary *second)
{
  const LbPassSummary *s = t->summary;
  double warning = lb_pass_record_script (t->record)->tangle_distance;
  g_autofree char *distance = height_word (t, warning);
  g_autofree char *label = g_strdup_printf (_ ("Within %s"), distance);

  if (!lb_is_set (s->closest.distance) && !lb_is_set (s->between.distance))
    return;
  lb_readings_builder_start (&t->table);
  add_closest (t, second ? _ ("First rig's lines come within") : _ ("Lines come within"), s);
  if (second)
    {
      add_closest (t, _ ("Second rig's lines come within"), second);
      add (t, _ ("Two rigs come within"), lb_pass_words_nearness (s->between.distance, t->wording),
           when (s->between_time));
    }
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
  const LbPassRecord *second = lb_pass_record_second (record);
  LbPassSummary of_second = { 0 };
  Teller t = { record, summary, lb_pass_record_setup (record), wording, "", { NULL } };

  lb_readings_builder_init (&t.table);
  add_course (&t);
  /* Translators: before a title: "Line", "Weight: 2 lb", "Upper lure: floating minnow, 7 cm" */
  t.rig = second ? _ ("First rig: ") : "";
  add_rig (&t, contents);
  if (second)
    {
      lb_pass_summary_continue (&of_second, second);
      add_second (&t, contents, &of_second);
    }
  add_lines_together (&t, second ? &of_second : NULL);
  return lb_readings_builder_finish (&t.table);
}
