/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Units of a table's columns, as headings and cells tell them. */
#include "import_csv.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef struct
{
  const char *words; /* parted by "|"; those that say most come first */
  const char *name;
  LbCsvScale scale;
} Unit;

/* Of two in one heading that one which stands first here: "in" is a preposition, too. International
 * foot: 0.3048 m (NIST SP 811, from memory); the others are multiples of it. */
static const Unit units[] = {
  { "feet|foot|ft", N_ ("feet"), { 0.3048, TRUE } },
  { "fathoms|fathom|ftm|fm", N_ ("fathoms"), { 1.8288, TRUE } },
  { "yards|yard|yd", N_ ("yards"), { 0.9144, TRUE } },
  { "miles|mile|mi", N_ ("miles"), { 1609.344, TRUE } },
  { "kilometers|kilometres|kilometer|kilometre|km", N_ ("kilometres"), { 1000, FALSE } },
  { "centimeters|centimetres|centimeter|centimetre|cm", N_ ("centimetres"), { 0.01, FALSE } },
  { "meters|metres|meter|metre|m", N_ ("metres"), { 1, FALSE } },
  { "inches|inch|in", N_ ("inches"), { 0.0254, TRUE } },
};

/* Whether one of the words stands in `text` with no letter beside it. */
static gboolean
has_word (const char *text, const char *words)
{
  g_auto (GStrv) list = g_strsplit (words, "|", -1);

  for (char **word = list; *word; word++)
    {
      gsize length = strlen (*word);

      for (const char *at = text; (at = strstr (at, *word)); at++)
        if ((at == text || !g_ascii_isalpha (at[-1])) && !g_ascii_isalpha (at[length]))
          return TRUE;
    }
  return FALSE;
}

gboolean
lb_csv_heading_scale (const char *heading, LbCsvScale *scale)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (has_word (heading, units[i].words))
      {
        *scale = units[i].scale;
        return TRUE;
      }
  return FALSE;
}

/* The cell without `end`, if it ends so, whatever the case. */
static gboolean
take_end (LbCsvCell *cell, const char *end)
{
  gsize length = strlen (end);

  if (cell->length <= length || g_ascii_isalpha (cell->text[cell->length - length - 1])
      || g_ascii_strncasecmp (cell->text + cell->length - length, end, length) != 0)
    return FALSE;
  cell->length -= length;
  while (cell->length > 0 && g_ascii_isspace (cell->text[cell->length - 1]))
    cell->length--;
  return TRUE;
}

void
lb_csv_take_unit (LbCsvCell *cell, LbCsvScale *scale)
{
  /* Numbers alone are the rule in tables of millions. */
  if (cell->length == 0 || !g_ascii_isalpha (cell->text[cell->length - 1]))
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      g_auto (GStrv) list = g_strsplit (units[i].words, "|", -1);

      for (char **word = list; *word; word++)
        if (take_end (cell, *word))
          {
            *scale = units[i].scale;
            return;
          }
    }
}

const char *
lb_csv_unit_name (LbCsvScale scale)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].scale.metres == scale.metres)
      return _ (units[i].name);
  return "";
}
