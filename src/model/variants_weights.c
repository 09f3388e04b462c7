/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "variants_weights.h"

#include <glib/gi18n-lib.h>

/* "1,2" and "1 lb, 2 lb" may be meant as lists. A comma is a decimal sign only where the locale has
 * it as one, and then just once, between digits. */
static bool
holds_a_list (const char *text)
{
  const char *comma = strchr (text, ',');

  if (comma == NULL)
    return false;
  return lb_words_decimal () != ',' || strchr (comma + 1, ',') != NULL || comma == text
         || !g_ascii_isdigit (comma[-1]) || !g_ascii_isdigit (comma[1]);
}

GArray *
lb_weights_parse (LbUnits units, const char *text, char **message)
{
  const LbField *field = lb_field ("weight.mass_kg");
  g_autoptr (GArray) weights = g_array_new (FALSE, FALSE, sizeof (double));
  g_auto (GStrv) parts = g_strsplit (text, ";", -1);

  for (char **part = parts; *part; part++)
    {
      double kg;

      if (*g_strstrip (*part) == '\0')
        continue;
      if (holds_a_list (*part))
        {
          *message = g_strdup_printf (
              _ ("“%s” may be one weight or several: write semicolons between weights, as in "
                 "“1 lb; 2 lb”, and a point for decimals."),
              *part);
          return NULL;
        }
      if (!lb_words_parse (LB_QUANTITY_MASS, units, *part, &kg, message))
        return NULL;
      if (!lb_field_accepts (field, kg))
        {
          g_autofree char *low = lb_words_quantity (LB_QUANTITY_MASS, units, field->minimum, -1);
          g_autofree char *high = lb_words_quantity (LB_QUANTITY_MASS, units, field->maximum, -1);

          *message = g_strdup_printf (_ ("“%s” is no weight from %s to %s."), *part, low, high);
          return NULL;
        }
      g_array_append_val (weights, kg);
    }
  return g_steal_pointer (&weights);
}

static int
compare_numbers (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Sorted, each once, and only what can be a weight. */
static GArray *
usable_weights (const double *kg, size_t n)
{
  const LbField *field = lb_field ("weight.mass_kg");
  GArray *weights = g_array_new (FALSE, FALSE, sizeof (double));

  for (size_t i = 0; i < n; i++)
    if (lb_field_accepts (field, kg[i]))
      g_array_append_val (weights, kg[i]);
  g_array_sort (weights, compare_numbers);
  for (guint i = weights->len; i-- > 1;)
    if (g_array_index (weights, double, i) == g_array_index (weights, double, i - 1))
      g_array_remove_index (weights, i);
  return weights;
}

static double
distance (const GArray *weights, guint i, double own)
{
  return fabs (log (g_array_index (weights, double, i) / own));
}

LbVariants
lb_variants_of_weights (const double *kg, size_t n, double own, const LbWording *wording)
{
  g_autoptr (GArray) weights = usable_weights (kg, n);
  LbVariants variants = { 0 };

  /* Sorted as they are, the farthest is always at one end. */
  while (weights->len > LB_MAX_VARIANTS)
    g_array_remove_index (weights,
                          distance (weights, 0, own) > distance (weights, weights->len - 1, own)
                              ? 0
                              : weights->len - 1);
  for (guint i = 0; i < weights->len; i++)
    {
      double mass = g_array_index (weights, double, i);
      g_autofree char *name =
          lb_words_quantity (LB_QUANTITY_MASS, wording->units, mass, wording->decimals);
      LbVariant *added = &variants.list[variants.n];

      lb_variant_set_new_name (added, &variants, name);
      lb_variant_set (added, lb_field ("weight.mass_kg"), 0, mass);
      variants.n++;
    }
  return variants;
}
