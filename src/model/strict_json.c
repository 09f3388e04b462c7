/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "strict_json.h"

#include <math.h>
#include <string.h>
#include <glib/gi18n-lib.h>

#include "validate.h"

typedef struct
{
  const char *start, *at, *end;
  guint depth, deepest;
  GString *path; /* of the value being read: "river.bed[2]" */
  GError **error;
} Scanner;

static JsonNode *scan_value (Scanner *s);

/* ---- Faults ---- */

static void *
fail (Scanner *s, LbFileError code, const char *message)
{
  guint line = 1;
  const char *line_start = s->start;
  glong column;

  for (const char *p = s->start; p < s->at; p++)
    if (*p == '\n')
      {
        line++;
        line_start = p + 1;
      }
  column = g_utf8_strlen (line_start, s->at - line_start) + 1;
  if (s->path->len > 0)
    g_set_error (s->error, LB_FILE_ERROR, code, _ ("line %u, column %ld, %s: %s"), line, column,
                 s->path->str, message);
  else
    g_set_error (s->error, LB_FILE_ERROR, code, _ ("line %u, column %ld: %s"), line, column,
                 message);
  return NULL;
}

/* "found X, expected `expected`" for what stands here. */
static void *
fail_expected (Scanner *s, const char *expected)
{
  g_autofree char *message = NULL;

  if (s->at >= s->end)
    message = g_strdup_printf (_ ("the file ends here, expected %s"), expected);
  else
    {
      gunichar c = g_utf8_get_char (s->at);
      char utf8[7] = { 0 };

      g_unichar_to_utf8 (c, utf8);
      if (c == 0xfeff)
        message = g_strdup_printf (_ ("found a byte order mark, expected %s"), expected);
      else if (g_unichar_isgraph (c))
        message = g_strdup_printf (_ ("found \"%s\", expected %s"), utf8, expected);
      else
        message = g_strdup_printf (_ ("found the character U+%04X, expected %s"), c, expected);
    }
  return fail (s, LB_FILE_ERROR_SYNTAX, message);
}

/* ---- Small pieces ---- */

static void
skip_blanks (Scanner *s)
{
  while (s->at < s->end && strchr (" \t\n\r", *s->at) && *s->at)
    s->at++;
}

static gboolean
take (Scanner *s, char c)
{
  if (s->at >= s->end || *s->at != c)
    return FALSE;
  s->at++;
  return TRUE;
}

static gboolean
take_digits (Scanner *s)
{
  const char *from = s->at;
  while (s->at < s->end && g_ascii_isdigit (*s->at))
    s->at++;
  return s->at > from;
}

/* Four hexadecimal digits, or -1. */
static gint32
take_hex4 (Scanner *s)
{
  gint32 value = 0;

  for (int i = 0; i < 4; i++, s->at++)
    {
      if (s->at >= s->end || !g_ascii_isxdigit (*s->at))
        return -1;
      value = value * 16 + g_ascii_xdigit_value (*s->at);
    }
  return value;
}

/* ---- Strings ---- */

/* After "\u". */
static gboolean
scan_unicode_escape (Scanner *s, GString *out)
{
  gint32 c = take_hex4 (s);

  if (c >= 0xd800 && c < 0xdc00 && take (s, '\\') && take (s, 'u'))
    {
      gint32 low = take_hex4 (s);
      c = low >= 0xdc00 && low < 0xe000 ? 0x10000 + ((c - 0xd800) << 10) + (low - 0xdc00) : -1;
    }
  if (c <= 0 || (c >= 0xd800 && c < 0xe000))
    {
      fail (s, LB_FILE_ERROR_SYNTAX, _ ("\\u does not name a character here"));
      return FALSE;
    }
  g_string_append_unichar (out, (gunichar) c);
  return TRUE;
}

static gboolean
scan_escape (Scanner *s, GString *out)
{
  static const char from[] = "\"\\/bfnrt", to[] = "\"\\/\b\f\n\r\t";
  const char *known;

  if (s->at < s->end && *s->at == 'u')
    {
      s->at++;
      return scan_unicode_escape (s, out);
    }
  known = s->at < s->end && *s->at ? strchr (from, *s->at) : NULL;
  if (known == NULL)
    {
      fail_expected (s, _ ("one of \" \\ / b f n r t u after the backslash"));
      return FALSE;
    }
  g_string_append_c (out, to[known - from]);
  s->at++;
  return TRUE;
}

/* At the opening quote. Free with g_free(). */
static char *
scan_string (Scanner *s)
{
  g_autoptr (GString) out = g_string_new (NULL);

  s->at++;
  while (s->at < s->end && *s->at != '"')
    {
      if ((guchar) *s->at < 0x20)
        return fail_expected (s, _ ("no control character in a string"));
      if (take (s, '\\'))
        {
          if (!scan_escape (s, out))
            return NULL;
        }
      else
        g_string_append_c (out, *s->at++);
    }
  if (!take (s, '"'))
    return fail_expected (s, _ ("a closing quote"));
  return g_string_free (g_steal_pointer (&out), FALSE);
}

