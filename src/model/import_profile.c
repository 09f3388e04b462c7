/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cleans soundings of spikes and reduces them to the points of a bed. */
#include "import.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "change.h"
#include "file_error.h"

#define MEDIAN_REACH 3      /* neighbours to either side, */
#define MEDIAN_DISTANCE 5.0 /* m, no further away, */
#define MEDIAN_LEAST 4      /* and so many with the sounding itself */
#define MOST_CELLS 5000

typedef struct
{
  double along, depth;
} Place;

/* ---- Spikes ---- */

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* How far sounding `i` is off the median of its neighbours, itself among them. 0 where there are
 * too few so near that the bed would be the same: a lone sounding by hand is no spike. */
static double
off_median (const GArray *places, guint i)
{
  const Place *place = &g_array_index (places, Place, i);
  guint from = i > MEDIAN_REACH ? i - MEDIAN_REACH : 0;
  guint to = MIN (i + MEDIAN_REACH, places->len - 1), n = 0;
  double values[2 * MEDIAN_REACH + 1];

  for (guint k = from; k <= to; k++)
    if (fabs (g_array_index (places, Place, k).along - place->along) <= MEDIAN_DISTANCE)
      values[n++] = g_array_index (places, Place, k).depth;
  if (n < MEDIAN_LEAST)
    return 0;
  qsort (values, n, sizeof values[0], compare_doubles);
  return fabs (place->depth - (n % 2 ? values[n / 2] : 0.5 * (values[n / 2 - 1] + values[n / 2])));
}

static GArray *
without_spikes (const GArray *places, double limit, gsize *spikes)
{
  GArray *clean = g_array_sized_new (FALSE, FALSE, sizeof (Place), places->len);

  for (guint i = 0; i < places->len; i++)
    {
      const Place *place = &g_array_index (places, Place, i);

      if (limit > 0 && off_median (places, i) > limit)
        ++*spikes;
      else
        g_array_append_val (clean, *place);
    }
  return clean;
}

/* ---- One depth for one place ---- */

/* The depths of the wanted stretch as they count, those that no bed has left out. */
static GArray *
usable (const LbImport *import, const LbImportOptions *options, gsize *out_of_range)
{
  GArray *places = g_array_sized_new (FALSE, FALSE, sizeof (Place), import->soundings->len);
  const LbField *field = lb_field ("river.depth_m");

  for (guint i = 0; i < import->soundings->len; i++)
    {
      const LbSounding *s = &g_array_index (import->soundings, LbSounding, i);
      Place place = { s->along, s->depth };

      if (options->to > 0 && (s->along < options->from || s->along > options->to))
        continue;
      if (s->datum == LB_DEPTH_OF_TRANSDUCER)
        place.depth += options->transducer_depth;
      if (lb_field_accepts (field, place.depth))
        g_array_append_val (places, place);
      else
        ++*out_of_range;
    }
  return places;
}

static double
widest_gap (const GArray *places)
{
  double widest = 0;

  for (guint i = 1; i < places->len; i++)
    widest = fmax (widest, g_array_index (places, Place, i).along
                               - g_array_index (places, Place, i - 1).along);
  return widest;
}

/* Means over cells, so that places rise by LB_BED_LEAST_SPACING at least. */
static GArray *
means (const GArray *places)
{
  GArray *means = g_array_new (FALSE, FALSE, sizeof (Place));
  double first = g_array_index (places, Place, 0).along;
  double length = g_array_index (places, Place, places->len - 1).along - first;
  double cell = fmax (LB_BED_LEAST_SPACING, length / MOST_CELLS);

  for (guint i = 0; i < places->len;)
    {
      double end = g_array_index (places, Place, i).along + cell;
      Place sum = { 0, 0 };
      guint n = 0;

      for (; i < places->len && g_array_index (places, Place, i).along < end; i++, n++)
        {
          sum.along += g_array_index (places, Place, i).along;
          sum.depth += g_array_index (places, Place, i).depth;
        }
      sum.along /= n;
      sum.depth /= n;
      if (means->len > 0
          && sum.along - g_array_index (means, Place, means->len - 1).along
                 < 1.001 * LB_BED_LEAST_SPACING)
        continue;
      g_array_append_val (means, sum);
    }
  return means;
}

/* ---- Fewer points ---- */

