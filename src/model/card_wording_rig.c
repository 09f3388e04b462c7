/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig of a card, to be built from. */
#include <glib/gi18n-lib.h>

#include "card_wording.h"
#include "fields.h"

/* ---- What things are made of ---- */

/* By density, of the catalogue's lines (data/catalogue.json) with room around them. */
static const struct
{
  double from, to; /* kg/m3 */
  const char *name;
} line_materials[] = {
  { 7000, 9000, N_ ("steel wire, %s") }, { 1700, 1900, N_ ("PVDF, %s") },
  { 1050, 1250, N_ ("nylon, %s") },      { 900, 1000, N_ ("braid, %s") },
  { 0, INFINITY, N_ ("line, %s") },
};

/* Handbook values; tungsten alloy 17000 to 18500, an estimate. */
static const struct
{
  double from, to; /* kg/m3 */
  const char *name;
} weight_materials[] = {
  { 10800, 11400, N_ ("lead") },
  { 16500, 19000, N_ ("tungsten alloy") },
  { 7700, 8000, N_ ("steel") },
};

/* Puts `text` into a format that holds one %s. */
static char *
fill_in (const char *format, const char *text)
{
  g_auto (GStrv) halves = g_strsplit (format, "%s", 2);

  return g_strjoinv (text, halves);
}

static char *
line_material (const LbCardWriter *w, const LbLine *line)
{
  g_autofree char *diameter = lb_card_quantity (w, LB_QUANTITY_DIAMETER, line->diameter);
  size_t i = 0;

  while (!(line->density >= line_materials[i].from && line->density <= line_materials[i].to))
    i++;
  return fill_in (_ (line_materials[i].name), diameter);
}

static char *
line_strength (const LbCardWriter *w, const LbLine *line)
{
  g_autofree char *load = NULL;

  if (!lb_is_set (line->breaking_load))
    return g_strdup ("");
  load = lb_card_quantity (w, LB_QUANTITY_FORCE, line->breaking_load);
  /* Translators: "breaks at ≈ 11 lbf without knots" */
  return g_strdup_printf (_ ("breaks at %s %s without knots"), LB_CARD_ESTIMATE_MARK, load);
}

static char *
weight_words (const LbCardWriter *w, const LbWeight *weight)
{
  g_autofree char *mass = lb_card_quantity (w, LB_QUANTITY_MASS, weight->mass);
  const LbFieldChoice *shape = lb_field_choice (lb_field ("weight.shape"), weight->shape);
  g_autofree char *lower = g_utf8_strdown (_ (shape->label), -1);

  for (size_t i = 0; i < G_N_ELEMENTS (weight_materials); i++)
    if (weight->density >= weight_materials[i].from && weight->density <= weight_materials[i].to)
      return g_strdup_printf ("%s, %s, %s", mass, lower, _ (weight_materials[i].name));
  return g_strdup_printf ("%s, %s", mass, lower);
}

/* ---- Lines ---- */

/* Short lines are cut to a tenth of an inch, leaders of many feet to an inch. */
static LbCardLine
line_of (const LbCardWriter *w, char *name, const LbLine *line, double length, double allowance)
{
  LbCardLine out = {
    .name = name,
    .material = line_material (w, line),
    .strength = line_strength (w, line),
    .length = length,
    .cut_length = length + allowance,
  };

  out.length_words = lb_card_height (w, length);
  out.cut_words = lb_is_set (allowance) ? lb_card_height (w, out.cut_length) : g_strdup ("");
  return out;
}

static double
allowance_at (const LbCardWriter *w, LbCardJoint joint)
{
  return w->contents->card.terminations[joint].allowance;
}

static void
write_lines (const LbCardWriter *w)
{
  const LbRig *rig = &w->contents->setup.rig;
  const LbReadings *readings = lb_result_get_readings (w->numbers->result);
  LbCardRig *out = &w->card->rig;

  out->mainline = line_of (w, g_strdup (_ ("Mainline")), &rig->mainline,
                           readings ? readings->line_out : LB_UNSET, LB_UNSET);
  out->shank = line_of (w, g_strdup (_ ("Shank")), &rig->shank, rig->shank_length,
                        allowance_at (w, LB_CARD_MAINLINE_TO_SHANK)
                            + allowance_at (w, LB_CARD_SHANK_TO_WEIGHT));
  out->weight = weight_words (w, &rig->weight);
  out->weight_mass = rig->weight.mass;
}

