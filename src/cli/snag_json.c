/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "snag_json.h"

#include "hang_up.h"

#define N_INTERVALS 40 /* of a series of pulls */

static const char *
part_name (int part)
{
  if (part == LB_PART_MAINLINE)
    return "mainline";
  return part == LB_PART_SHANK ? "shank" : "leader";
}

static void
add_pulls (LbJsonText *json, const LbHangUp *held)
{
  lb_json_text_open_member (json, "pulls", '[');
  for (int k = 0; k <= N_INTERVALS && held->end > 0; k++)
    {
      double time = k * held->end / N_INTERVALS;

      lb_json_text_open_item (json, '{');
      lb_json_text_put_number (json, "time_s", time);
      lb_json_text_put_number (json, "tension_at_reel_n", lb_hang_up_pull (held, time));
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
}

static void
add_case (LbJsonText *json, const char *key, const LbHangUp *held)
{
  lb_json_text_open_member (json, key, '{');
  lb_json_text_put_number (json, "speed_over_ground_m_s", held->speed);
  lb_json_text_put_number (json, "until_hand_limit_s", held->times.until_hand);
  lb_json_text_put_number (json, "until_breaks_s", held->times.until_breaks);
  if (lb_is_set (held->times.until_breaks))
    lb_json_text_put_string (json, "breaks", part_name (held->times.breaks));
  add_pulls (json, held);
  lb_json_text_close (json, '}');
}

/* Into an object that is open. */
static void
add_body (LbJsonText *json, const LbResult *result, size_t lure)
{
  LbHangUp going = lb_hang_up (result, lure, false), stopped = lb_hang_up (result, lure, true);

  add_case (json, "going_on", &going);
  add_case (json, "motor_stopped", &stopped);
}

void
lb_snag_json_add (LbJsonText *json, const LbResult *result)
{
  lb_json_text_open_member (json, "snag", '{');
  lb_json_text_put_number (json, "hand_limit_n", LB_HAND_LIMIT);
  lb_json_text_open_member (json, "weight", '{');
  add_body (json, result, 0);
  lb_json_text_close (json, '}');
  lb_json_text_open_member (json, "lures", '[');
  for (size_t i = 1; i <= lb_result_get_setup (result)->rig.n_leaders; i++)
    {
      lb_json_text_open_item (json, '{');
      add_body (json, result, i);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
  lb_json_text_close (json, '}');
}
