/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "json_scanner.h"

#include <string.h>
#include <glib/gi18n-lib.h>

/* ---- Faults ---- */

void *
lb_json_scanner_fail (LbJsonScanner *s, LbFileError code, const char *message)
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
void *
lb_json_scanner_fail_expected (LbJsonScanner *s, const char *expected)
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
  return lb_json_scanner_fail (s, LB_FILE_ERROR_SYNTAX, message);
}

/* ---- Small pieces ---- */

void
lb_json_scanner_skip_blanks (LbJsonScanner *s)
{
  while (s->at < s->end && strchr (" \t\n\r", *s->at) && *s->at)
    s->at++;
}

gboolean
lb_json_scanner_take (LbJsonScanner *s, char c)
{
  if (s->at >= s->end || *s->at != c)
    return FALSE;
  s->at++;
  return TRUE;
}

gboolean
lb_json_scanner_take_digits (LbJsonScanner *s)
{
  const char *from = s->at;
  while (s->at < s->end && g_ascii_isdigit (*s->at))
    s->at++;
  return s->at > from;
}

/* Four hexadecimal digits, or -1. */
static gint32
take_hex4 (LbJsonScanner *s)
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
scan_unicode_escape (LbJsonScanner *s, GString *out)
{
  gint32 c = take_hex4 (s);

  if (c >= 0xd800 && c < 0xdc00 && lb_json_scanner_take (s, '\\') && lb_json_scanner_take (s, 'u'))
    {
      gint32 low = take_hex4 (s);
      c = low >= 0xdc00 && low < 0xe000 ? 0x10000 + ((c - 0xd800) << 10) + (low - 0xdc00) : -1;
    }
  if (c <= 0 || (c >= 0xd800 && c < 0xe000))
    {
      lb_json_scanner_fail (s, LB_FILE_ERROR_SYNTAX, _ ("\\u does not name a character here"));
      return FALSE;
    }
  g_string_append_unichar (out, (gunichar) c);
  return TRUE;
}

static gboolean
scan_escape (LbJsonScanner *s, GString *out)
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
      lb_json_scanner_fail_expected (s, _ ("one of \" \\ / b f n r t u after the backslash"));
      return FALSE;
    }
  g_string_append_c (out, to[known - from]);
  s->at++;
  return TRUE;
}

/* At the opening quote. Free with g_free(). */
char *
lb_json_scanner_string (LbJsonScanner *s)
{
  g_autoptr (GString) out = g_string_new (NULL);

  s->at++;
  while (s->at < s->end && *s->at != '"')
    {
      if ((guchar) *s->at < 0x20)
        return lb_json_scanner_fail_expected (s, _ ("no control character in a string"));
      if (lb_json_scanner_take (s, '\\'))
        {
          if (!scan_escape (s, out))
            return NULL;
        }
      else
        g_string_append_c (out, *s->at++);
    }
  if (!lb_json_scanner_take (s, '"'))
    return lb_json_scanner_fail_expected (s, _ ("a closing quote"));
  return g_string_free (g_steal_pointer (&out), FALSE);
}
