/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tree.h"

#include "load_segment.h"
#include "tree_math.h"

#include <string.h>

/* Height, m, at which a sweep lays what the bed carries: where its force is but small. */
static double
bed_top (const LbTree *tree, double x)
{
  return -lb_bed_at (&tree->current.bed, x).depth - LB_TREE_BED_DEPTH + 5 * tree->bed_softness;
}

/* Where a segment of `length` from `from` that would end under the bed touches it instead, sideways
 * direction kept: by halving along the bed. */
static LbVec3
place_on_bed (const LbTree *tree, LbVec3 from, LbVec3 d, double length)
{
  double level = hypot (d.x, d.y);
  double along_x = level > 1e-9 ? d.x / level : 1, along_y = level > 1e-9 ? d.y / level : 0;
  double low = 0, high = length;
  LbVec3 p = from;

  for (int k = 0; k < 40; k++)
    {
      double run = 0.5 * (low + high);
      p.x = from.x + run * along_x;
      p.y = from.y + run * along_y;
      p.z = bed_top (tree, p.x);
      if (lb_vec3_norm (lb_vec3_sub (p, from)) < length)
        low = run;
      else
        high = run;
    }
  return p;
}

/* Puts a node at the end of its segment, in direction `d` (unit) from its parent, but neither under
 * the bed nor, unless its parent is higher, above the surface. */
static LbVec3
place (const LbTree *tree, LbVec3 from, LbVec3 d, double length)
{
  LbVec3 p = lb_vec3_add_scaled (from, length, d);
  double ceiling = fmax (0, from.z);

  if (p.z < bed_top (tree, p.x))
    return place_on_bed (tree, from, d, length);
  if (p.z <= ceiling)
    return p;
  double rise = fmin (ceiling - from.z, length);
  double run = sqrt (fmax (length * length - rise * rise, 0)), level = hypot (d.x, d.y);
  p.x = from.x + (level > 1e-9 ? run * d.x / level : run);
  p.y = from.y + (level > 1e-9 ? run * d.y / level : 0);
  p.z = from.z + rise;
  return p;
}

/* Total of the loads at and below every node, in b, from the forces of lines and bodies alone:
 * where the bed would carry a node it takes off what presses down. */
static void
gather_loads (LbTree *tree)
{
  for (size_t i = 0; i < tree->n_nodes; i++)
    {
      memset (tree->nodes[i].b, 0, sizeof tree->nodes[i].b);
      if (i > 0)
        lb_load_free (tree, &tree->nodes[i], tree->nodes[i].b);
    }
  for (size_t i = tree->n_nodes - 1; i >= 1; i--)
    {
      LbTreeNode *node = &tree->nodes[i];
      LbTreeNode *parent = &tree->nodes[node->parent];
      LbSegment segment;

      node->tension = 0; /* so that the pulls are the segment's loads alone */
      lb_load_segment (tree, node, parent, lb_tree_rest (tree, i), &segment, false, 3);
      for (int k = 0; k < 3; k++)
        node->b[k] += segment.on_node[k];
      if (node->position.z <= bed_top (tree, node->position.x) + 1e-9 && node->b[LB_UP] < 0)
        {
          node->b[LB_ALONG] -= lb_load_friction (tree) * node->b[LB_UP];
          node->b[LB_UP] = 0;
        }
      node->tension = lb_vec3_norm (lb_tree_vec3 (node->b));
      for (int k = 0; k < 3; k++)
        parent->b[k] += node->b[k] + segment.on_parent[k];
    }
}

void
lb_tree_sweep (LbTree *tree, double blend)
{
  gather_loads (tree);
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      const LbTreeNode *parent = &tree->nodes[node->parent];
      double slope;
      double length = lb_tree_rest (tree, i)
                      * (1 + lb_stretch (&tree->lines[node->part], node->tension, &slope));
      LbVec3 pull = lb_tree_vec3 (node->b), old = lb_tree_vec3 (node->move);
      LbVec3 d = node->tension > 0 ? lb_vec3_scale (pull, 1 / node->tension) : old;

      d = lb_vec3_lerp (old, d, blend);
      double norm = lb_vec3_norm (d);
      d = norm > 1e-9 ? lb_vec3_scale (d, 1 / norm) : lb_vec3 (0, 0, -1);
      node->move[LB_ALONG] = d.x;
      node->move[LB_UP] = d.z;
      node->move[LB_ACROSS] = d.y;
      node->position = place (tree, parent->position, d, length);
    }
  if (tree->holding)
    {
      const LbTreeNode *first = &tree->nodes[1];
      double down = fmax (-first->move[LB_UP], 0.1);
      double error = lb_tree_weight_height (tree) - tree->hold_height;
      double change = fmin (error / down, 0.5 * tree->line_out + 0.5);
      tree->line_out = fmax (tree->line_out + change, LB_TREE_SHORTEST_SWEEP);
    }
}
