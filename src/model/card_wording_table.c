/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The settings table of a card. */
#include <glib/gi18n-lib.h>

#include "card_wording.h"

const char *
lb_card_state_words (LbRunState state)
{
  switch (state)
    {
    case LB_RUN_IN_BAND:
      return "";
    case LB_RUN_ABOVE_BAND:
      return _ ("above");
    case LB_RUN_BELOW_BAND:
      return _ ("below");
    case LB_RUN_SPLIT:
      return _ ("apart");
    case LB_RUN_BLOWS_BACK:
      return _ ("blown back");
    case LB_RUN_TOO_LIGHT:
      return _ ("too light");
    case LB_RUN_TOO_SHALLOW:
      return _ ("too shallow");
    case LB_RUN_DRAGS:
      return _ ("drags");
    default:
      return _ ("not solved");
    }
}

const char *
lb_card_state_legend (LbRunState state)
{
  switch (state)
    {
    case LB_RUN_IN_BAND:
      return _ ("no word: all lures run in the band");
    case LB_RUN_ABOVE_BAND:
      return _ ("above: a lure runs above the band");
    case LB_RUN_BELOW_BAND:
      return _ ("below: a lure runs below the band or on the bed");
    case LB_RUN_SPLIT:
      return _ ("apart: a lure runs above the band, another below");
    case LB_RUN_BLOWS_BACK:
      return _ ("blown back: the wire leans back more than 60°");
    case LB_RUN_TOO_LIGHT:
      return _ ("too light: no line out holds the weight");
    case LB_RUN_TOO_SHALLOW:
      return _ ("too shallow: the shank alone reaches deeper");
    case LB_RUN_DRAGS:
      return _ ("drags: the weight lies on the bed");
    default:
      return _ ("not solved: no answer was found");
    }
}

/* ---- Cells ---- */

/* Feet with tenths, or metres with hundredths, without their unit. */
static char *
line_words (LbUnits units, double line_out)
{
  double number = lb_units_from_si (LB_QUANTITY_LENGTH, units, line_out);

  return lb_words_quantity (LB_QUANTITY_NUMBER, units, number, units == LB_UNITS_US ? 1 : 2);
}

static LbCardCell
cell_of (const LbCardWriter *w, const LbLineCell *cell)
{
  LbCardCell out = { cell->state, cell->line_out, cell->wire_angle, NULL, NULL };
  LbUnits units = w->wording->units;
  bool there = lb_run_state_has_answer (cell->state);

  out.line_words = there ? line_words (units, cell->line_out) : g_strdup ("");
  out.angle_words =
      there ? lb_words_quantity (LB_QUANTITY_ANGLE, units, cell->wire_angle, 0) : g_strdup ("");
  return out;
}

static LbCardRow
row_of (const LbCardWriter *w, size_t weight, size_t depth)
{
  const LbCardNumbers *numbers = w->numbers;
  size_t i = weight * numbers->n_depths + depth;
  LbCardRow row = { .low = numbers->limits[i].low, .high = numbers->limits[i].high };

  for (size_t c = 0; c < numbers->n_currents; c++)
    row.cells[c] = cell_of (w, &numbers->cells[i * numbers->n_currents + c]);
  row.limits = lb_card_speed_range (w, &numbers->limits[i]);
  if (row.limits == NULL)
    row.limits = g_strdup (_ ("nowhere"));
  return row;
}

static char *
held_words (const LbCardWriter *w)
{
  g_autofree char *boat =
      lb_card_quantity (w, LB_QUANTITY_SPEED, w->contents->setup.boat.speed_over_ground);
  g_autofree char *height = NULL;

  if (w->numbers->hold.mode != LB_LINE_OUT_WEIGHT_ABOVE_BED || w->numbers->hold.value == 0)
    return g_strdup_printf (_ ("Weight just touching the bed, boat %s over the ground."), boat);
  height = lb_card_height (w, w->numbers->hold.value);
  return g_strdup_printf (_ ("Weight %s off the bed, boat %s over the ground."), height, boat);
}

static char *
caption (const LbCardWriter *w)
{
  g_autofree char *held = held_words (w);

  if (w->contents->setup.river.n_bed_points == 0)
    return g_steal_pointer (&held);
  return g_strconcat (held, " ", _ ("The bed is taken as even here."), NULL);
}

static void
write_axes (const LbCardWriter *w)
{
  const LbCardNumbers *numbers = w->numbers;
  LbCardTable *table = &w->card->table;

  table->n_depths = numbers->n_depths;
  table->n_currents = numbers->n_currents;
  for (size_t i = 0; i < LB_CARD_MOST_VALUES; i++)
    {
      bool depth = i < table->n_depths, current = i < table->n_currents;

      table->depths[i] = numbers->depths[i];
      table->currents[i] = numbers->currents[i];
      table->depth_words[i] =
          depth ? lb_card_quantity (w, LB_QUANTITY_LENGTH, table->depths[i]) : g_strdup ("");
      table->current_words[i] =
          current ? lb_card_quantity (w, LB_QUANTITY_SPEED, table->currents[i]) : g_strdup ("");
    }
}

void
lb_card_write_table (const LbCardWriter *w)
{
  const LbCardNumbers *numbers = w->numbers;
  LbCardTable *table = &w->card->table;

  write_axes (w);
  table->length_unit = g_strdup (lb_units_name (LB_QUANTITY_LENGTH, w->wording->units));
  table->caption = caption (w);
  table->limits_title =
      g_strdup (w->contents->setup.rig.n_leaders > 0 ? _ ("In the band") : _ ("Not blown back"));
  table->n_weights = numbers->n_weights;
  table->blocks = g_new0 (LbCardBlock, numbers->n_weights + 1);
  for (size_t i = 0; i < numbers->n_weights; i++)
    {
      LbCardBlock *block = &table->blocks[i];

      block->mass = numbers->weights[i];
      block->name = lb_card_quantity (w, LB_QUANTITY_MASS, block->mass);
      block->is_own = block->mass == w->contents->setup.rig.weight.mass;
      for (size_t d = 0; d < numbers->n_depths; d++)
        block->rows[d] = row_of (w, i, d);
    }
}
