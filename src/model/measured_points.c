/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "measured_points.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "validate.h"

/* Heights are told apart from here on, of the depth. */
#define SAME_HEIGHT 1e-6
#define SAME 1e-9

/* One measured point, and where it stands in the table. */
typedef struct
{
  double height, speed;
  size_t row; /* from 1 */
} Point;

typedef struct
{
  size_t n;
  Point points[LB_MAX_PROFILE_POINTS];
} Sorted;

static int
compare (const void *a, const void *b)
{
  double x = ((const Point *) a)->height, y = ((const Point *) b)->height;

  return (x > y) - (x < y);
}

/* Those that have both numbers, rising from the bed. */
static Sorted
sort (const LbMeasuredPoints *points)
{
  Sorted sorted = { 0 };

  for (size_t i = 0; i < points->n; i++)
    if (lb_is_set (points->height[i]) && lb_is_set (points->speed[i]))
      sorted.points[sorted.n++] = (Point){ points->height[i], points->speed[i], i + 1 };
  qsort (sorted.points, sorted.n, sizeof *sorted.points, compare);
  return sorted;
}

void
lb_measured_points_read (LbMeasuredPoints *points, const LbRiver *river)
{
  const LbProfile *profile = &river->profile;

  points->n = profile->n_points;
  for (size_t i = 0; i < profile->n_points; i++)
    {
      size_t from = profile->n_points - 1 - i;

      points->height[i] = profile->height_fraction[from] * river->depth;
      points->speed[i] = profile->speed_fraction[from] * river->surface_current;
    }
}

gboolean
lb_measured_points_are (const LbMeasuredPoints *points, const LbRiver *river)
{
  const LbProfile *profile = &river->profile;
  Sorted sorted = sort (points);

  if (profile->law != LB_PROFILE_POINTS || sorted.n != profile->n_points)
    return FALSE;
  for (size_t i = 0; i < sorted.n; i++)
    if (fabs (sorted.points[i].height - profile->height_fraction[i] * river->depth)
            > SAME * river->depth
        || fabs (sorted.points[i].speed - profile->speed_fraction[i] * river->surface_current)
               > SAME * river->surface_current)
      return FALSE;
  return TRUE;
}

/* ---- What is wrong with them ---- */

static char *
explain_place (const Sorted *sorted, double depth, const LbWording *wording)
{
  g_autofree char *deep =
      lb_words_quantity (LB_QUANTITY_LENGTH, wording->units, depth, wording->decimals);

  for (size_t i = 0; i < sorted->n; i++)
    {
      const Point *point = &sorted->points[i];

      if (point->height < -SAME_HEIGHT * depth)
        return g_strdup_printf (_ ("Point %zu lies below the bed: the water is %s deep."),
                                point->row, deep);
      if (point->height > (1 + SAME_HEIGHT) * depth)
        return g_strdup_printf (_ ("Point %zu lies above the surface: the water is %s deep."),
                                point->row, deep);
      if (i > 0 && point->height - sorted->points[i - 1].height < SAME_HEIGHT * depth)
        return g_strdup_printf (_ ("Points %zu and %zu are at the same depth: take one away."),
                                MIN (point->row, sorted->points[i - 1].row),
                                MAX (point->row, sorted->points[i - 1].row));
    }
  return NULL;
}

static char *
explain_speed (const Sorted *sorted)
{
  const Point *top = &sorted->points[sorted->n - 1];

  if (!(top->speed > 0))
    return g_strdup_printf (
        _ ("Point %zu, the uppermost, must have a current: the others are told by it."), top->row);
  for (size_t i = 0; i < sorted->n; i++)
    if (sorted->points[i].speed > LB_PROFILE_FASTEST * top->speed)
      return g_strdup_printf (
          _ ("Point %zu is more than twice as fast as the uppermost, point %zu."),
          sorted->points[i].row, top->row);
  return NULL;
}

char *
lb_measured_points_explain (const LbMeasuredPoints *points,
                            const LbRiver *river,
                            const LbWording *wording)
{
  Sorted sorted = sort (points);
  char *fault;

  if (sorted.n < LB_PROFILE_LEAST_POINTS)
    return g_strdup_printf (_ ("Give the depth and the current of at least %d points."),
                            LB_PROFILE_LEAST_POINTS);
  fault = explain_place (&sorted, river->depth, wording);
  return fault ? fault : explain_speed (&sorted);
}

/* ---- Using them ---- */

LbChange *
lb_measured_points_change (const LbMeasuredPoints *points, LbDocument *document)
{
  const LbRiver *river = &lb_document_get_setup (document)->river;
  LbWording wording = lb_wording_default (LB_UNITS_METRIC);
  g_autofree char *fault = lb_measured_points_explain (points, river, &wording);
  double height[LB_MAX_PROFILE_POINTS], speed[LB_MAX_PROFILE_POINTS];
  Sorted sorted = sort (points);
  double surface;

  if (fault)
    return NULL;
  surface = sorted.points[sorted.n - 1].speed;
  for (size_t i = 0; i < sorted.n; i++)
    {
      height[i] = CLAMP (sorted.points[i].height / river->depth, 0, 1);
      speed[i] = sorted.points[i].speed / surface;
    }
  return lb_change_new_measured_current (document, surface, height, speed, sorted.n);
}

gboolean
lb_measured_points_add (LbMeasuredPoints *points)
{
  if (points->n >= LB_MAX_PROFILE_POINTS)
    return FALSE;
  points->height[points->n] = points->speed[points->n] = LB_UNSET;
  points->n++;
  return TRUE;
}

void
lb_measured_points_remove (LbMeasuredPoints *points, size_t point)
{
  if (point >= points->n)
    return;
  points->n--;
  memmove (&points->height[point], &points->height[point + 1],
           (points->n - point) * sizeof *points->height);
  memmove (&points->speed[point], &points->speed[point + 1],
           (points->n - point) * sizeof *points->speed);
}
