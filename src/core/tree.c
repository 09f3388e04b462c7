/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tree.h"

#include "drag.h"
#include "load.h"

#include <float.h>
#include <stdlib.h>
#include <string.h>

/* A line cannot push: its slack folds. Below a few times this tension, N, a segment folds up, as
 * 1 - exp (-tension / this), so that no tension is ever below 0 and every shape is held together.
 * A line that carries anything at all is not changed by it. */
#define SLACK_TENSION 1e-6

/* The share of its tension that a segment keeps at least in one step. */
#define LEAST_KEPT_TENSION 0.05

void
lb_tree_clear (LbTree *tree)
{
  free (tree->nodes);
  memset (tree, 0, sizeof *tree);
}

LbStatus
lb_tree_resize (LbTree *tree, size_t n_nodes)
{
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

/* fmax() without its care for NAN, which keeps it a library call in the inner loops. */
static inline double
larger (double a, double b)
{
  return a > b ? a : b;
}

/* Stretch of a segment under `tension` and its slope. */
static inline double
stretch (const LbTreeLine *line, double tension, double *slope)
{
  double elastic = tension / line->stiffness;

  *slope = 1 / line->stiffness;
  if (tension > 40 * SLACK_TENSION)
    return elastic;
  double folded = exp (-tension / SLACK_TENSION);
  *slope = *slope * (1 - folded) + (1 + elastic) * folded / SLACK_TENSION;
  return (1 + elastic) * (1 - folded) - 1;
}

/* P += Q R for 3 by 3 matrices stored row by row. */
static inline void
add_product (double *p, const double *q, const double *r)
{
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      p[3 * i + j] += q[3 * i] * r[j] + q[3 * i + 1] * r[3 + j] + q[3 * i + 2] * r[6 + j];
}

static inline double
row_dot (const double *m, int i, const double *v)
{
  return m[3 * i] * v[0] + m[3 * i + 1] * v[1] + m[3 * i + 2] * v[2];
}

static inline void
invert (const double *m, double *inverse)
{
  double c00 = m[4] * m[8] - m[5] * m[7];
  double c10 = m[5] * m[6] - m[3] * m[8];
  double c20 = m[3] * m[7] - m[4] * m[6];
  double k = 1 / (m[0] * c00 + m[1] * c10 + m[2] * c20);
  inverse[0] = k * c00;
  inverse[1] = k * (m[2] * m[7] - m[1] * m[8]);
  inverse[2] = k * (m[1] * m[5] - m[2] * m[4]);
  inverse[3] = k * c10;
  inverse[4] = k * (m[0] * m[8] - m[2] * m[6]);
  inverse[5] = k * (m[2] * m[3] - m[0] * m[5]);
  inverse[6] = k * c20;
  inverse[7] = k * (m[1] * m[6] - m[0] * m[7]);
  inverse[8] = k * (m[0] * m[4] - m[1] * m[3]);
}

/* Eliminates the position of node and the tension of its segment: fills x, x0, xl, t, t0, tl.
 *
 *   A dr + u dT        = b - C dp - l dL      forces at the node
 *   -u.dr - c dT       = h - u.dp + ...       length of the segment
 *
 * A may be singular along u (a node that nothing but its segment holds), so gamma u times the
 * second row is added to the first: A - gamma u u' has a well-behaved inverse. */
static void
eliminate (LbTreeNode *node,
           const LbSegment *segment,
           double misfit,
           double compliance,
           double length_rate)
{
  const double *u = segment->u;
  double scale = (fabs (node->a[0]) + fabs (node->a[4]) + fabs (node->a[8])) / 3;
  double gamma = scale < 0.5 / compliance ? scale : 0.5 / compliance;
  double bordered[9], inverse[9], q[3];

  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      bordered[3 * i + j] = node->a[3 * i + j] - gamma * u[i] * u[j];
  invert (bordered, inverse);
  for (int i = 0; i < 3; i++)
    q[i] = row_dot (inverse, i, u);

  double uq = u[0] * q[0] + u[1] * q[1] + u[2] * q[2];
  double keep = 1 - gamma * compliance;
  double per_pivot = 1 / (keep * uq - compliance);
  double length_gain = 1 + gamma * uq;

  double pb[3], pl[3], pc[9] = { 0 };
  for (int i = 0; i < 3; i++)
    {
      pb[i] = row_dot (inverse, i, node->b);
      pl[i] = -row_dot (inverse, i, node->l);
    }
  add_product (pc, inverse, segment->node_by_parent);

  node->t0 = (-misfit * length_gain + u[0] * pb[0] + u[1] * pb[1] + u[2] * pb[2]) * per_pivot;
  node->tl = (length_rate * length_gain + u[0] * pl[0] + u[1] * pl[1] + u[2] * pl[2]) * per_pivot;
  for (int j = 0; j < 3; j++)
    node->t[j] =
        (-u[j] * length_gain - (u[0] * pc[j] + u[1] * pc[3 + j] + u[2] * pc[6 + j])) * per_pivot;

  double along0 = -gamma * misfit - keep * node->t0;
  double along_l = gamma * length_rate - keep * node->tl;
  for (int i = 0; i < 3; i++)
    {
      node->x0[i] = pb[i] + along0 * q[i];
      node->xl[i] = pl[i] + along_l * q[i];
      for (int j = 0; j < 3; j++)
        node->x[3 * i + j] = -pc[3 * i + j] + (-gamma * u[j] - keep * node->t[j]) * q[i];
    }
}

/* Carries what the elimination of `node` leaves over to its parent's equations. */
static void
pass_to_parent (const LbTreeNode *node, const LbSegment *segment, LbTreeNode *parent)
{
  const double *u = segment->u;

  for (int i = 0; i < 3; i++)
    {
      parent->b[i] +=
          -segment->on_parent[i] - row_dot (segment->parent_by_node, i, node->x0) + u[i] * node->t0;
      parent->l[i] += segment->on_parent_rate[i] + row_dot (segment->parent_by_node, i, node->xl)
                      - u[i] * node->tl;
      for (int j = 0; j < 3; j++)
        parent->a[3 * i + j] += segment->parent_by_parent[3 * i + j] - u[i] * node->t[j];
    }
  add_product (parent->a, segment->parent_by_node, node->x);
}

static void
start_node (const LbTree *tree, LbTreeNode *node, double pseudo_rate)
{
  double force[3] = { 0 };

  memset (node->a, 0, sizeof node->a);
  memset (node->l, 0, sizeof node->l);
  lb_load_node (tree, node, force, node->a);
  for (int i = 0; i < 3; i++)
    {
      node->b[i] = -force[i];
      node->a[4 * i] -= pseudo_rate * node->settling;
    }
}

static void
eliminate_all (LbTree *tree, double pseudo_time)
{
  double pseudo_rate = isinf (pseudo_time) ? 0 : 1 / pseudo_time;

  for (size_t i = 1; i < tree->n_nodes; i++)
    start_node (tree, &tree->nodes[i], pseudo_rate);

  for (size_t i = tree->n_nodes - 1; i >= 1; i--)
    {
      LbTreeNode *node = &tree->nodes[i];
      LbTreeNode *parent = &tree->nodes[node->parent];
      const LbTreeLine *line = &tree->lines[node->line];
      LbSegment segment;
      double slope;
      double rest = lb_tree_rest (tree, i);
      double stretched = 1 + stretch (line, node->tension, &slope);

      lb_load_segment (tree, node, parent, rest, &segment, true);
      for (int k = 0; k < 9; k++)
        node->a[k] += segment.node_by_node[k];
      for (int k = 0; k < 3; k++)
        {
          node->b[k] -= segment.on_node[k];
          node->l[k] += segment.on_node_rate[k];
        }
      eliminate (node, &segment, segment.length - rest * stretched, rest * slope,
                 node->rest_rate * stretched);
      pass_to_parent (node, &segment, parent);
    }
}

/* The change of line out that brings the weight to its height, and through it the whole step. */
static double
line_step (const LbTree *tree)
{
  const LbTreeNode *weight = &tree->nodes[tree->weight];
  LbBedPoint bed = lb_bed_at (&tree->current.bed, weight->position.x);
  double misfit = weight->position.z + bed.depth - tree->hold_height;
  double by_step = bed.slope * weight->move[0] + weight->move[2];
  double by_line = bed.slope * weight->move_rate[0] + weight->move_rate[2];

  return -(misfit + by_step) / by_line;
}

/* How far the step moves node `i` against its parent, as a share of the segment between them. */
static double
turn_of (const LbTree *tree, size_t i)
{
  const LbTreeNode *node = &tree->nodes[i], *parent = &tree->nodes[node->parent];
  double dx = node->move[0] - parent->move[0], dy = node->move[1] - parent->move[1],
         dz = node->move[2] - parent->move[2];

  return sqrt (dx * dx + dy * dy + dz * dz) / lb_tree_rest (tree, i);
}

LbTreeStep
lb_tree_step (LbTree *tree, double pseudo_time)
{
  LbTreeStep step = { 0, 0, 0, 0, true };
  LbTreeNode *reel = &tree->nodes[0];

  memset (reel->move, 0, sizeof reel->move);
  memset (reel->move_rate, 0, sizeof reel->move_rate);
  eliminate_all (tree, pseudo_time);

  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      const LbTreeNode *parent = &tree->nodes[node->parent];

      for (int k = 0; k < 3; k++)
        {
          node->move[k] = node->x0[k] + row_dot (node->x, k, parent->move);
          node->move_rate[k] = node->xl[k] + row_dot (node->x, k, parent->move_rate);
        }
    }
  if (tree->holding)
    {
      step.line = line_step (tree);
      for (size_t i = 1; i < tree->n_nodes; i++)
        for (int k = 0; k < 3; k++)
          tree->nodes[i].move[k] += step.line * tree->nodes[i].move_rate[k];
    }
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      const LbTreeNode *parent = &tree->nodes[node->parent];
      double pull = node->t0 + node->t[0] * parent->move[0] + node->t[1] * parent->move[1]
                    + node->t[2] * parent->move[2] + node->tl * step.line;

      node->t0 = pull;
      step.pull = larger (step.pull, fabs (pull));
      step.turn = larger (step.turn, turn_of (tree, i));
      for (int k = 0; k < 3; k++)
        step.move = larger (step.move, fabs (node->move[k]));
      if (!isfinite (pull) || !isfinite (node->move[0] + node->move[1] + node->move[2]))
        step.finite = false;
    }
  tree->line_step = step.line;
  return step;
}

