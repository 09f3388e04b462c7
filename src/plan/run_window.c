/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run_window.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_min.h>

#define MOST_PEAK_STEPS 16

/* A value of the slider that was tried. */
typedef struct
{
  double value, margin;
  LbRunState state;
} Trial;

typedef struct
{
  LbWindowMargin margin;
  LbWindowHome home; /* or NULL */
  void *data;
  Trial best; /* of a look for a peak */
} Finder;

static Trial
try_value (Finder *finder, double value)
{
  Trial trial = { .value = value };

  trial.margin = finder->margin (finder->data, value, &trial.state);
  return trial;
}

static bool
is_in (const Trial *trial)
{
  return trial->state == LB_RUN_IN_BAND;
}

/* ---- A stretch between two values ---- */

/* GSL looks for the least. */
static double
depth_of_peak (double value, void *data)
{
  Finder *finder = data;
  Trial trial = try_value (finder, value);

  if (trial.margin > finder->best.margin)
    finder->best = trial;
  return -trial.margin;
}

/* The highest margin between `left` and `right`, of which the one at `middle` is no lower; stops as
 * soon as it is in the band. */
static Trial
find_peak (Finder *finder, const Trial *left, const Trial *middle, const Trial *right)
{
  gsl_function function = { depth_of_peak, finder };
  gsl_min_fminimizer *minimizer = gsl_min_fminimizer_alloc (gsl_min_fminimizer_brent);

  finder->best = *middle;
  if (minimizer == NULL)
    return finder->best;
  gsl_min_fminimizer_set_with_values (minimizer, &function, middle->value, -middle->margin,
                                      left->value, -left->margin, right->value, -right->margin);
  for (int k = 0; k < MOST_PEAK_STEPS && !is_in (&finder->best); k++)
    if (gsl_min_fminimizer_iterate (minimizer) != GSL_SUCCESS)
      break;
  gsl_min_fminimizer_free (minimizer);
  return finder->best;
}

/* ---- Ends ---- */

/* Back to the rig as it runs now, and from there to one that is in. */
static void
return_to (Finder *finder, const Trial *in)
{
  if (finder->home == NULL)
    return;
  finder->home (finder->data);
  try_value (finder, in->value);
}

/* Halves the way between a trial that is in and one that is out. */
static void
close_in (Finder *finder, Trial *in, Trial *out)
{
  return_to (finder, in);
  while (fabs (in->value - out->value) > LB_WINDOW_TOLERANCE)
    {
      Trial trial = try_value (finder, 0.5 * (in->value + out->value));

      if (is_in (&trial))
        *in = trial;
      else
        {
          *out = trial;
          return_to (finder, in);
        }
    }
}

/* The stretch from trials[first] to trials[last], both in, with its ends. */
static LbRunWindow
finish (Finder *finder, const Trial *trials, size_t n, size_t first, size_t last)
{
  LbRunWindow window = { trials[first].value, trials[last].value, LB_RUN_IN_BAND, LB_RUN_IN_BAND };

  if (first > 0)
    {
      Trial in = trials[first], out = trials[first - 1];

      close_in (finder, &in, &out);
      window.low = in.value;
      window.below = out.state;
    }
  if (last + 1 < n)
    {
      Trial in = trials[last], out = trials[last + 1];

      close_in (finder, &in, &out);
      window.high = in.value;
      window.above = out.state;
    }
  return window;
}

/* ---- Which stretch ---- */

/* How good the stretch from `low` to `high` is: one that holds `own` beats all, then the width. */
static double
rate (double low, double high, double own)
{
  return low <= own && own <= high ? INFINITY : high - low;
}

/* The best row of trials that are in; false when none is. */
static bool
find_row (const Trial *trials, size_t n, double own, size_t *first, size_t *last)
{
  double best = -1;

  for (size_t i = 0; i < n; i++)
    {
      size_t end = i;
      double rating;

      if (!is_in (&trials[i]))
        continue;
      while (end + 1 < n && is_in (&trials[end + 1]))
        end++;
      /* The ends lie somewhere beyond the trials that are in. */
      rating = rate (i > 0 ? trials[i - 1].value : trials[i].value,
                     end + 1 < n ? trials[end + 1].value : trials[end].value, own);
      if (rating > best)
        {
          best = rating;
          *first = i;
          *last = end;
        }
      i = end;
    }
  return best >= 0;
}

/* Where no trial is in: a stretch that lies between two of them, under a peak of the margin. */
static LbRunWindow
find_between (Finder *finder, const Trial *trials, size_t n)
{
  const LbRunWindow nowhere = { LB_UNSET, LB_UNSET, LB_RUN_IN_BAND, LB_RUN_IN_BAND };

  for (size_t i = 1; i + 1 < n; i++)
    {
      Trial found[3];

      if (!(trials[i].margin > trials[i - 1].margin && trials[i].margin > trials[i + 1].margin))
        continue;
      found[1] = find_peak (finder, &trials[i - 1], &trials[i], &trials[i + 1]);
      if (!is_in (&found[1]))
        continue;
      found[0] = trials[i - 1];
      found[2] = trials[i + 1];
      return finish (finder, found, 3, 1, 1);
    }
  return nowhere;
}

static void
go_through (Finder *finder, const double *values, size_t n, double own, Trial *trials)
{
  size_t start = 0;

  if (finder->home)
    {
      while (start < n && values[start] < own)
        start++;
      finder->home (finder->data);
    }
  for (size_t i = start; i < n; i++)
    trials[i] = try_value (finder, values[i]);
  if (start > 0)
    finder->home (finder->data);
  for (size_t i = start; i > 0; i--)
    trials[i - 1] = try_value (finder, values[i - 1]);
}

LbRunWindow
lb_run_window_find (LbWindowMargin margin,
                    LbWindowHome home,
                    void *data,
                    const double *values,
                    size_t n,
                    double own)
{
  Finder finder = { .margin = margin, .home = home, .data = data };
  Trial trials[LB_WINDOW_MOST_VALUES];
  size_t first = 0, last = 0;

  if (n > LB_WINDOW_MOST_VALUES)
    n = LB_WINDOW_MOST_VALUES;
  go_through (&finder, values, n, own, trials);
  if (find_row (trials, n, own, &first, &last))
    return finish (&finder, trials, n, first, last);
  return find_between (&finder, trials, n);
}
