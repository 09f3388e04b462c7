/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a value must be, in words. Internal to model. */
#pragma once

#include <glib.h>

#include "contents.h"
#include "fields.h"
#include "file_error.h"

#define LB_BED_LEAST_POINTS 2
#define LB_PROFILE_LEAST_POINTS 2
#define LB_PROFILE_FASTEST 2.0 /* speed / surface speed */

/* "a number from 0.1 to 100", "\"ball\", \"pear\", \"torpedo\" or \"disc\"". Free with g_free(). */
char *lb_validate_expected (const LbField *field);
char *lb_validate_expected_range (double minimum, double maximum);

/* Checks one number of a field; FALSE with LB_FILE_ERROR_RANGE naming `path`. */
gboolean
lb_validate_number (const char *path, double value, double minimum, double maximum, GError **error);

/* Sets "PATH: found FOUND, expected EXPECTED" and returns FALSE. */
gboolean lb_validate_fail (
    GError **error, LbFileError code, const char *path, const char *found, const char *expected);

/* `text` from a file as it may stand in a message of one line: what cannot be printed
 * escaped, cut after 40 characters. Free with g_free(). */
char *lb_validate_shown (const char *text);
