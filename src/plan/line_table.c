/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "line_table.h"

#include "plan_run.h"

/* Limits are looked for on so many currents besides the table's own, up to this much beyond the
 * fastest; no river that the program takes is faster than the last. */
#define N_EVEN_CURRENTS 16
#define BEYOND_FASTEST 1.5
#define LEAST_FASTEST 1.5 /* m/s */
#define FASTEST_RIVER 6.0 /* m/s */

/* One weight at one depth. */
typedef struct
{
  LbPlanRun *run;
  LbSetup setup;
  const LbLineTableAxes *axes;
  LbLineCell *cells; /* by current */
} Row;

LbLineOut
lb_line_table_hold (const LbSetup *setup, const LbReadings *readings)
{
  const LbLineOut *own = &setup->rig.line_out;

  if (own->mode != LB_LINE_OUT_GIVEN)
    return *own;
  if (readings->weight.on_bed || !(readings->weight.height > 0))
    return (LbLineOut){ LB_LINE_OUT_TOUCHING, 0 };
  return (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, readings->weight.height };
}

static LbLineCell
cell_of (const LbPlanAnswer *answer)
{
  LbLineCell cell = { answer->state, answer->status, LB_UNSET, LB_UNSET, LB_UNSET };

  if (lb_run_state_has_answer (answer->state))
    {
      cell.line_out = answer->readings.line_out;
      cell.wire_angle = answer->readings.wire_angle;
      cell.hand_tension = answer->readings.hand_tension;
    }
  return cell;
}

/* Solves at a current, and keeps the answer when it is one of the table's. */
static double
margin_cb (void *data, double current, LbRunState *state)
{
  Row *row = data;
  LbPlanAnswer answer;

  row->setup.river.surface_current = current;
  lb_plan_run_solve (row->run, &row->setup, &answer);
  for (size_t c = 0; c < row->axes->n_currents; c++)
    if (row->axes->currents[c] == current)
      row->cells[c] = cell_of (&answer);
  *state = answer.state;
  return lb_plan_margin (&row->setup, &answer);
}

/* The table's currents among others that are evenly spread, rising, each once. */
static size_t
spread_currents (const LbLineTableAxes *axes, double *values)
{
  double fastest = axes->n_currents > 0 ? axes->currents[axes->n_currents - 1] : 0;
  double last = fmin (fmax (BEYOND_FASTEST * fastest, LEAST_FASTEST), FASTEST_RIVER);
  size_t n = 0, c = 0;

  last = fmax (last, fastest);
  for (int i = 0; i <= N_EVEN_CURRENTS; i++)
    {
      double even = last * i / N_EVEN_CURRENTS;

      while (c < axes->n_currents && axes->currents[c] <= even)
        values[n++] = axes->currents[c++];
      if (n == 0 || values[n - 1] < even)
        values[n++] = even;
    }
  return n;
}

LbStatus
lb_line_table_compute (const LbSetup *setup,
                       const LbLineTableAxes *axes,
                       const LbPlanTask *task,
                       LbLineCell *cells,
                       LbRunWindow *limits)
{
  double values[LB_WINDOW_MOST_VALUES];
  size_t n_values, n_rows = axes->n_weights * axes->n_depths;
  LbPlanRun run;
  Row row = { .run = &run, .setup = *setup, .axes = axes };

  if (axes->n_currents > LB_LINE_TABLE_MOST_VALUES)
    return LB_STATUS_BAD_SETUP;
  if (lb_plan_run_start (&run, task) != LB_STATUS_OK)
    return LB_STATUS_OUT_OF_MEMORY;
  n_values = spread_currents (axes, values);
  row.setup.river.n_bed_points = 0;
  row.setup.rig.line_out = axes->hold;
  for (size_t i = 0; i < n_rows && run.fault == LB_STATUS_OK; i++)
    {
      run.done = (double) i / (double) n_rows;
      row.setup.rig.weight.mass = axes->weights[i / axes->n_depths];
      row.setup.river.depth = axes->depths[i % axes->n_depths];
      row.cells = cells + i * axes->n_currents;
      limits[i] = lb_run_window_find (margin_cb, NULL, &row, values, n_values,
                                      setup->river.surface_current);
    }
  lb_plan_run_end (&run);
  return run.fault;
}