/* Where above the bed's firmness, in its softnesses, a node is put that a step would take under it. */
#define LANDING 3

/* Moves a node by its share of the step. What the bed carries slides along it and ends where the
 * bed carries the force foreseen for it. */
static void
take_move (const LbTree *tree, LbTreeNode *node, double factor)
{
  LbBedPoint bed = lb_bed_at (&tree->current.bed, node->position.x);
  double sunk = -node->position.z - bed.depth;
  double dx = factor * node->move[0], dz = factor * node->move[2];

  node->position.x += dx;
  node->position.y += factor * node->move[1];
  node->position.z += dz;
  double floor = -lb_bed_at (&tree->current.bed, node->position.x).depth, next;
  if (lb_load_bed_step (tree, sunk, -dz - bed.slope * dx, &next))
    node->position.z = floor - next;
  else
    /* What comes down from above lands softly. */
    node->position.z
      = larger (node->position.z, floor - LB_TREE_BED_DEPTH + LANDING * tree->bed_softness);
}

void
lb_tree_take (LbTree *tree, double factor)
{
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];

      take_move (tree, node, factor);
      node->tension =
          larger (node->tension + factor * node->t0, LEAST_KEPT_TENSION * node->tension);
    }
  tree->line_out += factor * tree->line_step;
}

