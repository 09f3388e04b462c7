/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_numbers.h"

#include <math.h>
#include <string.h>

#include "fields.h"

/* How much of all there is to do each part is, about. */
#define SHARE_RUN 0.05
#define SHARE_TABLE 0.7
#define SHARE_SPEEDS 0.08

/* Weights nearer to one another than this are one, of their mass: 0.7938 kg and 1¾ lb. */
#define SAME_WEIGHT 0.003

/* The scale goes up to this many times the top of the band or the weight's own height, and this
 * high at least. */
#define SCALE_TIMES 1.5
#define LEAST_SCALE 0.3 /* m */
#define MOST_OF_DEPTH 0.6

typedef struct
{
  LbCardProgress progress;
  void *data;
  GCancellable *cancellable;
  double start, share; /* of the part that is computed now */
} Watch;

static bool
progress_cb (void *data, double done)
{
  Watch *watch = data;

  if (watch->progress)
    watch->progress (watch->data, watch->start + watch->share * done);
  return g_cancellable_is_cancelled (watch->cancellable);
}

static bool
cancel_cb (void *data, size_t iterations)
{
  return g_cancellable_is_cancelled (((Watch *) data)->cancellable);
}

static void
next_part (Watch *watch, double share)
{
  watch->start += watch->share;
  watch->share = share;
}

/* ---- The axes of the table ---- */

static int
compare_numbers (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;

  return (first > second) - (first < second);
}

static bool
is_same_weight (double a, double b)
{
  return fabs (a - b) <= SAME_WEIGHT * MAX (a, b);
}

/* How far one weight is from another by their ratio. */
static double
distance (double a, double b)
{
  return fabs (log (a / b));
}

/* Takes the weight that is furthest from `own` away. */
static void
drop_furthest (double *weights, size_t *n, double own)
{
  size_t furthest = distance (weights[0], own) > distance (weights[*n - 1], own) ? 0 : *n - 1;

  for (size_t i = furthest; i + 1 < *n; i++)
    weights[i] = weights[i + 1];
  (*n)--;
}

/* The document's weight among those owned, rising, each once. */
static void
choose_weights (LbCardNumbers *numbers, const LbCardRequest *request, double own)
{
  const LbField *field = lb_field ("weight.mass_kg");
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (double));

  g_array_append_val (all, own);
  for (size_t i = 0; i < request->n_weights; i++)
    if (lb_field_accepts (field, request->weights[i]) && !is_same_weight (request->weights[i], own))
      g_array_append_val (all, request->weights[i]);
  g_array_sort (all, compare_numbers);
  for (guint i = 1; i < all->len;)
    if (is_same_weight (g_array_index (all, double, i), g_array_index (all, double, i - 1)))
      g_array_remove_index (all, i);
    else
      i++;
  numbers->n_weights = all->len;
  while (numbers->n_weights > LB_CARD_MOST_WEIGHTS)
    drop_furthest ((double *) (void *) all->data, &numbers->n_weights, own);
  memcpy (numbers->weights, all->data, numbers->n_weights * sizeof (double));
}

static void
choose_axes (LbCardNumbers *numbers, const LbCardRequest *request)
{
  const LbSetup *setup = &request->contents->setup;
  const LbCardSeries *series = request->contents->card.series;
  LbUnits units = request->wording.units;

  choose_weights (numbers, request, setup->rig.weight.mass);
  numbers->n_depths =
      lb_card_series_get_values (&series[LB_CARD_SERIES_OF_DEPTHS], LB_CARD_SERIES_OF_DEPTHS, units,
                                 setup->river.depth, numbers->depths);
  numbers->n_currents =
      lb_card_series_get_values (&series[LB_CARD_SERIES_OF_CURRENTS], LB_CARD_SERIES_OF_CURRENTS,
                                 units, setup->river.surface_current, numbers->currents);
}

/* ---- Solving ---- */

static LbStatus
compute_table (LbCardNumbers *numbers, const LbSetup *setup, const LbPlanTask *task)
{
  static const LbReadings on_bed = { .weight = { .on_bed = true } };
  const LbReadings *readings = lb_result_get_readings (numbers->result);
  size_t n_rows = numbers->n_weights * numbers->n_depths;
  LbLineTableAxes axes = { numbers->weights,  numbers->n_weights, numbers->depths,
                           numbers->n_depths, numbers->currents,  numbers->n_currents,
                           numbers->hold };

  numbers->hold = axes.hold = lb_line_table_hold (setup, readings ? readings : &on_bed);
  numbers->cells = g_new0 (LbLineCell, n_rows * numbers->n_currents + 1);
  numbers->limits = g_new0 (LbRunWindow, n_rows + 1);
  return lb_line_table_compute (setup, &axes, task, numbers->cells, numbers->limits);
}

static double
highest_on_scale (const LbSetup *setup, const LbReadings *readings)
{
  double highest = MAX (SCALE_TIMES * setup->band.high, SCALE_TIMES * readings->weight.height);

  return MIN (MAX (highest, LEAST_SCALE), MOST_OF_DEPTH * readings->bed_depth_at_reel);
}

static LbStatus
compute_speeds (LbCardNumbers *numbers, const LbSetup *setup, Watch *watch)
{
  const LbPlanTask task = { progress_cb, watch };
  const LbReadings *readings = lb_result_get_readings (numbers->result);
  LbStatus status;

  if (readings == NULL)
    return LB_STATUS_OK;
  next_part (watch, SHARE_SPEEDS);
  status = lb_speed_window_compute (setup, readings->line_out, &task, &numbers->speeds);
  next_part (watch, 1 - watch->start - watch->share);
  if (status == LB_STATUS_OK)
    status = lb_angle_scale_compute (setup, readings->line_out, highest_on_scale (setup, readings),
                                     &task, &numbers->scale);
  return status;
}

LbCardNumbers *
lb_card_numbers_compute (const LbCardRequest *request,
                         LbCardProgress progress,
                         void *progress_data,
                         GCancellable *cancellable,
                         GError **error)
{
  const LbSetup *setup = &request->contents->setup;
  const LbCard *card = &request->contents->card;
  g_autoptr (LbCardNumbers) numbers = g_new0 (LbCardNumbers, 1);
  Watch watch = { progress, progress_data, cancellable, 0, SHARE_RUN };
  const LbPlanTask task = { progress_cb, &watch };
  const LbSteadyOptions options = { .cancel = cancel_cb, .cancel_data = &watch };
  LbStatus status = LB_STATUS_OK;

  numbers->result = lb_result_solve (NULL, setup, &options);
  if (card->prints[LB_CARD_PART_RUNNING] && card->running_variants)
    numbers->comparison = lb_comparison_solve (request->contents, &options);
  next_part (&watch, SHARE_TABLE);
  if (card->prints[LB_CARD_PART_TABLE])
    {
      choose_axes (numbers, request);
      status = compute_table (numbers, setup, &task);
    }
  if (status == LB_STATUS_OK)
    status = compute_speeds (numbers, setup, &watch);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  if (status == LB_STATUS_OUT_OF_MEMORY)
    g_error ("out of memory");
  if (progress)
    progress (progress_data, 1);
  return g_steal_pointer (&numbers);
}

void
lb_card_numbers_free (LbCardNumbers *numbers)
{
  if (numbers == NULL)
    return;
  g_clear_object (&numbers->result);
  g_clear_object (&numbers->comparison);
  g_free (numbers->cells);
  g_free (numbers->limits);
  g_free (numbers);
}
