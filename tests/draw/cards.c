/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cards.h"

#include <string.h>

#define ALLOWANCE 0.1016 /* m */

const CardWords card_plain_words = {
  .title = "Stony Bend, April",
  .lure = "floating minnow, 7 cm, medium lip",
  .hardware = "barrel swivel, size 8",
  .notes = "Twenty feet of cold spring water on a steady run.\nStart above the bend.",
};

static char *
quantity (LbQuantity kind, LbUnits units, double value)
{
  char text[80];

  lb_units_format (kind, units, value, -1, '.', text, sizeof text);
  return g_strdup (text);
}

static LbCardLine
line_of (const LbLine *line, const char *name, double length, bool is_cut, LbUnits units)
{
  g_autofree char *diameter = quantity (LB_QUANTITY_DIAMETER, units, line->diameter);
  LbCardLine out = { .name = g_strdup (name), .length = length };

  out.material =
      g_strdup_printf ("%s, %s", line->density > 4000 ? "steel wire" : "nylon", diameter);
  out.strength = g_strdup ("");
  if (lb_is_set (line->breaking_load))
    {
      g_autofree char *load = quantity (LB_QUANTITY_FORCE, units, line->breaking_load);

      g_free (out.strength);
      out.strength = g_strdup_printf ("breaks at ≈ %s without knots", load);
    }
  out.length_words = quantity (LB_QUANTITY_LENGTH, units, length);
  out.cut_length = is_cut ? length + 2 * ALLOWANCE : LB_UNSET;
  out.cut_words = is_cut ? quantity (LB_QUANTITY_LENGTH, units, out.cut_length) : g_strdup ("");
  return out;
}

static void
add_fact (LbCardFacts *facts, const char *label, char *value, const char *note, LbCardRank rank)
{
  facts->facts = g_renew (LbCardFact, facts->facts, facts->n + 1);
  facts->facts[facts->n++] = (LbCardFact){ g_strdup (label), value, g_strdup (note), false, rank };
}

static int
compare_leaders (const void *a, const void *b)
{
  const LbCardLeader *p = a, *q = b;

  return (p->attachment > q->attachment) - (p->attachment < q->attachment);
}

static void
fill_leaders (LbCardContents *c, const CardWords *words)
{
  const LbRig *rig = &c->setup.rig;

  c->rig.n_leaders = rig->n_leaders;
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      const LbLeader *leader = &rig->leaders[i];
      LbCardLeader *out = &c->rig.leaders[i];
      g_autofree char *name = g_strdup_printf ("Leader %d", (int) i + 1);
      g_autofree char *length = quantity (LB_QUANTITY_HEIGHT, c->units, leader->lure.length);

      out->leader = i;
      out->attachment = leader->attach_above_weight;
      out->attachment_words = quantity (LB_QUANTITY_HEIGHT, c->units, out->attachment);
      out->line = line_of (&leader->line, name, leader->length, true, c->units);
      out->lure = g_strdup (words->lure);
      out->lure_details = g_strdup_printf ("%s, %.0f hooks", length, leader->lure.hooks);
    }
  qsort (c->rig.leaders, rig->n_leaders, sizeof (LbCardLeader), compare_leaders);
}

static void
fill_rig (LbCardContents *c, const CardWords *words)
{
  const LbRig *rig = &c->setup.rig;
  double line_out = c->running.status == LB_STATUS_OK ? c->running.readings.line_out : 0;
  g_autofree char *mass = quantity (LB_QUANTITY_MASS, c->units, rig->weight.mass);

  c->rig.mainline = line_of (&rig->mainline, "Mainline", line_out, false, c->units);
  c->rig.shank = line_of (&rig->shank, "Shank", rig->shank_length, true, c->units);
  c->rig.weight = g_strdup_printf ("%s, ball, lead", mass);
  c->rig.weight_mass = rig->weight.mass;
  fill_leaders (c, words);
  add_fact (&c->rig.terminations, "Mainline to shank", g_strdup ("double crimp"), "4 in each",
            LB_CARD_RANK_NEXT);
  add_fact (&c->rig.terminations, "Leader to lure", g_strdup ("clinch knot"), "4 in each",
            LB_CARD_RANK_NEXT);
  add_fact (&c->rig.hardware, words->hardware, g_strdup ("3"), "", LB_CARD_RANK_NEXT);
  add_fact (&c->rig.hardware, "snap", g_strdup ("2"), "", LB_CARD_RANK_NEXT);
}

