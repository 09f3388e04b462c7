/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity_list.h"

#include <glib/gi18n.h>

#define BETWEEN ";"

char *
lb_quantity_list_words (LbQuantity quantity, LbUnits units, const double *values, gsize n)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *words = lb_words_quantity (quantity, units, values[i], -1);

      g_string_append_printf (text, "%s%s", i ? BETWEEN " " : "", words);
    }
  return g_string_free (text, FALSE);
}

static char *
range_fault (LbQuantity quantity, LbUnits units, double low, double high, const char *part)
{
  g_autofree char *from = lb_words_quantity (quantity, units, low, -1);
  g_autofree char *to = lb_words_quantity (quantity, units, high, -1);

  return g_strdup_printf (_ ("“%s” is not from %s to %s."), part, from, to);
}

gsize
lb_quantity_list_parse (LbQuantity quantity,
                        LbUnits units,
                        double low,
                        double high,
                        const char *text,
                        double *values,
                        gsize most,
                        char **fault)
{
  g_auto (GStrv) parts = g_strsplit (text, BETWEEN, -1);
  gsize n = 0;

  *fault = NULL;
  for (char **part = parts; *part; part++)
    {
      double value;

      if (*g_strstrip (*part) == '\0')
        continue;
      if (!lb_words_parse (quantity, units, *part, &value, fault))
        return 0;
      if (!(value >= low && value <= high))
        *fault = range_fault (quantity, units, low, high, *part);
      else if (n >= most)
        *fault = g_strdup_printf (_ ("At most %d values will do."), (int) most);
      if (*fault)
        return 0;
      values[n++] = value;
    }
  if (n == 0)
    *fault = g_strdup (_ ("Give at least one value."));
  return n;
}
