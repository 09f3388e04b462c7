/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a recorded pass comes to: how long each part ran where, what it touched, the extremes. */
#pragma once

#include "pass_record.h"

/* Of the time summed up, s. */
typedef struct
{
  double in_band;
  double above;
  double below; /* lower than the band, clear of the bed */
  double on_bed;
} LbPassTimes;

/* A value and when it was reached, s. */
typedef struct
{
  double value;
  double time;
} LbPassExtreme;

typedef struct
{
  size_t n_samples; /* summed up so far */
  double time;      /* s, summed up so far */
  size_t n_bodies;
  LbPassTimes bodies[LB_PASS_MOST_BODIES];
  LbPassExtreme highest[LB_PASS_MOST_BODIES]; /* m above the bed */
  LbPassExtreme lowest[LB_PASS_MOST_BODIES];
  LbPassExtreme most_tension; /* N, in the hand */
  LbPassExtreme least_tension;
  LbPassExtreme steepest;  /* rad from vertical, of the wire: the least */
  LbPassExtreme flattest;  /* the most */
  LbPassExtreme most_line; /* m out */
  LbPassExtreme least_line;
  LbApproach closest; /* of any two lines; unset distance when there are none */
  double closest_time;
  LbApproach between; /* of two rigs; unset distance when there is only one */
  double between_time;
  double tangle_time; /* s, with two lines nearer than the script's tangle distance, of one rig or
                         of two */
} LbPassSummary;

/* Sums up what is recorded. With a summary of the same record that was made before, it goes on from
 * there; a summary of zeros starts anew. */
void lb_pass_summary_continue (LbPassSummary *summary, const LbPassRecord *record);

/* The share, 0 to 1, of a time of `times`; 0 when no time is summed up. */
double lb_pass_share (double time, const LbPassSummary *summary);

/* ---- Contacts with the bed ---- */

/* One contact of a body with the bed. */
typedef struct
{
  double from, to;     /* s */
  double x_from, x_to; /* m, of the body along the reach */
} LbPassTouch;

/* Contacts that a body is clear for less than this between, s, count as one. */
#define LB_PASS_TOUCH_GAP 0.25

/* The contacts of a body in what is recorded, in order of time. Writes at most `capacity` to `out`
 * (NULL when that is 0) and returns how many there are. */
size_t
lb_pass_record_touches (const LbPassRecord *record, size_t body, LbPassTouch *out, size_t capacity);
