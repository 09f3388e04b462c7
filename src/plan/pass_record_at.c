/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Moments between the samples. */
#include "pass_record_private.h"

/* Two samples and how far a moment lies between them, 0 to 1. */
typedef struct
{
  size_t before, after;
  double share;
} Between;

static bool
find (const LbPassRecord *record, double time, Between *at)
{
  size_t count = lb_pass_record_count (record);

  if (count == 0)
    return false;
  if (!(time > 0) || count == 1)
    *at = (Between){ 0, 0, 0 };
  else if (time >= record->samples[count - 1].time)
    *at = (Between){ count - 1, count - 1, 0 };
  else
    {
      size_t before = (size_t) (time / record->interval);
      before = before < count - 1 ? before : count - 2;
      /* Rounding may have gone past the sample meant. */
      if (before > 0 && record->samples[before].time > time)
        before--;
      double from = record->samples[before].time, to = record->samples[before + 1].time;
      *at = (Between){ before, before + 1, fmin (fmax ((time - from) / (to - from), 0), 1) };
    }
  return true;
}

static double
mix (double a, double b, double share)
{
  return a + share * (b - a);
}

static LbPointReading
mix_points (const LbPointReading *a, const LbPointReading *b, double share)
{
  return (LbPointReading){
    .position = lb_vec3_lerp (a->position, b->position, share),
    .layback = mix (a->layback, b->layback, share),
    .depth = mix (a->depth, b->depth, share),
    .height = mix (a->height, b->height, share),
    .water_speed = mix (a->water_speed, b->water_speed, share),
    .on_bed = share < 0.5 ? a->on_bed : b->on_bed,
  };
}

static void
mix_lures (LbLureReading *to, const LbLureReading *from, double share)
{
  to->band = share < 0.5 ? to->band : from->band;
  to->at = mix_points (&to->at, &from->at, share);
  to->leader_tension = mix (to->leader_tension, from->leader_tension, share);
  to->attachment_tension = mix (to->attachment_tension, from->attachment_tension, share);
  to->leader_angle = mix (to->leader_angle, from->leader_angle, share);
  to->attachment_angle = mix (to->attachment_angle, from->attachment_angle, share);
  to->largest_tension = mix (to->largest_tension, from->largest_tension, share);
  to->leader_spare = mix (to->leader_spare, from->leader_spare, share);
}

/* Of what cannot be mixed the nearer counts. */
static void
mix_readings (LbReadings *to, const LbReadings *from, double share)
{
  LbReadings nearer = share < 0.5 ? *to : *from;

  nearer.line_out = mix (to->line_out, from->line_out, share);
  nearer.wire_angle = mix (to->wire_angle, from->wire_angle, share);
  nearer.hand_tension = mix (to->hand_tension, from->hand_tension, share);
  nearer.largest_tension = mix (to->largest_tension, from->largest_tension, share);
  nearer.mainline_spare = mix (to->mainline_spare, from->mainline_spare, share);
  nearer.strum_frequency = mix (to->strum_frequency, from->strum_frequency, share);
  nearer.bed_depth_at_reel = mix (to->bed_depth_at_reel, from->bed_depth_at_reel, share);
  nearer.weight = mix_points (&to->weight, &from->weight, share);
  nearer.shank_top = mix_points (&to->shank_top, &from->shank_top, share);
  nearer.weight_tension = mix (to->weight_tension, from->weight_tension, share);
  nearer.shank_angle = mix (to->shank_angle, from->shank_angle, share);
  nearer.shank_tension = mix (to->shank_tension, from->shank_tension, share);
  nearer.shank_spare = mix (to->shank_spare, from->shank_spare, share);
  nearer.weight_bed_force = mix (to->weight_bed_force, from->weight_bed_force, share);
  nearer.level_difference = mix (to->level_difference, from->level_difference, share);
  nearer.spacing = mix (to->spacing, from->spacing, share);
  nearer.closest.distance = mix (to->closest.distance, from->closest.distance, share);
  for (size_t i = 0; i < to->n_leaders; i++)
    {
      nearer.attachments[i] = mix_points (&to->attachments[i], &from->attachments[i], share);
      nearer.lures[i] = to->lures[i];
      mix_lures (&nearer.lures[i], &from->lures[i], share);
    }
  *to = nearer;
}

