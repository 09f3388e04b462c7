/* SPDX-License-Identifier: GPL-3.0-or-later */
/* NMEA 0183 sentences. Those that tell depth (DPT, DBT, DBS) and position (RMC, GGA, GLL) are used,
 * from any talker; VTG and all others are only verified. */
#include "import_nmea.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define FOOT 0.3048
#define FATHOM 1.8288
#define DEEPEST 12000.0
#define CHECK_EVERY 4096

static guint
hex_digit (char c)
{
  return g_ascii_isxdigit (c) ? (guint) g_ascii_xdigit_value (c) : 99;
}

gboolean
lb_nmea_bad_form (LbNmea *nmea, const char *what)
{
  lb_importer_add_bad (nmea->importer, nmea->line->number, LB_BAD_LINE_FORM, _ ("line %zu: %s"),
                       nmea->line->number, what);
  return FALSE;
}

gboolean
lb_nmea_bad_range (LbNmea *nmea, const char *what)
{
  lb_importer_add_bad (nmea->importer, nmea->line->number, LB_BAD_LINE_RANGE, _ ("line %zu: %s"),
                       nmea->line->number, what);
  return FALSE;
}

/* Cuts the sentence from its "$" on into fields after verifying its checksum. */
static gboolean
split (LbNmea *nmea, const char *start, const char *end)
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
  for (nmea->n = 0; nmea->n < LB_NMEA_MOST_FIELDS; nmea->n++)
    {
      const char *comma = memchr (at, ',', (gsize) (end - at));

      nmea->fields[nmea->n] = (LbNmeaField){ at, (gsize) ((comma ? comma : end) - at) };
      if (!comma)
        {
          nmea->n++;
          break;
        }
      at = comma + 1;
    }
  return TRUE;
}

gboolean
lb_nmea_number (const LbNmea *nmea, int i, double *value)
{
  *value = LB_UNSET;
  if (i >= nmea->n || nmea->fields[i].length == 0)
    return TRUE;
  return lb_log_number (nmea->fields[i].text, nmea->fields[i].length, value);
}

char
lb_nmea_letter (const LbNmea *nmea, int i)
{
  return i < nmea->n && nmea->fields[i].length == 1 ? nmea->fields[i].text[0] : '\0';
}

/* ---- Depth ---- */

static guint16
talker (const LbNmea *nmea)
{
  const guchar *address = (const guchar *) nmea->fields[0].text;

  return (guint16) (address[0] << 8 | address[1]);
}

static void
add_depth (LbNmea *nmea, LbSoundingKind kind, double depth, LbDepthDatum datum)
{
  if (depth < 0 || depth > DEEPEST)
    lb_nmea_bad_range (nmea, _ ("no possible depth"));
  else if (depth == 0) /* how a sounder says that it has lost the bottom */
    nmea->importer->import->no_bottom++;
  else
    lb_importer_add_sounding (nmea->importer, kind, talker (nmea), depth, datum);
}

/* Depth below the transducer, and how far that is below the surface (above 0) or above the keel
 * (below 0). */
static void
read_dpt (LbNmea *nmea)
{
  double depth, offset;

  if (!lb_nmea_number (nmea, 1, &depth) || !lb_nmea_number (nmea, 2, &offset)
      || nmea->n < (nmea->has_checksums ? 2 : 3))
    {
      lb_nmea_bad_form (nmea, _ ("a depth that is no number"));
      return;
    }
  if (!lb_is_set (depth))
    nmea->importer->import->no_bottom++;
  else if (lb_is_set (offset) && offset > 0)
    add_depth (nmea, LB_SOUNDING_DPT, depth + offset, LB_DEPTH_OF_SURFACE);
  else
    add_depth (nmea, LB_SOUNDING_DPT, depth, LB_DEPTH_OF_TRANSDUCER);
}

/* The same depth in feet, metres and fathoms; the metres go before the others. */
static void
read_three_depths (LbNmea *nmea, LbSoundingKind kind, LbDepthDatum datum)
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

      if (!lb_nmea_number (nmea, units[i].field, &value))
        {
          lb_nmea_bad_form (nmea, _ ("a depth that is no number"));
          return;
        }
      if (lb_is_set (value) && lb_nmea_letter (nmea, units[i].field + 1) == units[i].unit)
        {
          add_depth (nmea, kind, value * units[i].metres, datum);
          return;
        }
    }
  if (nmea->n < 5)
    lb_nmea_bad_form (nmea, _ ("a depth that is no number"));
  else
    nmea->importer->import->no_bottom++;
}

/* ---- Sentences ---- */

static void
read_sentence (LbNmea *nmea)
{
  const LbNmeaField *address = &nmea->fields[0];
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
    lb_nmea_read_gga (nmea);
  else if (memcmp (formatter, "RMC", 3) == 0)
    lb_nmea_read_rmc (nmea);
  else if (memcmp (formatter, "GLL", 3) == 0)
    lb_nmea_read_gll (nmea);
  else
    nmea->importer->import->ignored++;
}

/* Where the sentence begins: some logs put a time or a tag block in front, and one that was cut off
 * runs into the next. */
static const char *
find_start (const LbLogLine *line)
{
  for (const char *c = line->text + line->length; c > line->text; c--)
    if (c[-1] == '$')
      return c - 1;
  return memchr (line->text, '!', line->length);
}

static gboolean
is_joined (const LbLogLine *line, const char *start)
{
  return memchr (line->text, '$', (gsize) (start - line->text)) != NULL;
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
  LbNmea nmea = { .importer = importer, .line = &line, .clock = -1, .last_fix_time = LB_UNSET };

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
            lb_nmea_bad_form (&nmea, _ ("no sentence"));
          continue;
        }
      if (is_joined (&line, start))
        lb_nmea_bad_form (&nmea, _ ("a sentence is cut off and runs into the next"));
      if (split (&nmea, start, line.text + line.length))
        read_sentence (&nmea);
    }
  importer->import->lines = line.number;
  return TRUE;
}