/* ---- Leaders ---- */

static char *
lure_details (const LbCardWriter *w, const LbLure *lure)
{
  g_autofree char *length = lb_card_quantity (w, LB_QUANTITY_HEIGHT, lure->length);
  g_autofree char *mass = lb_card_quantity (w, LB_QUANTITY_SMALL_MASS, lure->mass);
  g_autofree char *hooks = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%.0f hook", "%.0f hooks", (gulong) lure->hooks), lure->hooks);

  /* Translators: length, mass and hooks of a lure: "2.8 in, 0.21 oz, 2 hooks" */
  return g_strdup_printf (_ ("%s, %s, %s"), length, mass, hooks);
}

/* From the weight up; of two at one height the first in the document is the lower. */
static int
compare_leaders (const void *a, const void *b)
{
  const LbCardLeader *p = a, *q = b;

  if (p->attachment != q->attachment)
    return p->attachment < q->attachment ? -1 : 1;
  return (p->leader > q->leader) - (p->leader < q->leader);
}

static void
write_leaders (const LbCardWriter *w)
{
  const LbSetup *setup = &w->contents->setup;
  double allowance =
      allowance_at (w, LB_CARD_LEADER_TO_SHANK) + allowance_at (w, LB_CARD_LEADER_TO_LURE);
  LbCardRig *out = &w->card->rig;

  out->n_leaders = setup->rig.n_leaders;
  for (size_t i = 0; i < out->n_leaders; i++)
    {
      const LbLeader *leader = &setup->rig.leaders[i];

      out->leaders[i] = (LbCardLeader){
        .leader = i,
        .attachment = leader->attach_above_weight,
        .attachment_words = lb_card_height (w, leader->attach_above_weight),
        .line = line_of (w, lb_card_capital (lb_words_leader (setup, i)), &leader->line,
                         leader->length, allowance),
        .lure = g_strdup (w->contents->lure_names[i]),
        .lure_details = lure_details (w, &leader->lure),
      };
    }
  qsort (out->leaders, out->n_leaders, sizeof *out->leaders, compare_leaders);
}

/* ---- Terminations and hardware ---- */

/* Whether the rig has such a joint, and what it is called in this rig. */
static const char *
joint_label (const LbRig *rig, LbCardJoint joint)
{
  bool has_shank = rig->shank_length > 0;

  switch (joint)
    {
    case LB_CARD_MAINLINE_TO_SHANK:
      return has_shank ? lb_card_joint_label (joint) : _ ("Mainline to weight");
    case LB_CARD_SHANK_TO_WEIGHT:
      return has_shank ? lb_card_joint_label (joint) : NULL;
    case LB_CARD_LEADER_TO_SHANK:
      if (rig->n_leaders == 0)
        return NULL;
      return has_shank ? lb_card_joint_label (joint) : _ ("Leader to weight");
    default:
      return rig->n_leaders > 0 ? lb_card_joint_label (joint) : NULL;
    }
}

static char *
allowance_words (const LbCardWriter *w, double allowance)
{
  g_autofree char *words = lb_card_height (w, allowance);

  if (!(allowance > 0))
    return g_strdup (_ ("no line added"));
  /* Translators: "4 in added to each line end" */
  return g_strdup_printf (_ ("%s added to each line end"), words);
}

static void
write_pieces (const LbCardWriter *w)
{
  const LbCard *card = &w->contents->card;
  LbCardRig *out = &w->card->rig;

  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    {
      const LbCardTermination *termination = &card->terminations[i];
      const char *label = joint_label (&w->contents->setup.rig, (LbCardJoint) i);

      if (label)
        lb_card_facts_add (&out->terminations, label, g_strdup (termination->how.text),
                           allowance_words (w, termination->allowance), false, LB_CARD_RANK_FIRST);
    }
  for (size_t i = 0; i < card->n_hardware; i++)
    if (*card->hardware[i].what.text)
      lb_card_facts_add (&out->hardware, card->hardware[i].what.text,
                         g_strdup_printf ("%d", card->hardware[i].count), NULL, false,
                         LB_CARD_RANK_FIRST);
}

void
lb_card_write_rig (const LbCardWriter *w)
{
  write_lines (w);
  write_leaders (w);
  write_pieces (w);
}
