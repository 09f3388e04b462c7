/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_text.h"

#include <glib/gi18n.h>

#include "comparison_words.h"
#include "text_layout.h"

/* ---- Columns ---- */

/* What stands in a cell, one below the other. */
#define CELL_LINES 3

static const char *
cell_line (const LbComparisonCell *cell, int line)
{
  const char *texts[CELL_LINES] = { cell->value, cell->note, cell->difference };

  return texts[line] ? texts[line] : "";
}

static glong
column_width (const LbComparisonTable *table, size_t column)
{
  glong width = g_utf8_strlen (table->names[column], -1);

  for (size_t i = 0; i < table->n_rows; i++)
    for (int line = 0; line < CELL_LINES; line++)
      width = MAX (width, g_utf8_strlen (cell_line (&table->rows[i].cells[column], line), -1));
  return width;
}

static glong
label_width (const LbComparisonTable *table)
{
  glong width = 0;

  for (size_t i = 0; i < table->n_rows; i++)
    width = MAX (width, g_utf8_strlen (table->rows[i].label, -1));
  return width;
}

/* One line of text; blanks at its end are left out. */
static void
add_line (GString *out, const LbComparisonTable *table, const char *label, const char **texts)
{
  size_t last = 0;

  for (size_t i = 0; i < table->n; i++)
    if (*texts[i])
      last = i + 1;
  lb_text_add_padded (out, label, last > 0 ? label_width (table) + 2 : 0);
  for (size_t i = 0; i < last; i++)
    lb_text_add_padded (out, texts[i], i + 1 < last ? column_width (table, i) + 2 : 0);
  g_string_append_c (out, '\n');
}

static void
add_row (GString *out, const LbComparisonTable *table, const LbComparisonRow *row)
{
  for (int line = 0; line < CELL_LINES; line++)
    {
      const char *texts[LB_MAX_VARIANTS];
      bool any = false;

      for (size_t i = 0; i < table->n; i++)
        {
          texts[i] = cell_line (&row->cells[i], line);
          any |= *texts[i] != '\0';
        }
      if (any)
        add_line (out, table, line == 0 ? row->label : "", texts);
    }
}

/* ---- All of it ---- */

static void
add_sentences (GString *out, const LbComparisonTable *table)
{
  for (size_t i = 0; i < table->n; i++)
    {
      g_autofree char *start = g_strdup_printf (_ ("%s: "), table->names[i]);

      lb_text_add_wrapped (out, start, 4, table->sentences[i]);
      lb_text_add_wrapped (out, "    ", 4, table->changes[i]);
    }
}

char *
lb_compare_text (const LbComparison *comparison, const char *title, LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  g_autoptr (LbComparisonTable) table = lb_comparison_table_new (comparison, &wording);
  g_autoptr (GPtrArray) cautions = lb_comparison_cautions_new (comparison, &wording);
  GString *out = g_string_new (NULL);

  if (*title)
    g_string_append_printf (out, "%s\n\n", title);
  add_sentences (out, table);
  g_string_append_c (out, '\n');
  add_line (out, table, "", (const char **) table->names);
  for (size_t i = 0; i < table->n_rows; i++)
    add_row (out, table, &table->rows[i]);
  lb_text_add_cautions (out, cautions);
  return g_string_free (out, FALSE);
}
