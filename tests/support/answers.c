/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "answers.h"

#include <stdio.h>
#include <string.h>

#include "test.h"

#define MOST_COLUMNS 64
#define MOST_ROWS 4096
#define LONGEST_LINE 4096

struct Answers
{
  char file[256];
  size_t n_columns;
  size_t n_rows; /* the names of the columns included */
  char **cells;  /* row by row */
};

static char *
copy_text (const char *text)
{
  char *copy = malloc (strlen (text) + 1);

  assert_non_null (copy);
  return strcpy (copy, text);
}

/* Cuts `line` into cells in place and returns how many there are. */
static size_t
cut_line (char *line, char **cells)
{
  size_t n = 0;
  char *from = line;

  line[strcspn (line, "\r\n")] = '\0';
  for (;;)
    {
      char *end;
      bool quoted = *from == '"';

      if (quoted)
        from++;
      end = from + strcspn (from, quoted ? "\"" : ",");
      if (n < MOST_COLUMNS)
        cells[n] = from;
      n++;
      if (quoted && *end == '"')
        *end++ = '\0';
      if (*end != ',')
        return n;
      *end = '\0';
      from = end + 1;
    }
}

static void
add_row (Answers *answers, char *line)
{
  char *cells[MOST_COLUMNS];
  size_t n = cut_line (line, cells);

  if (answers->n_rows == 0)
    {
      assert_true (n <= MOST_COLUMNS);
      answers->n_columns = n;
      answers->cells = calloc (MOST_ROWS * n, sizeof *answers->cells);
      assert_non_null (answers->cells);
    }
  if (n != answers->n_columns)
    fail_msg ("%s: %zu cells in the row that starts \"%s\", not %zu", answers->file, n, line,
              answers->n_columns);
  assert_true (answers->n_rows < MOST_ROWS);
  for (size_t i = 0; i < n; i++)
    answers->cells[answers->n_rows * n + i] = copy_text (cells[i]);
  answers->n_rows++;
}

Answers *
answers_read (const char *file)
{
  const char *folder = getenv ("LB_TEST_SOURCE_DIR");
  char name[4096], line[LONGEST_LINE];
  Answers *answers = calloc (1, sizeof *answers);

  assert_non_null (answers);
  snprintf (answers->file, sizeof answers->file, "%s", file);
  snprintf (name, sizeof name, "%s/answers/%s", folder != NULL ? folder : "tests", file);
  FILE *stream = fopen (name, "r");
  if (stream == NULL)
    fail_msg ("cannot read %s", name);
  while (fgets (line, sizeof line, stream) != NULL)
    {
      assert_true (strlen (line) + 1 < sizeof line);
      if (line[0] != '#' && line[strspn (line, " \r\n")] != '\0')
        add_row (answers, line);
    }
  fclose (stream);
  if (answers->n_rows < 2)
    fail_msg ("%s holds no values", file);
  return answers;
}

void
answers_free (Answers *answers)
{
  if (answers == NULL)
    return;
  for (size_t i = 0; i < answers->n_rows * answers->n_columns; i++)
    free (answers->cells[i]);
  free (answers->cells);
  free (answers);
}

size_t
answers_rows (const Answers *answers)
{
  return answers->n_rows - 1;
}

const char *
answers_text (const Answers *answers, size_t row, const char *column)
{
  assert_true (row + 1 < answers->n_rows);
  for (size_t i = 0; i < answers->n_columns; i++)
    if (strcmp (answers->cells[i], column) == 0)
      return answers->cells[(row + 1) * answers->n_columns + i];
  fail_msg ("%s has no column \"%s\"", answers->file, column);
  return "";
}

bool
answers_has (const Answers *answers, size_t row, const char *column)
{
  return answers_text (answers, row, column)[0] != '\0';
}

double
answers_number (const Answers *answers, size_t row, const char *column)
{
  const char *text = answers_text (answers, row, column);
  char *end;
  double value = strtod (text, &end);

  if (end == text || *end != '\0' || !isfinite (value))
    fail_msg ("%s: \"%s\" in row %zu of column \"%s\" is no number", answers->file, text, row + 1,
              column);
  return value;
}

double
answers_find (const Answers *answers, const char *key_column, const char *key, const char *column)
{
  size_t found = answers->n_rows;

  for (size_t row = 0; row < answers_rows (answers); row++)
    if (strcmp (answers_text (answers, row, key_column), key) == 0)
      {
        if (found != answers->n_rows)
          fail_msg ("%s has \"%s\" twice", answers->file, key);
        found = row;
      }
  if (found == answers->n_rows)
    fail_msg ("%s has no \"%s\"", answers->file, key);
  return answers_number (answers, found, column);
}
