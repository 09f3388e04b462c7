/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "card_file.h"
#include "read_plain.h"
#include "read_value.h"
#include "validate.h"

/* What is read, and where in the file that is. */
typedef struct
{
  LbCard *card;
  JsonObject *object;
  GError **error;
} Reader;

static const char *const keys[] = {
  "size",    "width_m",      "height_m", "wide",     "sheet",        "several", "prints",
  "running", "terminations", "hardware", "depths_m", "currents_m_s", "date",    NULL,
};

/* ---- Words of choices ---- */

static const char *
size_name (int size)
{
  return lb_card_size_name ((LbCardSize) size);
}

static const char *
sheet_name (int sheet)
{
  return lb_card_sheet_name ((LbCardSheet) sheet);
}

const char *
lb_card_running_name (int variants)
{
  return variants ? "variants" : "rig";
}

/* ---- Values of the card's own ---- */

/* A key that is left out keeps what there is. */
static JsonNode *
find (Reader *r, const char *key)
{
  return json_object_get_member (r->object, key);
}

static gboolean
read_words (JsonNode *node, const char *path, LbCardWords *words, GError **error)
{
  g_autofree char *text = NULL;

  if (!lb_read_text (node, path, TRUE, LB_CARD_WORDS_LONGEST, &text, error))
    return FALSE;
  lb_card_words_set (words, text);
  return TRUE;
}

static gboolean
read_choice (
    Reader *r, const char *key, const char *path, const char *(*name) (int), int n, int *value)
{
  JsonNode *node = find (r, key);

  return node == NULL || lb_read_choice (node, path, name, n, value, r->error);
}

static gboolean
read_paper (Reader *r)
{
  LbCard *card = r->card;
  int size = card->size, sheet = card->sheet;
  JsonNode *width = find (r, "width_m"), *height = find (r, "height_m");
  JsonNode *wide = find (r, "wide"), *several = find (r, "several");

  if (!read_choice (r, "size", "card.size", size_name, LB_N_CARD_SIZES, &size)
      || !read_choice (r, "sheet", "card.sheet", sheet_name, LB_N_CARD_SHEETS, &sheet))
    return FALSE;
  card->size = (LbCardSize) size;
  card->sheet = (LbCardSheet) sheet;
  return (!width
          || lb_read_number (width, "card.width_m", LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE,
                             &card->own_width, r->error))
         && (!height
             || lb_read_number (height, "card.height_m", LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE,
                                &card->own_height, r->error))
         && (!wide || lb_read_boolean (wide, "card.wide", &card->wide, r->error))
         && (!several || lb_read_boolean (several, "card.several", &card->several, r->error));
}

static gboolean
read_prints (Reader *r)
{
  const char *known[LB_N_CARD_PARTS + 1] = { NULL };
  JsonNode *node = find (r, "prints");
  JsonObject *object;
  int variants = r->card->running_variants;

  if (!read_choice (r, "running", "card.running", lb_card_running_name, 2, &variants))
    return FALSE;
  r->card->running_variants = variants != 0;
  if (node == NULL)
    return TRUE;
  object = lb_read_object (node, "card.prints", r->error);
  for (int i = 0; object && i < LB_N_CARD_PARTS; i++)
    {
      g_autofree char *path = NULL;
      JsonNode *value;

      known[i] = lb_card_part_name ((LbCardPart) i);
      path = g_strconcat ("card.prints.", known[i], NULL);
      value = json_object_get_member (object, known[i]);
      if (value && !lb_read_boolean (value, path, &r->card->prints[i], r->error))
        return FALSE;
    }
  return object && lb_read_check_keys (object, known, "card.prints.", r->error);
}

/* ---- Terminations and hardware ---- */

static gboolean
read_termination (JsonNode *node, const char *path, LbCardTermination *to, GError **error)
{
  static const char *const known[] = { "how", "allowance_m", NULL };
  g_autofree char *prefix = g_strconcat (path, ".", NULL);
  g_autofree char *how_path = g_strconcat (prefix, "how", NULL);
  g_autofree char *allowance_path = g_strconcat (prefix, "allowance_m", NULL);
  JsonObject *object = lb_read_object (node, path, error);
  JsonNode *how, *allowance;

  if (object == NULL)
    return FALSE;
  how = json_object_get_member (object, "how");
  allowance = json_object_get_member (object, "allowance_m");
  return (!how || read_words (how, how_path, &to->how, error))
         && (!allowance
             || lb_read_number (allowance, allowance_path, 0, LB_CARD_MOST_ALLOWANCE,
                                &to->allowance, error))
         && lb_read_check_keys (object, known, prefix, error);
}

