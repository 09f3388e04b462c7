/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_summary.h"

/* Lines have come closer when it is by this much, m: a hair more is not worth another time. */
#define CLOSER 1e-4

static void
begin (LbPassSummary *summary, const LbPassRecord *record)
{
  const LbPassExtreme least = { INFINITY, 0 }, most = { -INFINITY, 0 };

  *summary = (LbPassSummary){
    .n_bodies = lb_pass_record_n_bodies (record),
    .most_tension = most,
    .least_tension = least,
    .steepest = least,
    .flattest = most,
    .most_line = most,
    .least_line = least,
    .closest = { .distance = LB_UNSET },
    .between = { .distance = LB_UNSET },
  };
  for (size_t i = 0; i < LB_PASS_MOST_BODIES; i++)
    {
      summary->highest[i] = most;
      summary->lowest[i] = least;
    }
}

static void
note_most (LbPassExtreme *extreme, double value, double time)
{
  if (value > extreme->value)
    *extreme = (LbPassExtreme){ value, time };
}

static void
note_least (LbPassExtreme *extreme, double value, double time)
{
  if (value < extreme->value)
    *extreme = (LbPassExtreme){ value, time };
}

static void
note_closest (LbApproach *closest, double *at, const LbApproach *now, double time)
{
  if (!lb_is_set (now->distance)
      || (lb_is_set (closest->distance) && now->distance >= closest->distance - CLOSER))
    return;
  *closest = *now;
  *at = time;
}

static void
note_extremes (LbPassSummary *summary, const LbPassSample *sample)
{
  const LbReadings *readings = &sample->readings;

  note_most (&summary->most_tension, sample->most_tension, sample->time);
  note_least (&summary->least_tension, readings->hand_tension, sample->time);
  note_most (&summary->flattest, readings->wire_angle, sample->time);
  note_least (&summary->steepest, readings->wire_angle, sample->time);
  note_most (&summary->most_line, readings->line_out, sample->time);
  note_least (&summary->least_line, readings->line_out, sample->time);
  for (size_t i = 0; i < summary->n_bodies; i++)
    {
      double height = lb_pass_sample_body (sample, i)->height;
      note_most (&summary->highest[i], height, sample->time);
      note_least (&summary->lowest[i], height, sample->time);
    }
  note_closest (&summary->closest, &summary->closest_time, &readings->closest, sample->time);
  note_closest (&summary->between, &summary->between_time, &sample->between, sample->time);
}

/* `time` that the body spent as the sample has it. */
static void
add_time (LbPassTimes *times, const LbBand *band, const LbPointReading *at, double time)
{
  switch (lb_band_state (band, at->height, at->on_bed))
    {
    case LB_BAND_BELOW:
      times->below += time;
      break;
    case LB_BAND_INSIDE:
      times->in_band += time;
      break;
    case LB_BAND_ABOVE:
      times->above += time;
      break;
    case LB_BAND_ON_BED:
      times->on_bed += time;
      break;
    }
}

/* Of any two lines at sample `i`, m; unset when there are none. */
static double
nearest (const LbPassRecord *record, size_t i)
{
  const LbPassRecord *second = lb_pass_record_second (record);
  const LbPassSample *sample = lb_pass_record_sample (record, i);
  double own = fmin (sample->readings.closest.distance, sample->between.distance);

  return second == NULL ? own
                        : fmin (own, lb_pass_record_sample (second, i)->readings.closest.distance);
}

/* `time` that is spent as sample `i` has it. */
static void
add_times (LbPassSummary *summary, const LbPassRecord *record, size_t i, double time)
{
  const LbPassSample *sample = lb_pass_record_sample (record, i);
  const LbBand *band = &lb_pass_record_setup (record)->band;

  for (size_t k = 0; k < summary->n_bodies; k++)
    add_time (&summary->bodies[k], band, lb_pass_sample_body (sample, k), time);
  if (nearest (record, i) < lb_pass_record_script (record)->tangle_distance)
    summary->tangle_time += time;
}

void
lb_pass_summary_continue (LbPassSummary *summary, const LbPassRecord *record)
{
  size_t count = lb_pass_record_count (record);

  if (summary->n_samples == 0)
    begin (summary, record);
  for (size_t i = summary->n_samples; i < count; i++)
    {
      const LbPassSample *sample = lb_pass_record_sample (record, i);
      note_extremes (summary, sample);
      if (i == 0)
        continue;
      /* Half of the time between two samples goes to each. */
      const LbPassSample *before = lb_pass_record_sample (record, i - 1);
      double half = 0.5 * (sample->time - before->time);
      add_times (summary, record, i - 1, half);
      add_times (summary, record, i, half);
      summary->time = sample->time;
    }
  summary->n_samples = count;
}

double
lb_pass_share (double time, const LbPassSummary *summary)
{
  return summary->time > 0 ? time / summary->time : 0;
}

/* ---- Contacts with the bed ---- */

size_t
lb_pass_record_touches (const LbPassRecord *record, size_t body, LbPassTouch *out, size_t capacity)
{
  size_t count = lb_pass_record_count (record), n = 0;
  LbPassTouch last = { 0 };

  for (size_t i = 0; i < count; i++)
    {
      const LbPassSample *sample = lb_pass_record_sample (record, i);
      const LbPointReading *at = lb_pass_sample_body (sample, body);
      if (!sample->touched[body])
        continue;
      if (n == 0 || sample->time - last.to > LB_PASS_TOUCH_GAP)
        {
          last = (LbPassTouch){ .from = sample->time, .x_from = at->position.x };
          n++;
        }
      last.to = sample->time;
      last.x_to = at->position.x;
      if (n <= capacity)
        out[n - 1] = last;
    }
  return n;
}
