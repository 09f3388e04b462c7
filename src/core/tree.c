/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tree.h"

#include "load_segment.h"
#include "tree_math.h"

#include <stdlib.h>
#include <string.h>

/* The share of its tension that a segment keeps at least in one step. */
#define LEAST_KEPT_TENSION 0.05

void
lb_tree_clear (LbTree *tree)
{
  free (tree->nodes);
  for (int k = 0; k < LB_TREE_N_MEMORIES; k++)
    free (tree->memory[k]);
  memset (tree, 0, sizeof *tree);
}

LbStatus
lb_tree_resize (LbTree *tree, size_t n_nodes)
{
  tree->n_nodes = 0; /* until all has room */
  for (int k = 0; k < LB_TREE_N_MEMORIES && n_nodes > tree->capacity; k++)
    {
      LbTreeState *memory = realloc (tree->memory[k], n_nodes * sizeof *memory);
      if (memory == NULL)
        return LB_STATUS_OUT_OF_MEMORY;
      tree->memory[k] = memory;
    }
  if (n_nodes > tree->capacity)
    {
      LbTreeNode *nodes = realloc (tree->nodes, n_nodes * sizeof *nodes);
      if (nodes == NULL)
        return LB_STATUS_OUT_OF_MEMORY;
      memset (nodes + tree->capacity, 0, (n_nodes - tree->capacity) * sizeof *nodes);
      tree->nodes = nodes;
      tree->capacity = n_nodes;
    }
  tree->n_nodes = n_nodes;
  return LB_STATUS_OK;
}

/* Where above the bed's firmness, in its softnesses, a node is put that a step would take under it.
 */
#define LANDING 3

/* Moves a node by its share of the step. What the bed carries slides along it and ends where the
 * bed carries the force foreseen for it. */
static void
take_move (const LbTree *tree, LbTreeNode *node, double factor)
{
  LbVec3 from = node->position;
  double dx = factor * node->move[LB_ALONG], dz = factor * node->move[LB_UP];

  node->position.x += dx;
  node->position.y += factor * node->move[LB_ACROSS];
  node->position.z += dz;
  if (!lb_tree_near_bed (tree, fmin (from.z, node->position.z)))
    return;

  LbBedPoint bed = lb_bed_at (&tree->current.bed, from.x);
  double sunk = -from.z - bed.depth;
  double floor = -lb_bed_at (&tree->current.bed, node->position.x).depth, next;
  if (lb_load_bed_step (tree, sunk, -dz - bed.slope * dx, &next))
    node->position.z = floor - next;
  else
    /* What comes down from above lands softly. */
    node->position.z =
        lb_larger (node->position.z, floor - LB_TREE_BED_DEPTH + LANDING * tree->bed_softness);
}

void
lb_tree_take (LbTree *tree, double factor)
{
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];

      take_move (tree, node, factor);
      node->tension =
          lb_larger (node->tension + factor * node->t0, LEAST_KEPT_TENSION * node->tension);
    }
  tree->line_out += factor * tree->line_step;
}

void
lb_tree_keep (LbTree *tree, int memory)
{
  for (size_t i = 0; i < tree->n_nodes; i++)
    tree->memory[memory][i] = (LbTreeState){ tree->nodes[i].position, tree->nodes[i].tension };
}

void
lb_tree_restore (LbTree *tree, int memory)
{
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      tree->nodes[i].position = tree->memory[memory][i].position;
      tree->nodes[i].tension = tree->memory[memory][i].tension;
    }
}

void
lb_tree_harden (LbTree *tree, double softness)
{
  double lower_by = tree->bed_softness - softness;

  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      double above = node->position.z + lb_bed_at (&tree->current.bed, node->position.x).depth;
      double pressed = (-above - LB_TREE_BED_DEPTH) / tree->bed_softness;
      /* What hardly feels the bed stays where it is, and what lies between partly so. */
      double carried = fmin (fmax ((pressed + 14) / 4, 0), 1);
      node->position.z += carried * lower_by * pressed;
    }
  tree->bed_softness = softness;
}

double
lb_tree_weight_height (const LbTree *tree)
{
  LbVec3 p = tree->nodes[tree->weight].position;

  return p.z + lb_bed_at (&tree->current.bed, p.x).depth;
}

static void
fill_shape_node (const LbTree *tree, size_t i, const LbSegment *segment, LbShapeNode *out)
{
  const LbTreeNode *node = &tree->nodes[i];

  *out = (LbShapeNode){
    .parent = (size_t) node->parent,
    .part = node->part,
    .position = node->position,
    .rest_length = i == 0 ? 0 : lb_tree_rest (tree, i),
    .tension = i == 0 ? 0 : node->tension,
    .bed_force = i == 0 ? 0 : lb_load_bed_force (tree, node),
  };
  if (segment != NULL)
    {
      out->pull_on_node = lb_tree_vec3 (segment->on_node);
      out->pull_on_parent = lb_tree_vec3 (segment->on_parent);
    }
}

static void
fill_shape (const LbTree *tree, LbShape *shape)
{
  shape->line_out = tree->line_out;
  shape->shank_top = tree->shank_top;
  shape->weight = tree->weight;
  shape->n_leaders = tree->n_leaders;
  memcpy (shape->attachment, tree->attachment, sizeof shape->attachment);
  memcpy (shape->lure, tree->lure, sizeof shape->lure);
  fill_shape_node (tree, 0, NULL, &shape->nodes[0]);
}

double
lb_tree_forces (LbTree *tree, LbShape *shape, double *gap)
{
  double left_over = 0;

  *gap = 0;
  if (shape != NULL)
    fill_shape (tree, shape);
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      memset (tree->nodes[i].b, 0, sizeof tree->nodes[i].b);
      lb_load_node (tree, &tree->nodes[i], tree->nodes[i].b, NULL);
    }
  for (size_t i = tree->n_nodes - 1; i >= 1; i--)
    {
      LbTreeNode *node = &tree->nodes[i];
      LbTreeNode *parent = &tree->nodes[node->parent];
      LbSegment segment;
      double slope;
      double rest = lb_tree_rest (tree, i);

      lb_load_segment (tree, node, parent, rest, &segment, false, 3);
      for (int k = 0; k < 3; k++)
        {
          node->b[k] += segment.on_node[k];
          parent->b[k] += segment.on_parent[k];
          left_over = lb_larger (left_over, fabs (node->b[k]));
        }
      double stretched = 1 + lb_stretch (&tree->lines[node->part], node->tension, &slope);
      *gap = lb_larger (*gap, fabs (segment.length - rest * stretched));
      if (shape != NULL)
        fill_shape_node (tree, i, &segment, &shape->nodes[i]);
    }
  return left_over;
}
