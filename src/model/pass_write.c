/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_file.h"

/* One that is unset becomes null. */
static void
add_number (LbJsonText *json, const char *key, double number)
{
  lb_json_text_key (json, key);
  lb_json_text_add_number (json, number);
}

static void
add_leg (LbJsonText *json, const LbCourseLeg *leg)
{
  lb_json_text_open (json, '{');
  if (lb_is_set (leg->duration))
    add_number (json, "duration_s", leg->duration);
  else
    add_number (json, "distance_m", leg->distance);
  add_number (json, "speed_over_ground_m_s", leg->speed);
  if (lb_is_set (leg->turn_rate))
    add_number (json, "turn_rate_deg_s", leg->turn_rate);
  else
    add_number (json, "turn_deg", leg->turn);
  add_number (json, "line_rate_m_s", leg->line_rate);
  lb_json_text_close (json, '}');
}

void
lb_pass_write (LbJsonText *json, const LbPassScript *script)
{
  lb_json_text_open (json, '{');
  lb_json_text_key (json, "course");
  lb_json_text_open (json, '[');
  for (size_t i = 0; i < script->n_legs; i++)
    {
      lb_json_text_start_line (json);
      add_leg (json, &script->legs[i]);
    }
  lb_json_text_close (json, ']');
  lb_json_text_key (json, "hand");
  lb_json_text_open (json, '{');
  lb_json_text_key (json, "motion");
  lb_json_text_add_string (json, lb_hand_motion_name (script->hand.motion));
  add_number (json, "stroke_m", script->hand.stroke);
  add_number (json, "period_s", script->hand.period);
  lb_json_text_close (json, '}');
  add_number (json, "duration_s", script->duration);
  add_number (json, "start_m", script->start);
  add_number (json, "tangle_warning_m", script->tangle_distance);
  add_number (json, "second_weight_kg", script->second_weight);
  add_number (json, "reels_apart_m", script->reels_apart);
  lb_json_text_close (json, '}');
}