bool
lb_pass_record_at (const LbPassRecord *record, double time, LbPassSample *sample)
{
  Between at;

  if (!find (record, time, &at))
    return false;
  *sample = record->samples[at.before];
  if (at.after == at.before)
    return true;
  const LbPassSample *after = &record->samples[at.after];
  sample->time = mix (sample->time, after->time, at.share);
  sample->boat = lb_vec3_lerp (sample->boat, after->boat, at.share);
  sample->speed = mix (sample->speed, after->speed, at.share);
  sample->heading = mix (sample->heading, after->heading, at.share);
  sample->line_rate = mix (sample->line_rate, after->line_rate, at.share);
  sample->most_tension = mix (sample->most_tension, after->most_tension, at.share);
  for (size_t i = 0; i < lb_pass_record_n_bodies (record); i++)
    {
      sample->velocity[i] = lb_vec3_lerp (sample->velocity[i], after->velocity[i], at.share);
      sample->touched[i] = at.share < 0.5 ? sample->touched[i] : after->touched[i];
    }
  double between = mix (sample->between.distance, after->between.distance, at.share);
  if (at.share >= 0.5)
    sample->between = after->between;
  sample->between.distance = between;
  mix_readings (&sample->readings, &after->readings, at.share);
  return true;
}

/* ---- The shape ---- */

static LbShapeNode
mix_nodes (const LbRecordedNode *a, const LbRecordedNode *b, double share, double x_start)
{
  return (LbShapeNode){
    .position = lb_vec3 (x_start + mix (a->x, b->x, share), mix (a->y, b->y, share),
                         mix (a->z, b->z, share)),
    .rest_length = mix (a->rest_length, b->rest_length, share),
    .tension = mix (a->tension, b->tension, share),
    .bed_force = mix (a->bed_force, b->bed_force, share),
  };
}

/* Along the segment, towards its other end. */
static void
set_pulls (LbShapeNode *node, const LbShapeNode *parent)
{
  LbVec3 along = lb_vec3_sub (parent->position, node->position);
  double length = lb_vec3_norm (along);

  if (length > 0)
    node->pull_on_node = lb_vec3_scale (along, node->tension / length);
  node->pull_on_parent = lb_vec3_scale (node->pull_on_node, -1);
}

LbStatus
lb_pass_record_shape_at (const LbPassRecord *record, double time, LbShape *shape)
{
  double x_start = record->job.setup.boat.position;
  Between at;

  if (!find (record, time, &at))
    return LB_STATUS_BAD_SETUP;
  LbStatus status = lb_shape_resize (shape, record->n_nodes);
  if (status != LB_STATUS_OK)
    return status;
  LbShape whole = record->outline;
  whole.nodes = shape->nodes;
  whole.n_nodes = shape->n_nodes;
  whole.capacity = shape->capacity;
  whole.line_out = mix (record->samples[at.before].readings.line_out,
                        record->samples[at.after].readings.line_out, at.share);
  *shape = whole;
  const LbRecordedNode *before = record->nodes + at.before * record->n_nodes;
  const LbRecordedNode *after = record->nodes + at.after * record->n_nodes;
  for (size_t i = 0; i < record->n_nodes; i++)
    {
      LbShapeNode *node = &shape->nodes[i];
      *node = mix_nodes (&before[i], &after[i], at.share, x_start);
      node->parent = record->segments[i].parent;
      node->part = record->segments[i].part;
      if (i > 0)
        set_pulls (node, &shape->nodes[node->parent]);
    }
  return LB_STATUS_OK;
}

LbSetup
lb_pass_record_setup_at (const LbPassRecord *record, double time)
{
  LbSetup setup = record->job.setup;
  Between at;

  if (!find (record, time, &at))
    return setup;
  const LbPassSample *a = &record->samples[at.before], *b = &record->samples[at.after];
  setup.boat.position = mix (a->boat.x, b->boat.x, at.share);
  setup.boat.speed_over_ground =
      mix (a->speed * cos (a->heading), b->speed * cos (b->heading), at.share);
  setup.rig.line_out = (LbLineOut){
    LB_LINE_OUT_GIVEN,
    mix (a->readings.line_out, b->readings.line_out, at.share),
  };
  return setup;
}
