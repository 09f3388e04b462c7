/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Finds out how a table is written: the separator and the decimal sign from the first lines, the
 * columns from the heading, or without one from what the first row holds. */
#include <math.h>
#include <string.h>

#include "import_csv.h"

#define LOOK_AHEAD 50 /* lines */
#define METRES ((LbCsvScale){ 1, FALSE })
#define FEET ((LbCsvScale){ 0.3048, TRUE })

/* ---- Separator and decimal sign ---- */

static int
count_numbers (const LbTable *table, const LbCsvCell *cells, int n, int *numeric)
{
  int numbers = 0;

  for (int i = 0; i < n; i++)
    {
      double value;

      if (lb_csv_length (table, LB_CSV_DEPTH, cells[i], &value)
          || lb_csv_angle (table, cells[i], &value))
        numeric[numbers++] = i;
    }
  return numbers;
}

/* How many of the first lines hold at least two numbers with that separator and decimal sign. */
static int
count_fitting (const LbTable *table, const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };
  LbCsvCell cells[LB_CSV_MOST_COLUMNS];
  int numeric[LB_CSV_MOST_COLUMNS], fitting = 0;

  while (line.number < LOOK_AHEAD && lb_log_line_next (&at, end, &line))
    if (!lb_csv_is_remark (&line))
      fitting +=
          count_numbers (table, cells, lb_csv_split (&line, table->separator, cells), numeric) >= 2;
  return fitting;
}

