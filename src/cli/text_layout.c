/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text_layout.h"

#include <glib/gi18n.h>

#define LINE_WIDTH 78

void
lb_text_add_wrapped (GString *out, const char *start, int indent, const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  glong column = g_utf8_strlen (start, -1);

  g_string_append (out, start);
  for (char **word = words; *word; word++)
    {
      glong length = g_utf8_strlen (*word, -1);
      if (word > words && column + 1 + length > LINE_WIDTH)
        {
          g_string_append_printf (out, "\n%*s", indent, "");
          column = indent;
        }
      else if (word > words)
        {
          g_string_append_c (out, ' ');
          column++;
        }
      g_string_append (out, *word);
      column += length;
    }
  g_string_append_c (out, '\n');
}

void
lb_text_add_padded (GString *out, const char *text, glong width)
{
  g_string_append (out, text);
  for (glong i = g_utf8_strlen (text, -1); i < width; i++)
    g_string_append_c (out, ' ');
}

void
lb_text_add_cautions (GString *out, const GPtrArray *cautions)
{
  g_string_append_printf (out, "\n%s\n", _ ("Mind"));
  for (guint i = 0; i < cautions->len; i++)
    {
      const LbCaution *caution = g_ptr_array_index (cautions, i);
      lb_text_add_wrapped (out, caution->kind == LB_CAUTION_NOW ? "  ! " : "  - ", 4,
                           caution->text);
    }
}

/* Of the labels, or of the values that a note follows. */
static glong
widest (const LbReadingsTable *table, gboolean values)
{
  glong width = 0;

  for (size_t i = 0; i < table->n_sections; i++)
    for (size_t j = 0; j < table->sections[i].n_rows; j++)
      {
        const LbReadingsRow *row = &table->sections[i].rows[j];
        if (!values || row->note)
          width = MAX (width, g_utf8_strlen (values ? row->value : row->label, -1));
      }
  return width;
}

void
lb_text_add_table (GString *out, const LbReadingsTable *table)
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
