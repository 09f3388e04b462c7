/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writes logs of NMEA 0183 sentences for tests. */
#pragma once

#include <glib.h>

/* A sentence with its checksum: the exclusive or of all between "$" and "*" (NMEA 0183). */
void log_add_sentence (GString *log, const char *body);

/* A fix of a boat that has gone `metres` north from the equator, `seconds` after noon. A degree
 * there is 110574 m to within a metre. */
void log_add_fix (GString *log, double metres, double seconds);

/* Below the transducer, of which nothing is known. */
void log_add_depth (GString *log, double depth);
