/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the rig of a card runs, and in what water. */
#include <glib/gi18n-lib.h>

#include "card_wording.h"
#include "comparison_words.h"
#include "fields.h"
#include "sentence.h"

/* ---- Water and boat, as the user entered them ---- */

static char *
profile_words (const LbCardWriter *w, const LbProfile *profile)
{
  const LbFieldChoice *law = lb_field_choice (lb_field ("river.profile.law"), profile->law);
  const LbFieldChoice *material =
      lb_field_choice (lb_field ("river.profile.bed_material"), profile->material);
  g_autofree char *number = NULL;

  switch (profile->law)
    {
    case LB_PROFILE_POWER:
      number = lb_card_quantity (w, LB_QUANTITY_NUMBER, profile->exponent);
      return g_strdup_printf (_ ("power law, exponent %s"), number);
    case LB_PROFILE_LOG:
      if (profile->material != LB_BED_MATERIAL_NONE)
        return g_strdup_printf (_ ("log law, bed: %s"), _ (material->label));
      number = lb_card_quantity (w, LB_QUANTITY_HEIGHT, profile->roughness);
      return g_strdup_printf (_ ("log law, roughness %s"), number);
    default:
      return g_strdup (_ (law->label));
    }
}

static char *
band_words (const LbCardWriter *w, const LbBand *band)
{
  g_autofree char *low = lb_card_height (w, band->low);
  g_autofree char *high = lb_card_height (w, band->high);

  /* Translators: a band of heights: "4 in to 18 in" */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static void
write_water (const LbCardWriter *w)
{
  const LbSetup *setup = &w->contents->setup;
  const LbRiver *river = &setup->river;
  LbCardFacts *out = &w->card->running.water;

  lb_card_facts_add (out, _ ("Depth"), lb_card_quantity (w, LB_QUANTITY_LENGTH, river->depth),
                     river->n_bed_points > 0 ? g_strdup (_ ("uneven bed")) : NULL, false,
                     LB_CARD_RANK_FIRST);
  lb_card_facts_add (out, _ ("Current"),
                     lb_card_quantity (w, LB_QUANTITY_SPEED, river->surface_current),
                     g_strdup (_ ("at the surface")), false, LB_CARD_RANK_FIRST);
  lb_card_facts_add (out, _ ("Boat"),
                     lb_card_quantity (w, LB_QUANTITY_SPEED, setup->boat.speed_over_ground),
                     g_strdup (_ ("over the ground, upstream")), false, LB_CARD_RANK_FIRST);
  lb_card_facts_add (out, _ ("Band"), band_words (w, &setup->band), g_strdup (_ ("off the bed")),
                     false, LB_CARD_RANK_NEXT);
  lb_card_facts_add (out, _ ("Reel"), lb_card_height (w, setup->boat.reel_height),
                     g_strdup (_ ("above the water")), false, LB_CARD_RANK_LAST);
  lb_card_facts_add (out, _ ("Water"),
                     lb_card_quantity (w, LB_QUANTITY_TEMPERATURE, river->temperature), NULL, false,
                     LB_CARD_RANK_LAST);
  lb_card_facts_add (out, _ ("Current profile"), profile_words (w, &river->profile), NULL, true,
                     LB_CARD_RANK_LAST);
}

/* ---- What came out ---- */

static void
write_line (const LbCardWriter *w, const LbReadings *r)
{
  LbCardFacts *out = &w->card->running.line;

  lb_card_facts_add (out, _ ("Line out"), lb_card_quantity (w, LB_QUANTITY_LENGTH, r->line_out),
                     NULL, false, LB_CARD_RANK_ALWAYS);
  lb_card_facts_add (out, _ ("Wire angle"), lb_card_quantity (w, LB_QUANTITY_ANGLE, r->wire_angle),
                     g_strdup (_ ("from vertical")), false, LB_CARD_RANK_ALWAYS);
  lb_card_facts_add (out, _ ("In the hand"),
                     lb_card_quantity (w, LB_QUANTITY_FORCE, r->hand_tension), NULL, false,
                     LB_CARD_RANK_FIRST);
  lb_card_facts_add (out, _ ("Weight off the bed"), lb_card_height (w, r->weight.height),
                     r->weight.on_bed ? g_strdup (_ ("on the bed")) : NULL, false,
                     LB_CARD_RANK_FIRST);
  lb_card_facts_add (out, _ ("Weight back"),
                     lb_card_quantity (w, LB_QUANTITY_LENGTH, r->weight.layback), NULL, false,
                     LB_CARD_RANK_LAST);
}

static const char *
band_state (LbBandState band)
{
  switch (band)
    {
    case LB_BAND_INSIDE:
      return _ ("in the band");
    case LB_BAND_ABOVE:
      return _ ("above the band");
    case LB_BAND_BELOW:
      return _ ("below the band");
    default:
      return _ ("on the bed");
    }
}

static void
write_lures (const LbCardWriter *w, const LbReadings *r)
{
  LbCardFacts *out = &w->card->running.lures;

  for (size_t i = 0; i < r->n_leaders; i++)
    {
      g_autofree char *label = lb_card_capital (lb_words_lure (&w->contents->setup, i));
      g_autofree char *back = lb_card_quantity (w, LB_QUANTITY_LENGTH, r->lures[i].at.layback);

      /* Translators: "in the band, 18 ft 4 in back" */
      lb_card_facts_add (out, label, lb_card_height (w, r->lures[i].at.height),
                         g_strdup_printf (_ ("%s, %s back"), band_state (r->lures[i].band), back),
                         false, LB_CARD_RANK_FIRST);
    }
  if (lb_is_set (r->level_difference))
    lb_card_facts_add (out, _ ("Level difference"), lb_card_height (w, r->level_difference), NULL,
                       false, LB_CARD_RANK_NEXT);
  if (lb_is_set (r->spacing))
    lb_card_facts_add (out, _ ("Spacing"), lb_card_quantity (w, LB_QUANTITY_LENGTH, r->spacing),
                       NULL, false, LB_CARD_RANK_NEXT);
}

void
lb_card_write_running (const LbCardWriter *w)
{
  const LbResult *result = w->numbers->result;
  const LbReadings *readings = lb_result_get_readings (result);
  LbCardRunning *out = &w->card->running;

  out->status = lb_result_get_status (result);
  lb_shape_init (&out->shape);
  write_water (w);
  if (w->numbers->comparison)
    w->card->runs = lb_compared_runs_new (w->numbers->comparison, w->wording);
  out->sentence = lb_sentence_of_result (result, w->wording);
  if (readings == NULL)
    return;
  out->readings = *readings;
  if (lb_shape_copy (&out->shape, lb_result_get_shape (result)) != LB_STATUS_OK)
    g_error ("out of memory");
  write_line (w, readings);
  write_lures (w, readings);
}
