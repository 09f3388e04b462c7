/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Passes that have been run, to draw. */
#pragma once

#include "drawings.h"
#include "pass_drawing.h"
#include "pass_record.h"

/* A pass with all its moments; the picture points into it, so do not copy it. */
typedef struct
{
  LbPassRecord *record;
  GArray *moments;        /* LbTrackMoment */
  LbShape shape;          /* of the picture's moment */
  GArray *second_moments; /* of the second rig; empty when there is none */
  LbShape second_shape;
  LbPassSample sample;
  LbPassPicture picture;
} PassRun;

/* Runs `script` (NULL: straight on) for `duration`, as far as it can be solved. */
PassRun *pass_run_new (const LbSetup *setup, const LbPassScript *script, double duration);
void pass_run_free (PassRun *run);

/* Makes the picture that of the moment at `time`. */
void pass_run_go_to (PassRun *run, double time);

/* The default rig over an uneven bed; a lift and drop of the hand; a turn to the right. */
LbSetup pass_setup (void);
LbPassScript pass_lift_and_drop (void);
LbPassScript pass_turn (void);
