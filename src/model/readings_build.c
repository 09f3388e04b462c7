/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "readings_build.h"

#include <glib/gi18n-lib.h>

void
lb_readings_builder_init (LbReadingsBuilder *builder)
{
  builder->sections = g_array_new (FALSE, FALSE, sizeof (LbReadingsSection));
  builder->rows = NULL;
}

void
lb_readings_builder_start (LbReadingsBuilder *builder)
{
  builder->rows = g_array_new (FALSE, FALSE, sizeof (LbReadingsRow));
}

void
lb_readings_builder_add (LbReadingsBuilder *builder, const char *label, char *value, char *note)
{
  LbReadingsRow row = { g_strdup (label), value, note };

  g_array_append_val (builder->rows, row);
}

void
lb_readings_builder_end (LbReadingsBuilder *builder, char *title)
{
  LbReadingsSection section = { .title = title, .n_rows = builder->rows->len };

  section.rows = (LbReadingsRow *) (void *) g_array_free (builder->rows, FALSE);
  builder->rows = NULL;
  g_array_append_val (builder->sections, section);
}

LbReadingsTable *
lb_readings_builder_finish (LbReadingsBuilder *builder)
{
  LbReadingsTable *table = g_new0 (LbReadingsTable, 1);

  table->n_sections = builder->sections->len;
  table->sections = (LbReadingsSection *) (void *) g_array_free (builder->sections, FALSE);
  builder->sections = NULL;
  return table;
}

void
lb_readings_table_free (LbReadingsTable *table)
{
  if (table == NULL)
    return;
  for (size_t i = 0; i < table->n_sections; i++)
    {
      LbReadingsSection *section = &table->sections[i];
      for (size_t j = 0; j < section->n_rows; j++)
        {
          g_free (section->rows[j].label);
          g_free (section->rows[j].value);
          g_free (section->rows[j].note);
        }
      g_free (section->rows);
      g_free (section->title);
    }
  g_free (table->sections);
  g_free (table);
}

/* ---- Words ---- */

char *
lb_readings_lure_title (const LbSetup *setup, size_t lure, const char *name)
{
  g_autofree char *place = lb_words_lure (setup, lure);
  g_autofree char *first = g_utf8_substring (place, 0, 1);
  g_autofree char *capital = g_utf8_strup (first, -1);
  const char *rest = g_utf8_next_char (place);

  if (*name == '\0')
    return g_strconcat (capital, rest, NULL);
  /* Translators: "Upper lure: floating minnow, 7 cm"; the first two parts are one phrase */
  return g_strdup_printf (_ ("%s%s: %s"), capital, rest, name);
}

static char *
part_name (const LbSetup *setup, int part)
{
  if (part == LB_PART_MAINLINE)
    return g_strdup (_ ("mainline"));
  if (part == LB_PART_SHANK)
    return g_strdup (_ ("shank"));
  return lb_words_leader (setup, (size_t) (part - LB_PART_LEADER_0));
}

char *
lb_readings_between (const LbSetup *setup, const LbApproach *closest)
{
  g_autofree char *a = NULL;
  g_autofree char *b = NULL;

  if (!lb_is_set (closest->distance))
    return NULL;
  a = part_name (setup, closest->part_a);
  b = part_name (setup, closest->part_b);
  return g_strdup_printf (_ ("%s and %s"), a, b);
}
