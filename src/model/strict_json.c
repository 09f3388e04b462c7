/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "strict_json.h"

#include <math.h>
#include <string.h>
#include <glib/gi18n-lib.h>

#include "json_scanner.h"
#include "validate.h"

static JsonNode *scan_value (LbJsonScanner *s);

static JsonNode *
scan_number (LbJsonScanner *s)
{
  const char *from = s->at;
  g_autofree char *text = NULL;
  double value;

  lb_json_scanner_take (s, '-');
  if (!lb_json_scanner_take (s, '0') && !lb_json_scanner_take_digits (s))
    return lb_json_scanner_fail_expected (s, _ ("a digit"));
  if (lb_json_scanner_take (s, '.') && !lb_json_scanner_take_digits (s))
    return lb_json_scanner_fail_expected (s, _ ("a digit"));
  if (s->at < s->end && (*s->at == 'e' || *s->at == 'E'))
    {
      s->at++;
      if (!lb_json_scanner_take (s, '+'))
        lb_json_scanner_take (s, '-');
      if (!lb_json_scanner_take_digits (s))
        return lb_json_scanner_fail_expected (s, _ ("a digit"));
    }

  text = g_strndup (from, (gsize) (s->at - from));
  value = g_ascii_strtod (text, NULL);
  if (!isfinite (value))
    {
      g_autofree char *shown = lb_validate_shown (text);
      g_autofree char *message =
          g_strdup_printf (_ ("found %s, expected a number of at most 1.7e308"), shown);

      s->at = from;
      return lb_json_scanner_fail (s, LB_FILE_ERROR_RANGE, message);
    }
  return json_node_init_double (json_node_alloc (), value);
}

static JsonNode *
scan_word (LbJsonScanner *s)
{
  static const char *const words[] = { "true", "false", "null" };

  for (size_t i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize length = strlen (words[i]);
      if ((gsize) (s->end - s->at) >= length && strncmp (s->at, words[i], length) == 0)
        {
          s->at += length;
          return i < 2 ? json_node_init_boolean (json_node_alloc (), i == 0)
                       : json_node_init_null (json_node_alloc ());
        }
    }
  return lb_json_scanner_fail_expected (s, _ ("a value"));
}

static gboolean
scan_member (LbJsonScanner *s, JsonObject *object)
{
  gsize path_length = s->path->len;
  g_autofree char *key = NULL;
  g_autofree char *shown = NULL;
  JsonNode *value;

  lb_json_scanner_skip_blanks (s);
  if (s->at >= s->end || *s->at != '"')
    return lb_json_scanner_fail_expected (s, _ ("a key in quotes")) != NULL;
  key = lb_json_scanner_string (s);
  if (key == NULL)
    return FALSE;
  if (path_length > 0)
    g_string_append_c (s->path, '.');
  shown = lb_validate_shown (key);
  g_string_append (s->path, shown);
  if (json_object_has_member (object, key))
    return lb_json_scanner_fail (s, LB_FILE_ERROR_SYNTAX,
                                 _ ("this key stands here twice, expected once"))
           != NULL;
  lb_json_scanner_skip_blanks (s);
  if (!lb_json_scanner_take (s, ':'))
    return lb_json_scanner_fail_expected (s, _ ("a colon")) != NULL;
  value = scan_value (s);
  if (value == NULL)
    return FALSE;
  json_object_set_member (object, key, value);
  g_string_truncate (s->path, path_length);
  return TRUE;
}

/* After the opening brace. */
static JsonNode *
scan_object (LbJsonScanner *s)
{
  g_autoptr (JsonObject) object = json_object_new ();

  lb_json_scanner_skip_blanks (s);
  if (!lb_json_scanner_take (s, '}'))
    {
      do
        {
          if (!scan_member (s, object))
            return NULL;
          lb_json_scanner_skip_blanks (s);
        }
      while (lb_json_scanner_take (s, ','));
      if (!lb_json_scanner_take (s, '}'))
        return lb_json_scanner_fail_expected (s, _ ("a comma or a closing brace"));
    }
  return json_node_init_object (json_node_alloc (), object);
}

/* After the opening bracket. */
static JsonNode *
scan_array (LbJsonScanner *s)
{
  g_autoptr (JsonArray) array = json_array_new ();
  gsize path_length = s->path->len;

  lb_json_scanner_skip_blanks (s);
  if (!lb_json_scanner_take (s, ']'))
    {
      do
        {
          JsonNode *element;

          g_string_append_printf (s->path, "[%u]", json_array_get_length (array));
          element = scan_value (s);
          if (element == NULL)
            return NULL;
          json_array_add_element (array, element);
          g_string_truncate (s->path, path_length);
          lb_json_scanner_skip_blanks (s);
        }
      while (lb_json_scanner_take (s, ','));
      if (!lb_json_scanner_take (s, ']'))
        return lb_json_scanner_fail_expected (s, _ ("a comma or a closing bracket"));
    }
  return json_node_init_array (json_node_alloc (), array);
}

static JsonNode *
scan_nested (LbJsonScanner *s)
{
  JsonNode *node;
  gboolean object = *s->at == '{';

  if (s->depth >= s->deepest)
    return lb_json_scanner_fail (s, LB_FILE_ERROR_SYNTAX, _ ("nested too deep for a rig file"));
  s->at++;
  s->depth++;
  node = object ? scan_object (s) : scan_array (s);
  s->depth--;
  return node;
}

static JsonNode *
scan_value (LbJsonScanner *s)
{
  lb_json_scanner_skip_blanks (s);
  if (s->at >= s->end)
    return lb_json_scanner_fail_expected (s, _ ("a value"));
  if (*s->at == '{' || *s->at == '[')
    return scan_nested (s);
  if (*s->at == '"')
    {
      g_autofree char *text = lb_json_scanner_string (s);
      return text ? json_node_init_string (json_node_alloc (), text) : NULL;
    }
  if (*s->at == '-' || g_ascii_isdigit (*s->at))
    return scan_number (s);
  return scan_word (s);
}

static gboolean
check_utf8 (const char *text, gsize length, GError **error)
{
  const char *fault;

  if (g_utf8_validate_len (text, length, &fault))
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX,
               _ ("byte %zu: found 0x%02X, expected text in UTF-8"), (gsize) (fault - text) + 1,
               (guchar) *fault);
  return FALSE;
}

JsonNode *
lb_strict_json_parse (const char *text, gsize length, guint deepest, GError **error)
{
  LbJsonScanner s = {
    .start = text, .at = text, .end = text + length, .deepest = deepest, .error = error
  };
  JsonNode *node;

  if (!check_utf8 (text, length, error))
    return NULL;
  s.path = g_string_new (NULL);
  node = scan_value (&s);
  if (node)
    {
      lb_json_scanner_skip_blanks (&s);
      if (s.at < s.end)
        {
          lb_json_scanner_fail_expected (&s, _ ("nothing after the end"));
          g_clear_pointer (&node, json_node_unref);
        }
    }
  g_string_free (s.path, TRUE);
  return node;
}
