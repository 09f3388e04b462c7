/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "readings_table.h"

#include <glib/gi18n-lib.h>

#include "readings_build.h"
#include "words.h"

/* Builds the table; `readings` is NULL when the solve failed, and then every value is "-". */
typedef struct
{
  const LbSetup *setup;
  const LbReadings *readings;
  const LbContents *contents;
  const LbWording *wording;
  LbReadingsBuilder table;
} Builder;

/* ---- Building ---- */

static void
start_section (Builder *b)
{
  lb_readings_builder_start (&b->table);
}

static void
end_section (Builder *b, char *title)
{
  lb_readings_builder_end (&b->table, title);
}

/* Takes `value` and `note` over. */
static void
add_text (Builder *b, const char *label, char *value, char *note)
{
  if (b->readings)
    {
      lb_readings_builder_add (&b->table, label, value, note);
      return;
    }
  g_free (value);
  g_free (note);
  lb_readings_builder_add (&b->table, label, g_strdup ("-"), NULL);
}

static void
add_row (Builder *b, const char *label, LbQuantity quantity, double value, char *note)
{
  add_text (b, label, lb_words_quantity (quantity, b->wording->units, value, b->wording->decimals),
            note);
}

static void
add_height (Builder *b, const char *label, double value, char *note)
{
  add_text (b, label, lb_words_height (b->wording->units, value, b->wording->decimals), note);
}

/* ---- Notes ---- */

static char *
note_spare (double spare)
{
  g_autofree char *times = NULL;

  if (!lb_is_set (spare))
    return NULL;
  times = lb_words_quantity (LB_QUANTITY_NUMBER, LB_UNITS_METRIC, spare, spare < 10 ? 1 : 0);
  /* Translators: "breaks at 12 times this" */
  return g_strdup_printf (_ ("breaks at %s times this"), times);
}

static char *
note_band (LbBandState band)
{
  switch (band)
    {
    case LB_BAND_INSIDE:
      return g_strdup (_ ("in the band"));
    case LB_BAND_ABOVE:
      return g_strdup (_ ("above the band"));
    case LB_BAND_BELOW:
      return g_strdup (_ ("below the band"));
    default:
      return g_strdup (_ ("on the bed"));
    }
}

/* ---- Sections ---- */

static void
add_line (Builder *b, const LbReadings *r)
{
  start_section (b);
  add_row (b, _ ("Line out"), LB_QUANTITY_LENGTH, r->line_out, NULL);
  add_row (b, _ ("Wire angle"), LB_QUANTITY_ANGLE, r->wire_angle, g_strdup (_ ("from vertical")));
  add_row (b, _ ("In the hand"), LB_QUANTITY_FORCE, r->hand_tension, NULL);
  add_row (b, _ ("Largest pull"), LB_QUANTITY_FORCE, r->largest_tension,
           note_spare (r->mainline_spare));
  add_row (b, _ ("Strumming"), LB_QUANTITY_FREQUENCY, r->strum_frequency,
           g_strdup (_ ("estimate")));
  add_row (b, _ ("Depth at the boat"), LB_QUANTITY_LENGTH, r->bed_depth_at_reel, NULL);
  end_section (b, g_strdup (_ ("Line")));
}

static void
add_weight (Builder *b, const LbReadings *r)
{
  start_section (b);
  add_height (b, _ ("Height off the bed"), r->weight.height,
              r->weight.on_bed ? g_strdup (_ ("on the bed")) : NULL);
  add_row (b, _ ("Layback"), LB_QUANTITY_LENGTH, r->weight.layback, NULL);
  add_row (b, _ ("Depth"), LB_QUANTITY_LENGTH, r->weight.depth, NULL);
  add_row (b, _ ("Water speed"), LB_QUANTITY_SPEED, r->weight.water_speed, NULL);
  add_row (b, _ ("Pull of the weight"), LB_QUANTITY_FORCE, r->weight_tension, NULL);
  add_row (b, _ ("Carried by the bed"), LB_QUANTITY_FORCE, r->weight_bed_force, NULL);
  add_row (b, _ ("Shank angle"), LB_QUANTITY_ANGLE, r->shank_angle, g_strdup (_ ("from vertical")));
  end_section (b, g_strdup (_ ("Weight")));
}

static char *
lure_title (const Builder *b, size_t lure)
{
  return lb_readings_lure_title (b->setup, lure, b->contents ? b->contents->lure_names[lure] : "");
}

static void
add_lure (Builder *b, const LbReadings *r, size_t i)
{
  const LbLureReading *lure = &r->lures[i];
  const LbPointReading *attachment = &r->attachments[i];

  start_section (b);
  add_height (b, _ ("Height off the bed"), lure->at.height, note_band (lure->band));
  add_row (b, _ ("Layback"), LB_QUANTITY_LENGTH, lure->at.layback, NULL);
  add_row (b, _ ("Depth"), LB_QUANTITY_LENGTH, lure->at.depth, NULL);
  add_row (b, _ ("Water speed"), LB_QUANTITY_SPEED, lure->at.water_speed, NULL);
  add_row (b, _ ("Pull at the lure"), LB_QUANTITY_SMALL_FORCE, lure->leader_tension, NULL);
  add_row (b, _ ("Largest pull"), LB_QUANTITY_SMALL_FORCE, lure->largest_tension,
           note_spare (lure->leader_spare));
  add_row (b, _ ("Leader angle"), LB_QUANTITY_ANGLE, lure->leader_angle,
           g_strdup (_ ("below level, at the lure")));
  add_row (b, _ ("Attachment angle"), LB_QUANTITY_ANGLE, lure->attachment_angle,
           g_strdup (_ ("below level, at the shank")));
  add_row (b, _ ("Attachment pull"), LB_QUANTITY_SMALL_FORCE, lure->attachment_tension, NULL);
  add_height (b, _ ("Attachment off the bed"), attachment->height, NULL);
  add_row (b, _ ("Attachment layback"), LB_QUANTITY_LENGTH, attachment->layback, NULL);
  end_section (b, lure_title (b, i));
}

static void
add_together (Builder *b, const LbReadings *r)
{
  start_section (b);
  add_height (b, _ ("Level difference"), r->level_difference, NULL);
  add_row (b, _ ("Spacing"), LB_QUANTITY_LENGTH, r->spacing, g_strdup (_ ("one behind the other")));
  add_row (b, _ ("Lines come within"), LB_QUANTITY_LENGTH, r->closest.distance,
           lb_readings_between (b->setup, &r->closest));
  end_section (b, g_strdup (_ ("Lures together")));
}

LbReadingsTable *
lb_readings_table_new (const LbResult *result, const LbContents *contents, const LbWording *wording)
{
  static const LbReadings none = { .closest = { .distance = LB_UNSET } };
  Builder b = {
    lb_result_get_setup (result), lb_result_get_readings (result), contents, wording, { NULL }
  };
  const LbReadings *readings = b.readings ? b.readings : &none;

  lb_readings_builder_init (&b.table);
  add_line (&b, readings);
  add_weight (&b, readings);
  for (size_t i = 0; i < b.setup->rig.n_leaders; i++)
    add_lure (&b, readings, i);
  if (b.setup->rig.n_leaders >= 2)
    add_together (&b, readings);
  return lb_readings_builder_finish (&b.table);
}
