/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "pass_file.h"
#include "read_plain.h"
#include "read_value.h"
#include "validate.h"

/* An object of the file, and the path of its keys. */
typedef struct
{
  JsonObject *object;
  const char *prefix; /* with the dot */
  GError **error;
} Reader;

static const char *
motion_name (int motion)
{
  return lb_hand_motion_name ((LbHandMotion) motion);
}

/* ---- Numbers ---- */

/* A key that is left out keeps what there is. */
static gboolean
read_number (Reader *r, const char *key, double minimum, double maximum, double *value)
{
  JsonNode *node = json_object_get_member (r->object, key);
  g_autofree char *path = g_strconcat (r->prefix, key, NULL);

  return node == NULL || lb_read_number (node, path, minimum, maximum, value, r->error);
}

/* The same; null leaves it open. */
static gboolean
read_open_number (Reader *r, const char *key, double minimum, double maximum, double *value)
{
  JsonNode *node = json_object_get_member (r->object, key);
  g_autofree char *path = g_strconcat (r->prefix, key, NULL);
  g_autofree char *range = lb_validate_expected_range (minimum, maximum);
  g_autofree char *expected = g_strconcat (range, _ (" or null"), NULL);

  if (node == NULL || lb_read_number (node, path, minimum, maximum, value, NULL))
    return TRUE;
  if (!JSON_NODE_HOLDS_NULL (node))
    return lb_read_fail (r->error, LB_FILE_ERROR_RANGE, path, node, expected);
  *value = LB_UNSET;
  return TRUE;
}

/* ---- Legs ---- */

/* Two keys that say the same thing in two ways: not both, and at least one if needed. */
static gboolean
check_either (Reader *r, const char *path, const char *a, const char *b, gboolean needed)
{
  gboolean has_a = json_object_has_member (r->object, a);
  gboolean has_b = json_object_has_member (r->object, b);
  g_autofree char *expected = g_strdup_printf (_ ("%s or %s"), a, b);

  if (has_a && has_b)
    return lb_validate_fail (r->error, LB_FILE_ERROR_RANGE, path, _ ("both"), expected);
  if (needed && !has_a && !has_b)
    return lb_validate_fail (r->error, LB_FILE_ERROR_MISSING_KEY, path, _ ("neither"), expected);
  return TRUE;
}

static gboolean
read_leg (JsonNode *node, const char *path, LbCourseLeg *leg, GError **error)
{
  static const char *const known[] = { "duration_s", "distance_m",      "speed_over_ground_m_s",
                                       "turn_deg",   "turn_rate_deg_s", "line_rate_m_s",
                                       NULL };
  g_autofree char *prefix = g_strconcat (path, ".", NULL);
  Reader r = { lb_read_object (node, path, error), prefix, error };

  *leg = lb_course_leg_default ();
  leg->duration = LB_UNSET;
  return r.object && lb_read_check_keys (r.object, known, prefix, error)
         && check_either (&r, path, "duration_s", "distance_m", TRUE)
         && check_either (&r, path, "turn_deg", "turn_rate_deg_s", FALSE)
         && read_number (&r, "duration_s", LB_PASS_SHORTEST, LB_PASS_LONGEST, &leg->duration)
         && read_number (&r, "distance_m", LB_LEG_LEAST_DISTANCE, LB_LEG_MOST_DISTANCE,
                         &leg->distance)
         && read_open_number (&r, "speed_over_ground_m_s", 0, LB_LEG_MOST_SPEED, &leg->speed)
         && read_number (&r, "turn_deg", -LB_LEG_MOST_TURN, LB_LEG_MOST_TURN, &leg->turn)
         && read_number (&r, "turn_rate_deg_s", -LB_LEG_MOST_TURN_RATE, LB_LEG_MOST_TURN_RATE,
                         &leg->turn_rate)
         && read_number (&r, "line_rate_m_s", -LB_LEG_MOST_LINE_RATE, LB_LEG_MOST_LINE_RATE,
                         &leg->line_rate);
}

static gboolean
read_course (Reader *r, LbPassScript *script)
{
  JsonNode *node = json_object_get_member (r->object, "course");
  g_autofree char *expected = g_strdup_printf (_ ("a list of at most %d legs"), LB_MAX_COURSE_LEGS);
  JsonArray *array;

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return lb_read_fail (r->error, LB_FILE_ERROR_TYPE, "pass.course", node, expected);
  array = json_node_get_array (node);
  if (json_array_get_length (array) > LB_MAX_COURSE_LEGS)
    {
      g_autofree char *found = g_strdup_printf (_ ("%u legs"), json_array_get_length (array));
      return lb_validate_fail (r->error, LB_FILE_ERROR_RANGE, "pass.course", found, expected);
    }
  script->n_legs = json_array_get_length (array);
  for (guint i = 0; i < script->n_legs; i++)
    {
      g_autofree char *path = g_strdup_printf ("pass.course[%u]", i);

      if (!read_leg (json_array_get_element (array, i), path, &script->legs[i], r->error))
        return FALSE;
    }
  return TRUE;
}

/* ---- The hand, and the whole ---- */

static gboolean
read_hand (Reader *pass, LbHand *hand)
{
  static const char *const known[] = { "motion", "stroke_m", "period_s", NULL };
  JsonNode *node = json_object_get_member (pass->object, "hand");
  Reader r = { NULL, "pass.hand.", pass->error };
  int motion = (int) hand->motion;
  JsonNode *word;

  if (node == NULL)
    return TRUE;
  r.object = lb_read_object (node, "pass.hand", r.error);
  if (r.object == NULL || !lb_read_check_keys (r.object, known, r.prefix, r.error))
    return FALSE;
  word = json_object_get_member (r.object, "motion");
  if (word
      && !lb_read_choice (word, "pass.hand.motion", motion_name, LB_N_HAND_MOTIONS, &motion,
                          r.error))
    return FALSE;
  hand->motion = (LbHandMotion) motion;
  return read_number (&r, "stroke_m", LB_HAND_LEAST_STROKE, LB_HAND_MOST_STROKE, &hand->stroke)
         && read_number (&r, "period_s", LB_HAND_LEAST_PERIOD, LB_HAND_MOST_PERIOD, &hand->period);
}

gboolean
lb_pass_read (JsonNode *node, LbPassScript *script, GError **error)
{
  static const char *const known[] = { "course",           "hand",
                                       "duration_s",       "start_m",
                                       "tangle_warning_m", "second_weight_kg",
                                       "reels_apart_m",    NULL };
  Reader r = { lb_read_object (node, LB_PASS_KEY, error), LB_PASS_KEY ".", error };

  return r.object && lb_read_check_keys (r.object, known, r.prefix, error)
         && read_course (&r, script) && read_hand (&r, &script->hand)
         && read_open_number (&r, "duration_s", LB_PASS_SHORTEST, LB_PASS_LONGEST,
                              &script->duration)
         && read_open_number (&r, "start_m", -LB_PASS_FARTHEST_START, LB_PASS_FARTHEST_START,
                              &script->start)
         && read_number (&r, "tangle_warning_m", 0, LB_PASS_MOST_TANGLE, &script->tangle_distance)
         && read_open_number (&r, "second_weight_kg", LB_SECOND_LEAST_WEIGHT, LB_SECOND_MOST_WEIGHT,
                              &script->second_weight)
         && read_number (&r, "reels_apart_m", LB_REELS_LEAST_APART, LB_REELS_MOST_APART,
                         &script->reels_apart);
}
