/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the drawings of a pass share; for the files of this folder only. */
#pragma once

#include "pass_drawing.h"
#include "phrases.h"

#define LB_TRACK_WEIGHT (-1)

typedef struct
{
  double x, y; /* drawing units */
} LbSpot;

/* Where a drawing shows a place of the world. */
typedef LbSpot (*LbPassProject) (const LbScene *scene, LbVec3 at);

LbLinePattern lb_pass_pattern (int thing);
const LbTrackPoint *lb_pass_thing (const LbTrackMoment *moment, int thing);

/* "Weight", "Lower lure" ... */
LbPhrase lb_pass_thing_words (const LbScene *scene, int thing);

/* "12.3 s" */
LbPhrase lb_pass_time_words (const LbScene *scene, double time);

/* The paths of weight and lures up to the moment, with marks at round times. */
void lb_pass_add_trails (LbScene *scene, const LbPassPicture *picture, LbPassProject project);

/* A round step of time, s, so that marks of the boat's course stand at least `least` apart. */
double lb_pass_mark_step (const LbPassPicture *picture, double per_metre, double least);

/* What the trails show, in words: where weight and lures touched. Appends to `text`. */
void lb_pass_describe_touches (const LbScene *scene, const LbPassPicture *picture, GString *text);

/* "At 12.3 s of a pass of 60 s." */
LbPhrase lb_pass_moment_words (const LbScene *scene, const LbPassPicture *picture);
