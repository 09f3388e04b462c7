/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "json_text.h"
#include "pass_series.h"

#define DEGREES (180 / G_PI)

static void
add_number (LbJsonText *json, const char *key, double number)
{
  lb_json_text_put_number (json, key, round (number * 1e6) / 1e6 + 0.0);
}

/* ---- What it comes to ---- */

static void
add_times (LbJsonText *json, const LbPassSummary *summary, size_t body)
{
  const LbPassTimes *times = &summary->bodies[body];

  add_number (json, "in_band_s", times->in_band);
  add_number (json, "above_band_s", times->above);
  add_number (json, "below_band_s", times->below);
  add_number (json, "on_bed_s", times->on_bed);
  add_number (json, "highest_m", summary->highest[body].value);
  add_number (json, "lowest_m", summary->lowest[body].value);
}

static void
add_touches (LbJsonText *json, const LbPassRecord *record, size_t body)
{
  size_t n = lb_pass_record_touches (record, body, NULL, 0);
  g_autofree LbPassTouch *touches = g_new (LbPassTouch, n + 1);

  lb_pass_record_touches (record, body, touches, n);
  lb_json_text_open_member (json, "touches", '[');
  for (size_t i = 0; i < n; i++)
    {
      lb_json_text_open_item (json, '{');
      add_number (json, "from_s", touches[i].from);
      add_number (json, "to_s", touches[i].to);
      add_number (json, "from_x_m", touches[i].x_from);
      add_number (json, "to_x_m", touches[i].x_to);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
}

static void
add_bodies (LbJsonText *json, const LbPassRecord *record, const LbPassSummary *summary)
{
  lb_json_text_open_member (json, "weight", '{');
  add_times (json, summary, LB_PASS_WEIGHT);
  add_touches (json, record, LB_PASS_WEIGHT);
  lb_json_text_close (json, '}');
  lb_json_text_open_member (json, "lures", '[');
  for (size_t i = LB_PASS_LURE_0; i < summary->n_bodies; i++)
    {
      lb_json_text_open_item (json, '{');
      add_times (json, summary, i);
      add_touches (json, record, i);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
}

/* What is a rig's own. */
static void
add_rig_summary (LbJsonText *json, const LbPassRecord *record, const LbPassSummary *summary)
{
  add_number (json, "weight_kg", lb_pass_record_setup (record)->rig.weight.mass);
  add_number (json, "highest_tension_at_reel_n", summary->most_tension.value);
  add_number (json, "highest_tension_at_s", summary->most_tension.time);
  add_number (json, "least_wire_angle_deg", summary->steepest.value * DEGREES);
  add_number (json, "most_wire_angle_deg", summary->flattest.value * DEGREES);
  add_number (json, "closest_lines_m", summary->closest.distance);
  add_number (json, "closest_lines_at_s",
              lb_is_set (summary->closest.distance) ? summary->closest_time : LB_UNSET);
  add_bodies (json, record, summary);
}

static void
add_second (LbJsonText *json, const LbPassRecord *record, const LbPassSummary *first)
{
  const LbPassRecord *second = lb_pass_record_second (record);
  LbPassSummary summary = { 0 };

  if (second == NULL)
    return;
  lb_pass_summary_continue (&summary, second);
  add_number (json, "between_rigs_m", first->between.distance);
  add_number (json, "between_rigs_at_s", first->between_time);
  lb_json_text_open_member (json, "second", '{');
  add_rig_summary (json, second, &summary);
  lb_json_text_close (json, '}');
}

static void
add_summary (LbJsonText *json, const LbPassRecord *record, const LbPassSummary *summary)
{
  lb_json_text_put_boolean (json, "complete", lb_pass_record_is_complete (record));
  add_number (json, "duration_s", summary->time);
  add_number (json, "within_tangle_warning_s", summary->tangle_time);
  add_rig_summary (json, record, summary);
  add_second (json, record, summary);
}

/* ---- Moments ---- */

static void
add_point (LbJsonText *json, const LbPointReading *point, const char *key, double tension)
{
  add_number (json, "x_m", point->position.x);
  add_number (json, "y_m", point->position.y);
  add_number (json, "height_m", point->height);
  add_number (json, "water_speed_m_s", point->water_speed);
  add_number (json, key, tension);
  lb_json_text_put_boolean (json, "on_bed", point->on_bed);
}

/* What each rig has of its own. */
static void
add_rig (LbJsonText *json, const LbPassSample *sample)
{
  const LbReadings *readings = &sample->readings;

  add_number (json, "reel_x_m", sample->boat.x);
  add_number (json, "reel_y_m", sample->boat.y);
  add_number (json, "line_out_m", readings->line_out);
  add_number (json, "tension_at_reel_n", readings->hand_tension);
  add_number (json, "wire_angle_deg", readings->wire_angle * DEGREES);
  add_number (json, "closest_lines_m", readings->closest.distance);
  lb_json_text_open_member (json, "weight", '{');
  add_point (json, &readings->weight, "tension_n", readings->weight_tension);
  lb_json_text_close (json, '}');
  lb_json_text_open_member (json, "lures", '[');
  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      lb_json_text_open_item (json, '{');
      add_point (json, &readings->lures[i].at, "leader_tension_n",
                 readings->lures[i].leader_tension);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
}

static void
add_moment (LbJsonText *json, const LbPassSample *sample, const LbPassSample *second)
{
  add_number (json, "time_s", sample->time);
  add_number (json, "heading_deg", sample->heading * DEGREES);
  add_number (json, "speed_over_ground_m_s", sample->speed);
  add_rig (json, sample);
  if (second == NULL)
    return;
  add_number (json, "between_rigs_m", sample->between.distance);
  lb_json_text_open_member (json, "second", '{');
  add_rig (json, second);
  lb_json_text_close (json, '}');
}

char *
lb_pass_json (const LbPassRecord *record, const LbPassSummary *summary, double step)
{
  const LbPassRecord *second = lb_pass_record_second (record);
  LbJsonText json;

  lb_json_text_init (&json);
  lb_json_text_open (&json, '{');
  add_summary (&json, record, summary);
  lb_json_text_open_member (&json, "samples", '[');
  for (size_t i = 0; i < lb_pass_n_moments (record, step); i++)
    {
      double time = lb_pass_moment (record, step, i);
      LbPassSample sample, other;

      if (!lb_pass_record_at (record, time, &sample))
        continue;
      lb_json_text_open_item (&json, '{');
      add_moment (&json, &sample,
                  second && lb_pass_record_at (second, time, &other) ? &other : NULL);
      lb_json_text_close (&json, '}');
    }
  lb_json_text_close (&json, ']');
  lb_json_text_close (&json, '}');
  return lb_json_text_end (&json, NULL);
}
