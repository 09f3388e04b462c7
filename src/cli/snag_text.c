/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "snag_text.h"

#include <glib/gi18n.h>

#include "hang_up.h"
#include "text_layout.h"
#include "words.h"

#define LABEL 26
#define COLUMN 16
#define MOST_COLUMNS 3 /* side by side */
#define MOST_ROWS 12   /* of times */

/* Weight and lures side by side, from `first` on. */
typedef struct
{
  const LbSetup *setup;
  LbUnits units;
  size_t first, n;
  LbHangUp columns[MOST_COLUMNS];
} Block;

/* What stands in a column; free with g_free(). */
typedef char *(*Cell) (const Block *block, size_t column, double time);

static char *
time_word (double time, int decimals)
{
  return lb_words_quantity (LB_QUANTITY_TIME, LB_UNITS_METRIC, time, decimals);
}

/* ---- Cells ---- */

static char *
name_cell (const Block *block, size_t column, double time)
{
  size_t body = block->first + column;

  (void) time;
  return body == 0 ? g_strdup (_ ("weight")) : lb_words_lure (block->setup, body - 1);
}

static char *
pull_cell (const Block *block, size_t column, double time)
{
  const LbHangUp *held = &block->columns[column];

  if (time > held->times.until_breaks)
    return g_strdup (_ ("parted"));
  return lb_words_quantity (LB_QUANTITY_FORCE, block->units, lb_hang_up_pull (held, time), -1);
}

static char *
hand_cell (const Block *block, size_t column, double time)
{
  const LbSnagTimes *times = &block->columns[column].times;
  g_autofree char *word = time_word (times->until_hand, 1);

  (void) time;
  if (times->until_hand > times->until_breaks)
    return g_strdup (_ ("parts before"));
  /* Translators: a time ("2.7 s") */
  return g_strdup_printf (_ ("after %s"), word);
}

static char *
break_cell (const Block *block, size_t column, double time)
{
  double breaks = block->columns[column].times.until_breaks;
  g_autofree char *word = time_word (breaks, 1);

  (void) time;
  return lb_is_set (breaks) ? g_strdup_printf (_ ("after %s"), word) : g_strdup (_ ("not known"));
}

static char *
part_cell (const Block *block, size_t column, double time)
{
  const LbSnagTimes *times = &block->columns[column].times;

  (void) time;
  if (!lb_is_set (times->until_breaks))
    return g_strdup ("");
  return lb_words_part (block->setup, times->breaks);
}

/* ---- Tables ---- */

static void
add_row (GString *out, const Block *block, const char *label, Cell cell, double time)
{
  lb_text_add_padded (out, label, LABEL);
  for (size_t i = 0; i < block->n; i++)
    {
      g_autofree char *text = cell (block, i, time);
      lb_text_add_padded (out, text, i + 1 < block->n ? COLUMN : 0);
    }
  g_string_append_c (out, '\n');
}

/* Round, s, so that the rows are few. */
static double
step_for (double end)
{
  static const double steps[] = { 0.1, 0.2, 0.5, 1, 2, 5, 10 };
  size_t i = 0;

  while (i + 1 < G_N_ELEMENTS (steps) && end > (MOST_ROWS - 1) * steps[i])
    i++;
  return steps[i];
}

static void
add_block (GString *out, const Block *block)
{
  g_autofree char *limit = lb_words_quantity (LB_QUANTITY_FORCE, block->units, LB_HAND_LIMIT, 0);
  g_autofree char *beyond = g_strdup_printf (_ ("    more than %s"), limit);
  double end = 0, step;

  for (size_t i = 0; i < block->n; i++)
    end = fmax (end, block->columns[i].end);
  step = step_for (end);
  add_row (out, block, "", name_cell, 0);
  for (int k = 0; k * step <= end + 1e-9; k++)
    {
      g_autofree char *word = time_word (k * step, step < 1 ? 1 : 0);
      g_autofree char *label = g_strdup_printf (_ ("    after %s"), word);
      add_row (out, block, k == 0 ? _ ("    now") : label, pull_cell, k * step);
    }
  add_row (out, block, beyond, hand_cell, 0);
  add_row (out, block, _ ("    a line breaks"), break_cell, 0);
  add_row (out, block, "", part_cell, 0);
}

static void
add_case (GString *out, const LbResult *result, LbUnits units, bool motor_stopped)
{
  const LbSetup *setup = lb_result_get_setup (result);
  size_t n_bodies = 1 + setup->rig.n_leaders;
  double speed = lb_hang_up (result, 0, motor_stopped).speed;
  g_autofree char *shown = lb_words_quantity (LB_QUANTITY_SPEED, units, fabs (speed), -1);

  /* Translators: the boat's speed, "0.9 mph" */
  g_string_append_printf (out,
                          motor_stopped ? _ ("  With the motor stopped, drifting at %s\n")
                                        : _ ("  With the boat going on at %s\n"),
                          shown);
  if (fabs (speed) < LB_HANG_UP_AT_REST)
    {
      g_string_append (out, _ ("    It does not move, and the pull stays as it is.\n"));
      return;
    }
  for (size_t first = 0; first < n_bodies; first += MOST_COLUMNS)
    {
      Block block = {
        setup, units, first, MIN (n_bodies - first, MOST_COLUMNS), { { { { 0 } } } }
      };
      for (size_t i = 0; i < block.n; i++)
        block.columns[i] = lb_hang_up (result, first + i, motor_stopped);
      add_block (out, &block);
    }
}

char *
lb_snag_text (const LbResult *result, LbUnits units)
{
  g_autofree char *limit = lb_words_quantity (LB_QUANTITY_FORCE, units, LB_HAND_LIMIT, 0);
  /* Translators: a pull, "44 lbf" */
  g_autofree char *note = g_strdup_printf (
      _ ("  The car industry’s ergonomics allow %s for a first pull with two hands (tables behind "
         "it: Snook and Ciriello 1991). It is computed with a hand that gives no line and a bed "
         "that does not yield: the blow when it stops dead comes on top."),
      limit);
  GString *out = g_string_new (NULL);

  g_string_append (out, _ ("\nIn the hand if it hung up on the bed now\n"));
  add_case (out, result, units, false);
  add_case (out, result, units, true);
  lb_text_add_wrapped (out, "", 2, note);
  return g_string_free (out, FALSE);
}
