/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Boat speed and wire angle on a card: the window of speeds, and the marks of the gauge. */
#include <math.h>
#include <glib/gi18n-lib.h>

#include "card_wording.h"

#define AT_REST                                                                                    \
  0.02 /* m/s: nobody holds a boat slower than that, and at rest there is no friction */

/* ---- The speed window ---- */

/* "With 24 ft 6 in out, 20 ft deep, current 2.7 mph" */
static char *
line_in_water (const LbCardWriter *w, const LbReadings *readings)
{
  const LbRiver *river = &w->contents->setup.river;
  double bed = readings->bed_depth_at_reel; /* the river's own depth, unless the bed is uneven */
  g_autofree char *out = lb_card_quantity (w, LB_QUANTITY_LENGTH, readings->line_out);
  g_autofree char *depth = lb_card_quantity (w, LB_QUANTITY_LENGTH, bed);
  g_autofree char *current = lb_card_quantity (w, LB_QUANTITY_SPEED, river->surface_current);

  return g_strdup_printf (_ ("%s out, %s deep, current %s"), out, depth, current);
}

static char *
window_sentence (const LbCardWriter *w, const LbReadings *readings, const char *range)
{
  const LbAngleScale *scale = &w->numbers->scale;
  g_autofree char *line = line_in_water (w, readings);
  g_autofree char *all = NULL;
  g_autofree char *lift = NULL;

  if (range == NULL)
    return g_strdup_printf (_ ("%s: the lures are in the band at no boat speed."), line);
  if (w->numbers->speeds.below == LB_RUN_DRAGS)
    return g_strdup_printf (_ ("%s: for the lures to stay in the band and the weight off the bed, "
                               "the boat's speed over the ground may be %s."),
                            line, range);
  all =
      g_strdup_printf (_ ("%s: for the lures to stay in the band, the boat's speed over the ground "
                          "may be %s."),
                       line, range);
  if (scale->n == 0 || !scale->touches_below || scale->speed[0] <= AT_REST)
    return g_steal_pointer (&all);
  lift = lb_card_quantity (w, LB_QUANTITY_SPEED, scale->speed[0]);
  return g_strdup_printf (_ ("%s Slower than %s the weight drags on the bed."), all, lift);
}

void
lb_card_write_speeds (const LbCardWriter *w)
{
  const LbReadings *readings = lb_result_get_readings (w->numbers->result);
  LbCardSpeedWindow *out = &w->card->speed_window;
  LbRunWindow window = w->numbers->speeds;
  g_autofree char *range = NULL;

  out->low = out->high = LB_UNSET;
  out->words = g_strdup ("");
  out->sentence = g_strdup ("");
  if (readings == NULL || readings->n_leaders == 0)
    return;
  if (window.low < AT_REST)
    window.below = LB_RUN_IN_BAND;
  range = lb_card_speed_range (w, &window);
  out->low = window.low;
  out->high = window.high;
  out->low_is_rest = lb_is_set (window.low) && window.below == LB_RUN_IN_BAND;
  out->high_is_limit = lb_is_set (window.high) && window.above == LB_RUN_IN_BAND;
  g_free (out->words);
  g_free (out->sentence);
  out->words =
      range ? g_strdup_printf (_ ("%s over the ground"), range) : g_strdup (_ ("at no boat speed"));
  out->sentence = window_sentence (w, readings, range);
}

/* ---- The gauge ---- */

/* A mark every step, words every `major` steps. */
typedef struct
{
  double step; /* in or cm */
  int major;
} Marks;

static const Marks us_marks[] = { { 1, 3 }, { 2, 3 }, { 3, 4 }, { 6, 2 }, { 12, 2 }, { 24, 5 } };
static const Marks metric_marks[] = { { 2, 5 },  { 5, 2 },  { 10, 5 },
                                      { 20, 5 }, { 50, 2 }, { 100, 5 } };

/* The finest that leave room for all. */
static Marks
choose_marks (LbUnits units, double range)
{
  const Marks *marks = units == LB_UNITS_US ? us_marks : metric_marks;
  double number = lb_units_from_si (LB_QUANTITY_HEIGHT, units, range);
  size_t i = 0;

  G_STATIC_ASSERT (G_N_ELEMENTS (us_marks) == G_N_ELEMENTS (metric_marks));
  while (i + 1 < G_N_ELEMENTS (us_marks) && number / marks[i].step > LB_CARD_MOST_TICKS - 3)
    i++;
  return marks[i];
}

static void
add_tick (LbCardGauge *gauge, double angle, double height, bool major, char *words)
{
  gauge->ticks[gauge->n_ticks++] = (LbCardTick){ angle, height, words, major };
}

static void
write_ticks (const LbCardWriter *w, const LbAngleScale *scale)
{
  LbCardGauge *gauge = &w->card->gauge;
  LbUnits units = w->wording->units;
  double lowest = scale->height[0], highest = scale->height[scale->n - 1];
  Marks marks = choose_marks (units, highest - lowest);
  double first = lb_units_from_si (LB_QUANTITY_HEIGHT, units, lowest) / marks.step;

  /* Where it begins: the weight comes off the bed, or the boat is at rest. */
  add_tick (gauge, scale->angle[0], lowest, true,
            scale->touches_below ? g_strdup (_ ("bed")) : lb_card_height (w, lowest));
  for (double k = floor (first) + 1; gauge->n_ticks < LB_CARD_MOST_TICKS; k++)
    {
      double height = lb_units_to_si (LB_QUANTITY_HEIGHT, units, k * marks.step);
      double angle = lb_angle_scale_angle (scale, height);

      if (height > highest || !lb_is_set (angle))
        break;
      if (angle > gauge->ticks[gauge->n_ticks - 1].angle)
        add_tick (gauge, angle, height, fmod (k, marks.major) == 0, lb_card_height (w, height));
    }
}

void
lb_card_write_gauge (const LbCardWriter *w)
{
  const LbReadings *readings = lb_result_get_readings (w->numbers->result);
  const LbAngleScale *scale = &w->numbers->scale;
  LbCardGauge *gauge = &w->card->gauge;
  g_autofree char *line = NULL;

  gauge->title = g_strdup (_ ("Weight off the bed"));
  gauge->low = gauge->high = gauge->own_angle = LB_UNSET;
  if (readings == NULL || !w->card->card.prints[LB_CARD_PART_GAUGE])
    {
      gauge->caption = g_strdup ("");
      return;
    }
  line = line_in_water (w, readings);
  gauge->own_angle = readings->wire_angle;
  if (scale->n == 0)
    {
      gauge->caption =
          g_strdup_printf (_ ("No gauge for %s: there the wire angle does not tell how "
                              "high the weight hangs."),
                           line);
      return;
    }
  gauge->low = scale->angle[0];
  gauge->high = scale->angle[scale->n - 1];
  gauge->touches_below = scale->touches_below;
  gauge->caption = g_strdup_printf ("%s.", line);
  write_ticks (w, scale);
}
