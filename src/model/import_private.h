/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the readers of logs share. Internal to the model. */
#pragma once

#include "import.h"

/* Where the boat was. */
typedef struct
{
  double latitude, longitude; /* degrees */
  double time;                /* s, from any start; falls where an older log begins; unset: none */
  gsize depths_before;        /* soundings in the log before this fix */
} LbFix;

typedef enum
{
  LB_SOUNDING_TABLE, /* a table's, a track point's */
  LB_SOUNDING_DBS,   /* below the surface */
  LB_SOUNDING_DPT,
  LB_SOUNDING_DBT,
  LB_N_SOUNDING_KINDS,
} LbSoundingKind;

typedef struct
{
  LbSounding sounding;
  LbSoundingKind kind;
  guint16 talker; /* of a sentence: its two letters */
} LbRawSounding;

/* A log while it is being read. */
typedef struct
{
  LbImport *import;
  const LbImportOptions *options;
  GArray *fixes;     /* LbFix */
  GArray *soundings; /* LbRawSounding, as they came */
  LbImportProgress progress;
  gpointer progress_data;
  GCancellable *cancellable;
} LbImporter;

/* One line of the text, without its end. */
typedef struct
{
  const char *text;
  gsize length;
  gsize number; /* from 1 */
} LbLogLine;

/* Steps to the next line; FALSE at the end. `*at` starts at the text's beginning, line->number at
 * 0. */
gboolean lb_log_line_next (const char **at, const char *end, LbLogLine *line);

/* Steps over a mark of byte order, turns UTF-16 and UTF-32 into UTF-8 (`*converted`, to be freed,
 * then holds the text) and refuses what is no text. */
gboolean lb_log_take_text (const char **text, gsize *length, char **converted, GError **error);

LbImportFormat lb_log_find_format (const char *text, gsize length);

/* Reports how far it is; FALSE with an error when cancelled. */
gboolean lb_importer_go_on (LbImporter *importer, double share, GError **error);

void
lb_importer_add_bad (LbImporter *importer, gsize line, LbBadLineKind kind, const char *format, ...)
    G_GNUC_PRINTF (4, 5);

void lb_importer_add_sounding (
    LbImporter *importer, LbSoundingKind kind, guint16 talker, double depth, LbDepthDatum datum);

void lb_importer_add_fix (LbImporter *importer, double latitude, double longitude, double time);

/* The words of the message may leave out the number (translations of one thing and of many). */
void lb_importer_warn (LbImporter *importer, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* A whole decimal number with a point, of at most 40 characters; FALSE for anything else. */
gboolean lb_log_number (const char *text, gsize length, double *value);

/* The readers. FALSE with an error when cancelled or when the text is not of that kind at all. */
gboolean lb_importer_read_nmea (LbImporter *importer, const char *text, gsize length, GError **e);
gboolean lb_importer_read_gpx (LbImporter *importer, const char *text, gsize length, GError **e);
gboolean lb_importer_read_csv (LbImporter *importer, const char *text, gsize length, GError **e);

/* Chooses among soundings of many kinds, lays them along the track and sorts them. FALSE with an
 * error when that cannot be worked out. */
gboolean lb_importer_place (LbImporter *importer, GError **error);
