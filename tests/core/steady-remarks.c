/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady-remarks.h"

#include "steady-checks.h"
#include "steady.h"

#define LENGTHS 100
#define HALVINGS 60
#define HELD 1e-8 /* m */

typedef struct
{
  LbSteady *steady;
  LbSetup setup; /* with the line out given */
  double asked;  /* m above the bed */
  size_t segments;
} Scan;

static double
length_at (int i)
{
  return LB_STEADY_SHORTEST_LINE
         * pow (LB_STEADY_LONGEST_LINE / LB_STEADY_SHORTEST_LINE, (double) i / (LENGTHS - 1));
}

/* How far the weight is above its height with a line out; a NAN when that is not to be had. */
static double
error_at (Scan *scan, double line_out, bool cold)
{
  scan->setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
  LbStatus status =
      lb_steady_solve (scan->steady, &scan->setup, &(LbSteadyOptions){ .cold = cold });
  const LbShape *shape = lb_steady_shape (scan->steady);

  if (status != LB_STATUS_OK || lb_steady_statistics (scan->steady).segments != scan->segments)
    return NAN;
  return shape_height (&scan->setup, shape, shape->weight) - scan->asked;
}

/* Between two line outs with the weight above its height at the one and below at the other: true
 * when it is held on the way from `near`. */
static bool
halve (Scan *scan, double near, double near_error, double far, bool cold, double *line_out)
{
  error_at (scan, near, cold);
  for (int k = 0; k < HALVINGS; k++)
    {
      double middle = 0.5 * (near + far);
      double error = error_at (scan, middle, cold);

      if (fabs (error) <= HELD)
        {
          *line_out = middle;
          return true;
        }
      if (isnan (error) || (error > 0) != (near_error > 0))
        {
          far = middle;
          error_at (scan, near, cold);
        }
      else
        near = middle;
    }
  return false;
}

/* Letting out (`way` 1), taking in (-1), or from nothing every time (0). */
static bool
scan_lengths (Scan *scan, int way, double *line_out, bool *above, bool *below)
{
  double error[LENGTHS];

  for (int k = 0; k < LENGTHS; k++)
    {
      int i = way < 0 ? LENGTHS - 1 - k : k;
      error[i] = error_at (scan, length_at (i), way == 0 || k == 0);
      *above = *above || error[i] > 0;
      *below = *below || error[i] < 0;
    }
  for (int i = 0; i + 1 < LENGTHS; i++)
    {
      int near = way < 0 ? i + 1 : i, far = way < 0 ? i : i + 1;
      if (isnan (error[near]) || isnan (error[far]) || (error[near] > 0) == (error[far] > 0))
        continue;
      if (halve (scan, length_at (near), error[near], length_at (far), way == 0, line_out))
        return true;
    }
  return false;
}

bool
remark_held_after_all (
    const LbSetup *setup, size_t segments, double *line_out, bool *above, bool *below)
{
  const LbLineOut *asked = &setup->rig.line_out;
  Scan scan = { lb_steady_new (), *setup, 0, segments };
  bool held = false;

  scan.asked = asked->mode == LB_LINE_OUT_TOUCHING ? 0 : asked->value;
  *above = *below = false;
  for (int way = 1; way >= -1 && !held; way--)
    held = scan_lengths (&scan, way, line_out, above, below);
  lb_steady_free (scan.steady);
  return held;
}
