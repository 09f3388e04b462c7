/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_record_private.h"

#include <stdlib.h>
#include <string.h>

/* The record of one rig, its reel `across` m to the right of the boat's middle. */
static LbStatus
make (LbPassRecord **record,
      const LbSetup *setup,
      const LbPassScript *script,
      const LbPassOptions *options,
      double across,
      const char **what)
{
  LbPassRecord *self = calloc (1, sizeof *self);
  LbStatus status = LB_STATUS_OUT_OF_MEMORY;

  *record = NULL;
  if (self == NULL)
    return status;
  self->pass = lb_pass_new ();
  if (self->pass != NULL)
    status = lb_setup_check (setup, what);
  if (status == LB_STATUS_OK)
    status = lb_pass_script_plan (script, setup, &self->job, what);
  if (status != LB_STATUS_OK)
    {
      lb_pass_record_free (self);
      return status;
    }
  self->job.plan.course.reel_across = across;
  self->script = *script;
  if (options != NULL)
    self->options = *options;
  self->interval = fmax (LB_PASS_RECORD_INTERVAL, self->job.duration / (LB_PASS_RECORD_MOST - 2));
  atomic_init (&self->count, 0);
  *record = self;
  return LB_STATUS_OK;
}

LbStatus
lb_pass_record_new (LbPassRecord **record,
                    const LbSetup *setup,
                    const LbPassScript *script,
                    const LbPassOptions *options,
                    const char **what)
{
  bool two = lb_is_set (script->second_weight);
  double across = two ? 0.5 * script->reels_apart : 0;
  LbStatus status = make (record, setup, script, options, across, what);

  if (status != LB_STATUS_OK || !two)
    return status;
  LbSetup other = *setup;
  other.rig.weight.mass = script->second_weight;
  status = make (&(*record)->second, &other, script, options, -across, what);
  if (status == LB_STATUS_OK)
    return status;
  lb_pass_record_free (*record);
  *record = NULL;
  return status;
}

void
lb_pass_record_free (LbPassRecord *record)
{
  if (record == NULL)
    return;
  lb_pass_record_free (record->second);
  lb_pass_free (record->pass);
  free (record->samples);
  free (record->segments);
  free (record->nodes);
  free (record);
}

/* ---- Recording ---- */

/* Room for all that will be recorded, so that nothing moves under those who look; memory that is
 * not written to costs nothing. */
static LbStatus
reserve (LbPassRecord *record, const LbShape *shape)
{
  record->capacity = (size_t) ceil (record->job.duration / record->interval) + 2;
  record->n_nodes = shape->n_nodes;
  record->samples = malloc (record->capacity * sizeof *record->samples);
  record->segments = malloc (shape->n_nodes * sizeof *record->segments);
  record->nodes = malloc (record->capacity * shape->n_nodes * sizeof *record->nodes);
  if (record->samples == NULL || record->segments == NULL || record->nodes == NULL)
    return LB_STATUS_OUT_OF_MEMORY;
  for (size_t i = 0; i < shape->n_nodes; i++)
    record->segments[i] = (LbRecordedSegment){ shape->nodes[i].parent, shape->nodes[i].part };
  record->outline = *shape;
  record->outline.nodes = NULL;
  return LB_STATUS_OK;
}

static void
record_nodes (LbPassRecord *record, const LbShape *shape, size_t at)
{
  LbRecordedNode *nodes = record->nodes + at * record->n_nodes;

  for (size_t i = 0; i < record->n_nodes; i++)
    {
      const LbShapeNode *node = &shape->nodes[i];
      nodes[i] = (LbRecordedNode){
        .x = (float) (node->position.x - record->job.setup.boat.position),
        .y = (float) node->position.y,
        .z = (float) node->position.z,
        .rest_length = (float) node->rest_length,
        .tension = (float) node->tension,
        .bed_force = (float) node->bed_force,
      };
    }
}

/* The steps since the sample before, this moment among them. A pull is told at the middle of the
 * segment next to the reel and is a little more in the hand, as it is now. */
static void
add_steps (LbPassRecord *record, LbPassSample *sample)
{
  const LbReadings *readings = &sample->readings;
  double now = lb_pass_top_tension (record->pass);

  sample->most_tension = readings->hand_tension + fmax (record->most_top_tension - now, 0);
  for (size_t i = 0; i < lb_pass_record_n_bodies (record); i++)
    sample->touched[i] = record->touched[i] || lb_pass_sample_body (sample, i)->on_bed;
  record->most_top_tension = 0;
  memset (record->touched, 0, sizeof record->touched);
}

