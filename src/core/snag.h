/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weight, or a lure, hangs up on the bed while the boat goes on: how hard the line pulls, and
 * how soon it pulls too hard.
 *
 * From the steady shape alone, in microseconds. The line from the reel to what is held comes taut:
 * its length is the chord's, what it bows out under the loads it carries now, and its stretch. The
 * boat keeps its speed and the hand gives nothing, neither line nor arm nor a rod's bend: real
 * times are rather longer. What is held yields nothing either, and the blow when it stops dead is
 * left out; lb_pass_hold() has both. */
#pragma once

#include "shape.h"

/* The parts that a line from the reel can go through: mainline, shank, a leader. */
#define LB_SNAG_MAX_PARTS 3

/* One part of the line that comes taut. */
typedef struct
{
  int part; /* LbPart */
  /* N; the sum of all loads on the line above the part's upper and lower end */
  LbVec3 load_above[2];
} LbSnagPart;

/* A line that is held at its end, as plain values. */
typedef struct
{
  LbVec3 to_reel;   /* m, from what is held to the reel, when it hangs up */
  double rest;      /* m, unstretched length of the line */
  double give;      /* m/N, by how much a pull stretches it */
  LbVec3 load_give; /* N m/N: what its loads stretch it by, along each axis */
  LbVec3 mean_load; /* N, sum of the loads above a point, on the mean over the line */
  double spread[6]; /* N2 m: of that sum about its mean: xx, yy, zz, xy, xz, yz */
  double pull_now;  /* N, in the hand */
  size_t n_parts;
  LbSnagPart parts[LB_SNAG_MAX_PARTS];
} LbSnag;

typedef struct
{
  double until_hand;   /* s until the hand's limit; unset: never */
  double until_breaks; /* s until the first part of the line breaks; unset: never, or no part has a
                          known breaking load */
  int breaks;          /* LbPart that breaks first; no meaning while until_breaks is unset */
} LbSnagTimes;

/* Holds `node` (the shape's weight or a lure) of a solved shape. */
LbSnag lb_snag_hold (const LbSetup *setup, const LbShape *shape, size_t node);

/* N in the hand, `time` s after it hangs up. `speed` of the boat over the ground, m/s, upstream;
 * below 0 the boat drifts downstream, over what is held and away from it on the other side. */
double lb_snag_pull (const LbSnag *snag, double speed, double time);

/* `limit` of the hand, N. */
LbSnagTimes lb_snag_times (const LbSnag *snag, const LbRig *rig, double speed, double limit);
