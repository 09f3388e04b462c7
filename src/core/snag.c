/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "snag.h"

#include <string.h>

/* Chord and pull settle on each other within a few rounds: the chord hardly turns. */
#define ROUNDS 8
#define MOST_HALVINGS 200

/* A boat slower than this, m/s, goes nowhere. */
#define AT_REST 1e-6

/* ---- What comes taut ---- */

static const LbLine *
line_of (const LbRig *rig, int part)
{
  if (part == LB_PART_MAINLINE)
    return &rig->mainline;
  return part == LB_PART_SHANK ? &rig->shank : &rig->leaders[part - LB_PART_LEADER_0].line;
}

/* What the segment above a node pulls the node with, along itself. */
static LbVec3
pull_along (const LbShape *shape, size_t i)
{
  const LbShapeNode *node = &shape->nodes[i];
  LbVec3 along = lb_vec3_sub (shape->nodes[node->parent].position, node->position);

  return lb_vec3_scale (along, node->tension / fmax (lb_vec3_norm (along), 1e-12));
}

static void
add_segment (LbSnag *snag, const LbSetup *setup, const LbShapeNode *node, LbVec3 load)
{
  double rest = node->rest_length;
  double give = rest / line_of (&setup->rig, node->part)->axial_stiffness;
  LbVec3 a = load;
  double products[6] = { a.x * a.x, a.y * a.y, a.z * a.z, a.x * a.y, a.x * a.z, a.y * a.z };

  snag->rest += rest;
  snag->give += give;
  snag->load_give = lb_vec3_add_scaled (snag->load_give, give, load);
  snag->mean_load = lb_vec3_add_scaled (snag->mean_load, rest, load);
  for (size_t k = 0; k < 6; k++)
    snag->spread[k] += rest * products[k];
  /* From the held end up: the first of a part is its lower end. */
  if (snag->n_parts == 0 || snag->parts[snag->n_parts - 1].part != node->part)
    snag->parts[snag->n_parts++] = (LbSnagPart){ node->part, { load, load } };
  snag->parts[snag->n_parts - 1].load_above[0] = load;
}

static void
finish_means (LbSnag *snag)
{
  LbVec3 m = lb_vec3_scale (snag->mean_load, 1 / snag->rest);
  double products[6] = { m.x * m.x, m.y * m.y, m.z * m.z, m.x * m.y, m.x * m.z, m.y * m.z };

  snag->mean_load = m;
  for (size_t k = 0; k < 6; k++)
    snag->spread[k] -= snag->rest * products[k];
}

LbSnag
lb_snag_hold (const LbSetup *setup, const LbShape *shape, size_t node)
{
  LbSnag snag = { .to_reel = lb_vec3_sub (shape->nodes[0].position, shape->nodes[node].position) };
  size_t top = node;

  while (shape->nodes[top].parent != 0)
    top = shape->nodes[top].parent;
  LbVec3 hand = pull_along (shape, top);
  snag.pull_now = lb_vec3_norm (shape->nodes[top].pull_on_parent);
  /* A segment's pull is the hand's and all loads above it: each node is at rest. */
  for (size_t i = node; i != 0; i = shape->nodes[i].parent)
    add_segment (&snag, setup, &shape->nodes[i], lb_vec3_sub (pull_along (shape, i), hand));
  finish_means (&snag);
  return snag;
}

/* ---- Taut ---- */

/* How the line lies when the reel is there: chord, its direction, and what goes with that. */
typedef struct
{
  double chord;
  double stretch; /* m, by the loads */
  double mean;    /* N, mean pull of the line less the hand's */
  double bow;     /* N2 m: it is shortened by bow / pull^2 */
} Lie;

