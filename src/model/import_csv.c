/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tables: distance and depth, or latitude, longitude and depth, in any order and with any
 * separator. What is not told by the options is found: the separator and the decimal sign from the
 * first lines, the columns from the heading, or without one from how many there are and what they
 * hold. */
#include "import_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "file_error.h"

#define MOST_COLUMNS 64
#define LOOK_AHEAD 50 /* lines */
#define FOOT 0.3048
#define DEEPEST 12000.0
#define LONGEST_WAY 1e7 /* m */
#define CHECK_EVERY 4096

typedef struct
{
  const char *text;
  gsize length;
} Cell;

typedef struct
{
  LbImporter *importer;
  char separator, decimal;
  int column[LB_N_CSV_COLUMNS]; /* -1: not there */
  double scale;                 /* m for one of the table's units */
  gboolean has_heading, has_places;
  gsize heights; /* depths below zero */
} Table;

/* ---- Cutting a line up ---- */

static Cell
trimmed (const char *text, const char *end)
{
  while (text < end && g_ascii_isspace (*text))
    text++;
  while (end > text && g_ascii_isspace (end[-1]))
    end--;
  if (end - text >= 2 && *text == '"' && end[-1] == '"')
    return (Cell){ text + 1, (gsize) (end - text) - 2 };
  return (Cell){ text, (gsize) (end - text) };
}

/* A blank as the separator stands for any number of them. */
static int
split (const LbLogLine *line, char separator, Cell *cells)
{
  const char *at = line->text, *end = line->text + line->length;
  int n = 0;

  while (separator == ' ' && at < end && g_ascii_isspace (*at))
    at++;
  while (n < MOST_COLUMNS)
    {
      const char *stop = at;
      gboolean quoted = FALSE;

      for (; stop < end && (quoted || *stop != separator); stop++)
        if (*stop == '"')
          quoted = !quoted;
      cells[n++] = trimmed (at, stop);
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

static gboolean
cell_number (const Table *table, const Cell *cell, double *value)
{
  char text[41];

  if (cell->length == 0 || cell->length >= sizeof text)
    return FALSE;
  memcpy (text, cell->text, cell->length);
  if (table->decimal == ',')
    {
      if (memchr (text, '.', cell->length))
        return FALSE;
      for (gsize i = 0; i < cell->length; i++)
        if (text[i] == ',')
          text[i] = '.';
    }
  return lb_log_number (text, cell->length, value);
}

static gboolean
is_remark (const LbLogLine *line)
{
  gsize i = 0;

  while (i < line->length && g_ascii_isspace (line->text[i]))
    i++;
  return i == line->length || line->text[i] == '#';
}

/* ---- Finding out ---- */

/* How many of the first lines hold at least two numbers with that separator and decimal sign. */
static int
count_fitting (const Table *table, const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };
  Cell cells[MOST_COLUMNS];
  int fitting = 0;

  while (line.number < LOOK_AHEAD && lb_log_line_next (&at, end, &line))
    {
      int numbers = 0, n;
      double value;

      if (is_remark (&line))
        continue;
      n = split (&line, table->separator, cells);
      for (int i = 0; i < n; i++)
        numbers += cell_number (table, &cells[i], &value);
      fitting += numbers >= 2;
    }
  return fitting;
}

static void
find_signs (Table *table, const char *text, gsize length)
{
  /* The likelier first: only a better fit replaces it. */
  static const char pairs[][2] = { { ',', '.' },  { ';', '.' },  { ';', ',' },
                                   { '\t', '.' }, { '\t', ',' }, { '|', '.' },
                                   { '|', ',' },  { ' ', '.' },  { ' ', ',' } };
  const LbImportOptions *options = table->importer->options;
  int best = -1;
  Table found = *table;

  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      Table trial = *table;
      int fitting;

      trial.separator = options->separator ? options->separator : pairs[i][0];
      trial.decimal = options->decimal ? options->decimal : pairs[i][1];
      fitting = count_fitting (&trial, text, length);
      if (fitting > best)
        {
          best = fitting;
          found = trial;
        }
    }
  *table = found;
}

/* Whether the heading `cell` says one of the words (parted by "|"). */
static gboolean
says (const Cell *cell, const char *words)
{
  g_autofree char *heading = g_utf8_make_valid (cell->text, (gssize) cell->length);
  g_autofree char *small = g_utf8_strdown (heading, -1);
  g_auto (GStrv) list = g_strsplit (words, "|", -1);

  for (char **word = list; *word; word++)
    if (strstr (small, *word))
      return TRUE;
  return FALSE;
}

static gboolean
says_feet (const Cell *cell)
{
  return says (cell, "feet|foot|(ft|[ft|_ft| ft|-ft") && !says (cell, "(m|[m]|metre|meter");
}

static void
read_heading (Table *table, const Cell *cells, int n)
{
  static const char *const words[LB_N_CSV_COLUMNS] = {
    [LB_CSV_DISTANCE] = "dist|along|chainage|station|way",
    [LB_CSV_DEPTH] = "depth|sounding",
    [LB_CSV_LATITUDE] = "lat",
    [LB_CSV_LONGITUDE] = "lon|lng",
  };

  for (int c = 0; c < LB_N_CSV_COLUMNS; c++)
    for (int i = 0; i < n && table->column[c] < 0; i++)
      if (says (&cells[i], words[c]))
        table->column[c] = i;
  if (table->column[LB_CSV_DEPTH] >= 0 && table->column[LB_CSV_DEPTH] < n
      && table->importer->options->unit == LB_CSV_UNIT_FOUND
      && says_feet (&cells[table->column[LB_CSV_DEPTH]]))
    table->scale = FOOT;
}

