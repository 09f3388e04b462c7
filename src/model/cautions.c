/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "caution_pieces.h"
#include "rules.h"
#include "words.h"

/* Pulls from which a caution is due, N. The first is an estimate: bare wire cuts long before the
 * hand is too weak. The others are the car industry's sustained and initial limit of pulling with
 * two hands (24 and 44 lbf; see hang_up.h). */
#define BARE_WIRE_PULL 30
#define SUSTAINED_PULL 107
#define INITIAL_PULL LB_HAND_LIMIT

/* What generic floating minnows have by length, half the least to twice the most: drag area by the
 * square and buoyancy by the cube of the length, and the most that a lip can press down for its
 * drag. Estimates, as the catalogue's. */
#define LEAST_DRAG_AREA 0.006 /* m2/m2 */
#define MOST_DRAG_AREA 0.12   /* m2/m2 */
#define MOST_BUOYANCY 128     /* N/m3 */
#define MOST_DOWN_FORCE 1.2   /* of the drag */

#define COLD_WATER 15 /* C; common practice */
#define LEAST_SPARE 2 /* breaking load / pull; an estimate */

void
lb_caution_free (void *data)
{
  LbCaution *caution = data;

  g_free (caution->text);
  g_free (caution);
}

void
lb_caution_add (GPtrArray *list, LbCautionKind kind, char *text)
{
  LbCaution *caution = g_new (LbCaution, 1);

  *caution = (LbCaution){ kind, text };
  g_ptr_array_add (list, caution);
}

/* ---- What this rig and river call for ---- */

void
lb_caution_add_pull (GPtrArray *list, double pull, const char *when, const LbWording *wording)
{
  g_autofree char *force =
      lb_words_quantity (LB_QUANTITY_FORCE, wording->units, pull, wording->decimals);
  /* Translators: "12 lbf", "at 41 s" */
  g_autofree char *shown =
      when ? g_strdup_printf (_ ("%s (reached %s)"), force, when) : g_strdup (force);

  if (pull > INITIAL_PULL)
    lb_caution_add (
        list, LB_CAUTION_NOW,
        g_strdup_printf (
            _ ("%s is more than most people can hold even for a moment: do not hold this "
               "line by hand."),
            shown));
  else if (pull > SUSTAINED_PULL)
    lb_caution_add (list, LB_CAUTION_NOW,
                    g_strdup_printf (_ ("%s is more than most people can hold for long."), shown));
  else if (pull > BARE_WIRE_PULL)
    lb_caution_add (
        list, LB_CAUTION_NOW,
        g_strdup_printf (_ ("Thin bare wire can cut at %s: wear gloves and hold a handle, not the "
                            "wire."),
                         shown));
}

void
lb_caution_add_strength (GPtrArray *list, const LbSetup *setup, LbWeakest weakest, const char *when)
{
  g_autofree char *line = NULL;
  g_autofree char *text = NULL;

  if (!(weakest.spare < LEAST_SPARE))
    return;
  line = lb_words_part (setup, weakest.part);
  if (weakest.spare <= 1)
    /* Translators: "mainline", "shank", "lower leader" */
    text = g_strdup_printf (_ ("The %s is pulled harder than it can bear: it would part, and a "
                               "line that parts under load whips back."),
                            line);
  else
    text = g_strdup_printf (_ ("The %s carries more than half of what it breaks at. A line that "
                               "parts under load whips back."),
                            line);
  /* Translators: one of the cautions, then when ("at 41 s") */
  lb_caution_add (list, LB_CAUTION_NOW,
                  when ? g_strdup_printf (_ ("%s It comes to that %s."), text, when)
                       : g_steal_pointer (&text));
}

static void
add_bed (GPtrArray *list, const LbReadings *readings)
{
  bool touches = readings->weight.on_bed;

  for (size_t i = 0; i < readings->n_leaders + LB_PART_LEADER_0; i++)
    touches = touches || readings->touches[i];
  if (touches)
    lb_caution_add (
        list, LB_CAUTION_NOW,
        g_strdup (_ ("Part of the rig is on the bed, where it can hang up at any moment.")));
}

