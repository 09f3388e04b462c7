/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the drawings of a pass share; for the files of this folder only. */
#pragma once

#include "labels.h"
#include "pass_drawing.h"

#define LB_TRACK_WEIGHT (-1)

typedef struct
{
  double x, y; /* drawing units */
} LbSpot;

/* Where a drawing shows a place of the world. */
typedef LbSpot (*LbPassProject) (const LbScene *scene, LbVec3 at);

/* The setup at the moment: the boat is where the reel is. */
LbSetup lb_pass_setup_now (const LbPassPicture *picture);

LbLinePattern lb_pass_pattern (int thing);
const LbTrackPoint *lb_pass_thing (const LbTrackMoment *moment, int thing);

/* "Weight", "Lower lure" ... */
LbPhrase lb_pass_thing_words (const LbScene *scene, int thing);

/* "12.3 s" */
LbPhrase lb_pass_time_words (const LbScene *scene, double time);

/* ---- The second rig (pass_second.c) ---- */

/* Its places in the label memory, at most LB_PASS_SECOND_LABELS. */
#define LB_PASS_SECOND_MEMORY 16
#define LB_PASS_SECOND_LABELS (1 + LB_PHRASE_MOST_PLACES)

/* Where it is at the moment; false when there is none. */
bool lb_pass_second_at (const LbPassPicture *picture, LbTrackMoment *now);

/* The picture as it is for the second rig: its track is the picture's. */
LbPassPicture lb_pass_of_second (const LbPassPicture *picture);

/* What is added to the scene between these is of the second rig: with its shape and weight, lines
 * dashed and bodies hollow, marks square. */
typedef struct
{
  const LbShape *shape;
  double mass;
} LbPassFirst;
LbPassFirst lb_pass_begin_second (LbScene *scene, const LbPassPicture *picture);
void lb_pass_end_second (LbScene *scene, LbPassFirst first);

/* Labels of its weight and, unless there are many, its lures; returns how many. */
size_t lb_pass_second_labels (const LbScene *scene,
                              const LbPassPicture *picture,
                              LbPassProject project,
                              LbLabel labels[LB_PASS_SECOND_LABELS]);

/* The same in words, if there is one. Appends to `text`. */
void lb_pass_describe_second (const LbScene *scene, const LbPassPicture *picture, GString *text);

/* The mark of the second rig. */
void lb_pass_add_square (LbScene *scene, LbLayer layer, double x, double y, LbColour colour);

/* ---- Trails ---- */

/* The paths of weight and lures up to the moment, with marks at round times. */
void lb_pass_add_trails (LbScene *scene, const LbPassPicture *picture, LbPassProject project);

/* A round step of time, s, so that marks of the boat's course stand at least `least` apart. */
double lb_pass_mark_step (const LbPassPicture *picture, double per_metre, double least);

/* What the trails show, in words: where weight and lures touched. Appends to `text`. */
void lb_pass_describe_touches (const LbScene *scene, const LbPassPicture *picture, GString *text);

/* "At 12.3 s of a pass of 60 s." */
LbPhrase lb_pass_moment_words (const LbScene *scene, const LbPassPicture *picture);
