/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes of the river: its bed, its current, all of it. */
#include <string.h>
#include <glib/gi18n-lib.h>

#include "bed.h"
#include "change_private.h"
#include "validate.h"

static char *
label_or (const char *label, const char *plain)
{
  return g_strdup (label ? label : plain);
}

LbChange *
lb_change_new_river (const LbRiver *river, const char *label)
{
  g_return_val_if_fail (river != NULL, NULL);
  return LB_CHANGE_NEW_MEMBER (river, river, label_or (label, _ ("Change the river")));
}

/* ---- The bed ---- */

/* The surveyed points stand together in a river, so that one patch holds them all. */
#define BED_START offsetof (LbRiver, n_bed_points)
#define BED_SIZE (offsetof (LbRiver, bed_depth) + sizeof ((LbRiver *) 0)->bed_depth - BED_START)

static LbChange *
change_of_bed (const LbRiver *river, const char *label)
{
  return lb_change_new_patch (offsetof (LbSetup, river) + BED_START, BED_SIZE,
                              (const char *) river + BED_START, g_strdup (label));
}

LbChange *
lb_change_new_bed (const double *x, const double *depth, size_t n, const char *label)
{
  LbRiver river = { .n_bed_points = n };

  g_return_val_if_fail (n <= LB_MAX_BED_POINTS, NULL);
  if (n > 0)
    {
      memcpy (river.bed_x, x, n * sizeof *x);
      memcpy (river.bed_depth, depth, n * sizeof *depth);
    }
  return change_of_bed (&river, label ? label : _ ("Change the bed"));
}

static double
clamp_position (double x)
{
  return lb_field_clamp (lb_field ("boat.position_m"), x);
}

static double
clamp_depth (double depth)
{
  return lb_field_clamp (lb_field ("river.depth_m"), depth);
}

/* Points on a plane bed around the boat. */
static void
make_points (const LbSetup *setup, LbRiver *river)
{
  double most = lb_field ("boat.position_m")->maximum;
  double first = fmin (clamp_position (setup->boat.position - LB_BED_FIRST_SPACING),
                       most - LB_BED_FIRST_SPACING * (LB_BED_FIRST_POINTS - 1));

  river->n_bed_points = LB_BED_FIRST_POINTS;
  for (size_t i = 0; i < LB_BED_FIRST_POINTS; i++)
    {
      river->bed_x[i] = first + (double) i * LB_BED_FIRST_SPACING;
      river->bed_depth[i] = river->depth;
    }
}

LbChange *
lb_change_new_bed_from_plane (LbDocument *document)
{
  const LbSetup *setup = lb_document_get_setup (document);
  LbRiver river = setup->river;

  if (river.n_bed_points > 0)
    return NULL;
  make_points (setup, &river);
  return change_of_bed (&river, _ ("Make the bed of points"));
}

static double
depth_at (const LbRiver *river, double x)
{
  LbBed bed;

  lb_bed_init (&bed, river);
  return lb_bed_at (&bed, x).depth;
}

static void
insert_number (double *list, size_t n, size_t place, double value)
{
  memmove (&list[place + 1], &list[place], (n - place) * sizeof *list);
  list[place] = value;
}

static void
remove_number (double *list, size_t n, size_t place)
{
  memmove (&list[place], &list[place + 1], (n - place - 1) * sizeof *list);
}

LbChange *
lb_change_new_add_bed_point (LbDocument *document, double x, double depth, size_t *index)
{
  const LbSetup *setup = lb_document_get_setup (document);
  LbRiver river = setup->river;
  size_t n, place = 0;

  if (river.n_bed_points == 0)
    make_points (setup, &river);
  n = river.n_bed_points;
  x = clamp_position (x);
  while (place < n && river.bed_x[place] < x)
    place++;
  if (n >= LB_MAX_BED_POINTS || (place > 0 && x - river.bed_x[place - 1] < LB_BED_LEAST_SPACING)
      || (place < n && river.bed_x[place] - x < LB_BED_LEAST_SPACING))
    return NULL;
  depth = clamp_depth (lb_is_set (depth) ? depth : depth_at (&river, x));
  insert_number (river.bed_x, n, place, x);
  insert_number (river.bed_depth, n, place, depth);
  river.n_bed_points++;
  if (index)
    *index = place;
  return change_of_bed (&river, _ ("Add a bed point"));
}

/* `x` between the neighbours of `point`; where it is when they leave no room. */
static double
between_neighbours (const LbRiver *river, size_t point, double x)
{
  double low = point > 0 ? river->bed_x[point - 1] + LB_BED_LEAST_SPACING : -INFINITY;
  double high =
      point + 1 < river->n_bed_points ? river->bed_x[point + 1] - LB_BED_LEAST_SPACING : INFINITY;

  return low <= high ? CLAMP (x, low, high) : river->bed_x[point];
}

LbChange *
lb_change_new_move_bed_point (LbDocument *document, size_t point, double x, double depth)
{
  LbRiver river = lb_document_get_setup (document)->river;

  if (point >= river.n_bed_points)
    return NULL;
  river.bed_x[point] = clamp_position (between_neighbours (&river, point, x));
  river.bed_depth[point] = clamp_depth (depth);
  return change_of_bed (&river, _ ("Move a bed point"));
}

LbChange *
lb_change_new_remove_bed_point (LbDocument *document, size_t point)
{
  LbRiver river = lb_document_get_setup (document)->river;

  if (point >= river.n_bed_points || river.n_bed_points <= LB_BED_LEAST_POINTS)
    return NULL;
  remove_number (river.bed_x, river.n_bed_points, point);
  remove_number (river.bed_depth, river.n_bed_points, point);
  river.n_bed_points--;
  return change_of_bed (&river, _ ("Take a bed point away"));
}

/* ---- The current ---- */

LbChange *
lb_change_new_measured_current (LbDocument *document,
                                double surface_current,
                                const double *height_fraction,
                                const double *speed_fraction,
                                size_t n)
{
  LbRiver river = lb_document_get_setup (document)->river;

  g_return_val_if_fail (n <= LB_MAX_PROFILE_POINTS, NULL);
  if (lb_is_set (surface_current))
    river.surface_current = surface_current;
  river.profile.law = LB_PROFILE_POINTS;
  river.profile.n_points = n;
  memcpy (river.profile.height_fraction, height_fraction, n * sizeof *height_fraction);
  memcpy (river.profile.speed_fraction, speed_fraction, n * sizeof *speed_fraction);
  return lb_change_new_river (&river, _ ("Change the measured current"));
}
