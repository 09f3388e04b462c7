/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a drawing is made from: the setup, the answer if there is one, and how to word it. */
#pragma once

#include <stdbool.h>

#include "readings.h"
#include "setup.h"
#include "shape.h"
#include "status.h"
#include "units.h"

typedef struct LbHandles LbHandles; /* handles.h */

/* The input of every drawing. Nothing is owned and nothing is kept: all pointers need only live
 * until the function that takes the picture returns.
 *
 * `shape` and `readings` belong to `setup`; when either is NULL, or `status` is a failure, the rig
 * is not drawn at all and the drawing says so in words. */
typedef struct
{
  const LbSetup *setup;
  const LbShape *shape;       /* NULL: not solved */
  const LbReadings *readings; /* NULL: not solved */
  LbStatus status;            /* of the solve; its remarks and failures are put in words */
  LbUnits units;
  char decimal;                           /* decimal sign; 0 stands for '.' */
  int decimals_plus_1;                    /* digits after it; 0: as fits each number */
  const char *title;                      /* UTF-8; NULL or "": none */
  const char *remark;                     /* a further remark to show; NULL or "": none */
  const char *lure_names[LB_MAX_LEADERS]; /* UTF-8; NULL or "": "Lure 1" and so on */
  const LbHandles *handles;               /* what is pointed at and selected; NULL: nothing */
} LbPicture;

/* The part of the world a drawing has to show, in the frame of LbShapeNode. */
typedef struct
{
  double x_min, x_max; /* m, downstream */
  double z_min, z_max; /* m, above the water surface */
  double x_rig;        /* m; upstream of it there is only the boat, above the water */
} LbExtents;

/* True if there is a solved rig to draw. */
bool lb_picture_is_solved (const LbPicture *picture);

/* All of the boat, the rig and the bed under them. */
LbExtents lb_picture_extents (const LbPicture *picture);
