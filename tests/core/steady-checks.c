/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady-checks.h"

#include <stdlib.h>

#include <gsl/gsl_math.h>

#include "oracle-river.h"

/* How things come out of the water is a choice of the model, a smooth step from wet to dry: a line
 * that lies flat at the surface over 5 mm to either side, less the steeper it is, and one steeper
 * than 1 in 10 is cut off sharply; a weight over its frontal radius, a lure over a fifth of its
 * length but at least 1 cm. */
#define LINE_HALF_HEIGHT 0.005
#define LINE_STEEP 0.1
#define LURE_HALF_HEIGHT 0.01

/* A line with less tension than this, N, counts as slack: the weight of 10 mg. */
#define SLACK 1e-4

/* Share of a thing at height z that is wet, 1 to 0. */
static double
wet_at (double z, double half)
{
  double t = half > 0 ? (z + half) / (2 * half) : z > 0;

  t = GSL_MAX_DBL (0, GSL_MIN_DBL (t, 1));
  return 1 - t * t * (3 - 2 * t);
}

/* Its integral from far below. */
static double
wet_integral (double z, double half)
{
  double t;

  if (z <= -half)
    return z;
  if (z >= half)
    return 0;
  t = (z + half) / (2 * half);
  return -half + 2 * half * (t - t * t * t + t * t * t * t / 2);
}

/* Of a straight segment of `length` between two heights. */
static double
wet_share (double low, double high, double length)
{
  double steepness = fabs (high - low) / (LINE_STEEP * length);
  double half = LINE_HALF_HEIGHT * GSL_MAX_DBL (0, 1 - steepness);

  if (steepness < 1e-5)
    return wet_at ((low + high) / 2, half);
  return (wet_integral (high, half) - wet_integral (low, half)) / (high - low);
}

static const LbLine *
part_line (const LbRig *rig, int part)
{
  return part == LB_PART_MAINLINE ? &rig->mainline
         : part == LB_PART_SHANK  ? &rig->shank
                                  : &rig->leaders[part - LB_PART_LEADER_0].line;
}

/* All the water and the earth do to a segment, N. */
static void
segment_load (const OracleRiver *river, const LbShape *shape, size_t i, double load[2])
{
  const LbShapeNode *node = &shape->nodes[i];
  const LbLine *line = part_line (&river->setup->rig, node->part);
  LbVec3 a = node->position, b = shape->nodes[node->parent].position;
  double length = hypot (b.x - a.x, b.z - a.z);
  double t[2] = { (b.x - a.x) / length, (b.z - a.z) / length };
  double p[2] = { (a.x + b.x) / 2, (a.z + b.z) / 2 };
  double wet = wet_share (a.z, b.z, length);
  double in_water[2], in_air[2];

  oracle_line_load (river, line, p, t, length / node->rest_length, false, in_water);
  oracle_line_load (river, line, p, t, 1, true, in_air);
  for (int c = 0; c < 2; c++)
    load[c] = node->rest_length * (in_air[c] + wet * (in_water[c] - in_air[c]));
}

static void
body_load (const OracleRiver *river, const LbShape *shape, size_t i, double load[2])
{
  const LbRig *rig = &river->setup->rig;
  double g = river->setup->river.gravity;
  double p[2] = { shape->nodes[i].position.x, shape->nodes[i].position.z };
  double half, weight, force[2], wet;

  if (i == shape->weight)
    {
      oracle_weight_force (river, p, force);
      half = sqrt (lb_weight_frontal_area (&rig->weight) / M_PI);
      weight = rig->weight.mass * g;
    }
  else
    {
      size_t k = 0;
      while (k < shape->n_leaders && shape->lure[k] != i)
        k++;
      if (k == shape->n_leaders)
        return;
      const LbLure *lure = &rig->leaders[k].lure;
      oracle_lure_force (river, lure, p, force);
      half = GSL_MAX_DBL (LURE_HALF_HEIGHT, 0.2 * lure->length);
      weight = lure->mass * g;
    }
  wet = wet_at (p[1], half);
  load[0] += wet * force[0];
  load[1] += wet * (force[1] + weight) - weight;
}

/* Friction acts on what slides; on a rig at rest only where the status says that it holds it. */
static double
friction (const LbSetup *setup, LbStatus status)
{
  double speed = setup->boat.speed_over_ground;

  if (status == LB_STATUS_HELD_BY_FRICTION)
    return setup->river.bed_friction;
  return speed > 0 ? setup->river.bed_friction : speed < 0 ? -setup->river.bed_friction : 0;
}

