/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tree.h"

#include "load_segment.h"
#include "tree_math.h"

LB_INNER double
row_dot (const double *m, int i, const double *v, int dim)
{
  return lb_block_dot (m + 3 * i, v, dim);
}

/* Eliminates the position of node and the tension of its segment: fills x, x0, xl, t, t0, tl.
 *
 *   A dr + u dT        = b - C dp - l dL      forces at the node
 *   -u.dr - c dT       = h - u.dp + ...       length of the segment
 *
 * A may be singular along u (a node that nothing but its segment holds), so gamma u times the
 * second row is added to the first: A - gamma u u' has a well-behaved inverse. */
LB_INNER void
eliminate (LbTreeNode *node,
           const LbSegment *segment,
           double misfit,
           double compliance,
           double length_rate,
           int dim)
{
  const double *u = segment->u;
  double scale = 0.5 * (fabs (node->a[0]) + fabs (node->a[4]));
  double gamma = scale < 0.5 / compliance ? scale : 0.5 / compliance;
  double bordered[9], inverse[9], q[3];

  for (int i = 0; i < dim; i++)
    for (int j = 0; j < dim; j++)
      bordered[3 * i + j] = node->a[3 * i + j] - gamma * u[i] * u[j];
  lb_block_invert (bordered, inverse, dim);
  for (int i = 0; i < dim; i++)
    q[i] = row_dot (inverse, i, u, dim);

  double uq = lb_block_dot (u, q, dim);
  double keep = 1 - gamma * compliance;
  double per_pivot = 1 / (keep * uq - compliance);
  double length_gain = 1 + gamma * uq;

  double pb[3], pl[3], pc[9] = { 0 };
  for (int i = 0; i < dim; i++)
    {
      pb[i] = row_dot (inverse, i, node->b, dim);
      pl[i] = -row_dot (inverse, i, node->l, dim);
    }
  lb_block_add_product (pc, 1, inverse, segment->node_by_parent, dim);

  node->t0 = (-misfit * length_gain + lb_block_dot (u, pb, dim)) * per_pivot;
  node->tl = (length_rate * length_gain + lb_block_dot (u, pl, dim)) * per_pivot;
  for (int j = 0; j < dim; j++)
    {
      double across = 0;
      for (int i = 0; i < dim; i++)
        across += u[i] * pc[3 * i + j];
      node->t[j] = (-u[j] * length_gain - across) * per_pivot;
    }

  double along0 = -gamma * misfit - keep * node->t0;
  double along_l = gamma * length_rate - keep * node->tl;
  for (int i = 0; i < dim; i++)
    {
      node->x0[i] = pb[i] + along0 * q[i];
      node->xl[i] = pl[i] + along_l * q[i];
      for (int j = 0; j < dim; j++)
        node->x[3 * i + j] = -pc[3 * i + j] + (-gamma * u[j] - keep * node->t[j]) * q[i];
    }
}

/* Carries what the elimination of `node` leaves over to its parent's equations. */
LB_INNER void
pass_to_parent (const LbTreeNode *node, const LbSegment *segment, LbTreeNode *parent, int dim)
{
  const double *u = segment->u;

  for (int i = 0; i < dim; i++)
    {
      parent->b[i] += -segment->on_parent[i] - row_dot (segment->parent_by_node, i, node->x0, dim)
                      + u[i] * node->t0;
      parent->l[i] += segment->on_parent_rate[i]
                      + row_dot (segment->parent_by_node, i, node->xl, dim) - u[i] * node->tl;
      for (int j = 0; j < dim; j++)
        parent->a[3 * i + j] += segment->parent_by_parent[3 * i + j] - u[i] * node->t[j];
    }
  lb_block_add_product (parent->a, 1, segment->parent_by_node, node->x, dim);
}

LB_INNER void
start_node (const LbTree *tree, LbTreeNode *node, double pseudo_rate, int dim)
{
  double force[3] = { 0 };

  for (int i = 0; i < dim; i++)
    {
      node->l[i] = 0;
      for (int j = 0; j < dim; j++)
        node->a[3 * i + j] = 0;
    }
  lb_load_node (tree, node, force, node->a);
  for (int i = 0; i < dim; i++)
    {
      node->b[i] = -force[i];
      node->a[4 * i] -= pseudo_rate * node->settling;
    }
}