/* ---- Values ---- */

static JsonNode *
scan_number (Scanner *s)
{
  const char *from = s->at;
  g_autofree char *text = NULL;
  double value;

  take (s, '-');
  if (!take (s, '0') && !take_digits (s))
    return fail_expected (s, _ ("a digit"));
  if (take (s, '.') && !take_digits (s))
    return fail_expected (s, _ ("a digit"));
  if (s->at < s->end && (*s->at == 'e' || *s->at == 'E'))
    {
      s->at++;
      if (!take (s, '+'))
        take (s, '-');
      if (!take_digits (s))
        return fail_expected (s, _ ("a digit"));
    }

  text = g_strndup (from, (gsize) (s->at - from));
  value = g_ascii_strtod (text, NULL);
  if (!isfinite (value))
    {
      g_autofree char *shown = lb_validate_shown (text);
      g_autofree char *message =
          g_strdup_printf (_ ("found %s, expected a number of at most 1.7e308"), shown);

      s->at = from;
      return fail (s, LB_FILE_ERROR_RANGE, message);
    }
  return json_node_init_double (json_node_alloc (), value);
}

static JsonNode *
scan_word (Scanner *s)
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
  return fail_expected (s, _ ("a value"));
}

static gboolean
scan_member (Scanner *s, JsonObject *object)
{
  gsize path_length = s->path->len;
  g_autofree char *key = NULL;
  g_autofree char *shown = NULL;
  JsonNode *value;

  skip_blanks (s);
  if (s->at >= s->end || *s->at != '"')
    return fail_expected (s, _ ("a key in quotes")) != NULL;
  key = scan_string (s);
  if (key == NULL)
    return FALSE;
  if (path_length > 0)
    g_string_append_c (s->path, '.');
  shown = lb_validate_shown (key);
  g_string_append (s->path, shown);
  if (json_object_has_member (object, key))
    return fail (s, LB_FILE_ERROR_SYNTAX, _ ("this key stands here twice, expected once")) != NULL;
  skip_blanks (s);
  if (!take (s, ':'))
    return fail_expected (s, _ ("a colon")) != NULL;
  value = scan_value (s);
  if (value == NULL)
    return FALSE;
  json_object_set_member (object, key, value);
  g_string_truncate (s->path, path_length);
  return TRUE;
}

/* After the opening brace. */
static JsonNode *
scan_object (Scanner *s)
{
  g_autoptr (JsonObject) object = json_object_new ();

  skip_blanks (s);
  if (!take (s, '}'))
    {
      do
        {
          if (!scan_member (s, object))
            return NULL;
          skip_blanks (s);
        }
      while (take (s, ','));
      if (!take (s, '}'))
        return fail_expected (s, _ ("a comma or a closing brace"));
    }
  return json_node_init_object (json_node_alloc (), object);
}

/* After the opening bracket. */
static JsonNode *
scan_array (Scanner *s)
{
  g_autoptr (JsonArray) array = json_array_new ();
  gsize path_length = s->path->len;

  skip_blanks (s);
  if (!take (s, ']'))
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
          skip_blanks (s);
        }
      while (take (s, ','));
      if (!take (s, ']'))
        return fail_expected (s, _ ("a comma or a closing bracket"));
    }
  return json_node_init_array (json_node_alloc (), array);
}

static JsonNode *
scan_nested (Scanner *s)
{
  JsonNode *node;
  gboolean object = *s->at == '{';

  if (s->depth >= s->deepest)
    return fail (s, LB_FILE_ERROR_SYNTAX, _ ("nested too deep for a rig file"));
  s->at++;
  s->depth++;
  node = object ? scan_object (s) : scan_array (s);
  s->depth--;
  return node;
}

static JsonNode *
scan_value (Scanner *s)
{
  skip_blanks (s);
  if (s->at >= s->end)
    return fail_expected (s, _ ("a value"));
  if (*s->at == '{' || *s->at == '[')
    return scan_nested (s);
  if (*s->at == '"')
    {
      g_autofree char *text = scan_string (s);
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
  Scanner s = {
    .start = text, .at = text, .end = text + length, .deepest = deepest, .error = error
  };
  JsonNode *node;

  if (!check_utf8 (text, length, error))
    return NULL;
  s.path = g_string_new (NULL);
  node = scan_value (&s);
  if (node)
    {
      skip_blanks (&s);
      if (s.at < s.end)
        {
          fail_expected (&s, _ ("nothing after the end"));
          g_clear_pointer (&node, json_node_unref);
        }
    }
  g_string_free (s.path, TRUE);
  return node;
}
