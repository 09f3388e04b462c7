/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_contents.h"

#include <glib.h>

static void
clear_facts (LbCardFacts *facts)
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
clear_line (LbCardLine *line)
{
  g_free (line->name);
  g_free (line->material);
  g_free (line->strength);
  g_free (line->length_words);
  g_free (line->cut_words);
}

static void
clear_rig (LbCardRig *rig)
{
  clear_line (&rig->mainline);
  clear_line (&rig->shank);
  g_free (rig->weight);
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      g_free (rig->leaders[i].attachment_words);
      clear_line (&rig->leaders[i].line);
      g_free (rig->leaders[i].lure);
      g_free (rig->leaders[i].lure_details);
    }
  clear_facts (&rig->terminations);
  clear_facts (&rig->hardware);
}

static void
clear_running (LbCardRunning *running)
{
  lb_shape_clear (&running->shape);
  clear_facts (&running->water);
  clear_facts (&running->line);
  clear_facts (&running->lures);
  g_free (running->sentence);
}

static void
clear_block (LbCardBlock *block, size_t n_depths, size_t n_currents)
{
  g_free (block->name);
  for (size_t d = 0; d < n_depths; d++)
    {
      g_free (block->rows[d].limits);
      for (size_t c = 0; c < n_currents; c++)
        {
          g_free (block->rows[d].cells[c].line_words);
          g_free (block->rows[d].cells[c].angle_words);
        }
    }
}

static void
clear_table (LbCardTable *table)
{
  for (size_t i = 0; i < table->n_weights; i++)
    clear_block (&table->blocks[i], table->n_depths, table->n_currents);
  for (size_t i = 0; i < LB_CARD_MOST_VALUES; i++)
    {
      g_free (table->depth_words[i]);
      g_free (table->current_words[i]);
    }
  g_free (table->blocks);
  g_free (table->length_unit);
  g_free (table->caption);
  g_free (table->limits_title);
}

static void
clear_gauge (LbCardGauge *gauge)
{
  for (size_t i = 0; i < gauge->n_ticks; i++)
    g_free (gauge->ticks[i].words);
  g_free (gauge->title);
  g_free (gauge->caption);
}

void
lb_card_contents_free (LbCardContents *contents)
{
  if (contents == NULL)
    return;
  g_free (contents->title);
  g_free (contents->date);
  g_free (contents->calibration);
  g_free (contents->estimate_mark);
  g_free (contents->estimate_note);
  g_free (contents->computed_note);
  clear_rig (&contents->rig);
  clear_running (&contents->running);
  lb_compared_runs_free (contents->runs);
  clear_table (&contents->table);
  g_free (contents->speed_window.words);
  g_free (contents->speed_window.sentence);
  clear_gauge (&contents->gauge);
  for (size_t i = 0; i < contents->n_cautions; i++)
    g_free (contents->cautions[i]);
  g_free (contents->cautions);
  g_free (contents->rules);
  g_free (contents->notes);
  g_free (contents);
}