static void
find_signs (LbTable *table, const char *text, gsize length)
{
  /* Only a better fit replaces an earlier one. The comma stands after what is never in a number:
   * "0,5;4,0" would hold two numbers between commas, too. */
  static const char pairs[][2] = { { ';', '.' },  { ';', ',' }, { '\t', '.' },
                                   { '\t', ',' }, { '|', '.' }, { '|', ',' },
                                   { ',', '.' },  { ' ', '.' }, { ' ', ',' } };
  const LbImportOptions *options = table->importer->options;
  int best = -1;
  LbTable found = *table;

  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      LbTable trial = *table;
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

/* ---- Headings ---- */

/* Whether `text` holds one of the words, which are parted by "|"; one after "^" only where no
 * letter stands before it ("^lon" is not in "along"). */
static gboolean
says (const char *text, const char *words)
{
  g_auto (GStrv) list = g_strsplit (words, "|", -1);

  for (char **word = list; *word; word++)
    {
      gboolean begins = **word == '^';
      const char *at = text;

      while ((at = strstr (at, *word + begins)))
        {
          if (!begins || at == text || !g_ascii_isalpha (at[-1]))
            return TRUE;
          at++;
        }
    }
  return FALSE;
}

static gboolean
is_complete (LbTable *table)
{
  table->has_places = table->column[LB_CSV_LATITUDE] >= 0 && table->column[LB_CSV_LONGITUDE] >= 0
                      && table->column[LB_CSV_DISTANCE] < 0;
  return table->column[LB_CSV_DEPTH] >= 0
         && (table->has_places || table->column[LB_CSV_DISTANCE] >= 0);
}

/* In lower-case letters, with what is written as "DepthFt" in two words. */
static char *
dup_words (LbCsvCell cell)
{
  g_autofree char *valid = g_utf8_make_valid (cell.text, (gssize) cell.length);
  g_autoptr (GString) words = g_string_new (NULL);

  for (const char *at = valid; *at; at++)
    {
      if (at > valid && g_ascii_isupper (*at) && g_ascii_islower (at[-1]))
        g_string_append_c (words, ' ');
      g_string_append_c (words, *at);
    }
  return g_utf8_strdown (words->str, -1);
}

/* Units stand in the headings of their columns. A distance that names none goes with the depth. */
static void
read_units (LbTable *table, const LbCsvCell *cells)
{
  gboolean named[LB_CSV_DEPTH + 1] = { FALSE };

  if (table->importer->options->unit != LB_CSV_UNIT_FOUND)
    return;
  for (int c = 0; c <= LB_CSV_DEPTH; c++)
    if (table->column[c] >= 0)
      {
        g_autofree char *words = dup_words (cells[table->column[c]]);

        named[c] = lb_csv_heading_scale (words, &table->scale[c]);
      }
  if (named[LB_CSV_DEPTH] && !named[LB_CSV_DISTANCE])
    table->scale[LB_CSV_DISTANCE] = table->scale[LB_CSV_DEPTH].is_us ? FEET : METRES;
}

static void
read_heading (LbTable *table, const LbCsvCell *cells, int n)
{
  static const char *const names[LB_N_CSV_COLUMNS] = {
    [LB_CSV_DISTANCE] = "dist|along|chainage|^station",
    [LB_CSV_DEPTH] = "depth|sounding",
    [LB_CSV_LATITUDE] = "^lat|latitude",
    [LB_CSV_LONGITUDE] = "^lon|^lng|longitude",
  };

  for (int i = 0; i < n; i++)
    {
      g_autofree char *words = dup_words (cells[i]);

      for (int c = 0; c < LB_N_CSV_COLUMNS; c++)
        if (table->column[c] < 0 && says (words, names[c]))
          table->column[c] = i;
    }
  if (is_complete (table))
    read_units (table, cells);
}

/* ---- Columns ---- */

/* By a row without a heading: two numbers are distance and depth, three a place and a depth. A row
 * under a heading that was not understood is left to the user. */
static void
guess_columns (LbTable *table, const LbCsvCell *cells, const int *numeric, int numbers)
{
  double latitude, longitude;

  if (table->column[LB_CSV_DISTANCE] >= 0 || table->column[LB_CSV_DEPTH] >= 0
      || table->column[LB_CSV_LATITUDE] >= 0)
    return;
  if (numbers == 2)
    {
      table->column[LB_CSV_DISTANCE] = numeric[0];
      table->column[LB_CSV_DEPTH] = numeric[1];
    }
  else if (numbers == 3 && lb_csv_angle (table, cells[numeric[0]], &latitude)
           && lb_csv_angle (table, cells[numeric[1]], &longitude) && fabs (latitude) <= 90
           && fabs (longitude) <= 180)
    {
      table->column[LB_CSV_LATITUDE] = numeric[0];
      table->column[LB_CSV_LONGITUDE] = numeric[1];
      table->column[LB_CSV_DEPTH] = numeric[2];
    }
}

/* Down to the heading that names the columns, or to the first row. Other lines may stand before: a
 * program's name, the day, the river. */
static gboolean
find_columns (LbTable *table, const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  gboolean told = is_complete (table);
  LbLogLine line = { 0 };
  int n_before = 0;

  table->first_row = 1;
  while (line.number < LOOK_AHEAD && lb_log_line_next (&at, end, &line))
    {
      LbCsvCell cells[LB_CSV_MOST_COLUMNS];
      int numeric[LB_CSV_MOST_COLUMNS];
      int n = lb_csv_split (&line, table->separator, cells);
      int numbers = lb_csv_is_remark (&line) ? 0 : count_numbers (table, cells, n, numeric);
      LbTable trial = *table;

      if (numbers >= 2)
        {
          table->first_row = line.number;
          if (n != n_before)
            guess_columns (table, cells, numeric, numbers);
          return is_complete (table);
        }
      if (told || lb_csv_is_remark (&line))
        continue;
      n_before = n;
      read_heading (&trial, cells, n);
      if (is_complete (&trial))
        {
          *table = trial;
          table->first_row = line.number + 1;
          return TRUE;
        }
    }
  return told;
}

gboolean
lb_csv_find (LbTable *table, const char *text, gsize length)
{
  memcpy (table->column, table->importer->options->column, sizeof table->column);
  table->scale[LB_CSV_DISTANCE] = table->scale[LB_CSV_DEPTH] =
      table->importer->options->unit == LB_CSV_UNIT_FEET ? FEET : METRES;
  find_signs (table, text, length);
  return find_columns (table, text, length);
}
