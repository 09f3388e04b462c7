/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Speeds measured at several heights, as they are typed: in any order, some still missing. They
 * become the measured points of a river once they make sense. */
#pragma once

#include "change.h"
#include "words.h"

typedef struct
{
  size_t n;
  double height[LB_MAX_PROFILE_POINTS]; /* m above the bed; unset: not yet given */
  double speed[LB_MAX_PROFILE_POINTS];  /* m/s; unset: not yet given */
} LbMeasuredPoints;

/* From the measured points of `river`, in water of its depth, the uppermost first. */
void lb_measured_points_read (LbMeasuredPoints *points, const LbRiver *river);

/* Whether they are, in whatever order, what `river` has (to 1e-9 of the depth and speed); points
 * that lack a number are left out. */
gboolean lb_measured_points_are (const LbMeasuredPoints *points, const LbRiver *river);

/* Why they cannot be used, in one sentence to be freed with g_free(); NULL when they can. Points
 * that lack a number are only counted. */
char *lb_measured_points_explain (const LbMeasuredPoints *points,
                                  const LbRiver *river,
                                  const LbWording *wording);

/* The change that gives them to the document: the speed at the surface is that of the uppermost,
 * all others shares of it. NULL when they cannot be used. */
LbChange *lb_measured_points_change (const LbMeasuredPoints *points, LbDocument *document);

/* A point without numbers; FALSE when there are LB_MAX_PROFILE_POINTS. */
gboolean lb_measured_points_add (LbMeasuredPoints *points);

void lb_measured_points_remove (LbMeasuredPoints *points, size_t point);
