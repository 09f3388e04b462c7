/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A card as plain text, in the order in which one rigs from it. */
#include <glib/gi18n-lib.h>

#include "card_contents.h"
#include "words.h"

typedef struct
{
  GString *text;
  const LbCardContents *card;
} Text;

static void add (Text *t, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* One more line. */
static void
add (Text *t, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_string_append_vprintf (t->text, format, arguments);
  va_end (arguments);
  g_string_append_c (t->text, '\n');
}

static void
add_heading (Text *t, const char *heading)
{
  add (t, "\n%s", heading);
}

/* Of what is computed as a whole. */
static void
add_computed_heading (Text *t, const char *heading)
{
  add (t, "\n%s (%s)", heading, t->card->computed_note);
}

/* "Line out: ≈24 ft 6 in, from vertical" */
static void
add_facts (Text *t, const LbCardFacts *facts)
{
  for (size_t i = 0; i < facts->n; i++)
    {
      const LbCardFact *fact = &facts->facts[i];

      add (t, "%s: %s%s%s%s", fact->label, fact->estimate ? t->card->estimate_mark : "",
           fact->value, *fact->value && *fact->note ? ", " : "", fact->note);
    }
}

/* ---- The rig ---- */

static void
add_line (Text *t, const LbCardLine *line, bool is_cut)
{
  g_autoptr (GString) words = g_string_new (NULL);

  g_string_append_printf (words, "%s: ", line->name);
  if (is_cut)
    /* Translators: "10 ft long, cut 10 ft 8 in, nylon, 0.0138 in" */
    g_string_append_printf (words, _ ("%s long, cut %s, %s"), line->length_words, line->cut_words,
                            line->material);
  else
    g_string_append (words, line->material);
  if (*line->strength)
    g_string_append_printf (words, ", %s", line->strength);
  add (t, "%s", words->str);
}

static void
add_leader (Text *t, const LbCardLeader *leader)
{
  add_line (t, &leader->line, true);
  add (t, _ ("  attached %s above the weight"), leader->attachment_words);
  add (t, _ ("  lure: %s%s%s"), leader->lure, *leader->lure ? ", " : "", leader->lure_details);
}

static void
add_rig (Text *t, const LbCardRig *rig)
{
  add_heading (t, _ ("Rig"));
  add_line (t, &rig->mainline, false);
  if (rig->shank.length > 0)
    add_line (t, &rig->shank, true);
  add (t, _ ("Weight: %s"), rig->weight);
  for (size_t i = 0; i < rig->n_leaders; i++)
    add_leader (t, &rig->leaders[i]);
  add_facts (t, &rig->terminations);
  for (size_t i = 0; i < rig->hardware.n; i++)
    /* Translators: "3 × swivel" */
    add (t, _ ("%s × %s"), rig->hardware.facts[i].value, rig->hardware.facts[i].label);
}

/* ---- Table and gauge ---- */

static void
add_cell (GString *words, const LbCardCell *cell, const char *current, const char *unit)
{
  const char *state = lb_card_state_words (cell->state);

  g_string_append_printf (words, "; %s: ", current);
  if (*cell->line_words)
    g_string_append_printf (words, "%s %s %s%s%s", cell->line_words, unit, cell->angle_words,
                            *state ? " " : "", state);
  else
    g_string_append (words, state);
}

static void
add_table (Text *t, const LbCardTable *table)
{
  if (table->n_weights == 0)
    return;
  add_computed_heading (t, _ ("Line out and wire angle by depth and current"));
  add (t, "%s", table->caption);
  for (size_t w = 0; w < table->n_weights; w++)
    for (size_t d = 0; d < table->n_depths; d++)
      {
        const LbCardRow *row = &table->blocks[w].rows[d];
        g_autoptr (GString) words = g_string_new (NULL);

        g_string_append_printf (words, "%s, %s", table->blocks[w].name, table->depth_words[d]);
        for (size_t c = 0; c < table->n_currents; c++)
          add_cell (words, &row->cells[c], table->current_words[c], table->length_unit);
        add (t, "%s; %s: %s", words->str, table->limits_title, row->limits);
      }
}

static void
add_gauge (Text *t, const LbCardGauge *gauge)
{
  g_autoptr (GString) words = g_string_new (NULL);

  if (*gauge->caption == '\0')
    return;
  add_computed_heading (t, _ ("Wire-angle gauge"));
  add (t, "%s", gauge->caption);
  for (size_t i = 0; i < gauge->n_ticks; i++)
    {
      const LbCardTick *tick = &gauge->ticks[i];
      g_autofree char *angle =
          lb_words_quantity (LB_QUANTITY_ANGLE, t->card->units, tick->angle, 1);

      if (tick->major)
        g_string_append_printf (words, "%s%s: %s", words->len ? "; " : "", angle, tick->words);
    }
  if (words->len)
    add (t, "%s: %s", gauge->title, words->str);
}

/* ---- All of it ---- */

static void
add_running (Text *t, const LbCardRunning *running, const LbComparedRuns *runs)
{
  add_computed_heading (t, _ ("How it runs"));
  add (t, "%s", running->sentence);
  add_facts (t, &running->line);
  add_facts (t, &running->lures);
  for (size_t i = 0; runs && i < runs->n; i++)
    add (t, "%s: %s", runs->runs[i].name, runs->runs[i].words);
  add_heading (t, _ ("Computed for"));
  add_facts (t, &running->water);
}

static void
add_cautions (Text *t)
{
  add_heading (t, _ ("Cautions"));
  for (size_t i = 0; i < t->card->n_cautions; i++)
    add (t, "%s", t->card->cautions[i]);
  add (t, "%s", t->card->rules);
}

char *
lb_card_contents_dup_text (const LbCardContents *contents)
{
  Text t = { g_string_new (NULL), contents };

  add (&t, "%s", contents->title);
  if (*contents->date)
    add (&t, "%s", contents->date);
  add (&t, "%s", contents->calibration);
  add (&t, "%s", contents->estimate_note);
  add_rig (&t, &contents->rig);
  add_running (&t, &contents->running, contents->runs);
  add_table (&t, &contents->table);
  if (*contents->speed_window.sentence)
    add (&t, "%s", contents->speed_window.sentence);
  add_gauge (&t, &contents->gauge);
  add_cautions (&t);
  if (*contents->notes)
    {
      add_heading (&t, _ ("Notes"));
      add (&t, "%s", contents->notes);
    }
  return g_string_free (t.text, FALSE);
}
