/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_file.h"

static void
add_leg (LbJsonText *json, const LbCourseLeg *leg)
{
  lb_json_text_open (json, '{');
  if (lb_is_set (leg->duration))
    lb_json_text_put_number (json, "duration_s", leg->duration);
  else
    lb_json_text_put_number (json, "distance_m", leg->distance);
  lb_json_text_put_number (json, "speed_over_ground_m_s", leg->speed);
  if (lb_is_set (leg->turn_rate))
    lb_json_text_put_number (json, "turn_rate_deg_s", leg->turn_rate);
  else
    lb_json_text_put_number (json, "turn_deg", leg->turn);
  lb_json_text_put_number (json, "line_rate_m_s", leg->line_rate);
  lb_json_text_close (json, '}');
}

void
lb_pass_write (LbJsonText *json, const LbPassScript *script)
{
  lb_json_text_open (json, '{');
  lb_json_text_open_member (json, "course", '[');
  for (size_t i = 0; i < script->n_legs; i++)
    {
      lb_json_text_start_line (json);
      add_leg (json, &script->legs[i]);
    }
  lb_json_text_close (json, ']');
  lb_json_text_open_member (json, "hand", '{');
  lb_json_text_put_string (json, "motion", lb_hand_motion_name (script->hand.motion));
  lb_json_text_put_number (json, "stroke_m", script->hand.stroke);
  lb_json_text_put_number (json, "period_s", script->hand.period);
  lb_json_text_close (json, '}');
  lb_json_text_put_number (json, "duration_s", script->duration);
  lb_json_text_put_number (json, "start_m", script->start);
  lb_json_text_put_number (json, "tangle_warning_m", script->tangle_distance);
  lb_json_text_put_number (json, "second_weight_kg", script->second_weight);
  lb_json_text_put_number (json, "reels_apart_m", script->reels_apart);
  lb_json_text_close (json, '}');
}
