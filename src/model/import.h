/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A sounder's or a receiver's log, read and made into a bed profile.
 *
 * Three kinds of file are told apart by what is in them: NMEA 0183 sentences, GPX tracks with a
 * depth in the points' extensions, and tables (CSV) of distance and depth or of latitude, longitude
 * and depth. Text in UTF-16 or UTF-32 is told by the mark at its start. What cannot be used is
 * counted and told, never guessed. Numbers are read with a point (or in a table also with a comma)
 * as the decimal sign, whatever the user's language.
 *
 * Along the track means: the way the boat went, from one fix to the next on the WGS 84 ellipsoid, a
 * new leg being begun only when the boat has gone LB_IMPORT_LEG metres, so that a receiver's jitter
 * adds no way to a boat that creeps. A boat that keeps within 8 m for two minutes lies still, and
 * goes no way while it swings. Across a gap between fixes the way is the straight one.
 *
 * A boat that turns back (by 115 degrees or more, within 60 m) begins a new pass, and the bed is
 * that of the longest pass alone: no stretch is in it twice, and it has one direction. A warning
 * tells how often the boat turned, and `other_passes` counts the soundings left out. */
#pragma once

#include <gio/gio.h>

#include "setup.h"
#include "units.h"

G_BEGIN_DECLS

typedef enum
{
  LB_IMPORT_NMEA,
  LB_IMPORT_GPX,
  LB_IMPORT_CSV,
} LbImportFormat;

/* Why a line was not used. */
typedef enum
{
  LB_BAD_LINE_CHECKSUM, /* wrong, or missing though others have one */
  LB_BAD_LINE_FORM,     /* cut off, or not of the form it should have */
  LB_BAD_LINE_RANGE,    /* a latitude of 95 degrees, a depth below zero */
  LB_N_BAD_LINES,
} LbBadLineKind;

typedef struct
{
  gsize line; /* from 1 */
  LbBadLineKind kind;
  char *reason; /* one translated line */
} LbBadLine;

/* The columns of a table. */
typedef enum
{
  LB_CSV_DISTANCE,
  LB_CSV_DEPTH,
  LB_CSV_LATITUDE,
  LB_CSV_LONGITUDE,
  LB_N_CSV_COLUMNS,
} LbCsvColumn;

#define LB_CSV_COLUMN_FOUND (-1) /* by the heading, or by what stands in it */

typedef enum
{
  LB_CSV_UNIT_FOUND, /* by the heading, else metres */
  LB_CSV_UNIT_METRES,
  LB_CSV_UNIT_FEET,
} LbCsvUnit;

typedef struct
{
  /* Of tables; the zero of a char: found. */
  char separator;
  char decimal;
  int column[LB_N_CSV_COLUMNS]; /* from 0, or LB_CSV_COLUMN_FOUND */
  LbCsvUnit unit;               /* of distance and depth */

  /* Of the profile. */
  gboolean boat_went_upstream; /* what was logged first lies furthest downstream */
  double transducer_depth;     /* m below the surface, for depths counted from the transducer */
  double spike_limit;          /* m off the median of its near neighbours; 0: nothing is a spike */
  double tolerance;            /* m that the reduced profile may be off */
  gsize most_points;           /* of the reduced profile, 2 to LB_MAX_BED_POINTS */
  double from, to;             /* m along the track: only this stretch; `to` 0: all */
} LbImportOptions;

/* Its limits are round numbers in `units`. */
LbImportOptions lb_import_options_default (LbUnits units);

/* What a depth was counted from. */
typedef enum
{
  LB_DEPTH_OF_SURFACE,
  LB_DEPTH_OF_TRANSDUCER,
} LbDepthDatum;

typedef struct
{
  double along;               /* m along the track; unset where there is no fix near enough */
  double depth;               /* m, from the datum */
  double latitude, longitude; /* degrees; unset: not known */
  LbDepthDatum datum;
} LbSounding;

