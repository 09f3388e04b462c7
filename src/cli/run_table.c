/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run_table.h"

#include <glib/gi18n.h>

#include "readings_table.h"
#include "sentence.h"
#include "text_layout.h"

char *
lb_run_table (const LbResult *result, const LbContents *contents, LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  g_autoptr (LbReadingsTable) table = lb_readings_table_new (result, contents, &wording);
  g_autoptr (GPtrArray) cautions = lb_cautions_new (&contents->setup, result, &wording);
  g_autofree char *sentence = lb_sentence_of_result (result, &wording);
  GString *out = g_string_new (NULL);

  if (*contents->title)
    g_string_append_printf (out, "%s\n\n", contents->title);
  lb_text_add_wrapped (out, "", 0, sentence);
  lb_text_add_table (out, table);
  lb_text_add_cautions (out, cautions);
  return g_string_free (out, FALSE);
}
