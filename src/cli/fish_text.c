/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fish_text.h"

#include <glib/gi18n.h>

#include "fish_words.h"
#include "text_layout.h"
#include "words.h"

#define LABEL 28
#define COLUMN 17

/* A line of the table. */
static void
add_line (GString *out, const char *label, const char *const columns[LB_FISH_N_SPEEDS])
{
  lb_text_add_padded (out, label, LABEL);
  for (size_t k = 0; k + 1 < LB_FISH_N_SPEEDS; k++)
    lb_text_add_padded (out, columns[k], COLUMN);
  g_string_append_printf (out, "%s\n", columns[LB_FISH_N_SPEEDS - 1]);
}

static void
add_loads (GString *out, const char *label, const LbFishLoad loads[], LbUnits units)
{
  char *words[LB_FISH_N_SPEEDS];

  for (size_t k = 0; k < LB_FISH_N_SPEEDS; k++)
    words[k] = lb_words_quantity (LB_QUANTITY_FORCE, units, loads[k].in_hand, -1);
  add_line (out, label, (const char *const *) words);
  for (size_t k = 0; k < LB_FISH_N_SPEEDS; k++)
    g_free (words[k]);
}

static void
add_lure (GString *out, const LbFishLoads *loads, const LbSetup *setup, size_t i, LbUnits units)
{
  g_autofree char *lure = lb_words_lure (setup, i);
  g_autofree char *closed = g_strdup_printf (_ ("  %s, mouth closed"), lure);
  g_autofree char *open = g_strdup_printf (_ ("  %s, mouth open"), lure);

  add_loads (out, closed, loads->loads[i][0], units);
  add_loads (out, open, loads->loads[i][1], units);
}

/* What the hardest of them calls for. */
static void
add_cautions (GString *out, const LbFishLoads *loads, const LbSetup *setup, LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  g_autoptr (GPtrArray) list = lb_fish_words_cautions (
      setup, loads->loads[0][0], loads->n_lures * LB_FISH_N_MOUTHS * LB_FISH_N_SPEEDS, &wording);

  for (guint i = 0; i < list->len; i++)
    lb_text_add_wrapped (out, "  ! ", 4, ((const LbCaution *) g_ptr_array_index (list, i))->text);
}

char *
lb_fish_text (const LbResult *result, double length, LbUnits units)
{
  const char *const heads[LB_FISH_N_SPEEDS] = { _ ("at this speed"), _ ("at half of it"),
                                                _ ("on the spot") };
  g_autofree char *shown = lb_words_quantity (LB_QUANTITY_LENGTH, units, length, -1);
  LbFishLoads loads = lb_fish_loads (result, length);
  GString *out = g_string_new (NULL);
  g_autofree char *note = NULL;

  g_string_append_printf (
      out, _ ("\nIn the hand with a fish of %s on, towed and limp (estimate)\n"), shown);
  add_line (out, "", heads);
  for (size_t i = 0; i < loads.n_lures; i++)
    add_lure (out, &loads, lb_result_get_setup (result), i, units);
  add_cautions (out, &loads, lb_result_get_setup (result), units);
  note = g_strdup_printf ("  %s", lb_fish_words_note ());
  lb_text_add_wrapped (out, "", 2, note);
  return g_string_free (out, FALSE);
}
