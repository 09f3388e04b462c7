/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "validate.h"

#include <glib/gi18n-lib.h>

#include "json_text.h"

gboolean
lb_validate_fail (
    GError **error, LbFileError code, const char *path, const char *found, const char *expected)
{
  /* Translators: "river.depth_m: found -3, expected a number from 0.1 to 100" */
  g_set_error (error, LB_FILE_ERROR, code, _ ("%s: found %s, expected %s"), path, found, expected);
  return FALSE;
}

#define LONGEST_SHOWN 40

/* g_strescape() for ASCII alone: it would turn all letters beyond it into octal numbers. */
static char *
escape_ascii (const char *text)
{
  char beyond_ascii[129];

  for (int i = 0; i < 128; i++)
    beyond_ascii[i] = (char) (128 + i);
  beyond_ascii[128] = '\0';
  return g_strescape (text, beyond_ascii);
}

char *
lb_validate_shown (const char *text)
{
  gboolean cut = g_utf8_strlen (text, -1) > LONGEST_SHOWN;
  g_autofree char *piece = cut ? g_utf8_substring (text, 0, LONGEST_SHOWN) : g_strdup (text);
  g_autofree char *escaped = escape_ascii (piece);
  GString *shown = g_string_new (NULL);

  for (const char *p = escaped; *p; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (g_unichar_isprint (c))
        g_string_append_unichar (shown, c);
      else
        g_string_append_printf (shown, "\\u%04X", c);
    }
  if (cut)
    g_string_append (shown, "...");
  return g_string_free (shown, FALSE);
}

static void
number_to_text (double value, char text[LB_JSON_NUMBER_SIZE])
{
  if (isfinite (value))
    lb_json_text_number (value, text);
  else
    g_strlcpy (text, isnan (value) ? "null" : value > 0 ? "inf" : "-inf", LB_JSON_NUMBER_SIZE);
}

static gboolean
fail_number (GError **error, LbFileError code, const char *path, double value, const char *expected)
{
  char found[LB_JSON_NUMBER_SIZE];
  number_to_text (value, found);
  return lb_validate_fail (error, code, path, found, expected);
}

char *
lb_validate_expected_range (double minimum, double maximum)
{
  char low[LB_JSON_NUMBER_SIZE], high[LB_JSON_NUMBER_SIZE];
  lb_json_text_number (minimum, low);
  lb_json_text_number (maximum, high);
  return g_strdup_printf (_ ("a number from %s to %s"), low, high);
}

static char *
expected_choice (const LbField *field)
{
  GString *text = g_string_new (NULL);
  size_t first = field->choices[0].name ? 0 : 1;

  for (size_t i = first; i < field->n_choices; i++)
    {
      if (i > first)
        g_string_append (text, i + 1 < field->n_choices ? ", " : _ (" or "));
      g_string_append_printf (text, "\"%s\"", field->choices[i].name);
    }
  return g_string_free (text, FALSE);
}

static char *
expected_whole (const LbField *field)
{
  return g_strdup_printf (_ ("a whole number from %.0f to %.0f"), field->minimum, field->maximum);
}

char *
lb_validate_expected (const LbField *field)
{
  g_autofree char *range = NULL;

  if (field->kind == LB_FIELD_CHOICE)
    return expected_choice (field);
  range = field->whole ? expected_whole (field)
                       : lb_validate_expected_range (field->minimum, field->maximum);
  if (!field->nullable)
    return g_steal_pointer (&range);
  return g_strconcat (range, _ (" or null"), NULL);
}

gboolean
lb_validate_number (const char *path, double value, double minimum, double maximum, GError **error)
{
  g_autofree char *expected = NULL;

  if (value >= minimum && value <= maximum)
    return TRUE;
  expected = lb_validate_expected_range (minimum, maximum);
  return fail_number (error, LB_FILE_ERROR_RANGE, path, value, expected);
}

/* ---- A whole setup ---- */

static gboolean
check_field (const LbField *field, const LbSetup *setup, size_t leader, GError **error)
{
  double value = lb_field_get (field, setup, leader);
  g_autofree char *path = NULL;
  g_autofree char *expected = NULL;

  if (!lb_field_applies (field, setup) || lb_field_accepts (field, value))
    return TRUE;
  path = lb_field_full_path (field, leader);
  expected = lb_validate_expected (field);
  return fail_number (error, LB_FILE_ERROR_RANGE, path, value, expected);
}

static gboolean
check_fields (const LbSetup *setup, GError **error)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  for (size_t i = 0; i < n_fields; i++)
    for (size_t leader = 0; leader < (fields[i].stride ? setup->rig.n_leaders : 1); leader++)
      if (!check_field (&fields[i], setup, leader, error))
        return FALSE;
  return TRUE;
}

