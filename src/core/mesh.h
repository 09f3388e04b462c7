/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cuts a rig into segments and loads a setup's numbers into the tree. Internal to core. */
#pragma once

#include "tree.h"

typedef struct
{
  size_t segments;   /* of the whole rig, about, before refining */
  size_t refine;     /* every segment is cut into this many equal parts */
  double waterline;  /* m of unstretched mainline from the reel at which a node lies; unset: nowhere
                        in particular */
  size_t dry;        /* segments, before refining, above that node */
  double graded_for; /* m of line out that the mainline is graded for; unset: the line out given,
                        or a common one when it is to be found */
} LbMeshPlan;

/* Meshes `setup` into `tree` and loads all its values. When the tree already has that mesh (the
 * same parts cut the same way), `*kept` becomes true and positions and tensions stay as they are, a
 * start for the next solve; otherwise they are unset. Returns LB_STATUS_OK or
 * LB_STATUS_OUT_OF_MEMORY. */
LbStatus lb_mesh_build (LbTree *tree, const LbSetup *setup, const LbMeshPlan *plan, bool *kept);
