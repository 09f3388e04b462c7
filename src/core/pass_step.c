/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "load_segment.h"
#include "pass_private.h"
#include "tree_math.h"

#include <string.h>

/* The most that a slack segment's compliance, m/N, is taken for. */
#define MOST_COMPLIANCE 1e7

/* N/m, that a node is held with against the bed, at the most. */
#define MOST_HOLD 1e9

/* ---- One segment ---- */

typedef struct
{
  double length, misfit, compliance;
  double u[3], turning[3];            /* direction to the parent; how it changes, 1/s */
  double w[3];                        /* flow past the middle, m/s */
  double along, speed;                /* of the flow, along and across, m/s */
  double across[3], f[3];             /* m/s, N/m */
  double per_speed, bend, tangential; /* of the drag */
  double to_node, to_parent;          /* shares of what the water does */
  double wet_mass;                    /* kg, added across */
  LbCurrentPoint current;
} Segment;

/* What is in the water of the segment, shared between its ends. */
LB_INNER void
find_shares (const LbPassNode *node, const LbPassNode *parent, Segment *s)
{
  double zn = node->r[LB_UP], zp = parent->r[LB_UP], top = lb_larger (zn, zp);

  s->to_node = s->to_parent = 0.5;
  if (top <= -LB_FLOATING_HALF_HEIGHT)
    return;
  if (top > 0 || fabs (zp - zn) < LB_FLOATING_SLOPE * s->length)
    {
      double wet;
      lb_load_wet_shares (zn, zp, s->length, &wet, &s->to_parent);
      s->to_node = wet - s->to_parent;
    }
}

/* Cross-flow principle, as in lb_line_drag() but for a flow in any direction. */
LB_INNER void
find_drag (const LbTreeLine *line, Segment *s, int dim)
{
  double squared = 0;

  s->along = lb_block_dot (s->w, s->u, dim);
  for (int i = 0; i < dim; i++)
    {
      s->across[i] = s->w[i] - s->along * s->u[i];
      squared += s->across[i] * s->across[i];
    }
  s->speed = sqrt (squared) + 1e-12;
  LbDragPoint cn = { line->normal_drag, 0 };
  if (!lb_is_set (cn.value))
    cn = lb_drag_cylinder (line->reynolds_per_speed * s->speed);
  s->per_speed = line->normal_scale * cn.value * s->speed;
  s->bend =
      line->normal_scale * (cn.value + line->reynolds_per_speed * s->speed * cn.slope) / s->speed;
  s->tangential = line->tangential * fabs (s->along);
  for (int i = 0; i < dim; i++)
    s->f[i] = s->per_speed * s->across[i] + s->tangential * s->along * s->u[i];
}

LB_INNER void
find_segment (
    const LbPass *pass, const LbPassNode *node, const LbPassNode *parent, Segment *s, int dim)
{
  const LbTree *tree = &pass->steady->tree;
  const LbTreeLine *line = &tree->lines[node->part];
  double d[3], squared = 0, slope;

  for (int i = 0; i < dim; i++)
    {
      d[i] = parent->r[i] - node->r[i];
      squared += d[i] * d[i];
    }
  s->length = lb_larger (sqrt (squared), 1e-12);
  s->current = lb_current_at (&tree->current, 0.5 * (node->r[LB_ALONG] + parent->r[LB_ALONG]),
                              0.5 * (node->r[LB_UP] + parent->r[LB_UP]));
  for (int i = 0; i < dim; i++)
    {
      s->u[i] = d[i] / s->length;
      s->w[i] = (i == LB_ALONG ? s->current.speed : 0) - 0.5 * (node->v[i] + parent->v[i]);
    }
  double lengthening = 0;
  for (int i = 0; i < dim; i++)
    lengthening += (parent->v[i] - node->v[i]) * s->u[i];
  for (int i = 0; i < dim; i++)
    s->turning[i] = (parent->v[i] - node->v[i] - lengthening * s->u[i]) / s->length;
  find_shares (node, parent, s);
  find_drag (line, s, dim);
  s->wet_mass = node->rest * pass->added[node->part];
  double stretched = 1 + lb_stretch (line, node->tension, &slope);
  s->misfit = s->length - node->rest * stretched;
  s->compliance = node->rest * slope;
}

/* What it takes to move the water that goes with one end: M a + 1/2 dM/dt v, where M is the added
 * mass, across the line only, so that it turns with it. The second term is what keeps the energy of
 * the water: without it a shaking line would draw energy from nowhere. */
