/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A sentence of NMEA 0183, cut up. Internal to the model. */
#pragma once

#include "import_private.h"

#define LB_NMEA_MOST_FIELDS 40

typedef struct
{
  const char *text;
  gsize length;
} LbNmeaField;

typedef struct
{
  LbImporter *importer;
  const LbLogLine *line;
  LbNmeaField fields[LB_NMEA_MOST_FIELDS]; /* [0]: talker and formatter */
  int n;
  gboolean has_checksums; /* anywhere in the log */

  double day;     /* s: midnight before the time last seen, from 1970 or from any start */
  gboolean dated; /* from 1970 */
  double clock;   /* s: the time of day last seen; -1: none */
  double last_fix_time;
} LbNmea;

/* Each counts the line, says why, and returns FALSE. */
gboolean lb_nmea_bad_form (LbNmea *nmea, const char *what);
gboolean lb_nmea_bad_range (LbNmea *nmea, const char *what);

/* A number in field `i`; unset for an empty or missing one. FALSE if something else stands there.
 */
gboolean lb_nmea_number (const LbNmea *nmea, int i, double *value);

/* The letter that field `i` is, or the zero. */
char lb_nmea_letter (const LbNmea *nmea, int i);

/* The sentences that tell a position. */
void lb_nmea_read_rmc (LbNmea *nmea);
void lb_nmea_read_gga (LbNmea *nmea);
void lb_nmea_read_gll (LbNmea *nmea);
