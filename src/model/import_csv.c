/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tables: distance and depth, or latitude, longitude and depth, in any order and with any
 * separator. Where there are both, the distance counts. */
#include "import_csv.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "file_error.h"

#define DEEPEST 12000.0
#define LONGEST_WAY 1e7 /* m */
#define CHECK_EVERY 4096
#define SHOWN_LENGTH 60

/* ---- Cells ---- */

static LbCsvCell
trimmed (const char *text, const char *end)
{
  while (text < end && g_ascii_isspace (*text))
    text++;
  while (end > text && g_ascii_isspace (end[-1]))
    end--;
  return (LbCsvCell){ text, (gsize) (end - text) };
}

static LbCsvCell
unquoted (LbCsvCell cell)
{
  if (cell.length >= 2 && cell.text[0] == '"' && cell.text[cell.length - 1] == '"')
    return trimmed (cell.text + 1, cell.text + cell.length - 1);
  return cell;
}

int
lb_csv_split (const LbLogLine *line, char separator, LbCsvCell *cells)
{
  const char *at = line->text, *end = line->text + line->length;
  int n = 0;

  while (separator == ' ' && at < end && g_ascii_isspace (*at))
    at++;
  while (n < LB_CSV_MOST_COLUMNS)
    {
      const char *stop = at;
      gboolean quoted = FALSE;

      for (; stop < end && (quoted || *stop != separator); stop++)
        if (*stop == '"')
          quoted = !quoted;
      cells[n++] = unquoted (trimmed (at, stop));
      if (stop >= end)
        break;
      at = stop + 1;
      while (separator == ' ' && at < end && g_ascii_isspace (*at))
        at++;
      if (separator == ' ' && at >= end)
        break;
    }
  return n;
}

gboolean
lb_csv_number (const LbTable *table, LbCsvCell cell, double *value)
{
  char text[41];

  if (cell.length == 0 || cell.length >= sizeof text)
    return FALSE;
  memcpy (text, cell.text, cell.length);
  if (table->decimal == ',')
    {
      if (memchr (text, '.', cell.length))
        return FALSE;
      for (gsize i = 0; i < cell.length; i++)
        if (text[i] == ',')
          text[i] = '.';
    }
  return lb_log_number (text, cell.length, value);
}

gboolean
lb_csv_length (const LbTable *table, LbCsvColumn column, LbCsvCell cell, double *metres)
{
  LbCsvScale scale = table->scale[column];

  lb_csv_take_unit (&cell, &scale);
  if (!lb_csv_number (table, cell, metres))
    return FALSE;
  *metres *= scale.metres;
  return TRUE;
}

gboolean
lb_csv_angle (const LbTable *table, LbCsvCell cell, double *degrees)
{
  static const char *const sides = "NESWnesw";
  char side = '\0';

  if (cell.length > 1 && strchr (sides, cell.text[0]))
    {
      side = cell.text[0];
      cell = trimmed (cell.text + 1, cell.text + cell.length);
    }
  else if (cell.length > 1 && strchr (sides, cell.text[cell.length - 1]))
    {
      side = cell.text[cell.length - 1];
      cell = trimmed (cell.text, cell.text + cell.length - 1);
    }
  if (!lb_csv_number (table, cell, degrees))
    return FALSE;
  if (g_ascii_toupper (side) == 'S' || g_ascii_toupper (side) == 'W')
    *degrees = -*degrees;
  return TRUE;
}

gboolean
lb_csv_is_remark (const LbLogLine *line)
{
  gsize i = 0;

  while (i < line->length && g_ascii_isspace (line->text[i]))
    i++;
  return i == line->length || line->text[i] == '#';
}

/* ---- Reading ---- */

static void
tell_columns (const LbTable *table)
{
  const int *column = table->column;
  const char *way = lb_csv_unit_name (table->scale[LB_CSV_DISTANCE]);
  const char *deep = lb_csv_unit_name (table->scale[LB_CSV_DEPTH]);
  char **detail = &table->importer->import->detail;

  /* Translators: %d are numbers of columns, from 1; %s is "metres", "feet" and so on. */
  if (table->has_places)
    *detail = g_strdup_printf (
        _ ("latitude in column %d, longitude in column %d, depth in column %d, in %s"),
        column[LB_CSV_LATITUDE] + 1, column[LB_CSV_LONGITUDE] + 1, column[LB_CSV_DEPTH] + 1, deep);
  else if (table->scale[LB_CSV_DISTANCE].metres == table->scale[LB_CSV_DEPTH].metres)
    *detail = g_strdup_printf (_ ("distance in column %d, depth in column %d, in %s"),
                               column[LB_CSV_DISTANCE] + 1, column[LB_CSV_DEPTH] + 1, deep);
  else
    *detail = g_strdup_printf (_ ("distance in column %d, in %s, depth in column %d, in %s"),
                               column[LB_CSV_DISTANCE] + 1, way, column[LB_CSV_DEPTH] + 1, deep);
}

