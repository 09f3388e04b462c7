/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fish_words.h"

#include <glib/gi18n-lib.h>

#include "caution_pieces.h"
#include "readings_build.h"
#include "words.h"

static char *
force (double value, const LbWording *wording)
{
  return lb_words_quantity (LB_QUANTITY_FORCE, wording->units, value, wording->decimals);
}

static const LbFishLoad *
hardest (const LbFishOn *on)
{
  return &on->loads[1][0];
}

GPtrArray *
lb_fish_words_cautions (const LbSetup *setup,
                        const LbFishLoad *loads,
                        size_t n,
                        const LbWording *wording)
{
  GPtrArray *list = g_ptr_array_new_with_free_func (lb_caution_free);
  double pull = 0, spares[LB_PART_LEADER_0 + LB_MAX_LEADERS];

  for (size_t part = 0; part < G_N_ELEMENTS (spares); part++)
    spares[part] = INFINITY;
  for (size_t i = 0; i < n; i++)
    {
      double *spare = &spares[loads[i].weakest.part];

      pull = fmax (pull, loads[i].in_hand);
      *spare = fmin (*spare, loads[i].weakest.spare);
    }
  lb_caution_add_pull (list, pull, NULL, wording);
  for (size_t part = 0; part < G_N_ELEMENTS (spares); part++)
    lb_caution_add_strength (list, setup, (LbWeakest){ spares[part], (int) part }, NULL);
  return list;
}

static void
add_cautions (GString *text, const LbSetup *setup, const LbFishOn *on, const LbWording *wording)
{
  g_autoptr (GPtrArray) list =
      lb_fish_words_cautions (setup, on->loads[0], LB_FISH_N_MOUTHS * LB_FISH_ON_N_SPEEDS, wording);

  for (guint i = 0; i < list->len; i++)
    g_string_append_printf (text, " %s", ((const LbCaution *) g_ptr_array_index (list, i))->text);
}

char *
lb_fish_words_sentence (const LbSetup *setup, const LbFishOn *on, const LbWording *wording)
{
  g_autofree char *lure = lb_words_lure (setup, on->lure);
  g_autofree char *closed = force (on->loads[0][0].in_hand, wording);
  g_autofree char *open = force (on->loads[1][0].in_hand, wording);
  GString *text = g_string_new (NULL);

  if (!lb_is_set (on->loads[0][0].in_hand) || !lb_is_set (on->loads[1][0].in_hand))
    {
      g_string_append (text, _ ("The rig has no answer with such a fish on."));
      return g_string_free (text, FALSE);
    }
  /* Translators: "lower lure", then two pulls in the hand */
  g_string_append_printf (text,
                          _ ("With it on the %s the hand would hold about %s, and about %s when "
                             "its mouth is open."),
                          lure, closed, open);
  add_cautions (text, setup, on, wording);
  return g_string_free (text, FALSE);
}

/* ---- Table ---- */

static void
add_mouth (LbReadingsBuilder *table, const LbFishOn *on, int open, const LbWording *wording)
{
  const LbFishLoad *loads = on->loads[open];

  lb_readings_builder_start (table);
  lb_readings_builder_add (table, _ ("Drag of the fish"), force (loads[0].drag, wording), NULL);
  for (int k = 0; k < LB_FISH_ON_N_SPEEDS; k++)
    {
      g_autofree char *speed =
          lb_words_quantity (LB_QUANTITY_SPEED, wording->units, on->speeds[k], wording->decimals);
      /* Translators: a boat speed */
      g_autofree char *label = g_strdup_printf (_ ("Hand at %s"), speed);

      lb_readings_builder_add (table, label, force (loads[k].in_hand, wording), NULL);
    }
  lb_readings_builder_end (table, g_strdup (open ? _ ("Mouth open") : _ ("Mouth closed")));
}

static void
add_lines (LbReadingsBuilder *table,
           const LbSetup *setup,
           const LbFishOn *on,
           const LbWording *wording)
{
  double strength = setup->rig.leaders[on->lure].line.breaking_load;

  lb_readings_builder_start (table);
  lb_readings_builder_add (table, _ ("Most it carries"), force (hardest (on)->leader_pull, wording),
                           NULL);
  lb_readings_builder_add (
      table, _ ("Parts at"),
      lb_is_set (strength) ? force (strength, wording) : g_strdup (_ ("not known")), NULL);
  lb_readings_builder_end (table, g_strdup (_ ("Its leader")));
}

LbReadingsTable *
lb_fish_words_table (const LbSetup *setup, const LbFishOn *on, const LbWording *wording)
{
  LbReadingsBuilder table;

  lb_readings_builder_init (&table);
  for (int open = 0; open < LB_FISH_N_MOUTHS; open++)
    add_mouth (&table, on, open, wording);
  add_lines (&table, setup, on, wording);
  return lb_readings_builder_finish (&table);
}

const char *
lb_fish_words_note (void)
{
  return _ ("A fish that swims and shakes pulls harder than that for moments.");
}
