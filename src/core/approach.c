/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "approach.h"

/* A leader is not compared with other lines within this share of its length, or this many m if that
 * is less, from its attachment: there they are always close. */
#define JOINT_SHARE 0.25
#define JOINT_LENGTH 0.5

/* Nearest points of the segments p0 p1 and q0 q1: their distance and the middle between them. After
 * the usual clamping of the two lines' parameters. */
static double
segment_distance (LbVec3 p0, LbVec3 p1, LbVec3 q0, LbVec3 q1, LbVec3 *middle)
{
  LbVec3 u = lb_vec3_sub (p1, p0), v = lb_vec3_sub (q1, q0), w = lb_vec3_sub (p0, q0);
  double a = lb_vec3_dot (u, u), b = lb_vec3_dot (u, v), c = lb_vec3_dot (v, v);
  double d = lb_vec3_dot (u, w), e = lb_vec3_dot (v, w), det = a * c - b * b;
  double s = det > 1e-12 * a * c ? (b * e - c * d) / det : 0;

  s = fmin (fmax (s, 0), 1);
  double t = c > 0 ? (b * s + e) / c : 0;
  if (t < 0 || t > 1)
    {
      t = fmin (fmax (t, 0), 1);
      s = a > 0 ? fmin (fmax ((b * t - d) / a, 0), 1) : 0;
    }
  LbVec3 p = lb_vec3_add_scaled (p0, s, u), q = lb_vec3_add_scaled (q0, t, v);
  *middle = lb_vec3_lerp (p, q, 0.5);
  return lb_vec3_norm (lb_vec3_sub (p, q));
}

/* How much of a leader next to its attachment is left out of the comparison, m unstretched. */
static double
joint_length (const LbLeader *leader)
{
  return fmin (JOINT_LENGTH, JOINT_SHARE * leader->length);
}

typedef struct
{
  int part;
  size_t first, last; /* nodes that end the segments to compare */
  LbVec3 start;       /* where the first of them begins */
} Stretch;

/* The part of a leader beyond its joint; the segment that reaches out of the joint is cut. */
static Stretch
leader_stretch (const LbSetup *setup, const LbShape *shape, size_t leader)
{
  double keep_off = joint_length (&setup->rig.leaders[leader]);
  size_t last = shape->lure[leader], first = last;

  while (shape->nodes[first].parent != shape->attachment[leader])
    first = shape->nodes[first].parent;
  while (first < last && shape->nodes[first].rest_length < keep_off)
    keep_off -= shape->nodes[first++].rest_length;
  const LbShapeNode *cut = &shape->nodes[first];
  LbVec3 start = lb_vec3_lerp (shape->nodes[cut->parent].position, cut->position,
                               fmin (keep_off / cut->rest_length, 1));
  return (Stretch){ LB_PART_LEADER_0 + (int) leader, first, last, start };
}

/* Where the segment that ends at node `i` of a stretch begins. */
static LbVec3
segment_start (const LbShape *shape, const Stretch *stretch, size_t i)
{
  return i == stretch->first ? stretch->start : shape->nodes[shape->nodes[i].parent].position;
}

static void
compare_stretches (const LbShape *shape, Stretch a, Stretch b, LbApproach *closest)
{
  for (size_t i = a.first; i <= a.last; i++)
    for (size_t j = b.first; j <= b.last; j++)
      {
        LbVec3 middle;
        double distance =
            segment_distance (shape->nodes[i].position, segment_start (shape, &a, i),
                              shape->nodes[j].position, segment_start (shape, &b, j), &middle);
        if (!lb_is_set (closest->distance) || distance < closest->distance)
          *closest = (LbApproach){ distance, a.part, b.part, middle };
      }
}

LbApproach
lb_approach_within (const LbSetup *setup, const LbShape *shape)
{
  LbApproach closest = { .distance = LB_UNSET };
  Stretch upright[2] = {
    { LB_PART_MAINLINE, 1, shape->shank_top, shape->nodes[0].position },
    { LB_PART_SHANK, shape->shank_top + 1, shape->weight, shape->nodes[shape->shank_top].position },
  };

  for (size_t i = 0; i < shape->n_leaders; i++)
    {
      Stretch leader = leader_stretch (setup, shape, i);
      for (size_t k = 0; k < 2; k++)
        compare_stretches (shape, leader, upright[k], &closest);
      for (size_t j = i + 1; j < shape->n_leaders; j++)
        compare_stretches (shape, leader, leader_stretch (setup, shape, j), &closest);
    }
  return closest;
}

LbApproach
lb_approach_between (const LbShape *one, const LbShape *other)
{
  LbApproach closest = { .distance = LB_UNSET };

  for (size_t i = 1; i < one->n_nodes; i++)
    {
      const LbShapeNode *a = &one->nodes[i];
      for (size_t j = 1; j < other->n_nodes; j++)
        {
          const LbShapeNode *b = &other->nodes[j];
          LbVec3 middle;
          double distance =
              segment_distance (a->position, one->nodes[a->parent].position, b->position,
                                other->nodes[b->parent].position, &middle);
          if (!lb_is_set (closest.distance) || distance < closest.distance)
            closest = (LbApproach){ distance, a->part, b->part, middle };
        }
    }
  return closest;
}
