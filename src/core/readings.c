/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "readings.h"

#include "bed.h"
#include "current.h"
#include "drag.h"

#include <string.h>

typedef struct
{
  const LbSetup *setup;
  const LbShape *shape;
  LbCurrent current;
} Reader;

static bool
touches_bed (const LbShapeNode *node)
{
  return node->bed_force > LB_TOUCHING_FORCE;
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
  if (height < band->low - LB_BAND_EDGE)
    return LB_BAND_BELOW;
  return height > band->high + LB_BAND_EDGE ? LB_BAND_ABOVE : LB_BAND_INSIDE;
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
read_shank (LbReadings *readings, const LbSetup *setup, const LbShape *shape)
{
  /* The segment below the top of the shank is the first of the shank's own. */
  bool has_shank = shape->weight != shape->shank_top;
  LbVec3 pull = has_shank ? shape->nodes[shape->shank_top + 1].pull_on_parent
                          : lb_vec3_scale (shape->nodes[shape->weight].pull_on_node, -1);

  readings->shank_tension = lb_vec3_norm (pull);
  readings->shank_spare = spare (&setup->rig.shank, largest_tension (shape, LB_PART_SHANK));
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
  read_shank (readings, setup, shape);
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
  readings->closest = lb_approach_within (setup, shape);
  for (size_t i = 1; i < shape->n_nodes; i++)
    if (touches_bed (&shape->nodes[i]))
      readings->touches[shape->nodes[i].part] = true;
}

/* ---- The weakest line ---- */

static void
note_spare (LbWeakest *weakest, double spare, int part)
{
  if (spare < weakest->spare)
    *weakest = (LbWeakest){ spare, part };
}

LbWeakest
lb_readings_weakest (const LbReadings *readings)
{
  LbWeakest weakest = { INFINITY, LB_PART_MAINLINE };

  note_spare (&weakest, readings->mainline_spare, LB_PART_MAINLINE);
  note_spare (&weakest, readings->shank_spare, LB_PART_SHANK);
  for (size_t i = 0; i < readings->n_leaders; i++)
    note_spare (&weakest, readings->lures[i].leader_spare, LB_PART_LEADER_0 + (int) i);
  return weakest;
}