void
lb_tree_keep (LbTree *tree)
{
  for (size_t i = 0; i < tree->n_nodes; i++)
    {
      tree->nodes[i].kept_position = tree->nodes[i].position;
      tree->nodes[i].kept_tension = tree->nodes[i].tension;
    }
}

void
lb_tree_restore (LbTree *tree)
{
  for (size_t i = 0; i < tree->n_nodes; i++)
    {
      tree->nodes[i].position = tree->nodes[i].kept_position;
      tree->nodes[i].tension = tree->nodes[i].kept_tension;
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
      out->pull_on_node = lb_vec3 (segment->on_node[0], segment->on_node[1], segment->on_node[2]);
      out->pull_on_parent =
          lb_vec3 (segment->on_parent[0], segment->on_parent[1], segment->on_parent[2]);
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

      lb_load_segment (tree, node, parent, rest, &segment, false);
      for (int k = 0; k < 3; k++)
        {
          node->b[k] += segment.on_node[k];
          parent->b[k] += segment.on_parent[k];
          left_over = larger (left_over, fabs (node->b[k]));
        }
      double stretched = 1 + stretch (&tree->lines[node->line], node->tension, &slope);
      *gap = larger (*gap, fabs (segment.length - rest * stretched));
      if (shape != NULL)
        fill_shape_node (tree, i, &segment, &shape->nodes[i]);
    }
  return left_over;
}

/* ---- The sweep ---- */

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
      lb_load_segment (tree, node, parent, lb_tree_rest (tree, i), &segment, false);
      for (int k = 0; k < 3; k++)
        node->b[k] += segment.on_node[k];
      if (node->position.z <= bed_top (tree, node->position.x) + 1e-9 && node->b[2] < 0)
        {
          node->b[0] -= (tree->boat_speed > 0 ? tree->bed_friction : 0) * node->b[2];
          node->b[2] = 0;
        }
      node->tension =
          sqrt (node->b[0] * node->b[0] + node->b[1] * node->b[1] + node->b[2] * node->b[2]);
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
      double length =
          lb_tree_rest (tree, i) * (1 + stretch (&tree->lines[node->line], node->tension, &slope));
      LbVec3 pull = lb_vec3 (node->b[0], node->b[1], node->b[2]);
      LbVec3 old = lb_vec3 (node->move[0], node->move[1], node->move[2]);
      LbVec3 d = node->tension > 0 ? lb_vec3_scale (pull, 1 / node->tension) : old;

      d = lb_vec3_lerp (old, d, blend);
      double norm = lb_vec3_norm (d);
      d = norm > 1e-9 ? lb_vec3_scale (d, 1 / norm) : lb_vec3 (0, 0, -1);
      node->move[0] = d.x;
      node->move[1] = d.y;
      node->move[2] = d.z;
      node->position = place (tree, parent->position, d, length);
    }
  if (tree->holding)
    {
      const LbTreeNode *first = &tree->nodes[1];
      double down = fmax (-first->move[2], 0.1);
      double error = lb_tree_weight_height (tree) - tree->hold_height;
      double change = fmin (error / down, 0.5 * tree->line_out + 0.5);
      tree->line_out = fmax (tree->line_out + change, LB_TREE_SHORTEST_SWEEP);
    }
}