LB_INNER void
find_added (const LbPassNode *end, const Segment *s, double mass, double *force, int dim)
{
  double v[3];

  for (int i = 0; i < dim; i++)
    v[i] = end->v[i] - (i == LB_ALONG ? s->current.speed : 0);
  double a_along = lb_block_dot (end->a, s->u, dim), v_along = lb_block_dot (v, s->u, dim);
  double v_turning = lb_block_dot (v, s->turning, dim);
  for (int i = 0; i < dim; i++)
    force[i] =
        mass
        * (end->a[i] - a_along * s->u[i] - 0.5 * (s->turning[i] * v_along + s->u[i] * v_turning));
}

/* All forces of a segment on its two ends, with what it takes to move it. */
LB_INNER void
find_forces (const LbPass *pass,
             const LbPassNode *node,
             const LbPassNode *parent,
             const Segment *s,
             double *on_node,
             double *on_parent,
             int dim)
{
  const LbTreeLine *line = &pass->steady->tree.lines[node->part];
  double half = 0.5 * node->rest, dry = half * pass->dry[node->part];
  double up = node->rest * line->buoyancy, weight = half * line->weight_in_air;
  double with_node[3], with_parent[3];

  find_added (node, s, s->to_node * s->wet_mass, with_node, dim);
  find_added (parent, s, s->to_parent * s->wet_mass, with_parent, dim);
  for (int i = 0; i < dim; i++)
    {
      double water = s->length * s->f[i] + (i == LB_UP ? up : 0);
      double dead = i == LB_UP ? weight : 0, pull = node->tension * s->u[i];
      on_node[i] = s->to_node * water - dead + pull - dry * node->a[i] - with_node[i];
      on_parent[i] = s->to_parent * water - dead - pull - dry * parent->a[i] - with_parent[i];
    }
}

/* Changes of the forces on both ends with both positions. */
typedef struct
{
  double node_by_node[9], node_by_parent[9], parent_by_node[9], parent_by_parent[9];
} Slopes;

LB_INNER void
find_slopes (const LbPass *pass, const LbPassNode *node, const Segment *s, Slopes *m, int dim)
{
  double tighten = node->tension / s->length, squared = pass->beta * pass->beta;
  double turn = (s->tangential - s->per_speed) * s->along;
  double lean = 2 * s->tangential - s->per_speed;
  double dry = 0.5 * node->rest * pass->dry[node->part] * squared;
  double node_mass = s->to_node * s->wet_mass * squared;
  double parent_mass = s->to_parent * s->wet_mass * squared;
  double shear[3] = { 0.5 * s->length * s->current.d_dx, 0.5 * s->length * s->current.d_dz, 0 };

  for (int i = 0; i < dim; i++)
    {
      double tilt = lean * s->u[i] - s->along * s->bend * s->across[i];
      double by_x = (i == LB_ALONG ? s->per_speed : 0) + lean * s->u[i] * s->u[LB_ALONG]
                    + s->bend * s->across[i] * s->across[LB_ALONG];
      for (int j = 0; j < dim; j++)
        {
          int k = 3 * i + j;
          double same = i == j ? 1 : 0, normal = same - s->u[i] * s->u[j];
          double by_flow = same * s->per_speed + lean * s->u[i] * s->u[j]
                           + s->bend * s->across[i] * s->across[j];
          double by_middle = by_x * shear[j] - 0.5 * pass->beta * s->length * by_flow;
          double by_span = s->f[i] * s->u[j] + turn * normal + tilt * s->across[j];
          double g = tighten * normal;
          m->node_by_parent[k] = s->to_node * (by_middle + by_span) + g;
          m->node_by_node[k] =
              s->to_node * (by_middle - by_span) - g - dry * same - node_mass * normal;
          m->parent_by_parent[k] =
              s->to_parent * (by_middle + by_span) - g - dry * same - parent_mass * normal;
          m->parent_by_node[k] = s->to_parent * (by_middle - by_span) + g;
        }
    }
}