static gboolean
read_cells (const LbTable *table, const LbCsvCell *cells, int n, LbSounding *s)
{
  for (int c = 0; c < LB_N_CSV_COLUMNS; c++)
    {
      double *const values[] = { &s->along, &s->depth, &s->latitude, &s->longitude };
      gboolean is_angle = c == LB_CSV_LATITUDE || c == LB_CSV_LONGITUDE;
      int i = table->column[c];

      if (c != LB_CSV_DEPTH && is_angle != table->has_places)
        continue;
      if (i >= n)
        return FALSE;
      if (is_angle ? !lb_csv_angle (table, cells[i], values[c])
                   : !lb_csv_length (table, (LbCsvColumn) c, cells[i], values[c]))
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_possible (const LbTable *table, const LbSounding *s)
{
  if (table->has_places && (fabs (s->latitude) > 90 || fabs (s->longitude) > 180))
    return FALSE;
  return fabs (s->depth) <= DEEPEST && (table->has_places || fabs (s->along) <= LONGEST_WAY);
}

static void
read_row (LbTable *table, const LbLogLine *line)
{
  LbImporter *importer = table->importer;
  LbRawSounding raw = { { LB_UNSET, 0, LB_UNSET, LB_UNSET, LB_DEPTH_OF_TRANSDUCER },
                        LB_SOUNDING_TABLE,
                        0 };
  LbSounding *s = &raw.sounding;
  LbCsvCell cells[LB_CSV_MOST_COLUMNS];
  int n = lb_csv_split (line, table->separator, cells);

  if (!read_cells (table, cells, n, s))
    {
      lb_importer_add_bad (importer, line->number, LB_BAD_LINE_FORM,
                           _ ("line %zu: a number is missing"), line->number);
      return;
    }
  if (!is_possible (table, s))
    {
      lb_importer_add_bad (importer, line->number, LB_BAD_LINE_RANGE,
                           _ ("line %zu: no possible place or depth"), line->number);
      return;
    }
  table->heights += s->depth < 0;
  if (table->has_places)
    lb_importer_add_fix (importer, s->latitude, s->longitude, LB_UNSET);
  g_array_append_val (importer->soundings, raw);
}

/* Where all depths are below zero they are heights, counted upward. Where only some are, the
 * profile leaves those out as depths that no bed has. */
static void
turn_heights (LbTable *table)
{
  GArray *soundings = table->importer->soundings;
  gboolean all = table->heights > 0 && table->heights == soundings->len;

  if (all)
    lb_importer_warn (table->importer,
                      _ ("All depths are below zero: they were taken as heights and turned."));
  for (guint i = 0; i < soundings->len; i++)
    {
      LbSounding *s = &g_array_index (soundings, LbRawSounding, i).sounding;

      if (all)
        s->depth = -s->depth;
    }
}

/* Of the first line that is no remark what there is room for, so that the user sees what was looked
 * at. */
static char *
dup_first_line (const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };
  g_autofree char *valid = NULL;
  char *shown;

  while (lb_log_line_next (&at, end, &line) && lb_csv_is_remark (&line))
    ;
  valid = g_utf8_make_valid (line.text, (gssize) line.length);
  shown = g_utf8_strlen (valid, -1) > SHOWN_LENGTH ? g_utf8_substring (valid, 0, SHOWN_LENGTH)
                                                   : g_steal_pointer (&valid);
  return g_strdelimit (shown, "\t\v\f\033", ' ');
}

static void
refuse_columns (const char *text, gsize length, GError **error)
{
  g_autofree char *line = dup_first_line (text, length);

  /* Translators: %s is the first line of a file. */
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY,
               _ ("no columns of distance and depth, or of latitude, longitude and depth, were "
                  "found; it begins with “%s”"),
               line);
}

gboolean
lb_importer_read_csv (LbImporter *importer, const char *text, gsize length, GError **error)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };
  LbTable table = { .importer = importer };

  if (memchr (text, '\0', length))
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX, _ ("this is no text"));
      return FALSE;
    }
  if (!lb_csv_find (&table, text, length))
    {
      refuse_columns (text, length, error);
      return FALSE;
    }
  tell_columns (&table);
  while (lb_log_line_next (&at, end, &line))
    {
      if (line.number % CHECK_EVERY == 0
          && !lb_importer_go_on (importer, (double) (at - text) / (double) length, error))
        return FALSE;
      if (line.number < table.first_row || lb_csv_is_remark (&line))
        importer->import->ignored++;
      else
        read_row (&table, &line);
    }
  importer->import->lines = line.number;
  turn_heights (&table);
  return TRUE;
}
