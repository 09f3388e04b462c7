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

/* Of weight, lures and lines; `rig` stands before each. */
static void
add_rig_headings (GString *out, const char *rig, size_t n_lures)
{
  g_string_append_printf (
      out, ",%sweight_x_m,%sweight_y_m,%sweight_height_m,%sweight_tension_n,%sweight_on_bed", rig,
      rig, rig, rig, rig);
  for (size_t i = 1; i <= n_lures; i++)
    g_string_append_printf (out,
                            ",%slure_%zu_x_m,%slure_%zu_y_m,%slure_%zu_height_m,"
                            "%slure_%zu_tension_n,%slure_%zu_water_speed_m_s,%slure_%zu_on_bed",
                            rig, i, rig, i, rig, i, rig, i, rig, i, rig, i);
  g_string_append_printf (out, ",%sclosest_lines_m", rig);
}

static void
add_headings (GString *out, const LbPassRecord *record)
{
  size_t n_lures = lb_pass_record_n_bodies (record) - LB_PASS_LURE_0;

  g_string_append (out, "time_s,reel_x_m,reel_y_m,heading_deg,speed_over_ground_m_s,line_out_m,"
                        "tension_at_reel_n,wire_angle_deg");
  add_rig_headings (out, "", n_lures);
  if (lb_pass_record_second (record))
    {
      g_string_append (out, ",second_reel_x_m,second_reel_y_m,second_line_out_m,"
                            "second_tension_at_reel_n,second_wire_angle_deg");
      add_rig_headings (out, "second_", n_lures);
      g_string_append (out, ",between_rigs_m");
    }
  g_string_append_c (out, '\n');
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
add_bodies (GString *out, const LbReadings *readings)
{
  add_point (out, &readings->weight, readings->weight_tension);
  add_number (out, readings->weight.on_bed);
  for (size_t i = 0; i < readings->n_leaders; i++)
    {
      add_point (out, &readings->lures[i].at, readings->lures[i].leader_tension);
      add_number (out, readings->lures[i].at.water_speed);
      add_number (out, readings->lures[i].at.on_bed);
    }
  add_number (out, readings->closest.distance);
}

static void
add_reel (GString *out, const LbPassSample *sample)
{
  add_number (out, sample->boat.x);
  add_number (out, sample->boat.y);
}

static void
add_line (GString *out, const LbReadings *readings)
{
  add_number (out, readings->line_out);
  add_number (out, readings->hand_tension);
  add_number (out, readings->wire_angle * DEGREES);
}

static void
add_moment (GString *out, const LbPassSample *sample, const LbPassSample *second)
{
  gsize start = out->len;

  add_number (out, sample->time);
  g_string_erase (out, (gssize) start, 1); /* the first comma */
  add_reel (out, sample);
  add_number (out, sample->heading * DEGREES);
  add_number (out, sample->speed);
  add_line (out, &sample->readings);
  add_bodies (out, &sample->readings);
  if (second)
    {
      add_reel (out, second);
      add_line (out, &second->readings);
      add_bodies (out, &second->readings);
      add_number (out, sample->between.distance);
    }
  g_string_append_c (out, '\n');
}

char *
lb_pass_csv (const LbPassRecord *record, double step)
{
  const LbPassRecord *second = lb_pass_record_second (record);
  GString *out = g_string_new (NULL);

  add_headings (out, record);
  for (size_t i = 0; i < lb_pass_n_moments (record, step); i++)
    {
      double time = lb_pass_moment (record, step, i);
      LbPassSample sample, other;

      if (lb_pass_record_at (record, time, &sample))
        add_moment (out, &sample,
                    second && lb_pass_record_at (second, time, &other) ? &other : NULL);
    }
  return g_string_free (out, FALSE);
}
