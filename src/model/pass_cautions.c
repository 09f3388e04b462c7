/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cautions for all of a pass: each with its worst moment. */
#include <glib/gi18n-lib.h>

#include "caution_pieces.h"
#include "pass_words.h"

/* s, between moments at which the weight is thought to hang up. */
#define LOOK_EVERY 0.5

/* A snag is only worse than an earlier one when something gives in sooner by this much: of a pass
 * that hardly changes the start is told. */
#define SOONER 1.05

/* A value at its worst, and the record that has it there. */
typedef struct
{
  double value;
  double time; /* s */
  const LbPassRecord *record;
} Worst;

/* The worst of a pass. */
typedef struct
{
  Worst pull;  /* N, in the hand */
  Worst spare; /* breaking load / pull, of any line */
  int weakest; /* LbPart that it is of */
  Worst touch; /* its time is the first */
  Worst snag;  /* s until something gives in, the weight hung up */
  Worst drift; /* the same with the motor stopped */
} Extremes;

/* ---- Looking through a record ---- */

static void
note (Worst *worst, double value, double sign, double time, const LbPassRecord *record)
{
  if (sign * value > sign * worst->value)
    *worst = (Worst){ value, time, record };
}

/* Of all lines at a moment; of mainline and shank under the hardest pull since the sample before,
 * which both are believed to have felt alike. */
static LbWeakest
weakest_at (const LbPassSample *sample)
{
  LbReadings readings = sample->readings;
  double harder = fmax (sample->most_tension / readings.largest_tension, 1);

  readings.mainline_spare /= harder;
  readings.shank_spare /= harder;
  return lb_readings_weakest (&readings);
}

/* What comes after something would have parted is of no use. */
static void
note_weakest (Extremes *worst, const LbPassSample *sample, const LbPassRecord *record)
{
  LbWeakest weakest = weakest_at (sample);

  if (worst->spare.value <= 1 || !(weakest.spare < worst->spare.value))
    return;
  worst->spare = (Worst){ weakest.spare, sample->time, record };
  worst->weakest = weakest.part;
}

static bool
touches (const LbPassSample *sample)
{
  const LbReadings *readings = &sample->readings;
  bool any = sample->touched[LB_PASS_WEIGHT];

  for (size_t i = 0; i < readings->n_leaders; i++)
    any = any || sample->touched[LB_PASS_LURE_0 + i] || readings->touches[LB_PART_LEADER_0 + i];
  return any || readings->touches[LB_PART_MAINLINE] || readings->touches[LB_PART_SHANK];
}

static void
look_at_samples (Extremes *worst, const LbPassRecord *record)
{
  for (size_t i = 0; i < lb_pass_record_count (record); i++)
    {
      const LbPassSample *sample = lb_pass_record_sample (record, i);

      note (&worst->pull, sample->most_tension, 1, sample->time, record);
      note_weakest (worst, sample, record);
      if (touches (sample))
        note (&worst->touch, sample->time, -1, sample->time, record);
    }
}

/* ---- The weight hung up ---- */

/* As if the boat headed upstream: a snag goes with it. */
static void
turn (LbShape *shape, double heading)
{
  double c = cos (heading), s = sin (heading);

  for (size_t i = 0; i < shape->n_nodes; i++)
    {
      LbShapeNode *node = &shape->nodes[i];
      LbVec3 at = node->position, pull = node->pull_on_parent;

      node->position = lb_vec3 (at.x * c - at.y * s, at.x * s + at.y * c, at.z);
      node->pull_on_parent = lb_vec3 (pull.x * c - pull.y * s, pull.x * s + pull.y * c, pull.z);
    }
}

/* FALSE when memory is out. */
static bool
hang_up (
    const LbPassRecord *record, double time, LbShape *shape, LbHangUp *going, LbHangUp *stopped)
{
  LbSetup setup = lb_pass_record_setup_at (record, time);
  LbPassSample sample;

  if (!lb_pass_record_at (record, time, &sample)
      || lb_pass_record_shape_at (record, time, shape) != LB_STATUS_OK)
    return false;
  *stopped = lb_hang_up_at (&setup, shape, 0, true);
  setup.boat.speed_over_ground = sample.speed;
  turn (shape, sample.heading);
  *going = lb_hang_up_at (&setup, shape, 0, false);
  return true;
}

