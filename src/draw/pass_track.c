/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_track.h"

static LbTrackPoint
point_of (const LbPassSample *sample, size_t body)
{
  const LbPointReading *reading = lb_pass_sample_body (sample, body);

  return (LbTrackPoint){ reading->position, reading->height, reading->on_bed,
                         reading->on_bed || sample->touched[body] };
}

/* Keeps the nearest approach; an unset distance is none. */
static void
take_approach (LbTrackMoment *moment, const LbApproach *approach)
{
  if (!lb_is_set (approach->distance) || approach->distance >= moment->closest)
    return;
  moment->closest = approach->distance;
  moment->closest_at = approach->at;
}

static LbTrackMoment
moment_of (const LbPassSample *sample, double reel_across)
{
  const LbReadings *r = &sample->readings;
  LbTrackMoment moment = {
    .time = sample->time,
    .reel = sample->boat,
    .reel_across = reel_across,
    .boat_speed = sample->speed,
    .heading = sample->heading,
    .line_out = r->line_out,
    .wire_angle = r->wire_angle,
    .hand_tension = r->hand_tension,
    .weight = point_of (sample, LB_PASS_WEIGHT),
    .closest = r->closest.distance,
    .closest_at = r->closest.at,
  };

  take_approach (&moment, &sample->between);
  for (size_t i = 0; i < r->n_leaders; i++)
    moment.lures[i] = point_of (sample, LB_PASS_LURE_0 + i);
  return moment;
}

void
lb_track_add (GArray *moments, const LbPassRecord *record)
{
  const LbPassRecord *second = lb_pass_record_second (record);
  size_t n = lb_pass_record_count (record);
  double reel_across = lb_pass_record_plan (record)->course.reel_across;

  for (size_t i = moments->len; i < n; i++)
    {
      LbTrackMoment moment = moment_of (lb_pass_record_sample (record, i), reel_across);

      if (second)
        take_approach (&moment, &lb_pass_record_sample (second, i)->readings.closest);
      g_array_append_val (moments, moment);
    }
}

size_t
lb_track_until (const LbPassTrack *track, double time)
{
  size_t low = 0, high = track->n;

  while (low < high)
    {
      size_t middle = low + (high - low) / 2;

      if (track->moments[middle].time <= time)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

static double
between (double a, double b, double t)
{
  return a + t * (b - a);
}

static LbVec3
vec_between (LbVec3 a, LbVec3 b, double t)
{
  return lb_vec3_add_scaled (a, t, lb_vec3_sub (b, a));
}

/* What lies on the bed at the nearer of both moments lies there. */
static LbTrackPoint
point_between (const LbTrackPoint *a, const LbTrackPoint *b, double t)
{
  return (LbTrackPoint){ vec_between (a->position, b->position, t),
                         between (a->height, b->height, t), t < 0.5 ? a->on_bed : b->on_bed,
                         t < 0.5 ? a->touched : b->touched };
}

bool
lb_track_at (const LbPassTrack *track, double time, LbTrackMoment *moment)
{
  size_t n = lb_track_until (track, time);
  const LbTrackMoment *a, *b;
  double t;

  if (track->n == 0)
    return false;
  a = &track->moments[n > 0 ? n - 1 : 0];
  b = &track->moments[n < track->n ? n : track->n - 1];
  *moment = *a;
  if (b->time <= a->time)
    return true;
  t = (time - a->time) / (b->time - a->time);
  moment->time = time;
  moment->reel = vec_between (a->reel, b->reel, t);
  moment->boat_speed = between (a->boat_speed, b->boat_speed, t);
  moment->heading = between (a->heading, b->heading, t);
  moment->line_out = between (a->line_out, b->line_out, t);
  moment->wire_angle = between (a->wire_angle, b->wire_angle, t);
  moment->hand_tension = between (a->hand_tension, b->hand_tension, t);
  moment->weight = point_between (&a->weight, &b->weight, t);
  for (size_t i = 0; i < track->n_lures; i++)
    moment->lures[i] = point_between (&a->lures[i], &b->lures[i], t);
  moment->closest = between (a->closest, b->closest, t);
  moment->closest_at = vec_between (a->closest_at, b->closest_at, t);
  return true;
}

const LbTrackMoment *
lb_track_closest (const LbPassTrack *track, double time)
{
  const LbTrackMoment *closest = NULL;
  size_t n = lb_track_until (track, time);

  for (size_t i = 0; i < n; i++)
    {
      const LbTrackMoment *m = &track->moments[i];

      if (lb_is_set (m->closest) && (!closest || m->closest < closest->closest))
        closest = m;
    }
  return closest;
}
