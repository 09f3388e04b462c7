/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "json_text.h"
#include "pass_series.h"

#define DEGREES (180 / G_PI)

/* ---- Which moments ---- */

size_t
lb_pass_n_moments (const LbPassRecord *record, double step)
{
  double end = lb_pass_record_end (record);

  if (!(step > 0))
    return lb_pass_record_count (record);
  /* The end is always there. */
  return (size_t) ceil (end / step - 1e-9) + 1;
}

double
lb_pass_moment (const LbPassRecord *record, double step, size_t i)
{
  if (!(step > 0))
    return lb_pass_record_sample (record, i)->time;
  return fmin ((double) i * step, lb_pass_record_end (record));
}

/* ---- The table ---- */

static void
add_headings (GString *out, size_t n_lures)
{
  g_string_append (out, "time_s,boat_x_m,boat_y_m,heading_deg,speed_over_ground_m_s,line_out_m,"
                        "tension_at_reel_n,wire_angle_deg,weight_x_m,weight_y_m,weight_height_m,"
                        "weight_tension_n,weight_on_bed");
  for (size_t i = 1; i <= n_lures; i++)
    g_string_append_printf (out,
                            ",lure_%zu_x_m,lure_%zu_y_m,lure_%zu_height_m,lure_%zu_tension_n,"
                            "lure_%zu_water_speed_m_s,lure_%zu_on_bed",
                            i, i, i, i, i, i);
  g_string_append (out, ",closest_lines_m\n");
}

static void
add_number (GString *out, double number)
{
  char text[LB_JSON_NUMBER_SIZE];

  g_string_append_c (out, ',');
  if (!isfinite (number))
    return;
  lb_json_text_number (round (number * 1e6) / 1e6 + 0.0, text);
  g_string_append (out, text);
}

static void
add_point (GString *out, const LbPointReading *point, double tension)
{
  add_number (out, point->position.x);
  add_number (out, point->position.y);
  add_number (out, point->height);
  add_number (out, tension);
}

static void
add_moment (GString *out, const LbPassSample *sample)
{
  const LbReadings *readings = &sample->readings;
  const double numbers[] = {
    sample->time,  sample->boat.x,     sample->boat.y,         sample->heading * DEGREES,
    sample->speed, readings->line_out, readings->hand_tension, readings->wire_angle * DEGREES,
  };
  gsize start = out->len;

  for (size_t i = 0; i < G_N_ELEMENTS (numbers); i++)
    add_number (out, numbers[i]);
  g_string_erase (out, (gssize) start, 1); /* the first comma */
  add_point (out, &readings->weight, readings->weight_tension);
  add_number (out, readings->weight.on_bed);
  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      add_point (out, &readings->lures[i].at, readings->lures[i].leader_tension);
      add_number (out, readings->lures[i].at.water_speed);
      add_number (out, readings->lures[i].at.on_bed);
    }
  add_number (out, readings->closest.distance);
  g_string_append_c (out, '\n');
}

char *
lb_pass_csv (const LbPassRecord *record, double step)
{
  GString *out = g_string_new (NULL);

  add_headings (out, lb_pass_record_n_bodies (record) - LB_PASS_LURE_0);
  for (size_t i = 0; i < lb_pass_n_moments (record, step); i++)
    {
      LbPassSample sample;

      if (lb_pass_record_at (record, lb_pass_moment (record, step, i), &sample))
        add_moment (out, &sample);
    }
  return g_string_free (out, FALSE);
}
