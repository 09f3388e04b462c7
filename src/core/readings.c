/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "readings.h"

#include "bed.h"
#include "current.h"
#include "drag.h"

#include <string.h>

/* A part lies on the bed when the bed carries it with more than this, N. */
#define TOUCHING_FORCE 1e-5

/* A leader is not compared with other lines within this share of its length, or this many m if that
 * is less, from its attachment: there they are always close. */
#define JOINT_SHARE 0.25
#define JOINT_LENGTH 0.5

typedef struct
{
  const LbSetup *setup;
  const LbShape *shape;
  LbCurrent current;
} Reader;

static bool
touches_bed (const LbShapeNode *node)
{
  return node->bed_force > TOUCHING_FORCE;
}

static double
water_speed_at (const Reader *reader, LbVec3 p)
{
  return lb_current_at (&reader->current, p.x, p.z).speed + reader->setup->boat.speed_over_ground;
}

static LbPointReading
read_point (const Reader *reader, size_t i)
{
  const LbShapeNode *node = &reader->shape->nodes[i];
  LbVec3 p = node->position;
  double bed_depth = lb_bed_at (&reader->current.bed, p.x).depth;
  bool on_bed = touches_bed (node);

  return (LbPointReading){
    .position = p,
    .layback = p.x - reader->shape->nodes[0].position.x,
    .depth = -p.z,
    /* What lies on the bed has sunk into the model's bed by a fraction of a millimetre. */
    .height = on_bed ? fmax (p.z + bed_depth, 0) : p.z + bed_depth,
    .water_speed = fabs (water_speed_at (reader, p)),
    .on_bed = on_bed,
  };
}

LbBandState
lb_band_state (const LbBand *band, double height, bool on_bed)
{
  if (on_bed)
    return LB_BAND_ON_BED;
  if (height < band->low)
    return LB_BAND_BELOW;
  return height > band->high ? LB_BAND_ABOVE : LB_BAND_INSIDE;
}

/* The largest tension anywhere in a part, N: at the ends of its segments, where it is reached. */
static double
largest_tension (const LbShape *shape, int part)
{
  double largest = 0;

  for (size_t i = 1; i < shape->n_nodes; i++)
    if (shape->nodes[i].part == part)
      largest = fmax (largest, fmax (lb_vec3_norm (shape->nodes[i].pull_on_parent),
                                     lb_vec3_norm (shape->nodes[i].pull_on_node)));
  return largest;
}

static double
spare (const LbLine *line, double tension)
{
  return lb_is_set (line->breaking_load) && tension > 0 ? line->breaking_load / tension : LB_UNSET;
}

static LbLureReading
read_lure (const Reader *reader, size_t leader)
{
  const LbShape *shape = reader->shape;
  const LbLeader *rig = &reader->setup->rig.leaders[leader];
  size_t lure = shape->lure[leader], first = lure;
  int part = LB_PART_LEADER_0 + (int) leader;
  LbLureReading reading = { .at = read_point (reader, lure) };

  while (shape->nodes[first].parent != shape->attachment[leader])
    first = shape->nodes[first].parent;
  LbVec3 pull = shape->nodes[lure].pull_on_node;
  reading.band = lb_band_state (&reader->setup->band, reading.at.height, reading.at.on_bed);
  reading.leader_tension = lb_vec3_norm (pull);
  reading.attachment_tension = lb_vec3_norm (shape->nodes[first].pull_on_parent);
  reading.leader_angle = atan2 (pull.z, hypot (pull.x, pull.y));
  pull = shape->nodes[first].pull_on_parent;
  reading.attachment_angle = atan2 (-pull.z, hypot (pull.x, pull.y));
  reading.largest_tension = largest_tension (shape, part);
  reading.leader_spare = spare (&rig->line, reading.largest_tension);
  return reading;
}

static void
compare_lures (LbReadings *readings)
{
  double highest = -INFINITY, lowest = INFINITY, rearmost = -INFINITY, foremost = INFINITY;

  readings->level_difference = readings->spacing = LB_UNSET;
  if (readings->n_leaders < 2)
    return;
  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      const LbPointReading *at = &readings->lures[i].at;
      highest = fmax (highest, at->height);
      lowest = fmin (lowest, at->height);
      rearmost = fmax (rearmost, at->layback);
      foremost = fmin (foremost, at->layback);
    }
  readings->level_difference = highest - lowest;
  readings->spacing = rearmost - foremost;
}

