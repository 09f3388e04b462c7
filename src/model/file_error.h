/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Why a rig file was refused. The message is one line for a person: where, what was found, what was
 * expected. */
#pragma once

#include <glib.h>

typedef enum
{
  LB_FILE_ERROR_READ, /* missing, a directory, not allowed, an input error */
  LB_FILE_ERROR_TOO_LARGE,
  LB_FILE_ERROR_SYNTAX,  /* not UTF-8, not JSON, nested too deep, a key twice */
  LB_FILE_ERROR_VERSION, /* another format or an unknown version */
  LB_FILE_ERROR_TYPE,
  LB_FILE_ERROR_RANGE,
  LB_FILE_ERROR_UNKNOWN_KEY,
  LB_FILE_ERROR_MISSING_KEY,
  LB_FILE_ERROR_ORDER, /* each value is fine, but not beside the others */
  LB_FILE_ERROR_WRITE,
  LB_FILE_ERROR_CHANGED, /* another program changed or removed the file meanwhile: not written */
} LbFileError;

#define LB_FILE_ERROR (lb_file_error_quark ())
GQuark lb_file_error_quark (void);
