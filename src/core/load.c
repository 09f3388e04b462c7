/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "load.h"

#include "load_segment.h"

/* In still water a slack rig would have no shape at all. Below this speed, m/s, a trickle of at
 * most the other, fading out, lays it downstream. */
#define STILL_SPEED 0.02
#define STILL_TRICKLE 0.005

double
lb_load_speed_past (const LbTree *tree, double current, double *slope)
{
  double speed = current + tree->boat_speed + tree->extra_flow;
  double still = 1 - fabs (speed) / STILL_SPEED;

  *slope = 1;
  if (still <= 0)
    return speed;
  *slope = 1 - 2 * STILL_TRICKLE / STILL_SPEED * (speed < 0 ? -still : still);
  return speed + STILL_TRICKLE * still * still;
}

/* ---- Out of the water ---- */

/* How much of a thing at height z is in the water, 1 to 0, and its first and second integrals. */
typedef struct
{
  double share, first, second;
} Wetness;

static Wetness
wetness_at (double z, double half)
{
  if (z <= -half)
    return (Wetness){ 1, z, 0.5 * z * z };
  if (z >= half)
    return (Wetness){ 0, 0, -0.1 * half * half };
  double whole = 2 * half, t = (z + half) / whole, t2 = t * t;
  return (Wetness){ 1 - t2 * (3 - 2 * t), -half + whole * (t - t2 * t + 0.5 * t2 * t2),
                    0.5 * half * half
                        + whole * (-half * t + whole * t2 * (0.5 - 0.25 * t2 + 0.1 * t2 * t)) };
}

/* d share / d z */
static double
wetness_slope (double z, double half)
{
  return fabs (z) >= half ? 0 : -0.75 * (1 - z * z / (half * half)) / half;
}

void
lb_load_wet_shares (double z_node, double z_parent, double length, double *wet, double *to_parent)
{
  double rise = z_parent - z_node;
  double steepness = fabs (rise) / (LB_FLOATING_SLOPE * length);

  double half = steepness < 1 ? LB_FLOATING_HALF_HEIGHT * (1 - steepness) : 0;
  if (steepness < 1e-5)
    {
      double middle = 0.5 * (z_node + z_parent);
      *wet = wetness_at (middle, half).share;
      *to_parent = 0.5 * *wet + rise / 12 * wetness_slope (middle, half);
      return;
    }
  Wetness n = wetness_at (z_node, half);
  Wetness p = wetness_at (z_parent, half);
  *wet = (p.first - n.first) / rise;
  *to_parent = p.first / rise - (p.second - n.second) / (rise * rise);
}

double
lb_load_wetness (double z, double half, double *slope)
{
  *slope = wetness_slope (z, half);
  return wetness_at (z, half).share;
}

/* ---- A line that comes out of the water ---- */

/* A segment that comes out of the water: buoyancy and drag act on the wet share only, and the
 * shares themselves move with the ends. */
void
lb_load_surface_segment (const LbTree *tree,
                         const LbTreeNode *node,
                         const LbTreeNode *parent,
                         double rest,
                         LbSegment *s,
                         bool slopes)
{
  const LbTreeLine *line = &tree->lines[node->part];
  double flow, wet, to_parent;
  LbLineDrag drag;
  LbCurrentPoint current = lb_segment_flow (tree, node, parent, s, &flow);

  lb_line_drag (line, flow, s->u, &drag, slopes, 3);
  lb_load_wet_shares (node->position.z, parent->position.z, s->length, &wet, &to_parent);
  double to_node = wet - to_parent;
  for (int i = 0; i < 3; i++)
    {
      double water = s->length * drag.f[i] + (i == LB_UP ? rest * line->buoyancy : 0);
      double weight = i == LB_UP ? -0.5 * rest * line->weight_in_air : 0;
      s->on_node[i] = node->tension * s->u[i] + to_node * water + weight;
      s->on_parent[i] = -node->tension * s->u[i] + to_parent * water + weight;
    }
  if (!slopes)
    return;

  lb_segment_slopes (s, &drag, &current, node->tension, to_node, to_parent, 3);
  double wet_rate[2], parent_rate[2];
  for (int end = 0; end < 2; end++)
    {
      double step = 1e-6, wet_up, parent_up, wet_down, parent_down;
      double zn = node->position.z, zp = parent->position.z;
      lb_load_wet_shares (zn + (end == 0 ? step : 0), zp + (end == 1 ? step : 0), s->length,
                          &wet_up, &parent_up);
      lb_load_wet_shares (zn - (end == 0 ? step : 0), zp - (end == 1 ? step : 0), s->length,
                          &wet_down, &parent_down);
      wet_rate[end] = (wet_up - wet_down) / (2 * step);
      parent_rate[end] = (parent_up - parent_down) / (2 * step);
    }
  for (int i = 0; i < 3; i++)
    {
      double water = s->length * drag.f[i] + (i == LB_UP ? rest * line->buoyancy : 0);
      s->node_by_node[3 * i + LB_UP] += water * (wet_rate[0] - parent_rate[0]);
      s->node_by_parent[3 * i + LB_UP] += water * (wet_rate[1] - parent_rate[1]);
      s->parent_by_node[3 * i + LB_UP] += water * parent_rate[0];
      s->parent_by_parent[3 * i + LB_UP] += water * parent_rate[1];
    }
  s->on_node_rate[LB_UP] = node->rest_rate * (to_node * line->buoyancy - 0.5 * line->weight_in_air);
  s->on_parent_rate[LB_UP] =
      node->rest_rate * (to_parent * line->buoyancy - 0.5 * line->weight_in_air);
}

