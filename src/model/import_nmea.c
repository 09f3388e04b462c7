/* SPDX-License-Identifier: GPL-3.0-or-later */
/* NMEA 0183 sentences. Those that tell depth (DPT, DBT, DBS) and position (RMC, GGA, GLL) are used,
 * from any talker; VTG and all others are only verified. */
#include "import_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MOST_FIELDS 40
#define FOOT 0.3048
#define FATHOM 1.8288
#define DAY 86400.0
#define DEEPEST 12000.0
#define CHECK_EVERY 4096

typedef struct
{
  const char *text;
  gsize length;
} Field;

typedef struct
{
  LbImporter *importer;
  const LbLogLine *line;
  Field fields[MOST_FIELDS]; /* [0]: talker and formatter */
  int n;
  gboolean has_checksums; /* anywhere in the log */

  double day, last_clock; /* s: midnights passed, and the time of day last seen (-1: none) */
  double last_fix_time;
  gboolean has_fix;
} Nmea;

static guint
hex_digit (char c)
{
  return g_ascii_isxdigit (c) ? (guint) g_ascii_xdigit_value (c) : 99;
}

static gboolean
bad_form (Nmea *nmea, const char *what)
{
  lb_importer_add_bad (nmea->importer, nmea->line->number, LB_BAD_LINE_FORM, _ ("line %zu: %s"),
                       nmea->line->number, what);
  return FALSE;
}

static gboolean
bad_range (Nmea *nmea, const char *what)
{
  lb_importer_add_bad (nmea->importer, nmea->line->number, LB_BAD_LINE_RANGE, _ ("line %zu: %s"),
                       nmea->line->number, what);
  return FALSE;
}

/* Cuts the sentence from its "$" on into fields after verifying its checksum. */
static gboolean
split (Nmea *nmea, const char *start, const char *end)
{
  const char *star, *at = start + 1;
  guint sum = 0;

  while (end > start && g_ascii_isspace (end[-1]))
    end--;
  star = memchr (start, '*', (gsize) (end - start));
  if (star)
    {
      for (const char *c = start + 1; c < star; c++)
        sum ^= (guchar) *c;
      if (end - star != 3 || hex_digit (star[1]) * 16 + hex_digit (star[2]) != sum)
        {
          lb_importer_add_bad (nmea->importer, nmea->line->number, LB_BAD_LINE_CHECKSUM,
                               _ ("line %zu: wrong checksum, should be %02X"), nmea->line->number,
                               sum);
          return FALSE;
        }
      end = star;
    }
  else if (nmea->has_checksums)
    {
      lb_importer_add_bad (nmea->importer, nmea->line->number, LB_BAD_LINE_CHECKSUM,
                           _ ("line %zu: no checksum"), nmea->line->number);
      return FALSE;
    }
  for (nmea->n = 0; nmea->n < MOST_FIELDS; nmea->n++)
    {
      const char *comma = memchr (at, ',', (gsize) (end - at));

      nmea->fields[nmea->n] = (Field){ at, (gsize) ((comma ? comma : end) - at) };
      if (!comma)
        {
          nmea->n++;
          break;
        }
      at = comma + 1;
    }
  return TRUE;
}

/* A number in field `i`; unset for an empty or missing one. FALSE if something else stands there.
 */
static gboolean
number (Nmea *nmea, int i, double *value)
{
  *value = LB_UNSET;
  if (i >= nmea->n || nmea->fields[i].length == 0)
    return TRUE;
  return lb_log_number (nmea->fields[i].text, nmea->fields[i].length, value);
}

static char
letter (const Nmea *nmea, int i)
{
  return i < nmea->n && nmea->fields[i].length == 1 ? nmea->fields[i].text[0] : '\0';
}

/* ---- Depth ---- */

static void
add_depth (Nmea *nmea, LbSoundingKind kind, double depth, LbDepthDatum datum)
{
  if (depth < 0 || depth > DEEPEST)
    bad_range (nmea, _ ("no possible depth"));
  else if (depth > 0) /* 0 is how a sounder says that it has lost the bottom */
    lb_importer_add_sounding (nmea->importer, kind, depth, datum);
}

/* Depth below the transducer, and how far that is below the surface (above 0) or above the keel
 * (below 0). */
static void
read_dpt (Nmea *nmea)
{
  double depth, offset;

  if (!number (nmea, 1, &depth) || !number (nmea, 2, &offset) || nmea->n < 3)
    {
      bad_form (nmea, _ ("a depth that is no number"));
      return;
    }
  if (!lb_is_set (depth))
    return;
  if (lb_is_set (offset) && offset > 0)
    add_depth (nmea, LB_SOUNDING_DPT, depth + offset, LB_DEPTH_OF_SURFACE);
  else
    add_depth (nmea, LB_SOUNDING_DPT, depth, LB_DEPTH_OF_TRANSDUCER);
}

/* The same depth in feet, metres and fathoms; the metres go before the others. */
static void
read_three_depths (Nmea *nmea, LbSoundingKind kind, LbDepthDatum datum)
{
  static const struct
  {
    int field;
    char unit;
    double metres;
  } units[] = { { 3, 'M', 1 }, { 1, 'f', FOOT }, { 5, 'F', FATHOM } };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      double value;

      if (!number (nmea, units[i].field, &value))
        {
          bad_form (nmea, _ ("a depth that is no number"));
          return;
        }
      if (lb_is_set (value) && letter (nmea, units[i].field + 1) == units[i].unit)
        {
          add_depth (nmea, kind, value * units[i].metres, datum);
          return;
        }
    }
}

