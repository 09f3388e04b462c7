/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Positions and times of NMEA 0183. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "import_nmea.h"

#define DAY 86400.0

/* A sentence that is so much older than the last fix comes from a second receiver, or from the same
 * one late; one that is older still begins another log. */
#define LATE 10.0 /* s */

/* ---- Position ---- */

/* Degrees and minutes, "4807.0380", with its letter. FALSE: not of that form, or none there. */
static gboolean
read_angle (LbNmea *nmea, int i, char plus, char minus, double most, double *degrees)
{
  double value, whole, minutes;
  char side = lb_nmea_letter (nmea, i + 1);

  if (!lb_nmea_number (nmea, i, &value) || !lb_is_set (value) || (side != plus && side != minus))
    return lb_nmea_bad_form (nmea, _ ("a position that is none"));
  whole = floor (value / 100);
  minutes = value - 100 * whole;
  *degrees = whole + minutes / 60;
  if (value < 0 || minutes >= 60 || *degrees > most)
    return lb_nmea_bad_range (nmea, _ ("no possible position"));
  if (side == minus)
    *degrees = -*degrees;
  return TRUE;
}

/* ---- Time ---- */

/* "123519.00" as s since midnight; unset when it is none. */
static double
time_of_day (const LbNmea *nmea, int i)
{
  double value, hours, minutes, seconds;

  if (!lb_nmea_number (nmea, i, &value) || !lb_is_set (value) || value < 0)
    return LB_UNSET;
  hours = floor (value / 10000);
  minutes = floor (value / 100) - 100 * hours;
  seconds = value - 10000 * hours - 100 * minutes;
  if (hours > 23 || minutes > 59 || seconds >= 61)
    return LB_UNSET;
  return 3600 * hours + 60 * minutes + seconds;
}

/* "230326" as s since 1970; unset when it is none. Years are of this century: there is no older
 * track to import. */
static double
date (const LbNmea *nmea, int i)
{
  g_autoptr (GDateTime) midnight = NULL;
  double value;
  int whole;

  if (!lb_nmea_number (nmea, i, &value) || !lb_is_set (value) || value < 0 || value > 320000)
    return LB_UNSET;
  whole = (int) value;
  midnight = g_date_time_new_utc (2000 + whole % 100, whole / 100 % 100, whole / 10000, 0, 0, 0);
  return midnight ? (double) g_date_time_to_unix (midnight) : LB_UNSET;
}

/* The first date of the log: what came before it is put on the same days. */
static void
begin_dates (LbNmea *nmea, double day)
{
  GArray *fixes = nmea->importer->fixes;
  double shift = day - nmea->day;

  for (guint i = 0; i < fixes->len; i++)
    g_array_index (fixes, LbFix, i).time += shift;
  nmea->last_fix_time += shift;
  nmea->day = day;
  nmea->dated = TRUE;
}

/* The time in field `i`, made to go on after midnight. A date (field `date_at`, or 0) counts where
 * the clock does not simply go on: that of a receiver which has lost count of the weeks is wrong
 * all along. Unset when there is none. */
static double
read_clock (LbNmea *nmea, int i, int date_at)
{
  double clock = time_of_day (nmea, i), day = date_at ? date (nmea, date_at) : LB_UNSET;
  double passed = nmea->clock < 0 ? 0 : clock - nmea->clock;

  if (!lb_is_set (clock))
    return LB_UNSET;
  if (passed > DAY / 2) /* late, from before midnight */
    return nmea->day - DAY + clock;
  if (passed < -DAY / 2)
    nmea->day += DAY;
  nmea->clock = clock;
  if (lb_is_set (day) && !nmea->dated)
    begin_dates (nmea, day);
  else if (lb_is_set (day) && (passed < -LATE || passed > 3600) && day > nmea->day)
    nmea->day = day;
  return nmea->day + clock;
}

static void
read_position (LbNmea *nmea, int latitude, int clock, int date_at)
{
  double lat, lon, time;

  if (!read_angle (nmea, latitude, 'N', 'S', 90, &lat)
      || !read_angle (nmea, latitude + 2, 'E', 'W', 180, &lon))
    return;
  time = read_clock (nmea, clock, date_at);
  /* RMC and GGA of the same moment are one fix. */
  if (time <= nmea->last_fix_time && time > nmea->last_fix_time - LATE)
    return;
  nmea->last_fix_time = time;
  lb_importer_add_fix (nmea->importer, lat, lon, time);
}

/* ---- Sentences ---- */

/* The mode that newer receivers add: estimated, typed in, simulated or none is no position. */
static gboolean
is_measured (const LbNmea *nmea, int mode)
{
  char letter = lb_nmea_letter (nmea, mode);

  return letter == '\0' || !strchr ("EMSN", letter);
}

void
lb_nmea_read_rmc (LbNmea *nmea)
{
  if (lb_nmea_letter (nmea, 2) == 'A' && is_measured (nmea, 12))
    read_position (nmea, 3, 1, 9);
  else if (nmea->n < 10)
    lb_nmea_bad_form (nmea, _ ("a position that is none"));
  else
    nmea->importer->import->no_fix++;
}

void
lb_nmea_read_gga (LbNmea *nmea)
{
  double quality;

  if (!lb_nmea_number (nmea, 6, &quality))
    lb_nmea_bad_form (nmea, _ ("a quality that is no number"));
  /* 0: no fix; 6 to 8: estimated, typed in, simulated. */
  else if (quality >= 1 && quality <= 5)
    read_position (nmea, 2, 1, 0);
  else if (nmea->n < 7)
    lb_nmea_bad_form (nmea, _ ("a position that is none"));
  else
    nmea->importer->import->no_fix++;
}

void
lb_nmea_read_gll (LbNmea *nmea)
{
  if (lb_nmea_letter (nmea, 6) == 'V' || !is_measured (nmea, 7))
    nmea->importer->import->no_fix++;
  else
    read_position (nmea, 1, 5, 0);
}
