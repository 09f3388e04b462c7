/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The load of one segment, for the inner loops: see load.h. Internal to core. */
#pragma once

#include "drag.h"
#include "load.h"
#include "tree_math.h"

/* A line that lies flat at the surface comes out of the water over this height to either side, m,
 * so that a floating line finds its level; one that rises more steeply than this slope is cut off
 * sharply at the surface. */
#define LB_FLOATING_HALF_HEIGHT 0.005
#define LB_FLOATING_SLOPE 0.1

typedef struct
{
  double f[3];       /* N/m */
  double by_flow[3]; /* d f / d flow speed */
  double by_turn[9]; /* d f / d direction, across the direction */
} LbLineDrag;

/* Cross-flow principle: the flow across the line and the flow along it drag apart. `flow` m/s past
 * the line, downstream; `u` unit vector along it. */
LB_INNER void
lb_line_drag (
    const LbTreeLine *line, double flow, const double *u, LbLineDrag *drag, bool slopes, int dim)
{
  double along = flow * u[LB_ALONG], across[3], squared = 0;

  for (int i = 0; i < dim; i++)
    {
      across[i] = (i == LB_ALONG ? flow : 0) - along * u[i];
      squared += across[i] * across[i];
    }
  double speed = sqrt (squared) + 1e-12;
  LbDragPoint cn = { line->normal_drag, 0 };
  if (!lb_is_set (cn.value))
    cn = lb_drag_cylinder (line->reynolds_per_speed * speed);
  double per_speed = line->normal_scale * cn.value * speed;
  double tangential = line->tangential * fabs (along);
  for (int i = 0; i < dim; i++)
    drag->f[i] = per_speed * across[i] + tangential * along * u[i];
  if (!slopes)
    return;

  double bend =
      line->normal_scale * (cn.value + line->reynolds_per_speed * speed * cn.slope) / speed;
  double turn = (tangential - per_speed) * along;
  double lean = 2 * tangential - per_speed;
  for (int i = 0; i < dim; i++)
    {
      double tilt = lean * u[i] - along * bend * across[i];
      drag->by_flow[i] = (i == LB_ALONG ? per_speed : 0) + lean * u[i] * u[LB_ALONG]
                         + bend * across[i] * across[LB_ALONG];
      for (int j = 0; j < dim; j++)
        drag->by_turn[3 * i + j] = (i == j ? turn : 0) - turn * u[i] * u[j] + tilt * across[j];
    }
}

/* Length and direction of a segment, and the current at its middle; `*flow` is the speed past it.
 */
LB_INNER LbCurrentPoint
lb_segment_flow (const LbTree *tree,
                 const LbTreeNode *node,
                 const LbTreeNode *parent,
                 LbSegment *segment,
                 double *flow)
{
  double d[3] = { parent->position.x - node->position.x, parent->position.z - node->position.z,
                  parent->position.y - node->position.y };
  double slope, length = sqrt (d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
  LbCurrentPoint current =
      lb_current_at (&tree->current, 0.5 * (node->position.x + parent->position.x),
                     0.5 * (node->position.z + parent->position.z));

  segment->length = lb_larger (length, 1e-12);
  for (int i = 0; i < 3; i++)
    segment->u[i] = d[i] / segment->length;
  *flow = lb_load_speed_past (tree, current.speed, &slope);
  current.d_dx *= slope;
  current.d_dz *= slope;
  return current;
}

/* The four matrices, the load shared between node and parent as told. */
LB_INNER void
lb_segment_slopes (LbSegment *s,
                   const LbLineDrag *drag,
                   const LbCurrentPoint *current,
                   double tension,
                   double node_share,
                   double parent_share,
                   int dim)
{
  double tighten = tension / s->length;
  double shear[3] = { 0.5 * s->length * current->d_dx, 0.5 * s->length * current->d_dz, 0 };

  for (int i = 0; i < dim; i++)
    for (int j = 0; j < dim; j++)
      {
        int k = 3 * i + j;
        double g = (i == j ? tighten : 0) - tighten * s->u[i] * s->u[j];
        double by_middle = drag->by_flow[i] * shear[j];
        double by_span = drag->f[i] * s->u[j] + drag->by_turn[k];
        double up = by_middle + by_span, down = by_middle - by_span;
        s->node_by_parent[k] = node_share * up + g;
        s->node_by_node[k] = node_share * down - g;
        s->parent_by_parent[k] = parent_share * up - g;
        s->parent_by_node[k] = parent_share * down + g;
      }
}

/* Whether a segment lies flatter than LB_FLOATING_SLOPE, as the wet shares count it: by the length
 * that it is stretched to. */
LB_INNER bool
lb_lies_flat (const LbTreeNode *node, const LbTreeNode *parent)
{
  LbVec3 d = lb_vec3_sub (parent->position, node->position);

  return d.z * d.z < LB_FLOATING_SLOPE * LB_FLOATING_SLOPE * lb_vec3_dot (d, d);
}

/* Fills `segment` for the segment of unstretched length `rest` between `node` and `parent`, the
 * matrices and rates only if `slopes`. `dim` is 2 for a rig in the plane y = 0, otherwise 3. */
LB_INNER void
lb_load_segment (const LbTree *tree,
                 const LbTreeNode *node,
                 const LbTreeNode *parent,
                 double rest,
                 LbSegment *s,
                 bool slopes,
                 int dim)
{
  double top = lb_larger (parent->position.z, node->position.z);

  for (int i = 0; i < 3; i++)
    s->on_node_rate[i] = s->on_parent_rate[i] = 0;
  if (top > 0 || (top > -LB_FLOATING_HALF_HEIGHT && lb_lies_flat (node, parent)))
    {
      lb_load_surface_segment (tree, node, parent, rest, s, slopes);
      return;
    }

  const LbTreeLine *line = &tree->lines[node->part];
  double flow, net_weight = line->weight_in_air - line->buoyancy;
  LbLineDrag drag;
  LbCurrentPoint current = lb_segment_flow (tree, node, parent, s, &flow);
  lb_line_drag (line, flow, s->u, &drag, slopes, dim);
  for (int i = 0; i < dim; i++)
    {
      double half = 0.5 * (s->length * drag.f[i] - (i == LB_UP ? rest * net_weight : 0));
      double pull = node->tension * s->u[i];
      s->on_node[i] = half + pull;
      s->on_parent[i] = half - pull;
    }
  if (!slopes)
    return;
  lb_segment_slopes (s, &drag, &current, node->tension, 0.5, 0.5, dim);
  s->on_node_rate[LB_UP] = s->on_parent_rate[LB_UP] = -0.5 * net_weight * node->rest_rate;
}