/* Records the pass as it is now. */
static LbStatus
record_now (LbPassRecord *record)
{
  size_t at = atomic_load_explicit (&record->count, memory_order_relaxed);
  const LbShape *shape = lb_pass_shape (record->pass);
  LbVec3 boat = lb_pass_boat_velocity (record->pass);

  if (at == 0 && reserve (record, shape) != LB_STATUS_OK)
    return LB_STATUS_OUT_OF_MEMORY;
  LbPassSample *sample = &record->samples[at];
  *sample = (LbPassSample){
    .time = lb_pass_time (record->pass),
    .boat = shape->nodes[0].position,
    .speed = lb_vec3_norm (boat),
    .heading = lb_pass_heading (record->pass),
  };
  lb_pass_readings (record->pass, &sample->readings);
  sample->velocity[LB_PASS_WEIGHT] = lb_pass_velocity (record->pass, shape->weight);
  for (size_t i = 0; i < shape->n_leaders; i++)
    sample->velocity[LB_PASS_LURE_0 + i] = lb_pass_velocity (record->pass, shape->lure[i]);
  if (at > 0)
    sample->line_rate = (sample->readings.line_out - sample[-1].readings.line_out)
                        / (sample->time - sample[-1].time);
  add_steps (record, sample);
  sample->between.distance = LB_UNSET;
  if (record->second != NULL)
    sample->between = lb_approach_between (shape, lb_pass_shape (record->second->pass));
  record_nodes (record, shape, at);
  atomic_store_explicit (&record->count, at + 1, memory_order_release);
  return LB_STATUS_OK;
}

/* ---- Running ---- */

/* What a step adds to the next sample. */
static void
note_step (LbPassRecord *record)
{
  const LbShape *outline = &record->outline;

  record->most_top_tension = fmax (record->most_top_tension, lb_pass_top_tension (record->pass));
  for (size_t i = 0; i < lb_pass_record_n_bodies (record); i++)
    {
      size_t node = i == LB_PASS_WEIGHT ? outline->weight : outline->lure[i - LB_PASS_LURE_0];
      if (lb_pass_bed_force_on (record->pass, node) > LB_TOUCHING_FORCE)
        record->touched[i] = true;
    }
}

static bool
step_cb (void *data, double time)
{
  LbPassRecord *record = data;
  const LbPlanTask *task = record->task;

  /* While the start is being solved there is no pass yet. */
  if (lb_pass_record_count (record) > 0)
    note_step (record);
  return task != NULL && task->progress != NULL
         && task->progress (task->data, fmin (time / record->job.duration, 1));
}

static LbStatus
start (LbPassRecord *record)
{
  LbPassOptions options = record->options;

  options.cancel = step_cb;
  options.cancel_data = record;
  record->remark = lb_pass_start (record->pass, &record->job.setup, &record->job.plan, &options);
  if (lb_status_is_failure (record->remark))
    return record->remark;
  return record_now (record);
}

/* The time of the next sample, s. */
static double
next_time (const LbPassRecord *record, size_t at)
{
  double time = (double) at * record->interval, end = record->job.duration;

  /* The end takes the place of a sample just before it. */
  return time > end - 0.01 * record->interval ? end : time;
}

/* Goes on by one sample, which the second rig has by then. */
static LbStatus
go_on (LbPassRecord *record)
{
  LbStatus status = LB_STATUS_OK;
  size_t count = lb_pass_record_count (record);

  /* Given up in between, it may be ahead. */
  if (record->second != NULL && lb_pass_record_count (record->second) <= count)
    status = go_on (record->second);
  if (status != LB_STATUS_OK)
    return status;
  if (count == 0)
    return start (record);
  status = lb_pass_advance (record->pass, next_time (record, count));
  return status == LB_STATUS_OK ? record_now (record) : status;
}

LbStatus
lb_pass_record_run (LbPassRecord *record, double time, const LbPlanTask *task)
{
  LbStatus status = LB_STATUS_OK;

  record->task = task;
  while (status == LB_STATUS_OK && !lb_pass_record_is_complete (record)
         && (lb_pass_record_count (record) == 0 || lb_pass_record_end (record) < time))
    status = go_on (record);
  record->task = NULL;
  return status == LB_STATUS_OK ? record->remark : status;
}

/* ---- What is asked for, and what is there ---- */

const LbSetup *
lb_pass_record_setup (const LbPassRecord *record)
{
  return &record->job.setup;
}

const LbPassScript *
lb_pass_record_script (const LbPassRecord *record)
{
  return &record->script;
}

const LbPassRecord *
lb_pass_record_second (const LbPassRecord *record)
{
  return record->second;
}

const LbPassPlan *
lb_pass_record_plan (const LbPassRecord *record)
{
  return &record->job.plan;
}

double
lb_pass_record_duration (const LbPassRecord *record)
{
  return record->job.duration;
}

double
lb_pass_record_interval (const LbPassRecord *record)
{
  return record->interval;
}

size_t
lb_pass_record_n_bodies (const LbPassRecord *record)
{
  return LB_PASS_LURE_0 + record->job.setup.rig.n_leaders;
}

size_t
lb_pass_record_count (const LbPassRecord *record)
{
  return atomic_load_explicit (&record->count, memory_order_acquire);
}

double
lb_pass_record_end (const LbPassRecord *record)
{
  size_t count = lb_pass_record_count (record);

  return count > 0 ? record->samples[count - 1].time : 0;
}

bool
lb_pass_record_is_complete (const LbPassRecord *record)
{
  return lb_pass_record_count (record) > 0 && !(lb_pass_record_end (record) < record->job.duration);
}

const LbPassSample *
lb_pass_record_sample (const LbPassRecord *record, size_t i)
{
  return &record->samples[i];
}

const LbPointReading *
lb_pass_sample_body (const LbPassSample *sample, size_t body)
{
  return body == LB_PASS_WEIGHT ? &sample->readings.weight
                                : &sample->readings.lures[body - LB_PASS_LURE_0].at;
}