static void
add_snag (GPtrArray *list, const LbResult *result, const LbWording *wording)
{
  LbHangUp going = lb_hang_up (result, 0, false), stopped = lb_hang_up (result, 0, true);

  lb_caution_add_hang_up (list, &going, &stopped, _ ("now"), wording);
}

char *
lb_caution_cold_water (double temperature, const LbWording *wording)
{
  g_autofree char *shown = NULL;

  if (temperature >= COLD_WATER)
    return NULL;
  shown =
      lb_words_quantity (LB_QUANTITY_TEMPERATURE, wording->units, temperature, wording->decimals);
  return g_strdup_printf (
      _ ("The water is cold (%s). Whoever falls in gasps for about a minute and has "
         "some ten minutes of useful movement: dress for the water, and know how "
         "you would get back aboard."),
      shown);
}

static void
add_cold (GPtrArray *list, double temperature, const LbWording *wording)
{
  char *text = lb_caution_cold_water (temperature, wording);

  if (text)
    lb_caution_add (list, LB_CAUTION_NOW, text);
}

static bool
lure_is_odd (const LbLure *lure)
{
  double square = lure->length * lure->length;

  return lure->drag_area < LEAST_DRAG_AREA * square || lure->drag_area > MOST_DRAG_AREA * square
         || fabs (lure->buoyancy) > MOST_BUOYANCY * square * lure->length
         || lure->down_force_ratio > MOST_DOWN_FORCE;
}

static void
add_odd_lures (GPtrArray *list, const LbSetup *setup)
{
  for (size_t i = 0; i < setup->rig.n_leaders; i++)
    if (lure_is_odd (&setup->rig.leaders[i].lure))
      {
        g_autofree char *name = lb_words_lure (setup, i);
        lb_caution_add (
            list, LB_CAUTION_NOW,
            g_strdup_printf (
                _ ("The values of the %s are far from what a floating minnow of its length "
                   "has by estimate: look at its drag area, dive and buoyancy."),
                name));
      }
}

static void
add_rules (GPtrArray *list, const LbSetup *setup)
{
  g_autofree char *excess = lb_rules_dup_excess (setup);

  if (excess)
    lb_caution_add (list, LB_CAUTION_NOW, g_strconcat (excess, " ", lb_rules_note (), NULL));
}

/* ---- What is always so ---- */

static const char *const advice[] = {
  N_ ("Never wrap the wire or a leader round a hand or finger."),
  N_ ("Wear gloves, and keep a cutter that goes through the wire within reach."),
  N_ ("A weight that hangs up under way loads the line within seconds: let go, or cut."),
  N_ ("Wear a life jacket."),
  N_ ("Mind the hooks when a rig comes aboard, and who stands behind you."),
  N_ ("Local rules limit lines, lures and hooks, and where and when they may be used: they come "
      "first, and so does the word of a licensed guide."),
  N_ ("These are computed estimates; the river may differ."),
};

void
lb_caution_add_rest (GPtrArray *list, const LbSetup *setup, const LbWording *wording)
{
  add_cold (list, setup->river.temperature, wording);
  add_odd_lures (list, setup);
  add_rules (list, setup);
  for (size_t i = 0; i < G_N_ELEMENTS (advice); i++)
    lb_caution_add (list, LB_CAUTION_ADVICE, g_strdup (_ (advice[i])));
}

GPtrArray *
lb_cautions_new (const LbSetup *setup, const LbResult *result, const LbWording *wording)
{
  GPtrArray *list = g_ptr_array_new_with_free_func (lb_caution_free);
  const LbReadings *readings = result ? lb_result_get_readings (result) : NULL;

  if (readings)
    {
      lb_caution_add_pull (list, readings->hand_tension, NULL, wording);
      lb_caution_add_strength (list, setup, lb_readings_weakest (readings), NULL);
      add_bed (list, readings);
      add_snag (list, result, wording);
    }
  lb_caution_add_rest (list, setup, wording);
  return list;
}