/* Without a heading: two columns are distance and depth, three a place and a depth. */
static void
guess_columns (Table *table, int n)
{
  if (n == 2 && table->column[LB_CSV_DISTANCE] < 0 && table->column[LB_CSV_DEPTH] < 0)
    {
      table->column[LB_CSV_DISTANCE] = 0;
      table->column[LB_CSV_DEPTH] = 1;
    }
  else if (n == 3 && table->column[LB_CSV_LATITUDE] < 0 && table->column[LB_CSV_DISTANCE] < 0)
    {
      table->column[LB_CSV_LATITUDE] = 0;
      table->column[LB_CSV_LONGITUDE] = 1;
      table->column[LB_CSV_DEPTH] = 2;
    }
}

/* The first line that is no remark: a heading unless it holds numbers enough. */
static gboolean
find_columns (Table *table, const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };
  Cell cells[MOST_COLUMNS];
  int n, numbers = 0;

  do
    if (!lb_log_line_next (&at, end, &line))
      return FALSE;
  while (is_remark (&line));
  n = split (&line, table->separator, cells);
  for (int i = 0; i < n; i++)
    {
      double value;

      numbers += cell_number (table, &cells[i], &value);
    }
  table->has_heading = numbers < 2;
  if (table->has_heading)
    read_heading (table, cells, n);
  else
    guess_columns (table, n);
  table->has_places = table->column[LB_CSV_LATITUDE] >= 0 && table->column[LB_CSV_LONGITUDE] >= 0
                      && table->column[LB_CSV_DISTANCE] < 0;
  return table->column[LB_CSV_DEPTH] >= 0
         && (table->has_places || table->column[LB_CSV_DISTANCE] >= 0);
}

static void
tell_columns (const Table *table)
{
  const char *unit = table->scale == 1 ? _ ("metres") : _ ("feet");

  /* Translators: %d are numbers of columns, from 1; %s is "metres" or "feet". */
  if (table->has_places)
    table->importer->import->detail = g_strdup_printf (
        _ ("latitude in column %d, longitude in column %d, depth in column %d, in %s"),
        table->column[LB_CSV_LATITUDE] + 1, table->column[LB_CSV_LONGITUDE] + 1,
        table->column[LB_CSV_DEPTH] + 1, unit);
  else
    table->importer->import->detail =
        g_strdup_printf (_ ("distance in column %d, depth in column %d, in %s"),
                         table->column[LB_CSV_DISTANCE] + 1, table->column[LB_CSV_DEPTH] + 1, unit);
}

/* ---- Reading ---- */

static gboolean
value_at (const Table *table, const Cell *cells, int n, LbCsvColumn column, double *value)
{
  int i = table->column[column];

  return i < n && cell_number (table, &cells[i], value);
}

static void
read_row (Table *table, const LbLogLine *line)
{
  LbImporter *importer = table->importer;
  LbRawSounding raw = { { LB_UNSET, 0, LB_UNSET, LB_UNSET, LB_DEPTH_OF_TRANSDUCER },
                        LB_SOUNDING_TABLE };
  LbSounding *s = &raw.sounding;
  Cell cells[MOST_COLUMNS];
  int n = split (line, table->separator, cells);

  if (!value_at (table, cells, n, LB_CSV_DEPTH, &s->depth)
      || (table->has_places ? !value_at (table, cells, n, LB_CSV_LATITUDE, &s->latitude)
                                  || !value_at (table, cells, n, LB_CSV_LONGITUDE, &s->longitude)
                            : !value_at (table, cells, n, LB_CSV_DISTANCE, &s->along)))
    {
      lb_importer_add_bad (importer, line->number, LB_BAD_LINE_FORM,
                           _ ("line %zu: a number is missing"), line->number);
      return;
    }
  s->depth *= table->scale;
  s->along *= table->scale;
  table->heights += s->depth < 0;
  if (fabs (s->depth) > DEEPEST
      || (table->has_places ? fabs (s->latitude) > 90 || fabs (s->longitude) > 180
                            : fabs (s->along) > LONGEST_WAY))
    {
      lb_importer_add_bad (importer, line->number, LB_BAD_LINE_RANGE,
                           _ ("line %zu: no possible place or depth"), line->number);
      return;
    }
  if (table->has_places)
    lb_importer_add_fix (importer, s->latitude, s->longitude, LB_UNSET);
  g_array_append_val (importer->soundings, raw);
}

/* Where all depths are below zero they are heights, counted upward. Where some are, they are bad.
 */
static void
turn_heights (Table *table)
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

gboolean
lb_importer_read_csv (LbImporter *importer, const char *text, gsize length, GError **error)
{
  const LbImportOptions *options = importer->options;
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };
  gboolean heading_passed = FALSE;
  Table table = { .importer = importer, .scale = options->unit == LB_CSV_UNIT_FEET ? FOOT : 1 };

  memcpy (table.column, options->column, sizeof table.column);
  if (memchr (text, '\0', length))
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX, _ ("this is no text"));
      return FALSE;
    }
  find_signs (&table, text, length);
  if (!find_columns (&table, text, length))
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY,
                   _ ("no columns of distance and depth, or of latitude, longitude and depth, were "
                      "found"));
      return FALSE;
    }
  tell_columns (&table);
  while (lb_log_line_next (&at, end, &line))
    {
      if (line.number % CHECK_EVERY == 0
          && !lb_importer_go_on (importer, (double) (at - text) / (double) length, error))
        return FALSE;
      if (is_remark (&line) || (table.has_heading && !heading_passed))
        {
          heading_passed = heading_passed || !is_remark (&line);
          importer->import->ignored++;
          continue;
        }
      heading_passed = TRUE;
      read_row (&table, &line);
    }
  importer->import->lines = line.number;
  turn_heights (&table);
  return TRUE;
}