/* ---- Position ---- */

/* Degrees and minutes, "4807.0380", with its letter. FALSE: not of that form, or none there. */
static gboolean
read_angle (Nmea *nmea, int i, char plus, char minus, double most, double *degrees)
{
  double value, whole, minutes;
  char side = letter (nmea, i + 1);

  if (!number (nmea, i, &value) || !lb_is_set (value) || (side != plus && side != minus))
    return bad_form (nmea, _ ("a position that is none"));
  whole = floor (value / 100);
  minutes = value - 100 * whole;
  *degrees = whole + minutes / 60;
  if (value < 0 || minutes >= 60 || *degrees > most)
    return bad_range (nmea, _ ("no possible position"));
  if (side == minus)
    *degrees = -*degrees;
  return TRUE;
}

/* The time of day, "123519.00", made to go on after midnight. Unset when there is none. */
static double
read_clock (Nmea *nmea, int i)
{
  double value, hours, minutes, seconds;

  if (!number (nmea, i, &value) || !lb_is_set (value) || value < 0)
    return LB_UNSET;
  hours = floor (value / 10000);
  minutes = floor (value / 100) - 100 * hours;
  seconds = value - 10000 * hours - 100 * minutes;
  if (hours > 23 || minutes > 59 || seconds >= 61)
    return LB_UNSET;
  value = 3600 * hours + 60 * minutes + seconds;
  if (nmea->last_clock >= 0 && value < nmea->last_clock - DAY / 2)
    nmea->day += DAY;
  nmea->last_clock = value;
  return nmea->day + value;
}

static void
read_position (Nmea *nmea, int latitude, int clock)
{
  double lat, lon, time;

  if (!read_angle (nmea, latitude, 'N', 'S', 90, &lat)
      || !read_angle (nmea, latitude + 2, 'E', 'W', 180, &lon))
    return;
  time = read_clock (nmea, clock);
  /* RMC and GGA of the same moment are one fix. */
  if (nmea->has_fix && lb_is_set (time) && lb_is_set (nmea->last_fix_time)
      && time <= nmea->last_fix_time)
    return;
  nmea->has_fix = TRUE;
  nmea->last_fix_time = time;
  lb_importer_add_fix (nmea->importer, lat, lon, time);
}

static void
read_gga (Nmea *nmea)
{
  double quality;

  if (!number (nmea, 6, &quality))
    bad_form (nmea, _ ("a quality that is no number"));
  /* 0: no fix; 6 to 8: estimated, typed in, simulated. */
  else if (lb_is_set (quality) && quality >= 1 && quality <= 5)
    read_position (nmea, 2, 1);
}

/* ---- Sentences ---- */

static void
read_sentence (Nmea *nmea)
{
  const Field *address = &nmea->fields[0];
  const char *formatter = address->text + address->length - 3;

  if (address->length != 5 || address->text[0] == 'P')
    nmea->importer->import->ignored++;
  else if (memcmp (formatter, "DPT", 3) == 0)
    read_dpt (nmea);
  else if (memcmp (formatter, "DBT", 3) == 0)
    read_three_depths (nmea, LB_SOUNDING_DBT, LB_DEPTH_OF_TRANSDUCER);
  else if (memcmp (formatter, "DBS", 3) == 0)
    read_three_depths (nmea, LB_SOUNDING_DBS, LB_DEPTH_OF_SURFACE);
  else if (memcmp (formatter, "GGA", 3) == 0)
    read_gga (nmea);
  else if (memcmp (formatter, "RMC", 3) == 0 && letter (nmea, 2) == 'A')
    read_position (nmea, 3, 1);
  else if (memcmp (formatter, "GLL", 3) == 0 && letter (nmea, 6) != 'V')
    read_position (nmea, 1, 5);
  else
    nmea->importer->import->ignored++;
}

/* Where the sentence begins: some logs put a time or a tag block in front. */
static const char *
find_start (const LbLogLine *line)
{
  const char *dollar = memchr (line->text, '$', line->length);

  return dollar ? dollar : memchr (line->text, '!', line->length);
}

static gboolean
any_checksum (const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };

  while (lb_log_line_next (&at, end, &line))
    {
      const char *start = find_start (&line);

      if (start && memchr (start, '*', line.length - (gsize) (start - line.text)))
        return TRUE;
    }
  return FALSE;
}

gboolean
lb_importer_read_nmea (LbImporter *importer, const char *text, gsize length, GError **error)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };
  Nmea nmea = { .importer = importer, .line = &line, .last_clock = -1, .last_fix_time = LB_UNSET };

  nmea.has_checksums = any_checksum (text, length);
  if (!nmea.has_checksums)
    lb_importer_warn (importer,
                      _ ("No sentence has a checksum: what was garbled cannot be found out."));
  while (lb_log_line_next (&at, end, &line))
    {
      const char *start = find_start (&line);

      if (line.number % CHECK_EVERY == 0
          && !lb_importer_go_on (importer, (double) (at - text) / (double) length, error))
        return FALSE;
      if (!start)
        {
          if (line.length > 0)
            bad_form (&nmea, _ ("no sentence"));
          continue;
        }
      if (split (&nmea, start, line.text + line.length))
        read_sentence (&nmea);
    }
  importer->import->lines = line.number;
  return TRUE;
}