static Lie
lie_along (const LbSnag *snag, LbVec3 to_reel)
{
  double chord = lb_vec3_norm (to_reel);
  LbVec3 e = lb_vec3_scale (to_reel, 1 / fmax (chord, 1e-12));
  const double *q = snag->spread;
  double along = q[0] * e.x * e.x + q[1] * e.y * e.y + q[2] * e.z * e.z
                 + 2 * (q[3] * e.x * e.y + q[4] * e.x * e.z + q[5] * e.y * e.z);

  return (Lie){
    .chord = chord,
    .stretch = lb_vec3_dot (e, snag->load_give),
    .mean = lb_vec3_dot (e, snag->mean_load),
    .bow = fmax (0.5 * (q[0] + q[1] + q[2] - along), 0),
  };
}

/* The chord of a line that pulls the hand with `pull`, m. */
static double
chord_at (const LbSnag *snag, const Lie *lie, double pull)
{
  double mean = fmax (pull + lie->mean, 1e-6);

  return snag->rest + snag->give * pull + lie->stretch - lie->bow / (mean * mean);
}

/* Where the reel is after some way of the boat. */
static LbVec3
reel_after (const LbSnag *snag, double way)
{
  LbVec3 to_reel = snag->to_reel;

  to_reel.x -= way;
  return to_reel;
}

double
lb_snag_pull (const LbSnag *snag, double speed, double time)
{
  Lie lie = lie_along (snag, reel_after (snag, speed * time));
  double low = fmax (-lie.mean, 0), high = low + 1;

  while (chord_at (snag, &lie, high) < lie.chord && high < 1e9)
    high *= 2;
  for (int k = 0; k < MOST_HALVINGS && high - low > 1e-12 * high; k++)
    {
      double middle = 0.5 * (low + high);
      if (chord_at (snag, &lie, middle) < lie.chord)
        low = middle;
      else
        high = middle;
    }
  /* Before it comes taut it pulls as it did. */
  return speed >= 0 ? fmax (high, snag->pull_now) : high;
}

/* How far the boat gets until the line's chord is that of a pull that `hand_pull` tells for a lie
 * of the line: the way is downstream for a speed below 0. */
typedef struct
{
  double pull;       /* N, at load_above */
  LbVec3 load_above; /* N */
} Limit;

static double
way_to (const LbSnag *snag, Limit limit, double speed)
{
  double upstream = -snag->to_reel.x, side = speed < 0 ? -1 : 1, ahead = side * fabs (upstream);
  double across = hypot (snag->to_reel.y, snag->to_reel.z);

  for (int k = 0; k < ROUNDS; k++)
    {
      LbVec3 to_reel = { -ahead, snag->to_reel.y, snag->to_reel.z };
      Lie lie = lie_along (snag, to_reel);
      double along = lb_vec3_dot (to_reel, limit.load_above) / fmax (lie.chord, 1e-12);
      double chord = chord_at (snag, &lie, limit.pull - along);
      ahead = side * sqrt (fmax (chord * chord - across * across, 0));
    }
  return ahead - upstream;
}

static double
time_to (const LbSnag *snag, Limit limit, double speed)
{
  return fabs (speed) < AT_REST ? LB_UNSET : fmax (way_to (snag, limit, speed) / speed, 0);
}

LbSnagTimes
lb_snag_times (const LbSnag *snag, const LbRig *rig, double speed, double limit)
{
  LbSnagTimes times = {
    .until_hand = time_to (snag, (Limit){ limit, { 0, 0, 0 } }, speed),
    .until_breaks = LB_UNSET,
  };

  if (snag->pull_now >= limit)
    times.until_hand = 0;
  for (size_t k = 0; k < snag->n_parts; k++)
    {
      const LbSnagPart *part = &snag->parts[k];
      double strength = line_of (rig, part->part)->breaking_load;
      for (size_t end = 0; end < 2 && lb_is_set (strength); end++)
        {
          double time = time_to (snag, (Limit){ strength, part->load_above[end] }, speed);
          if (lb_is_set (time) && !(time >= times.until_breaks))
            {
              times.until_breaks = time;
              times.breaks = part->part;
            }
        }
    }
  return times;
}
