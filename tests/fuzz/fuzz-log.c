/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Feeds any bytes to the readers of logs. What is accepted must hold sound numbers and make a sound
 * bed or say why not; what is refused must be refused in one clean line. */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "change.h"
#include "fuzz-check.h"
#include "import.h"
#include "validate.h"

static void
check_import (const LbImport *import)
{
  g_autofree char *summary = lb_import_dup_summary (import);

  require (g_utf8_validate (summary, -1, NULL), "a summary that is not UTF-8");
  for (guint i = 0; i < import->soundings->len; i++)
    {
      const LbSounding *s = &g_array_index (import->soundings, LbSounding, i);

      require (isfinite (s->along) && isfinite (s->depth), "a sounding that is no number");
      require (i == 0 || s->along >= g_array_index (import->soundings, LbSounding, i - 1).along,
               "soundings out of order");
    }
}

static void
check_profile (const LbImport *import)
{
  g_autoptr (LbDocument) document = lb_document_new ();
  g_autoptr (LbChange) change = NULL;
  g_autoptr (GError) error = NULL;
  LbBedProfile profile;

  if (!lb_import_profile (import, NULL, &profile, &error))
    {
      check_message (error);
      return;
    }
  change = lb_change_new_bed (profile.x, profile.depth, profile.n, NULL);
  lb_change_apply (change, document);
  require (lb_document_get_setup (document)->river.n_bed_points == profile.n
               && lb_setup_validate (lb_document_get_setup (document), NULL),
           "a profile that no document takes");
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbImport) import =
      lb_import_parse ((const char *) data, size, NULL, NULL, NULL, NULL, &error);

  if (!import)
    {
      check_message (error);
      return 0;
    }
  check_import (import);
  check_profile (import);
  return 0;
}
