/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shape a rig takes in the water: a tree of nodes from the reel to the tips. */
#pragma once

#include "setup.h"
#include "vec3.h"

typedef enum
{
  LB_PART_MAINLINE,
  LB_PART_SHANK,
  LB_PART_LEADER_0, /* leader i is LB_PART_LEADER_0 + i */
} LbPart;

/* One node and the segment that joins it to its parent, the next node towards the reel. */
typedef struct
{
  size_t parent;         /* index, always below the node's own; node 0, the reel, has 0 */
  int part;              /* LbPart that the segment belongs to */
  LbVec3 position;       /* m; x downstream on the bed's axis, z above the water surface */
  double rest_length;    /* m, unstretched, of the segment; 0 for the reel */
  double tension;        /* N, at the middle of the segment */
  LbVec3 pull_on_node;   /* N, what the segment pulls on this node with */
  LbVec3 pull_on_parent; /* N, what the segment pulls on the parent with */
  double bed_force;      /* N, with which the bed carries this node, normal to the bed */
} LbShapeNode;

/* A solved shape. Owned by whoever calls lb_shape_init(); nodes grow as needed. */
typedef struct
{
  size_t n_nodes;
  size_t capacity;
  LbShapeNode *nodes;
  double line_out;  /* m, unstretched mainline from the reel to the top of the shank */
  size_t shank_top; /* node where the mainline meets the shank; the weight if there is no shank */
  size_t weight;    /* node */
  size_t n_leaders;
  size_t attachment[LB_MAX_LEADERS]; /* node on the shank, by leader */
  size_t lure[LB_MAX_LEADERS];       /* node, by leader */
} LbShape;

/* Makes an empty shape that owns nothing yet. */
void lb_shape_init (LbShape *shape);

/* Frees the nodes and makes the shape empty again. */
void lb_shape_clear (LbShape *shape);

/* Copies `from` into `to` (initialised before), growing it as needed. Returns LB_STATUS_OK or
 * LB_STATUS_OUT_OF_MEMORY, in which case `to` is as it was. */
LbStatus lb_shape_copy (LbShape *to, const LbShape *from);

/* Makes room for `n_nodes` and sets that number; old node values are kept. Same returns. */
LbStatus lb_shape_resize (LbShape *shape, size_t n_nodes);

/* The nodes of one part in order from its upper end (towards the reel) to its lower end, the upper
 * end included: the mainline starts at the reel, a leader at its attachment. Writes at most
 * `capacity` indices to `out` and returns how many the part has (0 for a part that is not there).
 */
size_t lb_shape_line (const LbShape *shape, int part, size_t *out, size_t capacity);