/* Of a segment that comes out of the water: its shares move with its ends. */
static void
add_surface_slopes (const LbPass *pass,
                    const LbPassNode *node,
                    const LbPassNode *parent,
                    const Segment *s,
                    Slopes *m)
{
  const LbTreeLine *line = &pass->steady->tree.lines[node->part];
  double zn = node->r[LB_UP], zp = parent->r[LB_UP], step = 1e-6, wet[2], par[2];
  double *to_node[2] = { m->node_by_node, m->node_by_parent };
  double *to_parent[2] = { m->parent_by_node, m->parent_by_parent };

  for (int end = 0; end < 2; end++)
    {
      double dn = end == 0 ? step : 0, dp = end == 1 ? step : 0;
      lb_load_wet_shares (zn + dn, zp + dp, s->length, &wet[0], &par[0]);
      lb_load_wet_shares (zn - dn, zp - dp, s->length, &wet[1], &par[1]);
      double wet_rate = (wet[0] - wet[1]) / (2 * step), rate = (par[0] - par[1]) / (2 * step);
      for (int i = 0; i < 3; i++)
        {
          double water = s->length * s->f[i] + (i == LB_UP ? node->rest * line->buoyancy : 0);
          to_node[end][3 * i + LB_UP] += water * (wet_rate - rate);
          to_parent[end][3 * i + LB_UP] += water * rate;
        }
    }
}

/* ---- Factors ---- */

/* How hard the rest of the rig, the parent at rest, holds the node against what the bed pushes
 * along. Friction can turn that round on a steep line; then the bed's force is taken as foreseen.
 */
LB_INNER double
bed_hold (const LbPassNode *node, int dim)
{
  double give = 0;

  for (int i = 0; i < 2; i++)
    give -= (i == LB_UP ? 1 : node->bed_slope)
            * lb_block_dot (node->x0_by_b + 3 * i, node->bed_push, dim);
  if (!(give > 1 / MOST_HOLD))
    return MOST_HOLD;
  return lb_larger (1 / give - node->bed_rate, 1e-3 / give);
}

/* Eliminates a node's position and the tension above it, as in tree_step.c, and keeps what turns
 * any forces and misfit into the moves. */
LB_INNER void
factor_node (LbPassNode *node, LbPassNode *parent, const Segment *s, const Slopes *m, int dim)
{
  const double *u = s->u;
  double c = s->compliance < MOST_COMPLIANCE ? s->compliance : MOST_COMPLIANCE;
  double scale = 0.5 * (fabs (node->matrix[0]) + fabs (node->matrix[4]));
  double gamma = scale < 0.5 / c ? scale : 0.5 / c;
  double bordered[9], inverse[9], q[3], p[3], pc[9] = { 0 };

  for (int i = 0; i < dim; i++)
    for (int j = 0; j < dim; j++)
      bordered[3 * i + j] = node->matrix[3 * i + j] - gamma * u[i] * u[j];
  lb_block_invert (bordered, inverse, dim);
  for (int i = 0; i < dim; i++)
    {
      q[i] = lb_block_dot (inverse + 3 * i, u, dim);
      p[i] = u[0] * inverse[i] + u[1] * inverse[3 + i] + (dim == 3 ? u[2] * inverse[6 + i] : 0);
    }
  lb_block_add_product (pc, 1, inverse, m->node_by_parent, dim);

  double uq = lb_block_dot (u, q, dim), keep = 1 - gamma * c, gain = 1 + gamma * uq;
  double per_pivot = 1 / (keep * uq - c);
  node->compliance = c;
  node->held_by = -gain / uq;
  node->pull_by_gap = -per_pivot * gain;
  for (int j = 0; j < dim; j++)
    {
      double across = u[0] * pc[j] + u[1] * pc[3 + j] + (dim == 3 ? u[2] * pc[6 + j] : 0);
      node->pull_by_b[j] = per_pivot * p[j];
      node->pull_by_parent[j] = -per_pivot * (u[j] * gain + across);
    }
  for (int i = 0; i < dim; i++)
    {
      node->x0_by_gap[i] = -(gamma + keep * node->pull_by_gap) * q[i];
      for (int j = 0; j < dim; j++)
        {
          int k = 3 * i + j;
          node->x0_by_b[k] = inverse[k] - keep * q[i] * node->pull_by_b[j];
          node->move_by_parent[k] = -pc[k] - (gamma * u[j] + keep * node->pull_by_parent[j]) * q[i];
          node->parent_by_b[k] = u[i] * node->pull_by_b[j];
          parent->matrix[k] += m->parent_by_parent[k] - u[i] * node->pull_by_parent[j];
        }
    }
  for (int i = 0; i < dim; i++)
    node->parent_by_gap[i] =
        u[i] * node->pull_by_gap - lb_block_dot (m->parent_by_node + 3 * i, node->x0_by_gap, dim);
  lb_block_add_product (node->parent_by_b, -1, m->parent_by_node, node->x0_by_b, dim);
  lb_block_add_product (parent->matrix, 1, m->parent_by_node, node->move_by_parent, dim);
  node->bed_hold = bed_hold (node, dim);
}

