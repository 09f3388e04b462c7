/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A settings table and a gauge with made-up numbers, as many as there can be. */
#include "cards.h"

static char *
quantity (LbQuantity kind, LbUnits units, double value)
{
  char text[80];

  lb_units_format (kind, units, value, -1, '.', text, sizeof text);
  return g_strdup (text);
}

static void
fill_cell (LbCardCell *cell, size_t weight, size_t depth, size_t current)
{
  double angle = 0.2 + 0.08 * (double) current + 0.03 * (double) depth - 0.05 * (double) weight;

  cell->state = (LbRunState) ((weight + depth + current) % (LB_RUN_NOT_SOLVED + 1));
  if (current < 3)
    cell->state = LB_RUN_IN_BAND;
  if (!lb_run_state_has_answer (cell->state))
    {
      cell->line_out = cell->wire_angle = LB_UNSET;
      cell->line_words = g_strdup ("");
      cell->angle_words = g_strdup ("");
      return;
    }
  cell->wire_angle = angle;
  cell->line_out = 20.25 + 1.75 * (double) depth + 0.5 * (double) current;
  cell->line_words = g_strdup_printf ("%.1f", cell->line_out);
  cell->angle_words = g_strdup_printf ("%.0f°", angle * 180 / G_PI);
}

static void
fill_block (const LbCardTable *table, LbCardBlock *block, size_t weight, LbUnits units)
{
  block->mass = 0.45 + 0.22 * (double) weight;
  block->name = quantity (LB_QUANTITY_MASS, units, block->mass);
  block->is_own = weight == 1;
  for (size_t d = 0; d < table->n_depths; d++)
    {
      block->rows[d].limits = g_strdup (d % 3 == 2 ? "nowhere" : "1.6 to 3.4 mph");
      for (size_t c = 0; c < table->n_currents; c++)
        fill_cell (&block->rows[d].cells[c], weight, d, c);
    }
}

static void
fill_table (LbCardContents *c, size_t weights, size_t depths, size_t currents)
{
  LbCardTable *table = &c->table;

  table->n_weights = weights;
  table->n_depths = depths;
  table->n_currents = currents;
  for (size_t i = 0; i < depths; i++)
    {
      table->depths[i] = 3 + 1.5 * (double) i;
      table->depth_words[i] = quantity (LB_QUANTITY_LENGTH, c->units, table->depths[i]);
    }
  for (size_t i = 0; i < currents; i++)
    {
      table->currents[i] = 0.4 + 0.3 * (double) i;
      table->current_words[i] = quantity (LB_QUANTITY_SPEED, c->units, table->currents[i]);
    }
  table->blocks = g_new0 (LbCardBlock, weights);
  for (size_t i = 0; i < weights; i++)
    fill_block (table, &table->blocks[i], i, c->units);
}

static void
fill_gauge (LbCardContents *c, size_t n)
{
  LbCardGauge *gauge = &c->gauge;

  gauge->n_ticks = n;
  gauge->low = 0.42;
  gauge->high = 1.05;
  gauge->touches_below = true;
  gauge->own_angle = 0.65;
  for (size_t i = 0; i < n; i++)
    {
      double share = (double) i / (double) MAX (n - 1, 1);

      gauge->ticks[i].angle = gauge->low + share * (gauge->high - gauge->low);
      gauge->ticks[i].height = 0.0254 * 2 * (double) i;
      gauge->ticks[i].words = quantity (LB_QUANTITY_HEIGHT, c->units, gauge->ticks[i].height);
      gauge->ticks[i].major = i % 3 == 0;
    }
}

void
card_fill_numbers (LbCardContents *c, size_t weights, size_t depths, size_t currents, size_t ticks)
{
  fill_table (c, weights, depths, currents);
  fill_gauge (c, ticks);
  c->table.length_unit = g_strdup (c->units == LB_UNITS_US ? "ft" : "m");
  c->table.caption = g_strdup ("Weight 4 in off the bed, boat 0.9 mph over the ground.");
  c->table.limits_title = g_strdup ("In the band");
  c->speed_window.sentence = g_strdup ("With 24 ft 6 in out the lures stay in the band from 0.4 to "
                                       "1.6 mph over the ground.");
  c->gauge.title = g_strdup ("Weight off the bed");
  c->gauge.caption = g_strdup ("24 ft 6 in out, 20 ft deep, current 2.7 mph.");
}

void
card_free_numbers (LbCardContents *c)
{
  LbCardTable *table = &c->table;

  for (size_t w = 0; w < table->n_weights; w++)
    {
      g_free (table->blocks[w].name);
      for (size_t d = 0; d < table->n_depths; d++)
        {
          g_free (table->blocks[w].rows[d].limits);
          for (size_t k = 0; k < table->n_currents; k++)
            {
              g_free (table->blocks[w].rows[d].cells[k].line_words);
              g_free (table->blocks[w].rows[d].cells[k].angle_words);
            }
        }
    }
  g_free (table->blocks);
  for (size_t i = 0; i < LB_CARD_MOST_VALUES; i++)
    {
      g_clear_pointer (&table->depth_words[i], g_free);
      g_clear_pointer (&table->current_words[i], g_free);
    }
  g_free (table->length_unit);
  g_free (table->caption);
  g_free (table->limits_title);
  g_free (c->speed_window.sentence);
  for (size_t i = 0; i < c->gauge.n_ticks; i++)
    g_free (c->gauge.ticks[i].words);
  g_free (c->gauge.title);
  g_free (c->gauge.caption);
}
