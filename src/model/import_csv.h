/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table while it is being read. Internal to the model. */
#pragma once

#include "import_private.h"

#define LB_CSV_MOST_COLUMNS 64

typedef struct
{
  const char *text;
  gsize length;
} LbCsvCell;

/* What a number in a column stands for. */
typedef struct
{
  double metres;
  gboolean is_us; /* feet and their kin */
} LbCsvScale;

typedef struct
{
  LbImporter *importer;
  char separator, decimal;
  int column[LB_N_CSV_COLUMNS];       /* -1: not there */
  LbCsvScale scale[LB_CSV_DEPTH + 1]; /* of distance and depth */
  gboolean has_places;
  gsize first_row; /* the line it stands in; what is before are headings and remarks */
  gsize heights;   /* depths below zero */
} LbTable;

/* The cells of a line, with blanks and quotes taken off; how many. A blank as the separator stands
 * for any number of them. */
int lb_csv_split (const LbLogLine *line, char separator, LbCsvCell *cells);

/* The number in a cell, as it stands. */
gboolean lb_csv_number (const LbTable *table, LbCsvCell cell, double *value);

/* A length of the column of distance or of depth, which may bear its own unit ("4.5 m", "12 ft"),
 * in m. */
gboolean lb_csv_length (const LbTable *table, LbCsvColumn column, LbCsvCell cell, double *metres);

/* The unit that a heading in lower-case letters names; FALSE when it names none. */
gboolean lb_csv_heading_scale (const char *heading, LbCsvScale *scale);

/* Takes a unit off the cell's end and puts it into `scale`, if there is one. */
void lb_csv_take_unit (LbCsvCell *cell, LbCsvScale *scale);

/* "feet", translated. */
const char *lb_csv_unit_name (LbCsvScale scale);

/* Degrees, which may bear a letter ("48.1173 N", "W 11.5"). */
gboolean lb_csv_angle (const LbTable *table, LbCsvCell cell, double *degrees);

/* Whether the line is empty or a remark ("# ..."). */
gboolean lb_csv_is_remark (const LbLogLine *line);

/* Finds out separator, decimal sign, columns, unit and first row, as far as the options leave them
 * open. FALSE if the columns are not there. */
gboolean lb_csv_find (LbTable *table, const char *text, gsize length);