/* The bed carries at right angles and rubs along itself against the slip, which is upstream. */
static void
bed_load (const OracleRiver *river, const LbShapeNode *node, double mu, double load[2])
{
  double slope = oracle_bed_slope (river, node->position.x);
  double norm = hypot (1, slope);

  load[0] += node->bed_force * (slope + mu) / norm;
  load[1] += node->bed_force * (1 - mu * slope) / norm;
}

static bool
is_finite_node (const LbShapeNode *n)
{
  return isfinite (n->position.x) && isfinite (n->position.y) && isfinite (n->position.z)
         && isfinite (n->tension) && isfinite (n->bed_force) && isfinite (n->pull_on_node.x)
         && isfinite (n->pull_on_node.z) && isfinite (n->pull_on_parent.x)
         && isfinite (n->pull_on_parent.z);
}

/* How much longer or shorter than its tension says a segment is, m. A line cannot push: one that is
 * all but slack folds up, and may be shorter. */
static double
misfit (const LbShapeNode *node, const LbLine *line, double length)
{
  double off = length - node->rest_length * (1 + node->tension / line->axial_stiffness);

  return node->tension < SLACK ? GSL_MAX_DBL (off, 0) : fabs (off);
}

typedef struct
{
  double x, z;
} Force;

static void
check_nodes (
    const OracleRiver *river, const LbShape *shape, double mu, Force *left, ShapeCheck *check)
{
  double sum[2] = { 0, 0 };

  for (size_t i = shape->n_nodes - 1; i > 0; i--)
    {
      const LbShapeNode *node = &shape->nodes[i];
      const LbLine *line = part_line (&river->setup->rig, node->part);
      LbVec3 span = lb_vec3_sub (shape->nodes[node->parent].position, node->position);
      double load[2] = { 0, 0 }, line_load[2];

      body_load (river, shape, i, load);
      bed_load (river, node, mu, load);
      left[i].x += node->pull_on_node.x + load[0];
      left[i].z += node->pull_on_node.z + load[1];
      left[node->parent].x += node->pull_on_parent.x;
      left[node->parent].z += node->pull_on_parent.z;
      segment_load (river, shape, i, line_load);
      for (int c = 0; c < 2; c++)
        sum[c] += load[c] + line_load[c];
      check->node_force = fmax (check->node_force, hypot (left[i].x, left[i].z));
      check->largest_load = fmax (check->largest_load, fabs (node->tension));
      check->stretch = fmax (check->stretch, misfit (node, line, lb_vec3_norm (span)));
      check->sideways = fmax (check->sideways, fabs (node->position.y));
      check->finite = check->finite && is_finite_node (node);
    }
  check->reel_force = hypot (left[0].x - sum[0], left[0].z - sum[1]);
}

ShapeCheck
shape_check (const LbSetup *setup, LbStatus status, const LbShape *shape)
{
  ShapeCheck check = { .lowest_body = INFINITY, .lowest_node = INFINITY, .finite = true };
  Force *left = calloc (shape->n_nodes, sizeof *left);
  OracleRiver river;

  oracle_river_init (&river, setup);
  check_nodes (&river, shape, friction (setup, status), left, &check);
  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      LbVec3 p = shape->nodes[i].position;
      check.lowest_node = fmin (check.lowest_node, p.z + oracle_bed_depth (&river, p.x));
    }
  for (size_t k = 0; k <= shape->n_leaders; k++)
    {
      LbVec3 p = shape->nodes[k == 0 ? shape->weight : shape->lure[k - 1]].position;
      check.lowest_body = fmin (check.lowest_body, p.z + oracle_bed_depth (&river, p.x));
    }
  oracle_river_clear (&river);
  free (left);
  return check;
}

LbVec3
shape_reel_pull (const LbShape *shape)
{
  return shape_pull_of_part (shape, LB_PART_MAINLINE);
}

LbVec3
shape_pull_above (const LbShape *shape, size_t node)
{
  return shape->nodes[node].pull_on_node;
}

LbVec3
shape_pull_of_part (const LbShape *shape, int part)
{
  size_t i = 1;

  while (i < shape->n_nodes && shape->nodes[i].part != part)
    i++;
  return i < shape->n_nodes ? shape->nodes[i].pull_on_parent : lb_vec3 (NAN, NAN, NAN);
}

double
shape_height (const LbSetup *setup, const LbShape *shape, size_t node)
{
  LbVec3 p = shape->nodes[node].position;
  OracleRiver river;
  double height;

  oracle_river_init (&river, setup);
  height = p.z + oracle_bed_depth (&river, p.x);
  oracle_river_clear (&river);
  return height;
}
