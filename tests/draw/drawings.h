/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Solved rigs to draw, and their drawings. */
#pragma once

#include "scene.h"
#include "steady.h"
#include "test.h"

/* A setup with its answer; the picture points into it, so do not copy it. */
typedef struct
{
  LbSetup setup;
  LbSteady *steady;
  LbReadings readings;
  LbPicture picture;
} Drawing;

/* Solves `setup` and makes the picture. A failed solve gives the picture of an unsolved rig. */
Drawing *drawing_new (const LbSetup *setup);
void drawing_free (Drawing *drawing);

/* Both drawings of a picture in a canvas of `width` x `height`. */
typedef struct
{
  LbDrawContext *context;
  LbStyle style;
  LbView view;
  LbScene *side;
  LbScene *strip;
  double width, side_height, strip_height;
} Scenes;

Scenes scenes_new (const LbPicture *picture, LbTheme theme, double width, double height);
void scenes_free (Scenes *scenes);

/* The default rig with `n` leaders spread up the shank, each longer than the last. */
LbSetup setup_with_leaders (size_t n);

/* An uneven bed of eight points about the depth. */
void make_bed_uneven (LbSetup *setup);

/* A rig and river drawn at random over all that the window allows. */
LbSetup random_setup (TestRandom *random);
