/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The depths or currents of a card's table: null, a list, or {"from", "to", "step"}. */
#include <glib/gi18n-lib.h>

#include "card_file.h"
#include "read_plain.h"
#include "read_value.h"
#include "validate.h"

static gboolean
fail_count (const char *path, double count, GError **error)
{
  g_autofree char *found = g_strdup_printf (_ ("%.0f values"), count);
  g_autofree char *expected = g_strdup_printf (_ ("1 to %d values"), LB_CARD_MOST_VALUES);

  return lb_validate_fail (error, LB_FILE_ERROR_RANGE, path, found, expected);
}

static gboolean
read_list (
    JsonArray *array, const char *path, LbCardSeriesOf of, LbCardSeries *series, GError **error)
{
  double least = lb_card_series_least (of);
  guint n = json_array_get_length (array);

  if (n < 1 || n > LB_CARD_MOST_VALUES)
    return fail_count (path, n, error);
  series->kind = LB_CARD_SERIES_LIST;
  series->n = n;
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *place = g_strdup_printf ("%s[%u]", path, i);

      if (!lb_read_number (json_array_get_element (array, i), place, least,
                           lb_card_series_most (of), &series->values[i], error))
        return FALSE;
      if (i > 0 && series->values[i] <= series->values[i - 1])
        {
          g_autofree char *expected = NULL;
          char before[LB_JSON_NUMBER_SIZE];

          lb_json_text_number (series->values[i - 1], before);
          expected = g_strdup_printf (_ ("more than %s, the value before"), before);
          return lb_read_fail (error, LB_FILE_ERROR_ORDER, place, json_array_get_element (array, i),
                               expected);
        }
    }
  return TRUE;
}

static gboolean
read_step (JsonObject *object,
           const char *path,
           const char *key,
           double least,
           double most,
           double *value,
           GError **error)
{
  g_autofree char *place = g_strconcat (path, ".", key, NULL);
  JsonNode *node = json_object_get_member (object, key);

  if (node)
    return lb_read_number (node, place, least, most, value, error);
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY, _ ("%s: missing, expected %s"),
               place, _ ("a number"));
  return FALSE;
}

static gboolean
read_steps (
    JsonObject *object, const char *path, LbCardSeriesOf of, LbCardSeries *series, GError **error)
{
  static const char *const known[] = { "from", "to", "step", NULL };
  g_autofree char *prefix = g_strconcat (path, ".", NULL);
  double most = lb_card_series_most (of), steps;

  series->kind = LB_CARD_SERIES_STEPS;
  if (!lb_read_check_keys (object, known, prefix, error)
      || !read_step (object, path, "from", lb_card_series_least (of), most, &series->from, error)
      || !read_step (object, path, "to", series->from, most, &series->to, error)
      || !read_step (object, path, "step", LB_CARD_LEAST_STEP, most, &series->step, error))
    return FALSE;
  steps = floor ((series->to - series->from) / series->step + LB_CARD_STEP_ROUNDING);
  return steps < LB_CARD_MOST_VALUES || fail_count (path, steps + 1, error);
}

gboolean
lb_card_read_series (
    JsonNode *node, const char *path, LbCardSeriesOf of, LbCardSeries *series, GError **error)
{
  if (JSON_NODE_HOLDS_NULL (node))
    {
      series->kind = LB_CARD_SERIES_AROUND;
      return TRUE;
    }
  if (JSON_NODE_HOLDS_ARRAY (node))
    return read_list (json_node_get_array (node), path, of, series, error);
  if (JSON_NODE_HOLDS_OBJECT (node))
    return read_steps (json_node_get_object (node), path, of, series, error);
  return lb_read_fail (error, LB_FILE_ERROR_TYPE, path, node,
                       _ ("a list of numbers, an object with from, to and step, or null"));
}
