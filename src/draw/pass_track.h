/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where everything was during a pass, for its drawings, as plain values. */
#pragma once

#include <glib.h>
#include <stdbool.h>

#include "pass_record.h"

/* Something that hangs on a line, at one moment. */
typedef struct
{
  LbVec3 position; /* m, as in LbShapeNode */
  double height;   /* m off the bed straight under it */
  bool on_bed;
  bool touched; /* the bed, at any time since the moment before */
} LbTrackPoint;

typedef struct
{
  double time;         /* s since the pass began */
  LbVec3 reel;         /* m */
  double reel_across;  /* m, of the reel to the right of the boat's middle */
  double boat_speed;   /* m/s over the ground, ahead */
  double heading;      /* rad; 0 upstream, rising towards +y */
  double line_out;     /* m */
  double wire_angle;   /* rad from vertical, at the reel */
  double hand_tension; /* N */
  LbTrackPoint weight;
  LbTrackPoint lures[LB_MAX_LEADERS];
  double closest;    /* m, a leader's nearest approach to another line of its rig; of the first of
                        two rigs also that of the second, and of both to one another: the least of
                        them; unset: nothing to compare */
  LbVec3 closest_at; /* m */
} LbTrackMoment;

/* A pass as far as it is known. Nothing is owned. */
typedef struct
{
  const LbTrackMoment *moments; /* times rising */
  size_t n;
  size_t n_lures;
  double duration; /* s, of all the pass, known or not */
} LbPassTrack;

/* Appends to `moments` (of LbTrackMoment) those samples of `record` that it does not hold yet. */
void lb_track_add (GArray *moments, const LbPassRecord *record);

/* Puts a moment between two of them, or the first or the last one, into `moment`; false when
 * nothing is known. */
bool lb_track_at (const LbPassTrack *track, double time, LbTrackMoment *moment);

/* How many moments are not after `time`. */
size_t lb_track_until (const LbPassTrack *track, double time);

/* The moment of the nearest approach up to `time`; NULL: there is nothing to compare. */
const LbTrackMoment *lb_track_closest (const LbPassTrack *track, double time);