static void
fill_running (LbCardContents *c)
{
  LbCardRunning *run = &c->running;
  const LbReadings *r = &run->readings;
  LbUnits u = c->units;

  add_fact (&run->water, "Depth", quantity (LB_QUANTITY_LENGTH, u, c->setup.river.depth), "",
            LB_CARD_RANK_FIRST);
  add_fact (&run->water, "Current", quantity (LB_QUANTITY_SPEED, u, c->setup.river.surface_current),
            "at the surface", LB_CARD_RANK_FIRST);
  add_fact (&run->water, "Boat", quantity (LB_QUANTITY_SPEED, u, c->setup.boat.speed_over_ground),
            "over the ground", LB_CARD_RANK_NEXT);
  add_fact (&run->water, "Water", quantity (LB_QUANTITY_TEMPERATURE, u, c->setup.river.temperature),
            "", LB_CARD_RANK_LAST);
  run->sentence = g_strdup ("Not solved: a made-up sentence that tells why, in some length.");
  if (lb_status_is_failure (run->status))
    return;
  g_free (run->sentence);
  run->sentence =
      g_strdup ("Both lures run in the band, 2 in apart in height, one behind the other.");
  add_fact (&run->line, "Line out", quantity (LB_QUANTITY_LENGTH, u, r->line_out), "",
            LB_CARD_RANK_ALWAYS);
  add_fact (&run->line, "Wire angle", quantity (LB_QUANTITY_ANGLE, u, r->wire_angle),
            "from vertical", LB_CARD_RANK_ALWAYS);
  add_fact (&run->line, "In the hand", quantity (LB_QUANTITY_FORCE, u, r->hand_tension), "",
            LB_CARD_RANK_FIRST);
  for (size_t i = 0; i < r->n_leaders; i++)
    {
      g_autofree char *label = g_strdup_printf ("Lure %d", (int) i + 1);

      add_fact (&run->lures, label, quantity (LB_QUANTITY_HEIGHT, u, r->lures[i].at.height),
                "off the bed, in the band", LB_CARD_RANK_FIRST);
    }
}

static void
fill_cautions (LbCardContents *c)
{
  static const char *const cautions[] = {
    "The water is cold (39 °F). Whoever falls in gasps for about a minute and has some ten minutes "
    "of useful movement: dress for the water, and know how you would get back aboard.",
    "Never wrap the wire or a leader round a hand or finger.",
    "Wear gloves, and keep a cutter that goes through the wire within reach.",
    "A weight that hangs up under way loads the line within seconds: let go, or cut.",
    "Wear a life jacket.",
    "Mind the hooks when a rig comes aboard, and who stands behind you.",
  };

  c->n_cautions = G_N_ELEMENTS (cautions);
  c->cautions = g_new0 (char *, c->n_cautions + 1);
  for (size_t i = 0; i < c->n_cautions; i++)
    c->cautions[i] = g_strdup (cautions[i]);
  c->rules = g_strdup ("Local rules limit lines, lures and hooks, and where and when they may be "
                       "used: they come first, and so does the word of a licensed guide.");
}

static void
solve (LbCardContents *c)
{
  LbSteady *steady = lb_steady_new ();

  c->running.status = lb_steady_solve (steady, &c->setup, NULL);
  lb_shape_init (&c->running.shape);
  if (!lb_status_is_failure (c->running.status))
    {
      lb_shape_copy (&c->running.shape, lb_steady_shape (steady));
      lb_readings_compute (&c->running.readings, &c->setup, &c->running.shape);
    }
  lb_steady_free (steady);
}

LbCardContents *
card_new (const LbSetup *setup, LbUnits units, const CardWords *words)
{
  LbCardContents *c = g_new0 (LbCardContents, 1);

  c->card = lb_card_default ();
  c->setup = *setup;
  c->units = units;
  c->title = g_strdup (words->title);
  c->date = g_strdup ("2 January 2026");
  c->calibration = g_strdup ("Not calibrated on the water.");
  c->estimate_mark = g_strdup ("≈");
  c->estimate_note = g_strdup ("≈ computed or estimated; the river may differ.");
  c->computed_note = g_strdup ("≈ computed");
  c->notes = g_strdup (words->notes);
  solve (c);
  fill_rig (c, words);
  fill_running (c);
  fill_cautions (c);
  card_fill_numbers (c, 3, 4, 5, 10);
  return c;
}

/* ---- Freeing ---- */

static void
free_line (LbCardLine *line)
{
  g_free (line->name);
  g_free (line->material);
  g_free (line->strength);
  g_free (line->length_words);
  g_free (line->cut_words);
}

static void
free_facts (LbCardFacts *facts)
{
  for (size_t i = 0; i < facts->n; i++)
    {
      g_free (facts->facts[i].label);
      g_free (facts->facts[i].value);
      g_free (facts->facts[i].note);
    }
  g_free (facts->facts);
}

static void
free_rig (LbCardRig *rig)
{
  free_line (&rig->mainline);
  free_line (&rig->shank);
  g_free (rig->weight);
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      g_free (rig->leaders[i].attachment_words);
      free_line (&rig->leaders[i].line);
      g_free (rig->leaders[i].lure);
      g_free (rig->leaders[i].lure_details);
    }
  free_facts (&rig->terminations);
  free_facts (&rig->hardware);
}

void
card_free (LbCardContents *c)
{
  free_rig (&c->rig);
  card_free_numbers (c);
  lb_shape_clear (&c->running.shape);
  free_facts (&c->running.water);
  free_facts (&c->running.line);
  free_facts (&c->running.lures);
  g_free (c->running.sentence);
  for (size_t i = 0; i < c->n_cautions; i++)
    g_free (c->cautions[i]);
  g_free (c->cautions);
  g_free (c->rules);
  g_free (c->notes);
  g_free (c->title);
  g_free (c->date);
  g_free (c->calibration);
  g_free (c->estimate_mark);
  g_free (c->estimate_note);
  g_free (c->computed_note);
  g_free (c);
}