LB_INNER void
eliminate_all (LbTree *tree, double pseudo_time, int dim)
{
  double pseudo_rate = isinf (pseudo_time) ? 0 : 1 / pseudo_time;

  for (size_t i = 1; i < tree->n_nodes; i++)
    start_node (tree, &tree->nodes[i], pseudo_rate, dim);

  for (size_t i = tree->n_nodes - 1; i >= 1; i--)
    {
      LbTreeNode *node = &tree->nodes[i];
      LbTreeNode *parent = &tree->nodes[node->parent];
      const LbTreeLine *line = &tree->lines[node->part];
      LbSegment segment;
      double slope;
      double rest = lb_tree_rest (tree, i);
      double stretched = 1 + lb_stretch (line, node->tension, &slope);

      lb_load_segment (tree, node, parent, rest, &segment, true, dim);
      for (int k = 0; k < dim; k++)
        {
          node->b[k] -= segment.on_node[k];
          node->l[k] += segment.on_node_rate[k];
          for (int j = 0; j < dim; j++)
            node->a[3 * k + j] += segment.node_by_node[3 * k + j];
        }
      eliminate (node, &segment, segment.length - rest * stretched, rest * slope,
                 node->rest_rate * stretched, dim);
      pass_to_parent (node, &segment, parent, dim);
    }
}

double
lb_tree_height_rate (const LbTree *tree)
{
  const LbTreeNode *weight = &tree->nodes[tree->weight];
  LbBedPoint bed = lb_bed_at (&tree->current.bed, weight->position.x);

  return bed.slope * weight->move_rate[LB_ALONG] + weight->move_rate[LB_UP];
}

/* The change of line out that brings the weight to its height, and through it the whole step. */
static double
line_step (const LbTree *tree)
{
  const LbTreeNode *weight = &tree->nodes[tree->weight];
  LbBedPoint bed = lb_bed_at (&tree->current.bed, weight->position.x);
  double misfit = weight->position.z + bed.depth - tree->hold_height;
  double by_step = bed.slope * weight->move[LB_ALONG] + weight->move[LB_UP];

  return -(misfit + by_step) / lb_tree_height_rate (tree);
}

/* From the reel down: every node's move for no change of line out, and per m of it. */
LB_INNER void
substitute_back (LbTree *tree, int dim)
{
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      const LbTreeNode *parent = &tree->nodes[node->parent];

      for (int k = 0; k < dim; k++)
        {
          node->move[k] = node->x0[k] + row_dot (node->x, k, parent->move, dim);
          node->move_rate[k] = node->xl[k] + row_dot (node->x, k, parent->move_rate, dim);
        }
    }
}

/* The moves with the change of line out in them, the changes of tension, and how large all is. */
LB_INNER void
finish_step (LbTree *tree, LbTreeStep *step, int dim)
{
  double turn_squared = 0;

  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      const LbTreeNode *parent = &tree->nodes[node->parent];
      double rest = lb_tree_rest (tree, i), turn = 0;

      node->t0 += lb_block_dot (node->t, parent->move, dim) + node->tl * step->line;
      step->pull = lb_larger (step->pull, fabs (node->t0));
      for (int k = 0; k < dim; k++)
        {
          node->move[k] += step->line * node->move_rate[k];
          step->move = lb_larger (step->move, fabs (node->move[k]));
          turn += (node->move[k] - parent->move[k]) * (node->move[k] - parent->move[k]);
        }
      turn_squared = lb_larger (turn_squared, turn / (rest * rest));
      if (!isfinite (node->t0 + turn))
        step->finite = false;
    }
  step->turn = sqrt (turn_squared);
}

LB_INNER LbTreeStep
step_in (LbTree *tree, double pseudo_time, int dim)
{
  LbTreeStep step = { .finite = true };

  eliminate_all (tree, pseudo_time, dim);
  substitute_back (tree, dim);
  if (tree->holding)
    step.line = line_step (tree);
  finish_step (tree, &step, dim);
  tree->line_step = step.line;
  return step;
}

/* A rig in one plane is solved in it: half the work, the same answer. */
static bool
in_plane (const LbTree *tree)
{
  for (size_t i = 0; i < tree->n_nodes; i++)
    if (tree->nodes[i].position.y != 0)
      return false;
  return !tree->spatial;
}

LbTreeStep
lb_tree_step (LbTree *tree, double pseudo_time)
{
  return in_plane (tree) ? step_in (tree, pseudo_time, 2) : step_in (tree, pseudo_time, 3);
}
