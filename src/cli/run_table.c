/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run_table.h"

#include <glib/gi18n.h>

#include "readings_table.h"
#include "sentence.h"
#include "text_layout.h"

static glong
widest (const LbReadingsTable *table, gboolean values)
{
  glong width = 0;

  for (size_t i = 0; i < table->n_sections; i++)
    for (size_t j = 0; j < table->sections[i].n_rows; j++)
      {
        const LbReadingsRow *row = &table->sections[i].rows[j];
        width = MAX (width, g_utf8_strlen (values ? row->value : row->label, -1));
      }
  return width;
}

static void
add_table (GString *out, const LbReadingsTable *table)
{
  glong label_width = widest (table, FALSE), value_width = widest (table, TRUE);

  for (size_t i = 0; i < table->n_sections; i++)
    {
      const LbReadingsSection *section = &table->sections[i];

      g_string_append_printf (out, "\n%s\n", section->title);
      for (size_t j = 0; j < section->n_rows; j++)
        {
          const LbReadingsRow *row = &section->rows[j];

          g_string_append (out, "  ");
          lb_text_add_padded (out, row->label, label_width + 2);
          lb_text_add_padded (out, row->value, row->note ? value_width + 2 : 0);
          g_string_append_printf (out, "%s\n", row->note ? row->note : "");
        }
    }
}

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
  add_table (out, table);
  lb_text_add_cautions (out, cautions);
  return g_string_free (out, FALSE);
}