/* The first coordinates of the points of a list must rise. */
static gboolean
check_rising (const char *list, const double *values, size_t n, GError **error)
{
  for (size_t i = 1; i < n; i++)
    if (!(values[i] > values[i - 1]))
      {
        g_autofree char *path = g_strdup_printf ("%s[%zu][0]", list, i);
        g_autofree char *expected = NULL;
        char before[LB_JSON_NUMBER_SIZE];

        number_to_text (values[i - 1], before);
        expected = g_strdup_printf (_ ("more than %s, the point before"), before);
        return fail_number (error, LB_FILE_ERROR_ORDER, path, values[i], expected);
      }
  return TRUE;
}

static gboolean
check_list (const char *list,
            const double *values,
            size_t n,
            double minimum,
            double maximum,
            int column,
            GError **error)
{
  for (size_t i = 0; i < n; i++)
    {
      g_autofree char *path = NULL;

      if (values[i] >= minimum && values[i] <= maximum)
        continue;
      path = g_strdup_printf ("%s[%zu][%d]", list, i, column);
      return lb_validate_number (path, values[i], minimum, maximum, error);
    }
  return TRUE;
}

static gboolean
check_length (const char *list, size_t n, size_t least, size_t most, GError **error)
{
  g_autofree char *found = NULL;
  g_autofree char *expected = NULL;

  if (n >= least && n <= most)
    return TRUE;
  found = g_strdup_printf (_ ("%zu points"), n);
  expected = g_strdup_printf (_ ("%zu to %zu"), least, most);
  return lb_validate_fail (error, LB_FILE_ERROR_RANGE, list, found, expected);
}

static gboolean
check_bed (const LbRiver *river, GError **error)
{
  const char *list = "river.bed";
  const LbField *x = lb_field ("boat.position_m");
  const LbField *depth = lb_field ("river.depth_m");
  size_t n = river->n_bed_points;

  return n == 0
         || (check_length (list, n, LB_BED_LEAST_POINTS, LB_MAX_BED_POINTS, error)
             && check_list (list, river->bed_x, n, x->minimum, x->maximum, 0, error)
             && check_list (list, river->bed_depth, n, depth->minimum, depth->maximum, 1, error)
             && check_rising (list, river->bed_x, n, error));
}

static gboolean
check_profile (const LbProfile *profile, GError **error)
{
  const char *list = "river.profile.points";
  size_t n = profile->n_points;

  return profile->law != LB_PROFILE_POINTS
         || (check_length (list, n, LB_PROFILE_LEAST_POINTS, LB_MAX_PROFILE_POINTS, error)
             && check_list (list, profile->height_fraction, n, 0, 1, 0, error)
             && check_list (list, profile->speed_fraction, n, 0, LB_PROFILE_FASTEST, 1, error)
             && check_rising (list, profile->height_fraction, n, error));
}

static gboolean
check_attachments (const LbRig *rig, GError **error)
{
  for (size_t i = 0; i < rig->n_leaders; i++)
    if (rig->leaders[i].attach_above_weight > rig->shank_length)
      {
        g_autofree char *path = g_strdup_printf ("leaders[%zu].attach_above_weight_m", i);
        g_autofree char *expected = NULL;
        char length[LB_JSON_NUMBER_SIZE];

        number_to_text (rig->shank_length, length);
        expected = g_strdup_printf (_ ("at most %s, the length of the shank"), length);
        return fail_number (error, LB_FILE_ERROR_ORDER, path, rig->leaders[i].attach_above_weight,
                            expected);
      }
  return TRUE;
}

static gboolean
check_band (const LbBand *band, GError **error)
{
  g_autofree char *expected = NULL;
  char high[LB_JSON_NUMBER_SIZE];

  if (band->low < band->high)
    return TRUE;
  number_to_text (band->high, high);
  expected = g_strdup_printf (_ ("less than %s, the high side of the band"), high);
  return fail_number (error, LB_FILE_ERROR_ORDER, "band.low_m", band->low, expected);
}

/* The last word is the physics': nothing that it would refuse gets through. */
static gboolean
check_physics (const LbSetup *setup, GError **error)
{
  const char *what = NULL;

  if (lb_setup_check (setup, &what) == LB_STATUS_OK)
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_RANGE, _ ("this rig cannot be computed: %s"),
               what ? what : "?");
  return FALSE;
}

gboolean
lb_setup_validate (const LbSetup *setup, GError **error)
{
  if (setup->rig.n_leaders > LB_MAX_LEADERS)
    return check_length ("leaders", setup->rig.n_leaders, 0, LB_MAX_LEADERS, error);
  return check_fields (setup, error) && check_bed (&setup->river, error)
         && check_profile (&setup->river.profile, error) && check_attachments (&setup->rig, error)
         && check_band (&setup->band, error) && check_physics (setup, error);
}
