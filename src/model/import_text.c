/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What comes before the lines of a log: marks of byte order, other encodings, and what is no text
 * at all. */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "file_error.h"
#include "import_private.h"

#define LOOK_AT 4096       /* bytes that tell a text from anything else */
#define MOST_CONTROLS 0.05 /* of them, that may be control characters */
#define LEAST_ZEROS 0.8    /* of the high bytes, in UTF-16 */
#define START (64 * 1024)  /* bytes that the first lines are looked for in */
#define SHOWN_LINES 6
#define SHOWN_LENGTH 100

/* ---- Encodings ---- */

/* The encoding that a mark at the start tells, NULL without one; `*mark` is its length. */
static const char *
marked_encoding (const char *text, gsize length, gsize *mark)
{
  static const struct
  {
    const char *mark;
    gsize length;
    const char *encoding;
  } marks[] = { { "\xef\xbb\xbf", 3, "UTF-8" },
                { "\xff\xfe\0\0", 4, "UTF-32LE" },
                { "\0\0\xfe\xff", 4, "UTF-32BE" },
                { "\xff\xfe", 2, "UTF-16LE" },
                { "\xfe\xff", 2, "UTF-16BE" } };

  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    if (length >= marks[i].length && memcmp (text, marks[i].mark, marks[i].length) == 0)
      {
        *mark = marks[i].length;
        return marks[i].encoding;
      }
  *mark = 0;
  return NULL;
}

/* UTF-16 without a mark: of what a log is written in, every second byte is zero. NULL: it is not.
 */
static const char *
unmarked_encoding (const char *text, gsize length)
{
  gsize pairs = MIN (length, LOOK_AT) / 2, zeros[2] = { 0 };

  for (gsize i = 0; i < 2 * pairs; i++)
    zeros[i % 2] += text[i] == '\0';
  for (int i = 0; i < 2; i++)
    if (pairs > 0 && zeros[1 - i] == 0 && (double) zeros[i] >= LEAST_ZEROS * (double) pairs)
      return i == 0 ? "UTF-16BE" : "UTF-16LE";
  return NULL;
}

static gboolean
is_text (const char *text, gsize length)
{
  gsize n = MIN (length, LOOK_AT), controls = 0;

  /* A few come with what a receiver sends while it is switched on. */
  for (gsize i = 0; i < n; i++)
    controls += g_ascii_iscntrl (text[i]) && !g_ascii_isspace (text[i]);
  return (double) controls <= MOST_CONTROLS * (double) n;
}

gboolean
lb_log_take_text (const char **text, gsize *length, char **converted, GError **error)
{
  gsize mark;
  const char *encoding = marked_encoding (*text, *length, &mark);

  if (!encoding)
    encoding = unmarked_encoding (*text, *length);
  *text += mark;
  *length -= mark;
  if (encoding && !g_str_equal (encoding, "UTF-8"))
    {
      gsize read; /* given, so that a letter cut off at the end is no fault */

      *converted = g_convert (*text, (gssize) *length, "UTF-8", encoding, &read, length, NULL);
      if (!*converted)
        {
          g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX,
                       _ ("this is a damaged text in %s"), encoding);
          return FALSE;
        }
      *text = *converted;
    }
  if (is_text (*text, *length))
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX,
               _ ("this is no text; let the program or the device that wrote it export NMEA 0183, "
                  "GPX or CSV"));
  return FALSE;
}

/* ---- The first lines ---- */

/* As much of a line as there is room for; a tab is shown as the arrow on its key. */
static void
append_line (GString *shown, const LbLogLine *line)
{
  g_autofree char *valid = g_utf8_make_valid (line->text, (gssize) line->length);
  glong n = 0;

  for (const char *at = valid; *at && n < SHOWN_LENGTH; at = g_utf8_next_char (at), n++)
    if (*at == '\t')
      g_string_append (shown, "⇥");
    else
      g_string_append_unichar (shown, g_ascii_iscntrl (*at) ? ' ' : g_utf8_get_char (at));
  if (n == SHOWN_LENGTH)
    g_string_append (shown, "…");
}

static char *
first_lines (const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  GString *shown = g_string_new (NULL);
  LbLogLine line = { 0 };

  while (line.number < SHOWN_LINES && lb_log_line_next (&at, end, &line))
    {
      if (shown->len)
        g_string_append_c (shown, '\n');
      append_line (shown, &line);
    }
  return g_string_free (shown, FALSE);
}

char *
lb_import_dup_table_start (GFile *file)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, NULL);
  g_autofree char *bytes = g_malloc (START);
  g_autofree char *converted = NULL;
  const char *text = bytes;
  gsize length = 0;

  if (!stream
      || !g_input_stream_read_all (G_INPUT_STREAM (stream), bytes, START, &length, NULL, NULL)
      || !lb_log_take_text (&text, &length, &converted, NULL) || length == 0
      || lb_log_find_format (text, length) != LB_IMPORT_CSV)
    return NULL;
  return first_lines (text, length);
}