static void
note_snag (Worst *worst, const LbHangUp *held, double time, const LbPassRecord *record)
{
  double until = lb_hang_up_until (held);

  if (SOONER * until < worst->value)
    note (worst, until, -1, time, record);
}

static void
look_for_snags (Extremes *worst, const LbPassRecord *record, LbShape *shape)
{
  double end = lb_pass_record_end (record), time = 0;
  LbHangUp going, stopped;

  for (size_t k = 0; time <= end; time = (double) ++k * LOOK_EVERY)
    if (hang_up (record, time, shape, &going, &stopped))
      {
        note_snag (&worst->snag, &going, time, record);
        note_snag (&worst->drift, &stopped, time, record);
      }
}

/* ---- Words ---- */

static char *
when_words (const LbPassRecord *first, const Worst *worst)
{
  g_autofree char *time = lb_pass_words_time (worst->time);
  g_autofree char *at =
      worst->time > 0 ? g_strdup_printf (_ ("at %s"), time) : g_strdup (_ ("at the start"));

  if (worst->record == NULL || worst->record == first)
    return g_steal_pointer (&at);
  /* Translators: "at 41 s" */
  return g_strdup_printf (_ ("%s with the second rig"), at);
}

static void
add_bed (GPtrArray *list, const LbPassRecord *first, const Worst *touch)
{
  g_autofree char *when = NULL;

  if (touch->record == NULL)
    return;
  when = when_words (first, touch);
  /* Translators: "at 41 s" */
  lb_caution_add (
      list, LB_CAUTION_NOW,
      g_strdup_printf (_ ("Part of the rig touches the bed, first %s, where it can hang "
                          "up at any moment."),
                       when));
}

static void
add_snag (GPtrArray *list,
          const LbPassRecord *first,
          const Extremes *worst,
          LbShape *shape,
          const LbWording *wording)
{
  /* A boat that never makes way is only taken away by the current. */
  const Worst *snag = lb_hang_up_comes (worst->snag.value) ? &worst->snag : &worst->drift;
  LbHangUp going, stopped;
  g_autofree char *when = NULL;

  if (snag->record == NULL || !hang_up (snag->record, snag->time, shape, &going, &stopped))
    return;
  when = when_words (first, snag);
  lb_caution_add_hang_up (list, &going, &stopped, when, wording);
}

GPtrArray *
lb_pass_words_cautions (const LbPassRecord *record, const LbWording *wording)
{
  GPtrArray *list = g_ptr_array_new_with_free_func (lb_caution_free);
  const LbPassRecord *rigs[] = { record, lb_pass_record_second (record) };
  const Worst none = { INFINITY, 0, NULL };
  Extremes worst = {
    .pull = { -INFINITY, 0, NULL }, .spare = none, .touch = none, .snag = none, .drift = none
  };
  g_autofree char *hardest = NULL;
  g_autofree char *weakest = NULL;
  LbShape shape;

  lb_shape_init (&shape);
  for (size_t i = 0; i < G_N_ELEMENTS (rigs) && rigs[i]; i++)
    {
      look_at_samples (&worst, rigs[i]);
      look_for_snags (&worst, rigs[i], &shape);
    }
  hardest = when_words (record, &worst.pull);
  weakest = when_words (record, &worst.spare);
  lb_caution_add_pull (list, worst.pull.value, hardest, wording);
  lb_caution_add_strength (list, lb_pass_record_setup (record),
                           (LbWeakest){ worst.spare.value, worst.weakest }, weakest);
  add_bed (list, record, &worst.touch);
  add_snag (list, record, &worst, &shape, wording);
  lb_caution_add_rest (list, lb_pass_record_setup (record), wording);
  lb_shape_clear (&shape);
  return list;
}
