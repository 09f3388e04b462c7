/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The discrete rig: a tree of nodes joined by straight segments, and its Newton step.
 *
 * Every segment carries its tension as an unknown of its own beside the node positions. The
 * unknowns of a node and of the segment above it are eliminated together, from the tips to the
 * reel, so that one step costs O(n) whatever the branching. Internal to core: callers outside use
 * steady.h.
 *
 * The scheme is a symmetric one-step method along each line: second order, with an error in even
 * powers of the segment length, which the fine mesh extrapolates away. */
#pragma once

#include "current.h"
#include "shape.h"
#include "water.h"

/* The order of components in the arrays of the discrete rig, so that a rig in one plane uses the
 * first two alone. */
enum
{
  LB_ALONG,  /* x */
  LB_UP,     /* z */
  LB_ACROSS, /* y */
};

/* What the segments of one line have in common, per unit length where it says so. */
typedef struct
{
  double weight_in_air;      /* N/m */
  double buoyancy;           /* N/m, of the water displaced */
  double stiffness;          /* EA, N */
  double normal_scale;       /* 1/2 rho d strum, kg/m2: times Cn, |vn| vn is N/m */
  double normal_drag;        /* Cn, or unset for the published curve */
  double tangential;         /* 1/2 rho pi d Ct, kg/m2 */
  double reynolds_per_speed; /* d / nu, s/m */
} LbTreeLine;

typedef enum
{
  LB_BODY_WEIGHT,
  LB_BODY_LURE,
} LbBodyKind;

/* A point body at a node. */
typedef struct
{
  LbBodyKind kind;
  double weight_in_air;      /* N */
  double buoyancy;           /* N, of all the water it can displace */
  double half_height;        /* m, over which it comes out of the water */
  double drag_scale;         /* 1/2 rho S, kg/m */
  double drag_coefficient;   /* on drag_scale; unset: from shape and curve (weights) */
  double down_force_ratio;   /* lures */
  double reynolds_per_speed; /* s/m */
  LbWeightShape shape;
} LbTreeBody;

typedef struct
{
  /* Mesh */
  int parent;       /* index, below the node's own */
  int part;         /* LbPart that the segment belongs to, and index into lines */
  int body;         /* index into bodies, -1 for none */
  int piece;        /* of the mesh: segments of one piece share its length */
  double share;     /* of the piece's length */
  double rest;      /* m, unstretched length of the segment to the parent, at line out 0 */
  double rest_rate; /* d rest / d line out */
  double settling;  /* N s/m, resistance in pseudo-time (see lb_tree_step) */

  /* State */
  LbVec3 position; /* m */
  double tension;  /* N */

  /* Elimination: the node's own equations, gathered from its loads and its children ... */
  double a[9]; /* d residual / d position, row by row */
  double b[3]; /* minus the residual */
  double l[3]; /* d residual / d line out */
  /* ... and its unknowns in terms of the parent's move and of the line out. */
  double x[9]; /* d position / d parent */
  double x0[3], xl[3];
  double t[3]; /* d tension / d parent */
  double t0, tl;
  double move[3], move_rate[3]; /* of this step; rate: per line out */
} LbTreeNode;

/* The state of a tree put aside. */
typedef struct
{
  LbVec3 position;
  double tension;
} LbTreeState;

/* Memories for states: the last answers, newest first, and what a failed attempt goes back to. */
enum
{
  LB_TREE_ANSWERS = 3,
  LB_TREE_MEMORY_ANSWER = 0,
  LB_TREE_MEMORY_TRIAL = LB_TREE_ANSWERS,
  LB_TREE_MEMORY_SCAN,   /* the last rig of a scan of line outs, */
  LB_TREE_MEMORY_FAR,    /* one on the other side of the height, */
  LB_TREE_MEMORY_TURN,   /* where it turns back, */
  LB_TREE_MEMORY_REMARK, /* and the rig to show with its remark */
  LB_TREE_N_MEMORIES,
};

/* How a rig is cut up: two meshes with the same key have the same nodes. */
typedef struct
{
  size_t refine;
  size_t n_leaders, n_pieces; /* pieces of the shank between the places where things join */
  size_t dry; /* segments above a node at the water surface, before refining; 0: no such node */
  size_t mainline, piece[LB_MAX_LEADERS + 1], leader[LB_MAX_LEADERS]; /* segments before refining */
  size_t place[LB_MAX_LEADERS]; /* which place on the shank a leader hangs at, from the top */
} LbMeshKey;

#define LB_MAX_PIECES (2 * LB_MAX_LEADERS + 3)

/* Nothing at all is left of the bed's force this many softnesses above it. */
#define LB_TREE_BED_REACH 24