typedef struct
{
  LbImportFormat format;
  char *detail;  /* translated: "columns 1 (latitude), 2 (longitude), 3 (depth) in feet" */
  gsize lines;   /* of a GPX file: its track points */
  gsize ignored; /* sound sentences that say nothing of depth or position, headings, remarks */
  gsize bad[LB_N_BAD_LINES];
  GArray *first_bad;   /* LbBadLine, the first LB_IMPORT_FIRST_BAD */
  gsize fixes;         /* good positions */
  gsize no_fix;        /* sentences of a receiver that had none */
  gsize odd_fixes;     /* positions that no boat can have reached, left out */
  gsize no_bottom;     /* sentences of a sounder that had lost the bottom */
  gsize unused_depths; /* soundings of a second kind or talker (DBT beside DPT) */
  gsize passes;        /* stretches between turns; 0: no track */
  gsize other_passes;  /* soundings of passes that are not the longest */
  gsize unplaced;      /* soundings without a fix near enough */
  gsize gaps;          /* stretches without fixes */
  double duration;     /* s, of all passes; unset: no times */
  double length;       /* m of the pass that is used */
  double track_length; /* m of all passes, with the gaps */
  gboolean has_transducer_depths;
  GArray *soundings;   /* LbSounding, by `along`; those not placed are left out */
  GPtrArray *warnings; /* translated lines */
} LbImport;

#define LB_IMPORT_FIRST_BAD 20
#define LB_IMPORT_LEG 3.0          /* m */
#define LB_IMPORT_LONGEST_GAP 15.0 /* s between fixes that depths are still placed in, */
#define LB_IMPORT_WIDEST_GAP 50.0  /* and m */
#define LB_IMPORT_LARGEST_FILE (2000 * 1024 * 1024LL)

/* Called from the reading thread with a share of 0 to 1. */
typedef void (*LbImportProgress) (double share, gpointer data);

/* Reads `file` here and now. `options` NULL: the defaults. NULL with an error when nothing in it
 * can be used (LB_FILE_ERROR), or when cancelled (G_IO_ERROR_CANCELLED). (transfer full) */
LbImport *lb_import_read (GFile *file,
                          const LbImportOptions *options,
                          LbImportProgress progress,
                          gpointer progress_data,
                          GCancellable *cancellable,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same from memory. */
LbImport *lb_import_parse (const char *text,
                           gsize length,
                           const LbImportOptions *options,
                           LbImportProgress progress,
                           gpointer progress_data,
                           GCancellable *cancellable,
                           GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same on a thread of its own; `callback` runs in the caller's main context. The progress is
 * still called from the thread. */
void lb_import_read_async (GFile *file,
                           const LbImportOptions *options,
                           LbImportProgress progress,
                           gpointer progress_data,
                           GCancellable *cancellable,
                           GAsyncReadyCallback callback,
                           gpointer data);
LbImport *lb_import_read_finish (GAsyncResult *result, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The first lines of a file that is taken for a table, for a person to say how it is to be read,
 * with "⇥" for a tab; NULL for any other file, and for one that is no text. (transfer full) */
char *lb_import_dup_table_start (GFile *file) G_GNUC_WARN_UNUSED_RESULT;

void lb_import_free (LbImport *import);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbImport, lb_import_free)

/* What was read, in a few translated lines for a person. (transfer full) */
char *lb_import_dup_summary (const LbImport *import);

/* A bed as points, x rising downstream from 0. */
typedef struct
{
  gsize n;
  double x[LB_MAX_BED_POINTS];     /* m */
  double depth[LB_MAX_BED_POINTS]; /* m */
  gsize used;                      /* soundings that went in */
  gsize spikes;                    /* taken out */
  gsize out_of_range;              /* depths that no bed of this program has */
  double off;        /* m, the most that a cleaned mean is off the straight lines between points */
  double widest_gap; /* m, the longest stretch without a depth; the bed is guessed there */
} LbBedProfile;

/* Cleans and reduces the soundings. Where several lie within a tenth of a metre (or of a five
 * thousandth of the track) they count as their mean. FALSE with an LB_FILE_ERROR when fewer than
 * two places are left, or when they span more than LB_IMPORT_LONGEST_BED. */
#define LB_IMPORT_LONGEST_BED 10000.0 /* m, as far as the bed points of a rig file go */
gboolean lb_import_profile (const LbImport *import,
                            const LbImportOptions *options,
                            LbBedProfile *profile,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
