/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the fuzz targets have in common. */
#pragma once

#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "file_error.h"

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

/* Ends the program, which libFuzzer takes for a finding. */
static inline void
require (bool fine, const char *what)
{
  if (fine)
    return;
  g_printerr ("%s\n", what);
  abort ();
}

/* What is refused must be refused in one clean line. */
static inline void
check_message (const GError *error)
{
  require (error && error->domain == LB_FILE_ERROR, "a refusal without its error");
  require (!strchr (error->message, '\n'), "a message of more than one line");
  require (g_utf8_validate (error->message, -1, NULL), "a message that is not UTF-8");
}