/* ---- Bodies ---- */

/* Adds the load of a body; `jacobian` may be NULL. The flow is level, so the down-force of a lure,
 * at right angles to it, is straight down. */
static void
load_body (const LbTree *tree, const LbTreeNode *node, double *force, double *jacobian)
{
  const LbTreeBody *body = &tree->bodies[node->body];
  LbVec3 p = node->position;
  LbCurrentPoint current = lb_current_at (&tree->current, p.x, p.z);
  double slope;
  double flow = lb_load_speed_past (tree, current.speed, &slope);
  double speed = fabs (flow);
  LbDragPoint cd = { body->drag_coefficient, 0 };
  double half = body->half_height;
  double wet = wetness_at (p.z, half).share;
  double wet_rate = wetness_slope (p.z, half);

  if (!lb_is_set (cd.value))
    cd = lb_drag_weight (body->shape, body->reynolds_per_speed * speed);
  double drag = body->drag_scale * cd.value * speed * flow;
  double down = body->down_force_ratio * fabs (drag);
  force[LB_ALONG] += wet * drag;
  force[LB_UP] += wet * (body->buoyancy - down) - body->weight_in_air;
  if (jacobian == NULL)
    return;

  double drag_rate =
      body->drag_scale * speed * (2 * cd.value + body->reynolds_per_speed * speed * cd.slope);
  drag_rate *= slope;
  double down_rate = body->down_force_ratio * (flow < 0 ? -drag_rate : drag_rate);
  jacobian[0] += wet * drag_rate * current.d_dx;
  jacobian[1] += wet * drag_rate * current.d_dz + wet_rate * drag;
  jacobian[3] -= wet * down_rate * current.d_dx;
  jacobian[4] += wet_rate * (body->buoyancy - down) - wet * down_rate * current.d_dz;
}

/* ---- The bed ---- */

/* A linear spring with a rounded start, a little below the bed so that what just touches it is
 * still free. */
double
lb_load_bed_law (const LbTree *tree, double sunk, double *slope)
{
  double x = (sunk - LB_TREE_BED_DEPTH) / tree->bed_softness;
  double stiffness = tree->bed_grip / tree->bed_softness;

  if (x > LB_TREE_BED_REACH)
    {
      *slope = stiffness;
      return tree->bed_grip * x;
    }
  double e = exp (x);
  *slope = stiffness * e / (1 + e);
  return tree->bed_grip * log1p (e);
}

bool
lb_load_bed_step (const LbTree *tree, double sunk, double change, double *next)
{
  double x = (sunk - LB_TREE_BED_DEPTH) / tree->bed_softness, slope;

  if (x < -LB_TREE_BED_REACH)
    return false;
  double force = lb_load_bed_law (tree, sunk, &slope) + slope * change;
  if (force <= 0)
    return false;
  double share = force / tree->bed_grip;
  *next = LB_TREE_BED_DEPTH
          + tree->bed_softness * (share > LB_TREE_BED_REACH ? share : log (expm1 (share)));
  return true;
}

double
lb_load_bed_force (const LbTree *tree, const LbTreeNode *node)
{
  if (!lb_tree_near_bed (tree, node->position.z))
    return 0;

  LbBedPoint bed = lb_bed_at (&tree->current.bed, node->position.x);
  double above = node->position.z + bed.depth, slope;

  if (above >= LB_TREE_BED_REACH * tree->bed_softness)
    return 0;
  return lb_load_bed_law (tree, -above, &slope);
}

double
lb_load_friction (const LbTree *tree)
{
  if (tree->boat_speed == 0 && !tree->held_at_rest)
    return 0;
  return tree->boat_speed < 0 ? -tree->bed_friction : tree->bed_friction;
}

/* One-sided spring normal to the bed, and friction downstream along it: the boat moves upstream
 * and everything slides with it. At rest over the ground see lb_load_friction(). */
static void
load_bed (const LbTree *tree, const LbTreeNode *node, double *force, double *jacobian)
{
  if (!lb_tree_near_bed (tree, node->position.z))
    return;

  LbBedPoint bed = lb_bed_at (&tree->current.bed, node->position.x);
  double above = node->position.z + bed.depth;

  if (above >= LB_TREE_BED_REACH * tree->bed_softness)
    return;

  double s = bed.slope, norm = sqrt (1 + s * s), cube = norm * norm * norm;
  double mu = lb_load_friction (tree);
  double slope, n = lb_load_bed_law (tree, -above, &slope);
  double along = (s + mu) / norm, up = (1 - mu * s) / norm;
  force[LB_ALONG] += n * along;
  force[LB_UP] += n * up;
  if (jacobian == NULL)
    return;

  double by_x = -slope * s, by_z = -slope;
  jacobian[0] += by_x * along + n * bed.bend * (1 - mu * s) / cube;
  jacobian[1] += by_z * along;
  jacobian[3] += by_x * up - n * bed.bend * (s + mu) / cube;
  jacobian[4] += by_z * up;
}

void
lb_load_free (const LbTree *tree, const LbTreeNode *node, double *force)
{
  if (node->body >= 0)
    load_body (tree, node, force, NULL);
}

void
lb_load_node (const LbTree *tree, const LbTreeNode *node, double *force, double *jacobian)
{
  if (node->body >= 0)
    load_body (tree, node, force, jacobian);
  load_bed (tree, node, force, jacobian);
}
