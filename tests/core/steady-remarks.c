/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady-remarks.h"

#include "steady-checks.h"
#include "steady.h"

#define HALVINGS 60
#define HELD 1e-3    /* m, of the height on both sides */
#define NO_WAY 1e-12 /* of the line out, between both sides */
#define STEEPEST 1e4 /* m of height per m of line: a weight that goes faster leaps */
#define MOST_LENGTHS 1000

typedef struct
{
  LbSteady *steady;
  LbSetup setup; /* with the line out given */
  double asked;  /* m above the bed */
  size_t segments;
  int lengths;
} Search;

static double
length_at (const Search *search, int i)
{
  return LB_STEADY_SHORTEST_LINE
         * pow (LB_STEADY_LONGEST_LINE / LB_STEADY_SHORTEST_LINE,
                (double) i / (search->lengths - 1));
}

/* How far the weight is above its height with a line out; a NAN when that is not to be had. */
static double
error_at (Search *search, double line_out, bool cold)
{
  search->setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
  LbStatus status =
      lb_steady_solve (search->steady, &search->setup, &(LbSteadyOptions){ .cold = cold });
  const LbShape *shape = lb_steady_shape (search->steady);

  if (status != LB_STATUS_OK || lb_steady_statistics (search->steady).segments != search->segments)
    return NAN;
  return shape_height (&search->setup, shape, shape->weight) - search->asked;
}

/* Between two line outs with the weight above its height at the one and below at the other: true
 * when it is held on the way from `near`. */
static bool
halve (Search *search, double near, double near_error, double far, double far_error, bool cold)
{
  error_at (search, near, cold);
  for (int k = 0; k < HALVINGS; k++)
    {
      double middle = 0.5 * (near + far);
      double error = error_at (search, middle, cold);

      if (isnan (error) || (error > 0) != (near_error > 0))
        {
          far = middle;
          far_error = error;
          error_at (search, near, cold);
        }
      else
        {
          near = middle;
          near_error = error;
        }
      if (fabs (near_error) <= HELD && fabs (far_error) <= HELD
          && fabs (near_error - far_error) < STEEPEST * fabs (far - near))
        return true;
      if (fabs (far - near) < NO_WAY * near || fabs (near_error) > STEEPEST * fabs (far - near))
        return false;
    }
  return false;
}

/* Letting out (`way` 1), taking in (-1), or from nothing every time (0). */
static void
search_lengths (Search *search, int way, RemarkSearch *found)
{
  double error[MOST_LENGTHS];

  for (int k = 0; k < search->lengths; k++)
    {
      int i = way < 0 ? search->lengths - 1 - k : k;
      error[i] = error_at (search, length_at (search, i), way == 0 || k == 0);
      found->above = found->above || error[i] > 0;
      found->below = found->below || error[i] < 0;
    }
  for (int i = 0; i + 1 < search->lengths && !found->held; i++)
    {
      int near = way < 0 ? i + 1 : i, far = way < 0 ? i : i + 1;
      if (isnan (error[near]) || isnan (error[far]) || (error[near] > 0) == (error[far] > 0))
        continue;
      found->held = halve (search, length_at (search, near), error[near], length_at (search, far),
                           error[far], way == 0);
      found->line_out = search->setup.rig.line_out.value;
    }
}

RemarkSearch
remark_search (const LbSetup *setup, size_t segments, int lengths)
{
  const LbLineOut *asked = &setup->rig.line_out;
  Search search = { lb_steady_new (), *setup, 0, segments, lengths };
  RemarkSearch found = { .line_out = NAN };

  search.asked = asked->mode == LB_LINE_OUT_TOUCHING ? 0 : asked->value;
  for (int way = 1; way >= -1 && !found.held; way--)
    search_lengths (&search, way, &found);
  lb_steady_free (search.steady);
  return found;
}