/* The place between two kept ones that lies furthest off the straight line through them. */
static double
furthest (const GArray *places, guint from, guint to, guint *where)
{
  const Place *a = &g_array_index (places, Place, from), *b = &g_array_index (places, Place, to);
  double most = 0;

  for (guint i = from + 1; i < to; i++)
    {
      const Place *p = &g_array_index (places, Place, i);
      double share = (p->along - a->along) / (b->along - a->along);
      double off = fabs (p->depth - (a->depth + share * (b->depth - a->depth)));

      if (off > most)
        {
          most = off;
          *where = i;
        }
    }
  return most;
}

typedef struct
{
  guint from, to, where;
  double off;
} Stretch;

static Stretch
stretch (const GArray *places, guint from, guint to)
{
  Stretch s = { from, to, from, 0 };

  s.off = furthest (places, from, to, &s.where);
  return s;
}

/* Keeps the two ends, and then ever again the place that is furthest off, until none is off by more
 * than `tolerance` or `most` are kept. Returns how far the worst is off then. */
static double
keep_most_telling (const GArray *places, double tolerance, gsize most, gboolean *kept)
{
  g_autoptr (GArray) stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  Stretch all = stretch (places, 0, places->len - 1);

  kept[0] = kept[places->len - 1] = TRUE;
  g_array_append_val (stretches, all);
  for (gsize n = 2;; n++)
    {
      guint worst = 0;
      Stretch s, rest;

      for (guint i = 1; i < stretches->len; i++)
        if (g_array_index (stretches, Stretch, i).off
            > g_array_index (stretches, Stretch, worst).off)
          worst = i;
      s = g_array_index (stretches, Stretch, worst);
      if (s.off <= tolerance || n >= most)
        return s.off;
      kept[s.where] = TRUE;
      rest = stretch (places, s.where, s.to);
      g_array_index (stretches, Stretch, worst) = stretch (places, s.from, s.where);
      g_array_append_val (stretches, rest);
    }
}

static void
add_point (LbBedProfile *profile, double x, double depth)
{
  profile->x[profile->n] = x;
  profile->depth[profile->n] = depth;
  profile->n++;
}

/* From 0 at the upstream end. */
static void
lay_out (LbBedProfile *profile, const GArray *places, const gboolean *kept, gboolean upstream)
{
  double first = g_array_index (places, Place, 0).along;
  double last = g_array_index (places, Place, places->len - 1).along;

  for (guint k = 0; k < places->len; k++)
    {
      guint i = upstream ? places->len - 1 - k : k;
      const Place *place = &g_array_index (places, Place, i);

      if (kept[i])
        add_point (profile, upstream ? last - place->along : place->along - first, place->depth);
    }
}

static gboolean
check_span (const GArray *places, GError **error)
{
  double span = 0;

  if (!places || places->len < 2)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY,
                 _ ("the depths are of fewer than two places along the river"));
  else if ((span = g_array_index (places, Place, places->len - 1).along
                   - g_array_index (places, Place, 0).along)
           > LB_IMPORT_LONGEST_BED)
    g_set_error (
        error, LB_FILE_ERROR, LB_FILE_ERROR_RANGE,
        _ ("the depths are of %.0f km of river, but a bed can be %.0f km at most: choose a "
           "stretch"),
        ceil (span / 1000), LB_IMPORT_LONGEST_BED / 1000);
  else
    return TRUE;
  return FALSE;
}

gboolean
lb_import_profile (const LbImport *import,
                   const LbImportOptions *options,
                   LbBedProfile *profile,
                   GError **error)
{
  const LbImportOptions defaults = lb_import_options_default (LB_UNITS_METRIC);
  g_autoptr (GArray) usable_places = NULL;
  g_autoptr (GArray) clean = NULL;
  g_autoptr (GArray) places = NULL;
  g_autofree gboolean *kept = NULL;

  if (!options)
    options = &defaults;
  memset (profile, 0, sizeof *profile);
  usable_places = usable (import, options, &profile->out_of_range);
  clean = without_spikes (usable_places, options->spike_limit, &profile->spikes);
  profile->used = clean->len;
  if (clean->len > 0)
    places = means (clean);
  if (!check_span (places, error))
    return FALSE;
  profile->widest_gap = widest_gap (clean);
  kept = g_new0 (gboolean, places->len);
  profile->off = keep_most_telling (places, fmax (options->tolerance, 0),
                                    CLAMP (options->most_points, 2, LB_MAX_BED_POINTS), kept);
  lay_out (profile, places, kept, options->boat_went_upstream);
  return TRUE;
}
