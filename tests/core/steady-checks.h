/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of any solved shape, checked with the oracle's own formulas. */
#pragma once

#include "shape.h"

typedef struct
{
  double lowest_body;  /* m, least height above the bed of the weight and the lures */
  double lowest_node;  /* m, least height of any node */
  double node_force;   /* N, largest force left over at any node */
  double reel_force;   /* N, what the mainline pulls the reel with, less the sum of all loads */
  double largest_load; /* N, scale of the two above: largest tension */
  double stretch;      /* m, largest misfit of a segment's length and its tension */
  double sideways;     /* m, largest |y|; 0 for a straight run */
  bool finite;         /* every number of the shape */
} ShapeCheck;

/* Checks `shape` as the answer for `setup` with `status`. Loads on a segment are those at its
 * middle. */
ShapeCheck shape_check (const LbSetup *setup, LbStatus status, const LbShape *shape);

/* What the mainline pulls the reel with, N. */
LbVec3 shape_reel_pull (const LbShape *shape);

/* What the line above `node` pulls it with, N: along the line there. */
LbVec3 shape_pull_above (const LbShape *shape, size_t node);

/* What the lines below pull the first node of `part` with (a leader: at its attachment), N. */
LbVec3 shape_pull_of_part (const LbShape *shape, int part);

/* Height of a node above the bed straight under it, m. */
double shape_height (const LbSetup *setup, const LbShape *shape, size_t node);
