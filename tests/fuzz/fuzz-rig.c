/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Feeds any bytes to the readers. What is accepted must be a sound rig that goes there and back;
 * what is refused must be refused in one clean line. See meson.build for how to run it. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "catalogue.h"
#include "fuzz-check.h"
#include "reader.h"
#include "writer.h"

static void
check_rig (const char *text, size_t size)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autoptr (LbContents) back = lb_contents_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *written = NULL;
  gsize length;

  if (!lb_reader_parse (text, (gssize) size, contents, &error))
    {
      check_message (error);
      return;
    }
  require (lb_setup_validate (&contents->setup, NULL), "an accepted rig that is not valid");
  written = lb_writer_to_text (contents, &length);
  require (lb_reader_parse (written, (gssize) length, back, NULL), "a written rig is refused");
  require (lb_contents_equal (back, contents), "a rig that changes on its way there and back");
}

static void
check_change (const char *text, size_t size)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autofree char *change = g_strndup (text, size);
  const char *changes[] = { change, NULL };
  g_autoptr (GError) error = NULL;

  if (lb_reader_set_all (contents, changes, &error))
    require (lb_setup_validate (&contents->setup, NULL), "a change that makes no valid rig");
  else
    require (error != NULL, "a refused change without its error");
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  const char *text = (const char *) data;
  g_autoptr (LbCatalogue) catalogue = NULL;

  check_rig (text, size);
  check_change (text, size);
  catalogue = lb_catalogue_parse (text, (gssize) size, NULL);
  return 0;
}
