/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The way of the boat: how far it had gone at every fix. Internal to the model. */
#pragma once

#include "import_private.h"

typedef struct
{
  const LbFix *fixes;
  gsize n;
  double *along;    /* m, by fix; never falling */
  gboolean *is_gap; /* by fix: between it and the next */
  GArray *legs;     /* guint, fixes: the ends of the legs */
  gsize n_gaps;
  double duration; /* s, without jumps back; 0: no times */
} LbTrack;

/* `fixes` (LbFix) must outlive the track. lb_earth_open() must have succeeded. */
void lb_track_init (LbTrack *track, const GArray *fixes);
void lb_track_clear (LbTrack *track);

/* Fills along, is_gap, legs. Needs two fixes. */
void lb_track_measure (LbTrack *track);

/* m between two fixes */
double lb_track_distance (const LbTrack *track, gsize a, gsize b);

/* By how many degrees, 0 to 180, the boat turned at fix `b` on its way from `a` to `c`. `*reach`
 * gets how far off the two are, m together. */
double lb_track_turn (const LbTrack *track, gsize a, gsize b, gsize c, double *reach);

/* The longest stretch without a turn back: fixes `*first` to `*last`. Returns how many such
 * stretches there are. */
gsize lb_track_longest_pass (const LbTrack *track, gsize *first, gsize *last);

/* Takes out fixes that no boat could have got to and from. Returns how many. */
gsize lb_fixes_drop_odd (GArray *fixes);
