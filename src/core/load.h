/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The forces on the discrete rig and how they change with it. Internal to core. */
#pragma once

#include "tree.h"

/* What one segment does to the two nodes it joins, components in the order of LB_ALONG and so on.
 * Matrices are stored row by row; "a_by_b" is the change of the force on a with the position of b.
 */
typedef struct
{
  double length; /* m, stretched */
  double u[3];   /* unit vector from the node towards its parent: the node is pulled along it */
  double on_node[3], on_parent[3];           /* N */
  double on_node_rate[3], on_parent_rate[3]; /* N per m of line out, at fixed positions */
  double node_by_node[9], node_by_parent[9];
  double parent_by_node[9], parent_by_parent[9];
} LbSegment;

/* A segment of unstretched length `rest` that comes out of the water. The matrices and rates only
 * if `slopes`. See lb_load_segment() for the others. */
void lb_load_surface_segment (const LbTree *tree,
                              const LbTreeNode *node,
                              const LbTreeNode *parent,
                              double rest,
                              LbSegment *segment,
                              bool slopes);

/* Speed past the rig, m/s, where the current over the ground is `current`, and its slope against
 * it. */
double lb_load_speed_past (const LbTree *tree, double current, double *slope);

/* Adds to `force` what the body at `node` and the bed under it exert on it, and to `jacobian`
 * (d force / d position; may be NULL) how that changes. */
void lb_load_node (const LbTree *tree, const LbTreeNode *node, double *force, double *jacobian);

/* Adds the force of the body alone. */
void lb_load_free (const LbTree *tree, const LbTreeNode *node, double *force);

/* Force, N, normal to the bed, with which the bed carries `node`. */
double lb_load_bed_force (const LbTree *tree, const LbTreeNode *node);

/* How deep, m, a node that has sunk into the bed by `sunk` ends in it after a Newton step that
 * would sink it by `change` more: where the bed carries the force that the step foresees, which is
 * not where the curved force law is when the move is taken as it is. False, and `*next` is left
 * alone, for a node that the bed does not carry before or after. */
bool lb_load_bed_step (const LbTree *tree, double sunk, double change, double *next);

/* Force, N, normal to the bed, on a node at rest that has sunk into it by `sunk` m (below zero: is
 * above it), and its slope. */
double lb_load_bed_law (const LbTree *tree, double sunk, double *slope);

/* How much of a thing at height z that comes out of the water over `half` m to either side of its
 * surface is wet, 1 to 0, and its slope. */
double lb_load_wetness (double z, double half, double *slope);

/* Of a straight segment of `length` from z_node to z_parent: the share that is wet and the share of
 * that load that the parent carries, by the lever. */
void
lb_load_wet_shares (double z_node, double z_parent, double length, double *wet, double *to_parent);

/* Coulomb coefficient with which the bed drags the rig downstream: below 0 when the boat drifts
 * downstream; at rest over the ground, where friction is indeterminate, 0 unless the rig is held by
 * it. */
double lb_load_friction (const LbTree *tree);