static gboolean
read_terminations (Reader *r)
{
  const char *known[LB_N_CARD_JOINTS + 1] = { NULL };
  JsonNode *node = find (r, "terminations");
  JsonObject *object;

  if (node == NULL)
    return TRUE;
  object = lb_read_object (node, "card.terminations", r->error);
  for (int i = 0; object && i < LB_N_CARD_JOINTS; i++)
    {
      g_autofree char *path = NULL;
      JsonNode *value;

      known[i] = lb_card_joint_name ((LbCardJoint) i);
      path = g_strconcat ("card.terminations.", known[i], NULL);
      value = json_object_get_member (object, known[i]);
      if (value && !read_termination (value, path, &r->card->terminations[i], r->error))
        return FALSE;
    }
  return object && lb_read_check_keys (object, known, "card.terminations.", r->error);
}

static gboolean
read_piece (JsonNode *node, const char *path, LbCardHardware *piece, GError **error)
{
  static const char *const known[] = { "count", "what", NULL };
  g_autofree char *prefix = g_strconcat (path, ".", NULL);
  g_autofree char *count_path = g_strconcat (prefix, "count", NULL);
  g_autofree char *what_path = g_strconcat (prefix, "what", NULL);
  JsonObject *object = lb_read_object (node, path, error);
  JsonNode *count, *what;

  if (object == NULL)
    return FALSE;
  count = json_object_get_member (object, "count");
  what = json_object_get_member (object, "what");
  *piece = (LbCardHardware){ .count = 1 };
  return (!count || lb_read_whole (count, count_path, 1, LB_CARD_MOST_COUNT, &piece->count, error))
         && (!what || read_words (what, what_path, &piece->what, error))
         && lb_read_check_keys (object, known, prefix, error);
}

static gboolean
read_hardware (Reader *r)
{
  JsonNode *node = find (r, "hardware");
  g_autofree char *expected =
      g_strdup_printf (_ ("a list of at most %d pieces"), LB_CARD_MOST_HARDWARE);
  JsonArray *array;

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return lb_read_fail (r->error, LB_FILE_ERROR_TYPE, "card.hardware", node, expected);
  array = json_node_get_array (node);
  if (json_array_get_length (array) > LB_CARD_MOST_HARDWARE)
    {
      g_autofree char *found = g_strdup_printf (_ ("%u pieces"), json_array_get_length (array));
      return lb_validate_fail (r->error, LB_FILE_ERROR_RANGE, "card.hardware", found, expected);
    }
  r->card->n_hardware = json_array_get_length (array);
  for (guint i = 0; i < r->card->n_hardware; i++)
    {
      g_autofree char *path = g_strdup_printf ("card.hardware[%u]", i);

      if (!read_piece (json_array_get_element (array, i), path, &r->card->hardware[i], r->error))
        return FALSE;
    }
  return TRUE;
}

/* ---- The date ---- */

static gboolean
read_date (Reader *r)
{
  JsonNode *node = find (r, "date");

  if (node == NULL)
    return TRUE;
  r->card->dated_today = JSON_NODE_HOLDS_NULL (node);
  return r->card->dated_today || read_words (node, "card.date", &r->card->date, r->error);
}

static gboolean
read_series (Reader *r, const char *key, const char *path, LbCardSeriesOf of)
{
  JsonNode *node = find (r, key);

  return node == NULL || lb_card_read_series (node, path, of, &r->card->series[of], r->error);
}

gboolean
lb_card_read (JsonNode *node, LbCard *card, GError **error)
{
  Reader r = { card, lb_read_object (node, LB_CARD_KEY, error), error };

  return r.object && lb_read_check_keys (r.object, keys, LB_CARD_KEY ".", error) && read_paper (&r)
         && read_prints (&r) && read_terminations (&r) && read_hardware (&r)
         && read_series (&r, "depths_m", "card.depths_m", LB_CARD_SERIES_OF_DEPTHS)
         && read_series (&r, "currents_m_s", "card.currents_m_s", LB_CARD_SERIES_OF_CURRENTS)
         && read_date (&r);
}
