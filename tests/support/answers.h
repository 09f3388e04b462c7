/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads the reference values of tests/answers/.
 *
 * A file is comma-separated text: lines that start with "#" say what the values are, where they
 * come from and how far that was verified; the first other line names the columns. A cell with a
 * comma in it stands in double quotes. An empty cell is a value that is not known.
 *
 * Whatever goes wrong (no such file, no such column, a cell that is no number) fails the running
 * test. */
#pragma once

#include <stdbool.h>
#include <stddef.h>

typedef struct Answers Answers;

/* Reads tests/answers/`file`. Free with answers_free(). */
Answers *answers_read (const char *file);
void answers_free (Answers *answers);

/* Rows below the names of the columns. */
size_t answers_rows (const Answers *answers);

/* A cell as it stands, "" when empty. Owned by the answers. */
const char *answers_text (const Answers *answers, size_t row, const char *column);

/* Whether the cell holds anything. */
bool answers_has (const Answers *answers, size_t row, const char *column);

/* A cell that must be a number. */
double answers_number (const Answers *answers, size_t row, const char *column);

/* The number in `column` of the one row that has `key` in `key_column`. */
double
answers_find (const Answers *answers, const char *key_column, const char *key, const char *column);
