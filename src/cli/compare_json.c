/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_text.h"
#include "comparison_words.h"
#include "run_json.h"
#include "writer.h"

static void
add_text (LbJsonText *json, const char *key, const char *text)
{
  lb_json_text_key (json, key);
  if (text)
    lb_json_text_add_string (json, text);
  else
    lb_json_text_add_number (json, LB_UNSET);
}

static void
add_difference (LbJsonText *json, const char *key, double first, double own)
{
  lb_json_text_key (json, key);
  lb_json_text_add_number (json, own - first);
}

/* From the first variant: more is positive. */
static void
add_differences (LbJsonText *json, const LbReadings *first, const LbReadings *own)
{
  lb_json_text_key (json, "difference");
  lb_json_text_open (json, '{');
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

  lb_json_text_start_line (json);
  lb_json_text_open (json, '{');
  add_text (json, "name", lb_comparison_get_variant (comparison, i)->name);
  lb_json_text_key (json, "set");
  lb_writer_add_variant_set (json, lb_comparison_get_variant (comparison, i));
  add_text (json, "words", sentence);
  add_text (json, "remark", remark);
  if (result)
    lb_run_json_add (json, result);
  else
    {
      lb_json_text_key (json, "converged");
      lb_json_text_add_boolean (json, FALSE);
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
  lb_json_text_key (&json, "variants");
  lb_json_text_open (&json, '[');
  for (size_t i = 0; i < lb_comparison_get_n (comparison); i++)
    add_variant (&json, comparison, i, &wording);
  lb_json_text_close (&json, ']');
  lb_json_text_close (&json, '}');
  return lb_json_text_end (&json, NULL);
}
