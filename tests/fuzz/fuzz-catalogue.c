/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Feeds any bytes to the readers of catalogues. What is accepted as the user's own must come back
 * as it was written; what is refused must be refused in one clean line. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "catalogue_private.h"
#include "fuzz-check.h"

static void
check_built_in (const char *text, size_t size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbCatalogue) catalogue = lb_catalogue_parse (text, (gssize) size, &error);

  if (catalogue == NULL)
    check_message (error);
}

static void
check_own (const char *text, size_t size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbCatalogue) own = lb_catalogue_parse_own (text, (gssize) size, &error);
  g_autoptr (LbCatalogue) back = NULL;
  g_autofree char *written = NULL;
  g_autofree char *again = NULL;
  gsize length;

  if (own == NULL)
    {
      check_message (error);
      return;
    }
  written = lb_catalogue_write_own (own, &length);
  back = lb_catalogue_parse_own (written, (gssize) length, NULL);
  require (back != NULL, "a written catalogue is refused");
  again = lb_catalogue_write_own (back, NULL);
  require (g_str_equal (again, written), "a catalogue that changes on its way there and back");
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  check_built_in ((const char *) data, size);
  check_own ((const char *) data, size);
  return 0;
}