/* The whole discrete problem. Zero it before first use; lb_tree_clear() frees the nodes. */
typedef struct
{
  size_t n_nodes;
  size_t capacity;
  LbTreeNode *nodes;                       /* node 0 is the reel: fixed */
  LbTreeState *memory[LB_TREE_N_MEMORIES]; /* by node */
  LbMeshKey key;
  double bends[LB_MAX_PIECES]; /* how each piece is graded */
  size_t n_lines;
  LbTreeLine lines[LB_MAX_LEADERS + 2]; /* by LbPart */
  size_t n_bodies;
  LbTreeBody bodies[LB_MAX_LEADERS + 1];

  size_t shank_top, weight;
  size_t n_leaders;
  size_t attachment[LB_MAX_LEADERS], lure[LB_MAX_LEADERS];

  LbCurrent current;
  double highest_bed; /* m, z that no part of the bed reaches above */
  double boat_speed;  /* m/s over the ground, upstream: every part moves with the boat */
  double extra_flow;  /* m/s everywhere, on the way to an answer; 0 in the answer */
  double bed_friction;
  bool held_at_rest;   /* friction acts though boat_speed is 0, as if it were just above */
  double bed_softness; /* m, over which the bed takes up a node's weight */
  double bed_grip;     /* N, that it carries when a node has sunk in by about that much */

  double line_out;    /* m; an unknown when holding */
  bool spatial;       /* solve in space even while the rig lies in one plane */
  bool holding;       /* the weight is held at hold_height above the bed */
  double hold_height; /* m */
  double line_step;   /* m, of the computed step */
} LbTree;

/* Whether the bed might carry something at height z, m: false is certain, and quickly found. */
static inline bool
lb_tree_near_bed (const LbTree *tree, double z)
{
  return z < tree->highest_bed + LB_TREE_BED_REACH * tree->bed_softness;
}

/* How large one Newton step was. */
typedef struct
{
  double move; /* m, largest of any node */
  double pull; /* N, largest change of any tension */
  double line; /* m, change of the line out */
  double turn; /* largest move of a node against its parent, by the length between them */
  bool finite;
} LbTreeStep;

/* The line out, m, that a sweep never goes below. */
#define LB_TREE_SHORTEST_SWEEP 0.05

/* The bed's softness, m, in an answer, and how far under its surface, m, it begins to carry in
 * earnest: what lies on the bed has sunk in by about half a millimetre, what just touches is free.
 */
#define LB_TREE_BED_SOFTNESS 4e-5
#define LB_TREE_BED_DEPTH 4.8e-4

void lb_tree_clear (LbTree *tree);

/* Makes room for `n_nodes`. Returns LB_STATUS_OK or LB_STATUS_OUT_OF_MEMORY. */
LbStatus lb_tree_resize (LbTree *tree, size_t n_nodes);

/* Unstretched length of the segment above node `i`, m. */
static inline double
lb_tree_rest (const LbTree *tree, size_t i)
{
  return tree->nodes[i].rest + tree->nodes[i].rest_rate * tree->line_out;
}

/* One Newton step of the steady equations, computed but not yet taken. With `pseudo_time` (s) not
 * infinite every node is held back by its `settling`, as one implicit Euler step of that length of
 * an overdamped rig: this finds its way from anywhere, and to a stable shape. */
LbTreeStep lb_tree_step (LbTree *tree, double pseudo_time);

/* Takes the computed step, shortened by `factor`. */
void lb_tree_take (LbTree *tree, double factor);

/* Keeps the present state in one of the memories, and goes back to the one kept there. */
void lb_tree_keep (LbTree *tree, int memory);
void lb_tree_restore (LbTree *tree, int memory);

/* Evaluates all forces at the present state and returns the largest force, N, left over at any node
 * and, in `gap`, the largest misfit of a segment's length, m. Fills `shape` too, unless NULL; it
 * must have been resized to the tree. */
double lb_tree_forces (LbTree *tree, LbShape *shape, double *gap);

/* Lays the nodes out anew along the tensions that the loads at the present positions give: one
 * sweep from the tips to the reel and one back, kept above the bed. A cheap way towards the answer
 * from afar. `blend` (0 to 1) is how much of the new directions is taken. */
void lb_tree_sweep (LbTree *tree, double blend);

/* Makes the bed as hard as `softness`, m, and moves what lies on it so that it is carried with the
 * same force as before. */
void lb_tree_harden (LbTree *tree, double softness);

/* Height of the weight above the bed, m. */
double lb_tree_weight_height (const LbTree *tree);

/* How much higher the weight gets above the bed per m of line out, as of the last computed step. */
double lb_tree_height_rate (const LbTree *tree);
