/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run_json.h"

#include "fish_loads.h"
#include "snag_json.h"

static void
add_place (LbJsonText *json, const LbPointReading *point)
{
  lb_json_text_put_number (json, "layback_m", point->layback);
  lb_json_text_put_number (json, "height_m", point->height);
}

static void
add_attachments (LbJsonText *json, const LbReadings *readings)
{
  lb_json_text_open_member (json, "attachments", '[');
  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      lb_json_text_open_item (json, '{');
      add_place (json, &readings->attachments[i]);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
}

static void
add_lures (LbJsonText *json, const LbReadings *readings)
{
  lb_json_text_open_member (json, "lures", '[');
  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      const LbLureReading *lure = &readings->lures[i];

      lb_json_text_open_item (json, '{');
      add_place (json, &lure->at);
      lb_json_text_put_number (json, "water_speed_m_s", lure->at.water_speed);
      lb_json_text_put_number (json, "leader_tension_n", lure->leader_tension);
      lb_json_text_put_boolean (json, "on_bed", lure->at.on_bed);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
}

static void
add_readings (LbJsonText *json, const LbReadings *readings)
{
  lb_json_text_put_number (json, "line_out_m", readings->line_out);
  lb_json_text_put_number (json, "wire_angle_deg", readings->wire_angle * 180 / G_PI);
  lb_json_text_put_number (json, "tension_at_reel_n", readings->hand_tension);
  lb_json_text_open_member (json, "weight", '{');
  add_place (json, &readings->weight);
  lb_json_text_put_boolean (json, "on_bed", readings->weight.on_bed);
  lb_json_text_close (json, '}');
  add_attachments (json, readings);
  add_lures (json, readings);
}

void
lb_run_json_add (LbJsonText *json, const LbResult *result)
{
  const LbReadings *readings = lb_result_get_readings (result);
  LbSteadyStatistics statistics = lb_result_get_statistics (result);

  lb_json_text_put_boolean (json, "converged", readings != NULL);
  lb_json_text_put_string (json, "status", lb_status_name (lb_result_get_status (result)));
  if (readings)
    add_readings (json, readings);
  lb_json_text_put_number (json, "iterations", (double) statistics.iterations);
  lb_json_text_put_number (json, "segments", (double) statistics.segments);
}

/* ---- A fish ---- */

static void
add_load (LbJsonText *json, double speed, const LbFishLoad *load)
{
  lb_json_text_open_item (json, '{');
  lb_json_text_put_number (json, "speed_over_ground_m_s", speed);
  lb_json_text_put_number (json, "tension_at_reel_n", load->in_hand);
  lb_json_text_put_number (json, "fish_drag_n", load->drag);
  lb_json_text_put_number (json, "water_speed_m_s", load->water_speed);
  lb_json_text_put_number (json, "leader_tension_n", load->leader_pull);
  lb_json_text_put_number (json, "leader_spare", load->leader_spare);
  lb_json_text_put_number (json, "mainline_spare", load->mainline_spare);
  lb_json_text_put_number (json, "shank_spare", load->shank_spare);
  lb_json_text_close (json, '}');
}

static void
add_mouth (LbJsonText *json, const char *key, const LbFishLoads *fish, const LbFishLoad loads[])
{
  lb_json_text_open_member (json, key, '[');
  for (size_t k = 0; k < LB_FISH_N_SPEEDS; k++)
    add_load (json, fish->speeds[k], &loads[k]);
  lb_json_text_close (json, ']');
}

static void
add_fish (LbJsonText *json, const LbResult *result, double length)
{
  LbFishLoads fish = lb_fish_loads (result, length);

  lb_json_text_open_member (json, "fish", '{');
  lb_json_text_put_number (json, "length_m", fish.length);
  lb_json_text_open_member (json, "lures", '[');
  for (size_t i = 0; i < fish.n_lures; i++)
    {
      lb_json_text_open_item (json, '{');
      add_mouth (json, "mouth_closed", &fish, fish.loads[i][0]);
      add_mouth (json, "mouth_open", &fish, fish.loads[i][1]);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
  lb_json_text_close (json, '}');
}

char *
lb_run_json (const LbResult *result, const LbRunExtras *extras)
{
  gboolean failed = lb_result_get_failed (result);
  LbJsonText json;

  lb_json_text_init (&json);
  lb_json_text_open (&json, '{');
  lb_run_json_add (&json, result);
  if (lb_is_set (extras->fish) && !failed)
    add_fish (&json, result, extras->fish);
  if (extras->snag && !failed)
    lb_snag_json_add (&json, result);
  lb_json_text_close (&json, '}');
  return lb_json_text_end (&json, NULL);
}
