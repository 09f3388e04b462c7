/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_text.h"
#include "comparison_words.h"
#include "run_json.h"
#include "writer.h"

static void
add_difference (LbJsonText *json, const char *key, double first, double own)
{
  lb_json_text_put_number (json, key, own - first);
}

/* From the first variant: more is positive. */
static void
add_differences (LbJsonText *json, const LbReadings *first, const LbReadings *own)
{
  lb_json_text_open_member (json, "difference", '{');
  add_difference (json, "line_out_m", first->line_out, own->line_out);
  add_difference (json, "wire_angle_deg", first->wire_angle * 180 / G_PI,
                  own->wire_angle * 180 / G_PI);
  add_difference (json, "tension_at_reel_n", first->hand_tension, own->hand_tension);
  lb_json_text_close (json, '}');
}

static void
add_variant (LbJsonText *json, const LbComparison *comparison, size_t i, const LbWording *wording)
{
  LbResult *result = lb_comparison_get_result (comparison, i);
  const LbReadings *first = lb_comparison_get_readings (comparison, 0);
  const LbReadings *own = lb_comparison_get_readings (comparison, i);
  g_autofree char *sentence = lb_comparison_dup_sentence (comparison, i, wording);
  g_autofree char *remark = lb_comparison_dup_remark (comparison, i, wording);

  lb_json_text_open_item (json, '{');
  lb_json_text_put_string (json, "name", lb_comparison_get_variant (comparison, i)->name);
  lb_json_text_key (json, "set");
  lb_writer_add_variant_set (json, lb_comparison_get_variant (comparison, i));
  lb_json_text_put_string (json, "words", sentence);
  lb_json_text_put_string (json, "remark", remark);
  if (result)
    lb_run_json_add (json, result);
  else
    {
      lb_json_text_put_boolean (json, "converged", FALSE);
    }
  if (i > 0 && first && own)
    add_differences (json, first, own);
  lb_json_text_close (json, '}');
}

char *
lb_compare_json (const LbComparison *comparison, LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  LbJsonText json;

  lb_json_text_init (&json);
  lb_json_text_open (&json, '{');
  lb_json_text_open_member (&json, "variants", '[');
  for (size_t i = 0; i < lb_comparison_get_n (comparison); i++)
    add_variant (&json, comparison, i, &wording);
  lb_json_text_close (&json, ']');
  lb_json_text_close (&json, '}');
  return lb_json_text_end (&json, NULL);
}