/* Carries the forces up the tree through the kept factors: move and pull get what they are while
 * the parent rests. */
LB_INNER void
carry_up (LbPassNode *node, LbPassNode *parent, double misfit, int dim)
{
  for (int i = 0; i < dim; i++)
    {
      node->move[i] =
          lb_block_dot (node->x0_by_b + 3 * i, node->b, dim) + node->x0_by_gap[i] * misfit;
      parent->b[i] +=
          lb_block_dot (node->parent_by_b + 3 * i, node->b, dim) + node->parent_by_gap[i] * misfit;
    }
  node->pull = lb_block_dot (node->pull_by_b, node->b, dim) + node->pull_by_gap * misfit;
}

LB_INNER void
clear_node (LbPass *pass, LbPassNode *node, bool factor, int dim)
{
  double force[3] = { 0 };

  if (factor)
    memset (node->matrix, 0, sizeof node->matrix);
  lb_pass_load_node (pass, node, force, factor ? node->matrix : NULL);
  for (int i = 0; i < 3; i++)
    node->b[i] = -force[i];
}

LB_INNER LbPassChange
iterate (LbPass *pass, bool factor, int dim)
{
  LbPassChange change = { .finite = true };
  double sum = 0;

  memset (pass->nodes[0].b, 0, sizeof pass->nodes[0].b);
  for (size_t i = 1; i < pass->n_nodes; i++)
    clear_node (pass, &pass->nodes[i], factor, dim);
  for (size_t i = pass->n_nodes - 1; i >= 1; i--)
    {
      LbPassNode *node = &pass->nodes[i], *parent = &pass->nodes[node->parent];
      Segment s;
      find_segment (pass, node, parent, &s, dim);
      double on_node[3], on_parent[3];
      find_forces (pass, node, parent, &s, on_node, on_parent, dim);
      for (int k = 0; k < dim; k++)
        {
          node->b[k] -= on_node[k];
          parent->b[k] -= on_parent[k];
        }
      if (factor)
        {
          Slopes m;
          find_slopes (pass, node, &s, &m, dim);
          if (s.to_node != 0.5 || s.to_parent != 0.5)
            add_surface_slopes (pass, node, parent, &s, &m);
          for (int k = 0; k < 9; k++)
            node->matrix[k] += dim == 3 || (k % 3 < 2 && k < 6) ? m.node_by_node[k] : 0;
          factor_node (node, parent, &s, &m, dim);
        }
      carry_up (node, parent, s.misfit, dim);
    }
  for (size_t i = 1; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      const LbPassNode *parent = &pass->nodes[node->parent];
      for (int k = 0; k < dim; k++)
        {
          node->move[k] += lb_block_dot (node->move_by_parent + 3 * k, parent->move, dim);
          change.move = lb_larger (change.move, fabs (node->move[k]));
          sum += node->move[k];
        }
      node->pull += lb_block_dot (node->pull_by_parent, parent->move, dim);
      change.pull = lb_larger (change.pull, fabs (node->pull));
      change.pull = lb_larger (change.pull, node->bed_rate * fabs (node->move[LB_UP]));
      sum += node->pull;
    }
  change.finite = isfinite (sum);
  return change;
}

LbPassChange
lb_pass_iterate (LbPass *pass, bool factor)
{
  pass->statistics.iterations++;
  pass->statistics.factors += factor;
  return pass->flat ? iterate (pass, factor, 2) : iterate (pass, factor, 3);
}

void
lb_pass_rates (LbPass *pass)
{
  for (size_t i = 0; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      for (int k = 0; k < 3; k++)
        {
          node->v[k] = pass->beta * node->r[k] + node->v_const[k];
          node->a[k] = pass->beta * node->v[k] + node->a_const[k];
        }
    }
}

void
lb_pass_fill_pulls (const LbPass *pass, LbShape *shape)
{
  for (size_t i = 1; i < pass->n_nodes; i++)
    {
      const LbPassNode *node = &pass->nodes[i], *parent = &pass->nodes[node->parent];
      Segment s;
      double on_node[3], on_parent[3];
      find_segment (pass, node, parent, &s, 3);
      find_forces (pass, node, parent, &s, on_node, on_parent, 3);
      shape->nodes[i].pull_on_node = lb_tree_vec3 (on_node);
      shape->nodes[i].pull_on_parent = lb_tree_vec3 (on_parent);
    }
}