/* The fastest that water crosses the mainline anywhere, m/s. */
static double
fastest_crossing (const Reader *reader)
{
  const LbShape *shape = reader->shape;
  double fastest = 0;

  for (size_t i = 1; i <= shape->shank_top; i++)
    {
      LbVec3 below = shape->nodes[i].position;
      LbVec3 above = shape->nodes[shape->nodes[i].parent].position;
      LbVec3 along = lb_vec3_sub (above, below);
      double length = lb_vec3_norm (along);
      LbVec3 middle = lb_vec3_lerp (below, above, 0.5);
      if (middle.z > 0 || !(length > 0))
        continue;
      double speed = fabs (water_speed_at (reader, middle));
      double share = along.x / length;
      fastest = fmax (fastest, speed * sqrt (fmax (1 - share * share, 0)));
    }
  return fastest;
}

/* ---- Closest approach ---- */

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
leader_stretch (const Reader *reader, size_t leader)
{
  const LbShape *shape = reader->shape;
  double keep_off = joint_length (&reader->setup->rig.leaders[leader]);
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

/* Leaders against each other, and against the mainline and the shank, each beyond its joint. */
static LbApproach
find_closest (const Reader *reader)
{
  const LbShape *shape = reader->shape;
  LbApproach closest = { .distance = LB_UNSET };
  Stretch upright[2] = {
    { LB_PART_MAINLINE, 1, shape->shank_top, shape->nodes[0].position },
    { LB_PART_SHANK, shape->shank_top + 1, shape->weight, shape->nodes[shape->shank_top].position },
  };

  for (size_t i = 0; i < shape->n_leaders; i++)
    {
      Stretch leader = leader_stretch (reader, i);
      for (size_t k = 0; k < 2; k++)
        compare_stretches (shape, leader, upright[k], &closest);
      for (size_t j = i + 1; j < shape->n_leaders; j++)
        compare_stretches (shape, leader, leader_stretch (reader, j), &closest);
    }
  return closest;
}

/* ---- All of it ---- */

static void
read_mainline (LbReadings *readings, const Reader *reader)
{
  const LbShape *shape = reader->shape;
  const LbLine *wire = &reader->setup->rig.mainline;
  LbVec3 pull = shape->nodes[1].pull_on_parent;

  readings->line_out = shape->line_out;
  readings->hand_tension = lb_vec3_norm (pull);
  readings->wire_angle = atan2 (hypot (pull.x, pull.y), -pull.z);
  readings->largest_tension = largest_tension (shape, LB_PART_MAINLINE);
  readings->mainline_spare = spare (wire, readings->largest_tension);
  readings->strum_frequency = lb_strum_frequency (wire->diameter, fastest_crossing (reader));
  readings->bed_depth_at_reel = lb_bed_at (&reader->current.bed, shape->nodes[0].position.x).depth;
}

static void
read_shank (LbReadings *readings, const LbShape *shape)
{
  /* The segment below the top of the shank is the first of the shank's own. */
  bool has_shank = shape->weight != shape->shank_top;
  LbVec3 pull = has_shank ? shape->nodes[shape->shank_top + 1].pull_on_parent
                          : lb_vec3_scale (shape->nodes[shape->weight].pull_on_node, -1);

  readings->shank_tension = lb_vec3_norm (pull);
  readings->shank_angle = atan2 (hypot (pull.x, pull.y), -pull.z);
  readings->weight_tension = lb_vec3_norm (shape->nodes[shape->weight].pull_on_node);
}

void
lb_readings_compute (LbReadings *readings, const LbSetup *setup, const LbShape *shape)
{
  Reader reader = { .setup = setup, .shape = shape };

  memset (readings, 0, sizeof *readings);
  lb_current_init (&reader.current, &setup->river);
  read_mainline (readings, &reader);
  read_shank (readings, shape);
  readings->weight = read_point (&reader, shape->weight);
  readings->shank_top = read_point (&reader, shape->shank_top);
  readings->weight_bed_force = shape->nodes[shape->weight].bed_force;
  readings->n_leaders = shape->n_leaders;
  for (size_t i = 0; i < shape->n_leaders; i++)
    {
      readings->attachments[i] = read_point (&reader, shape->attachment[i]);
      readings->lures[i] = read_lure (&reader, i);
    }
  compare_lures (readings);
  readings->closest = find_closest (&reader);
  for (size_t i = 1; i < shape->n_nodes; i++)
    if (touches_bed (&shape->nodes[i]))
      readings->touches[shape->nodes[i].part] = true;
}
