/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fish_text.h"

#include <glib/gi18n.h>

#include "fish.h"
#include "text_layout.h"
#include "words.h"

#define N_SPEEDS 3
#define COLUMN 17

static const double shares[N_SPEEDS] = { 1, 0.5, 0 }; /* of the boat's speed */

/* One line: lure, mouth, and the hand's load at each speed; "-" where no answer was found. */
static void
add_line (GString *out,
          LbSteady *steady,
          const LbResult *result,
          size_t leader,
          LbFish fish,
          LbUnits units)
{
  const LbSetup *setup = lb_result_get_setup (result);
  double line_out = lb_result_get_shape (result)->line_out;
  g_autofree char *lure = lb_words_lure (setup, leader);
  g_autofree char *label =
      g_strdup_printf (fish.mouth_open ? _ ("  %s, mouth open") : _ ("  %s, mouth closed"), lure);

  lb_text_add_padded (out, label, 28);
  for (size_t k = 0; k < N_SPEEDS; k++)
    {
      double speed = shares[k] * setup->boat.speed_over_ground;
      LbFishLoad load = { .in_hand = LB_UNSET };
      lb_fish_hold (steady, setup, leader, &fish, line_out, speed, &load);
      g_autofree char *shown = lb_words_quantity (LB_QUANTITY_FORCE, units, load.in_hand, -1);
      if (k + 1 < N_SPEEDS)
        lb_text_add_padded (out, shown, COLUMN);
      else
        g_string_append_printf (out, "%s\n", shown);
    }
}

char *
lb_fish_text (const LbResult *result, double length, LbUnits units)
{
  const char *const heads[N_SPEEDS] = { _ ("at this speed"), _ ("at half of it"),
                                        _ ("on the spot") };
  const LbSetup *setup = lb_result_get_setup (result);
  g_autofree char *shown = lb_words_quantity (LB_QUANTITY_LENGTH, units, length, -1);
  GString *out = g_string_new (NULL);
  LbSteady *steady = lb_steady_new ();

  g_string_append_printf (
      out, _ ("\nIn the hand with a fish of %s on, towed and limp (estimate)\n"), shown);
  lb_text_add_padded (out, "", 28);
  for (size_t k = 0; k < N_SPEEDS; k++)
    if (k + 1 < N_SPEEDS)
      lb_text_add_padded (out, heads[k], COLUMN);
    else
      g_string_append_printf (out, "%s\n", heads[k]);
  for (size_t i = 0; steady && i < setup->rig.n_leaders; i++)
    for (int open = 0; open < 2; open++)
      add_line (out, steady, result, i, (LbFish){ length, open == 1 }, units);
  lb_text_add_wrapped (out, "", 2,
                       _ ("  A fish that swims and shakes pulls harder than that for moments."));
  lb_steady_free (steady);
  return g_string_free (out, FALSE);
}
